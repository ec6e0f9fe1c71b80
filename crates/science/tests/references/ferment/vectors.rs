//! Cross-checks of the whole model against an independent prototype of the same equations, run with
//! fixed steps of 0.02 h. They show that the equations are put together as written, not that they
//! are true.

use quantity::{Mass, Temperature, TimeSpan, Volume};
use science::ferment::*;

fn kilograms(value: f64) -> Mass {
    Mass::kilograms(value)
}

pub fn instant(share: f64) -> Yeast {
    Yeast { form: YeastForm::Instant, mass: kilograms(share / 100.0) }
}

pub fn constant(celsius: f64) -> TemperaturePath {
    TemperaturePath::Constant(Temperature::celsius(celsius))
}

/// Equal weights of flour and water with that share of instant yeast.
pub fn preferment(yeast: f64, celsius: f64) -> Fermentation {
    let dough = Dough { water: kilograms(1.0), hold: Hold::of(DoughKind::Liquid), ..Dough::default() };
    Fermentation::new(&dough, &Leaven::yeast(Strain::Bakers, instant(yeast)), constant(celsius))
}

/// A ripe culture fed with so many times its weight of flour, and as much water.
pub fn fed(times: f64, celsius: f64) -> Fermentation {
    let dough = Dough { water: kilograms(1.0), hold: Hold::of(DoughKind::LiquidCulture), ..Dough::default() };
    let culture = Carried::ripe_culture(kilograms(0.5 / (0.5 + times)));
    Fermentation::new(&dough, &Leaven::carried(Strain::Sourdough, culture), constant(celsius))
}

/// A dough of 65 % water and 2 % salt; the prototype leaves the salt out of the volume.
pub fn lean(yeast: f64, celsius: f64) -> Fermentation {
    let dough = Dough { water: kilograms(0.65), salt: kilograms(0.02), ..Dough::default() };
    let mut lean = Fermentation::new(&dough, &Leaven::yeast(Strain::Bakers, instant(yeast)), constant(celsius));
    lean.stage.gas_free_volume = Volume::litres(1.67 / 1.2261);
    lean
}

fn near(what: &str, got: f64, expected: f64) {
    assert!((got - expected).abs() <= 0.005 * expected.abs(), "{what}: {got}, the prototype has {expected}");
}

/// Gas made, rise and yeast at hours.
fn follow(fermentation: &Fermentation, points: &[(f64, f64, f64, Option<f64>)]) {
    let course = fermentation.run(TimeSpan::hours(24.0));
    for (hour, gas, risen, yeast) in points {
        let moment = course.at(TimeSpan::hours(*hour)).expect("the run goes so far");
        near(&format!("gas at {hour} h"), moment.state.gas_made.as_moles(), *gas);
        near(&format!("rise at {hour} h"), moment.risen, *risen);
        if let Some(yeast) = yeast {
            near(&format!("yeast at {hour} h"), moment.state.yeast.as_grams(), *yeast);
        }
    }
}

#[test]
fn a_lively_preferment_follows_the_prototype() {
    let points = [
        (1.0, 0.06846, 1.3206, Some(8.986)),
        (2.0, 0.18767, 2.6802, None),
        (4.0, 0.35163, 3.1144, None),
        (8.0, 0.59484, 3.0784, Some(9.975)),
    ];
    follow(&preferment(0.85, 23.0), &points);
}

#[test]
fn an_overnight_preferment_follows_the_prototype() {
    let points = [
        (4.0, 0.04732, 1.1100, Some(1.291)),
        (8.0, 0.13363, 1.9680, Some(2.135)),
        (12.0, 0.25450, 2.7219, None),
        (16.0, 0.33769, 2.7435, Some(2.7075)),
    ];
    follow(&preferment(0.085, 23.0), &points);
}

#[test]
fn a_lean_dough_follows_the_prototype() {
    let points =
        [(0.5, 0.02541, 1.1104, None), (1.0, 0.07541, 1.7556, None), (1.5, 0.13418, 2.6541, None), (2.0, 0.19733, 3.4828, None)];
    follow(&lean(1.0, 25.0), &points);
}

#[test]
fn a_fed_culture_follows_the_prototype() {
    let culture = fed(5.0, 25.0);
    near("gas brought", culture.start.gas_made.as_moles(), 0.003383);
    let points = [
        (2.0, 0.0252, 1.029, Some(0.875)),
        (4.0, 0.0690, 1.328, Some(1.727)),
        (6.0, 0.1515, 2.179, Some(3.372)),
        (8.0, 0.2705, 2.717, Some(5.000)),
        (10.0, 0.3458, 2.674, None),
    ];
    follow(&culture, &points);
    let course = culture.run(TimeSpan::hours(10.0));
    for (hour, ph, bacteria) in
        [(2.0, 5.45, 0.152), (4.0, 5.00, 0.315), (6.0, 4.47, 0.584), (8.0, 4.12, 0.850), (10.0, 3.95, f64::NAN)]
    {
        let moment = course.at(TimeSpan::hours(hour)).expect("the run goes so far");
        near("pH", moment.acidity.as_ph(), ph);
        if bacteria.is_finite() {
            near("bacteria", moment.state.bacteria.as_grams(), bacteria);
        }
    }
}

/// Figures of the prototype's documentation on doubling, at a drifting temperature.
#[test]
fn a_drifting_temperature_follows_the_prototype() {
    for (start, air, rate, hours) in [(30.0, 20.0, 0.5, 1.732), (18.0, 24.0, 0.35, 2.749)] {
        let room = Room { from: TimeSpan::ZERO, air: Temperature::celsius(air), approach: quantity::Rate::per_hour(rate) };
        let mut dough = lean(0.5, start);
        dough.path = TemperaturePath::Rooms { start: Temperature::celsius(start), rooms: vec![room], own_heat: Warming::Ignored };
        let doubled = dough.run(TimeSpan::hours(6.0)).doubled().expect("it doubles").as_hours();
        assert!((doubled - hours).abs() < 0.02 * hours, "{doubled} against {hours}");
    }
}

/// The prototype's gas to double: a dough at 25 and at 4 °C, a sponge of equal weights at 25 °C.
#[test]
fn the_gas_that_doubles_follows_the_prototype() {
    for (fermentation, moles, celsius) in
        [(lean(1.0, 25.0), 0.0904, 25.0), (lean(1.0, 4.0), 0.1200, 4.0), (preferment(0.085, 25.0), 0.1166, 25.0)]
    {
        let gas = gas_volume(quantity::Amount::moles(moles), Temperature::celsius(celsius), &fermentation.stage);
        near("rise", gas.risen, 2.0);
    }
}

/// The prototype's table of hours to double, 65 % water, 2 % salt: instant yeast by temperature.
#[test]
fn doubling_times_follow_the_prototype() {
    let doses = [0.1, 0.25, 0.5, 1.0, 1.5];
    for (celsius, row) in [
        (18.0, [11.7, 5.88, 3.40, 2.03, 1.53]),
        (21.0, [8.88, 4.46, 2.59, 1.55, 1.18]),
        (24.0, [7.04, 3.52, 2.04, 1.23, 0.93]),
        (27.0, [5.80, 2.87, 1.66, 1.00, 0.76]),
        (30.0, [4.94, 2.41, 1.39, 0.83, 0.63]),
    ] {
        for (dose, expected) in doses.into_iter().zip(row) {
            let doubled = lean(dose, celsius).run(TimeSpan::hours(24.0)).doubled().expect("it doubles").as_hours();
            assert!((doubled - expected).abs() <= 0.006 + 0.005 * expected, "{dose} % at {celsius}: {doubled}, {expected}");
            let law = Organisms::of(Strain::Bakers).gas_law;
            let rule = doubling_rule(quantity::Fraction::percent(dose), Temperature::celsius(celsius), &law);
            assert!((rule.as_hours() / doubled - 1.0).abs() < 0.09, "the rule gives {} for {doubled}", rule.as_hours());
        }
    }
}

/// The prototype's doses of instant yeast for a sponge of equal weights to open its ripe window.
#[test]
fn preferment_doses_follow_the_prototype() {
    let ripe = |course: &Course| course.ripe().map(|window| window.from);
    for (celsius, row) in
        [(18.0, [1.06, 0.40, 0.265, 0.139]), (21.0, [0.725, 0.272, 0.175, 0.086]), (26.0, [0.434, 0.158, 0.097, 0.042])]
    {
        for (hours, expected) in [3.0, 6.0, 8.0, 12.0].into_iter().zip(row) {
            let found = dose(TimeSpan::hours(hours), (0.01, 5.0), |dose| preferment(dose, celsius), ripe);
            let found = found.expect("some dose does it");
            assert!((found / expected - 1.0).abs() < 0.03, "{hours} h at {celsius}: {found}, {expected}");
        }
    }
}

/// The prototype's worked swap of leavens in an enriched batter at 24 °C: a ripe culture by its share of
/// the flour, alone and with 0.85 % instant yeast beside it.
#[test]
fn swapped_leavens_follow_the_prototype() {
    let batter = |leaven: &Leaven| {
        let dough = Dough {
            water: kilograms(0.344),
            milk: kilograms(0.75),
            salt: kilograms(0.012),
            sucrose: kilograms(0.020),
            hold: Hold::of(DoughKind::Batter),
            ..Dough::default()
        };
        let mut batter = Fermentation::new(&dough, leaven, constant(24.0));
        batter.stage.water = kilograms(1.14);
        batter.stage.gas_free_volume = Volume::litres(2.35 / 1.09);
        batter.stage.other_solutes = quantity::Amount::moles(0.259);
        batter.run(TimeSpan::hours(12.0))
    };
    let beaten = |share| Carried { gas_kept: 0.0, ..Carried::ripe_culture(kilograms(share)) };
    let shares = [0.10, 0.15, 0.20, 0.25, 0.30, 0.40, 0.50];
    for (share, expected) in shares.into_iter().zip([7.68, 6.39, 5.52, 4.88, 4.39, 3.68, 3.19]) {
        let culture = beaten(share);
        let course = batter(&Leaven::carried(Strain::Sourdough, culture));
        let doubled = course.doubled().expect("it doubles");
        assert!((doubled.as_hours() / expected - 1.0).abs() < 0.02, "{share}: {} against {expected}", doubled.as_hours());
        if share == 0.25 {
            let ph = course.at(doubled).expect("within the run").acidity.as_ph();
            assert!((ph - 4.76).abs() < 0.05, "pH {ph}");
        }
    }
    let mut both = Leaven::yeast(Strain::Bakers, instant(0.85));
    both.carried.push(beaten(0.25));
    let doubled = batter(&both).doubled().expect("it doubles").as_hours();
    assert!((doubled / 1.60 - 1.0).abs() < 0.05, "{doubled}");
}

/// The prototype's doubling times with sugar, for both kinds of baker's yeast, and with salt.
#[test]
fn sugared_and_salted_doughs_follow_the_prototype() {
    let doubled = |strain, water: f64, salt: f64, sugar: f64| {
        let dough = Dough {
            water: kilograms(water),
            salt: kilograms(salt / 100.0),
            sucrose: kilograms(sugar / 100.0),
            ..Dough::default()
        };
        let mut dough = Fermentation::new(&dough, &Leaven::yeast(strain, instant(1.0)), constant(27.0));
        // The prototype counts the mass of salt and sugar, but the density of flour and water alone.
        let density = (1.0 + water) / (1.0 / 1.44 + water / 0.998);
        dough.stage.gas_free_volume = Volume::litres((1.0 + water + (salt + sugar) / 100.0) / density);
        dough.run(TimeSpan::hours(24.0)).doubled().expect("it doubles").as_hours()
    };
    let near = |got: f64, expected: f64| assert!((got / expected - 1.0).abs() < 0.03, "{got} against {expected}");
    let sugars = [0.0, 5.0, 10.0, 20.0, 30.0];
    for (sugar, expected) in sugars.into_iter().zip([0.97, 1.19, 1.43, 2.37, 9.96]) {
        near(doubled(Strain::Bakers, 0.55, 2.0, sugar), expected);
    }
    for (sugar, expected) in sugars.into_iter().zip([0.88, 1.02, 1.12, 1.37, 1.77]) {
        near(doubled(Strain::Osmotolerant, 0.55, 2.0, sugar), expected);
    }
    for (salt, expected) in [0.0, 1.0, 1.5, 2.0, 3.0].into_iter().zip([0.836, 0.907, 0.949, 0.996, 1.11]) {
        near(doubled(Strain::Bakers, 0.65, salt, 0.0), expected);
    }
}

/// The ripe culture of the data is the one that comes back from its own feed, 1:2.5:2.5 at 25 °C.
#[test]
fn the_ripe_culture_comes_back_from_its_feed() {
    let course = fed(2.5, 25.0).run(TimeSpan::hours(12.0));
    let peak = course.at(course.peak().expect("it peaks").time).expect("within the run").state;
    let ripe = Carried::ripe_culture(kilograms(1.0)).state;
    near("maltose", peak.maltose.as_moles(), ripe.maltose.as_moles());
    near("yeast", peak.yeast.as_grams(), ripe.yeast.as_grams());
    near("bacteria", peak.bacteria.as_grams(), ripe.bacteria.as_grams());
    near("acid", peak.acid.as_millimoles(), ripe.acid.as_millimoles());
    let starch = peak.starch.as_moles() / ripe.starch.as_moles();
    let hexose = peak.hexose.as_moles() / ripe.hexose.as_moles();
    assert!((starch - 1.0).abs() < 0.02 && (hexose - 1.0).abs() < 0.1, "{starch} {hexose}");
}
