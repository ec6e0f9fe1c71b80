//! The kitchen as the day sees it: what there is of everything that steps share, and when nobody is at hand.

use super::stays::Space;
use formula::read::{DayHours, DayTime, Kitchen};
use formula::{Known, Origin};
use quantity::Volume;

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
    /// How many bowls and tubs.
    pub bowls: Known<u32>,
    /// How many of them hold how much, the smallest first; nothing where they are only counted.
    pub bowl_sizes: Vec<(Volume, u32)>,
    /// How much of the fridge is free for what is made.
    pub fridge_room: Known<Volume>,
    /// How much the proofer holds; one thing at a time where that is not stated.
    pub proofer_room: Option<Volume>,
    /// How many decks or shelves of the oven bake at once.
    pub decks: Known<u32>,
    /// When the baker sleeps.
    pub asleep: Known<Option<DayHours>>,
    /// When nobody is in the kitchen, every day.
    pub out: Vec<DayHours>,
}

/// The usual room in a household's fridge.
const FRIDGE_ROOM: Volume = Volume::millilitres(20_000.0);
/// A deck is shared by hundredths.
pub const DECK: i32 = 100;

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
            bowls: count(working.bowls, 6),
            bowl_sizes: working.bowl_sizes.clone(),
            decks: count(kitchen.oven.as_ref().and_then(|oven| oven.decks), 1),
            fridge_room: match kitchen.fridge_room {
                Some(value) => Known { value, band: None, origin: stated() },
                None => Known::assumed(FRIDGE_ROOM, USUAL),
            },
            proofer_room: kitchen.proofer_room,
            asleep,
            out: working.out.clone(),
        }
    }

    /// How much room there is: bowls, decilitres, or hundredths of a deck.
    #[must_use]
    pub fn room(&self, space: Space) -> i32 {
        match space {
            Space::Oven => self.capacity(Station::Oven),
            Space::Bowls => i32::try_from(self.bowls.value).unwrap_or(i32::MAX),
            Space::Fridge => whole_decilitres(self.fridge_room.value),
        }
    }

    /// How many bowls there are that are no smaller than those of a size, by its place among the sizes.
    #[must_use]
    pub fn bowls_from(&self, size: usize) -> i32 {
        let count: u32 = self.bowl_sizes[size.min(self.bowl_sizes.len())..].iter().map(|(_, count)| count).sum();
        i32::try_from(count).unwrap_or(i32::MAX)
    }

    /// How much there is of a station; of the oven in hundredths of a deck.
    #[must_use]
    pub fn capacity(&self, station: Station) -> i32 {
        match station {
            Station::Hands => i32::try_from(self.hands.value).unwrap_or(1),
            Station::Ring => i32::try_from(self.rings.value).unwrap_or(2),
            Station::Oven => i32::try_from(self.decks.value).unwrap_or(1) * DECK,
            Station::Proofer => self.proofer_room.map_or(1, |room| whole_decilitres(room).max(1)),
            Station::Griddle | Station::Mixer => 1,
        }
    }
}

/// What is only part of a decilitre is no room.
fn whole_decilitres(room: Volume) -> i32 {
    (room.as_millilitres() / 100.0).clamp(0.0, 1e6) as i32
}

fn usual_night() -> Option<DayHours> {
    Some(DayHours { from: DayTime::read("22:30")?, to: DayTime::read("06:30")? })
}
