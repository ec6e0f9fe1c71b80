//! What can stand in the way of remembering.

use crate::Kind;
use std::fmt;

/// Why something could not be saved or found.
#[derive(Debug)]
pub enum StoreFault {
    /// The database is not there, or does not answer.
    Away {
        /// Where it was looked for, without a password.
        place: String,
        /// What it said.
        why: String,
    },
    /// The database is damaged: what its own check said.
    Damaged(String),
    /// The database was written by a later version of the program.
    TooNew,
    /// Somebody saved in between: nothing was overwritten.
    SavedMeanwhile {
        /// What it is.
        kind: Kind,
        /// Its name.
        name: String,
        /// The revision that is there now.
        latest: i64,
    },
    /// There is no such revision.
    NoSuch {
        /// What it is.
        kind: Kind,
        /// Its name.
        name: String,
        /// The number asked for.
        number: i64,
    },
    /// A record that is read in is not one, at a line.
    NotARecord {
        /// The line, from 1.
        line: usize,
        /// What is wrong.
        why: String,
    },
    /// A tasting is open: its answers cannot be read, nor can it be laid again.
    StillOpen(String),
    /// An answer is not taken, and why.
    NotTaken(&'static str),
    /// Records are read only into an empty store.
    NotEmpty,
    /// It cannot be done with this database, and what to do instead.
    NotHere(&'static str),
    /// The disk is full, the folder cannot be written, or whatever else the database says.
    Refused(String),
}

impl fmt::Display for StoreFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Away { place, why } => write!(f, "the store at {place} cannot be reached: {why}"),
            Self::Damaged(why) => write!(f, "the store is damaged: {why}"),
            Self::TooNew => write!(f, "the store was written by a later version of this program"),
            Self::SavedMeanwhile { kind, name, latest } => {
                write!(f, "the {} “{name}” was saved by somebody else meanwhile, as revision {latest}", kind.word())
            }
            Self::NoSuch { kind, name, number } => write!(f, "there is no revision {number} of the {} “{name}”", kind.word()),
            Self::NotARecord { line, why } => write!(f, "line {line} is no record of a store: {why}"),
            Self::StillOpen(name) => write!(f, "the tasting “{name}” is still open"),
            Self::NotTaken(why) => write!(f, "that is not taken: {why}"),
            Self::NotEmpty => write!(f, "records are read into an empty store, and this one is not"),
            Self::NotHere(instead) => write!(f, "that cannot be done with this database: {instead}"),
            Self::Refused(why) => write!(f, "the store refuses: {why}"),
        }
    }
}

impl std::error::Error for StoreFault {}

impl From<sqlx::Error> for StoreFault {
    fn from(error: sqlx::Error) -> Self {
        match error {
            sqlx::Error::Io(why) => Self::Away { place: "its address".to_owned(), why: why.to_string() },
            sqlx::Error::PoolTimedOut => Self::Away { place: "its address".to_owned(), why: "it does not answer".to_owned() },
            other => Self::Refused(other.to_string()),
        }
    }
}
