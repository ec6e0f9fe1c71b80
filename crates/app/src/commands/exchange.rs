//! `exchange`: one thing for another in a formula's own text.

use super::choices::{Choice, listed};
use super::keep::Keep;
use super::{Ended, Format, Outcome};
use crate::asked::{InKitchen, OneFormula, count, length, percent, time};
use crate::failure::Failure;
use crate::terminal;
use bench::exchange::{ALL, Wishes, exchange};

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
    /// What is exchanged: a line or a stage by its name in the formula.
    #[arg(long, value_name = "NAME")]
    of: Option<String>,
    /// The stage it stands in, where its name stands in several.
    #[arg(long, value_name = "NAME")]
    stage: Option<String>,
    /// What takes its place: an ingredient, a kind, a size, a tin.
    #[arg(long, value_name = "WHAT")]
    into: Option<String>,
    /// How much of it: "30 %".
    #[arg(long, value_name = "PERCENT")]
    share: Option<String>,
    /// The hydration of what is new: "80 %".
    #[arg(long, value_name = "PERCENT")]
    hydration: Option<String>,
    /// How long what is new may take: "12 h".
    #[arg(long, value_name = "TIME")]
    time: Option<String>,
    /// How high above the sea: "1800 m".
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    altitude: Option<String>,
    /// What it was made in, where the formula does not say.
    #[arg(long, value_name = "TIN")]
    from: Option<String>,
    /// How many of what is new.
    #[arg(long, value_name = "COUNT")]
    count: Option<String>,
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
        let wishes = self.wishes()?;
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

    fn wishes(&self) -> Result<Wishes, Failure> {
        Ok(Wishes {
            of: self.of.clone(),
            stage: self.stage.clone(),
            into: self.into.clone(),
            share: self.share.as_deref().map(percent).transpose()?,
            hydration: self.hydration.as_deref().map(percent).transpose()?,
            time: self.time.as_deref().map(time).transpose()?,
            altitude: self.altitude.as_deref().map(length).transpose()?,
            from: self.from.clone(),
            count: self.count.as_deref().map(count).transpose()?,
        })
    }
}
