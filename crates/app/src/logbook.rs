//! Trials on the disk: begun, noted in, never altered in silence.
//!
//! Every entry is laid into the trial's own file, which is written whole or not at all; what the file said before is
//! then remembered as a revision.

use crate::book::Opened;
use crate::failure::{Failure, Stopped};
use crate::memory::{Memory, told};
use crate::{book, files, findings, terminal};
use formula::logging::{Entry, Noted, Unnoted, note, receive};
use formula::source::Source;
use formula::{Book, Diagnostic, Formula, Severity};
use jiff::Timestamp;
use sha2::{Digest, Sha256};
use std::path::{Path, PathBuf};
use store::{Kind, Saved, Saving, Store};

/// A trial in its book.
pub struct Logbook {
    /// The book.
    pub opened: Opened,
    /// The trial's name.
    pub name: String,
    /// Its file.
    pub path: PathBuf,
    /// Its file's name in the book.
    key: String,
    /// Keeps others from writing meanwhile; let go with it.
    _lock: Option<std::fs::File>,
}

impl From<Unnoted> for Failure {
    fn from(why: Unnoted) -> Self {
        Self::new(why.message).hint(why.hint)
    }
}

impl Logbook {
    /// Opens the trial of a file, such as saltmarsh/trials/2026-11-14-muffins.toml, and keeps others from writing to it.
    pub fn open(path: &Path) -> Result<Self, Failure> {
        let hint = "name a trial's file, such as saltmarsh/trials/2026-11-14-muffins.toml; `wellproved trial begin` makes one";
        if !path.is_file() || path.extension().is_none_or(|end| end != "toml") {
            return Err(Failure::new(format!("{} is no trial", path.display())).hint(hint));
        }
        let path = std::fs::canonicalize(path).map_err(|error| Failure::file("open", path, &error))?;
        let folder =
            files::book_around(&path).ok_or_else(|| Failure::new(format!("{} lies in no book", path.display())).hint(hint))?;
        let key = path.strip_prefix(&folder).map(|inner| inner.to_string_lossy().replace('\\', "/")).unwrap_or_default();
        let lock = lock(&path);
        let opened = book::open(&folder)?;
        if !key.starts_with("trials/") || !opened.text.files.contains_key(&key) {
            return Err(Failure::new(format!("{} is no trial", path.display())).hint(hint));
        }
        let name = formula::read::stem(&key).to_owned();
        Ok(Self { opened, name, path, key, _lock: lock })
    }

    /// The trial as it is read.
    pub fn trial(&self) -> Result<&formula::read::Trial, Failure> {
        let found = self.opened.book.trials.iter().find(|trial| *trial.file == *self.key);
        found.ok_or_else(|| Failure::new(format!("{} cannot be read", self.key)).hint("`wellproved check` says what is wrong"))
    }

    /// The formula that was baked, as the book has it now.
    pub fn formula(&self) -> Result<Formula, Failure> {
        let name = &self.trial()?.formula.value;
        let checked = self.opened.book.formula(name);
        checked.map(|checked| checked.value).ok_or_else(|| Failure::new(format!("the book has no formula called “{name}”")))
    }

    /// What its file says.
    pub fn text(&self) -> &str {
        self.opened.text.files.get(&self.key).map_or("", |source| &source.text)
    }

    /// The same trial in its book as it lies on the disk now, under the same lock.
    pub fn reread(&self) -> Result<Self, Failure> {
        let opened = book::open(&self.opened.folder)?;
        Ok(Self { opened, name: self.name.clone(), path: self.path.clone(), key: self.key.clone(), _lock: None })
    }

    /// Notes entries, all or none; an entry whose number was received before is not taken twice. Gives what came of it
    /// and the new text, nothing where all of it stood there already.
    pub fn note(&self, entries: &[Entry], number: Option<&str>, why: &str) -> Result<(Vec<Noted>, Option<String>), Stopped> {
        let at = Timestamp::from_second(Timestamp::now().as_second()).unwrap_or_default().to_string();
        let mut text = self.text().to_owned();
        if let Some(number) = number {
            match receive(&text, number).map_err(Failure::from)? {
                Some(new) => text = new,
                None => return Ok((Vec::new(), None)),
            }
        }
        let mut all = Vec::new();
        for entry in entries {
            let (new, noted) = note(&text, entry, &at, why).map_err(Failure::from)?;
            text = new;
            all.push(noted);
        }
        if text == self.text() {
            return Ok((all, None));
        }
        self.sound(&text)?;
        Ok((all, Some(text)))
    }

    /// Refuses a text that has faults which it did not have before.
    fn sound(&self, text: &str) -> Result<(), Stopped> {
        let (before, _) = self.faults(self.text());
        let (found, texts) = self.faults(text);
        let found: Vec<Diagnostic> = found
            .into_iter()
            .filter(|one| before.iter().all(|old| (old.code, &old.message) != (one.code, &one.message)))
            .collect();
        if found.is_empty() {
            return Ok(());
        }
        terminal::show(&findings::text(&found, &texts))?;
        terminal::remark("refused: nothing of it is noted");
        Err(Stopped::Faults)
    }

    /// What is wrong with the trial if it says that.
    fn faults(&self, text: &str) -> (Vec<Diagnostic>, formula::BookText) {
        let mut texts = self.opened.text.clone();
        texts.files.insert(self.key.clone(), Source { file: self.key.as_str().into(), text: text.to_owned() });
        let checked = Book::open(texts.clone());
        let mut found = checked.diagnostics;
        let trial = checked.value.trials.iter().find(|trial| *trial.file == *self.key);
        if let Some(formula) = trial.and_then(|trial| checked.value.formula(&trial.formula.value)) {
            found.extend(checked.value.misplaced(&formula.value));
        }
        found.retain(|one| one.severity == Severity::Error && *one.place.file == *self.key);
        (found, texts)
    }

    /// Writes a new text, and remembers what the file said before and says now.
    pub async fn keep(&self, memory: &Memory, text: &str, words: &str) -> Result<(), Failure> {
        files::write(&self.path, text.as_bytes())?;
        // What is written is kept, whatever becomes of the memory.
        if let Err(failure) = self.remember(memory, text, words).await {
            terminal::remark(&format!("noted, but not remembered as a revision: {failure}"));
        }
        Ok(())
    }

    async fn remember(&self, memory: &Memory, text: &str, words: &str) -> Result<(), Failure> {
        let store = memory.open(&self.opened.folder).await?;
        save(&store, Kind::Trial, &self.name, self.text(), "as the file was found").await?;
        save(&store, Kind::Trial, &self.name, text, words).await?;
        store.close().await;
        Ok(())
    }
}

/// Saves a document under its name.
pub async fn save(store: &Store, kind: Kind, name: &str, text: &str, note: &str) -> Result<Saved, Failure> {
    let saving = Saving { kind, name, text, note, by: "", at: Timestamp::now(), from: None };
    store.save(&saving).await.map_err(told)
}

/// The name of a text: its SHA-256.
pub fn hash(text: &str) -> String {
    Sha256::digest(text.as_bytes()).iter().map(|byte| format!("{byte:02x}")).collect()
}

/// Waits until nobody else writes into the folder of trials; nothing where the system cannot lock a folder.
fn lock(path: &Path) -> Option<std::fs::File> {
    let folder = std::fs::File::open(path.parent()?).ok()?;
    folder.lock().ok()?;
    Some(folder)
}
