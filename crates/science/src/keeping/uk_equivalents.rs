//! The British list of times and temperatures that are worth 70 °C for two minutes.

use super::history::Reading;
use super::lethality::Curve;
use crate::{Equation, Standing, Valid};
use quantity::{Temperature, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "keeping::uk_equivalents",
    source: "fsa-cooking",
    place: "equivalent combinations of temperature and time; below 70 °C also ACMSF 2007, z = 6 K",
    standing: Standing::Published,
    valid: &[Valid { symbol: "T", unit: "°C", from: 60.0, to: 80.0 }],
};

/// Temperature in °C and minutes, as published.
const PUBLISHED: [(f64, f64); 5] = [(60.0, 45.0), (65.0, 10.0), (70.0, 2.0), (75.0, 0.5), (80.0, 0.1)];
/// Below 70 °C ten times as long for every 6 K less, as for *E. coli* O157.
const CAUTIOUS_Z: f64 = 6.0;

/// How times below 70 °C are read.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Below70 {
    /// The published list, straight in the logarithm between its five points.
    AsPublished,
    /// The list from 70 °C on; below it z = 6 K, which asks for longer.
    #[default]
    Cautious,
}

fn curve(below: Below70) -> Curve {
    let cautious = |celsius: f64| 2.0 * libm::pow(10.0, (70.0 - celsius) / CAUTIOUS_Z);
    let points = PUBLISHED.map(|(celsius, minutes)| {
        let minutes = if below == Below70::Cautious && celsius < 70.0 { cautious(celsius) } else { minutes };
        (Temperature::celsius(celsius), TimeSpan::minutes(minutes))
    });
    Curve::through(&points)
}

/// Returns how long a temperature must be held to be worth 70 °C for two minutes.
///
/// ```text
/// 60 °C 45 min   65 °C 10 min   70 °C 2 min   75 °C 30 s   80 °C 6 s     published
/// t = 2 min · 10^((70 − T)/6)                                            cautious below 70 °C
/// ```
///
/// | symbol | meaning          | unit |
/// |--------|------------------|------|
/// | `t`    | time to be held  | min  |
/// | `T`    | temperature      | °C   |
///
/// The five points are not one line (the z between them runs from 7.2 to 8.3 K): between them the
/// logarithm of the time is interpolated. Below 60 °C no time is enough (infinite), above 80 °C the time
/// of 80 °C stands. Rounded guidance of the Food Standards Agency; for sweet batters see
/// [`super::salmonella`], where 70 °C for two minutes alone is not enough.
///
/// ```
/// # use quantity::Temperature;
/// use science::keeping::uk_equivalents::{Below70, hold};
/// let time = hold(Temperature::celsius(65.0), Below70::AsPublished);
/// assert_eq!(format!("{:.1} min", time.as_minutes()), "10.0 min");
/// ```
#[must_use]
pub fn hold(temperature: Temperature, below: Below70) -> TimeSpan {
    TimeSpan::seconds(1.0 / curve(below).rate(temperature))
}

/// Returns how many times over a history is worth 70 °C for two minutes; 1 is just enough.
///
/// ```
/// # use quantity::{Temperature, TimeSpan};
/// use science::keeping::{history::Reading, uk_equivalents::{Below70, treatments}};
/// let at = |seconds, celsius| Reading { at: TimeSpan::seconds(seconds), temperature: Temperature::celsius(celsius) };
/// let held = treatments(&[at(0.0, 70.0), at(120.0, 70.0)], Below70::Cautious);
/// assert_eq!(format!("{held:.3}"), "1.000");
/// ```
#[must_use]
pub fn treatments(readings: &[Reading], below: Below70) -> f64 {
    curve(below).over(readings)
}
