//! What food is made of, as far as heat is concerned.

use quantity::Fraction;

/// A component of food whose thermal properties are tabulated.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Component {
    /// Liquid water.
    Water,
    /// Protein.
    Protein,
    /// Fat, molten or solid alike: melting is not in the polynomials.
    Fat,
    /// Starch and sugars.
    Carbohydrate,
    /// Fibre.
    Fibre,
    /// Minerals, salt included.
    Ash,
    /// Frozen water.
    Ice,
}

impl Component {
    /// Every component, in the order of the table.
    pub const ALL: [Self; 7] = [Self::Water, Self::Protein, Self::Fat, Self::Carbohydrate, Self::Fibre, Self::Ash, Self::Ice];
}

/// The mass fractions of a food's components; nothing forces their sum to one.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Composition {
    /// Liquid water.
    pub water: Fraction,
    /// Protein.
    pub protein: Fraction,
    /// Fat.
    pub fat: Fraction,
    /// Starch and sugars.
    pub carbohydrate: Fraction,
    /// Fibre.
    pub fibre: Fraction,
    /// Minerals.
    pub ash: Fraction,
    /// Ice.
    pub ice: Fraction,
}

impl Composition {
    /// The mass fraction of one component.
    #[must_use]
    pub const fn share(&self, component: Component) -> Fraction {
        match component {
            Component::Water => self.water,
            Component::Protein => self.protein,
            Component::Fat => self.fat,
            Component::Carbohydrate => self.carbohydrate,
            Component::Fibre => self.fibre,
            Component::Ash => self.ash,
            Component::Ice => self.ice,
        }
    }

    /// The components that are present, with their mass fractions.
    pub fn parts(&self) -> impl Iterator<Item = (Component, f64)> + '_ {
        Component::ALL.into_iter().map(|part| (part, self.share(part).as_ratio())).filter(|(_, share)| *share != 0.0)
    }

    /// The sum of all mass fractions, which is one for a whole food.
    #[must_use]
    pub fn total(&self) -> Fraction {
        Component::ALL.into_iter().map(|part| self.share(part)).sum()
    }
}

/// A parabola of the temperature in degrees Celsius.
pub(super) fn parabola([a, b, c]: [f64; 3], t: f64) -> f64 {
    a + t * (b + t * c)
}
