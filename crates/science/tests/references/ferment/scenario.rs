//! A point of a reference file as a fermentation, and what the baker would read off it.

use super::vectors::constant;
use crate::harness::Inputs;
use quantity::{Acidity, Amount, Mass, Rate, Temperature, TimeSpan};
use science::ferment::*;

const HOLDS: [(&str, DoughKind); 8] = [
    ("liquid", DoughKind::Liquid),
    ("liquid culture", DoughKind::LiquidCulture),
    ("dough", DoughKind::Dough),
    ("culture dough", DoughKind::CultureDough),
    ("stiff", DoughKind::Stiff),
    ("sponge", DoughKind::Sponge),
    ("batter", DoughKind::Batter),
    ("thin batter", DoughKind::ThinBatter),
];

/// The dough of a point: water, salt, sugar and milk in percent of flour, and how it holds gas.
pub fn dough(inputs: &Inputs) -> Dough {
    let part = |symbol: &str| Mass::grams(10.0 * inputs.number_or(symbol, 0.0));
    let kind = HOLDS.iter().find(|(name, _)| *name == inputs.word("hold")).expect("a known hold").1;
    Dough {
        water: part("water"),
        milk: part("milk"),
        egg: part("egg"),
        fat: part("fat"),
        salt: part("salt"),
        sucrose: part("sugar"),
        hold: Hold::of(kind),
        ..Dough::default()
    }
}

/// Yeast of that form in percent of flour, or a ripe culture that carries a percentage of the flour.
pub fn leaven(inputs: &Inputs) -> Leaven {
    let mass = Mass::grams(10.0 * inputs.number("dose"));
    let yeast = |form| Leaven::yeast(Strain::Bakers, Yeast { form, mass });
    match inputs.word("leaven") {
        "fresh" => yeast(YeastForm::Fresh),
        "active dry" => yeast(YeastForm::ActiveDry),
        "instant" => yeast(YeastForm::Instant),
        _ => {
            // Kneading drives the culture's dissolved gas out; stirring a feed together leaves most of it.
            let ripe = Carried::ripe_culture(mass);
            let gas_kept = if inputs.word("hold") == "culture dough" { 0.0 } else { ripe.gas_kept };
            let mut leaven = Leaven::carried(Strain::Sourdough, Carried { gas_kept, ..ripe });
            leaven.organisms.lag = TimeSpan::hours(inputs.number_or("lag", 0.4));
            leaven
        }
    }
}

/// A constant temperature `T`; with `bench` that many hours of it, then a refrigerator at `cold`;
/// with `air` a dough that drifts from `T` to it.
fn path(inputs: &Inputs) -> TemperaturePath {
    let first = inputs.number("T");
    let approach = Rate::per_hour(inputs.number_or("approach", 0.5));
    let room = |from, air| Room { from: TimeSpan::hours(from), air: Temperature::celsius(air), approach };
    let rooms = |rooms, own_heat| TemperaturePath::Rooms { start: Temperature::celsius(first), rooms, own_heat };
    match (inputs.number_or("bench", f64::NAN), inputs.number_or("air", f64::NAN)) {
        (bench, _) if bench.is_finite() => rooms(vec![room(0.0, first), room(bench, inputs.number("cold"))], Warming::Ignored),
        (_, air) if air.is_finite() => rooms(vec![room(0.0, air)], Warming::Counted),
        _ => constant(first),
    }
}

/// The point's fermentation.
pub fn fermentation(inputs: &Inputs) -> Fermentation {
    Fermentation::new(&dough(inputs), &leaven(inputs), path(inputs))
}

/// What the output's symbol asks of the course.
pub fn read(inputs: &Inputs, output: &str) -> f64 {
    let fermentation = fermentation(inputs);
    let course = fermentation.run(TimeSpan::hours(inputs.number_or("until", 60.0)));
    let hours = |time: Option<TimeSpan>| time.map_or(f64::NAN, TimeSpan::as_hours);
    let at = |symbol| course.at(TimeSpan::hours(inputs.number(symbol))).expect("within the run");
    match output {
        "doubled" => hours(course.doubled()),
        "reached" => hours(course.risen_to(1.0 + inputs.number("rise") / 100.0)),
        "peak" => hours(course.peak().map(|peak| peak.time)),
        "height" => course.peak().map_or(f64::NAN, |peak| peak.risen),
        "used" => nearest(&course, inputs.number("used")),
        "made" => hours(course.gas_made(Amount::moles(inputs.number("C")))),
        "soured" => hours(course.soured_to(Acidity::ph(inputs.number("pH")))),
        "risen" => at("t").risen,
        "pH" => at("t").acidity.as_ph(),
        "acid" => at("t").state.acid.as_millimoles(),
        "grown" => 100.0 * (at("t").state.yeast / fermentation.start.yeast - 1.0),
        "warmed" => (at("t").temperature - at("zero").temperature).as_kelvins(),
        other => panic!("no course answers {other}"),
    }
}

/// The time at which practice uses the preferment where it lies between 90 % of its greatest rise
/// and its peak; else the nearer of the two.
fn nearest(course: &Course, used: f64) -> f64 {
    match (course.ripe(), course.peak()) {
        (Some(window), Some(peak)) => used.clamp(window.from.as_hours(), peak.time.as_hours()),
        _ => f64::NAN,
    }
}
