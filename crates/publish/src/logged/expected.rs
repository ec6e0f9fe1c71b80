//! What is expected of a trial before it begins: weights and hours, each with the name under which it is noted.

use super::bowl::Level;
use super::words::called;
use crate::outlook::known::{learnt, surroundings};
use crate::words::{Units, wrap};
use bench::forecast::{Forecast, is_mixing};
use formula::read::{Action, Attention};
use formula::resolve::trial::step_seen;
use formula::{Formula, Known, Stage, Step};
use plan::countdown;
use quantity::{Between, Mass, TimeSpan, print};
use serde_json::{Value, json};

/// What is expected of a trial.
#[derive(Clone, Debug)]
pub struct Expected {
    /// The kitchen in a sentence.
    pub kitchen: String,
    /// What is weighed, in working order.
    pub weights: Vec<Weight>,
    /// What is done, in working order.
    pub moments: Vec<Moment>,
}

/// What is weighed.
#[derive(Clone, Debug)]
pub struct Weight {
    /// The name under which it is noted.
    pub name: String,
    /// The stage's title.
    pub stage: String,
    /// What readers call it.
    pub title: String,
    /// How much.
    pub mass: Mass,
    /// What the bowl of a planned trial gets instead.
    pub bowl: Option<Level>,
}

/// A step by the clock.
#[derive(Clone, Debug)]
pub struct Moment {
    /// The name under which it is noted.
    pub name: String,
    /// The stage's title.
    pub stage: String,
    /// The step's action.
    pub action: &'static str,
    /// The step in words: "bake", "the second bake".
    pub called: String,
    /// When it begins, from the beginning of all.
    pub begins: TimeSpan,
    /// How long it takes.
    pub lasts: TimeSpan,
    /// From when to when its condition is met.
    pub range: Option<Between<TimeSpan>>,
    /// Which trials that was learnt from, if any.
    pub learnt: String,
    /// What is noted of it.
    pub noted: &'static [&'static str],
}

/// What to expect of a formula in a kitchen.
#[must_use]
pub fn expected(formula: &Formula, forecast: &Forecast, units: Units) -> Expected {
    let mut moments: Vec<Moment> = countdown(formula, &forecast.rises)
        .iter()
        .map(|one| {
            let stage = formula.stage(one.at);
            let step = &stage.steps[one.step];
            let seen = step_seen(stage, one.step);
            Moment {
                name: format!("{}/{}", named(formula, one.at), seen.word()),
                stage: stage.title.clone(),
                action: step.action.word(),
                called: called(seen),
                begins: one.begins,
                lasts: one.lasts,
                range: one.foreseen.map(|seen| seen.range),
                learnt: ground(forecast, step),
                noted: if is_mixed_on(stage, one.step) { &[] } else { noted(forecast, step) },
            }
        })
        .collect();
    moments.sort_by(|a, b| a.begins.as_seconds().total_cmp(&b.begins.as_seconds()));
    let first = moments.first().map_or(TimeSpan::ZERO, |one| one.begins);
    moments.iter_mut().for_each(|one| one.begins = one.begins - first);
    let lines = formula.stages().flat_map(|(at, stage)| stage.lines.iter().map(move |line| (at, stage, line)));
    let weights = lines
        .map(|(at, stage, line)| Weight {
            name: format!("{}/{}", named(formula, at), line.name),
            stage: stage.title.clone(),
            title: line.title.clone(),
            mass: line.mass.value,
            bowl: None,
        })
        .collect();
    Expected { kitchen: surroundings(&forecast.surroundings, units), weights, moments }
}

/// A stage by its name, after its component's where several have one of that name.
fn named(formula: &Formula, at: formula::resolve::formula::StageAt) -> String {
    let stage = &formula.stage(at).name;
    let is_alone = formula.stages().filter(|(_, other)| other.name == *stage).count() == 1;
    if is_alone { stage.clone() } else { format!("{}/{stage}", formula.components[at.0].name) }
}

/// Whether a stage is mixed by a later step of that name: it comes from the bowl but once.
fn is_mixed_on(stage: &Stage, step: usize) -> bool {
    let action = stage.steps[step].action;
    is_mixing(action) && stage.steps[step + 1..].iter().any(|later| later.action == action)
}

/// What may be noted of a step, besides notes and photographs.
fn noted(forecast: &Forecast, step: &Step) -> &'static [&'static str] {
    let rises = forecast.rises.iter().flat_map(|rise| &rise.steps).any(|one| one.place == step.place);
    match step.action {
        Action::Griddle | Action::Fry => &["core", "time", "pieces", "bake-loss", "surface", "side-time", "thickness"],
        Action::Bake => &["core", "time", "pieces", "bake-loss", "thickness"],
        action if action.cooks() => &["core", "time"],
        _ if rises => &["height", "temperature", "doubled-after", "ripe-after", "room", "lasted", "ph"],
        _ if step.attention == Attention::Waiting => &["lasted", "room"],
        action if is_mixing(action) => &["temperature", "ph"],
        _ => &[],
    }
}

fn ground(forecast: &Forecast, step: &Step) -> String {
    let steps = forecast.rises.iter().flat_map(|rise| &rise.steps).filter(|one| one.place == step.place);
    let reached = steps.filter_map(|one| one.reached.as_ref()).map(|reached| &reached.from);
    reached.map(|known: &Known<TimeSpan>| learnt(known)).next().unwrap_or_default()
}

impl Expected {
    /// The expected weights and hours as text of that width.
    #[must_use]
    pub fn text(&self, width: usize) -> String {
        let mut out = wrap(&self.kitchen, width);
        out.push_str(&format!("\nWeights\n{}\n", "─".repeat(7)));
        let mut stage = "";
        for one in &self.weights {
            if one.stage != stage {
                stage = &one.stage;
                out.push_str(&format!("  {stage}\n"));
            }
            out.push_str(&format!("    {:>10}  {:<34}{}\n", print::mass(one.mass), one.title, one.name));
        }
        out.push_str(&format!("\nHours, from the beginning\n{}\n", "─".repeat(25)));
        for one in &self.moments {
            let range = one.range.map(|range| format!(", {}{}", print::time(print::rounded_time(range)), one.learnt));
            let lasts = if one.lasts > TimeSpan::ZERO {
                print::time(print::rounded_time(Between::just(one.lasts)))
            } else {
                "—".to_owned()
            };
            let line = format!("  {:>12}  {:<34}{lasts}{}", clock(one.begins), one.name, range.unwrap_or_default());
            out.push_str(&format!("{line}\n"));
        }
        out
    }

    /// The same for other programs: gram and hours.
    #[must_use]
    pub fn json(&self) -> Value {
        let weights = self
            .weights
            .iter()
            .map(|one| json!({ "name": one.name, "stage": one.stage, "title": one.title, "gram": one.mass.as_grams() }));
        let moments = self.moments.iter().map(|one| {
            json!({
                "name": one.name, "stage": one.stage, "action": one.action, "begins-hours": one.begins.as_hours(),
                "lasts-hours": one.lasts.as_hours(), "foreseen-hours": one.range.map(|range| [range.from.as_hours(), range.to.as_hours()]),
                "learnt": one.learnt.trim(), "noted": one.noted,
            })
        });
        json!({ "kitchen": self.kitchen, "weights": weights.collect::<Vec<_>>(), "hours": moments.collect::<Vec<_>>() })
    }
}

/// Hours and minutes from the beginning: "13:35".
fn clock(span: TimeSpan) -> String {
    let minutes = span.as_minutes().round() as i64;
    format!("{}:{:02}", minutes / 60, minutes % 60)
}
