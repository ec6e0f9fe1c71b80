//! ferment against its references.

use crate::harness::{Case, Inputs, Row, check};
use quantity::{Acidity, Amount, Fraction, Mass, Rate, Temperature, TimeSpan};
use science::ferment::*;
use science::numeric::dormand_prince::integrate;
use science::numeric::{maximum, root};

mod practice;
mod properties;
mod scenario;
mod vectors;

/// How each equation answers a point.
pub const CASES: &[Case] = &[
    ("ferment::gas_rate", gas),
    ("ferment::yeast_growth", bakers_growth),
    ("ferment::culture_growth", sourdough_growth),
    ("ferment::acidity_growth", in_acid),
    ("ferment::osmotic_strength", strength),
    ("ferment::ethanol", |inputs, _| ethanol(Amount::moles(inputs.number("C"))).as_grams()),
    ("ferment::salt_on_bacteria", |inputs, _| {
        salt_on_bacteria(Fraction::percent(inputs.number("salt")), Organisms::of(Strain::Sourdough).salt_limit)
    }),
    ("ferment::uptake", |inputs, _| {
        let amount = |symbol| Amount::moles(inputs.number(symbol));
        let strain = if inputs.word("strain") == "humilis" { Strain::SourdoughWithoutMaltose } else { Strain::Bakers };
        uptake(amount("G"), amount("M"), &Organisms::of(strain).sugars).supply()
    }),
    ("ferment::lag", waking),
    ("ferment::acidity", |inputs, _| acidity(Amount::millimoles(inputs.number("A")), &Stage::default().buffer).as_ph()),
    ("ferment::starch_release", maltose),
    ("ferment::dissolved_gas", |inputs, _| dissolved_gas(Temperature::celsius(inputs.number("T"))).as_moles()),
    ("ferment::gas_volume", sharing),
    ("ferment::own_heat", |inputs, _| {
        let gas = Rate::per_hour(1.9 * inputs.number("hexose"));
        own_heat(gas, Mass::kilograms(inputs.number("W")), &Stage::default().own_heat).as_per_hour()
    }),
    ("ferment::death", dying),
    ("ferment::stage", |inputs, output| {
        let stage = scenario::dough(inputs).stage();
        let flour = Dough::default().stage();
        match output {
            "volume" => (stage.gas_free_volume - flour.gas_free_volume).as_millilitres(),
            "W" => (stage.water - flour.water).as_grams(),
            "hexose" => stage.added_hexose.as_moles(),
            _ => stage.other_solutes.as_moles() / (stage.water - flour.water).as_kilograms(),
        }
    }),
    ("ferment::living_yeast", |inputs, _| {
        let form = match inputs.word("form") {
            "fresh" => YeastForm::Fresh,
            "active dry" => YeastForm::ActiveDry,
            _ => YeastForm::Instant,
        };
        Yeast { form, mass: Mass::grams(100.0) }.living().as_grams()
    }),
    ("ferment::fermentation", course),
    ("ferment::ripeness", window),
    ("ferment::doubling_rule", |inputs, _| {
        let (dose, dough) = (Fraction::percent(inputs.number("dose")), Temperature::celsius(inputs.number("T")));
        doubling_rule(dose, dough, &Organisms::of(Strain::Bakers).gas_law).as_hours()
    }),
    ("ferment::feed_rule", |inputs, _| {
        let Growth::Culture(yeast) = Organisms::of(Strain::Sourdough).growth else { panic!("a culture's growth") };
        feed_rule(Fraction::ratio(inputs.number("f")), Temperature::celsius(inputs.number("T")), &yeast).as_hours()
    }),
    ("ferment::vigour", found_again),
    ("ferment::dose", poolish_dose),
];

/// The rows of the published table.
pub fn rows() -> Vec<Row> {
    check("ferment", CASES)
}

#[test]
fn every_reference_of_ferment_is_met() {
    rows();
}

fn gas(inputs: &Inputs, output: &str) -> f64 {
    let strain = if inputs.word("strain") == "bakers" { Strain::Bakers } else { Strain::Sourdough };
    let law = Organisms::of(strain).gas_law;
    let rate = |celsius| gas_rate(Temperature::celsius(celsius), &law);
    match output {
        "optimum" => maximum::find(rate, (0.0, 50.0), 1e-6),
        "rate" => rate(inputs.number("T")),
        _ => rate(inputs.number("from")) / rate(inputs.number("T")),
    }
}

fn bakers_growth(inputs: &Inputs, output: &str) -> f64 {
    let Growth::Cardinal(yeast) = Organisms::of(Strain::Bakers).growth else { panic!("baker's yeast is cardinal") };
    let rate = |celsius| yeast_growth(Temperature::celsius(celsius), &yeast);
    match output {
        "share" => rate(inputs.number("T")) / yeast.rate,
        _ => maximum::find(|celsius| rate(celsius).as_per_hour(), (3.0, 45.0), 1e-6),
    }
}

fn sourdough_growth(inputs: &Inputs, output: &str) -> f64 {
    let organisms = Organisms::of(Strain::Sourdough);
    let organism = match (inputs.word("organism"), organisms.growth) {
        ("yeast", Growth::Culture(yeast)) => yeast,
        _ => organisms.bacteria,
    };
    let rate = |celsius| culture_growth(Temperature::celsius(celsius), &organism).as_per_hour();
    if output == "rate" {
        return rate(inputs.number("T"));
    }
    let best = maximum::find(rate, (0.0, 45.0), 1e-6);
    let share = |celsius| rate(celsius) / rate(best) - inputs.number("share");
    match inputs.word("side") {
        "cold" => root::find(share, (0.0, best), 1e-9).expect("a colder one"),
        "warm" => root::find(share, (best, 45.0), 1e-9).expect("a warmer one"),
        _ => best,
    }
}

fn in_acid(inputs: &Inputs, output: &str) -> f64 {
    let share = |ph| acidity_growth(Acidity::ph(ph), &Organisms::of(Strain::Sourdough).acidity);
    let best = maximum::find(share, (3.0, 8.0), 1e-9);
    let grows = |ph| share(ph) - 1e-6;
    match output {
        "best" => best,
        "least" => root::find(grows, (3.0, best), 1e-9).expect("it stops in acid"),
        "most" => root::find(grows, (best, 8.0), 1e-9).expect("it stops without"),
        _ => share(inputs.number("pH")),
    }
}

/// Minutes that kill nine in ten, the kelvins that make it a tenth, or where so many minutes leave so few.
fn dying(inputs: &Inputs, output: &str) -> f64 {
    let minutes = |celsius| {
        let rate = death(Temperature::celsius(celsius), &Organisms::of(Strain::Bakers).heat);
        std::f64::consts::LN_10 / rate.as_per_hour() * 60.0
    };
    match output {
        "z" => 10.0 / libm::log10(minutes(50.0) / minutes(60.0)),
        "dies" => {
            let allowed = inputs.number("minutes") / -libm::log10(inputs.number("left"));
            root::find(|celsius| allowed - minutes(celsius), (46.0, 70.0), 1e-9).expect("some heat kills")
        }
        _ => minutes(inputs.number("T")),
    }
}

fn strength(inputs: &Inputs, _: &str) -> f64 {
    let solutes =
        Solutes { salt: Mass::grams(inputs.number("salt")), sugars: Amount::moles(inputs.number("sugar")), other: Amount::ZERO };
    osmotic_strength(&solutes, Mass::kilograms(1.0)).as_osmoles_per_kilogram()
}

/// The growth that fading sleep allows, as time at the full rate.
fn waking(inputs: &Inputs, _: &str) -> f64 {
    let (rate, lag) = (Rate::per_hour(0.25), TimeSpan::hours(2.0));
    let limits = Limits { relative: 1e-9, absolute: 1e-12, steps: 1000 };
    let slope = |_: f64, [sleep, _]: &[f64; 2]| [-0.25 * sleep, awake_share(*sleep)];
    integrate(slope, (0.0, inputs.number("t")), [lag_sleep(rate, lag), 0.0], &limits, &mut Vec::new()).0[1]
}

/// Maltose, in percent of dry flour: 171.15 g for each mole of its hexose, of 860 g dry in a kilogram.
fn maltose(inputs: &Inputs, _: &str) -> f64 {
    let stage = Stage::default();
    let rate = starch_release(Temperature::celsius(inputs.number("T")), Acidity::ph(6.0), &stage.release).as_per_hour();
    let [_, present, starch] = stage.flour_sugars.map(Amount::as_moles);
    let set_free = starch * (1.0 - libm::exp(-rate * inputs.number("t")));
    (present + set_free) * 171.15 / 860.0 * 100.0
}

fn sharing(inputs: &Inputs, output: &str) -> f64 {
    let stage = Stage::default();
    let dough = Temperature::celsius(inputs.number("T"));
    let molar = 8.314_462 * dough.as_kelvins() / 101.325;
    if output == "dissolved" {
        let held = dissolved_gas(dough).as_moles() * stage.water.as_kilograms() * stage.dissolving;
        return held * molar * 1000.0 / 1650.0;
    }
    let gas = gas_volume(Amount::moles(inputs.number("C")), dough, &stage);
    let bubbles = gas.in_bubbles.as_moles();
    let pressure = bubbles / (gas.volume.as_litres() / molar);
    bubbles + dissolved_gas(dough).as_moles() * stage.water.as_kilograms() * 1.2 * pressure
}

fn course(inputs: &Inputs, output: &str) -> f64 {
    if output != "gas" {
        return scenario::read(inputs, output);
    }
    let course = scenario::fermentation(inputs).run(TimeSpan::hours(3.0));
    let made = |symbol| {
        let moment = course.at(TimeSpan::minutes(inputs.number(symbol))).expect("within the run");
        moment.state.gas_made.as_moles()
    };
    // Millilitres at 30 °C from 20 g of flour.
    (made("to") - made("from")) * 0.02 * 8.314_462 * 303.15 / 101.325 * 1000.0
}

/// The ends of the window or when it is spent; else the practice's time where the dough is ripe then, or the nearer end.
fn window(inputs: &Inputs, output: &str) -> f64 {
    let course = scenario::fermentation(inputs).run(TimeSpan::hours(60.0));
    let ripe = course.ripe().expect("it peaks");
    let to = ripe.to.map_or(f64::INFINITY, TimeSpan::as_hours);
    match output {
        "from" => ripe.from.as_hours(),
        "to" => to,
        "spent" => course.spent().map_or(f64::NAN, TimeSpan::as_hours),
        _ => inputs.number(output).clamp(ripe.from.as_hours(), to),
    }
}

fn found_again(inputs: &Inputs, output: &str) -> f64 {
    let usual = vectors::lean(0.5, 25.0);
    let mut lively = usual.clone();
    lively.organisms.vigour = inputs.number(output);
    let course = lively.run(TimeSpan::hours(4.0));
    let readings: Vec<Reading> = [1.0, 1.5, 2.0, 3.0]
        .map(TimeSpan::hours)
        .into_iter()
        .filter_map(|time| course.at(time).map(|moment| Reading { time, risen: moment.risen }))
        .collect();
    fitted_vigour(&usual, &readings).expect("enough readings")
}

fn poolish_dose(inputs: &Inputs, _: &str) -> f64 {
    let sponge = Dough { water: Mass::kilograms(1.0), hold: Hold::of(DoughKind::Liquid), ..Dough::default() };
    let mixed = |percent: f64| {
        let yeast = Yeast { form: YeastForm::Fresh, mass: Mass::grams(10.0 * percent) };
        Fermentation::new(&sponge, &Leaven::yeast(Strain::Bakers, yeast), vectors::constant(inputs.number("T")))
    };
    let ripe = |course: &Course| course.ripe().map(|window| window.from);
    dose(TimeSpan::hours(inputs.number("ripe")), (0.02, 6.0), mixed, ripe).expect("some dose does it")
}
