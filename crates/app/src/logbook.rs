//! Trials on the disk: begun, noted in, never altered in silence.
//!
//! Every entry is laid into the trial's own file, which is written whole or not at all; what the file said before is
//! then remembered as a revision.

use crate::book::Opened;
use crate::failure::{Failure, Stopped};
use crate::memory::{Memory, told};
use crate::{book, files, findings, memory, terminal};
use formula::logging::{Beginning, Entry, Noted, Unnoted, note, receive};
use formula::source::Source;
use formula::{Book, BookText, Diagnostic, Formula, Severity};
use jiff::Timestamp;
use std::path::{Path, PathBuf};
use store::{Kind, Saved, Saving, Store, hash};

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

/// What stands against an entry.
#[derive(Debug)]
pub enum Against {
    /// It could not be laid into the trial.
    Failed(Failure),
    /// The trial would have faults, which stand in these texts.
    Faults(Vec<Diagnostic>, BookText),
}

impl From<Failure> for Against {
    fn from(failure: Failure) -> Self {
        Self::Failed(failure)
    }
}

impl From<Against> for Stopped {
    /// Faults are drawn.
    fn from(against: Against) -> Self {
        match against {
            Against::Failed(failure) => Self::Failed(failure),
            Against::Faults(found, texts) => match terminal::show(&findings::text(&found, &texts)) {
                Ok(()) => {
                    terminal::remark("refused: nothing of it is noted");
                    Self::Faults
                }
                Err(failure) => Self::Failed(failure),
            },
        }
    }
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
    ///
    /// # Errors
    /// What stands against it: nothing of it is taken.
    pub fn note(&self, entries: &[Entry], number: Option<&str>, why: &str) -> Result<(Vec<Noted>, Option<String>), Against> {
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
    fn sound(&self, text: &str) -> Result<(), Against> {
        let (before, _) = self.faults(self.text());
        let (found, texts) = self.faults(text);
        let found: Vec<Diagnostic> = found
            .into_iter()
            .filter(|one| before.iter().all(|old| (old.code, &old.message) != (one.code, &one.message)))
            .collect();
        if found.is_empty() { Ok(()) } else { Err(Against::Faults(found, texts)) }
    }

    /// What is wrong with the trial if it says that.
    fn faults(&self, text: &str) -> (Vec<Diagnostic>, BookText) {
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
        self.remember_in(&store, text, words).await?;
        store.close().await;
        Ok(())
    }

    /// Remembers what the file said before a text was written, and that text.
    pub async fn remember_in(&self, store: &Store, text: &str, words: &str) -> Result<(), Failure> {
        save(store, Kind::Trial, &self.name, self.text(), "as the file was found").await?;
        save(store, Kind::Trial, &self.name, text, words).await.map(drop)
    }
}

/// A trial that is to be begun.
pub struct Wanted<'w> {
    /// The formula.
    pub formula: &'w Formula,
    /// The text of it that is baked.
    pub text: &'w str,
    /// The kitchen's name.
    pub kitchen: &'w str,
    /// What it is called; the formula's title where nothing is said.
    pub title: Option<&'w str>,
    /// Its name without the day.
    pub name: Option<&'w str>,
    /// The day.
    pub date: &'w str,
}

/// Begins a trial: writes its file, which must not be there yet, and gives its path.
pub fn begin(opened: &Opened, wanted: &Wanted) -> Result<PathBuf, Failure> {
    let (name, text) = beginning(opened, wanted)?;
    let path = opened.folder.join(memory::file_of(Kind::Trial, &name));
    files::write_new(&path, text.as_bytes())?;
    Ok(path)
}

/// The name of a trial that is to be begun, and what its file says then; refused where it is there already.
pub fn beginning(opened: &Opened, wanted: &Wanted) -> Result<(String, String), Failure> {
    let name = format!("{}-{}", wanted.date, wanted.name.unwrap_or(&wanted.formula.name));
    if !formula::read::is_plain(&name) {
        let failure = Failure::new(format!("“{name}” cannot be a trial's name"));
        return Err(failure.hint("small letters, digits and hyphens: --name less-salt"));
    }
    let is_own = opened.book.kitchen().name == wanted.kitchen;
    let beginning = Beginning {
        title: wanted.title.unwrap_or(&wanted.formula.head.title),
        formula: &wanted.formula.name,
        revision: &hash(wanted.text),
        kitchen: (!is_own).then_some(wanted.kitchen),
        date: wanted.date,
    };
    let path = opened.folder.join(memory::file_of(Kind::Trial, &name));
    if path.exists() {
        let failure = Failure::new(format!("{} is there already", path.display()));
        return Err(failure.hint("a second one on that day gets a name of its own: --name, such as --name afternoon"));
    }
    let text = formula::logging::begin(&beginning);
    Ok((name, text))
}

/// Remembers the text that is baked, unless it is remembered already, and a trial as it was begun.
pub async fn remember_begun(store: &Store, wanted: &Wanted<'_>, path: &Path) -> Result<(), Failure> {
    let trial = formula::read::stem(&path.display().to_string()).to_owned();
    let history = store.history(Kind::Formula, &wanted.formula.name).await.map_err(told)?;
    if history.iter().all(|one| one.hash != hash(wanted.text)) {
        save(store, Kind::Formula, &wanted.formula.name, wanted.text, &format!("baked in the trial {trial}")).await?;
    }
    let begun = std::fs::read_to_string(path).map_err(|error| Failure::file("read", path, &error))?;
    save(store, Kind::Trial, &trial, &begun, "begun").await.map(drop)
}

/// Saves a document under its name.
pub async fn save(store: &Store, kind: Kind, name: &str, text: &str, note: &str) -> Result<Saved, Failure> {
    let saving = Saving { kind, name, text, note, by: "", at: Timestamp::now(), from: None };
    store.save(&saving).await.map_err(told)
}

/// Waits until nobody else writes into the folder of trials; nothing where the system cannot lock a folder.
pub fn lock(path: &Path) -> Option<std::fs::File> {
    let folder = std::fs::File::open(path.parent()?).ok()?;
    folder.lock().ok()?;
    Some(folder)
}
