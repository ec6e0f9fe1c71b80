//! Measuring and leavening with any input.

use crate::any_number;
use proptest::prelude::*;
use quantity::{Density, Fraction, Mass, Pressure, Temperature, TemperatureDifference, Volume};
use science::leaven::*;
use science::measure::*;

proptest! {
    #[test]
    fn weighing_anything(a in any_number(), b in any_number(), c in any_number()) {
        let _ = scale::weighing(Mass::grams(a));
        let _ = scale::relative(Mass::grams(a), Mass::grams(b));
        let _ = scale::total(&[Mass::grams(a), Mass::grams(b)]);
        let _ = scale::quotient(&[Fraction::ratio(a), Fraction::ratio(b)]);
        let _ = scale::expanded(Mass::grams(a));
        let _ = thermometer::within(TemperatureDifference::kelvins(a));
        let _ = spoon::spooned(Volume::millilitres(a), Density::grams_per_millilitre(b), Fraction::ratio(c));
        let _ = egg::european(Mass::grams(a));
        let _ = egg::parts(Mass::grams(a));
        for form in [yeast::Form::Fresh, yeast::Form::ActiveDry, yeast::Form::Instant] {
            let _ = yeast::equivalent(Mass::grams(a), form, yeast::Form::Instant);
        }
    }

    /// An egg's parts add to the egg, and yeast changed twice is the same yeast.
    #[test]
    fn nothing_is_lost(grams in 1.0..200.0_f64) {
        let parts = egg::parts(Mass::grams(grams));
        prop_assert!(((parts.shell + parts.white + parts.yolk).as_grams() - grams).abs() < 1e-9);
        let dry = yeast::equivalent(Mass::grams(grams), yeast::Form::Fresh, yeast::Form::Instant);
        let back = yeast::equivalent(dry.usual, yeast::Form::Instant, yeast::Form::Fresh);
        prop_assert!((back.usual.as_grams() - grams).abs() < 1e-9);
        prop_assert!(dry.spread.from <= dry.usual && dry.usual <= dry.spread.to);
    }

    #[test]
    fn leavening_anything(a in any_number(), b in any_number(), c in any_number()) {
        let mass = Mass::grams(a);
        let _ = soda_gas::carbon_dioxide(mass, soda_gas::Driver::Heat);
        let _ = gas_volume::volume(mass, Temperature::celsius(b), Pressure::pascals(c));
        let _ = neutralising::value(a, b);
        let _ = neutralising::acid_for(mass, Fraction::ratio(b));
        for acid in acid::all() {
            let _ = acid::soda_in(mass, Fraction::ratio(b), acid);
        }
        let _ = baking_powder::carbon_dioxide(mass, Fraction::ratio(b));
        let _ = fermented_sugar::products(mass, fermented_sugar::Sugar::Hexose);
        let _ = overrun::overrun(Density::grams_per_millilitre(a), Density::grams_per_millilitre(b));
    }
}
