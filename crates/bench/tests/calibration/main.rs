//! What trials teach, held to what is known beforehand: hidden vigours, limits, and trials that say nothing.

mod drifting;
mod knowledge;
mod nonsense;
mod synthetic;
mod twice;

use bench::calibration::{Parameter, What};
use bench::forecast::Calibration;
use synthetic::{Synthetic, lessons};

/// In at least 90 of 100 synthetic kitchens the hidden vigour lies within the 5 to 95 % band that three trials leave;
/// and a bake held out is foreseen at most half as far off as by the books.
#[test]
fn hidden_vigours_are_recovered() {
    let halves = std::thread::scope(|scope| {
        let [one, other] = [0..50, 50..100].map(|seeds| scope.spawn(|| seeds.map(recovered).collect::<Vec<_>>()));
        [one, other].map(|half| half.join().expect("it runs to its end"))
    });
    let kitchens: Vec<Recovered> = halves.into_iter().flatten().collect();
    let within = kitchens.iter().filter(|one| one.is_within).count();
    let rms = |of: fn(&Recovered) -> f64| (kitchens.iter().map(|one| of(one) * of(one)).sum::<f64>() / 100.0).sqrt();
    let (before, after) = (rms(|one| one.before), rms(|one| one.after));
    assert!(kitchens.iter().all(|one| one.band < 0.2), "a band that says nothing");
    assert!(within >= 90, "{within} of 100");
    assert!(after <= 0.5 * before, "{before} before, {after} after");
}

/// What three trials teach of a kitchen, and how far off a fourth bake is foreseen.
struct Recovered {
    is_within: bool,
    band: f64,
    before: f64,
    after: f64,
}

fn recovered(seed: u64) -> Recovered {
    let mut kitchen = Synthetic::seeded(seed);
    let lessons = lessons(&kitchen.book(3));
    let learnt = lessons.calibration.vigour("yeast-instant");
    assert_eq!(learnt.trials, 3);
    let held_out = kitchen.held_out();
    Recovered {
        is_within: (learnt.middle - libm::log(kitchen.vigour)).abs() <= learnt.own_band(),
        band: learnt.own_band(),
        before: held_out.off(&Calibration::default()),
        after: held_out.off(&lessons.calibration),
    }
}

/// One trial already halves the band of before; ten leave less than three do, and less of the prior.
#[test]
fn one_trial_helps_and_ten_dominate() {
    let bands: Vec<f64> = [0, 1, 3, 10]
        .into_iter()
        .map(|trials| lessons(&Synthetic::seeded(5).book(trials)).calibration.vigour("yeast-instant").own_band())
        .collect();
    assert!(bands.is_sorted_by(|wider, narrower| wider > narrower), "{bands:?}");
    assert!(bands[1] < 0.5 * bands[0] && bands[3] < 0.1, "{bands:?}");
}

/// Without noise a trial says by itself what is hidden, of the vigour and of how the dough follows the room.
#[test]
fn without_noise_the_hidden_figures_are_found() {
    for seed in [3, 4, 8] {
        let mut kitchen = Synthetic::without_noise(seed);
        let lessons = lessons(&kitchen.book(1));
        let said = |parameter: &Parameter| {
            let lesson = lessons.lessons.iter().find(|lesson| lesson.parameter == *parameter).expect("it is told of");
            lesson.evidence[0].middle
        };
        let vigour = said(&Parameter::Vigour("yeast-instant".to_owned()));
        // Heights are written in whole millimetres, temperatures in tenths.
        assert!((vigour - libm::log(kitchen.vigour)).abs() < 0.03, "{vigour} for {}", libm::log(kitchen.vigour));
        assert!((said(&Parameter::Lag) - kitchen.approach).abs() < 0.15, "{} for {}", said(&Parameter::Lag), kitchen.approach);
    }
}

/// A kitchen whose yeast is half as lively again as the books'.
const FAST: u64 = 0;

/// What the forecast makes of the trials is nearer to what was seen than the books, and with a narrower band.
#[test]
fn the_report_tells_before_and_after() {
    let lessons = lessons(&Synthetic::seeded(FAST).book(3));
    for what in [What::Doubled, What::Risen] {
        let errors = lessons.errors(what).expect("it was seen");
        assert!(errors.after < errors.before && errors.apart.expect("three trials") < errors.before, "{what:?} {errors:?}");
    }
    assert!(lessons.errors(What::Core).is_none(), "nothing was cooked");
    let learnt = lessons.calibration.time("yeast-instant", quantity::TimeSpan::hours(2.0));
    let (low, high) = learnt.band.expect("a band");
    assert!((high - low).as_hours() < 2.0 * 2.0 * bench::forecast::UNCALIBRATED);
    assert!(matches!(learnt.origin, formula::Origin::Measured(_)));
}
