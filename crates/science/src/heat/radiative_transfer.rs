//! Heat transfer coefficient of radiation between a face and the walls around it.

use crate::{Equation, Standing, Valid};
use quantity::{Fraction, HeatTransfer, Temperature};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::radiative_transfer",
    source: "carslaw-jaeger-1959",
    place: "§1.9, radiation at the surface",
    standing: Standing::Published,
    valid: &[
        Valid { symbol: "T_s", unit: "°C", from: -40.0, to: 1000.0 },
        Valid { symbol: "T_w", unit: "°C", from: -40.0, to: 1000.0 },
    ],
};

/// The Stefan-Boltzmann constant in W/(m² K⁴), exact in the SI since 2019 to the digits shown.
pub(super) const STEFAN_BOLTZMANN: f64 = 5.670_374_419e-8;

/// Returns the coefficient by which radiation crosses from the walls to a small body among them.
///
/// ```text
/// h_r = e·σ·(T_s² + T_w²)·(T_s + T_w)
/// ```
///
/// | symbol | meaning                    | value          | unit      |
/// |--------|----------------------------|----------------|-----------|
/// | `h_r`  | heat transfer coefficient  |                | W/(m² K)  |
/// | `e`    | emissivity of the face     |                | –         |
/// | `σ`    | Stefan-Boltzmann constant  | 5.670374419e-8 | W/(m² K⁴) |
/// | `T_s`  | temperature of the face    |                | K         |
/// | `T_w`  | temperature of the walls   |                | K         |
///
/// For a body that is small against the walls. Valid wherever both are above absolute zero.
/// Carslaw & Jaeger (1959), §1.9.
///
/// ```
/// # use quantity::{Fraction, Temperature};
/// let h = science::heat::radiative_transfer(Fraction::percent(90.0), Temperature::celsius(100.0), Temperature::celsius(200.0));
/// assert_eq!(format!("{:.1}", h.as_watts_per_square_metre_kelvin()), "15.7");
/// ```
#[must_use]
pub fn radiative_transfer(emissivity: Fraction, face: Temperature, walls: Temperature) -> HeatTransfer {
    let (s, w) = (face.as_kelvins(), walls.as_kelvins());
    HeatTransfer::watts_per_square_metre_kelvin(emissivity.as_ratio() * STEFAN_BOLTZMANN * (s * s + w * w) * (s + w))
}
