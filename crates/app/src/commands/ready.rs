//! `ready`: whether everything around a book is as it must be.

use super::{Ended, Outcome};
use crate::failure::Failure;
use crate::memory::{self, Memory, told, wait};
use crate::workbench::{USUAL_PORT, in_the_network};
use crate::{book, findings, moment, terminal};
use jiff::Timestamp;
use jiff::tz::TimeZone;
use std::io::Write;
use std::net::TcpListener;
use std::path::{Path, PathBuf};
use std::time::SystemTime;
use store::Kind;

/// Looks whether all is ready for the work, and says what to do where it is not.
///
/// Program, book, folder, memory, keys, port, network and clock are looked at, a line each.
///
///   wellproved ready saltmarsh
///   wellproved ready saltmarsh --store postgres://baker@server/saltmarsh
///
/// Nothing is changed. Status 1 says that something has to be done.
#[derive(clap::Args)]
#[command(verbatim_doc_comment, visible_alias = "doctor")]
pub struct Ready {
    /// The book's folder.
    book: PathBuf,
    #[command(flatten)]
    memory: Memory,
}

/// What was seen.
enum Seen {
    /// As it must be.
    Fine(String),
    /// It can be worked with; to be known.
    Mind(String, &'static str),
    /// Something has to be done first.
    Amiss(String, String),
}

impl Ready {
    pub fn run(self) -> Ended {
        let memory = wait(remembered(&self.book, &self.memory))?;
        let all = [
            ("program", program()),
            ("book", read(&self.book)),
            ("folder", written(&self.book)),
            ("memory", memory),
            ("keys", keys(&self.book)),
            ("port", port()),
            ("network", network()),
            ("clock", clock(&self.book)),
        ];
        for (what, seen) in &all {
            terminal::say(&seen.line(what))?;
        }
        let is_amiss = all.iter().any(|(_, seen)| matches!(seen, Seen::Amiss(..)));
        Ok(if is_amiss { Outcome::FaultsFound } else { Outcome::Fine })
    }
}

impl Seen {
    fn line(&self, what: &str) -> String {
        let (word, told, hint) = match self {
            Self::Fine(told) => ("fine ", told, ""),
            Self::Mind(told, hint) => ("mind ", told, *hint),
            Self::Amiss(told, hint) => ("amiss", told, hint.as_str()),
        };
        let onward = if hint.is_empty() { String::new() } else { format!("\n                 → {hint}") };
        format!("{word}  {what:<8}  {told}{onward}")
    }

    fn failed(failure: &Failure) -> Self {
        let told = failure.to_string();
        let (told, hint) = told.split_once("\n  ").unwrap_or((&told, ""));
        Self::Amiss(told.to_owned(), hint.to_owned())
    }
}

fn program() -> Seen {
    let pdf = if cfg!(feature = "pdf") { "sets PDF" } else { "without PDF" };
    Seen::Fine(format!(
        "wellproved {} for {} on {}, {pdf}",
        env!("CARGO_PKG_VERSION"),
        std::env::consts::OS,
        std::env::consts::ARCH
    ))
}

fn read(folder: &Path) -> Seen {
    let opened = match book::open(folder) {
        Ok(opened) => opened,
        Err(failure) => return Seen::failed(&failure),
    };
    let found = opened.check();
    let told = findings::summary(&found, opened.book.formulas.len());
    if found.iter().any(|one| one.severity == formula::Severity::Error) {
        return Seen::Amiss(told, "`wellproved check` shows each error in its line".to_owned());
    }
    Seen::Fine(told)
}

/// Whether the folder takes a file, and the disk a megabyte more.
fn written(folder: &Path) -> Seen {
    let tried =
        tempfile::tempfile_in(folder).and_then(|mut file| file.write_all(&vec![0; 1 << 20]).and_then(|()| file.sync_all()));
    match tried {
        Ok(()) => Seen::Fine("can be written, and the disk has room".to_owned()),
        Err(error) => {
            let hint = "make room, or give yourself the right to write there: until then nothing can be saved";
            Seen::Amiss(Failure::file("write into", folder, &error).to_string(), hint.to_owned())
        }
    }
}

async fn remembered(folder: &Path, memory: &Memory) -> Seen {
    if !memory.is_there(folder) {
        return Seen::Mind("none yet".to_owned(), "it is made with the first change, or by `wellproved save`");
    }
    let looked = async {
        let store = memory.open(folder).await?;
        let (database, all) = (store.database().await.map_err(told)?, store.revisions().await.map_err(told)?);
        let formulas = all.iter().filter(|one| one.kind == Kind::Formula).count();
        store.close().await;
        Ok::<_, Failure>(format!("sound, {database}; {} revisions, {formulas} of them of formulas", all.len()))
    };
    looked.await.map_or_else(|failure| Seen::failed(&failure), Seen::Fine)
}

fn keys(folder: &Path) -> Seen {
    let file = memory::keys(folder);
    let Ok(meta) = std::fs::metadata(&file) else { return Seen::Fine("none: it was never shared".to_owned()) };
    if !is_private(&meta) {
        return Seen::Amiss(
            "others on this machine can read the file of keys".to_owned(),
            format!("chmod 600 {}", file.display()),
        );
    }
    Seen::Fine("for your eyes only".to_owned())
}

#[cfg(unix)]
fn is_private(meta: &std::fs::Metadata) -> bool {
    std::os::unix::fs::PermissionsExt::mode(&meta.permissions()) & 0o077 == 0
}

#[cfg(not(unix))]
fn is_private(_: &std::fs::Metadata) -> bool {
    true
}

fn port() -> Seen {
    match TcpListener::bind(("127.0.0.1", USUAL_PORT)) {
        Ok(_) => Seen::Fine(format!("{USUAL_PORT} is free for the workbench")),
        Err(error) => Seen::Mind(
            format!("{USUAL_PORT} cannot be used: {error}"),
            "is a workbench open already? Another takes any port that is free, or the one of --port",
        ),
    }
}

fn network() -> Seen {
    match in_the_network() {
        Some(address) => Seen::Fine(format!("others would find this machine at {address}")),
        None => Seen::Mind("this machine is on no network".to_owned(), "it can be worked with, but not shared"),
    }
}

/// Whether the clock is one to plan by.
fn clock(folder: &Path) -> Seen {
    let known = TimeZone::try_system();
    let now = Timestamp::now();
    let last = std::fs::metadata(folder.join("book.toml")).and_then(|meta| meta.modified()).ok();
    if last.is_some_and(|last| last > SystemTime::now()) {
        return Seen::Amiss(format!("it shows {now}, and the book was changed after that"), "set the clock".to_owned());
    }
    match (known, moment::zone(None)) {
        (Ok(_), Ok(zone)) => Seen::Fine(now.to_zoned_datetime(zone).strftime("%Y-%m-%d %H:%M %Z").to_string()),
        _ => Seen::Mind(
            format!("{now}; the system names no time zone"),
            "days are planned in UTC: set the system's zone, or TZ, such as TZ=Europe/Vienna",
        ),
    }
}
