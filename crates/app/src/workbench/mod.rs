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
mod live;
mod page;

use crate::failure::Failure;
use crate::terminal;
use axum::Router;
use axum::middleware;
use desk::Desk;
use std::net::SocketAddr;
use tokio::net::TcpListener;

pub use desk::Place;

/// Where it listens, and what it does on the way.
pub struct Opening {
    /// The port; another free one where it is taken and none was asked for.
    pub port: Option<u16>,
    /// Whether a browser is opened.
    pub browse: bool,
}

/// The port where none is asked for.
const USUAL_PORT: u16 = 7380;

/// Serves a book until Ctrl-C.
pub async fn serve(place: Place, opening: &Opening) -> Result<(), Failure> {
    let desk = Desk::open(place).await?;
    let listener = bound(opening.port).await?;
    let address = listener.local_addr().map_err(|error| Failure::new(format!("no address: {error}")))?;
    tell(&desk, address, opening.browse)?;
    live::look_on(&desk);
    let app = rooms(&desk).into_make_service_with_connect_info::<SocketAddr>();
    let served = axum::serve(listener, app).with_graceful_shutdown(asked_to_stop(desk.clone())).await;
    desk.close().await;
    terminal::remark("the workbench is closed; everything is in the book's folder");
    served.map_err(|error| Failure::new(format!("the workbench stopped: {error}")))
}

/// Every room with its doors.
fn rooms(desk: &Desk) -> Router {
    let open = page::all().merge(asset::routes()).merge(live::routes());
    let open = open.fallback(answer::nothing_there);
    open.layer(middleware::from_fn_with_state(desk.clone(), door::guard)).with_state(desk.clone())
}

async fn bound(asked: Option<u16>) -> Result<TcpListener, Failure> {
    let home = |port: u16| SocketAddr::from(([127, 0, 0, 1], port));
    match (TcpListener::bind(home(asked.unwrap_or(USUAL_PORT))).await, asked) {
        (Ok(listener), _) => Ok(listener),
        (Err(_), None) => TcpListener::bind(home(0)).await.map_err(|error| Failure::new(format!("no port is free: {error}"))),
        (Err(error), Some(port)) => {
            let hint = "name another with --port, or leave it out for one that is free";
            Err(Failure::new(format!("port {port} cannot be used: {error}")).hint(hint))
        }
    }
}

fn tell(desk: &Desk, address: SocketAddr, browse: bool) -> Result<(), Failure> {
    let url = format!("http://{address}/");
    terminal::say(&format!("The workbench of {} is open at {url}\nCtrl-C closes it.", desk.folder().display()))?;
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
