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
    /// An amount of substance, stored in mole.
    Amount {
        /// So many mole.
        moles, as_moles: 1.0;
        /// So many millimole.
        millimoles, as_millimoles: 0.001;
    }
}

quantity! {
    /// How often or how fast something happens or grows, stored per hour.
    Rate {
        /// So many per hour.
        per_hour, as_per_hour: 1.0;
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
