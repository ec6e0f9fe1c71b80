//! `forecast`: what a formula will do in this kitchen.

use super::learn::named;
use super::sheet::chosen;
use super::{Ended, Format, Outcome, proof_read};
use crate::book::Opened;
use crate::failure::Failure;
use crate::learning::learning;
use crate::terminal;
use bench::forecast::{Surroundings, forecast_in};
use formula::read::Kitchen;
use quantity::{Measure, Temperature};
use std::path::PathBuf;

/// Foresees what doughs and preferments will do: how warm they are mixed, when they are ripe, when they have risen.
///
///   wellproved forecast potato-muffins.toml
///   wellproved forecast potato-muffins.toml --room "19 °C"
///   wellproved forecast saltmarsh --kitchen boathouse
///
/// Cooking, syrups and keeping are not foreseen yet.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Forecast {
    /// The book's folder, or one formula's file.
    book: PathBuf,
    /// Only the formula of this name.
    #[arg(long, value_name = "NAME")]
    formula: Option<String>,
    #[command(flatten)]
    kitchen: InKitchen,
    /// The form of the forecast.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

/// Which kitchen is meant.
#[derive(clap::Args)]
pub struct InKitchen {
    /// The kitchen of this name instead of the book's own.
    #[arg(long, value_name = "NAME")]
    kitchen: Option<String>,
    /// The room this warm: "19 °C".
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    room: Option<String>,
    /// The fridge this cold: "4 °C".
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    fridge: Option<String>,
    /// Leave out what the book's trials taught: the forecast of the books.
    #[arg(long)]
    without_trials: bool,
}

impl Forecast {
    pub fn run(self) -> Ended {
        let opened = match proof_read(&self.book)? {
            Ok(opened) => opened,
            Err(outcome) => return Ok(outcome),
        };
        let around = self.kitchen.surroundings(&opened)?;
        let formulas = chosen(opened.formulas(), self.formula.as_deref())?;
        let units = publish::Units::of(&opened.book.settings);
        let foreseen = formulas.iter().map(|formula| (formula, forecast_in(formula, around.clone())));
        terminal::say(&match self.format {
            Format::Text => foreseen
                .map(|(formula, forecast)| publish::outlook::text(formula, &forecast, units, terminal::width()))
                .collect::<Vec<_>>()
                .join("\n\n"),
            Format::Json => {
                format!(
                    "{:#}",
                    serde_json::Value::Array(
                        foreseen.map(|(formula, forecast)| publish::outlook::json(formula, &forecast)).collect()
                    )
                )
            }
        })?;
        Ok(Outcome::Fine)
    }
}

impl InKitchen {
    /// The kitchen asked for, with what the command line says of it.
    pub fn of(&self, book: &formula::Book) -> Result<Kitchen, Failure> {
        let mut kitchen = named(book, self.kitchen.as_deref())?;
        if let Some(room) = &self.room {
            kitchen.room = Some(temperature(room)?);
        }
        if let Some(fridge) = &self.fridge {
            kitchen.fridge = Some(temperature(fridge)?);
        }
        Ok(kitchen)
    }

    /// The kitchen asked for, with what its trials taught.
    pub fn surroundings(&self, opened: &Opened) -> Result<Surroundings, Failure> {
        let kitchen = self.of(&opened.book)?;
        let around = Surroundings::of(&kitchen);
        if self.without_trials || opened.book.trials.is_empty() {
            return Ok(around);
        }
        Ok(around.taught(learning(opened, &kitchen).lessons.calibration))
    }
}

/// A temperature in which a kitchen can be.
fn temperature(text: &str) -> Result<Temperature, Failure> {
    let wrong = || {
        Failure::new(format!("“{text}” is no temperature of a kitchen"))
            .hint("write it with its unit, between -30 °C and 60 °C: \"19 °C\"")
    };
    let measure: Measure = text.parse().map_err(|_| wrong())?;
    let value = measure.temperature().ok_or_else(wrong)?.to;
    if (-30.0..=60.0).contains(&value.as_celsius()) { Ok(value) } else { Err(wrong()) }
}
