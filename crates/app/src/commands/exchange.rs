//! `exchange`: one thing for another in a formula's own text.

use super::choices::{Choice, listed};
use super::keep::Keep;
use super::{Ended, Format, Outcome};
use crate::asked::{InKitchen, OneFormula, Wished};
use crate::failure::Failure;
use crate::terminal;
use bench::exchange::{ALL, exchange};

/// Exchanges one thing for another in a formula and shows what changes, what cannot be kept, and the new times.
///
///   wellproved exchange potato-muffins.toml
///   wellproved exchange potato-muffins.toml leaven --of sponge --into rye-culture
///   wellproved exchange cardamom-knots.toml yeast --into yeast-fresh --write knots-fresh.toml
///   wellproved exchange caraway-rye-tin.toml tin --into "2 l"
///
/// Without an exchange's name, lists those that there are and what of the formula each could be made with.
/// Nothing is written unless --write or --in-place asks for it.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Exchange {
    #[command(flatten)]
    asked: OneFormula,
    /// Which exchange.
    exchange: Option<String>,
    #[command(flatten)]
    wished: Wished,
    #[command(flatten)]
    kitchen: InKitchen,
    #[command(flatten)]
    kept: Keep,
    /// The form of the report.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

impl Exchange {
    pub fn run(self) -> Ended {
        let (opened, formula) = self.asked.open()?;
        let Some(name) = &self.exchange else {
            self.kept.cannot_yet("which exchange?")?;
            let choices = ALL.iter().map(|one| Choice::of(one.name, one.about, one.asks, (one.fits)(&formula)));
            terminal::say(&listed(&format!("Exchanges in {}", formula.head.title), choices, self.format))?;
            return Ok(Outcome::Fine);
        };
        let wishes = self.wished.read()?;
        self.kept.can()?;
        let around = self.kitchen.of(&opened)?;
        let made = exchange(name, &opened.book, &formula.name, &around, &wishes).map_err(|why| {
            Failure::new(format!("the exchange “{name}” cannot be made in “{}”: {why}", formula.head.title)).hint(why.hint())
        })?;
        terminal::say(&match self.format {
            Format::Text => publish::exchanged::text(&made, terminal::width()),
            Format::Json => format!("{:#}", publish::exchanged::json(&made)),
        })?;
        self.kept.text(&opened, &formula, &made.text)?;
        Ok(Outcome::Fine)
    }
}
