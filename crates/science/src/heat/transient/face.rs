//! What a face of the body meets, and the heat and vapour that leave through it.

use super::medium::Medium;
use crate::heat::radiative_transfer::STEFAN_BOLTZMANN;
use crate::heat::saturation_pressure;
use crate::heat::surface_evaporation::{self, MOST_VAPOUR};
use quantity::{Fraction, HeatTransfer, Pressure, Temperature};

/// What a face of the body meets.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Face {
    /// Nothing: no heat crosses; also the axis of a cylinder and the centre of a sphere.
    Insulated,
    /// A perfect contact that holds the face at a temperature.
    Held(Temperature),
    /// A pan, a tin, hot oil or any medium met through one coefficient.
    Contact {
        /// How readily heat crosses.
        transfer: HeatTransfer,
        /// The temperature beyond.
        against: Temperature,
    },
    /// Air and walls, into which water evaporates.
    Open(Surroundings),
}

/// Air and walls around an open face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Surroundings {
    /// Temperature of the air.
    pub air: Temperature,
    /// Temperature of the walls that radiate.
    pub walls: Temperature,
    /// Heat transfer coefficient by convection alone.
    pub convection: HeatTransfer,
    /// Emissivity of the face.
    pub emissivity: Fraction,
    /// Relative humidity of the air at its own temperature.
    pub humidity: Fraction,
}

/// Heat and vapour that leave, as straight lines about the cell's present temperature.
#[derive(Clone, Copy, Default)]
pub(super) struct Flow {
    /// W/m².
    pub heat: f64,
    /// W/(m² K).
    pub heat_slope: f64,
    /// kg/(m² s).
    pub vapour: f64,
    /// kg/(m² s K).
    pub vapour_slope: f64,
}

/// The cell behind a face.
pub(super) struct Skin {
    pub temperature: f64,
    pub water: f64,
    /// From the cell's middle to the face, m² K/W.
    pub resistance: f64,
}

impl Face {
    /// What leaves through this face.
    pub(super) fn flow(&self, skin: &Skin, medium: &impl Medium, pressure: Pressure) -> Flow {
        let through = |coefficient: f64, against: f64| Flow {
            heat: coefficient * (skin.temperature - against),
            heat_slope: coefficient,
            ..Flow::default()
        };
        match self {
            Self::Insulated => Flow::default(),
            Self::Held(at) => through(1.0 / skin.resistance, at.as_celsius()),
            Self::Contact { transfer, against } => {
                let h = transfer.as_watts_per_square_metre_kelvin();
                through(h / (1.0 + h * skin.resistance), against.as_celsius())
            }
            Self::Open(around) => around.flow(skin, medium, pressure.as_pascals()),
        }
    }
}

impl Surroundings {
    fn flow(&self, skin: &Skin, medium: &impl Medium, pressure: f64) -> Flow {
        let t = skin.temperature;
        let (air, kelvins) = (self.air.as_celsius(), t + 273.15);
        let h = self.convection.as_watts_per_square_metre_kelvin();
        let radiation = self.emissivity.as_ratio() * STEFAN_BOLTZMANN;
        let [vapour, vapour_slope] = self.evaporation(skin, medium, pressure);
        let latent = medium.vaporisation(t);
        let walls = self.walls.as_kelvins();
        let heat = h * (t - air) + radiation * (fourth(kelvins) - fourth(walls)) + vapour * latent;
        let slope = h + 4.0 * radiation * kelvins * kelvins * kelvins + vapour_slope * latent;
        // The face is cooler than the cell's middle by what the flow loses on half a cell.
        let damping = 1.0 / (1.0 + skin.resistance * slope);
        Flow {
            heat: heat * damping,
            heat_slope: slope * damping,
            vapour: vapour - vapour_slope * heat * damping * skin.resistance,
            vapour_slope: vapour_slope * damping,
        }
    }

    /// Evaporation and its rise per kelvin.
    fn evaporation(&self, skin: &Skin, medium: &impl Medium, pressure: f64) -> [f64; 2] {
        let [at_face, slope] = medium.vapour_pressure(skin.temperature, skin.water);
        if at_face == 0.0 {
            return [0.0; 2];
        }
        let most = MOST_VAPOUR * pressure;
        let (at_face, slope) = if at_face < most { (at_face, slope) } else { (most, 0.0) };
        let humid = self.humidity.as_ratio() * saturation_pressure(self.air).as_pascals();
        let in_air = humid.min(most);
        let h = self.convection.as_watts_per_square_metre_kelvin();
        let flux = surface_evaporation::flux(h, pressure, [at_face, in_air]);
        let per_pascal = surface_evaporation::flux(h, pressure, [at_face + 1.0, in_air]) - flux;
        [flux, per_pascal * slope]
    }
}

fn fourth(kelvins: f64) -> f64 {
    let square = kelvins * kelvins;
    square * square
}
