//! The figures of a composition, with their names and units.

macro_rules! figures {
    ($($(#[$doc:meta])* $item:ident = $name:literal, $title:literal, $unit:literal;)+) => {
        /// A figure of a composition, per 100 g edible portion.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Figure { $($(#[$doc])* $item,)+ }

        impl Figure {
            /// All figures in the table's order.
            pub const ALL: &'static [Self] = &[$(Self::$item,)+];

            /// The key in the text.
            #[must_use]
            pub const fn name(self) -> &'static str { match self { $(Self::$item => $name,)+ } }

            /// What readers see.
            #[must_use]
            pub const fn title(self) -> &'static str { match self { $(Self::$item => $title,)+ } }

            /// Its unit.
            #[must_use]
            pub const fn unit(self) -> &'static str { match self { $(Self::$item => $unit,)+ } }

            /// The figure of that key.
            #[must_use]
            pub fn named(name: &str) -> Option<Self> { match name { $($name => Some(Self::$item),)+ _ => None } }
        }
    };
}

figures! {
    /// Water.
    Water = "water", "water", "g";
    /// Protein by the food's own nitrogen factor.
    Protein = "protein", "protein", "g";
    /// Protein as nitrogen times 6.25, which EU labels state.
    ProteinLabel = "protein-nx625", "protein (N × 6.25)", "g";
    /// Fat.
    Fat = "fat", "fat", "g";
    /// Saturated fatty acids.
    Saturates = "saturates", "of which saturates", "g";
    /// Mono-unsaturated fatty acids.
    Monounsaturates = "monounsaturates", "of which mono-unsaturates", "g";
    /// Polyunsaturated fatty acids.
    Polyunsaturates = "polyunsaturates", "of which polyunsaturates", "g";
    /// Trans fatty acids.
    Trans = "trans", "of which trans", "g";
    /// Carbohydrate by difference, fibre included.
    Carbohydrate = "carbohydrate", "carbohydrate with fibre", "g";
    /// Carbohydrate without fibre, which EU labels state.
    AvailableCarbohydrate = "available-carbohydrate", "carbohydrate without fibre", "g";
    /// All sugars.
    Sugars = "sugars", "of which sugars", "g";
    /// Sucrose.
    Sucrose = "sucrose", "sucrose", "g";
    /// Glucose.
    Glucose = "glucose", "glucose", "g";
    /// Fructose.
    Fructose = "fructose", "fructose", "g";
    /// Lactose.
    Lactose = "lactose", "lactose", "g";
    /// Maltose.
    Maltose = "maltose", "maltose", "g";
    /// Galactose.
    Galactose = "galactose", "galactose", "g";
    /// Starch.
    Starch = "starch", "starch", "g";
    /// Dietary fibre.
    Fibre = "fibre", "fibre", "g";
    /// Ash.
    Ash = "ash", "ash", "g";
    /// Ethanol.
    Alcohol = "alcohol", "alcohol", "g";
    /// Sodium.
    Sodium = "sodium-mg", "sodium", "mg";
    /// Calcium.
    Calcium = "calcium-mg", "calcium", "mg";
    /// Iron.
    Iron = "iron-mg", "iron", "mg";
    /// Potassium.
    Potassium = "potassium-mg", "potassium", "mg";
    /// Vitamin D.
    VitaminD = "vitamin-d-ug", "vitamin D", "µg";
    /// Cholesterol.
    Cholesterol = "cholesterol-mg", "cholesterol", "mg";
    /// Energy as the source states it.
    Energy = "energy-kcal", "energy", "kcal";
}
