//! Heat's killing power over a whole temperature history, each straight piece in closed form.

use super::history::{Reading, Segment, segments};
use crate::{Equation, Standing, Valid};
use quantity::{Temperature, TemperatureDifference, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "keeping::lethality",
    source: "bigelow-1921",
    place: "logarithmic nature of thermal death time curves",
    standing: Standing::FromMemory,
    valid: &[Valid { symbol: "T", unit: "°C", from: 55.0, to: 85.0 }, Valid { symbol: "z", unit: "K", from: 3.0, to: 12.0 }],
};

/// Below this nothing is counted.
pub const COUNTED_FROM: Temperature = Temperature::celsius(55.0);
/// Above this, hotter counts no more: rates beyond what was measured are no evidence.
pub const COUNTED_TO: Temperature = Temperature::celsius(85.0);

/// How fast heat kills, as a chain of straight lines in the logarithm of the rate over temperature: nothing
/// below the first point, no more than the last point's rate above it.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// Temperature in °C and decimal logarithm of the rate per second, in rising order.
    points: Vec<(f64, f64)>,
}

impl Curve {
    /// A single straight line: the rate is one per `unit` at the reference and grows tenfold with every `z`,
    /// counted between two temperatures.
    #[must_use]
    pub fn straight(
        reference: Temperature,
        z: TemperatureDifference,
        unit: TimeSpan,
        counted: (Temperature, Temperature),
    ) -> Self {
        let at = |temperature: Temperature| {
            let log = (temperature - reference) / z - libm::log10(unit.as_seconds());
            (temperature.as_celsius(), log)
        };
        Self { points: vec![at(counted.0), at(counted.1)] }
    }

    /// A chain of straight lines through times that have the same effect, in rising order of temperature.
    #[must_use]
    pub fn through(equivalents: &[(Temperature, TimeSpan)]) -> Self {
        let point = |&(temperature, time): &(Temperature, TimeSpan)| (temperature.as_celsius(), -libm::log10(time.as_seconds()));
        Self { points: equivalents.iter().map(point).collect() }
    }

    /// Whole treatments per second at a temperature.
    #[must_use]
    pub fn rate(&self, temperature: Temperature) -> f64 {
        let t = temperature.as_celsius();
        let (Some(first), Some(last)) = (self.points.first(), self.points.last()) else { return 0.0 };
        if t.is_nan() || t < first.0 {
            return 0.0;
        }
        let log = self.points.windows(2).find_map(|pair| match pair {
            [a, b] if t <= b.0 => Some(a.1 + (b.1 - a.1) * (t - a.0) / (b.0 - a.0)),
            _ => None,
        });
        ten_to(log.unwrap_or(last.1))
    }

    /// Whole treatments in one straight segment, in closed form.
    #[must_use]
    pub fn over_segment(&self, segment: &Segment) -> f64 {
        let (Some(first), Some(last)) = (self.points.first(), self.points.last()) else { return 0.0 };
        let (from, to) = (segment.from.as_celsius(), segment.to.as_celsius());
        if from == to {
            return segment.lasts.as_seconds() * self.rate(segment.from);
        }
        let (cold, hot) = (from.min(to), from.max(to));
        let seconds_per_kelvin = segment.lasts.as_seconds() / (hot - cold);
        let lines: f64 = self
            .points
            .windows(2)
            .map(|pair| match pair {
                [a, b] => within(*a, *b, cold.max(a.0), hot.min(b.0)),
                _ => 0.0,
            })
            .sum();
        let beyond = (hot - cold.max(last.0)).max(0.0);
        let above = if beyond > 0.0 { beyond * self.rate(Temperature::celsius(last.0.max(first.0))) } else { 0.0 };
        // An endless segment that never gets warm enough is worth nothing, not endless times nothing.
        if lines + above == 0.0 { 0.0 } else { seconds_per_kelvin * (lines + above) }
    }

    /// Whole treatments in a history.
    #[must_use]
    pub fn over(&self, readings: &[Reading]) -> f64 {
        segments(readings).map(|segment| self.over_segment(&segment)).sum()
    }
}

/// Ten to a power, by the natural exponential: a third of the time of a general power, and as exact as any rate is known.
fn ten_to(logarithm: f64) -> f64 {
    libm::exp(logarithm * std::f64::consts::LN_10)
}

/// The integral of the rate over temperature on one line, from `low` to `high`; nothing if they are crossed.
fn within(a: (f64, f64), b: (f64, f64), low: f64, high: f64) -> f64 {
    let slope = (b.1 - a.1) / (b.0 - a.0);
    let rate = |t: f64| ten_to(a.1 + slope * (t - a.0));
    let steepness = slope * std::f64::consts::LN_10;
    if high <= low {
        0.0
    } else if (steepness * (high - low)).abs() < 1e-9 {
        // Nearly level lines lose all digits in the quotient; their mean is exact enough.
        (high - low) * f64::midpoint(rate(low), rate(high))
    } else {
        (rate(high) - rate(low)) / steepness
    }
}

/// Returns the time at the reference temperature that a history is worth.
///
/// ```text
/// F = ∫ 10^((T − T_ref)/z) dt        each straight piece:  Δt·(L₂ − L₁)/ln(L₂/L₁)
/// ```
///
/// | symbol  | meaning                                  | unit |
/// |---------|------------------------------------------|------|
/// | `F`     | equivalent time at the reference         | min  |
/// | `T_ref` | reference temperature                    | °C   |
/// | `z`     | warming that makes killing ten times as fast | K |
/// | `L`     | lethal rate at a segment's ends          | –    |
///
/// Counted from 55 °C; from 85 °C on hotter counts no more. Straight pieces are integrated exactly: the
/// trapezoid rule on the rates of readings half a minute apart errs by a fifth.
///
/// ```
/// # use quantity::{Temperature, TemperatureDifference, TimeSpan};
/// use science::keeping::{history::Reading, lethality::equivalent};
/// let at = |minutes, celsius| Reading { at: TimeSpan::minutes(minutes), temperature: Temperature::celsius(celsius) };
/// let ramp = [at(0.0, 60.0), at(2.0, 80.0)];
/// let f = equivalent(&ramp, Temperature::celsius(70.0), TemperatureDifference::kelvins(7.5));
/// assert_eq!(format!("{:.4} min", f.as_minutes()), "7.0023 min");
/// ```
#[must_use]
pub fn equivalent(readings: &[Reading], reference: Temperature, z: TemperatureDifference) -> TimeSpan {
    let curve = Curve::straight(reference, z, TimeSpan::minutes(1.0), (COUNTED_FROM, COUNTED_TO));
    TimeSpan::minutes(curve.over(readings))
}
