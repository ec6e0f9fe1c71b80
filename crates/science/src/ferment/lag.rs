//! How organisms get going after they are stirred in.

use crate::{Equation, Standing, Valid};
use quantity::{Rate, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::lag",
    source: "baranyi-roberts-1994",
    place: "physiological state and its adjustment function",
    standing: Standing::Published,
    valid: &[Valid { symbol: "λ", unit: "h", from: 0.0, to: 20.0 }],
};

/// Returns the logarithm of the physiological state that gives a lag of that length.
///
/// ```text
/// u_0 = −ln(e^(µ·λ) − 1)
/// ```
///
/// | symbol | meaning                                   | unit |
/// |--------|-------------------------------------------|------|
/// | `u_0`  | logarithm of the state at the start       | –    |
/// | `µ`    | growth rate at which the lag was measured | 1/h  |
/// | `λ`    | lag                                       | h    |
///
/// A lag of nothing gives an infinite state, which counts as fully awake. Baranyi & Roberts (1994).
///
/// ```
/// # use quantity::{Rate, TimeSpan};
/// # use science::ferment::{lag_start, lag_share};
/// let start = lag_start(Rate::per_hour(0.25), TimeSpan::hours(2.0));
/// assert_eq!(format!("{start:.4}"), "0.4328");
/// assert_eq!(format!("{:.4}", lag_share(start)), "0.6065");
/// ```
#[must_use]
pub fn lag_start(growth: Rate, lag: TimeSpan) -> f64 {
    -libm::log(libm::expm1(growth.as_per_hour() * lag.as_hours()))
}

/// The share of the growth rate at a state, whose logarithm rises by µ·dt while time goes on.
///
/// ```text
/// s(u) = 1/(1 + e^(−u))
/// ```
///
/// ```
/// assert_eq!(science::ferment::lag_share(0.0), 0.5);
/// ```
#[must_use]
pub fn lag_share(state: f64) -> f64 {
    1.0 / (1.0 + libm::exp(-state))
}

/// Time counted from the end of the lag, softly: the closed form at constant temperature.
///
/// ```text
/// A(t) = t + ln(e^(−µt) + e^(−h_0) − e^(−µt − h_0))/µ,   h_0 = µ·λ
/// ```
///
/// ```
/// # use quantity::{Rate, TimeSpan};
/// # use science::ferment::adjusted_time;
/// let grown = adjusted_time(TimeSpan::hours(4.0), Rate::per_hour(0.25), TimeSpan::hours(2.0));
/// assert_eq!(format!("{:.4}", grown.as_hours()), "2.8561");
/// ```
#[must_use]
pub fn adjusted_time(time: TimeSpan, growth: Rate, lag: TimeSpan) -> TimeSpan {
    let (t, mu) = (time.as_hours(), growth.as_per_hour());
    let h0 = mu * lag.as_hours();
    let log = libm::log(libm::exp(-mu * t) + libm::exp(-h0) - libm::exp(-mu * t - h0));
    TimeSpan::hours(t + log / mu)
}
