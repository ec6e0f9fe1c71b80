//! A figure as a label prints it, and rounding half-way cases away from zero.

use std::fmt;

/// A rounded figure, or the limit below which it lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Printed {
    /// The figure with so many decimals.
    Amount {
        /// The rounded figure.
        value: f64,
        /// How many decimals are printed.
        decimals: usize,
    },
    /// Less than a limit; zero may be printed instead where the law allows both.
    LessThan {
        /// The limit.
        limit: f64,
        /// How many decimals are printed.
        decimals: usize,
    },
}

impl Printed {
    /// The figure, or the limit.
    #[must_use]
    pub const fn value(self) -> f64 {
        match self {
            Self::Amount { value, .. } => value,
            Self::LessThan { limit, .. } => limit,
        }
    }
}

impl fmt::Display for Printed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Amount { value, .. } if !value.is_finite() => f.write_str("not known"),
            Self::Amount { value, decimals } => write!(f, "{value:.decimals$}"),
            Self::LessThan { limit, decimals } => write!(f, "<{limit:.decimals$}"),
        }
    }
}

/// Rounds to a multiple of the step, half-way cases away from zero, as a person reads the decimals:
/// 0.285 in steps of 0.01 gives 0.29 although its nearest binary number lies lower.
#[must_use]
pub fn to_step(value: f64, step: f64) -> f64 {
    let steps = value / step;
    let settled = (steps * 1.0e6).round() / 1.0e6;
    settled.round() * step
}

/// A figure rounded to a step, printed with the step's decimals.
#[must_use]
pub fn amount(value: f64, step: f64, decimals: usize) -> Printed {
    Printed::Amount { value: to_step(value, step), decimals }
}

/// A figure free of the last bits that sums leave behind, so that 0.1 + 0.2 meets a limit of 0.3.
#[must_use]
pub fn settled(value: f64) -> f64 {
    let settled = (value * 1.0e9).round() / 1.0e9;
    if settled.is_finite() { settled } else { value }
}

/// Rounds to so many significant figures.
#[must_use]
pub fn to_figures(value: f64, figures: i32) -> Printed {
    if value == 0.0 || !value.is_finite() {
        return Printed::Amount { value, decimals: 0 };
    }
    let leading = libm::floor(libm::log10(value.abs())) as i32;
    let place = leading - (figures - 1);
    let decimals = usize::try_from(-place).unwrap_or(0).min(12);
    amount(value, libm::pow(10.0, f64::from(place)), decimals)
}
