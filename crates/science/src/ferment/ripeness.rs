//! When a dough or preferment is ripe: a state and a window, not a clock.

use super::Course;
use super::state::{GAS_MADE, READINESS};
use crate::numeric::maximum;
use crate::{Equation, Standing};
use quantity::{Amount, Fraction, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::ripeness",
    source: "trade",
    place: "ripe at the height of the rise, past when it has sunk by a tenth of it",
    standing: Standing::CommonPractice,
    valid: &[],
};

/// How far a dough is, seen from its greatest height.
///
/// ```text
/// young  before the rise reaches 90 % of its greatest
/// ripe   from then until it falls below 90 % again
/// past   after that, still fit to raise a dough
/// spent  once the yeast is weak (a < 0.8) or the dough is sourer than pH 3.7
/// ```
///
/// | symbol | meaning                        | unit |
/// |--------|--------------------------------|------|
/// | `rise` | volume above that when mixed   | –    |
/// | `a`    | readiness of the yeast         | –    |
///
/// Common practice, no source; the figures are definitions. A dough that was still rising when its
/// run ended has no ripe window yet: run it longer.
///
/// ```
/// # use quantity::{Mass, Temperature, TimeSpan};
/// # use science::ferment::*;
/// // Equal weights with 0.1 % instant yeast, at 21 °C.
/// let sponge = Dough { water: Mass::kilograms(1.0), hold: Hold::of(DoughKind::Liquid), ..Dough::default() };
/// let yeast = Leaven::yeast(Strain::Bakers, Yeast { form: YeastForm::Instant, mass: Mass::grams(1.0) });
/// let path = TemperaturePath::Constant(Temperature::celsius(21.0));
/// let course = Fermentation::new(&sponge, &yeast, path).run(TimeSpan::hours(48.0));
/// assert_eq!(course.ripeness(TimeSpan::hours(6.0)), Some(Ripeness::Young));
/// assert_eq!(course.ripeness(TimeSpan::hours(14.0)), Some(Ripeness::Ripe));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Ripeness {
    /// Not yet.
    Young,
    /// Now.
    Ripe,
    /// Sunk, still usable.
    Past,
    /// Too weak or too sour to raise a dough.
    Spent,
}

/// The greatest height.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Peak {
    /// When.
    pub time: TimeSpan,
    /// Volume against that when mixed.
    pub risen: f64,
}

/// From when to when a dough is ripe; still so at the end where there is no `to`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// When it becomes ripe.
    pub from: TimeSpan,
    /// When it is past.
    pub to: Option<TimeSpan>,
}

/// The share of the greatest rise that counts as ripe.
const RIPE: f64 = 0.9;
/// The readiness below which yeast counts as spent.
const WEAK: f64 = 0.8;
/// The pH below which a dough counts as spent.
const SOUR: f64 = 3.7;
/// The share of all sugar beyond which it counts as spent.
const SUGAR_SPENT: f64 = 0.93;

impl Course {
    /// The greatest height, or nothing while the dough is still rising at the end of its run.
    #[must_use]
    pub fn peak(&self) -> Option<Peak> {
        *self.peak.get_or_init(|| self.found_peak())
    }

    fn found_peak(&self) -> Option<Peak> {
        let grid: Vec<(f64, f64)> = self.grid().map(|hour| (hour, self.risen(hour))).collect();
        let top = grid.iter().enumerate().max_by(|(_, (_, a)), (_, (_, b))| a.total_cmp(b))?.0;
        if top + 1 == grid.len() {
            return None;
        }
        let before = if top == 0 { 0.0 } else { grid[top - 1].0 };
        let hour = maximum::find(|hour| self.risen(hour), (before, grid[top + 1].0), 1e-6);
        Some(Peak { time: TimeSpan::hours(hour), risen: self.risen(hour) })
    }

    /// From when to when the dough is ripe.
    #[must_use]
    pub fn ripe(&self) -> Option<Window> {
        let peak = self.peak()?;
        let level = 1.0 + RIPE * (peak.risen - 1.0);
        let from = self.risen_to(level)?;
        let to = self.crossing(peak.time.as_hours(), |hour| level - self.risen(hour));
        Some(Window { from, to: to.map(TimeSpan::hours) })
    }

    /// When the dough is past its ripeness.
    #[must_use]
    pub fn past(&self) -> Option<TimeSpan> {
        self.ripe()?.to
    }

    /// When the dough can no longer raise another: its yeast weak after the peak, or too sour.
    #[must_use]
    pub fn spent(&self) -> Option<TimeSpan> {
        let peak = self.peak()?.time.as_hours();
        self.crossing(peak, |hour| (WEAK - self.number(READINESS, hour)).max(SOUR - self.acidity(hour))).map(TimeSpan::hours)
    }

    /// The share of the sugar at hand when mixed that has become gas.
    #[must_use]
    pub fn sugar_used(&self, time: TimeSpan) -> Option<Fraction> {
        self.at(time).map(|moment| Fraction::ratio(moment.state.gas_made / self.all_gas()))
    }

    /// When nearly all sugar has become gas.
    #[must_use]
    pub fn sugar_spent(&self) -> Option<TimeSpan> {
        let limit = SUGAR_SPENT * self.all_gas().as_moles();
        self.crossing(0.0, |hour| self.number(GAS_MADE, hour) - limit).map(TimeSpan::hours)
    }

    fn all_gas(&self) -> Amount {
        self.start.sugars() * self.organisms.gas_yield
    }

    /// How far the dough is at a time; nothing where its peak or the time was not reached.
    #[must_use]
    pub fn ripeness(&self, time: TimeSpan) -> Option<Ripeness> {
        let (window, _) = (self.ripe()?, self.at(time)?);
        let reached = |hour: Option<TimeSpan>| hour.is_some_and(|hour| time >= hour);
        Some(match (time < window.from, reached(self.spent()), reached(window.to)) {
            (true, _, _) => Ripeness::Young,
            (_, true, _) => Ripeness::Spent,
            (_, _, true) => Ripeness::Past,
            _ => Ripeness::Ripe,
        })
    }
}
