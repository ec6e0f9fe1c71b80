//! `solve`: a question asked backwards.

use super::{Ended, Outcome};
use crate::asked::{InKitchen, OneFormula};
use crate::failure::Failure;
use crate::terminal;
use bench::target::{When, yeast_for};
use quantity::{Measure, SpoonSystem, TimeSpan, print};

/// Finds the dose of yeast with which a stage is ripe, or has risen, after a given time.
///
///   wellproved solve potato-muffins.toml --stage sponge --ripe-after "10 h"
///   wellproved solve potato-muffins.toml --stage dough --risen-after "90 min" --room "19 °C"
///
/// A preferment is ripe in the middle of its window; a dough has risen as its own step says.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
#[command(group(clap::ArgGroup::new("when").required(true)))]
pub struct Solve {
    #[command(flatten)]
    asked: OneFormula,
    /// The stage whose yeast is free, by its name in the formula.
    #[arg(long, value_name = "NAME")]
    stage: String,
    /// Ripe after so long: "10 h".
    #[arg(long, value_name = "TIME", group = "when")]
    ripe_after: Option<String>,
    /// Risen after so long: "90 min".
    #[arg(long, value_name = "TIME", group = "when")]
    risen_after: Option<String>,
    #[command(flatten)]
    kitchen: InKitchen,
}

impl Solve {
    pub fn run(self) -> Ended {
        let (opened, formula) = self.asked.open()?;
        let around = self.kitchen.of(&opened)?;
        let when = match (&self.ripe_after, &self.risen_after) {
            (Some(time), _) => When::Ripe(span(time)?),
            (None, time) => When::Risen(span(time.as_deref().unwrap_or_default())?),
        };
        let dose = yeast_for(&formula, &self.stage, when, &around)
            .map_err(|why| Failure::new(format!("no dose for “{}” of {}: {why}", self.stage, formula.head.title)))?;
        let mut out = String::new();
        for (title, stated, needed, share) in &dose.lines {
            let (stated, needed, share) = (print::mass(*stated), print::mass(*needed), print::percent(*share, 3));
            out.push_str(&format!("{title}: {needed} instead of {stated}, which is {share} of the stage's flour\n\n"));
        }
        let units = publish::Units::of(&opened.book.settings);
        out.push_str(&publish::outlook::text(&formula, &dose.forecast, units, terminal::width()));
        terminal::say(&out)?;
        Ok(Outcome::Fine)
    }
}

fn span(text: &str) -> Result<TimeSpan, Failure> {
    let wrong =
        || Failure::new(format!("“{text}” is no time")).hint("write it with its unit: \"10 h\", \"90 min\", \"1 h 30 min\"");
    let measure: Measure = text.parse().map_err(|_| wrong())?;
    let time = measure.time(SpoonSystem::Metric).ok_or_else(wrong)?;
    Ok((time.from + time.to) * 0.5)
}
