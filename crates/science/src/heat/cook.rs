//! A cook: a piece on a griddle, in an oven or in hot oil, from raw to done and rested.

use super::course::{Course, Log};
use super::transient::crumb::{Crumb, Recipe};
use super::transient::{Body, Crust, Face, Grid, Shape};
use super::{Composition, air_pressure};
use crate::{Equation, Outside, Standing, Valid};
use quantity::{Between, Density, Fraction, Length, Pressure, Temperature, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::cook",
    source: "zanoni-1993",
    place: "evaporation front in baking bread; enthalpy on a fixed grid after Mannapperuma & Singh (1988)",
    standing: Standing::Fitted,
    valid: &[
        Valid { symbol: "thickness", unit: "mm", from: 4.0, to: 120.0 },
        Valid { symbol: "density", unit: "kg/m³", from: 150.0, to: 1200.0 },
        Valid { symbol: "start", unit: "°C", from: 0.0, to: 40.0 },
        Valid { symbol: "hottest face", unit: "°C", from: 0.0, to: 280.0 },
        Valid { symbol: "ω", unit: "–", from: 0.0, to: 1.0 },
        Valid { symbol: "water", unit: "–", from: 0.2, to: 0.95 },
        Valid { symbol: "time", unit: "s", from: 0.0, to: 14_400.0 },
        Valid { symbol: "cells", unit: "–", from: 24.0, to: 512.0 },
        // Frozen water would count as a solid: thaw first.
        Valid { symbol: "ice", unit: "–", from: 0.0, to: 0.0 },
    ],
};

/// How far bubbles keep saturated where nothing better is known: an engineering guess half-way
/// between none and all, to be calibrated with one probe reading.
pub const USUAL_SATURATION: Fraction = Fraction::ratio(0.5);

/// The range of the same in what has risen or is full of bubbles: from a quarter to wholly. An engineering guess from the
/// times in which bakers call small pieces done, which would leave the middle raw below a quarter (common practice, no
/// source).
pub const SATURATION: Between<Fraction> = Between { from: Fraction::ratio(0.25), to: Fraction::WHOLE };

/// What is cooked, as risen: its thickness does not change.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Piece {
    /// How areas grow from the lower or inner face to the upper or outer one.
    pub shape: Shape,
    /// The thickness of a slab, the radius of a cylinder or sphere.
    pub thickness: Length,
    /// Into how many cells it is cut.
    pub cells: u16,
    /// What it is made of.
    pub composition: Composition,
    /// Its density as risen.
    pub density: Density,
    /// Its temperature at the start.
    pub start: Temperature,
    /// How far its bubbles keep saturated, ω.
    pub saturation: Fraction,
    /// Whether it forms a crust.
    pub crust: Crust,
    /// The pressure of the air.
    pub pressure: Pressure,
    /// How many moments of its course are kept, besides the ends of its stages: few where only those count.
    pub moments: u16,
}

impl Piece {
    /// A piece with the usual crumb, 48 cells, at sea level.
    #[must_use]
    pub const fn new(thickness: Length, composition: Composition, density: Density, start: Temperature) -> Self {
        Self {
            shape: Shape::Slab,
            thickness,
            cells: 48,
            composition,
            density,
            start,
            saturation: USUAL_SATURATION,
            crust: Crust::Forms,
            pressure: air_pressure::SEA_LEVEL,
            moments: MOST_MOMENTS,
        }
    }

    /// The same without vapour in its pores: heat goes by conduction alone.
    #[must_use]
    pub const fn conducting(&self) -> Self {
        Self { saturation: Fraction::ZERO, ..*self }
    }
}

/// A while during which the faces meet the same things.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stage {
    /// How long.
    pub lasts: TimeSpan,
    /// What the lower or inner face meets. A flip is a stage with the two faces exchanged.
    pub below: Face,
    /// What the upper or outer face meets.
    pub above: Face,
}

/// What is foreseen, and the least there can be.
#[derive(Debug)]
pub struct Cook {
    /// With vapour in the pores, as far as it keeps saturated.
    pub expected: Course,
    /// By conduction alone: the lower bound, to be shown beside it.
    pub conduction_only: Course,
    /// Inputs outside the range for which the model was made.
    pub outside: Vec<Outside>,
}

/// Returns the course of a cook and its lower bound.
///
/// ```text
/// ∂H/∂t = r^(−n)·∂/∂r (r^n·k·∂T/∂r) − h_v·e,   H = (ρ_s·c_s + W·c_w)·T
/// a_w(W, T)·p_sat(T) ≤ P,   ∂W/∂t = −e
/// ```
///
/// | symbol | meaning                                                        | unit      |
/// |--------|----------------------------------------------------------------|-----------|
/// | `H`    | enthalpy over 0 °C                                             | J/m³      |
/// | `T`    | temperature                                                    | °C        |
/// | `W`    | water                                                          | kg/m³     |
/// | `e`    | what boils, so much that the vapour pressure keeps at the air's | kg/(m³ s) |
/// | `h_v`  | enthalpy of the steam                                          | J/kg      |
/// | `k`    | conductivity of crumb with moist pores                         | W/(m K)   |
/// | `ρ_s`, `c_s` | solids and their specific heat                           | kg/m³, J/(kg K) |
/// | `c_w`  | specific heat of water                                         | J/(kg K)  |
/// | `a_w`  | water activity of flour foods                                  | –         |
/// | `P`    | pressure of the air                                            | Pa        |
///
/// Steam leaves without resistance and without heating what it passes; thickness, width and the
/// shares of solids stay as they are; heat goes one way only. The contact's coefficient and the
/// saturation of the bubbles are engineering guesses: show a range, and ask for one probe reading.
/// Outside the ranges of `EQUATION` the answer is computed and flagged.
///
/// ```
/// # use quantity::*;
/// # use science::heat::{Composition, Face, cook::{Piece, Stage, cook}};
/// let batter = Composition {
///     water: Fraction::percent(52.0),
///     protein: Fraction::percent(7.0),
///     fat: Fraction::percent(6.0),
///     carbohydrate: Fraction::percent(35.0),
///     ..Composition::default()
/// };
/// let cake = Piece::new(
///     Length::millimetres(12.0),
///     batter,
///     Density::kilograms_per_cubic_metre(800.0),
///     Temperature::celsius(22.0),
/// );
/// let pan = Face::Contact {
///     transfer: HeatTransfer::watts_per_square_metre_kelvin(300.0),
///     against: Temperature::celsius(139.0),
/// };
/// let side = |below, above| Stage { lasts: TimeSpan::seconds(150.0), below, above };
/// let done = cook(&cake, &[side(pan, Face::Insulated), side(Face::Insulated, pan)]);
/// assert!(done.expected.core() > done.conduction_only.core());
/// ```
#[must_use]
pub fn cook(piece: &Piece, stages: &[Stage]) -> Cook {
    Cook {
        expected: course(piece, stages),
        conduction_only: course(&piece.conducting(), stages),
        outside: outside(piece, stages),
    }
}

/// Returns one course without its lower bound, for those who compute a range of their own.
#[must_use]
pub fn course(piece: &Piece, stages: &[Stage]) -> Course {
    in_steps(piece, stages, LONGEST_STEP)
}

fn in_steps(piece: &Piece, stages: &[Stage], longest_step: f64) -> Course {
    let recipe = Recipe {
        composition: &piece.composition,
        density: piece.density,
        saturation: piece.saturation,
        pressure: piece.pressure,
        crust: piece.crust,
    };
    let (crumb, water) = Crumb::new(&recipe);
    let grid = Grid::new(piece.shape, piece.thickness.as_metres(), piece.cells);
    let longest = (longest_step * grid.width * grid.width / USUAL_DIFFUSIVITY).min(LONGEST_SECONDS);
    let mut body = Body::new(crumb, grid, piece.start.as_celsius(), water);
    body.pressure = piece.pressure;
    let mut log = Log::new(&body, piece);
    let whole: f64 = stages.iter().map(|stage| stage.lasts.as_seconds()).sum();
    let spacing = (whole / f64::from(piece.moments.max(1))).ceil().max(1.0);
    for stage in stages {
        pass(&mut body, stage, [longest, spacing], &mut log);
    }
    log.close(&body)
}

/// The longest step as a Fourier number of one cell.
const LONGEST_STEP: f64 = 2.2;
/// The longest step in seconds, however coarse the cells: at a minute the steam of a thick loaf leaves in gulps, and
/// its middle swings.
const LONGEST_SECONDS: f64 = 8.0;
/// The diffusivity of crumb that this is meant for, m²/s.
const USUAL_DIFFUSIVITY: f64 = 1.3e-7;
/// The first step after a change at the faces, as a share of the longest.
const FIRST_STEP: f64 = 0.02;
/// How much longer each step is than the one before.
const GROWTH: f64 = 1.3;
/// The implicit share of a step of full length: near one half, where errors fall with the square of the
/// step, and a little above, where nothing swings.
const NEARLY_CENTRED: f64 = 0.55;
/// How many moments of a cook are kept where nothing else is said.
const MOST_MOMENTS: u16 = 600;
/// More steps than this a stage does not take; they grow longer instead.
const MOST_STEPS: f64 = 10_000.0;

/// Takes the body through a stage.
fn pass(body: &mut Body<Crumb>, stage: &Stage, [longest, spacing]: [f64; 2], log: &mut Log) {
    let lasts = stage.lasts.as_seconds();
    let longest = longest.max(lasts / MOST_STEPS);
    let spacing = spacing.max((lasts / f64::from(MOST_MOMENTS)).ceil());
    let faces = [stage.below, stage.above];
    let (mut gone, mut step, mut records) = (0.0, longest * FIRST_STEP, 1.0);
    while gone < lasts && step > 0.0 && lasts.is_finite() {
        let next = (records * spacing).min(lasts);
        // Steps of equal length up to the next record, none longer than wanted.
        let count = ((next - gone) / step).ceil().max(1.0);
        let dt = (next - gone) / count;
        let implicit = if step < longest { 1.0 } else { NEARLY_CENTRED };
        body.step(dt, implicit, &faces);
        step = (step * GROWTH).min(longest);
        if count > 1.0 {
            gone += dt;
        } else {
            gone = next;
            records += 1.0;
            let temperatures = body.face_temperatures(&faces);
            log.note(body, log.started + gone, temperatures);
        }
    }
    log.started += gone;
}

fn outside(piece: &Piece, stages: &[Stage]) -> Vec<Outside> {
    let hottest = |face: &Face| match face {
        Face::Insulated => 0.0,
        Face::Held(at) | Face::Contact { against: at, .. } => at.as_celsius(),
        Face::Open(around) => around.air.as_celsius().max(around.walls.as_celsius()),
    };
    let hottest = stages.iter().flat_map(|stage| [hottest(&stage.below), hottest(&stage.above)]).fold(0.0, f64::max);
    EQUATION.outside(&[
        piece.thickness.as_millimetres(),
        piece.density.as_kilograms_per_cubic_metre(),
        piece.start.as_celsius(),
        hottest,
        piece.saturation.as_ratio(),
        piece.composition.water.as_ratio(),
        stages.iter().map(|stage| stage.lasts.as_seconds()).sum(),
        f64::from(piece.cells),
        piece.composition.ice.as_ratio(),
    ])
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::HeatTransfer;

    /// Steps of 1, ½ and ¼ s: halving them at least halves what is still missing.
    #[test]
    fn a_cook_converges_with_its_steps() {
        let half = Fraction::percent(50.0);
        let dough = Composition { water: half, carbohydrate: half, ..Composition::default() };
        let density = Density::kilograms_per_cubic_metre(800.0);
        let piece = Piece::new(Length::millimetres(12.0), dough, density, Temperature::celsius(22.0));
        let transfer = HeatTransfer::watts_per_square_metre_kelvin(300.0);
        let pan = Face::Contact { transfer, against: Temperature::celsius(139.0) };
        let stage = Stage { lasts: TimeSpan::seconds(150.0), below: pan, above: Face::Insulated };
        let core = |longest| in_steps(&piece, &[stage], longest).core().as_celsius();
        let [coarse, usual, fine] = [2.1, 1.05, 0.53].map(core);
        assert!((usual - fine).abs() < 0.6 * (coarse - usual).abs(), "{coarse} {usual} {fine}");
        assert!((core(LONGEST_STEP) - fine).abs() < 0.1, "{} {fine}", core(LONGEST_STEP));
    }
}
