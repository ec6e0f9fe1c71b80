//! `new`: a commented starter.

use super::{Ended, Outcome};
use crate::failure::Failure;
use crate::{files, terminal};
use std::path::PathBuf;

const BOOK: &str = include_str!("starter/book.toml");
const KITCHEN: &str = include_str!("starter/kitchen.toml");
const INGREDIENTS: &str = include_str!("starter/ingredients.toml");
const FORMULA: &str = include_str!("starter/formula.toml");

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
            return Err(Failure::new(format!("{} is there already", there.display())).hint("nothing was written; choose another name"));
        }
        for (path, text) in &wanted {
            files::write(path, text.as_bytes())?;
            terminal::say(&format!("wrote {}", path.display()));
        }
        terminal::say(&format!("next: wellproved check {}", self.path.display()));
        Ok(Outcome::Fine)
    }
}

