//! Many kitchens: repeatable, in step with what is varied, and blamed rightly.

use crate::{LOAF, kitchen, work_out};
use bench::draws::{Cause, Spread, What, blamed, spread};
use bench::forecast::{Surroundings, forecast};
use formula::read::Action;

fn tried(yeast: &str, kitchens: usize, seed: u64) -> Spread {
    let loaf = work_out(&LOAF.replace("yeast-instant = \"5 g\"", &format!("yeast-instant = \"{yeast}\"")));
    spread(&loaf, &Surroundings::of(&kitchen(21.0)), kitchens, seed)
}

fn doubling(spread: &Spread) -> &bench::draws::Shown {
    spread.shown.iter().find(|shown| shown.what == What::Reached(Action::Bulk)).expect("it doubles")
}

#[test]
fn the_same_seed_tries_the_same_kitchens() {
    let (one, again, other) = (tried("5 g", 60, 1), tried("5 g", 60, 1), tried("5 g", 60, 2));
    assert_eq!(doubling(&one).band, doubling(&again).band);
    assert_ne!(doubling(&one).band, doubling(&other).band);
}

/// The middle of all kitchens is near the forecast of the kitchen itself, whose figure lies in the band.
#[test]
fn the_band_holds_the_forecast() {
    let foreseen = forecast(&work_out(LOAF), &kitchen(21.0));
    let own = foreseen.rises[0].steps[0].reached.as_ref().expect("it doubles").from.value.as_hours();
    let shown = tried("5 g", 300, 3);
    let (low, high) = doubling(&shown).band;
    assert!(low < own && own < high && (doubling(&shown).middle / own - 1.0).abs() < 0.1, "{own} {:?}", doubling(&shown));
}

/// On a scale that shows whole grams 1 g of yeast is a guess, 50 g are not: the blame follows.
#[test]
fn a_coarse_scale_is_blamed_for_a_pinch() {
    let share = |yeast: &str| {
        let shown = tried(yeast, 300, 4);
        let blame = &doubling(&shown).blame;
        blame.iter().find(|(cause, _)| matches!(cause, Cause::Yeast(_))).map_or(0.0, |(_, share)| share.as_ratio())
    };
    assert!(share("1 g") > 0.2 && share("15 g") < 0.05, "{} {}", share("1 g"), share("15 g"));
}

/// Of a straight sum 2a + b the variance is 4/5 a's and 1/5 b's (Saltelli and others, Global Sensitivity
/// Analysis, 2008, section 1.2.1, from memory); c has no part in it.
#[test]
fn a_straight_sum_is_shared_out_by_its_squares() {
    let mut numbers = (0..4000_u64).map(|n| {
        let part = |k: u64| (n.wrapping_mul(k) % 4001) as f64 / 4001.0 - 0.5;
        vec![part(1), part(1597), part(2584)]
    });
    let draws: Vec<Vec<f64>> = numbers.by_ref().collect();
    let seen: Vec<(&Vec<f64>, f64)> = draws.iter().map(|draw| (draw, 2.0 * draw[0] + draw[1])).collect();
    let shares = blamed(&seen);
    assert!((shares[0] - 0.8).abs() < 0.03 && (shares[1] - 0.2).abs() < 0.03 && shares[2] < 0.01, "{shares:?}");
}

/// Yeast by the spoon scatters with the spoons: they are to blame, and no scale is.
#[test]
fn spoons_are_blamed_for_what_they_measure() {
    let shown = tried("1 tsp", 300, 5);
    let named = |wanted: &Cause| doubling(&shown).blame.iter().any(|(cause, _)| cause == wanted);
    assert!(named(&Cause::Spoons), "{:?}", doubling(&shown).blame);
    let plain = tried("5 g", 300, 5);
    assert!(doubling(&plain).blame.iter().all(|(cause, _)| *cause != Cause::Spoons));
}
