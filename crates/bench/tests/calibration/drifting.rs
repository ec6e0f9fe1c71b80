//! Drift over weeks, slips of the pen, what was foreseen then, and trials side by side.

use crate::synthetic::{Synthetic, lessons};
use bench::calibration::{Evidence, Lesson, Parameter, What, beside, drift};
use bench::forecast::{Calibration, Learnt, VIGOUR};

fn lesson(said: &[f64], error: f64) -> Lesson {
    let evidence = said.iter().enumerate().map(|(trial, middle)| Evidence { trial, middle: *middle, error }).collect();
    let after = Learnt { scatter: 0.0, ..VIGOUR };
    Lesson { parameter: Parameter::Vigour("culture".to_owned()), before: VIGOUR, after, evidence }
}

/// A straight line is found exactly, and its error is that of a slope by least squares: σ/√Σ(t − t̄)² (any textbook of
/// statistics; Draper & Smith, Applied Regression Analysis, section 1.4, from memory).
#[test]
fn a_straight_drift_is_found() {
    let found = drift(&lesson(&[0.10, 0.06, 0.02, -0.02], 0.05), |trial| Some(20_000.0 + 14.0 * trial as f64)).expect("a drift");
    assert!((found.a_week + 0.02).abs() < 1e-12, "{found:?}");
    // Weeks 0, 2, 4, 6: Σ(t − 3)² = 20.
    assert!((found.error - 0.05 / 20.0_f64.sqrt()).abs() < 1e-12, "{found:?}");
    assert!(found.is_told());
    let level = drift(&lesson(&[0.1, 0.1, 0.1], 0.05), |trial| Some(7.0 * trial as f64)).expect("a drift");
    assert!(level.a_week.abs() < 1e-12 && !level.is_told());
}

#[test]
fn nothing_is_said_of_too_few_or_of_one_day() {
    assert_eq!(drift(&lesson(&[0.1, 0.2], 0.05), |trial| Some(trial as f64)), None);
    assert_eq!(drift(&lesson(&[0.1, 0.2, 0.3], 0.05), |_| Some(1.0)), None);
    assert_eq!(drift(&lesson(&[0.1, 0.2, 0.3], 0.05), |_| None), None);
}

/// What was foreseen then rests on the trials before: of the first on the books, and no trial teaches itself.
#[test]
fn what_was_foreseen_then() {
    let lessons = lessons(&Synthetic::seeded(0).book(3));
    let doubled = |trial: usize| {
        let mut figures = lessons.trials[trial].figures.iter();
        figures.find(|one| one.seen.what == What::Doubled).expect("it doubled").clone()
    };
    assert_eq!(doubled(0).then, doubled(0).before);
    // The last trial stands after all others: what the others taught is what was known.
    assert_eq!(doubled(2).then, doubled(2).apart);
    let vigour = lessons.lessons.iter().find(|one| matches!(one.parameter, Parameter::Vigour(_))).expect("its vigour");
    let (before, after) = vigour.step(2).expect("the third trial told");
    assert!(after.spread < before.spread && after.trials == 3 && before.trials == 2);
    assert_eq!(vigour.step(0).map(|(before, _)| before), Some(vigour.before.clone()));
    assert_eq!(vigour.step(7), None);
}

/// Honest trials are not asked about; a clock read twelve hours off is, with the time that was meant.
#[test]
fn a_slip_of_the_pen_is_asked_about() {
    for seed in 0..6 {
        let questions = lessons(&Synthetic::seeded(seed).book(4)).questions();
        assert!(questions.is_empty(), "{seed}: {questions:?}");
    }
    let mut book = Synthetic::seeded(3).book(4);
    let meant = book.trials[2].rises[0].doubled_after.expect("it doubled");
    book.trials[2].rises[0].doubled_after = Some(meant + quantity::TimeSpan::hours(12.0));
    let questions = lessons(&book).questions();
    let [one] = questions[..] else { panic!("{questions:?}") };
    assert_eq!(one.trial, 2);
    assert!((one.instead.expect("a time that fits") - meant.as_hours()).abs() < 1e-9, "{one:?}");
    book.trials[2].left_out = Some("the clock stood still".to_owned());
    assert!(lessons(&book).questions().is_empty());
}

/// The same bake twice is no difference; a kitchen that truly is half as fast again is told from chance.
#[test]
fn trials_side_by_side() {
    let book = Synthetic::without_noise(4).book(2);
    let formula = book.formula("dough").expect("the dough").value;
    let logged = |trial| bench::calibration::Logged { trial, formula: &formula, kitchen: formula::read::Kitchen::assumed() };
    let known = Calibration::default();
    let same = beside(&[logged(&book.trials[0]), logged(&book.trials[0])], &known);
    assert!(!same.is_empty());
    assert!(same.iter().all(|one| one.apart(0, 1) == Some(0.0) && one.seen.len() == 2), "{same:?}");
    let mut faster = book.trials[0].clone();
    let doubled = faster.rises[0].doubled_after.expect("it doubled");
    faster.rises[0].doubled_after = Some(doubled * 0.5);
    let told = beside(&[logged(&book.trials[0]), logged(&faster)], &known);
    let one = told.iter().find(|one| one.of.what == What::Doubled).expect("it doubled");
    let apart = one.apart(0, 1).expect("both saw it");
    assert!((apart + std::f64::consts::LN_2).abs() < 1e-9 && apart.abs() > one.by_chance(&known), "{apart}");
}
