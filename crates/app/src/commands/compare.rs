//! `compare`: formulas side by side.

use super::{Ended, Format, Outcome};
use crate::asked::{InKitchen, chosen, listed, proof_read};
use crate::failure::Failure;
use crate::terminal;
use formula::Formula;
use std::path::{Path, PathBuf};

/// Sets formulas side by side: overall percentages, figures, and what is foreseen of each.
///
///   wellproved compare potato-muffins.toml potato-muffins-rye.toml
///   wellproved compare saltmarsh --formula cardamom-knots --formula potato-muffins
///   wellproved compare before/loaf.toml after/loaf.toml --room "19 °C"
///
/// Two revisions of one formula are compared as two files. All are foreseen in the first one's kitchen.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Compare {
    /// Formulas' files, or books' folders with --formula.
    #[arg(required = true)]
    books: Vec<PathBuf>,
    /// Only the formulas of these names.
    #[arg(long, value_name = "NAME")]
    formula: Vec<String>,
    #[command(flatten)]
    kitchen: InKitchen,
    /// The form of the comparison.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

/// More columns than this nobody reads.
const MOST: usize = 12;

impl Compare {
    pub fn run(self) -> Ended {
        let mut all: Vec<(String, Formula)> = Vec::new();
        let mut around = None;
        for path in &self.books {
            let opened = proof_read(path)?;
            if around.is_none() {
                around = Some(self.kitchen.of(&opened)?);
            }
            let names = if path.is_dir() { &self.formula[..] } else { &[] };
            let wanted = chosen(opened.formulas(), names)?;
            all.extend(wanted.into_iter().map(|formula| (called(path), formula)));
        }
        if !(2..=MOST).contains(&all.len()) {
            let failure = Failure::new(format!("a comparison takes two to {MOST} formulas; these are {}", all.len()));
            let names = listed(all.iter().map(|(_, formula)| formula.name.as_str()));
            let hint = if all.is_empty() { names } else { format!("say --formula with some of: {names}") };
            return Err(failure.hint(hint).into());
        }
        let columns = columns(&all);
        let formulas: Vec<&Formula> = all.iter().map(|(_, formula)| formula).collect();
        let around = around.ok_or_else(|| Failure::new("there is nothing to compare"))?;
        let comparison = bench::compare::compare(&formulas, &around, &columns);
        terminal::say(&match self.format {
            Format::Text => publish::comparison::text(&comparison, terminal::width()),
            Format::Json => format!("{:#}", publish::comparison::json(&comparison)),
        })?;
        Ok(Outcome::Fine)
    }
}

fn called(path: &Path) -> String {
    path.display().to_string()
}

/// What the columns are called: by name where names differ, else by path.
fn columns(all: &[(String, Formula)]) -> Vec<String> {
    let is_named_twice = |name: &str| all.iter().filter(|(_, formula)| formula.name == name).count() > 1;
    all.iter().map(|(path, formula)| if is_named_twice(&formula.name) { path.clone() } else { formula.name.clone() }).collect()
}
