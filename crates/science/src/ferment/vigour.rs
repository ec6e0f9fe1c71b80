//! How lively a leaven is in its kitchen, learnt from how its doughs rose.

use super::{Fermentation, LIMITS};
use crate::numeric::least_squares;
use crate::{Equation, Standing, Valid};
use quantity::TimeSpan;

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::vigour",
    source: "ferment-model",
    place: "least squares in the logarithm of the volume; the spreads of prior and log are judgement",
    standing: Standing::CommonPractice,
    valid: &[Valid { symbol: "θ", unit: "–", from: 0.3, to: 3.0 }],
};

/// A reading of a rising dough: volume against that when mixed, as height in a straight jar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// When, from mixing.
    pub time: TimeSpan,
    /// Volume against that when mixed.
    pub risen: f64,
}

/// Returns the vigour with which a fermentation passes through readings best, or nothing where too
/// few of them tell.
///
/// ```text
/// θ minimises Σ (ln V_read − ln V(θ))²,   0.3 ≤ θ ≤ 3
/// ```
///
/// | symbol   | meaning                                         | unit |
/// |----------|-------------------------------------------------|------|
/// | `θ`      | multiplies every rate of life                   | –    |
/// | `V_read` | volume read, against that when mixed            | –    |
/// | `V(θ)`   | volume of the model at that time                | –    |
///
/// Readings count from a rise of 15 % until 90 % of the greatest; two must be left. The path of the
/// fermentation must be the one the dough went through. At 0.3 or 3 the true vigour lies beyond.
///
/// ```
/// # use quantity::{Mass, Temperature, TimeSpan};
/// # use science::ferment::*;
/// # let dough = Dough { water: Mass::grams(650.0), ..Dough::default() };
/// # let yeast = Yeast { form: YeastForm::Instant, mass: Mass::grams(5.0) };
/// # let path = TemperaturePath::Constant(Temperature::celsius(24.0));
/// # let expected = Fermentation::new(&dough, &Leaven::yeast(Strain::Bakers, yeast), path);
/// let hour = |hour, risen| Reading { time: TimeSpan::hours(hour), risen };
/// let vigour = fitted_vigour(&expected, &[hour(1.0, 1.3), hour(1.5, 1.8), hour(2.0, 2.4)]);
/// assert!((1.0..1.5).contains(&vigour.expect("three readings tell")));
/// ```
#[must_use]
pub fn fitted_vigour(expected: &Fermentation, readings: &[Reading]) -> Option<f64> {
    let telling = telling(readings);
    let until = telling.iter().map(|reading| reading.time.as_hours()).fold(0.0, f64::max);
    if telling.len() < 2 || !until.is_finite() {
        return None;
    }
    let differences = |[log]: [f64; 1]| {
        let mut tried = Fermentation { limits: LIMITS, ..expected.clone() };
        tried.organisms.vigour = libm::exp(log);
        let course = tried.run(TimeSpan::hours(until));
        let risen = |reading: &Reading| course.at(reading.time).map_or(1.0, |moment| moment.risen);
        telling.iter().map(|reading| libm::log(risen(reading)) - libm::log(reading.risen)).collect()
    };
    let bounds = [(libm::log(LOWEST), libm::log(HIGHEST))];
    let fit = least_squares::fit(differences, [0.0], bounds);
    fit.squares.is_finite().then(|| libm::exp(fit.constants[0]))
}

/// Returns the readings between the first clear rise and the ripe height, by time: those that tell of vigour.
#[must_use]
pub fn telling(readings: &[Reading]) -> Vec<Reading> {
    let mut sorted: Vec<Reading> =
        readings.iter().copied().filter(|reading| reading.risen.is_finite() && reading.time.is_finite()).collect();
    sorted.sort_by(|a, b| a.time.as_hours().total_cmp(&b.time.as_hours()));
    let greatest = sorted.iter().map(|reading| reading.risen).fold(1.0, f64::max);
    let sank = sorted.last().is_some_and(|last| last.risen < greatest);
    let ripe = if sank { 1.0 + 0.9 * (greatest - 1.0) } else { f64::INFINITY };
    sorted.into_iter().take_while(|reading| reading.risen < ripe).filter(|reading| reading.risen > 1.15).collect()
}

const LOWEST: f64 = 0.3;
const HIGHEST: f64 = 3.0;

/// What is known of a leaven's vigour: its logarithm, as a bell.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Vigour {
    middle: f64,
    weight: f64,
}

impl Default for Vigour {
    /// Nothing yet: usual, within about a third.
    fn default() -> Self {
        Self { middle: 0.0, weight: 1.0 / (UNKNOWN * UNKNOWN) }
    }
}

/// Spread of the logarithm before any log, and of one log (judgement).
const UNKNOWN: f64 = 0.3;
const ONE_LOG: f64 = 0.12;

impl Vigour {
    /// What is known after one more log gave that vigour.
    ///
    /// ```
    /// # use science::ferment::Vigour;
    /// let known = Vigour::default().learnt(1.3);
    /// assert!((1.2..1.3).contains(&known.usual()));
    /// assert!(known.spread() < 0.12 && Vigour::default().spread() == 0.3);
    /// ```
    #[must_use]
    pub fn learnt(self, vigour: f64) -> Self {
        let more = 1.0 / (ONE_LOG * ONE_LOG);
        let weight = self.weight + more;
        Self { middle: (self.middle * self.weight + libm::log(vigour) * more) / weight, weight }
    }

    /// The likeliest vigour.
    #[must_use]
    pub fn usual(self) -> f64 {
        libm::exp(self.middle)
    }

    /// The standard deviation of its logarithm: about that share of every time.
    #[must_use]
    pub fn spread(self) -> f64 {
        1.0 / self.weight.sqrt()
    }
}
