//! `publish`: the book as pages.

use super::{Ended, Outcome};
use crate::failure::Stopped;
use crate::memory::{Memory, wait};
use crate::press::{self, With};
use crate::tasting::evidence::Evidence;
use crate::{book, findings, looking, paper, terminal};
use formula::Diagnostic;
use std::collections::BTreeSet;
use std::path::PathBuf;

/// Proof-reads a book, works it out and writes it as pages: one self-contained file a formula, and lists that lead to them.
///
/// The pages need no network; with scripts off they are the whole recipe, with scripts on a reader can fit them to a
/// kitchen of their own. Only what changed since the last time is made anew; pages of formulas
/// that are gone are removed, files of your own are left alone. With errors in the book nothing is written.
///
/// What a formula cites as evidence is claimed only where the book's memory holds the closed tasting, or its raw data
/// lie beside it.
///
/// The lists go by title, tag and ingredient. Where book.toml states the address of the pages, there are also a feed
/// (feed.xml), a site map (sitemap.xml) and canonical links. Given one formula's file, its page is added or renewed.
#[derive(clap::Args)]
pub struct Publish {
    /// The book's folder, or one formula's file.
    book: PathBuf,
    /// The folder that the pages are written to.
    #[arg(long, value_name = "DIR", default_value = "published")]
    out: PathBuf,
    /// Print these of each formula, too, as PDF that its page leads to.
    #[arg(long, value_enum, value_name = "WHAT", value_delimiter = ',')]
    with: Vec<With>,
    #[command(flatten)]
    memory: Memory,
    /// Go on publishing whenever a file of the book changes, until you press Ctrl-C.
    #[arg(long)]
    watch: bool,
}

impl Publish {
    pub fn run(self) -> Ended {
        if !self.watch {
            return self.once();
        }
        loop {
            let seen = looking::at(&self.book, &self.out);
            match self.once() {
                Ok(_) | Err(Stopped::Faults) => {}
                Err(Stopped::Failed(failure)) => terminal::complain(&failure),
            }
            terminal::remark("looking on; Ctrl-C ends it");
            looking::until_changed(&self.book, &self.out, &seen);
        }
    }

    fn once(&self) -> Ended {
        if !self.with.is_empty() {
            paper::is_built()?;
        }
        let with: Vec<With> = self.with.iter().copied().collect::<BTreeSet<_>>().into_iter().collect();
        let opened = book::open(&self.book)?;
        press::keep_out_of_the_book(&opened.folder, &self.out)?;
        let evidence = wait(Evidence::of(&opened, &self.memory))??;
        let printed = press::print(&opened, &evidence, &self.out, &with)?;
        terminal::say_if_any(&findings::text(&printed.found, &opened.text))?;
        terminal::remark(&findings::summary(&printed.found, opened.names().len()));
        let Some(files) = printed.files else {
            terminal::remark("nothing was written: mend the errors first");
            return Ok(Outcome::FaultsFound);
        };
        terminal::remark(&format!("{}; open {}", files.told(), self.out.join("index.html").display()));
        for name in &files.left {
            let file = self.out.join(name);
            terminal::remark(&format!("{} was changed by another hand: it is left, though its formula is gone", file.display()));
        }
        Ok(if printed.found.iter().any(Diagnostic::is_fault) { Outcome::FaultsFound } else { Outcome::Fine })
    }
}
