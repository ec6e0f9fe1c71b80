//! heat against its references.

use crate::harness::{Case, Inputs, Row, check};
use quantity::*;
use science::heat::*;

mod inputs;

use inputs::{arrangement, celsius, component, constant, density, food, has, ratio, specific, transfer};

/// How each equation answers a point.
pub const CASES: &[Case] = &[
    ("heat::component_density", |at, _| component_density(component(at), celsius(at, "T")).as_kilograms_per_cubic_metre()),
    ("heat::component_heat_capacity", |at, _| {
        component_heat_capacity(component(at), celsius(at, "T"), constant(at)).as_joules_per_kilogram_kelvin()
    }),
    ("heat::component_conductivity", |at, _| component_conductivity(component(at), celsius(at, "T")).as_watts_per_metre_kelvin()),
    ("heat::mixture_density", |at, _| {
        mixture_density(&food(at), celsius(at, "T"), Fraction::ZERO).as_kilograms_per_cubic_metre()
    }),
    ("heat::mixture_heat_capacity", |at, _| {
        mixture_heat_capacity(&food(at), celsius(at, "T"), constant(at)).as_joules_per_kilogram_kelvin()
    }),
    ("heat::mixture_conductivity", |at, _| {
        mixture_conductivity(&food(at), celsius(at, "T"), arrangement(at)).as_watts_per_metre_kelvin()
    }),
    ("heat::porous_conductivity", |at, _| {
        let k = |symbol| Conductivity::watts_per_metre_kelvin(at.number(symbol));
        porous_conductivity(k("k_c"), k("k_d"), ratio(at, "eps")).as_watts_per_metre_kelvin()
    }),
    ("heat::diffusivity", |at, _| {
        let k = Conductivity::watts_per_metre_kelvin(at.number("k"));
        diffusivity(k, density(at, "rho"), specific(at, "c")).as_square_metres_per_second() * 1e6
    }),
    ("heat::ice_fraction", |at, _| ice_fraction(ratio(at, "x_w"), celsius(at, "T_f"), celsius(at, "T")).as_ratio()),
    ("heat::saturation_pressure", |at, _| saturation_pressure(celsius(at, "T")).as_kilopascals()),
    ("heat::vaporisation_heat", |at, output| {
        let [liquid, vapour] = vaporisation_heat::saturated_densities(celsius(at, "T"));
        match output {
            "rho_liquid" => liquid.as_kilograms_per_cubic_metre(),
            "rho_vapour" => vapour.as_kilograms_per_cubic_metre(),
            _ => vaporisation_heat(celsius(at, "T")).as_kilojoules_per_kilogram(),
        }
    }),
    ("heat::air_pressure", |at, _| air_pressure(Length::metres(at.number("h"))).as_pascals()),
    ("heat::boiling_point", |at, _| boiling_point(Pressure::kilopascals(at.number("P"))).as_celsius()),
    ("heat::flour_water_activity", |at, _| flour_water_activity(ratio(at, "X"), celsius(at, "T")).as_ratio()),
    ("heat::pore_vapour_conductivity", moist_pores),
    ("heat::radiative_transfer", |at, _| {
        radiative_transfer(ratio(at, "e"), celsius(at, "T_s"), celsius(at, "T_w")).as_watts_per_square_metre_kelvin()
    }),
    ("heat::surface_evaporation", evaporate),
    ("heat::conduction", conduct),
    ("heat::freezing_front", freeze),
    ("heat::cook", cooked),
    ("heat::contact_temperature", |at, _| contact_temperature(&thick(at, "_1"), &thick(at, "_2")).as_celsius()),
    ("heat::crust_thickness", |at, _| crust_thickness(&DRYING, TimeSpan::seconds(at.number("t"))).as_millimetres()),
    ("heat::cooking_time_bound", |at, _| {
        let load = cooking_time_bound::Load {
            thickness: Length::millimetres(at.number("L")),
            density: density(at, "rho"),
            heat: specific(at, "c"),
            rise: TemperatureDifference::kelvins(at.number("dT")),
        };
        cooking_time_bound(&load, HeatFlux::watts_per_square_metre(at.number("q"))).as_seconds()
    }),
    ("heat::equal_radius", |at, output| {
        let side = |side| Length::millimetres(at.number(side));
        let radius = match output {
            "ball" => equal_radius::sphere(side("h"), side("d")),
            _ => equal_radius::cylinder(["a", "b"].map(side)),
        };
        radius.as_millimetres()
    }),
    ("heat::starch_setting", |at, output| match output {
        "k" => starch_setting(celsius(at, "T")).as_per_second(),
        "ratio" => starch_setting(celsius(at, "T")) / starch_setting(celsius(at, "T_0")),
        _ => time_until(at, |course| starch_setting::set_share(course).as_ratio() >= at.number("g")),
    }),
    ("heat::browning", |at, output| match output {
        "k" => browning(celsius(at, "T")).as_per_second(),
        "end" => {
            let day = [TimeSpan::ZERO, TimeSpan::hours(24.0)].map(|time| (time, celsius(at, "T")));
            browning::colour_difference(&day, 1.0)
        }
        _ => time_until(at, |course| browning::colour_difference(course, 1.0) >= at.number("dE")),
    }),
    ("heat::crust_lightness", |at, _| crust_lightness(celsius(at, "T"), ratio(at, "a_w")).as_per_minute()),
    ("heat::newton_cooling", cool),
    ("heat::mixing_temperature", mix),
    ("heat::liquid_temperature", |at, _| {
        let flour = portion("flour", at.number("m_flour") * 1000.0, at.number("flour"));
        let mixing = mixing_temperature::Mixing { newly_wetted: flour.mass, ..Default::default() };
        let water = (Mass::kilograms(at.number("m_water")), mixing_temperature::WATER);
        liquid_temperature(&[flour], &mixing, water, celsius(at, "T_dough")).as_celsius()
    }),
    ("heat::factor_rule", |at, _| {
        let f = |symbol| Temperature::fahrenheit(at.number(symbol));
        let mut parts = vec![f("room"), f("flour")];
        if has(at, "preferment") {
            parts.push(f("preferment"));
        }
        let friction = TemperatureDifference::fahrenheit_degrees(at.number("F"));
        factor_rule(f("T"), &parts, friction).as_fahrenheit()
    }),
    ("heat::butter_warming", |at, _| butter_warming(celsius(at, "T_1"), celsius(at, "T_2")).as_kilojoules_per_kilogram()),
    ("heat::solid_fat", |at, _| solid_fat(celsius(at, "T")).as_percent()),
];

const DRYING: crust_thickness::Drying = crust_thickness::Drying {
    conductivity: Conductivity::watts_per_metre_kelvin(0.12),
    transfer: HeatTransfer::watts_per_square_metre_kelvin(300.0),
    excess: TemperatureDifference::kelvins(39.0),
    water: Density::kilograms_per_cubic_metre(416.0),
    latent: SpecificEnergy::kilojoules_per_kilogram(2257.0),
};

fn moist_pores(at: &Inputs, _: &str) -> f64 {
    let pores = pore_vapour_conductivity::Pores {
        water_activity: ratio(at, "a_w"),
        saturation: ratio(at, "w"),
        pressure: air_pressure::SEA_LEVEL,
    };
    pore_vapour_conductivity(&pores, celsius(at, "T")).as_watts_per_metre_kelvin()
}

fn evaporate(at: &Inputs, output: &str) -> f64 {
    let usual = surface_evaporation::Air::default();
    if output == "m" {
        let air = surface_evaporation::Air { convection: transfer(at, "h"), ..usual };
        return surface_evaporation(celsius(at, "T"), ratio(at, "a_w"), &air).as_grams_per_square_metre_minute();
    }
    let air = surface_evaporation::Air { temperature: celsius(at, "T_a"), humidity: ratio(at, "phi"), ..usual };
    let warms = |face: Temperature| {
        let loss = surface_evaporation(face, Fraction::WHOLE, &air).as_kilograms_per_square_metre_second()
            * vaporisation_heat(face).as_joules_per_kilogram();
        air.convection.as_watts_per_square_metre_kelvin() * (air.temperature - face).as_kelvins() > loss
    };
    let (mut low, mut high) = (0.0, air.temperature.as_celsius());
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if warms(Temperature::celsius(middle)) { low = middle } else { high = middle }
    }
    low
}

/// A body whose conductivity, thickness and volumetric heat are all one, so that time is the Fourier number.
fn unit_body(at: &Inputs) -> conduction::Solid {
    conduction::Solid {
        shape: match at.word("shape") {
            "cylinder" => Shape::Cylinder,
            "sphere" => Shape::Sphere,
            _ => Shape::Slab,
        },
        thickness: Length::metres(1.0),
        cells: 48,
        conductivity: Conductivity::watts_per_metre_kelvin(1.0),
        density: Density::kilograms_per_cubic_metre(1.0),
        heat: SpecificHeat::joules_per_kilogram_kelvin(1.0),
        start: Temperature::celsius(at.number_or("start", 0.0)),
    }
}

fn conduct(at: &Inputs, _: &str) -> f64 {
    if has(at, "t") {
        return thick_piece(at);
    }
    let below = Face::Contact { transfer: transfer(at, "Bi_below"), against: Temperature::celsius(1.0) };
    let above = Face::Contact { transfer: transfer(at, "Bi_above"), against: Temperature::celsius(0.0) };
    let after = conduction(&unit_body(at), [below, above], TimeSpan::seconds(at.number("Fo")));
    after.at(Length::metres(at.number("x"))).as_celsius()
}

/// A slab of 80 mm, which the heat does not cross in the time of the points.
fn thick_piece(at: &Inputs) -> f64 {
    let solid = conduction::Solid {
        shape: Shape::Slab,
        thickness: Length::millimetres(80.0),
        cells: 320,
        conductivity: Conductivity::watts_per_metre_kelvin(0.31),
        density: Density::kilograms_per_cubic_metre(1000.0),
        heat: SpecificHeat::joules_per_kilogram_kelvin(0.31 / 1.3e-4),
        start: Temperature::celsius(0.0),
    };
    let hot = Temperature::celsius(1.0);
    let below = if has(at, "h") { Face::Contact { transfer: transfer(at, "h"), against: hot } } else { Face::Held(hot) };
    let after = conduction(&solid, [below, Face::Insulated], TimeSpan::seconds(at.number("t")));
    after.at(Length::millimetres(at.number("x"))).as_celsius()
}

fn freeze(at: &Inputs, _: &str) -> f64 {
    let stuff = freezing_front::Freezable {
        melting: Temperature::celsius(0.0),
        latent: SpecificEnergy::kilojoules_per_kilogram(334.0),
        density: density(at, "rho"),
        conductivity: [2.2, at.number("k_molten")].map(Conductivity::watts_per_metre_kelvin),
        heat: [2050.0, at.number("c_molten")].map(SpecificHeat::joules_per_kilogram_kelvin),
    };
    // Deep enough for the far side not to feel the wall.
    let thickness = Length::millimetres(at.number_or("deep", 120.0));
    let block =
        freezing_front::Block { stuff, thickness, cells: at.number_or("cells", 120.0) as u16, start: celsius(at, "start") };
    freezing_front(&block, Face::Held(celsius(at, "wall")), TimeSpan::hours(at.number("hours"))).as_millimetres()
}

/// The batter of the mixture references.
pub fn batter() -> Composition {
    Composition {
        water: Fraction::percent(52.0),
        protein: Fraction::percent(7.0),
        fat: Fraction::percent(6.0),
        carbohydrate: Fraction::percent(32.5),
        fibre: Fraction::percent(1.0),
        ash: Fraction::percent(1.5),
        ice: Fraction::ZERO,
    }
}

fn cooked(at: &Inputs, _: &str) -> f64 {
    let thickness = Length::millimetres(at.number("thickness"));
    let rho = Density::kilograms_per_cubic_metre(at.number_or("rho", 500.0));
    let piece = cook::Piece {
        pressure: Pressure::pascals(at.number_or("P", 101_325.0)),
        ..cook::Piece::new(thickness, if has(at, "water") { food(at) } else { batter() }, rho, Temperature::celsius(22.0))
    };
    let time = TimeSpan::minutes(at.number("minutes"));
    let stages = if has(at, "pan") {
        let pan = Face::Contact { transfer: transfer(at, "h"), against: celsius(at, "pan") };
        griddle::turned(pan, griddle::kitchen(Temperature::celsius(25.0)), &[time, time], TimeSpan::ZERO)
    } else {
        let oven = griddle::oven(celsius(at, "oven"), HeatTransfer::watts_per_square_metre_kelvin(10.0));
        griddle::baked(oven, HeatTransfer::watts_per_square_metre_kelvin(25.0), time)
    };
    cook(&piece, &stages).expected.core().as_celsius()
}

fn thick(at: &Inputs, side: &str) -> contact_temperature::Thick {
    let of = |symbol: &str| at.number(&format!("{symbol}{side}"));
    contact_temperature::Thick {
        temperature: Temperature::celsius(of("T")),
        conductivity: Conductivity::watts_per_metre_kelvin(of("k")),
        density: Density::kilograms_per_cubic_metre(of("rho")),
        heat: SpecificHeat::joules_per_kilogram_kelvin(of("c")),
    }
}

/// The first whole tenth of a second at which a course of one temperature has done it.
fn time_until(at: &Inputs, done: impl Fn(&[(TimeSpan, Temperature)]) -> bool) -> f64 {
    let t = celsius(at, "T");
    let (mut low, mut high) = (0.0, 1e5);
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if done(&[(TimeSpan::ZERO, t), (TimeSpan::seconds(middle), t)]) { high = middle } else { low = middle }
    }
    high
}

fn cool(at: &Inputs, output: &str) -> f64 {
    let lump = newton_cooling::Lump {
        mass: Mass::grams(at.number("m")),
        heat: specific(at, "c"),
        surface: Area::square_centimetres(at.number("A")),
        transfer: transfer(at, "h"),
    };
    let from_to = [celsius(at, "T_0"), celsius(at, "T_a")];
    match output {
        "t" => newton_cooling::time_to_reach(&lump, from_to, celsius(at, "T")).as_seconds(),
        _ => newton_cooling(&lump, from_to, TimeSpan::hours(at.number("hours"))).as_celsius(),
    }
}

fn portion(name: &str, grams: f64, t: f64) -> mixing_temperature::Portion {
    let heat = ingredient_heats::named(name).expect("a listed ingredient").heat;
    mixing_temperature::Portion { mass: Mass::grams(grams), heat, temperature: Temperature::celsius(t) }
}

fn mix(at: &Inputs, _: &str) -> f64 {
    let wetted = at.number_or("wetted", 0.0);
    let (portions, flour) = if has(at, "batter") {
        let batter = [("flour", 75.0, 21.0), ("milk", 70.0, 5.0), ("egg", 20.0, 5.0), ("butter", 15.0, 45.0)];
        let mut portions: Vec<_> = batter.iter().map(|(name, grams, t)| portion(name, *grams, *t)).collect();
        portions.push(portion("equal-weights preferment", 50.0, 23.0));
        (portions, 75.0)
    } else {
        let mut portions = vec![portion("water", 1000.0 * at.number("share"), at.number("water"))];
        if has(at, "flour") {
            portions.push(portion("flour", 1000.0, at.number("flour")));
        }
        (portions, 1000.0)
    };
    let mixing = mixing_temperature::Mixing {
        newly_wetted: Mass::grams(flour * wetted),
        ice: Mass::kilograms(at.number_or("ice", 0.0)),
        ice_temperature: Temperature::celsius(at.number_or("T_ice", 0.0)),
        ..Default::default()
    };
    mixing_temperature(&portions, &mixing).as_celsius()
}

/// The rows of the published table.
pub fn rows() -> Vec<Row> {
    check("heat", CASES)
}

#[test]
fn every_reference_of_heat_is_met() {
    rows();
}

#[test]
fn every_equation_of_heat_has_a_reference() {
    let rows = rows();
    for equation in EQUATIONS {
        assert!(rows.iter().any(|row| row.equation == equation.name), "{} has no reference", equation.name);
    }
    assert_eq!(CASES.len(), EQUATIONS.len());
}
