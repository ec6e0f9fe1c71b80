//! `design`: a plan for a trial.

use super::{Ended, Outcome};
use crate::asked::unknown;
use crate::failure::Failure;
use crate::{book, files, terminal};
use bench::trial::{Factor, Plan, Question, Test, Wanted, panel, propose};
use clap::ValueEnum;
use jiff::ToSpan;
use jiff::civil::Date;
use publish::trial_plan::{self, Laid};
use quantity::{Fraction, Measure, SpoonSystem};
use std::path::{Path, PathBuf};

/// Plans a trial: which batches to bake on which day, in which random order, and how many must taste them.
///
///   wellproved design --factor "leaven=sponge,poolish" --a-day 4
///   wellproved design --factor "leaven=sponge,poolish" --factor "yeast=0.5 %,1 %" \
///     --factor "water=65 %,70 %" --a-day 4 --days 2
///   wellproved design --factor "flour=mill A,mill B,mill C" --a-day 2 --days 3 --test paired --tell "40 %"
///
///   wellproved design --factor "yeast=0.5 %,1 %" --a-day 4 --format html > plan.html
///   wellproved design --factor "yeast=0.5 %,1 %" --a-day 4 --into saltmarsh --formula cardamom-knots \
///     --begin 2026-12-01
///
/// What days cannot hold is parted into blocks, or thinned out to a fraction; what is then mixed up is said.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Design {
    /// What is varied, and its levels: "yeast=0.5 %,1 %". May be given several times.
    #[arg(long, value_name = "NAME=LEVEL,LEVEL", required = true)]
    factor: Vec<String>,
    /// How many batches can be baked on a day.
    #[arg(long, value_name = "BATCHES")]
    a_day: usize,
    /// On how many days.
    #[arg(long, value_name = "DAYS", default_value_t = 1)]
    days: usize,
    /// Where the random order starts; the same number gives the same plan.
    #[arg(long, value_name = "NUMBER", default_value_t = 1)]
    seed: u64,
    /// What tasters are asked of two bowls.
    #[arg(long, value_enum, default_value_t = Tasting::Triangle)]
    test: Tasting,
    /// The difference worth seeing: the share of people who truly tell it.
    #[arg(long, value_name = "SHARE", default_value = "40 %")]
    tell: String,
    /// How often such a difference should be found.
    #[arg(long, value_name = "SHARE", default_value = "80 %")]
    power: String,
    /// Write each batch into this book as the draft of a trial, under the code of its bowl: what was planned is then
    /// kept, and a tasting can name it.
    #[arg(long, value_name = "BOOK", requires = "formula", requires = "begin")]
    into: Option<PathBuf>,
    /// The formula that is baked.
    #[arg(long, value_name = "NAME", requires = "into")]
    formula: Option<String>,
    /// The first day: 2026-12-01.
    #[arg(long, value_name = "DATE", requires = "into")]
    begin: Option<String>,
    /// The form of the plan.
    #[arg(long, value_enum, default_value_t = Form::Text)]
    format: Form,
}

/// The form of a plan.
#[derive(Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Form {
    /// For reading.
    Text,
    /// A page to print: the batches of each day, and labels for the bowls.
    Html,
    /// For other programs.
    Json,
}

/// What tasters are asked of two bowls.
#[derive(Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Tasting {
    /// Which of three is the odd one.
    Triangle,
    /// Which of two is the reference.
    DuoTrio,
    /// Which of two has more of what is asked, the answer expected beforehand.
    Paired,
    /// Which of two is preferred.
    Preference,
}

impl Design {
    pub fn run(self) -> Ended {
        let factors = self.factor.iter().map(|text| factor(text)).collect::<Result<Vec<_>, _>>()?;
        let wanted = Wanted { factors, a_day: self.a_day, days: self.days, seed: self.seed };
        let plan = propose(&wanted).map_err(|why| Failure::new(format!("there is no such plan: {why}")))?;
        let test = match self.test {
            Tasting::Triangle => Test::Triangle,
            Tasting::DuoTrio => Test::DuoTrio,
            Tasting::Paired => Test::PairedDirected,
            Tasting::Preference => Test::PairedPreference,
        };
        let question =
            Question { test, tell: share(&self.tell)?, significance: Fraction::percent(5.0), power: share(&self.power)? };
        let laid = Laid { plan: &plan, question, panel: panel(&question) };
        if let (Some(book), Some(formula), Some(begin)) = (&self.into, &self.formula, &self.begin) {
            keep(&plan, book, formula, begin)?;
        }
        match self.format {
            Form::Text => terminal::say(&trial_plan::text(&laid, terminal::width()))?,
            Form::Html => terminal::show(&trial_plan::sheet(&laid))?,
            Form::Json => terminal::say(&format!("{:#}", trial_plan::json(&laid)))?,
        }
        Ok(Outcome::Fine)
    }
}

/// Writes each batch as the draft of a trial; all are new files, or none is written.
fn keep(plan: &Plan, book: &Path, formula: &str, begin: &str) -> Result<(), Failure> {
    let opened = book::open(book)?;
    if !opened.book.formulas.contains_key(formula) {
        return Err(unknown("formula", formula, opened.book.formulas.keys().map(String::as_str)));
    }
    let first: Date = begin.parse().map_err(|_| Failure::new(format!("“{begin}” is no day")).hint("write it 2026-12-01"))?;
    let mut drafts = Vec::new();
    for (batches, day) in plan.days.iter().zip(0_i64..) {
        let date = first.checked_add(day.days()).map_err(|_| Failure::new("the calendar ends before the trial does"))?;
        for batch in batches {
            let file = opened.folder.join("trials").join(format!("{date}-bowl-{}.toml", batch.code));
            drafts.push((file, trial_plan::draft(plan, batch, formula, &date.to_string())));
        }
    }
    if let Some((file, _)) = drafts.iter().find(|(file, _)| file.exists()) {
        let failure = Failure::new(format!("{} is there already: nothing was written", file.display()));
        return Err(failure.hint("another --seed draws other codes"));
    }
    for (file, text) in &drafts {
        files::write_new(file, text.as_bytes())?;
    }
    terminal::remark(&format!("{} trials drafted in {}", drafts.len(), opened.folder.join("trials").display()));
    Ok(())
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
