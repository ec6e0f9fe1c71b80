//! Questions asked backwards.

use super::{around, demo};
use bench::target::{NoDose, When, yeast_for};
use quantity::TimeSpan;

/// What is found, put in again, gives what was asked: for preferment and dough.
#[test]
fn the_dose_found_reaches_what_was_asked() {
    let formula = demo().formula("potato-muffins").expect("the demo").value;
    for (stage, when, wanted) in [
        ("sponge", When::Ripe(TimeSpan::hours(14.0)), 14.0),
        ("sponge", When::Ripe(TimeSpan::hours(9.0)), 9.0),
        ("dough", When::Risen(TimeSpan::hours(2.0)), 2.0),
    ] {
        let dose = yeast_for(&formula, stage, when, &around(21.0)).expect("a dose");
        let rise = dose
            .forecast
            .rises
            .iter()
            .find(|rise| rise.at == if stage == "sponge" { (0, 0) } else { (0, 1) })
            .expect("the stage");
        let window = rise.steps.iter().find_map(|step| step.reached.clone()).expect("a time");
        let got = match when {
            When::Ripe(_) => (window.from.value + window.to.value) * 0.5,
            When::Risen(_) => window.from.value,
        };
        assert!((got.as_hours() - wanted).abs() < 0.02 * wanted, "{stage}: {} h instead of {wanted}", got.as_hours());
    }
}

/// Less time asks for more yeast: a limit that holds at any temperature.
#[test]
fn less_time_asks_for_more_yeast() {
    let formula = demo().formula("potato-muffins").expect("the demo").value;
    let factor =
        |hours: f64| yeast_for(&formula, "sponge", When::Ripe(TimeSpan::hours(hours)), &around(21.0)).expect("a dose").factor;
    assert!(factor(8.0) > factor(12.0) && factor(12.0) > factor(16.0));
}

#[test]
fn what_cannot_be_is_told_why() {
    let formula = demo().formula("potato-muffins").expect("the demo").value;
    let ask = |stage: &str, hours: f64| {
        yeast_for(&formula, stage, When::Ripe(TimeSpan::hours(hours)), &around(21.0)).map(|dose| dose.factor)
    };
    assert_eq!(ask("no-such-stage", 8.0), Err(NoDose::NoYeast));
    assert!(matches!(ask("sponge", 0.2), Err(NoDose::OutOfReach { too_short: true, .. })));
}
