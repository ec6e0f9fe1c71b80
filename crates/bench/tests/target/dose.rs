//! The dose of yeast for a wanted time.

use super::{POOLISH, around, work_out};
use bench::target::{NoDose, When, yeast_for};
use formula::Formula;
use quantity::TimeSpan;

/// Handbook doses of instant yeast for preferments at 21 °C, as gathered from handbooks: 0.1 % for 12 to 16 h,
/// 0.25 % for about 8 h. They must lie within the band of the dose that is found, and near its middle.
#[test]
fn handbook_doses() {
    let formula = work_out(POOLISH);
    for (percent, hours) in [(0.1, 12.0), (0.1, 14.0), (0.1, 16.0), (0.25, 8.0)] {
        let dose = yeast_for(&formula, "poolish", ripe(hours), &around(21.0)).expect("a dose");
        let (low, middle, high) = (0.5 * dose.band.0, 0.5 * dose.factor, 0.5 * dose.band.1);
        assert!((low..=high).contains(&percent), "{hours} h: {low} … {middle} … {high} %");
        assert!((0.7..=1.45).contains(&(middle / percent)), "{hours} h: {middle} % instead of {percent} %");
    }
}

/// What is found, put in again, gives what was asked: the slow end of the band in which ripeness begins, or the
/// rise itself.
#[test]
fn the_dose_found_reaches_what_was_asked() {
    for (formula, stage, when) in [
        (super::POOLISH, "poolish", ripe(14.0)),
        (POOLISH, "poolish", ripe(9.0)),
        (super::RICH, "dough", When::Risen(TimeSpan::hours(2.0))),
    ] {
        let dose = yeast_for(&work_out(formula), stage, when, &around(21.0)).expect("a dose");
        let (got, wanted) = match when {
            When::Ripe(wanted) => (dose.reached.from.band.expect("a band").1, wanted),
            When::Risen(wanted) => (dose.reached.from.value, wanted),
        };
        super::close(got.as_hours(), wanted.as_hours(), 0.02 * wanted.as_hours(), stage);
        // Ripe just after the window opens, not in its middle.
        if matches!(when, When::Ripe(_)) {
            assert!(dose.reached.from.value < wanted && wanted < (dose.reached.from.value + dose.reached.to.value) * 0.5);
        }
    }
}

/// Less time asks for more yeast: a limit that holds at any temperature.
#[test]
fn less_time_asks_for_more_yeast() {
    let formula = work_out(POOLISH);
    let factor = |hours: f64| yeast_for(&formula, "poolish", ripe(hours), &around(21.0)).expect("a dose").factor;
    assert!(factor(8.0) > factor(12.0) && factor(12.0) > factor(16.0));
}

#[test]
fn what_cannot_be_is_told_why() {
    let formula: Formula = work_out(POOLISH);
    let ask = |stage: &str, hours: f64| yeast_for(&formula, stage, ripe(hours), &around(21.0)).map(|dose| dose.factor);
    assert_eq!(ask("no-such-stage", 8.0), Err(NoDose::NoYeast));
    assert!(matches!(ask("poolish", 0.2), Err(NoDose::OutOfReach { too_short: true, .. })));
}

fn ripe(hours: f64) -> When {
    When::Ripe(TimeSpan::hours(hours))
}
