//! Wrong figures that are about in print, and why ours are not they.

use crate::batter;
use quantity::*;
use science::heat::*;

const ROOM: Temperature = Temperature::celsius(20.0);

/// Steam tables, IAPWS R7-97 by the Python package iapws 1.5.5: 4184.8 J/(kg K) at 20 °C.
#[test]
fn the_constant_of_water_has_a_name() {
    assert_eq!(WaterConstant::default(), WaterConstant::Original);
    let off = |constant| component_heat_capacity(Component::Water, ROOM, constant).as_joules_per_kilogram_kelvin() / 4184.8 - 1.0;
    assert!(off(WaterConstant::Original).abs() < 0.003);
    assert!((off(WaterConstant::Handbook) + 0.013).abs() < 0.001);
}

/// Fat with a plus sign, fat and carbohydrate ten times too steep, water 0.457: all seen in copies of the table.
#[test]
fn misprinted_conductivities_are_refused() {
    let k = |part, t| component_conductivity(part, Temperature::celsius(t)).as_watts_per_metre_kelvin();
    assert!(k(Component::Fat, 80.0) < k(Component::Fat, 20.0), "fat conducts worse when warm");
    assert!((k(Component::Fat, 80.0) / k(Component::Fat, 0.0) - 1.0).abs() < 0.2, "not ten times too steep");
    assert!((k(Component::Carbohydrate, 80.0) / k(Component::Carbohydrate, 0.0) - 1.0).abs() < 0.5, "not ten times too steep");
    // IAPWS at 20 °C: 0.598.
    assert!((k(Component::Water, 20.0) - 0.598).abs() < 0.02);
}

/// Diffusivity polynomials of Choi & Okos (1986) for water and fat, from copies of the table.
#[test]
fn the_diffusivity_polynomials_are_up_to_three_percent_off() {
    let ours = |part| {
        let heat = component_heat_capacity(part, ROOM, WaterConstant::Handbook);
        diffusivity(component_conductivity(part, ROOM), component_density(part, ROOM), heat).as_square_metres_per_second() * 1e6
    };
    let water = 0.13168 + 6.2477e-4 * 20.0 - 2.4022e-6 * 400.0;
    assert!((ours(Component::Water) / water - 1.0).abs() < 0.03);
    assert!((ours(Component::Water) / water - 1.0).abs() > 0.02, "they are not the same");
    let fat = 0.098777 - 1.2569e-4 * 20.0 - 3.8286e-8 * 400.0;
    assert!((ours(Component::Fat) / fat - 1.0).abs() < 0.03);
}

/// The stored answer of problem 5-157 is per mass of flour; its wording, per mass of dough, gives 4.23 °C.
#[test]
fn heat_of_hydration_is_per_mass_of_flour() {
    let part = |grams, heat| mixing_temperature::Portion {
        mass: Mass::grams(grams),
        heat: SpecificHeat::joules_per_kilogram_kelvin(heat),
        temperature: Temperature::celsius(15.0),
    };
    let flour = part(2000.0, 1760.0);
    let water = (Mass::grams(1000.0), mixing_temperature::WATER);
    let needed = |wetted| {
        let mixing = mixing_temperature::Mixing { newly_wetted: Mass::grams(wetted), ..Default::default() };
        liquid_temperature(&[flour], &mixing, water, Temperature::celsius(15.0)).as_celsius()
    };
    assert!((needed(2000.0) - 7.82).abs() < 0.06);
    assert!((needed(3000.0) - 4.23).abs() < 0.1);
}

#[test]
fn liquid_and_mixing_undo_each_other() {
    let part = |grams, heat, t| mixing_temperature::Portion {
        mass: Mass::grams(grams),
        heat: SpecificHeat::joules_per_kilogram_kelvin(heat),
        temperature: Temperature::celsius(t),
    };
    let flour = part(1000.0, 1760.0, 19.0);
    let mixing = mixing_temperature::Mixing {
        newly_wetted: Mass::kilograms(1.0),
        work: Heat::kilojoules(12.0),
        bowl: HeatCapacity::joules_per_kelvin(700.0),
        room: Temperature::celsius(24.0),
        ..Default::default()
    };
    let water = (Mass::grams(650.0), mixing_temperature::WATER);
    let liquid = liquid_temperature(&[flour], &mixing, water, Temperature::celsius(25.0));
    let dough = mixing_temperature(&[flour, part(650.0, 4180.0, liquid.as_celsius())], &mixing);
    assert!((dough.as_celsius() - 25.0).abs() < 1e-9);
    // Replacing water by ice comes to the same dough.
    let tap = Temperature::celsius(28.0);
    let ice = liquid_temperature::ice_in(water.0, tap, liquid);
    assert!(ice > Mass::ZERO);
    let with_ice = mixing_temperature::Mixing { ice, ..mixing };
    let dough = mixing_temperature(&[flour, part(650.0 - ice.as_grams(), 4180.0, 28.0)], &with_ice);
    assert!((dough.as_celsius() - 25.0).abs() < 1e-6, "{dough:?} with {ice:?}");
}

/// A friction rise enters as work and comes out as the same rise; the rule of the trade lets it stand for more.
#[test]
fn friction_warms_by_itself() {
    let water = mixing_temperature::Portion {
        mass: Mass::grams(800.0),
        heat: mixing_temperature::WATER,
        temperature: Temperature::celsius(21.0),
    };
    let work = mixing_temperature::friction(TemperatureDifference::kelvins(4.5), &[water]);
    let mixing = mixing_temperature::Mixing { work, ..Default::default() };
    assert!((mixing_temperature(&[water], &mixing).as_celsius() - 25.5).abs() < 1e-9);
}

/// The rule hides hydration and heat capacities in its friction factor: for the balance without friction it must
/// be about 9 K, though nothing rubbed.
#[test]
fn the_rules_friction_stands_for_more_than_friction() {
    let flour = mixing_temperature::Portion {
        mass: Mass::grams(1000.0),
        heat: SpecificHeat::joules_per_kilogram_kelvin(1760.0),
        temperature: Temperature::celsius(20.0),
    };
    let mixing = mixing_temperature::Mixing { newly_wetted: flour.mass, ..Default::default() };
    let desired = Temperature::celsius(24.0);
    let water = liquid_temperature(&[flour], &mixing, (Mass::grams(650.0), mixing_temperature::WATER), desired);
    let parts = [Temperature::celsius(22.0), flour.temperature];
    let hidden = factor_rule::agreeing_friction(desired, &parts, water);
    assert!((factor_rule(desired, &parts, hidden) - water).as_kelvins().abs() < 1e-9);
    assert!((7.0..10.0).contains(&hidden.as_kelvins()), "{hidden:?}");
}

/// Series and parallel enclose every other arrangement.
#[test]
fn bounds_enclose_the_mean() {
    let k = |arrangement| mixture_conductivity(&batter(), ROOM, arrangement);
    assert!(k(Arrangement::Series) < k(Arrangement::Geometric));
    assert!(k(Arrangement::Geometric) < k(Arrangement::Parallel));
}

#[test]
fn a_value_outside_is_computed_and_flagged() {
    let hot = component_density::EQUATION.outside(&[200.0]);
    assert_eq!(hot.len(), 1);
    assert!(component_density(Component::Water, Temperature::celsius(200.0)).is_finite());
}
