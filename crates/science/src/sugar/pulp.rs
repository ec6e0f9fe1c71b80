//! How pulp thickens a syrup: a rough model that one measurement sets right.

use crate::entry::{self, Origin};
use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Viscosity};
use std::sync::LazyLock;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "sugar::pulp",
    source: "steffe-1996",
    place: "Appendix, power law of fruit purées; the pulp factor is our own rough model",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "γ̇", unit: "1/s", from: 1.0, to: 100.0 }, Valid { symbol: "x", unit: "%", from: 0.0, to: 10.0 }],
};

/// The entries of `data/purees.toml`, as text.
pub const DATA: &str = include_str!("../../data/purees.toml");

/// How fast a layer slides over the next while pouring, 1/s.
pub const POURING: f64 = 10.0;

/// A purée that thins as it is stirred.
#[derive(Clone, Debug, PartialEq)]
pub struct Puree {
    /// What it is.
    pub name: String,
    /// Its thickness at one per second.
    pub consistency: Viscosity,
    /// How it thins: 1 not at all, 0 without limit.
    pub flow_index: f64,
    /// Where the figures come from.
    pub origin: Origin,
}

static PUREES: LazyLock<Vec<Puree>> = LazyLock::new(|| {
    entry::read(DATA, "puree", |row| {
        Some(Puree {
            name: row.word("name")?,
            consistency: Viscosity::pascal_seconds(row.number("consistency")?),
            flow_index: row.number("flow_index")?,
            origin: row.origin()?,
        })
    })
});

/// Every purée.
#[must_use]
pub fn purees() -> &'static [Puree] {
    &PUREES
}

/// The purée of that name.
#[must_use]
pub fn named(name: &str) -> Option<&'static Puree> {
    PUREES.iter().find(|puree| puree.name == name)
}

/// Returns how thick a purée seems while it flows.
///
/// ```text
/// η = K · γ̇^(n − 1)
/// ```
///
/// | symbol | meaning                          | unit   |
/// |--------|----------------------------------|--------|
/// | `η`    | apparent viscosity               | Pa s   |
/// | `K`    | consistency                      | Pa sⁿ  |
/// | `n`    | flow index                       | –      |
/// | `γ̇`    | shear rate: 10 to 50 for pouring | 1/s    |
///
/// Valid for 1 to 100 per second; at rest it grows without bound. Steffe (1996), appendix, from memory.
///
/// ```
/// use science::sugar::pulp::{POURING, apparent, named};
/// let sauce = named("apple sauce, 11 % solids, 30 °C").expect("known");
/// assert_eq!(format!("{:.3} Pa s", apparent(sauce.consistency, sauce.flow_index, POURING).as_pascal_seconds()), "2.315 Pa s");
/// ```
#[must_use]
pub fn apparent(consistency: Viscosity, flow_index: f64, shear_per_second: f64) -> Viscosity {
    consistency * libm::pow(shear_per_second, flow_index - 1.0)
}

/// Returns the viscosity of a syrup with pulp in it: `η = η_syrup · exp(b·x)`, rough.
///
/// `x` is the insoluble share and `b` comes from one measurement, see [`steepness`]. No published flow
/// behaviour of dried-fruit purées was found: say so wherever the figure is shown.
///
/// ```
/// # use quantity::{Fraction, Viscosity};
/// let syrup = Viscosity::millipascal_seconds(20.0);
/// let thick = science::sugar::pulp::thickened(syrup, Fraction::percent(2.0), 100.0);
/// assert_eq!(format!("{:.0} mPa s", thick.as_millipascal_seconds()), "148 mPa s");
/// ```
#[must_use]
pub fn thickened(syrup: Viscosity, insoluble: Fraction, steepness: f64) -> Viscosity {
    syrup * libm::exp(steepness * insoluble.as_ratio())
}

/// Returns the steepness `b` from one measured thickness; without pulp there is none.
///
/// ```
/// # use quantity::{Fraction, Viscosity};
/// let mpas = Viscosity::millipascal_seconds;
/// let b = science::sugar::pulp::steepness(mpas(20.0), mpas(147.8), Fraction::percent(2.0));
/// assert_eq!(format!("{b:.0}"), "100");
/// ```
#[must_use]
pub fn steepness(syrup: Viscosity, measured: Viscosity, insoluble: Fraction) -> f64 {
    libm::log(measured / syrup) / insoluble.as_ratio()
}
