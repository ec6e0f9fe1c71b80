//! How a syrup pours, said by everyday liquids.

use crate::entry::{self, Origin};
use crate::{Equation, Standing, Valid};
use quantity::{Between, Viscosity};
use std::sync::LazyLock;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sugar::pour",
    source: "kitchen-viscosities",
    place: "viscosities of everyday liquids; each entry of the data names its own",
    standing: Standing::Published,
    valid: &[Valid { symbol: "η", unit: "mPa s", from: 1.0, to: 40_000.0 }],
};

/// The entries of `data/landmarks.toml`, as text.
pub const DATA: &str = include_str!("../../data/landmarks.toml");

/// An everyday liquid at the temperature at which one knows it.
#[derive(Clone, Debug, PartialEq)]
pub struct Landmark {
    /// What it is, with its temperature.
    pub name: String,
    /// From thin to thick.
    pub viscosity: Between<Viscosity>,
    /// Where the figures come from.
    pub origin: Origin,
}

impl Landmark {
    /// The thickness half-way between thin and thick as the eye sees it: the geometric mean.
    #[must_use]
    pub fn middle(&self) -> f64 {
        libm::sqrt(self.viscosity.from.as_pascal_seconds() * self.viscosity.to.as_pascal_seconds())
    }
}

static LANDMARKS: LazyLock<Vec<Landmark>> = LazyLock::new(|| {
    entry::read(DATA, "landmark", |row| {
        let viscosity = |key| row.number(key).map(Viscosity::millipascal_seconds);
        Some(Landmark {
            name: row.word("name")?,
            viscosity: Between { from: viscosity("from_millipascal_seconds")?, to: viscosity("to_millipascal_seconds")? },
            origin: row.origin()?,
        })
    })
});

/// Every landmark, the thinnest first.
#[must_use]
pub fn all() -> &'static [Landmark] {
    &LANDMARKS
}

/// Returns the everyday liquid that pours most alike, or none for what is no thickness.
///
/// ```text
/// the least |ln η − ln η_landmark|
/// ```
///
/// | symbol | meaning                           | unit |
/// |--------|-----------------------------------|------|
/// | `η`    | viscosity at serving temperature  | Pa s |
///
/// Thinner than water it answers water, thicker than all the thickest. Clear syrups only: a purée thins as it
/// is stirred, see [`super::pulp`].
///
/// ```
/// # use quantity::Viscosity;
/// let like = science::sugar::pour::like(Viscosity::pascal_seconds(1.5)).expect("a thickness");
/// assert_eq!(like.name, "warm honey, 40 °C");
/// ```
#[must_use]
pub fn like(viscosity: Viscosity) -> Option<&'static Landmark> {
    let log = libm::log(viscosity.as_pascal_seconds());
    let distance = |landmark: &&Landmark| (libm::log(landmark.middle()) - log).abs();
    log.is_finite().then(|| LANDMARKS.iter().min_by(|a, b| distance(a).total_cmp(&distance(b))))?
}
