//! `forecast`: what a formula will do in this kitchen.

use super::{Ended, Format, Outcome};
use crate::asked::{Formulas, InKitchen};
use crate::terminal;
use bench::forecast::foresee;

/// Foresees what a formula will do: how it ripens, rises, cooks, pours and keeps, what it holds and costs.
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
    #[arg(long, value_name = "KITCHENS", default_value_t = 0, allow_hyphen_values = true, value_parser = kitchens)]
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
            forecast.in_time = bench::target::in_time(formula, &forecast.rises, &around);
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

/// How many kitchens are tried: none, or enough for the band that 5 and 95 in 100 of them bound.
fn kitchens(text: &str) -> Result<u32, String> {
    let many = text.trim().parse::<u32>().ok().filter(|number| *number == 0 || (20..=100_000).contains(number));
    many.ok_or_else(|| "from 20 to 100000 kitchens can be tried, such as 1000; 0 tries none".to_owned())
}
