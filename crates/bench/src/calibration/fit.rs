//! What one trial says of one figure: the least squares between what was seen and what is foreseen.

use super::knowledge::Evidence;
use super::observation::{Observation, Outlook};
use super::{Logged, Parameter};
use crate::forecast::Calibration;
use science::numeric::maximum;

/// The search stops where the figure is told so closely, as a share of its spread before any trial.
const CLOSE: f64 = 0.01;
/// How far to either side slopes are taken, as a share of that spread.
const ASIDE: f64 = 0.2;
/// The prior's standard deviations within which is searched.
const FAR: f64 = 4.0;
/// Readings that leave a figure open by more than this many of its spreads tell nothing of it.
const OPEN: f64 = 10.0;

/// Returns what a trial says of a figure, the others taken as `known`; nothing where it saw nothing that tells.
///
/// ```text
/// x̂ minimises Σ ((foreseen(x) − seen)/σ)² + ((x − m_0)/P)²
/// I = Σ (slope of foreseen/σ)²,   by the trial alone: x̂ + (x̂ − m_0)/(P²·I), error 1/√I
/// ```
///
/// Times and volumes are compared as logarithms. The prior keeps the search where the equations hold and is then
/// taken out again, so that it counts once however many trials there are.
#[must_use]
pub fn fitted(
    logged: &Logged,
    trial: usize,
    parameter: &Parameter,
    seen: &[Observation],
    known: &Calibration,
) -> Option<Evidence> {
    let base = Outlook::of(logged, known);
    let telling: Vec<&Observation> = seen.iter().filter(|one| parameter.is_told_by(one, &base)).collect();
    if telling.is_empty() {
        return None;
    }
    let off = |middle: f64| -> Vec<f64> {
        let tried = parameter.set(known, middle);
        let is_griddle = *parameter == Parameter::Contact;
        let anew = (!is_griddle).then(|| Outlook::of(logged, &tried));
        let foreseen = |one: &Observation| anew.as_ref().map_or_else(|| base.core(one, &tried), |outlook| outlook.foreseen(one));
        let one = |one: &&Observation| foreseen(one).map_or(0.0, |foreseen| one.what.off(foreseen, one.seen) / one.what.error());
        telling.iter().map(one).collect()
    };
    let prior = parameter.of(known);
    let spreads = |middle: f64| (middle - prior.middle) / prior.spread;
    let squares = |middle: f64| off(middle).iter().map(|one| one * one).sum::<f64>() + spreads(middle) * spreads(middle);
    let (far, aside) = (FAR * prior.spread, ASIDE * prior.spread);
    let best = maximum::find(|middle| -squares(middle), (prior.middle - far, prior.middle + far), CLOSE * prior.spread);
    let slopes = off(best + aside).into_iter().zip(off(best - aside)).map(|(above, below)| (above - below) / (2.0 * aside));
    let information: f64 = slopes.map(|slope| slope * slope).sum();
    let error = 1.0 / information.sqrt();
    // Not a number where nothing could be foreseen.
    if !error.is_finite() || error > OPEN * prior.spread {
        return None;
    }
    let alone = best + spreads(best) * error * error / prior.spread;
    let middle = alone.clamp(prior.middle - 2.0 * far, prior.middle + 2.0 * far);
    Some(Evidence { trial, middle, error })
}
