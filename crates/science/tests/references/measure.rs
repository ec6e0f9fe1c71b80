//! measure against its references.

use crate::harness::{Case, Inputs, Row, check};
use quantity::{Mass, TemperatureDifference, Volume};
use science::entry::count;
use science::measure::{egg, scale, spoon, thermometer, yeast};

/// How each equation answers a point.
pub const CASES: &[Case] = &[
    ("measure::scale", weigh),
    ("measure::thermometer", |at, _| thermometer::within(TemperatureDifference::kelvins(at.number("a"))).as_kelvins()),
    ("measure::spoon", spooned),
    ("measure::egg", crack),
    ("measure::yeast", leaven),
];

fn weigh(at: &Inputs, output: &str) -> f64 {
    let step = Mass::grams(at.number("d"));
    match output {
        "u" => scale::reading(step).as_grams(),
        "weighing" => scale::weighing(step).as_grams(),
        "total" => scale::total(&vec![scale::reading(step); at.number("n") as usize]).as_grams(),
        "relative" => scale::relative(step, Mass::grams(at.number("m"))).as_percent(),
        _ => {
            let (water, flour) = (Mass::grams(at.number("water")), Mass::grams(at.number("flour")));
            let tared = |amount| quantity::Fraction::ratio(scale::weighing(step) / amount);
            let relative = scale::quotient(&[tared(water), tared(flour)]);
            scale::expanded(water * relative) / flour * 100.0
        }
    }
}

fn spooned(at: &Inputs, output: &str) -> f64 {
    let food = spoon::named(at.word("food")).expect("a known food");
    let volume = Volume::millilitres(at.number("V"));
    let between = spoon::spooned(volume, food.density, food.spread);
    match output {
        "least" => between.from.as_grams(),
        "most" => between.to.as_grams(),
        _ => (volume * food.density).as_grams(),
    }
}

fn crack(at: &Inputs, output: &str) -> f64 {
    if output == "m" {
        return egg::class(egg::Grading::American, at.word("cls")).expect("a known class").usual.as_grams();
    }
    if output == "usual" {
        return egg::class(egg::Grading::European, at.word("cls")).expect("a known class").usual.as_grams();
    }
    let parts = egg::parts(Mass::grams(at.number("m")));
    match output {
        "white" => parts.white,
        "yolk" => parts.yolk,
        "shell" => parts.shell,
        _ => parts.without_shell,
    }
    .as_grams()
}

fn leaven(at: &Inputs, output: &str) -> f64 {
    let form = |key| match at.word(key) {
        "fresh" => yeast::Form::Fresh,
        "active-dry" => yeast::Form::ActiveDry,
        _ => yeast::Form::Instant,
    };
    if output == "solids" {
        return yeast::figures(form("of")).expect("a known form").solids.as_percent();
    }
    let equivalent = yeast::equivalent(Mass::grams(at.number("m")), form("of"), form("into"));
    match output {
        "least" => equivalent.spread.from,
        "most" => equivalent.spread.to,
        _ => equivalent.usual,
    }
    .as_grams()
}

/// The rows of the published table.
pub fn rows() -> Vec<Row> {
    check("measure", CASES)
}

#[test]
fn every_reference_of_measure_is_met() {
    rows();
}

#[test]
fn every_entry_of_the_data_is_read() {
    assert_eq!(spoon::known().len(), count(spoon::DATA, "spooned"));
    assert_eq!(egg::classes().len(), count(egg::DATA, "class"));
    assert_eq!(yeast::forms().len(), 3);
}

/// Delegated Regulation (EU) 2023/2465: XL from 73 g, L from 63 g, M from 53 g, S below.
#[test]
fn a_european_class_begins_with_its_lightest_egg() {
    for (grams, name) in [(73.0, "XL"), (72.99, "L"), (63.0, "L"), (62.99, "M"), (53.0, "M"), (52.99, "S")] {
        assert_eq!(egg::european(Mass::grams(grams)).map(|class| class.name.as_str()), Some(name));
    }
    assert!(egg::european(Mass::grams(f64::NAN)).is_none());
}

/// Common practice, no source: three large eggs and a yolk are 167 g.
#[test]
fn three_large_eggs_and_a_yolk() {
    let large = egg::class(egg::Grading::American, "large").expect("a class");
    let parts = egg::parts(large.usual);
    let bowl = parts.without_shell * 3.0 + parts.yolk;
    assert!((bowl.as_grams() - 167.0).abs() < 2.0);
}

/// Common practice, no source: above 2 % of uncertainty an amount wants a finer scale, as 5 g on a 1 g scale do.
#[test]
fn a_spoonful_wants_a_finer_scale() {
    assert_eq!(scale::TOO_SMALL_FOR_THE_SCALE.as_percent(), 2.0);
    let five = |step| scale::relative(Mass::grams(step), Mass::grams(5.0));
    assert!(five(1.0) > scale::TOO_SMALL_FOR_THE_SCALE && five(0.1) < scale::TOO_SMALL_FOR_THE_SCALE);
}
