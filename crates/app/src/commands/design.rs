//! `design`: a plan for a trial.

use super::{Ended, Outcome};
use crate::asked::trial_plan::{Asked, Tasting, drafted};
use crate::{book, terminal};
use bench::trial::panel;
use clap::ValueEnum;
use publish::trial_plan::{self, Laid};
use std::path::PathBuf;

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

impl Design {
    pub fn run(self) -> Ended {
        let asked = Asked {
            factors: self.factor,
            a_day: self.a_day,
            days: self.days,
            seed: self.seed,
            test: self.test,
            tell: self.tell,
            power: self.power,
        };
        let (plan, question) = asked.planned()?;
        let laid = Laid { plan: &plan, question, panel: panel(&question) };
        if let (Some(book), Some(formula), Some(begin)) = (&self.into, &self.formula, &self.begin) {
            let opened = book::open(book)?;
            let drafts = drafted(&plan, &opened, formula, begin)?;
            terminal::remark(&format!("{} trials drafted in {}", drafts.len(), opened.folder.join("trials").display()));
        }
        match self.format {
            Form::Text => terminal::say(&trial_plan::text(&laid, terminal::width()))?,
            Form::Html => terminal::show(&trial_plan::sheet(&laid))?,
            Form::Json => terminal::say(&format!("{:#}", trial_plan::json(&laid)))?,
        }
        Ok(Outcome::Fine)
    }
}
