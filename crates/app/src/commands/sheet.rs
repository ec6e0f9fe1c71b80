//! `sheet`: the formula sheet.

use super::{Ended, Outcome, proof_read};
use crate::failure::Failure;
use crate::terminal;
use formula::Formula;
use publish::sheet;
use std::path::PathBuf;

/// Shows the formula sheet: overall formula, stages, hydration, yields, and what your scales can show.
///
/// Percentages of the overall formula are shares of all flour; percentages of a stage are shares of
/// the flour weighed into that stage.
#[derive(clap::Args)]
pub struct Sheet {
    /// The book's folder, or one formula's file.
    book: PathBuf,
    /// Only the formula of this name.
    #[arg(long, value_name = "NAME")]
    formula: Option<String>,
    /// The form of the sheet.
    #[arg(long, value_enum, default_value_t = SheetFormat::Text)]
    format: SheetFormat,
}

/// The forms of a sheet.
#[derive(Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
pub enum SheetFormat {
    /// For the terminal.
    Text,
    /// For a spreadsheet.
    Csv,
    /// For other programs.
    Json,
    /// For a browser or the printer.
    Html,
    /// The overall formula of the main component as a drawing.
    Svg,
}

impl Sheet {
    pub fn run(self) -> Ended {
        let opened = match proof_read(&self.book)? {
            Ok(opened) => opened,
            Err(outcome) => return Ok(outcome),
        };
        let formulas = chosen(opened.formulas(), self.formula.as_deref())?;
        if self.format == SheetFormat::Svg && formulas.len() > 1 {
            return Err(Failure::new("a drawing shows one formula").hint(which(&formulas)));
        }
        terminal::say(&laid_out(&opened.book, &formulas, self.format))?;
        Ok(Outcome::Fine)
    }
}

/// The formula of a name, or all where none is asked for.
pub fn chosen(formulas: Vec<Formula>, name: Option<&str>) -> Result<Vec<Formula>, Failure> {
    let Some(name) = name else { return Ok(formulas) };
    let known: Vec<String> = formulas.iter().map(|formula| formula.name.clone()).collect();
    let found: Vec<Formula> = formulas.into_iter().filter(|formula| formula.name == name).collect();
    if found.is_empty() {
        return Err(
            Failure::new(format!("the book has no formula called “{name}”")).hint(format!("it has: {}", known.join(", ")))
        );
    }
    Ok(found)
}

/// How to say which formula is meant.
pub fn which(formulas: &[Formula]) -> String {
    let names: Vec<&str> = formulas.iter().map(|formula| formula.name.as_str()).collect();
    format!("say --formula with one of: {}", names.join(", "))
}

/// The sheets of formulas in the form asked for.
pub fn laid_out(book: &formula::Book, formulas: &[Formula], format: SheetFormat) -> String {
    let kitchen = book.kitchen();
    let sheets: Vec<sheet::Sheet> = formulas.iter().map(|formula| sheet::sheet(formula, &kitchen, &book.settings)).collect();
    match format {
        SheetFormat::Text => sheets.iter().map(|one| sheet::text(one, terminal::width())).collect::<Vec<_>>().join("\n\n"),
        SheetFormat::Csv => sheet::csv(&sheets),
        SheetFormat::Json => format!("{:#}", serde_json::Value::Array(sheets.iter().map(sheet::json).collect())),
        SheetFormat::Svg => formulas.iter().filter_map(publish::chart::overall_chart).collect::<Vec<_>>().join("\n"),
        SheetFormat::Html => publish::page::sheets(&sheets, &book.settings),
    }
}
