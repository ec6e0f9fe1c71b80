//! What trials teach, held to what is known beforehand: hidden vigours, limits, and trials that say nothing.

mod synthetic;

use synthetic::{Synthetic, lessons};

/// In at least 90 of 100 synthetic kitchens the hidden vigour lies within the 5 to 95 % band that three trials leave;
/// and a bake held out is foreseen at most half as far off as by the books.
#[test]
fn hidden_vigours_are_recovered() {
    let (mut within, mut before, mut after, mut widest) = (0, 0.0, 0.0, 0.0_f64);
    for seed in 0..100 {
        let mut kitchen = Synthetic::seeded(seed);
        let lessons = lessons(&kitchen.book(3));
        let learnt = lessons.calibration.vigour("yeast-instant");
        assert_eq!(learnt.trials, 3);
        within += usize::from((learnt.middle - libm::log(kitchen.vigour)).abs() <= learnt.own_band());
        widest = widest.max(learnt.own_band());
        let apart = kitchen.held_out(&lessons.calibration);
        after += apart * apart;
        let mut again = Synthetic::seeded(seed);
        again.book(3);
        let apart = again.held_out(&bench::forecast::Calibration::default());
        before += apart * apart;
    }
    let (before, after) = ((before / 100.0_f64).sqrt(), (after / 100.0_f64).sqrt());
    println!("within the band: {within} of 100, bands up to {widest:.2}; held out: {before:.3} before, {after:.3} after");
    assert!(within >= 90, "{within} of 100");
    assert!(after <= 0.5 * before, "{before} before, {after} after");
}
