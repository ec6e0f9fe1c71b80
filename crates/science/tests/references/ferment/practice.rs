//! The model beside the trade where one figure does not say it: what an overnight sponge with much
//! yeast is by then, an enriched batter on top of it, and the rules every baker knows by feel.

use super::vectors::{constant, fed, instant, lean, preferment};
use quantity::{Amount, Mass, Osmolality, Rate, Temperature, TimeSpan};
use science::ferment::*;

const DAY: TimeSpan = TimeSpan::hours(24.0);

fn hours(time: Option<TimeSpan>) -> f64 {
    time.expect("it gets there").as_hours()
}

fn doubling(fermentation: &Fermentation) -> f64 {
    hours(fermentation.run(TimeSpan::hours(96.0)).doubled())
}

/// Common practice, no source: equal weights with 0.85 % instant yeast at 23 °C, "ripe" after 12 to
/// 18 h. Every handbook's table puts that dose at a few hours. The model stays with the handbooks and
/// says what the sponge is when it is used.
#[test]
fn a_lively_sponge_used_after_a_night_is_past_but_not_spent() {
    let course = preferment(0.85, 23.0).run(TimeSpan::hours(30.0));
    let (peak, ripe) = (course.peak().expect("it peaks"), course.ripe().expect("it ripens"));
    assert!((4.0..6.0).contains(&peak.time.as_hours()), "peak at {} h", peak.time.as_hours());
    assert!(hours(ripe.to) < 12.0 && hours(course.sugar_spent()) < 12.0);
    for hour in [12.0, 15.0, 18.0] {
        let time = TimeSpan::hours(hour);
        assert_eq!(course.ripeness(time), Some(Ripeness::Past));
        let moment = course.at(time).expect("within the run");
        assert!(moment.state.readiness > 0.9 && moment.risen < 0.9 * peak.risen);
        // About 2.8 % of the water is ethanol by then.
        let ethanol = moment.ethanol / Mass::grams(1140.0);
        assert!((0.026..0.029).contains(&ethanol), "{ethanol}");
    }
}

/// Common practice, no source: a batter of milk, egg and butter with a sixth of its flour so
/// prefermented, plus 1 % instant yeast, doubles in about 2 h at room temperature.
#[test]
fn an_enriched_batter_on_that_sponge_doubles_in_about_two_hours() {
    let sponge = preferment(0.85, 23.0).run(TimeSpan::hours(15.0)).last();
    let batter = Dough {
        water: Mass::grams(1000.0 / 6.0),
        milk: Mass::grams(700.0),
        egg: Mass::grams(200.0),
        fat: Mass::grams(150.0),
        sucrose: Mass::grams(20.0),
        salt: Mass::grams(12.0),
        hold: Hold::of(DoughKind::Batter),
        ..Dough::default()
    };
    let mut leaven = Leaven::yeast(Strain::Bakers, instant(1.0));
    leaven.carried.push(Carried {
        flour: Mass::grams(1000.0 / 6.0),
        water: Mass::kilograms(1.14),
        state: sponge.state,
        gas_kept: 0.0,
    });
    let room = |air| Room { from: TimeSpan::ZERO, air: Temperature::celsius(air), approach: Rate::per_hour(0.5) };
    let path = TemperaturePath::Rooms { start: Temperature::celsius(18.0), rooms: vec![room(24.0)], own_heat: Warming::Counted };
    let from_the_refrigerator = doubling(&Fermentation::new(&batter, &leaven, path));
    assert!((1.5..2.5).contains(&from_the_refrigerator), "{from_the_refrigerator} h");
    let at_room = doubling(&Fermentation::new(&batter, &leaven, constant(24.0)));
    assert!((1.2..2.2).contains(&at_room), "{at_room} h");
}

/// Common practice: 4 °C slows a dough about tenfold; more, since cold water holds more gas.
#[test]
fn the_cold_slows_more_than_the_yeast() {
    let ratio = doubling(&lean(1.0, 4.0)) / doubling(&lean(1.0, 24.0));
    assert!((11.0..17.0).contains(&ratio), "{ratio}");
}

/// Common practice, no source: a culture fed 1:5:5 at 25 °C is ripe within 8 to 12 h.
#[test]
fn a_fed_culture_is_ripe_from_eight_to_twelve_hours() {
    let course = fed(5.0, 25.0).run(TimeSpan::hours(48.0));
    for hour in [8.0, 10.0, 12.0] {
        assert_eq!(course.ripeness(TimeSpan::hours(hour)), Some(Ripeness::Ripe));
    }
    let ph = course.at(TimeSpan::hours(10.0)).expect("within the run").acidity.as_ph();
    assert!((3.6..4.2).contains(&ph), "ripe cultures are near pH 4: {ph}");
}

/// The window is defined by 90 % of the greatest rise: both its ends lie there, and ripeness changes there.
#[test]
fn the_ripe_window_begins_and_ends_at_nine_tenths_of_the_rise() {
    for fermentation in [preferment(0.085, 23.0), preferment(0.85, 23.0), fed(1.0, 25.0), fed(5.0, 25.0)] {
        let course = fermentation.run(TimeSpan::hours(48.0));
        let (peak, ripe) = (course.peak().expect("it peaks"), course.ripe().expect("it ripens"));
        let to = ripe.to.expect("it sinks again");
        assert!(ripe.from < peak.time && peak.time < to && course.past() == Some(to));
        for end in [ripe.from, to] {
            let share = (course.at(end).expect("within the run").risen - 1.0) / (peak.risen - 1.0);
            assert!((share - 0.9).abs() < 1e-6, "{share}");
        }
        let minute = TimeSpan::minutes(1.0);
        let states = [ripe.from - minute, ripe.from + minute, to - minute, to + minute].map(|time| course.ripeness(time));
        assert_eq!(states, [Ripeness::Young, Ripeness::Ripe, Ripeness::Ripe, Ripeness::Past].map(Some));
    }
}

/// A lean sourdough runs out of sugar before it is too sour, a sweet one does not: 5 % of sugar on flour, and it is its
/// acid that ends it. More sugar makes a sourdough sourer (PMC3318808, Table 6: acidity 2.65 mL without, 6.4 mL with 5 %).
#[test]
fn a_sweet_sourdough_is_spent_by_its_acid() {
    let sweet = |sugar| {
        let dough = Dough {
            water: Mass::grams(600.0),
            sucrose: Mass::grams(10.0 * sugar),
            hold: Hold::of(DoughKind::LiquidCulture),
            ..Dough::default()
        };
        let culture = Leaven::carried(Strain::Sourdough, Carried::ripe_culture(Mass::grams(200.0)));
        Fermentation::new(&dough, &culture, constant(30.0)).run(TimeSpan::hours(48.0))
    };
    let (lean, sweet) = (sweet(0.0), sweet(5.0));
    let spent = sweet.spent().expect("it is spent");
    assert_eq!(Some(spent), sweet.soured_to(quantity::Acidity::ph(3.7)));
    let then = sweet.at(spent).expect("within the run");
    assert!((then.acidity.as_ph() - 3.7).abs() < 1e-6 && then.state.readiness > 0.9);
    assert_eq!(sweet.ripeness(spent), Some(Ripeness::Spent));
    assert!(sweet.last().state.acid > lean.last().state.acid);
    let weak = lean.at(lean.spent().expect("it is spent")).expect("within the run");
    assert!((weak.state.readiness - 0.8).abs() < 1e-6 && weak.acidity.as_ph() > 3.7);
}

/// Marek & Bushuk (1967, Cereal Chemistry 44, 300, abstract): more yeast makes more gas, salt makes
/// less, and sugar above 5 % makes less. Trade: sugar above 10 % wants osmotolerant yeast.
#[test]
fn salt_and_sugar_slow_and_yeast_speeds() {
    let with = |salt: f64, sugar: f64, strain| {
        let dough = Dough {
            water: Mass::grams(550.0),
            salt: Mass::grams(10.0 * salt),
            sucrose: Mass::grams(10.0 * sugar),
            ..Dough::default()
        };
        doubling(&Fermentation::new(&dough, &Leaven::yeast(strain, instant(1.0)), constant(27.0)))
    };
    assert!(with(0.0, 0.0, Strain::Bakers) < with(1.0, 0.0, Strain::Bakers));
    assert!(with(1.0, 0.0, Strain::Bakers) < with(2.0, 0.0, Strain::Bakers));
    for pair in [5.0, 10.0, 20.0, 30.0].windows(2) {
        assert!(with(2.0, pair[0], Strain::Bakers) < with(2.0, pair[1], Strain::Bakers));
    }
    let gain = |sugar| with(2.0, sugar, Strain::Bakers) / with(2.0, sugar, Strain::Osmotolerant);
    assert!(gain(5.0) < 1.25 && gain(20.0) > 1.4);
    assert!(doubling(&lean(0.5, 25.0)) > doubling(&lean(1.0, 25.0)));
}

/// Where they differ: a paper on mutants of baker's yeast has an ordinary strain keep about a quarter
/// of its gas in 2 h with 10 % sucrose, another keep 0.8 of its rise with 5 % glucose. Strains differ
/// widely; the model is milder than the first and near the second, and is not bent to either.
#[test]
fn ten_percent_of_sugar_slows_less_than_the_harshest_report() {
    let made = |sugar: f64| {
        let dough =
            Dough { water: Mass::grams(550.0), salt: Mass::grams(20.0), sucrose: Mass::grams(10.0 * sugar), ..Dough::default() };
        let leaven = Leaven::yeast(Strain::Bakers, instant(1.0));
        let course = Fermentation::new(&dough, &leaven, constant(30.0)).run(TimeSpan::hours(2.0));
        course.last().state.gas_made
    };
    let (five, ten) = (made(5.0) / made(0.0), made(10.0) / made(0.0));
    assert!((0.7..0.95).contains(&five) && (0.5..0.8).contains(&ten), "{five} {ten}");
}

/// Letter of Gänzle, number 39 of a public collection: refreshed above 32 °C a culture loses its yeast.
#[test]
fn a_warm_culture_loses_its_yeast() {
    let balance = |celsius| {
        let state = fed(5.0, celsius).run(TimeSpan::hours(10.0)).last().state;
        state.yeast / state.bacteria
    };
    assert!(balance(33.0) < 0.5 * balance(25.0));
}

/// What is known of a vigour before any log, after one and after two: a third, a ninth and less, as bells multiply.
#[test]
fn logs_sharpen_a_vigour() {
    let (none, one) = (Vigour::default(), Vigour::default().learnt(1.5));
    assert!((none.spread() - 0.3).abs() < 1e-12 && (none.usual() - 1.0).abs() < 1e-12);
    // 1/0.3² and 1/0.12² add up.
    assert!((one.spread() - 0.111_417_2).abs() < 1e-6);
    assert!((one.usual() - libm::exp(libm::log(1.5) * (1.0 / 0.0144) / (1.0 / 0.09 + 1.0 / 0.0144))).abs() < 1e-9);
    assert!(one.learnt(1.5).spread() < one.spread() && one.learnt(1.5).usual() > one.usual());
}

/// Where there is sugar enough, yeast wakes wholly and no further; where it is gone, it weakens by a few percent in some
/// hours (from memory: about 4 % in four).
#[test]
fn yeast_wakes_wholly_and_weakens_slowly() {
    let mut sweet = lean(0.5, 25.0);
    sweet.start.hexose += Amount::moles(1.0);
    let awake = sweet.run(TimeSpan::hours(12.0)).last().state.readiness;
    assert!((awake - 1.0).abs() < 1e-4, "{awake}");
    let course = preferment(0.85, 23.0).run(TimeSpan::hours(24.0));
    let spent = hours(course.sugar_spent());
    let at = |hour| course.at(TimeSpan::hours(hour)).expect("within the run").state.readiness;
    let lost = 1.0 - at(spent + 8.0) / at(spent + 4.0);
    assert!((0.02..0.06).contains(&lost), "{lost}");
}

/// A vigour of two halves every time, exactly, where the temperature stands still.
#[test]
fn vigour_scales_time() {
    let at = |vigour| {
        let mut dough = lean(0.5, 24.0);
        dough.organisms.vigour = vigour;
        doubling(&dough) * vigour
    };
    assert!((at(0.5) / at(1.0) - 1.0).abs() < 1e-4 && (at(2.0) / at(1.0) - 1.0).abs() < 1e-4);
}

/// Hot milk kills: after ten minutes at 60 °C nothing rises any more; at 40 °C all live.
#[test]
fn heat_kills() {
    let raised = |hot: f64| {
        let mut dough = lean(1.0, hot);
        let minutes = |minutes, celsius| (TimeSpan::minutes(minutes), Temperature::celsius(celsius));
        dough.path = TemperaturePath::Line(vec![minutes(0.0, hot), minutes(10.0, hot), minutes(10.0, 25.0)]);
        dough.run(DAY).peak()
    };
    let dead = raised(60.0);
    assert!(dead.is_none_or(|peak| peak.risen < 1.2), "{dead:?}");
    assert!(raised(40.0).expect("it rises").risen > 3.0);
}

/// Calling a stage what it is not must show: a limit moved by hand slows it.
#[test]
fn a_lower_limit_of_solutes_slows() {
    let with = |limit| {
        let mut dough = lean(1.0, 25.0);
        dough.organisms.osmotic_limit = Osmolality::osmoles_per_kilogram(limit);
        doubling(&dough)
    };
    assert!(with(2.0) > with(3.0) && with(3.0) > with(4.0));
}

/// A scale shows the gas that left: a mole of carbon dioxide weighs 44.01 g (stoichiometry). Bakers
/// call a 1:1 culture mature near 2 % of its weight lost; at its peak ours has lost less than that.
#[test]
fn a_scale_shows_the_gas_that_left() {
    let course = fed(5.0, 25.0).run(TimeSpan::hours(16.0));
    let time = TimeSpan::hours(14.0);
    let lost = course.mass_lost(time).expect("within the run").as_grams();
    let moles = course.at(time).expect("within the run").state.gas_lost.as_moles();
    assert!((lost / moles - 44.01).abs() < 0.005);
    let at_peak = course.mass_lost(course.peak().expect("it peaks").time).expect("within the run").as_grams();
    assert!((2.0..40.0).contains(&at_peak), "{at_peak} g of 2000 g");
    assert!(course.gas_made(Amount::moles(0.1)) < course.gas_made(Amount::moles(0.2)));
}
