//! What is remembered of an edition beside its pages, so that the next one makes only what changed.
//!
//! The record is a convenience: lost or damaged, everything is made again.

use super::inputs::Hash;
use crate::failure::Failure;
use crate::files;
use publish::site::Card;
use serde_json::{Map, Value, json};
use std::collections::BTreeMap;
use std::path::{Component, Path, PathBuf};

/// The folder within the pages' folder that is this program's own.
pub const OWN: &str = ".edition";
/// The way of writing that this program understands; another's record is not read.
const FORM: u64 = 1;

/// An edition as it was left.
#[derive(Clone, Debug, Default)]
pub struct Record {
    /// Its formulas by name.
    pub formulas: BTreeMap<String, Kept>,
    /// Its files by name, with how they were left.
    pub files: BTreeMap<String, Left>,
}

/// What is kept of a formula.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Kept {
    /// The print of its own text.
    pub text: Hash,
    /// The print of its text and those it is made by way of.
    pub words: Hash,
    /// The print of all that it depends on, the rest of the book apart.
    pub all: Hash,
    /// The print of all that its page depends on.
    pub page: Hash,
    /// Whether proof-reading found nothing at all.
    pub is_spotless: bool,
    /// The file of its photograph, within the book.
    pub photograph: Option<String>,
    /// When its page came first.
    pub published: String,
    /// When its words changed last.
    pub updated: String,
    /// The files that are its own.
    pub files: Vec<String>,
    /// What the lists tell of it.
    pub card: Card,
}

/// A file as it was left.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Left {
    /// The print of its bytes.
    pub bytes: Hash,
    /// Its size and time of change.
    pub stamp: String,
}

impl Record {
    /// The record of the edition in a folder; an empty one where there is none to be read.
    pub fn read(out: &Path) -> Self {
        let text = std::fs::read(place(out)).unwrap_or_default();
        let kept: Option<Value> = serde_json::from_slice(&text).ok();
        kept.and_then(|kept| Self::from_json(&kept)).unwrap_or_default()
    }

    /// Writes the record unless the same is there already.
    pub fn write_if_changed(&self, out: &Path) -> Result<(), Failure> {
        if std::fs::read(place(out)).is_ok_and(|kept| kept == self.to_json().to_string().as_bytes()) {
            Ok(())
        } else {
            self.write(out)
        }
    }

    /// Writes the record, whole or not at all.
    pub fn write(&self, out: &Path) -> Result<(), Failure> {
        files::write(&place(out), self.to_json().to_string().as_bytes())
    }

    fn to_json(&self) -> Value {
        let formulas: Map<String, Value> = self.formulas.iter().map(|(name, kept)| (name.clone(), kept.to_json())).collect();
        let files: Map<String, Value> =
            self.files.iter().map(|(name, left)| (name.clone(), json!([hex(left.bytes), left.stamp]))).collect();
        json!({
            "about": "Written by wellproved so that it publishes only what changed. Deleting it does no harm.",
            "form": FORM, "formulas": formulas, "files": files,
        })
    }

    fn from_json(kept: &Value) -> Option<Self> {
        if kept.get("form")?.as_u64()? != FORM {
            return None;
        }
        let formula = |(name, kept): (&String, &Value)| Some((name.clone(), Kept::from_json(name, kept)?));
        let file = |(name, left): (&String, &Value)| {
            let left = Left { bytes: number(left.get(0)?)?, stamp: left.get(1)?.as_str()?.to_owned() };
            is_inner(name).then(|| (name.clone(), left))
        };
        Some(Self {
            formulas: kept.get("formulas")?.as_object()?.iter().map(formula).collect::<Option<_>>()?,
            files: kept.get("files")?.as_object()?.iter().map(file).collect::<Option<_>>()?,
        })
    }
}

impl Kept {
    fn to_json(&self) -> Value {
        json!({
            "text": hex(self.text), "words": hex(self.words), "all": hex(self.all), "page": hex(self.page),
            "spotless": self.is_spotless, "photograph": self.photograph, "published": self.published,
            "updated": self.updated, "files": self.files, "card": self.card.to_json(),
        })
    }

    fn from_json(name: &str, kept: &Value) -> Option<Self> {
        let text = |key: &str| kept.get(key)?.as_str().map(str::to_owned);
        let files = kept.get("files")?.as_array()?.iter().map(|file| file.as_str().map(str::to_owned));
        Some(Self {
            text: number(kept.get("text")?)?,
            words: number(kept.get("words")?)?,
            all: number(kept.get("all")?)?,
            page: number(kept.get("page")?)?,
            is_spotless: kept.get("spotless")?.as_bool()?,
            photograph: text("photograph"),
            published: text("published")?,
            updated: text("updated")?,
            files: files.collect::<Option<_>>()?,
            card: Card::from_json(name, kept.get("card")?)?,
        })
    }
}

fn place(out: &Path) -> PathBuf {
    out.join(OWN).join("record.json")
}

fn hex(hash: Hash) -> String {
    format!("{hash:032x}")
}

fn number(hex: &Value) -> Option<Hash> {
    Hash::from_str_radix(hex.as_str()?, 16).ok()
}

/// Whether a name stays within the pages' folder: a record that was tampered with must not lead out of it.
fn is_inner(name: &str) -> bool {
    !name.is_empty() && Path::new(name).components().all(|part| matches!(part, Component::Normal(_)))
}
