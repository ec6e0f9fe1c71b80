//! What a cell's stuff does with heat.

/// A cell's answer to an enthalpy.
#[derive(Clone, Copy)]
pub(in crate::heat) struct Settled {
    /// Temperature in °C.
    pub temperature: f64,
    /// Its rise per enthalpy, K per J/m³.
    pub slope: f64,
    /// Water that boiled off meanwhile, kg/m³.
    pub boiled: f64,
}

/// A stuff that holds enthalpy and water; all per cubic metre.
pub(in crate::heat) trait Medium {
    /// The enthalpy at a temperature.
    fn enthalpy(&self, temperature: f64, water: f64) -> f64;
    /// The state at an enthalpy; the enthalpy still holds what boiled water takes along.
    fn settle(&self, enthalpy: f64, water: f64) -> Settled;
    /// Conductivity in W/(m K).
    fn conductivity(&self, temperature: f64, water: f64) -> f64;
    /// Vapour pressure in Pa and its rise per kelvin, zero for dry stuff.
    fn vapour_pressure(&self, _temperature: f64, _water: f64) -> [f64; 2] {
        [0.0; 2]
    }
    /// The enthalpy of the steam that boiling drives off, over liquid water at 0 °C, J/kg.
    fn steam(&self) -> f64 {
        0.0
    }
    /// The heat of vaporisation at a temperature, J/kg.
    fn vaporisation(&self, _temperature: f64) -> f64 {
        0.0
    }
    /// The specific heat of the water in it, J/(kg K).
    fn water_heat(&self) -> f64 {
        0.0
    }
    /// The diffusion coefficient of its liquid water, m²/s.
    fn water_diffusion(&self) -> f64 {
        0.0
    }
}

/// A stuff that only conducts.
pub(in crate::heat) struct Inert {
    /// W/(m K).
    pub conductivity: f64,
    /// J/(m³ K).
    pub capacity: f64,
}

impl Medium for Inert {
    fn enthalpy(&self, temperature: f64, _: f64) -> f64 {
        self.capacity * temperature
    }
    fn settle(&self, enthalpy: f64, _: f64) -> Settled {
        Settled { temperature: enthalpy / self.capacity, slope: 1.0 / self.capacity, boiled: 0.0 }
    }
    fn conductivity(&self, _: f64, _: f64) -> f64 {
        self.conductivity
    }
}

/// A stuff that freezes and melts at one temperature; enthalpy zero is solid at that point.
pub(in crate::heat) struct Freezing {
    /// Melting point, °C.
    pub melting: f64,
    /// Latent heat, J/m³.
    pub latent: f64,
    /// Conductivities frozen and molten, W/(m K).
    pub conductivity: [f64; 2],
    /// Heat capacities frozen and molten, J/(m³ K).
    pub capacity: [f64; 2],
}

impl Freezing {
    /// The molten share of a cell.
    pub fn molten(&self, enthalpy: f64) -> f64 {
        (enthalpy / self.latent).clamp(0.0, 1.0)
    }
}

impl Medium for Freezing {
    fn enthalpy(&self, temperature: f64, _: f64) -> f64 {
        let over = temperature - self.melting;
        if over < 0.0 { self.capacity[0] * over } else { self.latent + self.capacity[1] * over }
    }
    fn settle(&self, enthalpy: f64, _: f64) -> Settled {
        let (over, slope) = if enthalpy < 0.0 {
            (enthalpy / self.capacity[0], 1.0 / self.capacity[0])
        } else if enthalpy <= self.latent {
            (0.0, 0.0)
        } else {
            ((enthalpy - self.latent) / self.capacity[1], 1.0 / self.capacity[1])
        };
        Settled { temperature: self.melting + over, slope, boiled: 0.0 }
    }
    fn conductivity(&self, temperature: f64, _: f64) -> f64 {
        self.conductivity[usize::from(temperature > self.melting)]
    }
}
