//! Keeping with any input.

use crate::any_number;
use proptest::prelude::*;
use quantity::{Acidity, Fraction, Mass, Temperature, TemperatureDifference, TimeSpan, Volume};
use science::keeping::history::Reading;
use science::keeping::water_activity::mixture::{Mixture, water_activity};
use science::keeping::water_activity::solute::{self, Dissolved};
use science::keeping::water_activity::{money_born, ross};
use science::keeping::*;

proptest! {
    #[test]
    fn mixtures_of_any_kind(water in any_number(), salt in any_number(), ethanol in any_number(), solutes in prop::collection::vec(any_number(), 8)) {
        let dissolved: Vec<_> = solute::all()
            .iter()
            .zip(&solutes)
            .map(|(solute, grams)| Dissolved { solute, mass: Mass::grams(*grams) })
            .collect();
        let mixture = Mixture {
            water: Mass::grams(water),
            solutes: &dissolved,
            salt: Mass::grams(salt),
            ethanol: Mass::grams(ethanol),
        };
        prop_assert_eq!(water_activity(&mixture).as_ratio().to_bits(), water_activity(&mixture).as_ratio().to_bits());
        let _ = money_born::water_activity(water);
        let _ = ross::water_activity(&[Fraction::ratio(water), Fraction::ratio(salt)]);
        let _ = growth_limits::able_to_grow(Fraction::ratio(water));
    }

    /// More of anything dissolved never frees water.
    #[test]
    fn solutes_bind_water(grams in 0.0..300.0_f64, more in 0.0..50.0_f64, which in 0..8_usize) {
        let at = |mass: f64| {
            let solutes = [Dissolved { solute: &solute::all()[which], mass: Mass::grams(mass) }];
            water_activity(&Mixture { water: Mass::grams(100.0), solutes: &solutes, salt: Mass::ZERO, ethanol: Mass::ZERO })
        };
        prop_assert!(at(grams + more) <= at(grams));
        prop_assert!(at(grams) <= Fraction::WHOLE && at(grams) > Fraction::ZERO);
    }

    #[test]
    fn verdicts_on_anything(a in any_number(), b in any_number(), c in any_number()) {
        let (activity, sourness) = (Some(Fraction::ratio(a)), Some(Acidity::ph(b)));
        for treatment in [food_code::Treatment::HeatedThenPackaged, food_code::Treatment::NotHeatedOrNotPackaged] {
            prop_assert!(!food_code::verdict(treatment, activity, sourness).guidance().is_empty());
        }
        let food = listeria::ReadyToEat { water_activity: activity, sourness, life: Some(TimeSpan::days(c)) };
        prop_assert!(!listeria::verdict(&food).guidance().is_empty());
        prop_assert!(!cooling_rule::cooked(TimeSpan::hours(a), TimeSpan::hours(b)).guidance().is_empty());
        prop_assert!(!cooling_rule::from_ambient(TimeSpan::hours(a)).guidance().is_empty());
        prop_assert!(!holding::two_four(TimeSpan::hours(a)).guidance().is_empty());
        let _ = cooking_rule::met(cooking_rule::RawEgg::InAMixture, Temperature::celsius(a), TimeSpan::seconds(b));
    }

    #[test]
    fn spirits_of_any_strength(a in any_number(), b in any_number(), c in any_number()) {
        let _ = alcohol_strength::density(Fraction::ratio(a), Temperature::celsius(b));
        let _ = alcohol_strength::by_volume(Fraction::ratio(a));
        let _ = alcohol_strength::by_mass(Fraction::ratio(a));
        let drink = alcohol_mix::Poured { volume: Volume::millilitres(a), strength: Fraction::ratio(b) };
        let _ = alcohol_mix::strength(&[drink], Mass::grams(c));
        let _ = alcohol_retained::retained(alcohol_retained::Preparation::StirredIn(TimeSpan::minutes(a)));
    }

    #[test]
    fn histories_of_any_kind(points in prop::collection::vec((any_number(), any_number()), 0..6), t in any_number(), z in any_number()) {
        let readings: Vec<_> = points
            .iter()
            .map(|(at, warm)| Reading { at: TimeSpan::seconds(*at), temperature: Temperature::celsius(*warm) })
            .collect();
        let _ = lethality::equivalent(&readings, Temperature::celsius(t), TemperatureDifference::kelvins(z));
        for below in [uk_equivalents::Below70::AsPublished, uk_equivalents::Below70::Cautious] {
            prop_assert!(uk_equivalents::treatments(&readings, below) >= 0.0);
            let _ = uk_equivalents::hold(Temperature::celsius(t), below);
        }
        prop_assert!(salmonella::worst_reductions(&readings) >= 0.0);
        prop_assert!(danger_zone::time(&readings, danger_zone::Zone::English) >= TimeSpan::ZERO);
        let _ = cooling_rule::of_record(&readings);
        for food in salmonella::foods() {
            let _ = salmonella::decimal_time(food, Temperature::celsius(t));
        }
    }

    /// A history cut in two at any moment is worth the same.
    #[test]
    fn a_cut_history_is_worth_the_same(from in 20.0..100.0_f64, to in 20.0..100.0_f64, cut in 0.01..0.99_f64) {
        let at = |share: f64| Reading {
            at: TimeSpan::minutes(10.0 * share),
            temperature: Temperature::celsius(from + (to - from) * share),
        };
        let whole = uk_equivalents::treatments(&[at(0.0), at(1.0)], uk_equivalents::Below70::Cautious);
        let parts = uk_equivalents::treatments(&[at(0.0), at(cut), at(1.0)], uk_equivalents::Below70::Cautious);
        prop_assert!((whole - parts).abs() <= 1e-9 * whole.max(1e-6));
    }
}
