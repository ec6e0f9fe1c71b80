//! Where a formula's new text is kept: in a new file, in the place of the old one, or nowhere.

use crate::book::Opened;
use crate::failure::Failure;
use crate::{files, terminal};
use formula::Formula;
use std::path::{Path, PathBuf};

/// Where a new text goes.
#[derive(clap::Args)]
pub struct Keep {
    /// Write the new formula into this file, which must not be there yet.
    #[arg(long, value_name = "FILE", conflicts_with = "in_place")]
    write: Option<PathBuf>,
    /// Write the new formula in the place of the old one.
    #[arg(long)]
    in_place: bool,
}

impl Keep {
    /// Whether the text is to be written at all.
    pub const fn is_asked(&self) -> bool {
        self.write.is_some() || self.in_place
    }

    /// Refuses to write where nothing was chosen yet, with the question that is open.
    pub fn cannot_yet(&self, question: &str) -> Result<(), Failure> {
        if self.is_asked() {
            return Err(Failure::new(question).hint("there is nothing to write yet: name one of the list"));
        }
        Ok(())
    }

    /// Refuses a file that is there already before anything is worked out.
    pub fn can(&self) -> Result<(), Failure> {
        self.write.as_deref().map_or(Ok(()), must_be_new)
    }

    /// Writes the new text where it was asked for.
    pub fn text(&self, opened: &Opened, formula: &Formula, text: &str) -> Result<(), Failure> {
        let path = match &self.write {
            Some(file) => file.clone(),
            // Where the file is a link, what it leads to is changed and the link stays.
            None if self.in_place => {
                let path = opened.folder.join(formula.file.as_ref());
                std::fs::canonicalize(&path).map_err(|error| Failure::file("write", &path, &error))?
            }
            None => {
                terminal::remark("nothing is written: --write FILE writes the new formula, --in-place changes this one");
                return Ok(());
            }
        };
        self.can()?;
        files::write(&path, text.as_bytes())?;
        terminal::remark(&format!("written: {}", path.display()));
        Ok(())
    }
}

fn must_be_new(file: &Path) -> Result<(), Failure> {
    if std::fs::symlink_metadata(file).is_ok() {
        return Err(Failure::new(format!("{} is there already", file.display()))
            .hint("give another name; --in-place changes the formula itself"));
    }
    Ok(())
}
