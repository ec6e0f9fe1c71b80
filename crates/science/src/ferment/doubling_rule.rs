//! The rule of thumb for when a lean dough doubles.

use super::{SquareRootLaw, gas_rate};
use crate::{Equation, Standing, Valid};
use quantity::{Fraction, Temperature, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::doubling_rule",
    source: "ferment-model",
    place: "a power law through the model's own doubling times",
    standing: Standing::Fitted,
    valid: &[
        Valid { symbol: "y", unit: "% instant yeast", from: 0.1, to: 1.5 },
        Valid { symbol: "T", unit: "°C", from: 18.0, to: 30.0 },
    ],
};

/// Returns when a dough of 65 % water and 2 % salt doubles, as a rule of thumb.
///
/// ```text
/// t_2 = 1.23 h·y^−0.75·g(24 °C)/g(T)
/// ```
///
/// | symbol | meaning                              | unit |
/// |--------|--------------------------------------|------|
/// | `t_2`  | time until the dough has doubled     | h    |
/// | `y`    | instant yeast on flour               | %    |
/// | `g`    | gas rate at a temperature            | –    |
/// | `T`    | dough temperature                    | °C   |
///
/// Valid for 0.1 to 1.5 % and 18 to 30 °C, within 8 % of the whole model there. Half the yeast takes
/// 1.7 times as long, not twice: what yeast there is grows meanwhile.
///
/// ```
/// # use quantity::{Fraction, Temperature};
/// # use science::ferment::{Organisms, Strain, doubling_rule};
/// let law = Organisms::of(Strain::Bakers).gas_law;
/// let time = doubling_rule(Fraction::percent(1.0), Temperature::celsius(24.0), &law);
/// assert_eq!(format!("{:.2} h", time.as_hours()), "1.23 h");
/// ```
#[must_use]
pub fn doubling_rule(instant_yeast: Fraction, dough: Temperature, law: &SquareRootLaw) -> TimeSpan {
    let warmth = gas_rate(Temperature::celsius(24.0), law) / gas_rate(dough, law);
    TimeSpan::hours(1.23 * libm::pow(instant_yeast.as_percent(), -0.75) * warmth)
}
