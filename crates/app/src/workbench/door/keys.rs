//! Keys: who may come in from the network, made and withdrawn by the owner, known here only by their prints.

use super::Role;
use crate::failure::Failure;
use crate::{files, memory, terminal};
use axum_extra::extract::cookie;
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use std::path::{Path, PathBuf};
use std::time::SystemTime;
use subtle::ConstantTimeEq;

/// A key as it is kept.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct Key {
    /// For whom it is.
    pub name: String,
    /// What they may do.
    pub role: Role,
    /// When it was made, in seconds since 1970.
    made: i64,
    /// The SHA-256 of what is shown at the door.
    print: String,
}

impl Key {
    /// The name of the key itself, which opens nothing.
    pub fn number(&self) -> &str {
        self.print.get(..12).unwrap_or_default()
    }

    /// When it was made.
    pub fn made(&self) -> Timestamp {
        Timestamp::from_second(self.made).unwrap_or_default()
    }
}

/// Everything about keys that outlasts the workbench; a file that only the owner of the book can read.
#[derive(Clone, Debug, Default, Serialize, Deserialize)]
struct Kept {
    /// What cookies are signed with.
    signing: String,
    keys: Vec<Key>,
    /// Sessions that were left before their time, until when they would have lasted.
    left: Vec<(String, i64)>,
}

/// The keys of a book, as they are in its file, whichever workbench wrote it.
#[derive(Debug)]
pub struct Ring {
    file: PathBuf,
    kept: Kept,
    /// How the file was when it was read.
    seen: Option<Seen>,
    /// Good only until the workbench closes; never written down.
    passing: Vec<Key>,
}

/// When a file was written and how long it is: it is replaced whole, so that another one differs.
type Seen = (SystemTime, u64);

/// How many keys a book has at most.
const MOST_KEYS: usize = 500;

impl Ring {
    /// The keys of a book as they were kept, or none yet.
    pub fn of(book: &Path) -> Result<Self, Failure> {
        memory::folder(book)?;
        let mut ring = Self { file: memory::keys(book), kept: Kept::default(), seen: None, passing: Vec::new() };
        let _alone = ring.lock();
        ring.read()?;
        if ring.kept.signing.len() < 128 {
            ring.kept.signing = secret()? + &secret()?;
            ring.keep()?;
        }
        Ok(ring)
    }

    fn read(&mut self) -> Result<(), Failure> {
        self.seen = seen(&self.file);
        self.kept = match std::fs::read(&self.file) {
            Ok(bytes) => serde_json::from_slice(&bytes).map_err(|_| {
                Failure::new("the file of keys is damaged")
                    .hint("remove .remembered/keys.json: then every key has to be made anew")
            })?,
            Err(error) if error.kind() == std::io::ErrorKind::NotFound => Kept::default(),
            Err(error) => return Err(Failure::file("read", &self.file, &error)),
        };
        Ok(())
    }

    /// Looks whether another workbench of the book made or withdrew keys meanwhile. Where that cannot be told, none of
    /// the keys that last opens anything until it can.
    pub fn look_again(&mut self) {
        if seen(&self.file) == self.seen {
            return;
        }
        if let Err(failure) = self.read_over() {
            terminal::complain(&failure);
            self.kept = Kept { signing: self.kept.signing.clone(), ..Kept::default() };
        }
    }

    /// Reads anew. Where the file is gone there is nothing to sign with: those who are in by a key that passes stay in.
    fn read_over(&mut self) -> Result<(), Failure> {
        let signing = self.kept.signing.clone();
        self.read()?;
        if self.kept.signing.len() < 128 {
            self.kept.signing = signing;
        }
        Ok(())
    }

    /// Waits until no other workbench of the book writes keys; nothing where the system cannot lock a folder.
    fn lock(&self) -> Option<std::fs::File> {
        let folder = std::fs::File::open(self.file.parent()?).ok()?;
        folder.lock().ok()?;
        Some(folder)
    }

    /// Changes what is kept, as it is now in the file, and keeps it: all of it or nothing.
    fn change(&mut self, change: impl FnOnce(&mut Kept)) -> Result<(), Failure> {
        let _alone = self.lock();
        self.read_over()?;
        let before = self.kept.clone();
        change(&mut self.kept);
        self.keep().inspect_err(|_| self.kept = before)
    }

    /// Makes a key and gives what is to be shown at the door, which is kept nowhere.
    pub fn make(&mut self, name: &str, role: Role, passing: bool) -> Result<String, Failure> {
        if self.kept.keys.len() >= MOST_KEYS {
            return Err(Failure::new(format!("a book has at most {MOST_KEYS} keys")).hint("withdraw some first"));
        }
        // 16 bytes are as unguessable as 32, and can be typed.
        let shown = secret()?[..32].to_owned();
        let key = Key { name: name.to_owned(), role, made: Timestamp::now().as_second(), print: print(&shown) };
        if passing {
            self.passing.push(key);
            return Ok(shown);
        }
        self.change(|kept| kept.keys.push(key))?;
        Ok(shown)
    }

    /// Takes a key back: whoever came in by it is out at once.
    pub fn withdraw(&mut self, number: &str) -> Result<bool, Failure> {
        let mut is_there = false;
        self.change(|kept| {
            let all = kept.keys.len();
            kept.keys.retain(|key| key.number() != number);
            is_there = kept.keys.len() < all;
        })?;
        Ok(is_there)
    }

    /// The keys that were made to last, the oldest first.
    pub fn lasting(&self) -> &[Key] {
        &self.kept.keys
    }

    /// The key that is shown. Every key is looked at, so that the time it takes tells nothing.
    pub fn shown(&self, shown: &str) -> Option<&Key> {
        let print = print(shown);
        let all = self.kept.keys.iter().chain(&self.passing);
        all.fold(None, |found, key| if bool::from(key.print.as_bytes().ct_eq(print.as_bytes())) { Some(key) } else { found })
    }

    /// The key of a number.
    pub fn numbered(&self, number: &str) -> Option<&Key> {
        self.kept.keys.iter().chain(&self.passing).find(|key| key.number() == number)
    }

    /// Ends a session before its time.
    pub fn leave(&mut self, session: &str, until: i64) -> Result<(), Failure> {
        let now = Timestamp::now().as_second();
        self.change(|kept| {
            kept.left.retain(|(_, until)| *until > now);
            kept.left.push((session.to_owned(), until));
        })
    }

    /// Whether a session was ended before its time.
    pub fn has_left(&self, session: &str) -> bool {
        self.kept.left.iter().any(|(left, _)| left == session)
    }

    /// What cookies are signed with.
    pub fn signing(&self) -> cookie::Key {
        cookie::Key::from(self.kept.signing.as_bytes())
    }

    /// A word that only this book can make of another one.
    pub fn word_for(&self, what: &str) -> String {
        let inner = print(&format!("{}{what}", self.kept.signing));
        print(&format!("{}{inner}", self.kept.signing))
    }

    fn keep(&mut self) -> Result<(), Failure> {
        let text = serde_json::to_string_pretty(&self.kept).map_err(|error| Failure::new(error.to_string()))?;
        files::write_secret(&self.file, text.as_bytes())?;
        self.seen = seen(&self.file);
        Ok(())
    }
}

fn seen(file: &Path) -> Option<Seen> {
    let about = std::fs::metadata(file).ok()?;
    Some((about.modified().ok()?, about.len()))
}

fn print(shown: &str) -> String {
    Sha256::digest(shown.as_bytes()).iter().map(|byte| format!("{byte:02x}")).collect()
}

/// Letters that nobody can guess.
pub fn secret() -> Result<String, Failure> {
    let mut bytes = [0_u8; 32];
    getrandom::fill(&mut bytes).map_err(|error| Failure::new(format!("no key could be made: {error}")))?;
    Ok(bytes.iter().map(|byte| format!("{byte:02x}")).collect())
}
