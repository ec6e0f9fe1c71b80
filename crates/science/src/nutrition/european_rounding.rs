//! How a European label rounds.

use super::printed::{Printed, amount, settled, to_figures};
use crate::{Equation, Standing, Valid};
use quantity::Mass;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "nutrition::european_rounding",
    source: "eu-guidance-tolerances-2012",
    place: "Table 4",
    standing: Standing::Published,
    valid: &[Valid { symbol: "m", unit: "g in 100 g", from: 0.0, to: 100.0 }],
};

/// A line of a European nutrition declaration that is stated in grams.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Line {
    /// Fat.
    Fat,
    /// Saturates, mono-unsaturates or polyunsaturates.
    FattyAcids,
    /// Carbohydrate, sugars, polyols, starch.
    Carbohydrate,
    /// Fibre.
    Fibre,
    /// Protein.
    Protein,
    /// Salt.
    Salt,
    /// Sodium, where it is shown beside salt.
    Sodium,
}

/// Returns the figure in grams that a European label prints.
///
/// ```text
/// fat, carbohydrate, sugars, protein, fibre:  ≥ 10 g: 1 g;  > 0.5 g: 0.1 g;     else "<0.5"
/// fatty acids:                                ≥ 10 g: 1 g;  > 0.1 g: 0.1 g;     else "<0.1"
/// salt:                                       ≥ 1 g: 0.1 g; > 0.0125 g: 0.01 g; else "<0.01"
/// sodium:                                     ≥ 1 g: 0.1 g; > 0.005 g: 0.01 g;  else "<0.005"
/// ```
///
/// | symbol | meaning               | unit       |
/// |--------|-----------------------|------------|
/// | `m`    | the unrounded content | g in 100 g |
///
/// The unrounded figure chooses the band; where it rounds up to the next band it is printed in that
/// band's way, 9.96 g as "10". Guidance of the Commission, December 2012, Table 4; guidance, not law.
/// Sodium from memory. Outside 0 to 100 g it answers by the same rule.
///
/// ```
/// # use quantity::Mass;
/// use science::nutrition::european_rounding::{Line, print};
/// assert_eq!(print(Line::Salt, Mass::grams(0.62)).to_string(), "0.62");
/// assert_eq!(print(Line::Fat, Mass::grams(0.5)).to_string(), "<0.5");
/// ```
#[must_use]
pub fn print(line: Line, content: Mass) -> Printed {
    match line {
        Line::Salt => banded(content, (1.0, 1), (0.0125, 0.01, 2)),
        Line::Sodium => banded(content, (1.0, 1), (0.005, 0.005, 3)),
        Line::FattyAcids => banded(content, (10.0, 0), (0.1, 0.1, 1)),
        Line::Fat | Line::Carbohydrate | Line::Fibre | Line::Protein => banded(content, (10.0, 0), (0.5, 0.5, 1)),
    }
}

/// A coarse band from a limit on with so many decimals, below it one decimal more, and at last a "less than".
fn banded(content: Mass, coarse: (f64, usize), least: (f64, f64, usize)) -> Printed {
    let grams = settled(content.as_grams());
    let (from, decimals) = coarse;
    let steps = [1.0, 0.1, 0.01];
    let (floor, limit, limit_decimals) = least;
    if grams <= floor {
        return Printed::LessThan { limit, decimals: limit_decimals };
    }
    let fine = amount(grams, steps[decimals + 1], decimals + 1);
    if grams >= from || fine.value() >= from { amount(grams, steps[decimals], decimals) } else { fine }
}

/// Returns the energy that a European label prints, to the whole kilojoule or kilocalorie.
///
/// ```
/// assert_eq!(science::nutrition::european_rounding::print_energy(939.1).to_string(), "939");
/// ```
#[must_use]
pub fn print_energy(figure: f64) -> Printed {
    amount(figure, 1.0, 0)
}

/// A vitamin or mineral by how many significant figures it is printed with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trace {
    /// Vitamin A, folic acid, chloride, calcium, phosphorus, magnesium, iodine, potassium: three.
    Coarse,
    /// All others: two.
    Fine,
}

/// Returns a vitamin or mineral in its own unit as a European label prints it.
///
/// ```
/// use science::nutrition::european_rounding::{Trace, print_trace};
/// assert_eq!(print_trace(Trace::Coarse, 123.6).to_string(), "124");
/// ```
#[must_use]
pub fn print_trace(trace: Trace, figure: f64) -> Printed {
    to_figures(figure, if trace == Trace::Coarse { 3 } else { 2 })
}
