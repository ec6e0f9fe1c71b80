//! Dough, batter and crumb: solids, water, pores, and a boiling line that climbs as they dry.

use super::crumb_tables::{BoilingLine, Curve, Table};
use super::medium::{Medium, Settled};
use crate::heat::component::{Component, Composition};
use crate::heat::flour_water_activity::{EXPONENT, half_moisture_logarithm};
use crate::heat::pore_vapour_conductivity::AIR_LEFT;
use crate::heat::porous_conductivity::{DRY_AIR, maxwell_eucken};
use crate::heat::{
    WaterConstant, boiling_point, component_density, component_heat_capacity, saturation_pressure, vaporisation_heat,
};
use quantity::{Density, Fraction, Pressure, Temperature};
use std::sync::LazyLock;

/// The temperature at which the heat capacities and the volume of the solids are taken.
const USUAL: Temperature = Temperature::celsius(60.0);
/// The specific heat of steam below boiling, J/(kg K): the mean slope of its enthalpy from 20 to 100 °C.
const STEAM_HEAT: f64 = 1_700.0;
/// Diffusion of liquid water in crumb, m²/s: an engineering guess, without weight over minutes.
const LIQUID_DIFFUSION: f64 = 5.0e-10;

/// How firmly the stuff holds its last water.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Crust {
    /// As flour does: the drying face grows hotter than boiling water and becomes a crust.
    #[default]
    Forms,
    /// Not at all: water boils away at the boiling point to the last, as from a foam of egg white.
    Free,
}

/// What the crumb of a cook is made of.
pub(in crate::heat) struct Recipe<'a> {
    pub composition: &'a Composition,
    pub density: Density,
    /// How far bubbles keep saturated, ω.
    pub saturation: Fraction,
    pub pressure: Pressure,
    pub crust: Crust,
}

/// The medium of a cook.
pub(in crate::heat) struct Crumb {
    /// Heat capacity of the solids per volume, J/(m³ K).
    solid_capacity: f64,
    /// Solids, kg/m³.
    solids: f64,
    solid_volume: f64,
    water_heat: f64,
    saturation: f64,
    pressure: f64,
    boiling: f64,
    steam: f64,
    crust: Crust,
    table: Table,
    line: BoilingLine,
}

static EXPONENTIAL: LazyLock<Curve> = LazyLock::new(|| Curve::new(-7.0, 1.0, libm::exp));
static LOGISTIC: LazyLock<Curve> = LazyLock::new(|| Curve::new(-20.0, 20.0, |y| 1.0 / (1.0 + libm::exp(y))));

impl Crumb {
    /// The medium and its water in kg/m³.
    pub fn new(recipe: &Recipe) -> (Self, f64) {
        let density = recipe.density.as_kilograms_per_cubic_metre();
        let boiling = boiling_point(recipe.pressure);
        let dry: Vec<_> = recipe.composition.parts().filter(|(part, _)| *part != Component::Water).collect();
        let specific = |part| component_heat_capacity(part, USUAL, WaterConstant::Original).as_joules_per_kilogram_kelvin();
        let volumes: Vec<_> = dry
            .iter()
            .map(|(part, share)| (*part, density * share / component_density(*part, USUAL).as_kilograms_per_cubic_metre()))
            .collect();
        let solids = density * dry.iter().map(|(_, share)| share).sum::<f64>();
        let water_heat = specific(Component::Water);
        let pressure = recipe.pressure.as_pascals();
        let crumb = Self {
            solid_capacity: density * dry.iter().map(|(part, share)| share * specific(*part)).sum::<f64>(),
            solids,
            solid_volume: volumes.iter().map(|(_, volume)| volume).sum(),
            water_heat,
            saturation: recipe.saturation.as_ratio(),
            pressure,
            boiling: boiling.as_celsius(),
            steam: vaporisation_heat(boiling).as_joules_per_kilogram() + water_heat * boiling.as_celsius(),
            crust: recipe.crust,
            table: Table::new(&volumes, boiling),
            line: BoilingLine::new(solids, pressure, boiling),
        };
        (crumb, density * recipe.composition.water.as_ratio())
    }

    /// The specific heat times mass of a cubic metre.
    fn capacity(&self, water: f64) -> f64 {
        self.solid_capacity + self.water_heat * water
    }

    fn activity(&self, t: f64, water: f64) -> f64 {
        if self.crust == Crust::Free {
            return f64::from(u8::from(water > 0.0));
        }
        let moisture = libm::log((100.0 * water / self.solids).max(0.0));
        LOGISTIC.at((half_moisture_logarithm(t) - moisture) / EXPONENT)
    }

    /// Boils water that nothing holds.
    fn boil_freely(&self, enthalpy: f64, water: f64) -> Settled {
        let excess = enthalpy - self.capacity(water) * self.boiling;
        let boiled = excess / (self.steam - self.water_heat * self.boiling);
        if boiled < water {
            return Settled { temperature: self.boiling, slope: 0.0, boiled };
        }
        let slope = 1.0 / self.solid_capacity;
        Settled { temperature: (enthalpy - water * self.steam) * slope, slope, boiled: water }
    }

    /// Boils water along the line on which the crumb's vapour pressure equals the air's.
    fn boil_along(&self, enthalpy: f64, water: f64) -> Option<Settled> {
        let at = |j: usize| {
            let (t, w) = self.line.points[j];
            self.capacity(w) * t + (water - w) * self.steam
        };
        let last = self.line.points.len() - 1;
        let (mut low, mut high) = (0, last);
        while high - low > 1 {
            let middle = usize::midpoint(low, high);
            if at(middle) <= enthalpy { low = middle } else { high = middle }
        }
        let (from, to) = (at(low), at(high));
        let ((t_low, w_low), (t_high, w_high)) = (self.line.points[low], self.line.points[high]);
        let left = w_low + (w_high - w_low) * ((enthalpy - from) / (to - from)).clamp(0.0, 1.0);
        let boiled = water - left;
        let temperature = (enthalpy - boiled * self.steam) / self.capacity(left);
        (boiled > 0.0).then_some(Settled { temperature, slope: (t_high - t_low) / (to - from), boiled })
    }
}

impl Medium for Crumb {
    fn enthalpy(&self, temperature: f64, water: f64) -> f64 {
        self.capacity(water) * temperature
    }

    fn settle(&self, enthalpy: f64, water: f64) -> Settled {
        let slope = 1.0 / self.capacity(water);
        let sensible = Settled { temperature: enthalpy * slope, slope, boiled: 0.0 };
        if !(sensible.temperature > self.boiling && water > 0.0) {
            return sensible;
        }
        match self.crust {
            Crust::Free => self.boil_freely(enthalpy, water),
            Crust::Forms => self.boil_along(enthalpy, water).unwrap_or(sensible),
        }
    }

    fn conductivity(&self, temperature: f64, water: f64) -> f64 {
        let row = self.table.at(temperature);
        let wet = water / row.water_density;
        let dense = self.solid_volume + wet;
        let walls = EXPONENTIAL.at((wet * row.water_logarithm + row.solid_logarithm) / dense);
        let porosity = (1.0 - dense).clamp(0.0, 0.95);
        let mut pores = DRY_AIR.as_watts_per_metre_kelvin();
        if self.saturation > 0.0 {
            let activity = self.activity(temperature, water);
            let air = (self.pressure - activity * row.vapour_pressure).max(AIR_LEFT * self.pressure);
            pores += self.saturation * activity * row.vapour_term * self.pressure / air;
        }
        maxwell_eucken(walls, pores, porosity)
    }

    fn vapour_pressure(&self, temperature: f64, water: f64) -> [f64; 2] {
        let face = Temperature::celsius(temperature);
        let pressure = self.activity(temperature, water) * saturation_pressure(face).as_pascals();
        let kelvins = face.as_kelvins();
        [pressure, pressure * self.vaporisation(temperature) / (VAPOUR_CONSTANT * kelvins * kelvins)]
    }

    fn steam(&self) -> f64 {
        self.steam
    }

    fn vaporisation(&self, temperature: f64) -> f64 {
        self.steam + STEAM_HEAT * (temperature - self.boiling) - self.water_heat * temperature
    }

    fn water_heat(&self) -> f64 {
        self.water_heat
    }

    fn water_diffusion(&self) -> f64 {
        LIQUID_DIFFUSION
    }
}

/// The gas constant of water vapour in J/(kg K).
const VAPOUR_CONSTANT: f64 = 461.5;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::air_pressure::SEA_LEVEL;
    use crate::heat::pore_vapour_conductivity::Pores;
    use crate::heat::transient::{Body, Face, Grid, Shape};
    use crate::heat::{
        Arrangement, flour_water_activity, mixture_conductivity, mixture_density, pore_vapour_conductivity, porous_conductivity,
    };

    /// A crumb that conducts alike wet and dry, for which the front has an exact solution.
    struct Even(Crumb);

    impl Medium for Even {
        fn enthalpy(&self, temperature: f64, water: f64) -> f64 {
            self.0.enthalpy(temperature, water)
        }
        fn settle(&self, enthalpy: f64, water: f64) -> Settled {
            self.0.settle(enthalpy, water)
        }
        fn conductivity(&self, _: f64, _: f64) -> f64 {
            0.12
        }
        fn steam(&self) -> f64 {
            self.0.steam()
        }
        fn water_heat(&self) -> f64 {
            self.0.water_heat()
        }
    }

    /// A griddle batter, and its medium and water.
    fn batter() -> (Composition, Crumb, f64) {
        let share = Fraction::percent;
        let composition = Composition {
            water: share(52.0),
            protein: share(7.0),
            fat: share(6.0),
            carbohydrate: share(33.5),
            ash: share(1.5),
            ..Composition::default()
        };
        let recipe = Recipe {
            composition: &composition,
            density: Density::kilograms_per_cubic_metre(800.0),
            saturation: share(50.0),
            pressure: SEA_LEVEL,
            crust: Crust::Forms,
        };
        let (crumb, water) = Crumb::new(&recipe);
        (composition, crumb, water)
    }

    /// The tables of the inner loop give what the published equations give.
    #[test]
    fn the_tables_keep_to_the_equations() {
        let (composition, crumb, water) = batter();
        for celsius in [5.0, 22.3, 60.0, 81.7, 95.0] {
            let t = Temperature::celsius(celsius);
            let moisture = Fraction::ratio(water / crumb.solids);
            let activity = flour_water_activity(moisture, t);
            assert!((crumb.activity(celsius, water) - activity.as_ratio()).abs() < 1e-3, "{celsius}");
            let latent = vaporisation_heat(t).as_joules_per_kilogram();
            assert!((crumb.vaporisation(celsius) / latent - 1.0).abs() < 0.003, "{celsius}");
            let dense = mixture_density(&composition, t, Fraction::ZERO).as_kilograms_per_cubic_metre();
            let pores = Pores { water_activity: activity, saturation: Fraction::percent(50.0), pressure: SEA_LEVEL };
            let k = porous_conductivity(
                mixture_conductivity(&composition, t, Arrangement::Geometric),
                pore_vapour_conductivity(&pores, t),
                Fraction::ratio(1.0 - 800.0 / dense),
            );
            let table = crumb.conductivity(celsius, water) / k.as_watts_per_metre_kelvin();
            assert!((table - 1.0).abs() < 0.01, "{celsius}: {table}");
        }
    }

    /// Whatever boiled, what is left is in equilibrium with steam of the air's pressure.
    #[test]
    fn a_boiling_cell_ends_in_equilibrium() {
        let (_, crumb, water) = batter();
        for excess in [2.0, 10.0, 60.0, 200.0, 400.0] {
            let settled = crumb.settle(crumb.enthalpy(101.0 + excess, water), water);
            let left = Fraction::ratio((water - settled.boiled) / crumb.solids);
            let face = Temperature::celsius(settled.temperature);
            let pressure = saturation_pressure(face).as_pascals() * flour_water_activity(left, face).as_ratio();
            assert!(settled.boiled > 0.0);
            assert!((pressure / SEA_LEVEL.as_pascals() - 1.0).abs() < 0.002, "{excess}: {pressure} Pa at {face:?}");
        }
    }

    /// Stefan's solution: 70 % carbohydrate and 30 % water of 1000 kg/m³ at the boiling point, a wall held
    /// hotter; properties by CoolProp 8.0.0 and iapws 1.5.5, fronts with scipy 1.17.1 (Carslaw & Jaeger §11.2).
    #[test]
    fn the_evaporation_front_is_where_stefan_puts_it() {
        for (hotter, seconds, front) in STEFAN {
            let composition =
                Composition { water: Fraction::percent(30.0), carbohydrate: Fraction::percent(70.0), ..Composition::default() };
            let recipe = Recipe {
                composition: &composition,
                density: Density::kilograms_per_cubic_metre(1000.0),
                saturation: Fraction::ZERO,
                pressure: SEA_LEVEL,
                crust: Crust::Free,
            };
            let (crumb, water) = Crumb::new(&recipe);
            let boiling = crumb.boiling;
            let mut body = Body::new(Even(crumb), Grid::new(Shape::Slab, 0.012, 120), boiling, water);
            let wall = Face::Held(Temperature::celsius(boiling + hotter));
            let wet = body.moisture();
            for _ in 0..3000 {
                body.step(seconds / 3000.0, 1.0, &[wall, Face::Insulated]);
            }
            let dried = (wet - body.moisture()) / water * 1000.0;
            assert!((dried / front - 1.0).abs() < 0.01, "{hotter} K, {seconds} s: {dried} mm against {front}");
            assert!((body.content() - wet / water * body.medium.enthalpy(boiling, water) - body.heat_in).abs() < 1e-3);
        }
    }

    /// Wall over boiling in kelvin, time in s, front in mm.
    const STEFAN: [(f64, f64, f64); 4] =
        [(40.0, 300.0, 2.03979), (40.0, 1200.0, 4.07959), (80.0, 300.0, 2.85403), (80.0, 1200.0, 5.70805)];
}
