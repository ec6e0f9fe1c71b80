//! `label`: what a label would say.

use super::{Ended, Outcome};
use crate::asked::{Formulas, unknown};
use crate::failure::Failure;
use crate::labelled::OnSheets;
use crate::terminal;
use bench::label::{self, EATEN_AS, Law, Sold};
use formula::Formula;

/// Drafts a label for Europe, Britain or the United States, and says what is missing.
///
/// Ingredients in their order, stated quantities, allergens set off, nutrition, net quantity,
/// date and storage, each by its rule. Without --component all components that go into no
/// other are sold together.
///
///   wellproved label potato-muffins.toml
///   wellproved label potato-muffins.toml --component muffins --for us
///   wellproved label saltmarsh --format html > labels.html
///   wellproved label potato-muffins.toml --pdf labels.pdf --sheet 105x74 --copies 8
///
/// A draft, not advice: your authority decides. What no source tells is left open, never nought.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Label {
    #[command(flatten)]
    asked: Formulas,
    /// Whose rules: the European Union's, the United Kingdom's, the United States'; by the book's language if left out.
    #[arg(long = "for", value_enum, value_name = "WHERE")]
    law: Option<Where>,
    /// Only these components, sold apart or together; may be said more than once.
    #[arg(long, value_name = "NAME")]
    component: Vec<String>,
    /// The kind of food from which American law takes the serving, instead of what the formula says.
    #[arg(long, value_name = "KIND", value_parser = kind)]
    eaten_as: Option<&'static str>,
    /// The form of the label.
    #[arg(long, value_enum, default_value_t = LabelFormat::Text)]
    format: LabelFormat,
    #[command(flatten)]
    on_sheets: OnSheets,
}

/// Whose rules.
#[derive(Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
pub enum Where {
    /// The European Union's.
    Eu,
    /// The United Kingdom's.
    Uk,
    /// The United States'.
    Us,
}

/// The forms of a label.
#[derive(Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
pub enum LabelFormat {
    /// For the terminal.
    Text,
    /// For other programs.
    Json,
    /// A sheet for a browser or the printer.
    Html,
}

impl Label {
    pub fn run(self) -> Ended {
        let (opened, formulas) = self.asked.open()?;
        let settings = &opened.book.settings;
        let mut labels = Vec::new();
        for formula in &formulas {
            let law = self.law.map_or_else(|| Law::by_language(settings.language_of(&formula.head)), Where::law);
            let sold = Sold { components: self.components(formula)?, eaten_as: self.eaten_as };
            let drafted = label::label(formula, settings, law, &sold);
            let nothing = || Failure::new(format!("“{}” makes nothing that could be labelled", formula.head.title));
            labels.push(drafted.ok_or_else(nothing)?);
        }
        if self.on_sheets.is_asked() {
            self.on_sheets.print(&labels, settings)?;
            return Ok(Outcome::Fine);
        }
        let text = |one| publish::label::text(one, terminal::width());
        terminal::say(&match self.format {
            LabelFormat::Text => labels.iter().map(text).collect::<Vec<_>>().join("\n\n"),
            LabelFormat::Json => format!("{:#}", serde_json::Value::Array(labels.iter().map(publish::label::json).collect())),
            LabelFormat::Html => publish::label::html(&labels, settings),
        })?;
        Ok(Outcome::Fine)
    }

    fn components(&self, formula: &Formula) -> Result<Vec<usize>, Failure> {
        let find = |name: &String| formula.components.iter().position(|component| component.name == *name);
        let known = || formula.components.iter().map(|component| component.name.as_str());
        self.component.iter().map(|name| find(name).ok_or_else(|| unknown("component", name, known()))).collect()
    }
}

impl Where {
    const fn law(self) -> Law {
        match self {
            Self::Eu => Law::Eu,
            Self::Uk => Law::Uk,
            Self::Us => Law::Us,
        }
    }
}

fn kind(text: &str) -> Result<&'static str, String> {
    let known = EATEN_AS.iter().copied().find(|known| *known == text);
    known.ok_or_else(|| format!("there are: {}", EATEN_AS.join(", ")))
}
