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
    /// How sour something is, as its pH: the lower the sourer.
    Acidity {
        /// That pH.
        ph, as_ph: 1.0;
    }
}
