//! What is asked of a plan for a trial, and the drafts that are made of it.

use super::unknown;
use crate::book::Opened;
use crate::failure::Failure;
use crate::files;
use bench::trial::{Factor, Plan, Question, Test, Wanted, propose};
use clap::ValueEnum;
use jiff::ToSpan;
use jiff::civil::Date;
use publish::trial_plan::draft;
use quantity::{Fraction, Measure, SpoonSystem};

/// What is asked, as it is typed.
pub struct Asked {
    /// What is varied: "yeast=0.5 %,1 %".
    pub factors: Vec<String>,
    /// How many batches can be baked on a day.
    pub a_day: usize,
    /// On how many days.
    pub days: usize,
    /// Where the random order starts.
    pub seed: u64,
    /// What tasters are asked of two bowls.
    pub test: Tasting,
    /// The difference worth seeing.
    pub tell: String,
    /// How often it should be found.
    pub power: String,
}

/// What tasters are asked of two bowls.
#[derive(Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Tasting {
    /// Which of three is the odd one.
    Triangle,
    /// Which of two is the reference.
    DuoTrio,
    /// Which of two has more of what is asked, the answer expected beforehand.
    Paired,
    /// Which of two is preferred.
    Preference,
}

impl Tasting {
    const fn test(self) -> Test {
        match self {
            Self::Triangle => Test::Triangle,
            Self::DuoTrio => Test::DuoTrio,
            Self::Paired => Test::PairedDirected,
            Self::Preference => Test::PairedPreference,
        }
    }
}

impl Asked {
    /// The plan, and the question that its tasters are to answer.
    pub fn planned(&self) -> Result<(Plan, Question), Failure> {
        let factors = self.factors.iter().map(|text| factor(text)).collect::<Result<Vec<_>, _>>()?;
        let wanted = Wanted { factors, a_day: self.a_day, days: self.days, seed: self.seed };
        let plan = propose(&wanted).map_err(|why| Failure::new(format!("there is no such plan: {why}")))?;
        let (tell, power) = (share(&self.tell)?, share(&self.power)?);
        Ok((plan, Question { test: self.test.test(), tell, significance: Fraction::percent(5.0), power }))
    }
}

/// Writes each batch into the book as the draft of a trial, and gives their files within it, each with its text; all are
/// new, or none is written.
pub fn drafted(plan: &Plan, opened: &Opened, formula: &str, begin: &str) -> Result<Vec<(String, String)>, Failure> {
    if !opened.book.formulas.contains_key(formula) {
        return Err(unknown("formula", formula, opened.book.formulas.keys().map(String::as_str)));
    }
    let first: Date = begin.parse().map_err(|_| Failure::new(format!("“{begin}” is no day")).hint("write it 2026-12-01"))?;
    let mut drafts = Vec::new();
    for (batches, day) in plan.days.iter().zip(0_i64..) {
        let date = first.checked_add(day.days()).map_err(|_| Failure::new("the calendar ends before the trial does"))?;
        for (number, batch) in (1..).zip(batches) {
            // By its name a bowl stands where it is baked.
            let file = format!("trials/{date}-bowl-{number:02}-{}.toml", batch.code);
            drafts.push((file, draft(plan, batch, formula, &date.to_string())));
        }
    }
    if let Some((file, _)) = drafts.iter().find(|(file, _)| opened.folder.join(file).exists()) {
        let failure = Failure::new(format!("{file} is there already: nothing was written"));
        return Err(failure.hint("another --seed draws other codes"));
    }
    for (file, text) in &drafts {
        files::write_new(&opened.folder.join(file), text.as_bytes())?;
    }
    Ok(drafts)
}

/// "yeast=0.5 %,1 %".
fn factor(text: &str) -> Result<Factor, Failure> {
    let named = text.split_once('=').filter(|(name, _)| !name.trim().is_empty());
    let (name, levels) = named.ok_or_else(|| {
        Failure::new(format!("“{text}” is no factor")).hint("write its name, = and its levels: \"yeast=0.5 %,1 %\"")
    })?;
    let levels = levels.split(',').map(|level| level.trim().to_owned()).filter(|level| !level.is_empty()).collect();
    Ok(Factor { name: name.trim().to_owned(), levels })
}

/// A share that is more than nothing and less than all.
fn share(text: &str) -> Result<Fraction, Failure> {
    let measure: Option<Measure> = text.parse().ok();
    let share = measure.and_then(|measure| measure.share(SpoonSystem::Metric)).map(|share| share.to);
    share
        .filter(|share| *share > Fraction::ZERO && *share < Fraction::WHOLE)
        .ok_or_else(|| Failure::new(format!("“{text}” is no share of people")).hint("write it between 1 % and 99 %: \"40 %\""))
}
