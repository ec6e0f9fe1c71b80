//! Whose times a forecast tells, and how far they may be off: the books', or those of the kitchen's own trials.

use bench::forecast::{Forecast, UNCALIBRATED};
use formula::Formula;
use quantity::print;

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
            let trials = if vigour.trials == 1 { "1 trial".to_owned() } else { format!("{} trials", vigour.trials) };
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

/// What readers call a yeast or a culture of a formula.
fn called<'f>(formula: &'f Formula, leaven: &'f str) -> &'f str {
    let mut ingredients = formula.lines().flat_map(|(_, line)| line.ingredients());
    ingredients.find(|one| one.name == leaven).map_or(leaven, |one| &one.called)
}
