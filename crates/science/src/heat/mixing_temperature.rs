//! Temperature of a dough or batter from what goes into it.

use crate::{Equation, Standing, Valid};
use quantity::{Heat, HeatCapacity, Mass, SpecificEnergy, SpecificHeat, Temperature, TemperatureDifference};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "heat::mixing_temperature",
    source: "cengel-boles-2006",
    place: "ch. 5, steady mixing, problem of the dough kneader (5-157)",
    standing: Standing::Published,
    valid: &[Valid { symbol: "T", unit: "°C", from: 0.0, to: 45.0 }],
};

/// Heat set free per mass of flour that is wetted for the first time, at 11 to 12 % moisture;
/// 6.5 BTU per pound in a bakers' dictionary, 15 kJ/kg in Çengel & Boles. Drier flour gives more.
pub const HYDRATION: SpecificEnergy = SpecificEnergy::kilojoules_per_kilogram(15.1);
/// Heat that melts ice.
pub const FUSION: SpecificEnergy = SpecificEnergy::kilojoules_per_kilogram(333.6);
/// Specific heat of liquid water near room temperature.
pub const WATER: SpecificHeat = SpecificHeat::joules_per_kilogram_kelvin(4180.0);
/// Specific heat of ice.
pub const ICE: SpecificHeat = SpecificHeat::joules_per_kilogram_kelvin(2060.0);

/// One ingredient at its own temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Portion {
    /// Its mass.
    pub mass: Mass,
    /// Its specific heat.
    pub heat: SpecificHeat,
    /// Its temperature.
    pub temperature: Temperature,
}

impl Portion {
    fn capacity(&self) -> f64 {
        self.mass.as_kilograms() * self.heat.as_joules_per_kilogram_kelvin()
    }
}

/// What goes into the bowl besides the ingredients.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Mixing {
    /// Flour that meets water now; not that of a preferment.
    pub newly_wetted: Mass,
    /// Ice, which melts wholly.
    pub ice: Mass,
    /// The temperature of the ice.
    pub ice_temperature: Temperature,
    /// Work of the mixer that ends as heat.
    pub work: Heat,
    /// Heat that melting takes up, such as of cold butter beyond its specific heat.
    pub melting: Heat,
    /// What the bowl and the air take up: the one term to fit to a kitchen; steel 0.5 kJ/K a kilogram.
    pub bowl: HeatCapacity,
    /// The temperature of bowl and air.
    pub room: Temperature,
}

impl Mixing {
    /// Heat over 0 °C that these bring, and their heat capacity.
    pub(super) fn heat(&self) -> (f64, f64) {
        let ice = self.ice.as_kilograms();
        let cold = ICE.as_joules_per_kilogram_kelvin() * self.ice_temperature.as_celsius() - FUSION.as_joules_per_kilogram();
        let bowl = self.bowl.as_joules_per_kelvin();
        let wetting = HYDRATION.as_joules_per_kilogram() * self.newly_wetted.as_kilograms();
        let heat = wetting + self.work.as_joules() - self.melting.as_joules() + ice * cold + bowl * self.room.as_celsius();
        (heat, bowl + ice * WATER.as_joules_per_kilogram_kelvin())
    }
}

/// Returns the work of a mixer that warms a dough by so much: how a friction rise once measured enters the balance.
#[must_use]
pub fn friction(rise: TemperatureDifference, portions: &[Portion]) -> Heat {
    Heat::joules(rise.as_kelvins() * together(portions).1)
}

/// Heat over 0 °C and heat capacity of all ingredients.
pub(super) fn together(portions: &[Portion]) -> (f64, f64) {
    portions.iter().fold((0.0, 0.0), |(heat, capacity), portion| {
        let own = portion.capacity();
        (heat + own * portion.temperature.as_celsius(), capacity + own)
    })
}

/// Returns the temperature after mixing.
///
/// ```text
/// T = (Σ m·c·T_i + C·T_r + q·m_f + W − Q − m_ice·(L − c_ice·T_ice)) / (Σ m·c + C + m_ice·c_w)
/// ```
///
/// | symbol | meaning                                      | value | unit     |
/// |--------|----------------------------------------------|-------|----------|
/// | `T`    | temperature after mixing                     |       | °C       |
/// | `m`, `c`, `T_i` | mass, specific heat and temperature of an ingredient | | kg, kJ/(kg K), °C |
/// | `C`, `T_r` | heat capacity of bowl and air, their temperature | | kJ/K, °C |
/// | `q`    | heat of hydration per mass of flour          | 15.1  | kJ/kg    |
/// | `m_f`  | flour wetted for the first time              |       | kg       |
/// | `W`    | work of the mixer                            |       | kJ       |
/// | `Q`    | heat of melting fat                          |       | kJ       |
/// | `L`    | heat of fusion of ice                        | 333.6 | kJ/kg    |
/// | `c_ice`, `c_w` | specific heats of ice and water      | 2.06, 4.18 | kJ/(kg K) |
///
/// A portion of butter neither melts nor sets by itself: see `butter_warming` for `Q`. Valid for 0 to 45 °C; an answer below 0 °C means
/// that not all the ice melts. Çengel & Boles (2006), ch. 5; per mass of flour, not of dough.
///
/// ```
/// # use quantity::*;
/// # use science::heat::mixing_temperature::{Mixing, Portion, WATER, mixing_temperature};
/// let flour = Portion {
///     mass: Mass::grams(1000.0),
///     heat: SpecificHeat::joules_per_kilogram_kelvin(1760.0),
///     temperature: Temperature::celsius(20.0),
/// };
/// let water = Portion { mass: Mass::grams(650.0), heat: WATER, temperature: Temperature::celsius(32.0) };
/// let wetting = Mixing { newly_wetted: flour.mass, ..Mixing::default() };
/// let dough = mixing_temperature(&[flour, water], &wetting);
/// assert_eq!(format!("{:.1} °C", dough.as_celsius()), "30.7 °C");
/// ```
#[must_use]
pub fn mixing_temperature(portions: &[Portion], mixing: &Mixing) -> Temperature {
    let (heat, capacity) = together(portions);
    let (more_heat, more_capacity) = mixing.heat();
    Temperature::celsius((heat + more_heat) / (capacity + more_capacity))
}
