//! `new`: a commented starter.

use super::{Ended, Outcome};
use crate::failure::Failure;
use crate::{files, terminal};
use std::path::PathBuf;

const BOOK: &str = include_str!("starter/book.toml");
const KITCHEN: &str = include_str!("starter/kitchen.toml");
const INGREDIENTS: &str = include_str!("starter/ingredients.toml");
const FORMULA: &str = include_str!("starter/formula.toml");
const STRAIGHT: &str = include_str!("starter/straight.toml");

/// A formula to begin with.
pub struct Starter {
    /// Its name.
    pub name: &'static str,
    /// What it is.
    pub about: &'static str,
    /// What it says.
    pub text: &'static str,
}

/// The formulas to begin with.
pub const fn starters() -> &'static [Starter] {
    &[
        Starter { name: "sponge", about: "a loaf with a sponge from the evening before", text: FORMULA },
        Starter { name: "straight", about: "rolls mixed and baked on one day", text: STRAIGHT },
    ]
}

/// Writes a commented starter: a whole book in a new folder, or one more formula in a book.
///
///   wellproved new my-book                     a folder with settings, a kitchen and a first formula
///   wellproved new my-book/formulas/buns.toml  one more formula
///
/// Nothing that exists is written over.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct New {
    /// The folder of the book, or the file of the formula.
    path: PathBuf,
}

impl New {
    pub fn run(self) -> Ended {
        let wanted: Vec<(PathBuf, &str)> = if self.path.extension().is_some_and(|end| end == "toml") {
            vec![(self.path.clone(), FORMULA)]
        } else {
            let inside = |file: &str| self.path.join(file);
            vec![
                (inside("book.toml"), BOOK),
                (inside("kitchens/home.toml"), KITCHEN),
                (inside("ingredients/own.toml"), INGREDIENTS),
                (inside("formulas/first-loaf.toml"), FORMULA),
            ]
        };
        if let Some((there, _)) = wanted.iter().find(|(path, _)| path.exists()) {
            return Err(Failure::new(format!("{} is there already", there.display()))
                .hint("nothing was written; choose another name")
                .into());
        }
        self.keep_the_book_whole()?;
        for (path, text) in &wanted {
            files::write_new(path, text.as_bytes())?;
            terminal::say(&format!("wrote {}", path.display()))?;
        }
        terminal::say(&format!("next: wellproved check {}", self.path.display()))?;
        Ok(Outcome::Fine)
    }

    /// Refuses what the book around the path would never read.
    fn keep_the_book_whole(&self) -> Result<(), Failure> {
        let ending = self.path.extension().map(|end| end.to_string_lossy().into_owned());
        let Some(book) = files::book_around(&self.path).filter(|_| ending.as_deref() != Some("toml")) else { return Ok(()) };
        let shown = self.path.display();
        Err(match ending {
            Some(ending) => Failure::new(format!("{shown} ends in “.{ending}”: a book's formulas are files that end in “.toml”"))
                .hint(format!("write {}", self.path.with_extension("toml").display())),
            None => Failure::new(format!("{shown} lies in the book {}, and a book holds no other book", book.display()))
                .hint(format!("choose a folder outside, or write {shown}.toml for one more formula")),
        })
    }
}
