//! What a kitchen's own trials taught: the forecast reads it, and the default is a kitchen that has logged nothing.

use super::{KnownTime, UNCALIBRATED, by_the_ferment};
use formula::{Known, Origin};
use quantity::{Between, Fraction, Temperature, TemperatureDifference, TimeSpan};
use science::heat::cook::{SATURATION, USUAL_SATURATION};
use science::heat::surroundings::{GRIDDLE, Transfer};
use std::collections::BTreeMap;

/// Half the width of a 5 to 95 % band, in standard deviations.
pub const BAND: f64 = 1.645;

/// A figure that trials teach, on the scale on which it scatters evenly: the logarithm of a factor, or kelvin.
#[derive(Clone, Debug, PartialEq)]
pub struct Learnt {
    /// The likeliest figure.
    pub middle: f64,
    /// The standard deviation of that.
    pub spread: f64,
    /// The standard deviation from one bake to the next.
    pub scatter: f64,
    /// How many trials taught it.
    pub trials: usize,
}

/// What the forecast reads of a kitchen's trials.
#[derive(Clone, Debug, PartialEq)]
pub struct Calibration {
    /// The logarithm of the vigour of each yeast and culture, by its ingredient's name.
    pub leavens: BTreeMap<String, Learnt>,
    /// The logarithm of how much faster than usual a dough follows the air it stands in.
    pub lag: Learnt,
    /// The logarithm of how much better than usual a griddle passes heat into a piece.
    pub contact: Learnt,
    /// What kneading warms a dough by, in kelvin.
    pub friction: Learnt,
}

/// A leaven before any trial. Spread and scatter: judgement, as in the science room's `ferment::vigour`.
pub const VIGOUR: Learnt = Learnt { middle: 0.0, spread: 0.3, scatter: 0.12, trials: 0 };
/// How a bowl follows the room before any trial: from 0.25 an hour in a basket to 0.5 in a bowl for about the
/// same mass. Common practice, no source.
const LAG: Learnt = Learnt { middle: 0.0, spread: 0.35, scatter: 0.15, trials: 0 };
/// The warming by kneading before any trial: common practice, no source.
const FRICTION: Learnt = Learnt { middle: 3.0, spread: 1.5, scatter: 0.8, trials: 0 };

impl Default for Calibration {
    fn default() -> Self {
        // The range found for contact is taken as a band of 5 to 95 %.
        let spread = libm::log(GRIDDLE.range.to / GRIDDLE.range.from) / (2.0 * BAND);
        let contact = Learnt { middle: 0.0, spread, scatter: 0.1, trials: 0 };
        Self { leavens: BTreeMap::new(), lag: LAG, contact, friction: FRICTION }
    }
}

impl Learnt {
    /// The factor, where its logarithm is learnt.
    #[must_use]
    pub fn factor(&self) -> f64 {
        libm::exp(self.middle)
    }

    /// Half the 5 to 95 % band of the figure itself.
    #[must_use]
    pub fn own_band(&self) -> f64 {
        BAND * self.spread
    }

    /// Half the 5 to 95 % band of the figure in the next bake.
    #[must_use]
    pub fn next_band(&self) -> f64 {
        BAND * libm::hypot(self.spread, self.scatter)
    }

    /// Where a figure that rests on trials comes from.
    fn origin(&self, what: &str) -> Origin {
        let trials = if self.trials == 1 { "1 trial".to_owned() } else { format!("{} trials", self.trials) };
        Origin::Measured(format!("{what}, learnt from {trials}"))
    }
}

impl Calibration {
    /// What is known of a leaven.
    #[must_use]
    pub fn vigour(&self, leaven: &str) -> &Learnt {
        self.leavens.get(leaven).unwrap_or(&VIGOUR)
    }

    /// A time of the ferment with its band: that of the books, or what trials left of it.
    #[must_use]
    pub fn time(&self, leaven: &str, value: TimeSpan) -> KnownTime {
        let vigour = self.vigour(leaven);
        if vigour.trials == 0 {
            return Known { band: Some(around(value, UNCALIBRATED)), ..by_the_ferment(value) };
        }
        let origin = vigour.origin(&format!("vigour of {leaven}"));
        Known { band: Some(around(value, vigour.next_band().min(0.9))), origin, value }
    }

    /// A temperature from the bowl; where kneading warmed it and trials taught by how much, with its band.
    pub(super) fn mixed(&self, kneads: bool, computed: Known<Temperature>) -> Known<Temperature> {
        if !kneads || self.friction.trials == 0 {
            return computed;
        }
        let give = TemperatureDifference::kelvins(self.friction.next_band());
        let band = Some((computed.value - give, computed.value + give));
        Known { band, origin: self.friction.origin("the mixer's friction"), ..computed }
    }

    /// How readily the griddle gives heat to a piece, with the range that is left.
    #[must_use]
    pub fn griddle(&self) -> Transfer {
        if self.contact == Self::default().contact {
            return GRIDDLE;
        }
        let (usual, band) = (GRIDDLE.usual * self.contact.factor(), libm::exp(self.contact.next_band()));
        let range = Between { from: usual * (1.0 / band), to: usual * band };
        Transfer { usual, range, ..GRIDDLE }
    }

    /// How far the pores of a piece may keep saturated: anywhere in its range where nothing was probed. A core once
    /// read speaks of contact and pores together, so both ranges narrow alike: judgement.
    #[must_use]
    pub fn pores(&self) -> Between<Fraction> {
        let usual = USUAL_SATURATION.as_ratio();
        let left = if self.contact.trials == 0 { 1.0 } else { self.contact.spread / Self::default().contact.spread };
        SATURATION.map(|end| Fraction::ratio(usual + (end.as_ratio() - usual) * left))
    }

    /// A core's temperature; measured, as far as trials taught the griddle's contact.
    pub(super) fn core<T>(&self, computed: Known<T>) -> Known<T> {
        if self.contact.trials == 0 {
            return computed;
        }
        Known { origin: self.contact.origin("the griddle's contact"), ..computed }
    }
}

fn around(value: TimeSpan, share: f64) -> (TimeSpan, TimeSpan) {
    (value * (1.0 - share), value * (1.0 + share))
}
