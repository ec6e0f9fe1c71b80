//! What trials taught, as a readable report with its chart, and for other programs.

mod drift;
mod figures;
mod json;
mod page;
mod sentences;
mod text;

pub use drift::drawing;
pub use figures::{figure as told, label};
pub use json::json;
pub use page::html;
pub use text::text;

use bench::calibration::{Lessons, Parameter};
use formula::read::Trial;
use std::collections::BTreeMap;

/// What is reported: the lessons of a kitchen, and what its trials and leavens are called.
#[derive(Debug)]
pub struct Report<'r> {
    /// The lessons.
    pub lessons: &'r Lessons,
    /// The trials in the same order.
    pub trials: &'r [&'r Trial],
    /// The kitchen's title.
    pub kitchen: &'r str,
    /// What readers call a yeast or a culture, by its name.
    pub leavens: BTreeMap<String, String>,
}

impl Report<'_> {
    /// What a figure is called.
    #[must_use]
    pub fn name(&self, parameter: &Parameter) -> String {
        match parameter {
            Parameter::Vigour(leaven) => format!("the vigour of {}", self.leavens.get(leaven).unwrap_or(leaven)),
            Parameter::Lag => "how a dough follows the room".to_owned(),
            Parameter::Friction => "the friction of the mixer".to_owned(),
            Parameter::Contact => "the contact of the griddle".to_owned(),
        }
    }

    /// What readers call a trial: its day and title.
    #[must_use]
    pub fn called(&self, trial: usize) -> String {
        let Some(trial) = self.trials.get(trial) else { return String::new() };
        let day = trial.date.map(|date| format!("{date}, ")).unwrap_or_default();
        format!("{day}“{}”", trial.title)
    }
}

/// What was known of a figure before any trial, and whose word that is.
#[must_use]
pub const fn ground(parameter: &Parameter) -> &'static str {
    match parameter {
        Parameter::Vigour(_) => "before: that of the books, its spread by judgement, as in `ferment::vigour`",
        Parameter::Lag => "before: common practice, no source",
        Parameter::Friction => "before: kneading warms by about 3 K, common practice, no source",
        Parameter::Contact => "before: the range published for meat on a griddle, taken over for batter (`heat::surroundings`)",
    }
}
