//! How large each unit is, by definition.

use crate::{near, read};
use SpoonSystem::{Australian, Metric, UsCustomary, UsLabel};
use quantity::{Mass, SpoonSystem, Temperature, TemperatureDifference, Volume};

/// The last digits of a double may be lost in a multiplication.
const EXACT: f64 = 4.0 * f64::EPSILON;

#[test]
fn weights_are_exact() {
    // NIST SP 811 (2008), Appendix B.8: 1 lb (avoirdupois) = 0.453 592 37 kg exactly; 1 oz = 1/16 lb = 28.349 523 125 g.
    let checks = [
        ("1 lb", 453.592_37),
        ("1 oz", 28.349_523_125),
        ("16 oz", 453.592_37),
        ("1 kg", 1000.0),
        ("1 mg", 0.001),
        ("1.2 kg", 1200.0),
    ];
    for (text, grams) in checks {
        let mass = read(text).mass(Metric).unwrap_or_else(|| panic!("{text} is no weight"));
        near(mass.from.as_grams(), grams, EXACT, text);
    }
}

#[test]
fn spoons_and_cups_are_those_of_their_country() {
    // NIST SP 811 (2008), Appendix B.8 and NIST Handbook 44, Appendix C: the US gallon is 231 cubic inches exactly, so
    // that the cup is 236.588 236 5 ml, the fluid ounce 29.573 529 562 5, the tablespoon half and the teaspoon a sixth of it.
    let customary =
        [("1 cup", 236.588_236_5), ("1 fl oz", 29.573_529_562_5), ("1 tbsp", 14.786_764_781_25), ("1 tsp", 4.928_921_593_75)];
    // 21 CFR 101.9(b)(5)(viii): for labels a cup is 240 ml, a tablespoon 15 ml, a teaspoon 5 ml, a fluid ounce 30 ml.
    let label = [("1 cup", 240.0), ("1 fl oz", 30.0), ("1 tbsp", 15.0), ("1 tsp", 5.0)];
    // Metric cup 250 ml, tablespoon 15 ml, teaspoon 5 ml: common practice in metric countries, no law.
    let metric = [("1 cup", 250.0), ("1 tbsp", 15.0), ("1 tsp", 5.0)];
    // The Australian tablespoon of 20 ml, four teaspoons: common practice there, no law.
    let australian = [("1 cup", 250.0), ("1 tbsp", 20.0), ("1 tsp", 5.0)];
    let systems: [(SpoonSystem, &[(&str, f64)]); 4] =
        [(UsCustomary, &customary), (UsLabel, &label), (Metric, &metric), (Australian, &australian)];
    for (system, checks) in systems {
        for (text, millilitres) in checks {
            let volume = read(text).volume(system).unwrap_or_else(|| panic!("{text} is no volume"));
            near(volume.from.as_millilitres(), *millilitres, EXACT, &format!("{text} {}", system.name()));
        }
    }
}

#[test]
fn a_cup_is_sixteen_tablespoons_of_three_teaspoons_in_customary_measure_alone() {
    // NIST Handbook 44, Appendix C: 1 cup = 16 tablespoons, 1 tablespoon = 3 teaspoons, 1 cup = 8 fluid ounces.
    near(UsCustomary.cup() / UsCustomary.tablespoon(), 16.0, EXACT, "tablespoons in a cup");
    near(UsCustomary.tablespoon() / UsCustomary.teaspoon(), 3.0, EXACT, "teaspoons in a tablespoon");
    near(UsCustomary.cup() / UsCustomary.fluid_ounce(), 8.0, EXACT, "fluid ounces in a cup");
    // The trap: the Australian tablespoon is four teaspoons, a third more than the metric one.
    near(Australian.tablespoon() / Metric.tablespoon(), 4.0 / 3.0, EXACT, "an Australian tablespoon");
}

#[test]
fn temperatures_convert_with_the_thirty_two_and_differences_without() {
    // NIST SP 811 (2008), Appendix B.8: t(°C) = (t(°F) - 32)/1.8, T(K) = t(°C) + 273.15; an interval of 1 °F is 1/1.8 K.
    // The fixed points (water freezes at 32 °F, boils at 212 °F; -40 is the same on both) are the scale's own.
    for (fahrenheit, celsius) in [(32.0, 0.0), (212.0, 100.0), (-40.0, -40.0), (350.0, 176.666_666_666_666_67), (98.6, 37.0)] {
        let temperature = Temperature::fahrenheit(fahrenheit);
        assert!((temperature.as_celsius() - celsius).abs() < 1e-12, "{fahrenheit} °F");
        let read = read(&format!("{fahrenheit} °F")).temperature().unwrap_or_else(|| panic!("{fahrenheit} °F is no temperature"));
        assert!((read.from.as_celsius() - celsius).abs() < 1e-12, "{fahrenheit} °F as read");
    }
    near(Temperature::celsius(20.0).as_kelvins(), 293.15, EXACT, "20 °C in kelvin");
    // The trap: 20 °F warmer is 11.1 K warmer, not -6.7.
    near(TemperatureDifference::fahrenheit_degrees(20.0).as_kelvins(), 11.111_111_111_111_11, 1e-15, "a difference of 20 °F");
    let difference = Temperature::fahrenheit(90.0) - Temperature::fahrenheit(70.0);
    near(difference.as_kelvins(), 11.111_111_111_111_11, 1e-12, "from 70 to 90 °F");
    near(difference.as_fahrenheit_degrees(), 20.0, 1e-12, "and back");
}

#[test]
fn lengths_are_exact() {
    // NIST SP 811 (2008), Appendix B.8: 1 in = 2.54 cm exactly.
    for (text, millimetres) in [("1 in", 25.4), ("9\"", 228.6), ("20 cm", 200.0), ("3 mm", 3.0), ("5 m", 5000.0)] {
        let length = read(text).length(Metric).unwrap_or_else(|| panic!("{text} is no length"));
        near(length.from.as_millimetres(), millimetres, EXACT, text);
    }
}

#[test]
fn household_weights_of_a_cup_and_a_spoon_agree_with_published_ones() {
    // USDA household weights: a US cup of all-purpose flour 125 g (0.528 g/ml), of granulated sugar 200 g (0.845 g/ml),
    // of milk 244 g (1.031 g/ml); honey 1.433 g/ml. To half a percent, as the densities are rounded to three places.
    let weighs = |volume: Volume, density: f64| -> Mass { volume * quantity::Density::grams_per_millilitre(density) };
    let checks = [
        (weighs(UsCustomary.cup(), 0.528), 125.0, "a cup of flour"),
        (weighs(UsCustomary.tablespoon(), 0.845), 12.5, "a tablespoon of sugar"),
        (weighs(Australian.tablespoon(), 1.433), 28.7, "an Australian tablespoon of honey"),
        (weighs(UsLabel.cup(), 1.031), 247.4, "a label's cup of milk"),
    ];
    for (mass, grams, what) in checks {
        near(mass.as_grams(), grams, 0.005, what);
    }
}
