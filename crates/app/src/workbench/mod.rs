//! The workbench: a book shaped by eye and hand in the browser, everything foreseen beside it.
//!
//! `desk` holds the book as it lies on the disk, `hand` writes into it and undoes, `door` says who may, `page` has a
//! file for each page, and `asset` what a browser needs besides. The files stay the truth: each change is a change of
//! the author's own text, and what another hand does to them is noticed.

mod answer;
mod asset;
mod desk;
mod door;
mod frame;
mod hand;
mod journal;
mod listen;
mod live;
mod page;
mod present;
mod proof;
mod shared;
mod sharing;

use crate::failure::Failure;
use crate::terminal;
use axum::Router;
use axum::extract::{DefaultBodyLimit, Request};
use axum::http::Method;
use axum::middleware::{self, Next};
use axum::response::{IntoResponse, Response};
use desk::Desk;
use door::{Doors, Ring};
use journal::Journal;
use sharing::Sharing;
use std::net::{IpAddr, SocketAddr};
use std::time::Duration;
use tokio::net::TcpListener;
use tower_http::catch_panic::CatchPanicLayer;
use tower_http::timeout::RequestBodyTimeoutLayer;

pub use desk::Place;
pub use sharing::in_the_network;

/// Where it listens, and what it does on the way.
pub struct Opening {
    /// The port; another free one where it is taken and none was asked for.
    pub port: Option<u16>,
    /// Whether a browser is opened.
    pub browse: bool,
    /// The address of this machine at which the network reaches it; every one, where that is none in particular.
    pub share: Option<IpAddr>,
    /// Names besides its addresses.
    pub known_as: Vec<String>,
    /// Whether the journal tells of every request.
    pub log_all: bool,
}

/// The port where none is asked for.
pub const USUAL_PORT: u16 = 7380;

/// How long an answer may take, what it answers read and all.
const ANSWER: Duration = Duration::from_secs(30);
/// How long a book may be at the press: a first edition with its cards and sheets takes a while, and only its owner
/// asks for one.
const PRINTING: Duration = Duration::from_secs(15 * 60);
/// How long the next piece of what is sent may be waited for.
const PIECE: Duration = Duration::from_secs(10);

/// Serves a book until Ctrl-C.
pub async fn serve(place: Place, opening: Opening) -> Result<(), Failure> {
    if !place.folder.exists() {
        let failure = Failure::new(format!("{} is not there", place.folder.display()));
        return Err(failure.hint("make the folder first: the workbench offers to begin a book in an empty one"));
    }
    if !place.folder.is_dir() {
        return Err(Failure::new("a whole book is worked on").hint("name its folder, such as examples/saltmarsh"));
    }
    let keys = opening.share.map(|_| Ring::of(&place.folder)).transpose()?;
    let listener = bound(opening.share, opening.port).await?;
    let sharing = Sharing::at(listener.local_addr().map_err(|error| Failure::new(format!("no address: {error}")))?);
    let doors = Doors::new(keys, opening.known_as, sharing.away());
    let desk = Desk::open(place, doors, Journal { everything: opening.log_all }).await?;
    tell(&desk, sharing, opening.browse)?;
    live::look_on(&desk);
    let looking = tokio::spawn(desk.clone().look_for_memory());
    listen::listen(listener, rooms(&desk), asked_to_stop(desk.clone())).await;
    looking.abort();
    desk.close().await;
    terminal::remark("the workbench is closed; everything is in the book's folder");
    Ok(())
}

/// Every room with its doors.
fn rooms(desk: &Desk) -> Router {
    let open = page::all().merge(asset::routes()).merge(live::routes()).merge(door::routes());
    let open = open.fallback(answer::nothing_there).method_not_allowed_fallback(answer::not_so);
    // What breaks in one answer breaks nothing else.
    let broken = |_: Box<dyn std::any::Any + Send>| answer::broken().into_response();
    open.layer(CatchPanicLayer::custom(broken))
        .layer(DefaultBodyLimit::max(door::MOST_OF_A_FORM))
        .layer(middleware::from_fn_with_state(desk.clone(), door::guard))
        .layer(middleware::from_fn(in_time))
        .layer(RequestBodyTimeoutLayer::new(PIECE))
        .with_state(desk.clone())
}

/// Gives up what takes too long.
async fn in_time(request: Request, next: Next) -> Response {
    let prints = request.method() == Method::POST && request.uri().path() == page::PRESS;
    let answer = tokio::time::timeout(if prints { PRINTING } else { ANSWER }, next.run(request));
    answer.await.unwrap_or_else(|_| answer::Refusal::too_slow().into_response())
}

async fn bound(share: Option<IpAddr>, asked: Option<u16>) -> Result<TcpListener, Failure> {
    let address = share.unwrap_or(IpAddr::from([127, 0, 0, 1]));
    let home = |port: u16| SocketAddr::from((address, port));
    match (TcpListener::bind(home(asked.unwrap_or(USUAL_PORT))).await, asked) {
        (Ok(listener), _) => Ok(listener),
        (Err(_), None) => TcpListener::bind(home(0)).await.map_err(|error| Failure::new(format!("no port is free: {error}"))),
        (Err(error), Some(port)) => {
            let hint = "name another with --port, or leave it out for one that is free";
            Err(Failure::new(format!("port {port} of {address} cannot be used: {error}")).hint(hint))
        }
    }
}

fn tell(desk: &Desk, sharing: Sharing, browse: bool) -> Result<(), Failure> {
    let url = format!("{}{}", sharing.here(), door::passing_way(desk.doors(), door::Role::Owner)?);
    terminal::say(&format!("The workbench of {} is open at {url}\nCtrl-C closes it.", desk.folder().display()))?;
    if desk.doors().keys().is_some() {
        let way = format!("{}{}", sharing.away(), door::passing_way(desk.doors(), door::Role::Helper)?);
        terminal::say(&sharing::for_cameras(&way))?;
    }
    if let Some(why) = desk.forgetful() {
        terminal::remark(&format!("nothing can be saved or undone: {why}"));
    }
    if browse && terminal::is_watched() && !browser_opens(&url) {
        terminal::remark("no browser could be opened: type the address into one");
    }
    Ok(())
}

/// Opens the system's browser, if it says that it has one.
fn browser_opens(url: &str) -> bool {
    let (program, before): (&str, &[&str]) = match std::env::consts::OS {
        "macos" => ("open", &[]),
        "windows" => ("cmd", &["/C", "start", ""]),
        _ => ("xdg-open", &[]),
    };
    let quiet = std::process::Stdio::null;
    let started = std::process::Command::new(program).args(before).arg(url).stdout(quiet()).stderr(quiet()).spawn();
    started.is_ok()
}

async fn asked_to_stop(desk: Desk) {
    let interrupted = async { drop(tokio::signal::ctrl_c().await) };
    #[cfg(unix)]
    let ended = async {
        match tokio::signal::unix::signal(tokio::signal::unix::SignalKind::terminate()) {
            Ok(mut signal) => drop(signal.recv().await),
            Err(_) => std::future::pending().await,
        }
    };
    #[cfg(not(unix))]
    let ended = std::future::pending::<()>();
    tokio::select! { () = interrupted => {}, () = ended => {} }
    desk.say_farewell();
}
