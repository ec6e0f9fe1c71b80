//! Figures that can hardly be meant as they were noted: they are taken, and asked about.

use super::figure::{Figure, Part};
use crate::read::{Action, StepSeen};
use crate::resolve::formula::StageAt;
use crate::resolve::trial::{cooking_step, waiting_step};
use crate::{Formula, Step};
use quantity::{Measure, SpoonSystem, TimeSpan};

/// A dough or batter before it is cooked is neither frozen through nor hot: common practice, no source.
const RAW: std::ops::RangeInclusive<f64> = -5.0..=60.0;
/// A middle that left the heat: common practice, no source.
const COOKED: std::ops::RangeInclusive<f64> = 40.0..=130.0;
/// A step lasts no tenth of its time, and not ten times as long: judgement.
const FAR: f64 = 10.0;

/// Why a figure with that value is asked about, in words; nothing where it may well be meant.
#[must_use]
pub fn doubt(figure: &Figure, value: &str, formula: &Formula) -> Option<String> {
    let measure: Measure = value.parse().ok()?;
    let at = stage(figure, formula)?;
    let celsius = || measure.temperature().map(|range| range.from.as_celsius());
    match (&figure.part, figure.key) {
        (Part::Mix | Part::Reading(..), "temperature") if !is_heated(formula, at) => {
            celsius().filter(|warm| !RAW.contains(warm)).map(|_| format!("no dough or batter is at {value} before it is cooked"))
        }
        (Part::Cook(..), "core") => {
            celsius().filter(|warm| !COOKED.contains(warm)).map(|_| format!("{value} is no middle that left the heat"))
        }
        (_, "pieces") => {
            let pieces = measure.count(SpoonSystem::Metric)?.to.as_pieces();
            (pieces.fract() != 0.0).then(|| format!("{value} is no whole number of pieces"))
        }
        (Part::Rise(named, _), "lasted") => far_off(waited(formula, at, *named)?, &measure, value),
        (Part::Cook(named, _), "time") => far_off(cooked(formula, at, *named)?, &measure, value),
        _ => None,
    }
}

fn stage(figure: &Figure, formula: &Formula) -> Option<StageAt> {
    let is_meant = |c: usize| figure.component.as_ref().is_none_or(|name| formula.components[c].name == *name);
    formula.stages().find(|((c, _), stage)| stage.name == figure.stage && is_meant(*c)).map(|(at, _)| at)
}

/// Whether a stage is scalded, boiled or melted, so that it is hot before anything is baked of it.
fn is_heated(formula: &Formula, at: StageAt) -> bool {
    let heats = |step: &Step| {
        matches!(
            step.action,
            Action::Scald | Action::Boil | Action::Simmer | Action::Reduce | Action::Melt | Action::Warm | Action::Temper
        )
    };
    formula.stage(at).steps.iter().any(heats)
}

fn waited(formula: &Formula, at: StageAt, named: StepSeen) -> Option<&Step> {
    waiting_step(formula, at, Some(named)).map(|step| &formula.stage(at).steps[step])
}

fn cooked(formula: &Formula, at: StageAt, named: StepSeen) -> Option<&Step> {
    cooking_step(formula, at, Some(named)).map(|step| &formula.stage(at).steps[step])
}

/// A time that is far off the one that the formula states.
fn far_off(step: &Step, measure: &Measure, value: &str) -> Option<String> {
    let (stated, lasted) = (step.time?, measure.time(SpoonSystem::Metric)?.to);
    let is_far = lasted > stated.to * FAR || lasted * FAR < stated.from && stated.from > TimeSpan::ZERO;
    let told = quantity::print::time(stated);
    is_far.then(|| format!("the formula states {told}, and {value} is far off"))
}
