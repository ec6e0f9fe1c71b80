//! How deep a body has frozen or thawed from one face.

use super::transient::medium::Freezing;
use super::transient::{Body, Face, Grid, Shape};
use crate::{Equation, Standing, Valid};
use quantity::{Conductivity, Density, Length, SpecificEnergy, SpecificHeat, Temperature, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::freezing_front",
    source: "patankar-1980",
    place: "ch. 4, with the enthalpy of fusion in the cell's enthalpy",
    standing: Standing::Published,
    valid: &[Valid { symbol: "cells", unit: "–", from: 48.0, to: 400.0 }],
};

/// A stuff that freezes at one temperature; pairs are frozen, then molten.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Freezable {
    /// Where it freezes.
    pub melting: Temperature,
    /// The heat set free in freezing.
    pub latent: SpecificEnergy,
    /// Its density, the same on both sides.
    pub density: Density,
    /// Its conductivities.
    pub conductivity: [Conductivity; 2],
    /// Its specific heats.
    pub heat: [SpecificHeat; 2],
}

/// A slab of it with an insulated far side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Block {
    /// What it is made of.
    pub stuff: Freezable,
    /// Its thickness.
    pub thickness: Length,
    /// Into how many cells it is cut.
    pub cells: u16,
    /// Its temperature at the start.
    pub start: Temperature,
}

/// Returns the depth of the part that has changed its phase since the start.
///
/// ```text
/// ∂H/∂t = ∂/∂x (k·∂T/∂x),   T = T(H)
/// ```
///
/// | symbol | meaning                                 | unit    |
/// |--------|-----------------------------------------|---------|
/// | `H`    | enthalpy, latent heat included          | J/m³    |
/// | `T`    | temperature, constant while H melts     | °C      |
/// | `k`    | conductivity of the phase               | W/(m K) |
///
/// Whatever does not freeze at one temperature, such as dough, is only roughly so. Within 1 % of
/// Neumann's solution with 200 cells; in thawing a third of a cell ahead of it. Stuff that starts at its
/// melting point counts as molten. Patankar (1980), ch. 4.
///
/// ```
/// # use quantity::*;
/// # use science::heat::{Face, freezing_front::{Block, Freezable, freezing_front}};
/// let water = Freezable {
///     melting: Temperature::celsius(0.0),
///     latent: SpecificEnergy::kilojoules_per_kilogram(334.0),
///     density: Density::kilograms_per_cubic_metre(917.0),
///     conductivity: [2.2, 0.57].map(Conductivity::watts_per_metre_kelvin),
///     heat: [2050.0, 4210.0].map(SpecificHeat::joules_per_kilogram_kelvin),
/// };
/// let tray = Block { stuff: water, thickness: Length::millimetres(60.0), cells: 120, start: Temperature::celsius(0.0) };
/// let ice = freezing_front(&tray, Face::Held(Temperature::celsius(-10.0)), TimeSpan::hours(4.0));
/// assert_eq!(format!("{:.0} mm", ice.as_millimetres()), "45 mm");
/// ```
#[must_use]
pub fn freezing_front(block: &Block, face: Face, lasts: TimeSpan) -> Length {
    let stuff = &block.stuff;
    let density = stuff.density.as_kilograms_per_cubic_metre();
    let medium = Freezing {
        melting: stuff.melting.as_celsius(),
        latent: density * stuff.latent.as_joules_per_kilogram(),
        conductivity: stuff.conductivity.map(Conductivity::as_watts_per_metre_kelvin),
        capacity: stuff.heat.map(|heat| density * heat.as_joules_per_kilogram_kelvin()),
    };
    let grid = Grid::new(Shape::Slab, block.thickness.as_metres(), block.cells);
    let step = 2.0 * grid.width * grid.width * medium.capacity[0] / medium.conductivity[0];
    let mut body = Body::new(medium, grid, block.start.as_celsius(), 0.0);
    let molten = |body: &Body<Freezing>| body.enthalpy.iter().map(|h| body.medium.molten(*h)).sum::<f64>();
    let before = molten(&body);
    let lasts = lasts.as_seconds();
    let steps = (lasts / step).ceil().clamp(0.0, MOST_STEPS);
    for _ in 0..steps as u32 {
        body.step(lasts / steps, 1.0, &[face, Face::Insulated]);
    }
    Length::metres((molten(&body) - before).abs() * body.grid.width)
}

/// More steps than this are not taken; they grow longer instead.
const MOST_STEPS: f64 = 20_000.0;
