//! What a baker weighs, pours and measures.

use crate::define::quantity;

quantity! {
    /// A mass, stored in gram.
    Mass {
        /// So many gram.
        grams, as_grams: 1.0;
        /// So many kilogram.
        kilograms, as_kilograms: 1000.0;
        /// So many milligram.
        milligrams, as_milligrams: 0.001;
        /// So many avoirdupois ounces (28.349523125 g exactly).
        ounces, as_ounces: 28.349_523_125;
        /// So many avoirdupois pounds (453.59237 g exactly).
        pounds, as_pounds: 453.592_37;
    }
}

quantity! {
    /// A volume, stored in millilitre.
    Volume {
        /// So many millilitre.
        millilitres, as_millilitres: 1.0;
        /// So many litre.
        litres, as_litres: 1000.0;
        /// So many cubic metre.
        cubic_metres, as_cubic_metres: 1.0e6;
    }
}

quantity! {
    /// A length, stored in millimetre.
    Length {
        /// So many millimetre.
        millimetres, as_millimetres: 1.0;
        /// So many centimetre.
        centimetres, as_centimetres: 10.0;
        /// So many metre.
        metres, as_metres: 1000.0;
        /// So many inches (25.4 mm exactly).
        inches, as_inches: 25.4;
    }
}

quantity! {
    /// An area, stored in square centimetre.
    Area {
        /// So many square centimetre.
        square_centimetres, as_square_centimetres: 1.0;
        /// So many square metre.
        square_metres, as_square_metres: 10_000.0;
    }
}

quantity! {
    /// A density, stored in gram per millilitre.
    Density {
        /// So many gram per millilitre.
        grams_per_millilitre, as_grams_per_millilitre: 1.0;
        /// So many kilogram per cubic metre.
        kilograms_per_cubic_metre, as_kilograms_per_cubic_metre: 0.001;
    }
}

quantity! {
    /// A number of pieces; halves and thirds of a piece are allowed.
    Count {
        /// So many pieces.
        pieces, as_pieces: 1.0;
    }
}

impl std::ops::Mul<Density> for Volume {
    type Output = Mass;
    fn mul(self, density: Density) -> Mass {
        Mass::grams(self.as_millilitres() * density.as_grams_per_millilitre())
    }
}

impl std::ops::Div<Density> for Mass {
    type Output = Volume;
    fn div(self, density: Density) -> Volume {
        Volume::millilitres(self.as_grams() / density.as_grams_per_millilitre())
    }
}

impl std::ops::Div<Volume> for Mass {
    type Output = Density;
    fn div(self, volume: Volume) -> Density {
        Density::grams_per_millilitre(self.as_grams() / volume.as_millilitres())
    }
}

impl std::ops::Mul<Length> for Area {
    type Output = Volume;
    fn mul(self, depth: Length) -> Volume {
        Volume::millilitres(self.as_square_centimetres() * depth.as_centimetres())
    }
}
