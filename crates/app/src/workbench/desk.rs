//! The desk: the book as it lies on the disk, its memory, and who is told when it changes.

use super::door::{Doors, secret};
use super::journal::Journal;
use super::present::{Present, Seat};
use super::shared::WorkedOut;
use crate::book::{self, Opened};
use crate::failure::Failure;
use crate::memory::Memory;
use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::sync::{Arc, OnceLock, PoisonError, RwLock};
use std::time::Duration;
use store::Store;
use tokio::sync::{Mutex, broadcast};

/// Which book, and where it is remembered.
pub struct Place {
    /// The book's folder.
    pub folder: PathBuf,
    /// Where its pages are published, if not beside it.
    pub published: Option<PathBuf>,
    /// Its memory.
    pub memory: Memory,
}

/// Something that happened to the book, as told to everyone who looks on.
#[derive(Clone, Debug)]
pub enum Happened {
    /// A file says something else now.
    Changed {
        /// The file, as named in the book.
        file: String,
        /// What was done, in a few words.
        what: String,
        /// Who did it; empty for another program.
        by: String,
    },
    /// Somebody came or went.
    Moved,
    /// The workbench closes.
    Farewell,
}

/// The right to write, which one has at a time.
pub type Alone<'d> = tokio::sync::MutexGuard<'d, ()>;

/// A desk that everyone shares.
#[derive(Clone)]
pub struct Desk(Arc<Shared>);

struct Shared {
    folder: PathBuf,
    published: PathBuf,
    opened: RwLock<Arc<Opened>>,
    memory: Memory,
    store: OnceLock<Store>,
    away: Failure,
    doors: Doors,
    journal: Journal,
    present: Present,
    worked_out: WorkedOut,
    writing: Mutex<()>,
    reading: std::sync::Mutex<()>,
    happened: broadcast::Sender<Happened>,
    token: String,
}

/// How many happenings a slow browser may fall behind before it looks anew.
const BEHIND: usize = 64;
/// How long until a memory that is away is looked for again.
const AGAIN: Duration = Duration::from_secs(1);

impl Desk {
    /// Opens a book. One that cannot be remembered is shown all the same, and remembered once that can be.
    pub async fn open(place: Place, doors: Doors, journal: Journal) -> Result<Self, Failure> {
        let folder = place.folder.canonicalize().map_err(|error| Failure::file("open", &place.folder, &error))?;
        let opened = book::begin(&folder)?;
        let (store, away) = match place.memory.open(&folder).await {
            Ok(store) => (OnceLock::from(store), Failure::new("")),
            Err(failure) => (OnceLock::new(), failure),
        };
        // Books that lie beside each other each have their own.
        let mut beside = OsString::from("published-");
        beside.push(folder.file_name().unwrap_or_default());
        let shared = Shared {
            published: place.published.unwrap_or_else(|| folder.with_file_name(beside)),
            folder,
            opened: RwLock::new(Arc::new(opened)),
            memory: place.memory,
            store,
            away,
            doors,
            journal,
            present: Present::default(),
            worked_out: WorkedOut::default(),
            writing: Mutex::new(()),
            reading: std::sync::Mutex::new(()),
            happened: broadcast::channel(BEHIND).0,
            token: secret()?,
        };
        Ok(Self(Arc::new(shared)))
    }

    /// The book's folder.
    pub fn folder(&self) -> &Path {
        &self.0.folder
    }

    /// The folder that its pages are published to.
    pub fn published(&self) -> &Path {
        &self.0.published
    }

    /// The book as it was last read.
    pub fn book(&self) -> Arc<Opened> {
        Arc::clone(&self.0.opened.read().unwrap_or_else(PoisonError::into_inner))
    }

    /// Reads the book anew from the disk; one after the other, so that what was read later also stands later.
    pub fn read_again(&self) -> Result<Arc<Opened>, Failure> {
        let _alone = self.0.reading.lock().unwrap_or_else(PoisonError::into_inner);
        let opened = Arc::new(book::begin(&self.0.folder)?.taught_as(&self.book()));
        *self.0.opened.write().unwrap_or_else(PoisonError::into_inner) = Arc::clone(&opened);
        Ok(opened)
    }

    /// The book's memory, or why there is none.
    pub fn store(&self) -> Result<&Store, Failure> {
        self.0.store.get().ok_or_else(|| self.0.away.clone())
    }

    /// Why nothing can be remembered, if that is so.
    pub fn forgetful(&self) -> Option<String> {
        self.store().err().map(|failure| failure.to_string())
    }

    /// Looks for a memory that is away until it is there.
    pub async fn look_for_memory(self) {
        while self.0.store.get().is_none() {
            tokio::time::sleep(AGAIN).await;
            if let Ok(store) = self.0.memory.open(self.folder()).await {
                // Nobody else sets it.
                let _ = self.0.store.set(store);
                crate::terminal::remark("the memory is there again: everything can be saved and undone");
            }
        }
    }

    /// The doors.
    pub fn doors(&self) -> &Doors {
        &self.0.doors
    }

    /// The journal.
    pub fn journal(&self) -> Journal {
        self.0.journal
    }

    /// Who looks on.
    pub fn present(&self) -> &Present {
        &self.0.present
    }

    /// Seats somebody before a page, for as long as what is given is kept.
    pub fn seat(&self, seat: Seat) -> Seated {
        let seated = Seated { number: self.present().sit(seat.clone()), seat, desk: self.clone() };
        self.tell(Happened::Moved);
        seated
    }

    /// What was worked out of the book as it stands.
    pub fn worked_out(&self) -> &WorkedOut {
        &self.0.worked_out
    }

    /// Waits until nobody else writes.
    pub async fn to_write(&self) -> Alone<'_> {
        self.0.writing.lock().await
    }

    /// Tells everyone who looks on.
    pub fn tell(&self, happened: Happened) {
        // Nobody may be looking.
        let _ = self.0.happened.send(happened);
    }

    /// What happens from now on.
    pub fn listen(&self) -> broadcast::Receiver<Happened> {
        self.0.happened.subscribe()
    }

    /// What only pages of this desk know.
    pub fn token(&self) -> &str {
        &self.0.token
    }

    /// Tells the browsers that it closes, so that none of them keeps it open.
    pub fn say_farewell(&self) {
        self.tell(Happened::Farewell);
    }

    /// Closes the memory.
    pub async fn close(&self) {
        if let Some(store) = self.0.store.get() {
            store.clone().close().await;
        }
    }
}

/// Somebody before a page, until it is dropped.
pub struct Seated {
    desk: Desk,
    number: u64,
    seat: Seat,
}

impl Seated {
    /// Who else is there.
    pub fn others(&self) -> Vec<String> {
        self.desk.present().others(&self.seat)
    }
}

impl Drop for Seated {
    fn drop(&mut self) {
        self.desk.present().rise(self.number);
        self.desk.tell(Happened::Moved);
    }
}
