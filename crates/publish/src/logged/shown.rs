//! What was noted of a trial, each figure with what it was before.

use crate::words::wrap;
use formula::logging::figures;
use formula::read::{StepSeen, Trial};
use serde_json::{Value, json};

/// A trial as it is shown.
#[derive(Debug)]
pub struct Shown<'t> {
    /// The trial.
    pub trial: &'t Trial,
    /// Its text.
    pub text: &'t str,
    /// Which revision of the formula was baked, in words.
    pub revision: String,
    /// What changed from one remembered text to the next other than by a correction that the trial itself tells.
    pub by_hand: Vec<Change>,
}

/// A figure that changed in the file and not through the tool.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    /// Which figure.
    pub figure: String,
    /// What it was.
    pub was: String,
    /// What it is; empty where it was taken out.
    pub is: String,
    /// When that was found.
    pub at: String,
}

/// What stands in the head of a trial.
const HEAD: [&str; 5] = ["title", "formula", "revision", "kitchen", "date"];

impl Shown<'_> {
    /// As text of that width.
    #[must_use]
    pub fn text(&self, width: usize) -> String {
        let title = &self.trial.title;
        let mut out = format!("{title}\n{}\n", "═".repeat(title.chars().count()));
        let date = self.trial.date.map(|date| format!(", {date}")).unwrap_or_default();
        let kitchen = self.trial.kitchen.as_ref().map(|kitchen| format!(", kitchen {}", kitchen.value)).unwrap_or_default();
        out.push_str(&wrap(&format!("{}{}{kitchen}{date}.", self.trial.formula.value, self.revision), width));
        let told = self.told();
        if told.is_empty() {
            out.push_str("\nNothing was noted yet: missing is missing.\n");
        } else {
            out.push('\n');
        }
        for (name, value) in &told {
            let line = format!("{name:<44} {value}");
            out.push_str(&if line.chars().count() > width {
                wrap(&format!("{name}: {value}"), width)
            } else {
                format!("{line}\n")
            });
            for (was, when, why) in self.before(name) {
                out.push_str(&format!(
                    "{:<44} was {was}{}{}\n",
                    "",
                    at(&when),
                    why.map(|why| format!(": {why}")).unwrap_or_default()
                ));
            }
        }
        let gone = self.gone(&told);
        if !gone.is_empty() {
            out.push_str("\nTaken out\n─────────\n");
            gone.iter().for_each(|(name, was, when)| out.push_str(&format!("{name:<44} was {was}{}\n", at(when))));
        }
        if !self.by_hand.is_empty() {
            out.push_str("\nChanged in the file itself\n──────────────────────────\n");
            for one in &self.by_hand {
                let is = if one.is.is_empty() { "nothing" } else { &one.is };
                out.push_str(&wrap(&format!("{}: {} became {is}{}", one.figure, one.was, at(&one.at)), width));
            }
        }
        out
    }

    /// For other programs.
    #[must_use]
    pub fn json(&self) -> Value {
        let told = self.told();
        let figures = told.iter().map(|(name, value)| {
            let before = self.before(name).into_iter().map(|(was, at, why)| json!({ "was": was, "until": at, "why": why }));
            json!({ "figure": name, "value": value, "before": before.collect::<Vec<_>>() })
        });
        let gone = self.gone(&told).into_iter().map(|(name, was, at)| json!({ "figure": name, "was": was, "until": at }));
        let by_hand =
            self.by_hand.iter().map(|one| json!({ "figure": one.figure, "was": one.was, "is": one.is, "found": one.at }));
        json!({
            "name": self.trial.name, "title": self.trial.title, "formula": self.trial.formula.value, "revision": self.trial.revision,
            "date": self.trial.date.map(|date| date.to_string()), "figures": figures.collect::<Vec<_>>(),
            "taken-out": gone.collect::<Vec<_>>(), "changed-in-the-file": by_hand.collect::<Vec<_>>(),
        })
    }

    fn told(&self) -> Vec<(String, String)> {
        figures(self.text).into_iter().filter(|(name, _)| !HEAD.contains(&name.as_str())).collect()
    }

    /// What a figure was before, the oldest first.
    fn before(&self, name: &str) -> Vec<(String, String, Option<String>)> {
        let own = self.trial.corrections.iter().filter(|one| is_same_figure(&one.figure, name));
        own.map(|one| (one.was.clone(), one.at.clone().unwrap_or_default(), one.why.clone())).collect()
    }

    /// Figures that stand no longer in the trial.
    fn gone(&self, told: &[(String, String)]) -> Vec<(String, String, String)> {
        let is_gone = |figure: &str| told.iter().all(|(name, _)| !is_same_figure(figure, name));
        let own = self.trial.corrections.iter().filter(|one| is_gone(&one.figure));
        own.map(|one| (one.figure.clone(), one.was.clone(), one.at.clone().unwrap_or_default())).collect()
    }
}

/// Whether two names are of one figure; a file need not name a stage's first step.
#[must_use]
pub fn is_same_figure(one: &str, other: &str) -> bool {
    let parts = |name: &str| -> Vec<String> { name.split('/').map(str::to_owned).collect() };
    let (one, other) = (parts(one), parts(other));
    one.len() == other.len()
        && one.iter().zip(&other).enumerate().all(|(at, (a, b))| a == b || (at + 2 == one.len() && is_bare(a, b)))
}

/// Whether a part of a file that names no step means that one, which is the first of its name.
fn is_bare(step: &str, part: &str) -> bool {
    matches!(part, "rise" | "cook") && StepSeen::named(step).is_none_or(|step| step.number == 1)
}

fn at(when: &str) -> String {
    if when.is_empty() { String::new() } else { format!(" (until {when})") }
}
