//! How an American label rounds.

use super::printed::{Printed, amount, settled};
use super::reference_amounts::ReferenceAmount;
use crate::{Equation, Standing, Valid};
use quantity::Fraction;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "nutrition::american_rounding",
    source: "fda-food-labeling-guide",
    place: "Appendix H",
    standing: Standing::Published,
    valid: &[Valid { symbol: "x", unit: "in a serving", from: 0.0, to: 10_000.0 }],
};

/// A line of an American nutrition label.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Line {
    /// Calories, in kcal.
    Calories,
    /// Total, saturated, trans and other fat, in g.
    Fat,
    /// Cholesterol, in mg.
    Cholesterol,
    /// Sodium or potassium, in mg.
    Sodium,
    /// Carbohydrate, fibre, sugars and protein, in g.
    Carbohydrate,
}

/// Returns the figure an American label prints, in the line's unit.
///
/// ```text
/// calories:             < 5: 0;   ≤ 50: to 5;   above: to 10
/// fat:                  < 0.5: 0; < 5: to 0.5;  above: to 1
/// cholesterol:          < 2: 0;   ≤ 5: "less than 5"; above: to 5
/// sodium, potassium:    < 5: 0;   ≤ 140: to 5;  above: to 10
/// carbohydrate, protein: < 0.5: 0; < 1: "less than 1"; above: to 1
/// ```
///
/// | symbol | meaning                          | unit           |
/// |--------|----------------------------------|----------------|
/// | `x`    | unrounded content of one serving | kcal, g or mg  |
///
/// Half-way cases go up. Below 5 kcal, 0 or 5 may be printed; this prints 0. Food and Drug
/// Administration, Food Labeling Guide, Appendix H. Outside 0 to 10 000 it answers by the same rule.
///
/// ```
/// use science::nutrition::american_rounding::{Line, print};
/// assert_eq!(print(Line::Calories, 236.0).to_string(), "240");
/// assert_eq!(print(Line::Fat, 4.74).to_string(), "4.5");
/// ```
#[must_use]
pub fn print(line: Line, figure: f64) -> Printed {
    let x = settled(figure);
    let nothing = Printed::Amount { value: 0.0, decimals: 0 };
    match line {
        Line::Calories | Line::Sodium if x < 5.0 => nothing,
        Line::Calories => amount(x, if x <= 50.0 { 5.0 } else { 10.0 }, 0),
        Line::Sodium => amount(x, if x <= 140.0 { 5.0 } else { 10.0 }, 0),
        Line::Fat | Line::Carbohydrate if x < 0.5 => nothing,
        Line::Fat => fat(x),
        Line::Carbohydrate if x < 1.0 => Printed::LessThan { limit: 1.0, decimals: 0 },
        Line::Carbohydrate => amount(x, 1.0, 0),
        Line::Cholesterol if x < 2.0 => nothing,
        Line::Cholesterol if x <= 5.0 => Printed::LessThan { limit: 5.0, decimals: 0 },
        Line::Cholesterol => amount(x, 5.0, 0),
    }
}

/// Halves below 5 g, and no ".0" behind a whole gram.
fn fat(x: f64) -> Printed {
    let rounded = amount(x, if x < 5.0 { 0.5 } else { 1.0 }, 0).value();
    Printed::Amount { value: rounded, decimals: usize::from(rounded.fract() != 0.0) }
}

/// What a percentage of a daily value is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DailyValue {
    /// Fat, carbohydrate, fibre, sodium and so on.
    Macronutrient,
    /// A vitamin or a mineral.
    VitaminOrMineral,
}

/// Returns the percentage of a daily value that an American label prints.
///
/// Macronutrients to 1 %; vitamins and minerals below 2 % as 0, to 2 % up to 10 %, to 5 % up to 50 %,
/// to 10 % above.
///
/// ```
/// # use quantity::Fraction;
/// use science::nutrition::american_rounding::{DailyValue, print_daily_value};
/// let iron = print_daily_value(DailyValue::VitaminOrMineral, Fraction::percent(44.4));
/// assert_eq!(iron.to_string(), "45");
/// ```
#[must_use]
pub fn print_daily_value(of: DailyValue, share: Fraction) -> Printed {
    let percent = settled(share.as_percent());
    let step = match of {
        DailyValue::Macronutrient => 1.0,
        DailyValue::VitaminOrMineral if percent < 2.0 => return Printed::Amount { value: 0.0, decimals: 0 },
        DailyValue::VitaminOrMineral if percent <= 10.0 => 2.0,
        DailyValue::VitaminOrMineral if percent <= 50.0 => 5.0,
        DailyValue::VitaminOrMineral => 10.0,
    };
    amount(percent, step, 0)
}

/// Returns the amount of a vitamin or mineral that an American label prints, in the unit of its daily value.
///
/// ```text
/// daily value < 25: to 0.1;   < 250: to 1;   above: to 10
/// ```
///
/// Half-way cases go up. Food and Drug Administration, questions and answers of 2019, as pages restate them.
///
/// ```
/// use science::nutrition::american_rounding::print_trace;
/// use science::nutrition::reference_amounts::{Region, of};
/// let iron = of(Region::America, "iron").expect("a daily value");
/// assert_eq!(print_trace(iron, 1.34).to_string(), "1.3");
/// ```
#[must_use]
pub fn print_trace(daily: &ReferenceAmount, figure: f64) -> Printed {
    let (step, decimals) = match daily.amount {
        daily if daily < 25.0 => (0.1, 1),
        daily if daily < 250.0 => (1.0, 0),
        _ => (10.0, 0),
    };
    let printed = amount(settled(figure), step, decimals);
    if printed.value().fract() == 0.0 { amount(settled(figure), step, 0) } else { printed }
}
