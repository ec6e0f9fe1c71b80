//! `sheet`: the formula sheet.

use super::{Ended, Outcome};
use crate::asked::{Formulas, which};
use crate::failure::Failure;
use crate::paper::{OnPaper, Printed};
use crate::terminal;
use formula::Formula;
use publish::sheet;

/// Shows the formula sheet: overall formula, stages, hydration, yields, and what your scales can show.
///
/// Percentages of the overall formula are shares of all flour; percentages of a stage are shares of
/// the flour weighed into that stage.
#[derive(clap::Args)]
pub struct Sheet {
    #[command(flatten)]
    asked: Formulas,
    /// The form of the sheet.
    #[arg(long, value_enum, default_value_t = SheetFormat::Text)]
    format: SheetFormat,
    #[command(flatten)]
    on_paper: OnPaper,
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
        let (opened, formulas) = self.asked.open()?;
        if self.format == SheetFormat::Svg && formulas.len() > 1 {
            return Err(Failure::new("a drawing shows one formula").hint(which(&formulas)).into());
        }
        if self.on_paper.is_asked() {
            let [formula] = &formulas[..] else {
                return Err(Failure::new("a PDF shows one formula").hint(which(&formulas)).into());
            };
            let settings = &opened.book.settings;
            let sheet = sheet::sheet(formula, &opened.book.kitchen(), settings);
            let words = publish::print::sheet(&sheet, formula, settings);
            self.on_paper.print(Printed::Sheet, &words)?;
            return Ok(Outcome::Fine);
        }
        terminal::say(&laid_out(&opened.book, &formulas, self.format))?;
        Ok(Outcome::Fine)
    }
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
