//! The hand: what is changed in a book's files, so that it can be undone, and nobody's work is lost.
//!
//! A stroke is in the memory with both its texts before the file is replaced, whole, by one rename; only then it is
//! acknowledged. What was interrupted in between is found out at the next stroke: the file decides.

use super::answer::Refusal;
use super::desk::{Alone, Desk, Happened};
use super::page::of_formula;
use crate::book::Opened;
use crate::failure::Failure;
use crate::files;
use crate::memory::{aside, document, last_done, told};
use crate::{logbook, terminal};
use jiff::Timestamp;
use std::path::PathBuf;
use std::sync::Arc;
use store::{Kind, Making, Store, Stroke, hash};

/// A change of a file that somebody wants.
pub struct Change<'c> {
    /// The file, as named in the book.
    pub file: &'c str,
    /// The SHA-256 of the text that they saw.
    pub from: &'c str,
    /// What it should say.
    pub text: String,
    /// What that does, in a few words.
    pub what: &'c str,
    /// Who wants it.
    pub by: &'c str,
}

/// Back, or forth again.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Undoes the last stroke.
    Back,
    /// Does the last undone stroke again.
    Forth,
}

/// What can be undone and done again in a document.
#[derive(Debug, Default)]
pub struct Reach {
    /// What would be undone.
    pub back: Option<String>,
    /// What would be done again.
    pub forth: Option<String>,
}

impl Reach {
    /// Of the strokes of a document.
    pub fn of(strokes: &[Stroke]) -> Self {
        let what = |stroke: Option<&Stroke>| stroke.map(|one| one.what.clone());
        Self { back: what(last_done(strokes)), forth: what(first_undone(strokes)) }
    }
}

impl Desk {
    /// Writes a change into its file.
    ///
    /// # Errors
    /// A conflict where the file says something else by now than they saw: nothing is written, and what they wanted
    /// is kept among the texts of the memory.
    pub async fn write(&self, change: Change<'_>) -> Result<Arc<Opened>, Refusal> {
        let _alone = self.to_write().await;
        self.write_alone(change).await
    }

    /// Writes a change that is made of the book as it is now, whatever others changed just before: of its file, the
    /// text that it was made of, the new text, and what that does.
    pub async fn write_now(
        &self,
        by: &str,
        make: impl FnOnce(&Opened) -> Result<(String, String, String, String), Refusal>,
    ) -> Result<Arc<Opened>, Refusal> {
        let _alone = self.to_write().await;
        let (file, from, text, what) = tokio::task::block_in_place(|| make(&self.book()))?;
        self.write_alone(Change { file: &file, from: &hash(&from), text, what: &what, by }).await
    }

    async fn write_alone(&self, change: Change<'_>) -> Result<Arc<Opened>, Refusal> {
        let store = self.store()?;
        let (kind, name) = document(change.file).ok_or_else(|| Refusal::no_such("The book has no such file."))?;
        let now = self.on_the_disk(change.file)?;
        self.noticed(store, kind, &name, &now).await?;
        if hash(&now) != change.from {
            self.keep_aside(store, kind, &name, &now, &change).await?;
            let who = "somebody else has changed it since you looked: nothing of theirs was overwritten, and yours is kept";
            let refusal = Refusal::conflict(
                format!("{} says something else by now: {who}", change.file),
                "look at it anew, then change it again",
            );
            return Err(refusal.kept_at(kept_at(kind, &name), "What you wanted, and its difference"));
        }
        if now == change.text {
            return Ok(self.book());
        }
        store.stroke(&making(kind, &name, &now, &change)).await.map_err(told)?;
        self.put(change.file, &change.text, change.what, change.by)
    }

    /// Writes what was noted at the bench, for one who alone may write: a note is kept even where the memory is away;
    /// then it is the one thing that cannot be undone.
    pub async fn note_down(&self, alone: &Alone<'_>, change: Change<'_>) -> Result<Arc<Opened>, Refusal> {
        self.remember(alone, &change).await;
        self.put(change.file, &change.text, change.what, change.by)
    }

    /// Remembers a change that is about to be made, if that can be.
    pub async fn remember(&self, _alone: &Alone<'_>, change: &Change<'_>) {
        if let Err(failure) = self.remembered(change).await {
            terminal::remark(&format!("noted, but it cannot be undone: {failure}"));
        }
    }

    async fn remembered(&self, change: &Change<'_>) -> Result<(), Failure> {
        let store = self.store()?;
        let Some((kind, name)) = document(change.file) else { return Ok(()) };
        let now = self.on_the_disk(change.file)?;
        self.noticed(store, kind, &name, &now).await?;
        store.stroke(&making(kind, &name, &now, change)).await.map(drop).map_err(told)
    }

    /// Undoes the last stroke of a file, or does it again.
    pub async fn step(&self, file: &str, way: Way, by: &str) -> Result<Arc<Opened>, Refusal> {
        let _alone = self.to_write().await;
        let store = self.store()?;
        let (kind, name) = document(file).ok_or_else(|| Refusal::no_such("The book has no such file."))?;
        // Trials are noted in by other programs too, one writer at a time.
        let _bench = (kind == Kind::Trial).then(|| logbook::lock(&self.path(file)));
        let now = self.on_the_disk(file)?;
        self.noticed(store, kind, &name, &now).await?;
        let strokes = store.strokes(kind, &name).await.map_err(told)?;
        let (stroke, nothing, word) = match way {
            Way::Back => (last_done(&strokes), "There is nothing to undo.", "undone"),
            Way::Forth => (first_undone(&strokes), "There is nothing to do again.", "done again"),
        };
        let stroke = stroke.ok_or_else(|| Refusal::unfit(nothing, ""))?;
        let wanted = if way == Way::Back { &stroke.before } else { &stroke.after };
        let text = store.kept(wanted).await.map_err(told)?;
        let text = text.ok_or_else(|| Failure::new("the memory has lost that text: run `wellproved store` to check it"))?;
        store.mark(stroke, way == Way::Back).await.map_err(told)?;
        self.put(file, &text, &format!("{}: {word}", stroke.what), by)
    }

    /// What can be undone and done again in a file.
    pub async fn reach(&self, file: &str) -> Reach {
        let (Ok(store), Some((kind, name))) = (self.store(), document(file)) else { return Reach::default() };
        Reach::of(&store.strokes(kind, &name).await.unwrap_or_default())
    }

    /// Takes note of what another program did since the last stroke, so that it can be undone too; a stroke that
    /// never reached the file is taken back.
    async fn noticed(&self, store: &Store, kind: Kind, name: &str, now: &str) -> Result<(), Failure> {
        let strokes = store.strokes(kind, name).await.map_err(told)?;
        let here = hash(now);
        let expected = match (last_done(&strokes), strokes.first()) {
            (Some(last), _) if last.before == here && last.after != here => return store.mark(last, true).await.map_err(told),
            (Some(last), _) => &last.after,
            (None, Some(first)) => &first.before,
            (None, None) => return Ok(()),
        };
        // What was being undone or done again when it was interrupted may stand there already.
        if *expected == here || first_undone(&strokes).is_some_and(|undone| undone.after == here) {
            return Ok(());
        }
        let before = store.kept(expected).await.map_err(told)?.unwrap_or_default();
        let what = "changed by another program";
        let making = Making { kind, name, before: &before, after: now, what, by: "", at: Timestamp::now() };
        store.stroke(&making).await.map(drop).map_err(told)
    }

    /// Keeps what somebody wanted to write over another's change, beside the strokes of the file, so that the text and
    /// the difference can be looked at and taken up.
    async fn keep_aside(&self, store: &Store, kind: Kind, name: &str, now: &str, change: &Change<'_>) -> Result<(), Failure> {
        store.stroke(&making(kind, &aside(name), now, change)).await.map(drop).map_err(told)
    }

    /// Where a file of the book lies: in a bare folder of formulas these lie beside each other.
    fn path(&self, file: &str) -> PathBuf {
        let opened = self.book();
        let known = opened.text.files.get(file).map(|source| source.file.to_string());
        let bare = || {
            let is_bare = !opened.book.formulas.is_empty() && !self.folder().join("formulas").is_dir();
            file.strip_prefix("formulas/").filter(|_| is_bare).map(str::to_owned)
        };
        self.folder().join(known.or_else(bare).unwrap_or_else(|| file.to_owned()))
    }

    /// What a file says now; nothing where there is none.
    pub fn on_the_disk(&self, file: &str) -> Result<String, Failure> {
        let path = self.path(file);
        match std::fs::read_to_string(&path) {
            Ok(text) => Ok(text),
            Err(error) if error.kind() == std::io::ErrorKind::NotFound => Ok(String::new()),
            Err(error) => Err(Failure::file("read", &path, &error)),
        }
    }

    fn put(&self, file: &str, text: &str, what: &str, by: &str) -> Result<Arc<Opened>, Refusal> {
        let path = self.path(file);
        if text.is_empty() {
            std::fs::remove_file(&path).map_err(|error| Failure::file("remove", &path, &error))?;
        } else {
            files::write_to_last(&path, text.as_bytes())?;
        }
        let opened = self.read_again()?;
        self.tell(Happened::Changed { file: file.to_owned(), what: what.to_owned(), by: by.to_owned() });
        Ok(opened)
    }
}

/// A change as the memory keeps it.
fn making<'m>(kind: Kind, name: &'m str, before: &'m str, change: &'m Change<'_>) -> Making<'m> {
    Making { kind, name, before, after: &change.text, what: change.what, by: change.by, at: Timestamp::now() }
}

/// The page on which texts of a document stand that were kept aside.
fn kept_at(kind: Kind, name: &str) -> String {
    let stem = name.rsplit('/').next().unwrap_or(name);
    match kind {
        Kind::Formula => format!("{}#aside", of_formula(stem, "/history")),
        _ => "/changes#aside".to_owned(),
    }
}

fn first_undone(strokes: &[Stroke]) -> Option<&Stroke> {
    let done = last_done(strokes).map_or(0, |one| one.number);
    strokes.iter().find(|one| one.undone && one.number > done)
}
