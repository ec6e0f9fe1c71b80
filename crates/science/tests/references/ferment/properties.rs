//! What holds for every dough: no panic, the same bits again, flags outside the known ranges.

use super::vectors::{constant, fed, instant, lean, preferment};
use proptest::prelude::*;
use quantity::{Mass, Rate, Temperature, TimeSpan};
use science::ferment::*;

/// Any number at all, tame ones often.
fn figure() -> impl Strategy<Value = f64> {
    prop_oneof![
        4 => -5.0..60.0f64,
        2 => 0.0..2.0f64,
        1 => any::<f64>(),
        1 => prop_oneof![Just(f64::NAN), Just(f64::INFINITY), Just(f64::NEG_INFINITY), Just(0.0), Just(-1e300), Just(1e300)],
    ]
}

fn path(figures: &[f64]) -> TemperaturePath {
    let [a, b, c, d] = [figures[0], figures[1], figures[2], figures[3]];
    let point = |time, celsius| (TimeSpan::hours(time), Temperature::celsius(celsius));
    let room = |from, air| Room { from: TimeSpan::hours(from), air: Temperature::celsius(air), approach: Rate::per_hour(d) };
    match (figures[4].abs() as u64) % 4 {
        0 => constant(a),
        1 => TemperaturePath::Line(vec![point(0.0, a), point(b, c), point(d, a)]),
        2 => TemperaturePath::Rooms {
            start: Temperature::celsius(a),
            rooms: vec![room(0.0, b), room(c, a)],
            own_heat: Warming::Ignored,
        },
        _ => TemperaturePath::Rooms {
            start: Temperature::celsius(a),
            rooms: vec![room(0.0, b), room(c, a)],
            own_heat: Warming::Counted,
        },
    }
}

fn anything(figures: &[f64]) -> Fermentation {
    let grams = |i: usize| Mass::grams(figures[i] * 10.0);
    let dough = Dough {
        flour: grams(5) * 10.0,
        water: grams(6) * 10.0,
        milk: grams(7),
        egg: grams(8),
        fat: grams(9),
        sucrose: grams(10),
        hexose: grams(11),
        salt: grams(12),
        hold: Hold::of(DoughKind::Dough),
    };
    let strain = if figures[13] > 1.0 { Strain::Sourdough } else { Strain::Bakers };
    let mut leaven = Leaven::yeast(strain, Yeast { form: YeastForm::Instant, mass: grams(14) });
    leaven.carried.push(Carried::ripe_culture(grams(15)));
    leaven.organisms.vigour = figures[16];
    let mut fermentation = Fermentation::new(&dough, &leaven, path(figures));
    fermentation.limits.steps = 2000;
    fermentation
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_figures_make_it_panic(figures in prop::collection::vec(figure(), 18)) {
        let fermentation = anything(&figures);
        let time = TimeSpan::hours(figures[17]);
        let course = fermentation.run(time);
        let _ = (course.ending(), course.outside().len(), course.temperatures(), course.last());
        let _ = (course.doubled(), course.ripe(), course.spent(), course.sugar_spent(), course.ripeness(time));
        prop_assert!(course.moments(5).len() == 5);
    }

    #[test]
    fn the_equations_answer_every_figure(x in figure(), y in figure()) {
        let dough = Temperature::celsius(x);
        let organisms = Organisms::of(Strain::Sourdough);
        let _ = (gas_rate(dough, &organisms.gas_law), culture_growth(dough, &organisms.bacteria), dissolved_gas(dough));
        let _ = (death(dough, &organisms.heat), lag_sleep(Rate::per_hour(x), TimeSpan::hours(y)), awake_share(x));
        let _ = acidity_growth(quantity::Acidity::ph(x), &organisms.acidity);
        let _ = gas_volume(quantity::Amount::moles(x), Temperature::celsius(y), &Stage::default());
    }

    #[test]
    fn a_baker_s_dough_comes_to_its_end_and_only_gains_gas(
        celsius in 4.0..40.0f64, yeast in 0.03..3.0f64, water in 0.45..1.4f64, salt in 0.0..0.03f64, sugar in 0.0..0.25f64,
    ) {
        let dough = Dough {
            water: Mass::kilograms(water),
            salt: Mass::kilograms(salt),
            sucrose: Mass::kilograms(sugar),
            ..Dough::default()
        };
        let fermentation = Fermentation::new(&dough, &Leaven::yeast(Strain::Bakers, instant(yeast)), constant(celsius));
        let course = fermentation.run(TimeSpan::hours(24.0));
        prop_assert_eq!(course.ending(), Ending::Complete);
        prop_assert!(course.outside().is_empty(), "{:?}", course.outside());
        let moments = course.moments(49);
        prop_assert!((moments[0].risen - 1.0).abs() < 1e-9);
        for pair in moments.windows(2) {
            let (before, after) = (&pair[0].state, &pair[1].state);
            let kept = |after: f64, before: f64| after >= before - 1e-8;
            prop_assert!(kept(after.gas_made.as_moles(), before.gas_made.as_moles()), "gas made went from {} to {}", before.gas_made.as_moles(), after.gas_made.as_moles());
            prop_assert!(kept(after.gas_lost.as_moles(), before.gas_lost.as_moles()));
            prop_assert!(kept(after.yeast.as_grams(), before.yeast.as_grams()));
            prop_assert!(after.hexose.as_moles() > -1e-6 && after.gas_held().as_moles() > -1e-6);
        }
    }
}

/// Salt and sugar bring this dough's yeast to a halt: its rate ends in a corner, and a smooth reading between steps
/// would swing there by two millionths of a mole.
#[test]
fn gas_made_never_falls_where_the_yeast_is_brought_to_a_halt() {
    let dough = Dough {
        water: Mass::kilograms(0.450_451_8),
        salt: Mass::kilograms(0.022_228_255),
        sucrose: Mass::kilograms(0.249_381_28),
        ..Dough::default()
    };
    let halted = Fermentation::new(&dough, &Leaven::yeast(Strain::Bakers, instant(1.814_446_6)), constant(23.302_809_5));
    let moments = halted.run(TimeSpan::hours(24.0)).moments(2401);
    for pair in moments.windows(2) {
        assert!(pair[1].state.gas_made >= pair[0].state.gas_made, "at {:?}", pair[1].time);
    }
    let half = moments[1200].state.gas_made;
    assert!(half > quantity::Amount::ZERO && moments[2400].state.gas_made == half, "it made some and stopped");
}

#[test]
fn the_same_dough_gives_the_same_bits() {
    let once = |fermentation: &Fermentation| {
        let course = fermentation.run(TimeSpan::hours(24.0));
        format!("{:?} {:?} {:?}", course.last(), course.peak(), course.doubled())
    };
    for fermentation in [preferment(0.85, 23.0), fed(5.0, 25.0)] {
        assert_eq!(once(&fermentation), once(&fermentation));
    }
}

#[test]
fn closer_limits_change_nothing_a_baker_could_see() {
    for fermentation in [preferment(0.085, 23.0), fed(5.0, 25.0), lean(1.0, 25.0)] {
        let close = Limits { relative: 1e-11, absolute: 1e-14, steps: 100_000 };
        let closely = Fermentation { limits: close, ..fermentation.clone() }.run(TimeSpan::hours(24.0));
        let course = fermentation.run(TimeSpan::hours(24.0));
        for moment in closely.moments(97) {
            let ours = course.at(moment.time).expect("within the run").state;
            for (one, other) in [
                (ours.gas_made.as_moles(), moment.state.gas_made.as_moles()),
                (ours.yeast.as_grams(), moment.state.yeast.as_grams()),
                (ours.gas_held().as_moles(), moment.state.gas_held().as_moles()),
            ] {
                assert!((one - other).abs() <= 3e-6 * other.abs().max(0.01), "{one} against {other} at {:?}", moment.time);
            }
        }
    }
}

#[test]
fn what_lies_outside_is_named_and_still_answered() {
    let named = |fermentation: &Fermentation| {
        let course = fermentation.run(TimeSpan::hours(4.0));
        assert!(course.last().risen.is_finite());
        course.outside().iter().map(|outside| outside.valid.symbol).collect::<Vec<_>>()
    };
    assert!(named(&lean(1.0, 25.0)).is_empty());
    assert_eq!(named(&lean(1.0, 2.0)), ["T, coldest", "T, warmest"]);
    assert_eq!(named(&fed(5.0, 8.0)), ["T of a sourdough, coldest", "T of a sourdough, warmest"]);
    assert_eq!(named(&lean(5.0, 25.0)), ["living yeast"]);
    assert_eq!(named(&fed(0.2, 25.0)), ["flour prefermented"]);
}

#[test]
fn a_figure_that_is_no_number_is_said() {
    assert_eq!(lean(1.0, f64::NAN).run(TimeSpan::hours(4.0)).ending(), Ending::NotFinite);
    assert_eq!(lean(f64::INFINITY, 25.0).run(TimeSpan::hours(4.0)).ending(), Ending::NotFinite);
    assert_eq!(lean(1.0, 25.0).run(TimeSpan::hours(f64::NAN)).ending(), Ending::NotFinite);
}

#[test]
fn every_constant_has_its_source() {
    let files = [include_str!("../../../sources/ferment.toml"), include_str!("../../../sources/shared.toml")];
    let sources: toml::Table = files.concat().parse().expect("sources are TOML");
    for parameter in PARAMETERS.iter() {
        assert!(sources.contains_key(&parameter.origin.source), "{} names no source {}", parameter.name, parameter.origin.source);
        assert!(parameter.value.is_finite() && !parameter.origin.place.is_empty() && !parameter.unit.is_empty());
    }
    for equation in EQUATIONS {
        assert!(sources.contains_key(equation.source), "{} names no source {}", equation.name, equation.source);
    }
    let fitted = PARAMETERS.iter().filter(|parameter| parameter.origin.standing == science::Standing::Fitted).count();
    assert!(fitted > 40, "{fitted} fitted constants are labelled");
}

/// Sugar, gas and growth balance: nothing comes from nowhere.
#[test]
fn carbon_and_growth_are_kept() {
    let culture = fed(5.0, 25.0);
    let course = culture.run(TimeSpan::hours(24.0));
    for moment in course.moments(25) {
        let state = moment.state;
        let lactic = 0.82 * (state.acid.as_millimoles() - culture.start.acid.as_millimoles()) / 1000.0;
        let carbon = state.sugars().as_moles() + (state.gas_made.as_moles() - lactic) / 1.9 + lactic;
        let start = culture.start.sugars().as_moles() + culture.start.gas_made.as_moles() / 1.9;
        assert!((carbon - start).abs() < 1e-6, "{carbon} against {start}");
        let growth = (state.yeast + state.growth_left).as_grams();
        assert!((growth - (culture.start.yeast + culture.start.growth_left).as_grams()).abs() < 1e-6);
    }
}

/// On a mountain gas takes more room: the same dough doubles sooner.
#[test]
fn thin_air_raises_sooner() {
    let doubled = |kilopascals| {
        let mut dough = lean(1.0, 25.0);
        dough.stage.air = quantity::Pressure::kilopascals(kilopascals);
        dough.run(TimeSpan::hours(6.0)).doubled().expect("it doubles").as_hours()
    };
    assert!(doubled(80.0) < 0.95 * doubled(101.325));
}

/// Where the temperature stands still, an hour is an hour; a cold dough's hours count for less.
#[test]
fn equivalent_hours_are_hours_at_that_temperature() {
    let course = lean(1.0, 24.0).run(TimeSpan::hours(5.0));
    assert!((course.equivalent(Temperature::celsius(24.0)).as_hours() - 5.0).abs() < 1e-9);
    let law = Organisms::of(Strain::Bakers).gas_law;
    let ratio = gas_rate(Temperature::celsius(24.0), &law) / gas_rate(Temperature::celsius(10.0), &law);
    assert!((course.equivalent(Temperature::celsius(10.0)).as_hours() - 5.0 * ratio).abs() < 1e-9);
}
