//! `save`: remembers what a book says now.

use super::{Ended, Outcome};
use crate::failure::Failure;
use crate::memory::{Memory, wait};
use crate::revisions::{save_all, what_changed};
use crate::{book, terminal};
use std::path::PathBuf;
use store::{Kind, Saved, Store};

/// Remembers what a book says now: every text of it that changed since it was last saved becomes a new revision.
///
///   wellproved save saltmarsh
///   wellproved save saltmarsh --note "less salt, as the tasters asked"
///
/// Nothing saved is ever altered, and the files themselves stay as they are. A book with faults is saved too.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Save {
    /// The book's folder.
    book: PathBuf,
    /// Why it was changed.
    #[arg(long, value_name = "WORDS", default_value = "", hide_default_value = true)]
    note: String,
    /// Who saves it.
    #[arg(long, value_name = "NAME", default_value = "", hide_default_value = true)]
    by: String,
    #[command(flatten)]
    memory: Memory,
}

impl Save {
    pub fn run(self) -> Ended {
        let opened = book::open(&self.book)?;
        if !self.book.is_dir() {
            return Err(Failure::new("a book is saved whole").hint("name the book's folder").into());
        }
        wait(self.save(&opened))??;
        Ok(Outcome::Fine)
    }

    async fn save(&self, opened: &book::Opened) -> Result<(), Failure> {
        let store = self.memory.open(&opened.folder).await?;
        let (mut lines, mut unchanged) = (Vec::new(), 0);
        for (kind, name, saved) in save_all(&store, opened, &self.note, &self.by).await? {
            match saved {
                Saved::Unchanged(_) => unchanged += 1,
                Saved::New(one) => lines.push(line(&store, opened, kind, &name, one.number).await?),
            }
        }
        store.close().await;
        lines.push(match (lines.len(), unchanged) {
            (0, _) => "Nothing has changed since it was last saved.".to_owned(),
            (1, 0) => "1 file saved.".to_owned(),
            (1, same) => format!("1 file saved, {same} unchanged."),
            (new, 0) => format!("{new} files saved."),
            (new, same) => format!("{new} files saved, {same} unchanged."),
        });
        terminal::say(&lines.join("\n"))
    }
}

/// What was saved, with what changed.
async fn line(store: &Store, opened: &book::Opened, kind: Kind, name: &str, number: i64) -> Result<String, Failure> {
    let saved = format!("{} {name}: revision {number}", kind.word());
    if kind != Kind::Formula || number == 1 {
        return Ok(saved);
    }
    let changed = what_changed(store, opened, name, number).await?;
    Ok(if changed.is_empty() { saved } else { format!("{saved}: {changed}") })
}
