//! Sugar and fruit with any input.

use crate::any_number;
use proptest::prelude::*;
use quantity::{Area, Density, Fraction, Length, Mass, Power, Pressure, Temperature, TimeSpan, Viscosity};
use science::heat::surface_evaporation::Air;
use science::keeping::water_activity::solute::{self, Dissolved};
use science::sugar::*;

proptest! {
    #[test]
    fn syrups_of_any_kind(w in any_number(), t in any_number(), x in any_number()) {
        let (share, at) = (Fraction::ratio(w), Temperature::celsius(t));
        let all = || [
            density::density(share).as_grams_per_millilitre(),
            density::sucrose(Density::grams_per_millilitre(x)).as_ratio(),
            warm_density::warm_density(share, at).as_grams_per_millilitre(),
            water_density::water_density(at).as_grams_per_millilitre(),
            trade_density::density(share, at).as_grams_per_millilitre(),
            refractive_index::refractive_index(share),
            refractive_index::sucrose(x).as_ratio(),
            water_viscosity::water_viscosity(at).as_pascal_seconds(),
            refractometer::corrected(share, at).as_ratio(),
            viscosity::viscosity(share, at).as_pascal_seconds(),
            viscosity::sucrose(Viscosity::pascal_seconds(x), at).as_ratio(),
            genotelle::viscosity(share, at).as_pascal_seconds(),
            genotelle::sucrose(Viscosity::pascal_seconds(x), at).as_ratio(),
            honey::viscosity(at).as_pascal_seconds(),
            solubility::saturated(at).as_ratio(),
            solubility::saturated_vavrinecz(at).as_ratio(),
            solubility::dissolved(Mass::grams(x), Mass::grams(w), at).as_grams(),
            inversion::inverted(Mass::grams(x), share).glucose.as_grams(),
            sucrose_boiling_point::boiling_point(share, Pressure::pascals(x)).as_celsius(),
        ];
        prop_assert_eq!(all().map(f64::to_bits), all().map(f64::to_bits));
        let _ = pour::like(Viscosity::pascal_seconds(x));
        let _ = stage::at(at, Length::metres(x));
        let _ = honey::tends_to_crystallise(share, Fraction::ratio(x));
    }

    #[test]
    fn pans_and_strainers_of_any_size(a in any_number(), b in any_number(), c in any_number(), d in any_number()) {
        let (mass, air) = (Mass::grams(a), Pressure::pascals(b));
        let sugars = [Dissolved { solute: &solute::all()[0], mass: Mass::grams(c) }];
        let _ = boiling_point::boiling_point(mass, &sugars, air);
        let _ = boiling_point::elevation(mass, &sugars, air);
        let _ = boil_off::water(mass, Fraction::ratio(b), Fraction::ratio(c));
        let _ = boil_off::time(mass, Power::watts(c), air);
        let _ = boil_off::boiled(Power::watts(c), TimeSpan::seconds(d), air);
        let pan = simmer::Pan {
            surface: Area::square_metres(a),
            syrup: Temperature::celsius(b),
            water_activity: Fraction::ratio(c),
        };
        let _ = simmer::evaporated(&pan, TimeSpan::seconds(d), &Air::default());
        let stewed = strainer::Stewed { water: mass, soluble: Mass::grams(b), insoluble: Mass::grams(c) };
        let _ = strainer::strain(&stewed, Fraction::ratio(d));
        let _ = strainer::after_boiling(mass, Fraction::ratio(b), Mass::grams(c));
        let thick = Viscosity::pascal_seconds(a);
        let _ = pulp::apparent(thick, b, c);
        let _ = pulp::thickened(thick, Fraction::ratio(b), c);
        let _ = pulp::steepness(thick, Viscosity::pascal_seconds(b), Fraction::ratio(c));
    }

    /// Every solver finds its way back inside its range.
    #[test]
    fn a_syrup_is_found_again(w in 0.05..0.75_f64, t in 15.0..95.0_f64) {
        let (share, at) = (Fraction::ratio(w), Temperature::celsius(t));
        let back = viscosity::sucrose(viscosity::viscosity(share, at), at);
        prop_assert!((back - share).as_ratio().abs() < 1e-9);
        let back = density::sucrose(density::density(share));
        prop_assert!((back - share).as_ratio().abs() < 1e-9);
    }
}
