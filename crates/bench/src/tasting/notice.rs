//! What tasters must be told before they agree: allergens and alcohol of everything that is served.

use formula::Formula;
use formula::arithmetic::mixture;
use formula::ingredient::{Allergen, allergens};
use std::collections::BTreeSet;

/// What is in a tasting.
#[derive(Clone, Debug, Default)]
pub struct Notice {
    /// The listed allergens of all samples, in the order of the list.
    pub allergens: Vec<&'static Allergen>,
    /// Whether alcohol went into one of them.
    pub alcohol: bool,
}

/// What is in the formulas of a tasting.
#[must_use]
pub fn notice(formulas: &[Formula]) -> Notice {
    let mixtures: Vec<_> = formulas.iter().flat_map(|one| (0..one.components.len()).map(|c| mixture(one, c))).collect();
    let codes: BTreeSet<&String> = mixtures.iter().flat_map(|mixture| &mixture.allergens).collect();
    Notice {
        allergens: allergens().iter().filter(|allergen| codes.contains(&allergen.code)).collect(),
        alcohol: mixtures.iter().any(|mixture| mixture.alcohol),
    }
}
