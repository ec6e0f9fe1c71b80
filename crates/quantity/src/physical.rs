//! Quantities that only the equations need, in SI units.

use crate::define::quantity;

quantity! {
    /// A pressure, stored in pascal.
    Pressure {
        /// So many pascal.
        pascals, as_pascals: 1.0;
        /// So many kilopascal.
        kilopascals, as_kilopascals: 1000.0;
    }
}

quantity! {
    /// A dynamic viscosity, stored in pascal second.
    Viscosity {
        /// So many pascal second.
        pascal_seconds, as_pascal_seconds: 1.0;
        /// So many millipascal second.
        millipascal_seconds, as_millipascal_seconds: 0.001;
    }
}

quantity! {
    /// How well a stuff conducts heat, stored in watt per metre and kelvin.
    Conductivity {
        /// So many watt per metre and kelvin.
        watts_per_metre_kelvin, as_watts_per_metre_kelvin: 1.0;
    }
}

quantity! {
    /// The heat that warms a mass by one kelvin, stored in joule per kilogram and kelvin.
    SpecificHeat {
        /// So many joule per kilogram and kelvin.
        joules_per_kilogram_kelvin, as_joules_per_kilogram_kelvin: 1.0;
        /// So many kilojoule per kilogram and kelvin.
        kilojoules_per_kilogram_kelvin, as_kilojoules_per_kilogram_kelvin: 1000.0;
    }
}

quantity! {
    /// The heat that warms a body by one kelvin, stored in joule per kelvin.
    HeatCapacity {
        /// So many joule per kelvin.
        joules_per_kelvin, as_joules_per_kelvin: 1.0;
    }
}

quantity! {
    /// Energy per mass, such as a latent heat, stored in joule per kilogram.
    SpecificEnergy {
        /// So many joule per kilogram.
        joules_per_kilogram, as_joules_per_kilogram: 1.0;
        /// So many kilojoule per kilogram.
        kilojoules_per_kilogram, as_kilojoules_per_kilogram: 1000.0;
    }
}

quantity! {
    /// How fast a temperature spreads, stored in square metre per second.
    Diffusivity {
        /// So many square metre per second.
        square_metres_per_second, as_square_metres_per_second: 1.0;
    }
}

quantity! {
    /// A heat, stored in joule.
    Heat {
        /// So many joule.
        joules, as_joules: 1.0;
        /// So many kilojoule.
        kilojoules, as_kilojoules: 1000.0;
    }
}

quantity! {
    /// A power, stored in watt.
    Power {
        /// So many watt.
        watts, as_watts: 1.0;
        /// So many kilowatt.
        kilowatts, as_kilowatts: 1000.0;
    }
}

quantity! {
    /// How readily heat crosses a surface, stored in watt per square metre and kelvin.
    HeatTransfer {
        /// So many watt per square metre and kelvin.
        watts_per_square_metre_kelvin, as_watts_per_square_metre_kelvin: 1.0;
    }
}

quantity! {
    /// Heat that crosses a surface, stored in watt per square metre.
    HeatFlux {
        /// So many watt per square metre.
        watts_per_square_metre, as_watts_per_square_metre: 1.0;
    }
}

quantity! {
    /// Mass that crosses a surface, stored in kilogram per square metre and second.
    MassFlux {
        /// So many kilogram per square metre and second.
        kilograms_per_square_metre_second, as_kilograms_per_square_metre_second: 1.0;
        /// So many gram per square metre and minute.
        grams_per_square_metre_minute, as_grams_per_square_metre_minute: 0.001 / 60.0;
    }
}

quantity! {
    /// How often or how fast something happens or grows, stored per hour.
    Rate {
        /// So many per hour.
        per_hour, as_per_hour: 1.0;
        /// So many per minute.
        per_minute, as_per_minute: 60.0;
        /// So many per second.
        per_second, as_per_second: 3600.0;
    }
}

quantity! {
    /// An amount of substance, stored in mole.
    Amount {
        /// So many mole.
        moles, as_moles: 1.0;
        /// So many millimole.
        millimoles, as_millimoles: 0.001;
    }
}

quantity! {
    /// Dissolved particles to a mass of water, stored in osmole per kilogram.
    Osmolality {
        /// So many osmole per kilogram of water.
        osmoles_per_kilogram, as_osmoles_per_kilogram: 1.0;
    }
}

quantity! {
    /// How sour something is, as its pH: the lower the sourer.
    Acidity {
        /// That pH.
        ph, as_ph: 1.0;
    }
}
