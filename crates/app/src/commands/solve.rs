//! `solve`: questions asked backwards.

use super::choices::{Choice, listed};
use super::keep::Keep;
use super::{Ended, Format, Outcome};
use crate::asked::{InKitchen, OneFormula, Sought};
use crate::failure::Failure;
use crate::terminal;
use bench::target::{ALL, solve};

/// Answers questions asked backwards: what dose, when to begin, how warm the water, which blend, how large a
/// batch, how small a piece for its price.
///
///   wellproved solve potato-muffins.toml
///   wellproved solve potato-muffins.toml yeast --stage sponge --ripe-at 07:30 --begun 21:00
///   wellproved solve potato-muffins.toml begin --stage sponge --ripe-at 07:30
///   wellproved solve cardamom-knots.toml water --to "25 °C"
///   wellproved solve potato-muffins.toml syrup --to "65 Brix"
///   wellproved solve caraway-rye-tin.toml batch --to "4 l"
///   wellproved solve potato-muffins.toml price --to "0.80 EUR" --of butter-unsalted
///   wellproved solve cardamom-knots.toml reformulate --aim salt="1.8 %" --aim fat="15 %" --within "25 %"
///
/// Without a target's name, lists those that there are and what of the formula each can be asked for.
/// Nothing is written unless --write or --in-place asks for it.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Solve {
    #[command(flatten)]
    one: OneFormula,
    /// Which target.
    target: Option<String>,
    #[command(flatten)]
    sought: Sought,
    #[command(flatten)]
    kitchen: InKitchen,
    #[command(flatten)]
    kept: Keep,
    /// The form of the answer.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

impl Solve {
    pub fn run(self) -> Ended {
        let (opened, formula) = self.one.open()?;
        let Some(name) = &self.target else {
            self.kept.cannot_yet("which target?")?;
            let choices = ALL.iter().map(|one| Choice::of(one.name, one.about, one.asks, (one.fits)(&formula)));
            terminal::say(&listed(&format!("Targets in {}", formula.head.title), choices, self.format))?;
            return Ok(Outcome::Fine);
        };
        let asked = self.sought.read()?;
        self.kept.can()?;
        let around = self.kitchen.of(&opened)?;
        let solved = solve(name, &opened.book, &formula.name, &around, &asked).map_err(|why| {
            Failure::new(format!("“{name}” cannot be solved for in “{}”: {why}", formula.head.title)).hint(why.hint())
        })?;
        terminal::say(&match self.format {
            Format::Text => publish::solved::text(&solved, publish::Units::of(&opened.book.settings), terminal::width()),
            Format::Json => format!("{:#}", publish::solved::json(&solved)),
        })?;
        match &solved.changed {
            Some(changed) => self.kept.text(&opened, &formula, &changed.text)?,
            None if self.kept.is_asked() => terminal::remark("nothing is written: the formula stays as it is"),
            None => {}
        }
        Ok(Outcome::Fine)
    }
}
