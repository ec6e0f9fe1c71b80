//! `store`: care of a book's memory.

use super::{Ended, Outcome};
use crate::failure::Failure;
use crate::memory::{self, Memory, told, wait};
use crate::{book, files, terminal};
use std::path::{Path, PathBuf};
use store::Store as Remembered;

/// Cares for a book's memory: checks it, copies it, writes everything out in an open form, and reads that in again.
///
///   wellproved store saltmarsh check
///   wellproved store saltmarsh copy ~/copies/saltmarsh.sqlite
///   wellproved store saltmarsh export saltmarsh.jsonl
///   wellproved store saltmarsh gather
///   wellproved store saltmarsh import saltmarsh.jsonl --store postgres://baker@server/saltmarsh
///   wellproved store found-again import saltmarsh.jsonl
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Store {
    /// The book's folder.
    book: PathBuf,
    #[command(subcommand)]
    care: Care,
    #[command(flatten)]
    memory: Memory,
}

/// What is done with it.
#[derive(clap::Subcommand)]
enum Care {
    /// Says whether it is sound, and what it holds.
    Check,
    /// Makes anew from the saved texts what is asked of them all: prices over time, figures of trials.
    Gather,
    /// Copies it, whole, while it may be in use, into a new file.
    Copy {
        /// The new file.
        file: PathBuf,
    },
    /// Writes everything it holds, a line of JSON each.
    Export {
        /// The file that is written.
        file: PathBuf,
    },
    /// Reads what was exported into an empty one; where the folder has no formula yet, the book's files are written there
    /// as they were last saved or written.
    Import {
        /// The file that is read.
        file: PathBuf,
    },
}

impl Store {
    pub fn run(self) -> Ended {
        if let Care::Import { file } = &self.care {
            self.import(file)?;
            return Ok(Outcome::Fine);
        }
        let opened = book::open(&self.book)?;
        wait(async {
            let store = self.memory.open_there(&opened.folder).await?;
            self.care.take(&store).await?;
            store.close().await;
            Ok::<_, Failure>(())
        })??;
        Ok(Outcome::Fine)
    }

    /// Reads what was exported, also into a folder that is empty or not there yet: a lost book comes back so.
    fn import(&self, file: &Path) -> Result<(), Failure> {
        let records = std::fs::read_to_string(file).map_err(|error| Failure::file("read", file, &error))?;
        files::can_be_folder(&self.book)?;
        std::fs::create_dir_all(&self.book).map_err(|error| Failure::file("make", &self.book, &error))?;
        let is_lost = book::begin(&self.book)?.book.formulas.is_empty();
        wait(async {
            let store = self.memory.open(&self.book).await?;
            store.read_records(&records).await.map_err(told)?;
            terminal::remark(&format!("read: {}", file.display()));
            if is_lost {
                let (came, there) = memory::bring_back(&store, &self.book).await?;
                terminal::remark(&format!("written as they were last: {came} files of the book"));
                there.iter().for_each(|file| terminal::remark(&format!("{file} is there already, and stays as it is")));
            }
            store.close().await;
            Ok::<_, Failure>(())
        })?
    }
}

impl Care {
    async fn take(&self, store: &Remembered) -> Result<(), Failure> {
        match self {
            Self::Check => {
                store.sound().await.map_err(told)?;
                let (revisions, editions) = (store.revisions().await.map_err(told)?, store.editions().await.map_err(told)?);
                let strokes = store.all_strokes().await.map_err(told)?.len();
                terminal::say(&format!("Sound: {} revisions, {strokes} strokes, {} editions.", revisions.len(), editions.len()))
            }
            Self::Gather => {
                let (prices, figures) = store.gather().await.map_err(told)?;
                terminal::say(&format!("Gathered from the saved texts: {prices} prices, {figures} figures of trials."))
            }
            Self::Copy { file } => {
                if file.exists() {
                    return Err(Failure::new(format!("{} is there already", file.display())).hint("give another name"));
                }
                store.back_up(file).await.map_err(told)?;
                terminal::remark(&format!("copied: {}", file.display()));
                Ok(())
            }
            Self::Export { file } => {
                files::write_new(file, store.records().await.map_err(told)?.as_bytes())?;
                terminal::remark(&format!("written: {}", file.display()));
                Ok(())
            }
            // It is begun without a book: see above.
            Self::Import { .. } => Ok(()),
        }
    }
}
