//! Thickness of a crust if all the heat that crosses it evaporates water: an upper bound.

use crate::{Equation, Standing, Valid};
use quantity::{Conductivity, Density, HeatTransfer, Length, SpecificEnergy, TemperatureDifference, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::crust_thickness",
    source: "carslaw-jaeger-1959",
    place: "§11.2 in the quasi-steady limit, with a surface resistance",
    standing: Standing::Published,
    valid: &[Valid { symbol: "ΔT", unit: "K", from: 0.0, to: 200.0 }],
};

/// A drying face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drying {
    /// Conductivity of the dry crust.
    pub conductivity: Conductivity,
    /// How readily heat crosses from the hot side to the face.
    pub transfer: HeatTransfer,
    /// How much hotter than boiling the hot side is.
    pub excess: TemperatureDifference,
    /// Water in a volume of the wet crumb.
    pub water: Density,
    /// Heat of vaporisation.
    pub latent: SpecificEnergy,
}

/// Returns the thickness of the crust after a while.
///
/// ```text
/// s = k·(−1/h + √(1/h² + 2·r/k)),   r = ΔT·t / (m_w·L)
/// ```
///
/// | symbol | meaning                              | unit     |
/// |--------|--------------------------------------|----------|
/// | `s`    | thickness                            | m        |
/// | `k`    | conductivity of the crust            | W/(m K)  |
/// | `h`    | heat transfer coefficient            | W/(m² K) |
/// | `ΔT`   | hot side over boiling point          | K        |
/// | `t`    | time                                 | s        |
/// | `m_w`  | water in a volume of wet crumb       | kg/m³    |
/// | `L`    | heat of vaporisation                 | J/kg     |
///
/// The heat that the crust itself holds and that goes on into the crumb is left out, so the true
/// crust is thinner. Valid for a hot side above boiling; below, not a number.
/// Carslaw & Jaeger (1959), §11.2, quasi-steady.
///
/// ```
/// # use quantity::*;
/// # use science::heat::crust_thickness::{Drying, crust_thickness};
/// let pan = Drying {
///     conductivity: Conductivity::watts_per_metre_kelvin(0.12),
///     transfer: HeatTransfer::watts_per_square_metre_kelvin(300.0),
///     excess: TemperatureDifference::kelvins(39.0),
///     water: Density::kilograms_per_cubic_metre(416.0),
///     latent: SpecificEnergy::kilojoules_per_kilogram(2257.0),
/// };
/// let crust = crust_thickness(&pan, TimeSpan::seconds(150.0));
/// assert_eq!(format!("{:.2} mm", crust.as_millimetres()), "0.89 mm");
/// ```
#[must_use]
pub fn crust_thickness(face: &Drying, after: TimeSpan) -> Length {
    let (k, h) = (face.conductivity.as_watts_per_metre_kelvin(), face.transfer.as_watts_per_square_metre_kelvin());
    let latent = face.water.as_kilograms_per_cubic_metre() * face.latent.as_joules_per_kilogram();
    let r = face.excess.as_kelvins() * after.as_seconds() / latent;
    Length::metres(k * ((1.0 / (h * h) + 2.0 * r / k).sqrt() - 1.0 / h))
}
