//! `forecast`: what a formula will do in this kitchen.

use super::{Ended, Format, Outcome};
use crate::asked::{Formulas, InKitchen};
use crate::terminal;
use bench::forecast::foresee;

/// Foresees what doughs and preferments will do: how warm they are mixed, when they are ripe, when they have risen.
///
///   wellproved forecast potato-muffins.toml
///   wellproved forecast potato-muffins.toml --room "19 °C"
///   wellproved forecast saltmarsh --kitchen boathouse
///   wellproved forecast potato-muffins.toml --draws 1000
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Forecast {
    #[command(flatten)]
    asked: Formulas,
    #[command(flatten)]
    kitchen: InKitchen,
    /// Try it in so many kitchens that differ as kitchens do, such as 1000: bands, and what they come from.
    #[arg(long, value_name = "KITCHENS", default_value_t = 0, value_parser = clap::value_parser!(u32).range(0..=100_000))]
    draws: u32,
    /// Which thousand kitchens: the same seed tries the same ones.
    #[arg(long, value_name = "NUMBER", default_value_t = 1)]
    seed: u64,
    /// The form of the forecast.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

impl Forecast {
    pub fn run(self) -> Ended {
        let (opened, formulas) = self.asked.open()?;
        let around = self.kitchen.of(&opened)?;
        let units = publish::Units::of(&opened.book.settings);
        let foreseen = formulas.iter().map(|formula| {
            let mut forecast = foresee(formula, &around);
            let costs = bench::cost::cost(formula, &forecast, &opened.book.prices, &opened.book.settings);
            forecast.cost = costs.map(|costs| costs.with_hands(plan::hands(formula), &opened.book.prices));
            if self.draws > 0 {
                forecast.spread = Some(bench::draws::spread(formula, &around, self.draws as usize, self.seed));
            }
            (formula, forecast)
        });
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
