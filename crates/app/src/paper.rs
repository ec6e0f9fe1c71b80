//! Paper: a PDF beside what a command says, where the program was built with it.

use crate::failure::Failure;
use crate::{files, terminal};
use serde_json::Value;
use std::path::PathBuf;

/// Where a PDF goes, and on what paper.
#[derive(clap::Args)]
pub struct OnPaper {
    /// Print it into this file instead, a PDF; one that is there is replaced.
    #[arg(long, value_name = "FILE")]
    pdf: Option<PathBuf>,
    /// The paper.
    #[arg(long, value_enum, value_name = "SIZE", default_value_t = Paper::A4)]
    paper: Paper,
}

/// Sheets of paper.
#[derive(Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
pub enum Paper {
    /// 210 x 297 mm.
    A4,
    /// 148 x 210 mm.
    A5,
    /// 8.5 x 11 in.
    Letter,
    /// A card of 5 x 3 in.
    Index,
}

/// What is printed.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Printed {
    /// A recipe card.
    Card,
    /// A formula sheet.
    Sheet,
    /// A day's list.
    Prep,
}

impl OnPaper {
    /// Whether a PDF is asked for.
    pub const fn is_asked(&self) -> bool {
        self.pdf.is_some()
    }

    /// Prints, where it is asked for.
    pub fn print(&self, what: Printed, words: &Value) -> Result<(), Failure> {
        let Some(file) = &self.pdf else { return Ok(()) };
        files::write(file, &set(what, self.paper, words)?)?;
        terminal::remark(&format!("printed: {}", file.display()));
        Ok(())
    }
}

/// Whether this program can print.
pub fn is_built() -> Result<(), Failure> {
    #[cfg(not(feature = "pdf"))]
    return Err(built_without());
    #[cfg(feature = "pdf")]
    Ok(())
}

/// What is printed, set in type.
#[cfg(feature = "pdf")]
pub fn set(what: Printed, paper: Paper, words: &Value) -> Result<Vec<u8>, Failure> {
    let form = match what {
        Printed::Card => paper::Form::Card,
        Printed::Sheet => paper::Form::Sheet,
        Printed::Prep => paper::Form::Prep,
    };
    let size = match paper {
        Paper::A4 => paper::Size::A4,
        Paper::A5 => paper::Size::A5,
        Paper::Letter => paper::Size::Letter,
        Paper::Index => paper::Size::Index,
    };
    paper::pdf(form, size, words).map_err(|why| Failure::new(why.to_string()))
}

/// This program was built without.
#[cfg(not(feature = "pdf"))]
pub fn set(_: Printed, _: Paper, _: &Value) -> Result<Vec<u8>, Failure> {
    Err(built_without())
}

/// Why this program prints nothing.
#[cfg(not(feature = "pdf"))]
pub fn built_without() -> Failure {
    let hint =
        "build it with: cargo install --path crates/app --features pdf; or print the page or the HTML sheet from a browser";
    Failure::new("this program was built without PDF, which takes long to build").hint(hint)
}
