//! How the acidity of the dough slows its bacteria.

use crate::{Equation, Standing, Valid};
use quantity::Acidity;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::acidity_growth",
    source: "rosso-1995",
    place: "cardinal pH model; range of ganzle-1998",
    standing: Standing::Published,
    valid: &[Valid { symbol: "pH", unit: "–", from: 3.8, to: 6.8 }],
};

/// The cardinal pH values of one organism.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CardinalAcidity {
    /// The sourest at which it grows.
    pub lowest: Acidity,
    /// At it growth is fastest.
    pub optimum: Acidity,
    /// The least sour at which it grows.
    pub highest: Acidity,
}

/// Returns the growth rate at a pH as a share of that at the optimum.
///
/// ```text
/// g = (pH − n)·(pH − x) / [(pH − n)·(pH − x) − (pH − o)²]   for n < pH < x, else 0
/// ```
///
/// | symbol | meaning             | value | unit |
/// |--------|---------------------|-------|------|
/// | `g`    | relative growth     |       | –    |
/// | `pH`   | acidity of the dough |      | –    |
/// | `n`    | sourest             | 3.8   | –    |
/// | `o`    | optimum             | 5.4   | –    |
/// | `x`    | least sour          | 6.8   | –    |
///
/// Valid between the cardinal values, zero outside. Yeast is not slowed between pH 3.5 and 7.
/// Rosso et al. (1995); Gänzle, Ehmann & Hammes (1998).
///
/// ```
/// # use quantity::Acidity;
/// # use science::ferment::{Organisms, Strain, acidity_growth};
/// let cardinal = Organisms::of(Strain::Sourdough).acidity;
/// assert_eq!(acidity_growth(Acidity::ph(5.4), &cardinal), 1.0);
/// assert_eq!(acidity_growth(Acidity::ph(3.5), &cardinal), 0.0);
/// ```
#[must_use]
pub fn acidity_growth(dough: Acidity, cardinal: &CardinalAcidity) -> f64 {
    let (ph, n, o, x) = (dough.as_ph(), cardinal.lowest.as_ph(), cardinal.optimum.as_ph(), cardinal.highest.as_ph());
    if ph <= n || ph >= x {
        return 0.0;
    }
    let inside = (ph - n) * (ph - x);
    inside / (inside - (ph - o) * (ph - o))
}
