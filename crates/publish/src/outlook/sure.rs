//! Whose times a forecast tells, and how far they may be off: the books', or those of the kitchen's own trials.

use crate::tongue::Tongue;
use bench::forecast::{Calibration, Forecast, Rise, UNCALIBRATED};
use formula::{Formula, Origin};
use quantity::print;
use std::collections::{BTreeMap, BTreeSet};

/// How sure the times are, in words.
pub fn in_words(formula: &Formula, forecast: &Forecast) -> String {
    let calibration = &forecast.surroundings.calibration;
    let mut leavens: Vec<&str> = forecast.rises.iter().map(|rise| rise.leaven.as_str()).collect();
    leavens.sort_unstable();
    leavens.dedup();
    let known = leavens.iter().map(|leaven| (*leaven, calibration.vigour(leaven)));
    let mut told: Vec<String> = known
        .filter(|(_, vigour)| vigour.trials > 0)
        .map(|(leaven, vigour)| {
            let trials = counted(vigour.trials);
            format!(
                "Times of {} are learnt from {trials}: it is {} times as lively as in the books, and the next bake may be {} % quicker or slower.",
                called(formula, leaven),
                print::number(vigour.factor(), 2),
                print::number(vigour.next_band() * 100.0, 0)
            )
        })
        .collect();
    if told.len() < leavens.len() || told.is_empty() {
        let share = print::number(UNCALIBRATED * 100.0, 0);
        let other = if told.is_empty() { "Times" } else { "The other times" };
        told.push(format!(
            "{other} are those of the books: a kitchen that has logged no rise yet may be {share} % quicker or slower."
        ));
    }
    told.push("Look at the dough, not at the clock.".to_owned());
    told.join(" ")
}

/// Whose trials times of a formula's leavens were learnt from, for its readers; nothing where they are the books'.
pub fn for_readers(formula: &Formula, calibration: &Calibration, tongue: Tongue) -> Option<String> {
    let lines = formula.lines().flat_map(|(_, line)| line.ingredients());
    let own = lines.filter_map(|one| Some((one.called.as_str(), calibration.leavens.get(&one.name)?.trials)));
    let told: BTreeMap<&str, usize> = own.filter(|(_, trials)| *trials > 0).collect();
    let each = told.iter().map(|(called, trials)| tongue.learnt_of(*trials as f64, called, trials.to_string()));
    let each = each.collect::<Vec<_>>().join(", ");
    (!each.is_empty()).then(|| tongue.learnt_times(each))
}

/// The leavens of which rises were learnt in trials, as the kitchen's own times; nothing where they are the books'.
pub fn of_the_day<'r>(rises: impl Iterator<Item = (&'r Formula, &'r Rise)>) -> Vec<String> {
    let mut told = BTreeSet::new();
    for (formula, rise) in rises {
        let learnt = rise.steps.iter().filter_map(|step| step.reached.as_ref()).find_map(|reached| match &reached.from.origin {
            Origin::Measured(by) => by.rsplit_once(", ").map(|(_, trials)| trials.to_owned()),
            _ => None,
        });
        told.extend(learnt.map(|trials| format!("Times of {} are {trials} in this kitchen.", called(formula, &rise.leaven))));
    }
    told.into_iter().collect()
}

fn counted(trials: usize) -> String {
    if trials == 1 { "1 trial".to_owned() } else { format!("{trials} trials") }
}

/// What readers call a yeast or a culture of a formula.
fn called<'f>(formula: &'f Formula, leaven: &'f str) -> &'f str {
    let mut ingredients = formula.lines().flat_map(|(_, line)| line.ingredients());
    ingredients.find(|one| one.name == leaven).map_or(leaven, |one| &one.called)
}
