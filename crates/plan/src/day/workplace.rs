//! The kitchen as the day sees it: what there is of everything that steps share, and when nobody is at hand.

use formula::read::{DayHours, DayTime, Kitchen};
use formula::{Known, Origin};

/// What steps share.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Station {
    /// A pair of hands.
    Hands,
    /// A ring of the hob.
    Ring,
    /// The oven, at one temperature at a time.
    Oven,
    /// The griddle.
    Griddle,
    /// The mixer.
    Mixer,
    /// The proofer, at one temperature at a time.
    Proofer,
}

impl Station {
    /// All of them, in the order in which they are listed.
    pub const ALL: [Self; 6] = [Self::Hands, Self::Ring, Self::Oven, Self::Griddle, Self::Mixer, Self::Proofer];

    /// Whether something hot stands on or in it, which nobody leaves alone.
    #[must_use]
    pub const fn is_hot(self) -> bool {
        matches!(self, Self::Ring | Self::Oven | Self::Griddle)
    }
}

/// A kitchen with the usual figures where it states none.
#[derive(Clone, Debug, PartialEq)]
pub struct Workplace {
    /// The kitchen's title.
    pub title: String,
    /// How many pairs of hands.
    pub hands: Known<u32>,
    /// How many rings.
    pub rings: Known<u32>,
    /// When the baker sleeps.
    pub asleep: Known<Option<DayHours>>,
    /// When nobody is in the kitchen, every day.
    pub out: Vec<DayHours>,
}

const USUAL: &str = "common practice, no source";

impl Workplace {
    /// Reads a kitchen.
    #[must_use]
    pub fn of(kitchen: &Kitchen) -> Self {
        let working = &kitchen.working;
        let stated = || Origin::Measured(kitchen.title.clone());
        let count = |value: Option<u32>, usual: u32| match value {
            Some(value) => Known { value, band: None, origin: stated() },
            None => Known::assumed(usual, USUAL),
        };
        let asleep = match working.asleep {
            Some(hours) => Known { value: Some(hours), band: None, origin: stated() },
            None => Known::assumed(usual_night(), USUAL),
        };
        Self {
            title: kitchen.title.clone(),
            hands: count(working.hands, 1),
            rings: count(working.rings, 2),
            asleep,
            out: working.out.clone(),
        }
    }

    /// How much there is of a station.
    #[must_use]
    pub fn capacity(&self, station: Station) -> i32 {
        match station {
            Station::Hands => i32::try_from(self.hands.value).unwrap_or(1),
            Station::Ring => i32::try_from(self.rings.value).unwrap_or(2),
            Station::Oven | Station::Griddle | Station::Mixer | Station::Proofer => 1,
        }
    }
}

fn usual_night() -> Option<DayHours> {
    Some(DayHours { from: DayTime::read("22:30")?, to: DayTime::read("06:30")? })
}
