//! Prints of what a page depends on: two that are equal mean that the page need not be made again.

use crate::book::Opened;
use crate::tasting::evidence::Evidence;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;
use std::time::UNIX_EPOCH;
use xxhash_rust::xxh3::Xxh3;

/// The print of some bytes.
pub type Hash = u128;

/// A print in the making; parts are told apart by their lengths.
#[derive(Clone)]
pub struct Hasher(Xxh3);

impl Hasher {
    /// One of a purpose, so that prints of different things never meet.
    pub fn of(purpose: &str) -> Self {
        let mut hasher = Self(Xxh3::new());
        hasher.add(purpose.as_bytes());
        hasher
    }

    /// One more part.
    pub fn add(&mut self, part: &[u8]) {
        self.0.update(&(part.len() as u64).to_le_bytes());
        self.0.update(part);
    }

    /// The print.
    pub fn end(&self) -> Hash {
        self.0.digest128()
    }
}

/// The print of one text or picture.
pub fn hash(bytes: &[u8]) -> Hash {
    xxhash_rust::xxh3::xxh3_128(bytes)
}

/// The prints of a book's texts.
pub struct Inputs {
    /// What every page depends on: the program, the settings, kitchens, ingredients, prices, trials and what was
    /// tasted.
    shared: Hash,
    /// Each formula's own text.
    texts: BTreeMap<String, Hash>,
}

impl Inputs {
    /// The prints of a book.
    pub fn of(opened: &Opened, evidence: &Evidence) -> Self {
        let mut shared = Hasher::of("shared");
        shared.add(env!("CARGO_PKG_VERSION").as_bytes());
        shared.add(stamp(std::env::current_exe().ok().as_deref()).as_bytes());
        for (file, source) in opened.text.files.iter().filter(|(file, _)| !file.starts_with("formulas/")) {
            shared.add(file.as_bytes());
            shared.add(source.text.as_bytes());
        }
        shared.add(evidence.print().as_bytes());
        let text = |(name, source): (&String, &formula::source::Source)| {
            let mut text = Hasher::of("text");
            text.add(source.file.as_bytes());
            text.add(source.text.as_bytes());
            (name.clone(), text.end())
        };
        Self { shared: shared.end(), texts: opened.book.formulas.iter().map(text).collect() }
    }

    /// The print of a formula's own text.
    pub fn text(&self, name: &str) -> Option<Hash> {
        self.texts.get(name).copied()
    }

    /// The print of a formula's text and of those it is made by way of; `uses` tells what each uses itself.
    /// None where that is not known.
    pub fn words<'u>(&self, name: &str, uses: impl Fn(&str) -> Option<&'u [String]>) -> Option<Hash> {
        let mut met = BTreeSet::from([name.to_owned()]);
        let mut way = vec![name.to_owned()];
        while let Some(here) = way.pop() {
            way.extend(uses(&here)?.iter().filter(|other| met.insert((*other).clone())).cloned());
        }
        let mut words = Hasher::of("words");
        for one in met {
            words.add(one.as_bytes());
            words.add(&self.text(&one)?.to_le_bytes());
        }
        Some(words.end())
    }

    /// The print of all that proof-reading a formula and laying it out depend on, the rest of the book apart.
    pub fn all(&self, words: Hash, photograph: Option<&Path>) -> Hash {
        let mut all = Hasher::of("all");
        all.add(&self.shared.to_le_bytes());
        all.add(&words.to_le_bytes());
        all.add(stamp(photograph).as_bytes());
        all.end()
    }
}

/// A file's size and time of change: enough to see that it was changed, without reading it.
pub fn stamp(file: Option<&Path>) -> String {
    let Some(meta) = file.and_then(|file| fs::metadata(file).ok()) else { return String::new() };
    let changed = meta.modified().ok().and_then(|time| time.duration_since(UNIX_EPOCH).ok()).map_or(0, |since| since.as_nanos());
    format!("{} {changed}", meta.len())
}
