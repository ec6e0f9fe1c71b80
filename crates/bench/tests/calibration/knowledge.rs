//! Putting trials together, held to a worked example of the textbooks and to limits.

use bench::calibration::{Evidence, strangeness, taught};
use bench::forecast::{Learnt, VIGOUR};

fn said(figures: &[f64], error: f64) -> Vec<Evidence> {
    figures.iter().enumerate().map(|(trial, middle)| Evidence { trial, middle: *middle, error }).collect()
}

/// Box & Tiao, Bayesian Inference in Statistical Analysis (1973), section 1.2, from memory: two physicists who expect
/// 900 ± 20 and 800 ± 80 learn one measurement of 850 ± 40, then a hundred with the mean 870 ± 4.
#[test]
fn two_physicists() {
    for (middle, spread, error, measured, expected) in [
        (900.0, 20.0, 40.0, 850.0, (890.0, 17.9)),
        (800.0, 80.0, 40.0, 850.0, (840.0, 35.7)),
        (900.0, 20.0, 4.0, 870.0, (871.2, 3.9)),
        (800.0, 80.0, 4.0, 870.0, (869.8, 3.995)),
    ] {
        let prior = Learnt { middle, spread, scatter: 0.0, trials: 0 };
        let known = taught(&prior, &said(&[measured], error));
        assert!((known.middle - expected.0).abs() < 0.06 && (known.spread - expected.1).abs() < 0.1, "{known:?}");
    }
}

/// Nothing seen, nothing learnt.
#[test]
fn no_evidence_leaves_the_prior() {
    assert_eq!(taught(&VIGOUR, &[]), VIGOUR);
}

/// Ten trials that agree leave next to nothing of the prior; one leaves some of it.
#[test]
fn ten_dominate() {
    let one = taught(&VIGOUR, &said(&[0.4], 0.05));
    let ten = taught(&VIGOUR, &said(&[0.4; 10], 0.05));
    assert!(one.middle > 0.3 && one.middle < 0.36 && one.spread < 0.5 * VIGOUR.spread, "{one:?}");
    assert!(ten.middle > 0.39 && ten.spread < 0.05, "{ten:?}");
    assert!(ten.scatter < VIGOUR.scatter, "trials that agree show a steady kitchen");
}

/// Trials that disagree widen what is expected of the next bake.
#[test]
fn trials_that_disagree_widen_the_band() {
    let steady = taught(&VIGOUR, &said(&[0.1, 0.1, 0.1, 0.1], 0.05));
    let unsteady = taught(&VIGOUR, &said(&[-0.3, 0.5, -0.2, 0.4], 0.05));
    assert!(unsteady.next_band() > 1.5 * steady.next_band());
    assert!((steady.middle - unsteady.middle).abs() < 0.02, "they have the same mean");
}

/// A vague trial counts for little, and one far from the rest is strange; the rest are not made strange by it.
#[test]
fn strange_trials_stand_out() {
    let vague = taught(&VIGOUR, &[&said(&[0.0, 0.0], 0.05)[..], &[Evidence { trial: 2, middle: 1.0, error: 2.0 }]].concat());
    assert!(vague.middle.abs() < 0.02, "{vague:?}");
    let evidence = said(&[0.1, 0.05, 0.12, 0.9], 0.05);
    assert!(strangeness(&VIGOUR, &evidence, 3) > bench::calibration::OUT_OF_LINE);
    assert!((0..3).all(|which| strangeness(&VIGOUR, &evidence, which).abs() < bench::calibration::OUT_OF_LINE));
}
