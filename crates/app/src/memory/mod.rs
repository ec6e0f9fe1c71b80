//! A book's memory: the store that is meant, opened, and what a book's files are called in it.

mod last;

pub use last::bring_back;

use crate::failure::Failure;
use std::future::Future;
use std::path::{Path, PathBuf};
use store::{Address, Kind, Store, StoreFault, Stroke};

/// Where the memory is.
#[derive(Clone, Default, clap::Args)]
pub struct Memory {
    /// A team's PostgreSQL server, "postgres://…", instead of the file in the book's folder; also from the
    /// environment, WELLPROVED_STORE.
    #[arg(long, value_name = "ADDRESS")]
    store: Option<String>,
}

/// The folder and file of the memory within a book.
const FOLDER: &str = ".remembered";
const FILE: &str = "book.sqlite";

impl Memory {
    /// The store of a book, if there is one yet.
    pub async fn open_there(&self, book: &Path) -> Result<Store, Failure> {
        if matches!(self.address(book)?, Address::File(file) if !file.exists()) {
            return Err(Failure::new("nothing of this book was saved yet").hint("`wellproved save` does"));
        }
        self.open(book).await
    }

    /// The store of a book, or none where nothing was saved yet.
    pub async fn open_if_there(&self, book: &Path) -> Result<Option<Store>, Failure> {
        match self.address(book)? {
            Address::File(file) if !file.exists() => Ok(None),
            _ => self.open(book).await.map(Some),
        }
    }

    /// The store of a book, made where there is none.
    pub async fn open(&self, book: &Path) -> Result<Store, Failure> {
        let address = self.address(book)?;
        if matches!(address, Address::File(_)) {
            folder(book)?;
        }
        Store::open(&address).await.map_err(told)
    }

    /// Whether there is one yet, or a server that has one.
    pub fn is_there(&self, book: &Path) -> bool {
        !matches!(self.address(book), Ok(Address::File(file)) if !file.exists())
    }

    fn address(&self, book: &Path) -> Result<Address, Failure> {
        let said = self.store.clone().or_else(|| std::env::var("WELLPROVED_STORE").ok());
        match said {
            Some(url) if url.starts_with("postgres://") || url.starts_with("postgresql://") => Ok(Address::Server(url)),
            Some(other) => {
                let failure = Failure::new(format!("“{other}” is no address of a server"));
                Err(failure.hint("write \"postgres://user@host/database\", or leave it out for a file in the book's folder"))
            }
            None => Ok(Address::File(book.join(FOLDER).join(FILE))),
        }
    }
}

/// The file of those who may come in, which is there once the book was shared.
pub fn keys(book: &Path) -> PathBuf {
    book.join(FOLDER).join("keys.json")
}

/// The folder of a book's memory, made where there is none; it keeps itself out of version control.
pub fn folder(book: &Path) -> Result<PathBuf, Failure> {
    let folder = book.join(FOLDER);
    if !folder.is_dir() {
        std::fs::create_dir(&folder).map_err(|error| Failure::file("make", &folder, &error))?;
        let ignored = folder.join(".gitignore");
        std::fs::write(&ignored, "*\n").map_err(|error| Failure::file("write", &ignored, &error))?;
    }
    Ok(folder)
}

/// Runs what waits for a store.
pub fn wait<T>(future: impl Future<Output = T>) -> Result<T, Failure> {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build();
    let runtime = runtime.map_err(|error| Failure::new(format!("the store cannot be waited for: {error}")))?;
    Ok(runtime.block_on(future))
}

/// What a store says, with what to do about it.
pub fn told(fault: StoreFault) -> Failure {
    let hint = match &fault {
        StoreFault::Away { .. } => "is it running, and is the address right?",
        StoreFault::Damaged(_) => "put a backup in its place, or move it away: the book's files are untouched",
        StoreFault::TooNew => "use the later program; nothing was changed",
        StoreFault::SavedMeanwhile { .. } => "nothing was overwritten: look at `wellproved history`, then save again",
        StoreFault::NotEmpty => "name the address of an empty one with --store",
        StoreFault::Refused(_) => "nothing was changed: is the disk full, or the folder not to be written?",
        StoreFault::StillOpen(_) => "`wellproved taste close` closes it",
        StoreFault::NotTaken(_) => "",
        StoreFault::NoSuch { .. } | StoreFault::NotARecord { .. } | StoreFault::NotHere(_) => "",
    };
    let failure = Failure::new(fault.to_string()).hint(hint);
    match fault {
        StoreFault::Away { why, .. } => failure.told_abroad(format!("the store cannot be reached: {why}")),
        _ => failure,
    }
}

/// The file of a book that is remembered under that name: “rye”, a formula, is "formulas/rye.toml".
pub fn file_of(kind: Kind, name: &str) -> String {
    let folder = match kind {
        Kind::Book | Kind::Larder | Kind::Prices => return format!("{name}.toml"),
        Kind::Formula => "formulas",
        Kind::Ingredients => "ingredients",
        Kind::Kitchen => "kitchens",
        Kind::Tasting => "tastings",
        Kind::Trial => "trials",
    };
    let ending = if name.ends_with(".csv") { "" } else { ".toml" };
    format!("{folder}/{name}{ending}")
}

/// What a file of a book is called in its memory: "formulas/rye.toml" is the formula “rye”.
pub fn document(file: &str) -> Option<(Kind, String)> {
    let name = |inner: &str| inner.strip_suffix(".toml").unwrap_or(inner).to_owned();
    match file.split_once('/') {
        None if file == "book.toml" => Some((Kind::Book, name(file))),
        None if file == "larder.toml" => Some((Kind::Larder, name(file))),
        None if file == "prices.toml" => Some((Kind::Prices, name(file))),
        Some(("formulas", inner)) => Some((Kind::Formula, name(inner))),
        Some(("ingredients", inner)) => Some((Kind::Ingredients, name(inner))),
        Some(("kitchens", inner)) => Some((Kind::Kitchen, name(inner))),
        Some(("tastings", inner)) => Some((Kind::Tasting, name(inner))),
        Some(("trials", inner)) => Some((Kind::Trial, name(inner))),
        _ => None,
    }
}

/// What follows the name of a document where its texts were kept aside.
const ASIDE: &str = ", kept aside";

/// Under which name the texts of a document are remembered that were kept aside.
pub fn aside(name: &str) -> String {
    format!("{name}{ASIDE}")
}

/// The name of the document itself.
pub fn without_aside(name: &str) -> &str {
    name.strip_suffix(ASIDE).unwrap_or(name)
}

/// Whether that is such a name.
pub fn is_aside(name: &str) -> bool {
    name.ends_with(ASIDE)
}

/// The stroke that would be undone.
pub fn last_done(strokes: &[Stroke]) -> Option<&Stroke> {
    strokes.iter().rev().find(|one| !one.undone)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_document_has_its_file_and_every_file_its_document() {
        for (kind, name) in [
            (Kind::Book, "book"),
            (Kind::Larder, "larder"),
            (Kind::Prices, "prices"),
            (Kind::Formula, "rye"),
            (Kind::Formula, "winter/rye"),
            (Kind::Ingredients, "own"),
            (Kind::Kitchen, "estuary"),
            (Kind::Kitchen, "estuary-week.csv"),
            (Kind::Tasting, "softer"),
            (Kind::Trial, "2026-11-14-rye"),
        ] {
            assert_eq!(document(&file_of(kind, name)), Some((kind, name.to_owned())));
        }
    }
}
