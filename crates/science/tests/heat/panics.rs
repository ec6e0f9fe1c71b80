//! Whatever goes in, an answer comes out.

use proptest::prelude::*;
use quantity::*;
use science::heat::cook::{Piece, Stage, cook};
use science::heat::*;
use std::hint::black_box;

/// Ordinary numbers, and every other kind.
fn any_number() -> impl Strategy<Value = f64> {
    prop_oneof![
        3 => -300.0..300.0,
        2 => any::<f64>(),
        1 => prop::sample::select(vec![0.0, -0.0, f64::NAN, f64::INFINITY, f64::NEG_INFINITY, f64::MAX, f64::MIN_POSITIVE]),
    ]
}

fn any_composition() -> impl Strategy<Value = Composition> {
    prop::array::uniform7(prop_oneof![3 => 0.0..1.0, 1 => any_number()]).prop_map(|shares| {
        let [water, protein, fat, carbohydrate, fibre, ash, ice] = shares.map(Fraction::ratio);
        Composition { water, protein, fat, carbohydrate, fibre, ash, ice }
    })
}

fn any_face() -> impl Strategy<Value = Face> {
    (0..4u8, prop::array::uniform5(any_number())).prop_map(|(kind, [a, b, c, d, e])| match kind {
        0 => Face::Insulated,
        1 => Face::Held(Temperature::celsius(a)),
        2 => Face::Contact { transfer: HeatTransfer::watts_per_square_metre_kelvin(a), against: Temperature::celsius(b) },
        _ => Face::Open(Surroundings {
            air: Temperature::celsius(a),
            walls: Temperature::celsius(b),
            convection: HeatTransfer::watts_per_square_metre_kelvin(c),
            emissivity: Fraction::ratio(d),
            humidity: Fraction::ratio(e),
        }),
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_cook_panics(
        food in any_composition(),
        numbers in prop::array::uniform5(any_number()),
        faces in prop::array::uniform4(any_face()),
        times in prop::array::uniform2(prop_oneof![3 => 0.0..100.0, 1 => any_number()]),
        cells in 0..12u16,
    ) {
        let [thickness, density, start, saturation, pressure] = numbers;
        let density = Density::kilograms_per_cubic_metre(density);
        let piece = Piece {
            cells,
            saturation: Fraction::ratio(saturation),
            pressure: Pressure::kilopascals(pressure),
            ..Piece::new(Length::millimetres(thickness), food, density, Temperature::celsius(start))
        };
        let [a, b, c, d] = faces;
        let stages = [
            Stage { lasts: TimeSpan::seconds(times[0]), below: a, above: b },
            Stage { lasts: TimeSpan::seconds(times[1]), below: c, above: d },
        ];
        let done = cook(&piece, &stages);
        prop_assert!(!done.expected.times.is_empty());
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 240, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_property_panics(food in any_composition(), a in any_number(), b in any_number(), c in any_number()) {
        let (t, share, pressure) = (Temperature::celsius(a), Fraction::ratio(b), Pressure::pascals(c));
        black_box(mixture_density(&food, t, share));
        black_box(mixture_heat_capacity(&food, t, WaterConstant::Original));
        for arrangement in [Arrangement::Parallel, Arrangement::Series, Arrangement::Geometric] {
            black_box(mixture_conductivity(&food, t, arrangement));
        }
        black_box(ice_fraction(share, Temperature::celsius(c), t));
        black_box(saturation_pressure(t));
        black_box(vaporisation_heat(t));
        black_box(boiling_point(pressure));
        black_box(air_pressure(Length::metres(a)));
        black_box(flour_water_activity(share, t));
        let pores = pore_vapour_conductivity::Pores { water_activity: share, saturation: share, pressure };
        black_box(pore_vapour_conductivity(&pores, t));
        let air = surface_evaporation::Air { temperature: Temperature::celsius(c), humidity: share, pressure, ..Default::default() };
        black_box(surface_evaporation(t, share, &air));
        black_box(radiative_transfer(share, t, Temperature::celsius(c)));
        black_box(starch_setting(t));
        black_box(browning(t));
        black_box(crust_lightness(t, share));
        black_box(solid_fat(t));
        let course = [(TimeSpan::ZERO, t), (TimeSpan::seconds(b), Temperature::celsius(c))];
        black_box(starch_setting::set_share(&course));
        black_box(browning::colour_difference(&course, b));
        black_box(browning::time_above(&course, Temperature::celsius(b)));
    }

    #[test]
    fn no_body_panics(numbers in prop::array::uniform6(any_number()), face in any_face(), lasts in any_number()) {
        let [a, b, c, d, e, start] = numbers;
        let solid = conduction::Solid {
            shape: Shape::Sphere,
            thickness: Length::millimetres(a),
            cells: 5,
            conductivity: Conductivity::watts_per_metre_kelvin(b),
            density: Density::kilograms_per_cubic_metre(c),
            heat: SpecificHeat::joules_per_kilogram_kelvin(d),
            start: Temperature::celsius(start),
        };
        black_box(conduction(&solid, [face, face], TimeSpan::seconds(lasts)).at(Length::millimetres(e)));
        let stuff = freezing_front::Freezable {
            melting: Temperature::celsius(e),
            latent: SpecificEnergy::kilojoules_per_kilogram(d),
            density: Density::kilograms_per_cubic_metre(c),
            conductivity: [a, b].map(Conductivity::watts_per_metre_kelvin),
            heat: [d, e].map(SpecificHeat::joules_per_kilogram_kelvin),
        };
        let block = freezing_front::Block { stuff, thickness: Length::millimetres(a), cells: 5, start: Temperature::celsius(start) };
        black_box(freezing_front(&block, face, TimeSpan::seconds(lasts.min(1e4))));
    }

    #[test]
    fn no_balance_panics(numbers in prop::array::uniform8(any_number())) {
        let [a, b, c, d, e, f, g, h] = numbers;
        let t = Temperature::celsius;
        let portion = mixing_temperature::Portion {
            mass: Mass::grams(a),
            heat: SpecificHeat::joules_per_kilogram_kelvin(b),
            temperature: t(c),
        };
        let mixing = mixing_temperature::Mixing {
            newly_wetted: Mass::grams(d),
            ice: Mass::grams(e),
            ice_temperature: t(f),
            work: Heat::joules(g),
            melting: Heat::joules(a),
            bowl: HeatCapacity::joules_per_kelvin(h),
            room: t(a),
        };
        black_box(mixing_temperature(&[portion, portion], &mixing));
        black_box(liquid_temperature(&[portion], &mixing, (Mass::grams(d), portion.heat), t(e)));
        black_box(liquid_temperature::ice_in(Mass::grams(a), t(b), t(c)));
        black_box(factor_rule(t(a), &[t(b), t(c)], TemperatureDifference::kelvins(d)));
        black_box(butter_warming(t(a), t(b)));
        let lump = newton_cooling::Lump {
            mass: Mass::grams(a),
            heat: portion.heat,
            surface: Area::square_centimetres(c),
            transfer: HeatTransfer::watts_per_square_metre_kelvin(d),
        };
        black_box(newton_cooling(&lump, [t(e), t(f)], TimeSpan::seconds(g)));
        black_box(newton_cooling::time_to_reach(&lump, [t(e), t(f)], t(g)));
        let (rho, k) = (Density::kilograms_per_cubic_metre(e), Conductivity::watts_per_metre_kelvin(f));
        let thick = contact_temperature::Thick { temperature: t(a), conductivity: k, density: rho, heat: portion.heat };
        black_box(contact_temperature(&thick, &thick));
        let drying = crust_thickness::Drying {
            conductivity: k,
            transfer: lump.transfer,
            excess: TemperatureDifference::kelvins(g),
            water: rho,
            latent: SpecificEnergy::joules_per_kilogram(h),
        };
        black_box(crust_thickness(&drying, TimeSpan::seconds(a)));
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 4, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_verdict_panics(food in any_composition(), numbers in prop::array::uniform4(any_number()), probed in any_number()) {
        let [surface, start, thickness, side] = numbers;
        let density = Density::kilograms_per_cubic_metre(600.0);
        let piece = Piece { cells: 4, ..Piece::new(Length::millimetres(thickness), food, density, Temperature::celsius(start)) };
        let griddle = griddle::Griddle {
            surface: Temperature::celsius(surface),
            transfer: surroundings::GRIDDLE,
            sides: vec![TimeSpan::seconds(side); 3],
            rest: TimeSpan::ZERO,
            air: griddle::kitchen(Temperature::celsius(start)),
        };
        black_box(griddle::foresee(&piece, &griddle));
        black_box(probe::contact_from_probe(&piece, &griddle, Temperature::celsius(probed)));
        let none = griddle::Griddle { sides: Vec::new(), ..griddle };
        black_box(griddle::foresee(&piece, &none));
    }
}
