//! The kitchen as the forecast sees it: what is stated, what was asked for, and what is taken for granted.

mod clock;
mod heat;
mod off;
mod room;

pub use clock::Clock;
pub use heat::{Heat, Ring, capacity};
pub use off::Off;
pub use room::RoomCourse;

use super::Calibration;
use formula::read::{Action, Attention, Group, Kitchen, Vessel};
use formula::{Ingredient, Known, Origin, Step};
use quantity::{Between, Length, Mass, Pressure, Temperature, TimeSpan, Volume};

/// How warm it is where things stand, and what they are heated with.
#[derive(Clone, Debug)]
pub struct Surroundings {
    /// The kitchen's title.
    pub title: String,
    /// The room, by day where it changes.
    pub room: Known<Temperature>,
    /// The room over the day.
    pub course: RoomCourse,
    /// The fridge.
    pub fridge: Known<Temperature>,
    /// What a proofer or warm place can be set to.
    pub proofer: Option<Between<Temperature>>,
    /// How high above the sea.
    pub altitude: Known<Length>,
    /// Its rings, oven and fryer.
    pub heat: Heat,
    /// When everything is to be served, seconds after midnight: what a room that changes is reckoned from.
    pub served_at: Known<TimeSpan>,
    /// How finely it weighs; the finest scale.
    pub shows: Known<Mass>,
    /// What its trials taught.
    pub calibration: Calibration,
    /// How far one of many kitchens is off all this.
    pub off: Off,
    /// Whether each step's own temperature is that of the place where it stood.
    as_measured: bool,
    vessels: Vec<Vessel>,
    stored: Vec<(String, Temperature)>,
}

const ROOM: Temperature = Temperature::celsius(21.0);
const FRIDGE: Temperature = Temperature::celsius(5.0);
const SERVED_AT: TimeSpan = TimeSpan::hours(12.0);
/// Closer than this to what a step asks for, nobody would trouble a proofer: common practice, no source.
pub const NEAR: f64 = 2.0;
/// A step as cold as this stands in the fridge.
const COLD: Temperature = Temperature::celsius(10.0);

/// Where a step's food stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Stand {
    /// In the room, whatever it does over the day.
    Room,
    /// In the fridge, a proofer or another place of one temperature.
    Place(Temperature),
}

impl Surroundings {
    /// A kitchen, with the usual figures where it states none.
    #[must_use]
    pub fn of(kitchen: &Kitchen) -> Self {
        let practice = "common practice, no source";
        let stated = |value: Option<Temperature>, usual: Temperature| match value {
            Some(value) => measured(kitchen, value),
            None => Known::assumed(usual, practice),
        };
        let altitude = match kitchen.altitude {
            Some(altitude) => measured(kitchen, altitude),
            None => Known::assumed(Length::metres(0.0), "sea level"),
        };
        let room = kitchen.room.or_else(|| RoomCourse::of(kitchen, ROOM).by_day());
        let room = stated(room, ROOM);
        Self {
            title: kitchen.title.clone(),
            course: RoomCourse::of(kitchen, room.value),
            room,
            fridge: stated(kitchen.fridge, FRIDGE),
            proofer: kitchen.proofer,
            altitude,
            heat: Heat::of(kitchen),
            served_at: Known::assumed(SERVED_AT, "served at noon"),
            shows: match kitchen.scales.first() {
                Some(scale) => measured(kitchen, scale.shows),
                None => Known::assumed(Mass::grams(1.0), practice),
            },
            calibration: Calibration::default(),
            off: Off::default(),
            as_measured: false,
            vessels: kitchen.vessels.clone(),
            stored: kitchen.stored.clone(),
        }
    }

    /// The same with what its trials taught.
    #[must_use]
    pub fn taught(self, calibration: Calibration) -> Self {
        Self { calibration, ..self }
    }

    /// The same for a bake that was seen: a step that states a temperature stood there, whatever else the kitchen has.
    #[must_use]
    pub fn as_measured(self) -> Self {
        Self { as_measured: true, ..self }
    }

    /// Whether this is a bake that was seen.
    pub(crate) const fn was_seen(&self) -> bool {
        self.as_measured
    }

    /// The same with the room at one temperature, as asked.
    #[must_use]
    pub fn with_room(mut self, room: Temperature) -> Self {
        self.room = asked(room);
        self.course = RoomCourse::Constant(room);
        self
    }

    /// The same with the fridge at a temperature, as asked.
    #[must_use]
    pub fn with_fridge(mut self, fridge: Temperature) -> Self {
        self.fridge = asked(fridge);
        self
    }

    /// The same with everything served at a time of the day, as asked.
    #[must_use]
    pub fn with_serving_at(mut self, clock: TimeSpan) -> Self {
        self.served_at = asked(clock);
        self
    }

    /// How warm an ingredient is that states no temperature: as the kitchen says, else dairy and egg as the
    /// fridge, the rest as the room.
    #[must_use]
    pub fn stored(&self, ingredient: &Ingredient) -> Known<Temperature> {
        if let Some((_, stated)) = self.stored.iter().find(|(name, _)| *name == ingredient.name) {
            return Known { value: *stated, band: None, origin: Origin::Measured(self.title.clone()) };
        }
        let is_chilled = matches!(ingredient.group, Group::Dairy | Group::Egg);
        let place = if is_chilled { &self.fridge } else { &self.room };
        Known::assumed(place.value, if is_chilled { "as cold as the fridge" } else { "as warm as the room" })
    }

    /// Where a step's food stands: what the kitchen has goes before what the method hopes for, because the
    /// dough feels only the one. Where the room is not known, the method is believed.
    #[must_use]
    pub fn stand(&self, step: &Step) -> Stand {
        let wanted = step.temperature.map(super::midway);
        if let Some(seen) = wanted.filter(|_| self.as_measured && step.attention == Attention::Waiting) {
            return Stand::Place(seen);
        }
        let is_cold = matches!(step.action, Action::Retard | Action::Chill) || wanted.is_some_and(|wanted| wanted <= COLD);
        if is_cold {
            let fridge =
                if is_known(&self.fridge) { self.fridge.value } else { wanted.unwrap_or(self.fridge.value) + self.off.fridge };
            return Stand::Place(fridge);
        }
        match wanted {
            Some(wanted) if step.attention == Attention::Waiting && !self.is_in_the_room(step, wanted) => {
                Stand::Place(wanted + self.off.room)
            }
            _ => Stand::Room,
        }
    }

    /// Whether a step's food stands in the fridge.
    #[must_use]
    pub fn is_in_fridge(&self, step: &Step) -> bool {
        let asks_cold = step.temperature.map(super::midway).is_some_and(|wanted| wanted <= COLD);
        step.attention == Attention::Waiting && (matches!(step.action, Action::Retard | Action::Chill) || asks_cold)
    }

    /// Whether a step's food stands in the proofer, or another place kept warm.
    #[must_use]
    pub fn is_in_proofer(&self, step: &Step) -> bool {
        let holds = |found: Temperature| self.proofer.is_some_and(|one| one.from <= found && found <= one.to);
        let waits = step.attention == Attention::Waiting && !step.action.cooks();
        waits && step.temperature.is_some() && matches!(self.stand(step), Stand::Place(found) if holds(found))
    }

    fn is_in_the_room(&self, step: &Step, wanted: Temperature) -> bool {
        let holds_room = step.temperature.is_some_and(|asked| asked.from <= self.room.value && self.room.value <= asked.to);
        let apart = (wanted.as_celsius() - self.room.value.as_celsius()).abs();
        let can_proof = self.proofer.is_some_and(|proofer| proofer.from <= wanted && wanted <= proofer.to);
        is_known(&self.room) && (holds_room || !can_proof || apart <= NEAR)
    }

    /// The pressure of the air at this height.
    #[must_use]
    pub fn pressure(&self) -> Pressure {
        science::heat::air_pressure::air_pressure(self.altitude.value)
    }

    /// Whether the kitchen states any vessel.
    #[must_use]
    pub const fn has_vessels(&self) -> bool {
        !self.vessels.is_empty()
    }

    /// The smallest vessel that holds so much, if the kitchen states any.
    #[must_use]
    pub fn vessel(&self, holds: Volume) -> Option<&Vessel> {
        let fitting = self.vessels.iter().filter(|vessel| vessel.holds >= holds);
        fitting.min_by(|a, b| a.holds.as_millilitres().total_cmp(&b.holds.as_millilitres()))
    }
}

/// A figure of the kitchen's own.
fn measured<T>(kitchen: &Kitchen, value: T) -> Known<T> {
    Known { value, band: None, origin: Origin::Measured(kitchen.title.clone()) }
}

/// A figure that came with the question.
const fn asked<T>(value: T) -> Known<T> {
    Known { value, band: None, origin: Origin::Asked }
}

/// Whether a figure is more than taken for granted.
const fn is_known<T>(known: &Known<T>) -> bool {
    !matches!(known.origin, Origin::Assumed { .. })
}
