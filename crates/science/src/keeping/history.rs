//! A temperature over time as somebody read it: points, straight lines between them.

use quantity::{Temperature, TimeSpan};

/// One reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// When, since the first.
    pub at: TimeSpan,
    /// How warm.
    pub temperature: Temperature,
}

/// A straight piece between two readings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Segment {
    /// At its beginning.
    pub from: Temperature,
    /// At its end.
    pub to: Temperature,
    /// How long it lasts.
    pub lasts: TimeSpan,
}

/// The straight pieces between readings; a piece that runs backwards in time or has no number is left out.
pub fn segments(readings: &[Reading]) -> impl Iterator<Item = Segment> + '_ {
    readings.windows(2).filter_map(|pair| {
        let [first, second] = pair else { return None };
        let lasts = second.at - first.at;
        let sound =
            lasts > TimeSpan::ZERO && lasts.is_finite() && first.temperature.is_finite() && second.temperature.is_finite();
        sound.then_some(Segment { from: first.temperature, to: second.temperature, lasts })
    })
}

impl Segment {
    /// How long the segment spends between two temperatures, its ends included.
    #[must_use]
    pub fn time_between(&self, low: Temperature, high: Temperature) -> TimeSpan {
        let (from, to) = (self.from.as_celsius(), self.to.as_celsius());
        let (low, high) = (low.as_celsius(), high.as_celsius());
        if from == to {
            return if (low..=high).contains(&from) { self.lasts } else { TimeSpan::ZERO };
        }
        let inside = (from.max(to).min(high) - from.min(to).max(low)).max(0.0);
        self.lasts * (inside / (to - from).abs())
    }
}
