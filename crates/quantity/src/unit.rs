//! The units people type, and what each stands for.

use crate::SpoonSystem;

/// What a unit measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// How heavy.
    Mass,
    /// How much room it takes.
    Volume,
    /// How many.
    Count,
    /// How warm.
    Temperature,
    /// How long it takes.
    Time,
    /// How large a share.
    Share,
    /// How long it is.
    Length,
    /// How fast it heats.
    Power,
}

impl Kind {
    /// The word for it in a message.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Mass => "weight",
            Self::Volume => "volume",
            Self::Count => "count",
            Self::Temperature => "temperature",
            Self::Time => "time",
            Self::Share => "percentage",
            Self::Length => "length",
            Self::Power => "power",
        }
    }
}

macro_rules! units {
    ($($(#[$doc:meta])* $name:ident: $kind:ident, $symbol:literal, [$($also:literal),*];)+) => {
        /// A unit as it was written.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Unit { $($(#[$doc])* $name,)+ }

        impl Unit {
            /// Every unit.
            pub const ALL: &'static [Self] = &[$(Self::$name,)+];

            /// What it measures.
            #[must_use]
            pub const fn kind(self) -> Kind { match self { $(Self::$name => Kind::$kind,)+ } }

            /// The symbol that is printed.
            #[must_use]
            pub const fn symbol(self) -> &'static str { match self { $(Self::$name => $symbol,)+ } }

            /// The unit of that spelling, case as typed.
            fn spelled(word: &str) -> Option<Self> {
                match word { $($symbol $(| $also)* => Some(Self::$name),)+ _ => None }
            }
        }
    };
}

units! {
    /// Gram.
    Gram: Mass, "g", ["gram", "grams", "gramme", "grammes", "gr"];
    /// Kilogram.
    Kilogram: Mass, "kg", ["kilo", "kilos", "kilogram", "kilograms"];
    /// Milligram.
    Milligram: Mass, "mg", ["milligram", "milligrams"];
    /// Avoirdupois ounce.
    Ounce: Mass, "oz", ["ounce", "ounces"];
    /// Avoirdupois pound.
    Pound: Mass, "lb", ["lbs", "pound", "pounds"];
    /// Millilitre.
    Millilitre: Volume, "ml", ["mL", "millilitre", "millilitres", "milliliter", "milliliters"];
    /// Centilitre.
    Centilitre: Volume, "cl", ["cL", "centilitre", "centilitres"];
    /// Litre.
    Litre: Volume, "l", ["L", "litre", "litres", "liter", "liters"];
    /// Teaspoon of the book's system.
    Teaspoon: Volume, "tsp", ["teaspoon", "teaspoons"];
    /// Tablespoon of the book's system.
    Tablespoon: Volume, "tbsp", ["tablespoon", "tablespoons"];
    /// Cup of the book's system.
    Cup: Volume, "cup", ["cups"];
    /// Fluid ounce of the book's system.
    FluidOunce: Volume, "fl oz", ["fl. oz", "fluid ounce", "fluid ounces"];
    /// A piece.
    Piece: Count, "", ["piece", "pieces"];
    /// Degree Celsius.
    Celsius: Temperature, "°C", ["C", "degC", "° C", "ºC", "℃"];
    /// Degree Fahrenheit.
    Fahrenheit: Temperature, "°F", ["F", "degF", "° F", "ºF", "℉"];
    /// Second.
    Second: Time, "s", ["sec", "second", "seconds"];
    /// Minute.
    Minute: Time, "min", ["mins", "minute", "minutes"];
    /// Hour.
    Hour: Time, "h", ["hr", "hrs", "hour", "hours"];
    /// Day of 24 h.
    Day: Time, "d", ["day", "days"];
    /// Percent.
    Percent: Share, "%", ["percent", "per cent"];
    /// Millimetre.
    Millimetre: Length, "mm", ["millimetre", "millimetres"];
    /// Centimetre.
    Centimetre: Length, "cm", ["centimetre", "centimetres"];
    /// Metre.
    Metre: Length, "m", ["metre", "metres"];
    /// Kilometre, for heights above the sea.
    Kilometre: Length, "km", ["kilometre", "kilometres"];
    /// Inch.
    Inch: Length, "in", ["inch", "inches", "\""];
    /// Watt.
    Watt: Power, "W", ["watt", "watts"];
    /// Kilowatt.
    Kilowatt: Power, "kW", ["kilowatt", "kilowatts"];
}

impl Unit {
    /// The unit of that spelling; small letters are tried when the spelling as typed is unknown.
    #[must_use]
    pub fn named(word: &str) -> Option<Self> {
        let word = word.trim().trim_end_matches('.');
        Self::spelled(word).or_else(|| Self::spelled(&word.to_lowercase()))
    }

    /// How much of the stored scale (gram, millilitre, second, ratio, millimetre, piece, watt) one unit is.
    /// Temperatures are not multiples and give 1.
    #[must_use]
    pub const fn size(self, spoons: SpoonSystem) -> f64 {
        match self {
            Self::Kilogram | Self::Litre | Self::Metre | Self::Kilowatt => 1000.0,
            Self::Milligram => 0.001,
            Self::Ounce => 28.349_523_125,
            Self::Pound => 453.592_37,
            Self::Centilitre | Self::Centimetre => 10.0,
            Self::Teaspoon => spoons.teaspoon().as_millilitres(),
            Self::Tablespoon => spoons.tablespoon().as_millilitres(),
            Self::Cup => spoons.cup().as_millilitres(),
            Self::FluidOunce => spoons.fluid_ounce().as_millilitres(),
            Self::Minute => 60.0,
            Self::Hour => 3600.0,
            Self::Kilometre => 1_000_000.0,
            Self::Day => 86_400.0,
            Self::Percent => 0.01,
            Self::Inch => 25.4,
            _ => 1.0,
        }
    }

    /// Whether its size depends on the country.
    #[must_use]
    pub const fn is_spoon(self) -> bool {
        matches!(self, Self::Teaspoon | Self::Tablespoon | Self::Cup | Self::FluidOunce)
    }
}
