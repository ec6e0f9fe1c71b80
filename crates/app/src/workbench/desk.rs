//! The desk: the book as it lies on the disk, its memory, and who is told when it changes.

use crate::book::{self, Opened};
use crate::failure::Failure;
use crate::memory::Memory;
use std::path::{Path, PathBuf};
use std::sync::{Arc, PoisonError, RwLock};
use store::Store;
use tokio::sync::{Mutex, broadcast};

/// Which book, and where it is remembered.
pub struct Place {
    /// The book's folder.
    pub folder: PathBuf,
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
    /// The workbench closes.
    Farewell,
}

/// A desk that everyone shares.
#[derive(Clone)]
pub struct Desk(Arc<Shared>);

struct Shared {
    folder: PathBuf,
    opened: RwLock<Arc<Opened>>,
    store: Result<Store, String>,
    writing: Mutex<()>,
    reading: std::sync::Mutex<()>,
    happened: broadcast::Sender<Happened>,
    token: String,
}

/// How many happenings a slow browser may fall behind before it looks anew.
const BEHIND: usize = 64;

impl Desk {
    /// Opens a book. One that cannot be remembered is shown all the same.
    pub async fn open(place: Place) -> Result<Self, Failure> {
        if !place.folder.is_dir() {
            return Err(Failure::new("a whole book is worked on").hint("name its folder, such as examples/saltmarsh"));
        }
        let folder = place.folder.canonicalize().map_err(|error| Failure::file("open", &place.folder, &error))?;
        let opened = book::open(&folder)?;
        let store = place.memory.open(&folder).await.map_err(|failure| failure.to_string());
        let shared = Shared {
            folder,
            opened: RwLock::new(Arc::new(opened)),
            store,
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

    /// The book as it was last read.
    pub fn book(&self) -> Arc<Opened> {
        Arc::clone(&self.0.opened.read().unwrap_or_else(PoisonError::into_inner))
    }

    /// Reads the book anew from the disk; one after the other, so that what was read later also stands later.
    pub fn read_again(&self) -> Result<Arc<Opened>, Failure> {
        let _alone = self.0.reading.lock().unwrap_or_else(PoisonError::into_inner);
        let opened = Arc::new(book::open(&self.0.folder)?);
        *self.0.opened.write().unwrap_or_else(PoisonError::into_inner) = Arc::clone(&opened);
        Ok(opened)
    }

    /// The book's memory, or why there is none.
    pub fn store(&self) -> Result<&Store, Failure> {
        self.0.store.as_ref().map_err(Failure::new)
    }

    /// Why nothing can be remembered, if that is so.
    pub fn forgetful(&self) -> Option<&str> {
        self.0.store.as_ref().err().map(String::as_str)
    }

    /// Waits until nobody else writes.
    pub async fn to_write(&self) -> tokio::sync::MutexGuard<'_, ()> {
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
        if let Ok(store) = &self.0.store {
            store.clone().close().await;
        }
    }
}

/// Letters that nobody can guess.
pub fn secret() -> Result<String, Failure> {
    let mut bytes = [0_u8; 32];
    getrandom::fill(&mut bytes).map_err(|error| Failure::new(format!("no key could be made: {error}")))?;
    Ok(bytes.iter().map(|byte| format!("{byte:02x}")).collect())
}
