//! `solve`: questions asked backwards.

use super::choices::{Choice, listed};
use super::keep::Keep;
use super::{Ended, Format, Outcome};
use crate::asked::{InKitchen, OneFormula, count, percent, time, time_of_day};
use crate::failure::Failure;
use crate::terminal;
use bench::target::{ALL, Amount, Asked, Ready, When, solve};
use quantity::Money;

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
#[command(group(clap::ArgGroup::new("when")))]
pub struct Solve {
    #[command(flatten)]
    one: OneFormula,
    /// Which target.
    target: Option<String>,
    /// The stage that is meant, by its name in the formula.
    #[arg(long, value_name = "NAME")]
    stage: Option<String>,
    /// The line that is free, by its name in the formula.
    #[arg(long, value_name = "NAME")]
    of: Option<String>,
    /// What is wanted: "62 %", "24 °C", "65 Brix", "2 Pa·s", "4 l".
    #[arg(long, value_name = "FIGURE", allow_hyphen_values = true)]
    to: Option<String>,
    /// An ingredient that comes in.
    #[arg(long, value_name = "INGREDIENT")]
    with: Option<String>,
    /// Ripe after so long: "10 h".
    #[arg(long, value_name = "TIME", group = "when", allow_hyphen_values = true)]
    ripe_after: Option<String>,
    /// Risen after so long: "90 min".
    #[arg(long, value_name = "TIME", group = "when", allow_hyphen_values = true)]
    risen_after: Option<String>,
    /// Ripe by the clock: "07:30".
    #[arg(long, value_name = "CLOCK", group = "when")]
    ripe_at: Option<String>,
    /// Risen by the clock: "07:30".
    #[arg(long, value_name = "CLOCK", group = "when")]
    risen_at: Option<String>,
    /// When it is mixed: "21:00".
    #[arg(long, value_name = "CLOCK")]
    begun: Option<String>,
    /// How many bowls or shelves.
    #[arg(long, value_name = "COUNT", allow_hyphen_values = true)]
    count: Option<String>,
    /// A figure and what it should come to: salt="2 %" of all flour, or price="0.60 EUR" a piece.
    #[arg(long, value_name = "FIGURE=SHARE", allow_hyphen_values = true)]
    aim: Vec<String>,
    /// How far each line may move: "20 %".
    #[arg(long, value_name = "PERCENT", allow_hyphen_values = true)]
    within: Option<String>,
    /// A line that stays as it is.
    #[arg(long, value_name = "NAME")]
    keep: Vec<String>,
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
        let asked = self.asked()?;
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

    fn asked(&self) -> Result<Asked, Failure> {
        let ready = match (&self.ripe_after, &self.risen_after, &self.ripe_at, &self.risen_at) {
            (Some(text), ..) => Some(Ready::After(When::Ripe(time(text)?))),
            (_, Some(text), ..) => Some(Ready::After(When::Risen(time(text)?))),
            (_, _, Some(clock), _) => Some(Ready::RipeAt(time_of_day(clock)?)),
            (.., Some(clock)) => Some(Ready::RisenAt(time_of_day(clock)?)),
            _ => None,
        };
        Ok(Asked {
            of: self.of.clone(),
            stage: self.stage.clone(),
            to: self.to.clone(),
            with: self.with.clone(),
            ready,
            begun: self.begun.as_deref().map(time_of_day).transpose()?,
            count: self.count.as_deref().map(count).transpose()?,
            within: self.within.as_deref().map(percent).transpose()?,
            aims: self.aim.iter().map(|text| aim(text)).collect::<Result<_, _>>()?,
            keep: self.keep.clone(),
        })
    }
}

/// A figure and what it should come to: `salt=2 %`, `price=0.60 EUR`.
fn aim(text: &str) -> Result<(String, Amount), Failure> {
    let wrong = || Failure::new(format!("“{text}” is no aim")).hint("write --aim salt=\"2 %\" or --aim price=\"0.60 EUR\"");
    let (name, figure) = text.split_once('=').ok_or_else(wrong)?;
    let figure = match figure.trim().parse::<Money>() {
        Ok(money) => Amount::Price(money),
        Err(_) => Amount::Share(percent(figure.trim()).map_err(|_| wrong())?),
    };
    Ok((name.trim().to_owned(), figure))
}
