//! `publish`: the book as pages.

use super::{Ended, Outcome};
use crate::asked::Place;
use crate::failure::Failure;
use crate::{book, files, findings, terminal};
use formula::Diagnostic;
use std::path::PathBuf;

/// Proof-reads a book, works it out and writes it as pages: one self-contained file a formula, and an index.
///
/// The pages need no network; with scripts off they are the whole recipe, with scripts on a reader can fit them to
/// a kitchen of their own. With errors in the book nothing is written.
#[derive(clap::Args)]
pub struct Publish {
    /// The book's folder, or one formula's file.
    book: PathBuf,
    /// The folder that the pages are written to.
    #[arg(long, value_name = "DIR", default_value = "published")]
    out: PathBuf,
}

impl Publish {
    pub fn run(self) -> Ended {
        let opened = book::open(&self.book)?;
        let found = opened.check();
        terminal::say_if_any(&findings::text(&found, &opened.text))?;
        terminal::remark(&findings::summary(&found, opened.names().len()));
        if found.iter().any(|d| d.severity == formula::Severity::Error) {
            terminal::remark("nothing was written: mend the errors first");
            return Ok(Outcome::FaultsFound);
        }
        let formulas = opened.formulas();
        let around = Place::default().surroundings(&opened, &opened.book.kitchen())?;
        let readers = publish::reader::readers(&opened.book, &formulas, &around);
        let edition = publish::edition(&formulas, &opened.book.settings, &opened.pictures(&formulas), &readers);
        self.keep_out_of_the_book(&opened.folder)?;
        files::can_be_folder(&self.out).map_err(|failure| failure.hint("name another folder with --out"))?;
        let bar = book::progress(edition.files.len());
        for (name, bytes) in &edition.files {
            files::write(&self.out.join(name), bytes)?;
            bar.inc(1);
        }
        bar.finish_and_clear();
        terminal::remark(&format!("{} pages written; open {}", edition.files.len(), self.out.join("index.html").display()));
        Ok(if found.iter().any(Diagnostic::is_fault) { Outcome::FaultsFound } else { Outcome::Fine })
    }

    /// Refuses to write pages over the book's own folders.
    fn keep_out_of_the_book(&self, folder: &std::path::Path) -> Result<(), Failure> {
        let own = ["formulas", "ingredients", "kitchens"].iter().map(|part| folder.join(part));
        let same = |a: &std::path::Path, b: &std::path::Path| {
            std::fs::canonicalize(a).ok().is_some_and(|a| std::fs::canonicalize(b).ok() == Some(a))
        };
        if same(&self.out, folder) || own.into_iter().any(|part| same(&self.out, &part)) {
            return Err(Failure::new(format!("{} is the book itself", self.out.display())).hint("name another folder with --out"));
        }
        Ok(())
    }
}
