//! Does a food need time and temperature control? The Food Code's tables of sourness and water activity.

use crate::{Equation, Standing, Valid};
use quantity::{Acidity, Fraction};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "keeping::food_code",
    source: "food-code-2022",
    place: "1-201.10(B), Tables A and B",
    standing: Standing::Published,
    valid: &[Valid { symbol: "a_w", unit: "–", from: 0.0, to: 1.0 }, Valid { symbol: "pH", unit: "–", from: 0.0, to: 14.0 }],
};

/// How the food was made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Treatment {
    /// Heated to kill what is not a spore, and then packaged: Table A.
    HeatedThenPackaged,
    /// Not heated, or heated but not packaged: Table B.
    NotHeatedOrNotPackaged,
}

/// What the table says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// The table does not ask for time or temperature control.
    NotControlled,
    /// A product assessment is required; until then treat as controlled.
    AssessmentNeeded,
    /// Water activity or sourness is unknown or no number.
    Unknown,
}

impl Verdict {
    /// The verdict as guidance; never a certificate.
    #[must_use]
    pub const fn guidance(self) -> &'static str {
        match self {
            Self::NotControlled => "By the table, neither time nor temperature control is asked for. Check your local authority.",
            Self::AssessmentNeeded => {
                "By the table, a product assessment is needed; until then keep it cold or hot. Check your local authority."
            }
            Self::Unknown => "Without water activity and pH the table gives no verdict; keep it cold or hot.",
        }
    }
}

/// Returns what the Food Code's interaction tables say of a water activity and a sourness.
///
/// ```text
/// A, heated then packaged       pH ≤ 4.6    ≤ 5.6    above
///   a_w ≤ 0.92                  –           –        –
///   a_w ≤ 0.95                  –           –        assess
///   above                       –           assess   assess
///
/// B, not heated or not packaged pH < 4.2    ≤ 4.6    ≤ 5.0    above
///   a_w < 0.88                  –           –        –        –
///   a_w ≤ 0.90                  –           –        –        assess
///   a_w ≤ 0.92                  –           –        assess   assess
///   above                       –           assess   assess   assess
/// ```
///
/// | symbol | meaning        | unit |
/// |--------|----------------|------|
/// | `a_w`  | water activity | –    |
/// | `pH`   | sourness       | –    |
///
/// "–" is not controlled. Without water activity there is no verdict; without pH only where every column of
/// the row says the same. Food named by the Code as
/// controlled, such as custard, cut melon or garlic in oil, stays so unless it was measured.
///
/// ```
/// # use quantity::{Acidity, Fraction};
/// use science::keeping::food_code::{Treatment, Verdict, verdict};
/// let (activity, sourness) = (Some(Fraction::ratio(0.93)), Some(Acidity::ph(4.2)));
/// assert_eq!(verdict(Treatment::NotHeatedOrNotPackaged, activity, sourness), Verdict::AssessmentNeeded);
/// ```
#[must_use]
pub fn verdict(treatment: Treatment, water_activity: Option<Fraction>, sourness: Option<Acidity>) -> Verdict {
    let (Some(a_w), ph) = (water_activity.map(Fraction::as_ratio), sourness.map(Acidity::as_ph)) else {
        return Verdict::Unknown;
    };
    if a_w.is_nan() || ph.is_some_and(f64::is_nan) {
        return Verdict::Unknown;
    }
    let passes = |ph: f64| match treatment {
        Treatment::HeatedThenPackaged => table_a(a_w, ph),
        Treatment::NotHeatedOrNotPackaged => table_b(a_w, ph),
    };
    match ph {
        Some(ph) if passes(ph) => Verdict::NotControlled,
        Some(_) => Verdict::AssessmentNeeded,
        // So dry that no column asks for anything, whatever the sourness.
        None if passes(LEAST_SOUR) => Verdict::NotControlled,
        None => Verdict::Unknown,
    }
}

/// The far end of the tables' last column.
const LEAST_SOUR: f64 = 14.0;

fn table_a(a_w: f64, ph: f64) -> bool {
    if a_w <= 0.92 {
        true
    } else if a_w <= 0.95 {
        ph <= 5.6
    } else {
        ph <= 4.6
    }
}

fn table_b(a_w: f64, ph: f64) -> bool {
    if a_w < 0.88 {
        true
    } else if a_w <= 0.90 {
        ph <= 5.0
    } else if a_w <= 0.92 {
        ph <= 4.6
    } else {
        ph < 4.2
    }
}
