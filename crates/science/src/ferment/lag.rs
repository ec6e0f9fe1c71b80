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

/// Returns how fast asleep organisms are at the start, so that they lag that long.
///
/// ```text
/// p_0 = e^(µ·λ) − 1
/// ```
///
/// | symbol | meaning                                             | unit |
/// |--------|-----------------------------------------------------|------|
/// | `p_0`  | sleep at the start; 1/p is the physiological state  | –    |
/// | `µ`    | growth rate at which the lag was measured           | 1/h  |
/// | `λ`    | lag                                                 | h    |
///
/// Valid for any lag; without one nothing sleeps. Baranyi & Roberts (1994).
///
/// ```
/// # use quantity::{Rate, TimeSpan};
/// # use science::ferment::{awake_share, lag_sleep};
/// let sleep = lag_sleep(Rate::per_hour(0.25), TimeSpan::hours(2.0));
/// assert_eq!(format!("{:.4}", awake_share(sleep)), "0.6065");
/// ```
#[must_use]
pub fn lag_sleep(growth: Rate, lag: TimeSpan) -> f64 {
    libm::expm1(growth.as_per_hour() * lag.as_hours())
}

/// The share of the growth rate that sleep leaves; sleep fades as p' = −µ·p.
///
/// ```text
/// s = 1/(1 + p)
/// ```
///
/// ```
/// assert_eq!(science::ferment::awake_share(1.0), 0.5);
/// ```
#[must_use]
pub fn awake_share(sleep: f64) -> f64 {
    1.0 / (1.0 + sleep)
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
