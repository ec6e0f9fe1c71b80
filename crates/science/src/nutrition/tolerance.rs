//! How far a measured content may lie from the declared one in Europe.

use super::european_rounding::Line;
use crate::{Equation, Standing, Valid};
use quantity::{Between, Fraction, Mass};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "nutrition::tolerance",
    source: "eu-guidance-tolerances-2012",
    place: "Table 1 (vitamins and minerals), Table 2 (from memory)",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "m", unit: "g in 100 g", from: 0.0, to: 100.0 }],
};

const FIFTH: f64 = 0.20;

/// Returns the tolerance either way around a declared content.
///
/// ```text
/// carbohydrate, sugars, protein, fibre:  < 10 g: 2 g;       to 40 g: 20 %; above: 8 g
/// fat:                                   < 10 g: 1.5 g;     to 40 g: 20 %; above: 8 g
/// fatty acids:                           < 4 g: 0.8 g;      above: 20 %
/// salt:                                  < 1.25 g: 0.375 g; above: 20 %
/// sodium:                                < 0.5 g: 0.15 g;   above: 20 %
/// ```
///
/// | symbol | meaning              | unit       |
/// |--------|----------------------|------------|
/// | `m`    | the declared content | g in 100 g |
///
/// The bands of fat and salt do not meet: 1.5 g just below 10 g, 2 g at it; 0.375 g just below 1.25 g of
/// salt, 0.25 g at it. Guidance of the Commission, December 2012, Table 2, from memory; not law.
///
/// ```
/// # use quantity::Mass;
/// use science::nutrition::{european_rounding::Line, tolerance};
/// assert_eq!(tolerance::either_way(Line::Fat, Mass::grams(9.2)), Mass::grams(1.5));
/// ```
#[must_use]
pub fn either_way(line: Line, declared: Mass) -> Mass {
    let grams = declared.as_grams();
    let wide = |least: f64| match grams {
        m if m < 10.0 => least,
        m if m <= 40.0 => FIFTH * m,
        _ => 8.0,
    };
    let two = |from: f64, least: f64| if grams < from { least } else { FIFTH * grams };
    Mass::grams(match line {
        Line::Carbohydrate | Line::Protein | Line::Fibre => wide(2.0),
        Line::Fat => wide(1.5),
        Line::FattyAcids => two(4.0, 0.8),
        Line::Salt => two(1.25, 0.375),
        Line::Sodium => two(0.5, 0.15),
    })
}

/// Whether a trace is a vitamin or a mineral.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trace {
    /// A vitamin: 50 % above, 35 % below.
    Vitamin,
    /// A mineral: 45 % above, 35 % below.
    Mineral,
}

/// Returns the least and greatest measured share of a declared vitamin or mineral.
///
/// ```
/// use science::nutrition::tolerance::{Trace, of_trace};
/// assert_eq!(of_trace(Trace::Vitamin).to.as_percent(), 150.0);
/// ```
#[must_use]
pub const fn of_trace(trace: Trace) -> Between<Fraction> {
    let above = match trace {
        Trace::Vitamin => 150.0,
        Trace::Mineral => 145.0,
    };
    Between { from: Fraction::percent(65.0), to: Fraction::percent(above) }
}
