//! What a crumb's step looks up instead of computing: properties by temperature, and the boiling line.

use crate::heat::component::Component;
use crate::heat::flour_water_activity::{EXPONENT, half_moisture_logarithm};
use crate::heat::pore_vapour_conductivity::saturated_term;
use crate::heat::saturation_pressure::pascals_per_kelvin;
use crate::heat::{component_conductivity, component_density, saturation_pressure};
use quantity::Temperature;
use std::collections::BTreeMap;
use std::sync::{Arc, LazyLock, Mutex, PoisonError};

/// What depends on the temperature alone, degree by degree, so that a step needs no power or root.
pub(super) struct Table {
    rows: Vec<Row>,
}

#[derive(Clone, Copy)]
pub(super) struct Row {
    pub water_density: f64,
    pub water_logarithm: f64,
    /// Sum of volume times logarithm of conductivity over the solids.
    pub solid_logarithm: f64,
    pub vapour_pressure: f64,
    pub vapour_term: f64,
}

/// What is the same of every crumb, worked out once.
struct Degree {
    at: Temperature,
    water_density: f64,
    /// Of the conductivity of each component.
    logarithms: [f64; Component::ALL.len()],
    /// Vapour pressure, and what saturated pores add.
    saturated: (f64, f64),
}

static DEGREES: LazyLock<Vec<Degree>> = LazyLock::new(|| {
    let degree = |i: usize| {
        let at = Temperature::celsius(Table::FIRST + i as f64);
        let logarithm = |part| libm::log(component_conductivity(part, at).as_watts_per_metre_kelvin().max(1e-3));
        Degree {
            at,
            water_density: component_density(Component::Water, at).as_kilograms_per_cubic_metre().max(100.0),
            logarithms: Component::ALL.map(logarithm),
            saturated: (saturation_pressure(at).as_pascals(), saturated_term(at)),
        }
    };
    (0..Table::ROWS).map(degree).collect()
});

impl Table {
    const FIRST: f64 = -60.0;
    const ROWS: usize = 441;

    pub fn new(solids: &[(Component, f64)], boiling: Temperature) -> Self {
        // Pores near and above boiling hold hardly any air: the vapour term keeps its last value.
        let hottest = Temperature::celsius(boiling.as_celsius() - 1.0);
        let last = (saturation_pressure(hottest).as_pascals(), saturated_term(hottest));
        let row = |one: &Degree| {
            let (vapour_pressure, vapour_term) = if one.at < hottest { one.saturated } else { last };
            Row {
                water_density: one.water_density,
                water_logarithm: one.logarithms[Component::Water as usize],
                solid_logarithm: solids.iter().map(|(part, volume)| volume * one.logarithms[*part as usize]).sum(),
                vapour_pressure,
                vapour_term,
            }
        };
        Self { rows: DEGREES.iter().map(row).collect() }
    }

    pub fn at(&self, temperature: f64) -> Row {
        let place = (temperature - Self::FIRST).clamp(0.0, (Self::ROWS - 2) as f64);
        let i = place as usize;
        let share = place - i as f64;
        let (a, b) = (self.rows[i], self.rows[i + 1]);
        let mix = |a: f64, b: f64| a + share * (b - a);
        Row {
            water_density: mix(a.water_density, b.water_density),
            water_logarithm: mix(a.water_logarithm, b.water_logarithm),
            solid_logarithm: mix(a.solid_logarithm, b.solid_logarithm),
            vapour_pressure: mix(a.vapour_pressure, b.vapour_pressure),
            vapour_term: mix(a.vapour_term, b.vapour_term),
        }
    }
}

/// Temperatures and waters at which the crumb boils, from wet to dry.
pub(super) struct BoilingLine {
    pub points: Vec<(f64, f64)>,
}

/// The same of one kilogram of solids: temperatures and waters that a pressure alone decides.
type UnitLine = Arc<[(f64, f64)]>;

/// Lines by the bits of their pressure. A book is cooked at the pressure of its kitchen, over and over.
static LINES: Mutex<BTreeMap<u64, UnitLine>> = Mutex::new(BTreeMap::new());

/// So many are kept.
const MOST_LINES: usize = 16;

impl BoilingLine {
    const POINTS: i32 = 512;

    pub fn new(solids: f64, pressure: f64, boiling: Temperature) -> Self {
        let unit = Self::of_one_kilogram(pressure, boiling);
        Self { points: unit.iter().map(|(t, water)| (*t, solids * water)).collect() }
    }

    fn of_one_kilogram(pressure: f64, boiling: Temperature) -> UnitLine {
        let mut lines = LINES.lock().unwrap_or_else(PoisonError::into_inner);
        if lines.len() >= MOST_LINES {
            lines.clear();
        }
        Arc::clone(lines.entry(pressure.to_bits()).or_insert_with(|| Self::climbing(pressure, boiling).into()))
    }

    /// Points evenly spread in `y = ln(p_sat/P − 1)`, in which the water falls smoothly.
    fn climbing(pressure: f64, boiling: Temperature) -> Vec<(f64, f64)> {
        let hottest = saturation_pressure(Temperature::celsius(370.0)).as_pascals() / pressure - 1.0;
        let (first, last) = (-10.0, libm::log(hottest));
        let mut t = boiling.as_celsius();
        let point = |j: i32| {
            let y = first + (last - first) * f64::from(j) / f64::from(Self::POINTS - 1);
            t = climb(t, libm::log(pressure * (1.0 + libm::exp(y))));
            (t, libm::exp(half_moisture_logarithm(t) - EXPONENT * y) / 100.0)
        };
        (0..Self::POINTS).map(point).collect()
    }
}

/// The temperature at which ln of the saturation pressure is `target`, near `t`.
fn climb(mut t: f64, target: f64) -> f64 {
    for _ in 0..2 {
        let water = Temperature::celsius(t);
        let p = saturation_pressure(water).as_pascals();
        t -= (libm::log(p) - target) * p / pascals_per_kelvin(water);
        t = t.clamp(-50.0, 373.9);
    }
    t
}

/// A smooth function at even steps, read by straight lines.
pub(super) struct Curve {
    first: f64,
    per_step: f64,
    values: Vec<f64>,
}

impl Curve {
    const STEPS: u16 = 512;

    pub fn new(first: f64, last: f64, function: fn(f64) -> f64) -> Self {
        let step = (last - first) / f64::from(Self::STEPS);
        let values = (0..=Self::STEPS).map(|i| function(first + step * f64::from(i))).collect();
        Self { first, per_step: 1.0 / step, values }
    }

    pub fn at(&self, x: f64) -> f64 {
        let place = ((x - self.first) * self.per_step).clamp(0.0, f64::from(Self::STEPS - 1));
        let i = place as usize;
        self.values[i] + (place - i as f64) * (self.values[i + 1] - self.values[i])
    }
}
