//! How gas shares itself between the dough's water and its bubbles, and how far the dough rises.

use super::{Stage, dissolved_gas::dissolved_gas};
use crate::{Equation, Standing, Valid};
use quantity::{Amount, Temperature, Volume};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::gas_volume",
    source: "physical-chemistry",
    place: "ideal gas and Henry's law in bubbles that already hold air; extra solubility fitted",
    standing: Standing::Fitted,
    valid: &[
        Valid { symbol: "T", unit: "°C", from: 0.0, to: 40.0 },
        Valid { symbol: "C", unit: "mol/kg flour", from: 0.0, to: 1.5 },
    ],
};

/// The gas in a dough a kg flour.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gas {
    /// Carbon dioxide in bubbles.
    pub in_bubbles: Amount,
    /// The room that bubbles take, air included.
    pub volume: Volume,
    /// Volume of the dough against its volume when mixed.
    pub risen: f64,
}

/// Returns how a dough holds the carbon dioxide that has not left it.
///
/// ```text
/// V_0 = V_c/(1 − e_0),   V_m = R·T/p,   n_a = e_0·V_0/V_m,   K = k_H·p·W·κ
/// b = n_a + K − C
/// n_g = [−b + √(b² + 4·C·n_a)]/2
/// V/V_0 = (V_c + (n_g + n_a)·V_m)/V_0
/// ```
///
/// | symbol | meaning                                        | value    | unit     |
/// |--------|------------------------------------------------|----------|----------|
/// | `C`    | carbon dioxide held                            |          | mol      |
/// | `V_c`  | volume without gas                             |          | L        |
/// | `V_0`  | volume when mixed                              |          | L        |
/// | `e_0`  | share of air when mixed                        |          | –        |
/// | `V_m`  | molar volume                                   |          | L/mol    |
/// | `n_a`  | air                                            |          | mol      |
/// | `k_H`  | solubility in water                            |          | mol/(kg atm) |
/// | `W`    | all water                                      |          | kg       |
/// | `κ`    | what dough dissolves beyond its water, fitted  | 1.2      | –        |
/// | `n_g`  | carbon dioxide in bubbles                      |          | mol      |
/// | `R` `p` | gas constant, pressure of the air             | 8.314462, 101.325 | J/(mol K), kPa |
///
/// All a kg flour. Valid for 0 °C ≤ T ≤ 40 °C. The air in the bubbles makes the first
/// gas slow to show. No gas gives a rise of 1; a dough mixed without air rises only once its water
/// is saturated.
///
/// ```
/// # use quantity::{Amount, Temperature};
/// # use science::ferment::{Stage, gas_volume};
/// let mixed = gas_volume(Amount::ZERO, Temperature::celsius(25.0), &Stage::default());
/// assert!((mixed.risen - 1.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn gas_volume(held: Amount, dough: Temperature, stage: &Stage) -> Gas {
    let room = GasRoom::of(stage);
    let (in_bubbles, volume) = room.share(held.as_moles(), atmospheric_volume(dough), dissolved_gas(dough).as_moles());
    Gas { in_bubbles: Amount::moles(in_bubbles), volume: Volume::litres(volume), risen: (room.compact + volume) / room.mixed }
}

/// Only how far a dough rises by the moles it holds.
pub(super) fn risen(held: f64, dough: Temperature, stage: &Stage) -> f64 {
    let room = GasRoom::of(stage);
    let (_, volume) = room.share(held, atmospheric_volume(dough), dissolved_gas(dough).as_moles());
    (room.compact + volume) / room.mixed
}

/// The litres that a mole of gas takes at one atmosphere.
pub(super) fn atmospheric_volume(dough: Temperature) -> f64 {
    8.314_462 * dough.as_kelvins() / 101.325
}

/// What of a dough does not change while it rises, in litres and kilograms of water.
#[derive(Clone, Copy, Debug)]
pub(super) struct GasRoom {
    pub compact: f64,
    pub mixed: f64,
    air: f64,
    water: f64,
    /// The pressure of the air in atmospheres.
    pressure: f64,
}

impl GasRoom {
    pub(super) fn of(stage: &Stage) -> Self {
        let compact = stage.gas_free_volume.as_litres();
        let mixed = compact / (1.0 - stage.hold.void);
        let pressure = stage.air.as_kilopascals() / 101.325;
        let water = stage.water.as_kilograms() * stage.dissolving * pressure;
        Self { compact, mixed, air: stage.hold.void * mixed, water, pressure }
    }

    /// The moles in bubbles and the litres that these take.
    #[inline]
    pub(super) fn share(&self, held: f64, atmospheric: f64, dissolved: f64) -> (f64, f64) {
        let molar = atmospheric / self.pressure;
        let air = self.air / molar;
        let b = air + dissolved * self.water - held;
        let bubbles = 0.5 * (-b + (b * b + 4.0 * held.max(0.0) * air).sqrt());
        (bubbles, (bubbles + air) * molar)
    }
}
