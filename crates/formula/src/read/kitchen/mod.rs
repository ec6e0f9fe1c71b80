//! A kitchen: how warm it is, what it weighs with, what it heats and holds with.

mod heat;
mod room_log;

pub(super) use heat::VOLUMES;
pub use heat::{Fryer, Hob, Oven, Pan, Vessel};
pub use room_log::read_room_log;

use super::fields::{Fields, Reader, figure, in_written_order};
use super::formula::{read_mass, read_measure, stem};
use super::working::{Working, read_working};
use super::{At, keys, toml_text};
use crate::source::Source;
use crate::{Checked, Diagnostic, fault};
use quantity::{Between, Kind, Length, Mass, Measure, SpoonSystem, Temperature, TimeSpan, Volume, print};
use toml::de::DeTable;

/// A kitchen as its author describes it; what is not stated is taken for granted where it is needed.
#[derive(Clone, Debug, PartialEq)]
pub struct Kitchen {
    /// The file's name, by which the book calls it.
    pub name: String,
    /// What it is called.
    pub title: String,
    /// How warm the room is, by day where it cools down at night.
    pub room: Option<Temperature>,
    /// How cold the room gets at night.
    pub night: Option<Temperature>,
    /// The file of `kitchens/` in which the room was measured over a day.
    pub room_log: Option<At<String>>,
    /// The room by the clock, as it was measured; seconds after midnight, rising.
    pub room_by_clock: Vec<(TimeSpan, Temperature)>,
    /// How cold the fridge is.
    pub fridge: Option<Temperature>,
    /// How much of the fridge is free for what is made.
    pub fridge_room: Option<Volume>,
    /// What a proofer, or a warm place, can be set to.
    pub proofer: Option<Between<Temperature>>,
    /// How much the proofer holds.
    pub proofer_room: Option<Volume>,
    /// How high above the sea.
    pub altitude: Option<Length>,
    /// How warm ingredients are before they are used, by name.
    pub stored: Vec<(String, Temperature)>,
    /// Its scales, the finest first.
    pub scales: Vec<Scale>,
    /// What pans are heated on.
    pub hob: Option<Hob>,
    /// Its pans.
    pub pans: Vec<Pan>,
    /// Its oven.
    pub oven: Option<Oven>,
    /// What it fries in.
    pub fryer: Option<Fryer>,
    /// Its bowls, pots and boxes.
    pub vessels: Vec<Vessel>,
    /// Who works there, and when nobody is at hand.
    pub working: Working,
}

/// A scale.
#[derive(Clone, Debug, PartialEq)]
pub struct Scale {
    /// What it is called.
    pub title: String,
    /// The step of its display.
    pub shows: Mass,
    /// The most it can carry.
    pub up_to: Mass,
}

impl Kitchen {
    /// The kitchen assumed where none is stated: one with a scale in whole gram, as most homes have.
    #[must_use]
    pub fn assumed() -> Self {
        let scale = Scale { title: "kitchen scale".to_owned(), shows: Mass::grams(1.0), up_to: Mass::kilograms(5.0) };
        Self {
            name: String::new(),
            title: "a kitchen with a 1 g scale (assumed)".to_owned(),
            room: None,
            night: None,
            room_log: None,
            room_by_clock: Vec::new(),
            fridge: None,
            fridge_room: None,
            proofer: None,
            proofer_room: None,
            altitude: None,
            stored: Vec::new(),
            scales: vec![scale],
            hob: None,
            pans: Vec::new(),
            oven: None,
            fryer: None,
            vessels: Vec::new(),
            working: Working::default(),
        }
    }
}

/// How warm kitchens with people in them can be.
pub const ROOMS: Taken = Taken { from: -30.0, to: 60.0, unit: "°C" };
/// How cold fridges are taken to be.
pub const FRIDGES: Taken = Taken { from: -5.0, to: 20.0, unit: "°C" };
const PROOFERS: Taken = Taken { from: 0.0, to: 60.0, unit: "°C" };
/// How high above the sea kitchens are taken to lie: hardly anybody lives higher (from memory).
pub const HEIGHTS: Taken = Taken { from: 0.0, to: 5000.0, unit: "m" };

/// What is taken for a figure of a kitchen; outside it a forecast would only guess.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Taken {
    /// The least, in the unit.
    pub from: f64,
    /// The most.
    pub to: f64,
    /// The unit's symbol.
    pub unit: &'static str,
}

impl Taken {
    /// Whether a figure in the unit is taken.
    #[must_use]
    pub fn contains(self, value: f64) -> bool {
        (self.from..=self.to).contains(&value)
    }

    /// The range in words: "−30 to 60 °C".
    #[must_use]
    pub fn in_words(self) -> String {
        format!("{} to {}\u{a0}{}", print::number(self.from, 0), print::number(self.to, 0), self.unit)
    }
}

/// Reads a kitchen.
#[must_use]
pub fn read_kitchen(source: &Source) -> Checked<Kitchen> {
    let mut found = Vec::new();
    let table = toml_text::parse(&source.file, &source.text, &mut found);
    let mut kitchen = Kitchen { name: stem(&source.file).to_owned(), ..Kitchen::assumed() };
    if found.iter().any(|found| found.code == fault::NESTED_TOO_DEEP.code) {
        return Checked { value: kitchen, diagnostics: found };
    }
    let mut reader = Reader { file: &source.file, found: &mut found, unread: Vec::new(), quiets: Vec::new() };
    let reader = &mut reader;
    let fields = Fields::open(reader, &table, source.beginning(), &keys::KITCHEN);
    kitchen.title = fields.text(reader, "title").map(|title| title.value.to_owned()).unwrap_or_default();
    kitchen.room = temperature(reader, &fields, "room", ROOMS);
    kitchen.night = temperature(reader, &fields, "night", ROOMS);
    kitchen.room_log = fields.text(reader, "room-log").map(|text| At::new(text.value.to_owned(), text.span));
    kitchen.fridge = temperature(reader, &fields, "fridge", FRIDGES);
    kitchen.proofer = temperatures(reader, &fields, "proofer", PROOFERS);
    kitchen.altitude =
        within(reader, &fields, "altitude", Kind::Length, |m| Some(m.length(SpoonSystem::Metric)?.to.as_metres()), HEIGHTS)
            .map(Length::metres);
    kitchen.stored = fields.table(reader, "stored").map(|(table, _)| named(reader, table, ROOMS)).unwrap_or_default();
    kitchen.scales = scales(reader, &fields);
    heat::read(reader, &fields, &mut kitchen);
    kitchen.working = read_working(reader, &fields);
    Checked { value: kitchen, diagnostics: found.into_iter().map(of_a_kitchen).collect() }
}

/// What is below nothing in a kitchen is no amount of a formula, which the hint would be about.
fn of_a_kitchen(found: Diagnostic) -> Diagnostic {
    if found.code == fault::AMOUNT_NEGATIVE.code {
        return fault::KITCHEN_IMPOSSIBLE.at(found.place, found.message).hint(TAKEN);
    }
    found
}

/// Where to read on.
pub const TAKEN: &str = "`wellproved explain kitchen-impossible` tells what is taken";

fn scales(reader: &mut Reader, fields: &Fields) -> Vec<Scale> {
    let mut scales = Vec::new();
    for (table, span) in fields.tables(reader, "scale") {
        let fields = Fields::open(reader, table, span, &keys::SCALE);
        scales.extend(read_scale(reader, &fields));
    }
    scales.sort_by(|a, b| a.shows.as_grams().total_cmp(&b.shows.as_grams()));
    scales
}

fn read_scale(reader: &mut Reader, fields: &Fields) -> Option<Scale> {
    let shows = read_mass(reader, fields, "shows")?;
    if shows.value <= Mass::ZERO {
        let message = "a scale that shows steps of nothing cannot be".to_owned();
        reader.report(&fault::KITCHEN_IMPOSSIBLE, shows.span, message, "write shows = \"1 g\"");
        return None;
    }
    let up_to = read_mass(reader, fields, "up-to").map_or(Mass::kilograms(5.0), |mass| mass.value);
    let title = fields.text(reader, "title").map_or("scale", |title| title.value).to_owned();
    Some(Scale { title, shows: shows.value, up_to })
}

/// A figure under a key that must lie within a range, in the unit that `reckoned` gives.
fn within(
    reader: &mut Reader,
    fields: &Fields,
    name: &str,
    kind: Kind,
    reckoned: impl Fn(&Measure) -> Option<f64>,
    taken: Taken,
) -> Option<f64> {
    let measure = read_measure(reader, fields, name, kind)?;
    let value = reckoned(&measure.value)?;
    if taken.contains(value) {
        return Some(value);
    }
    impossible(reader, &measure.span, name, taken);
    None
}

pub(super) fn impossible(reader: &mut Reader, span: &std::ops::Range<usize>, name: &str, taken: Taken) {
    let message = format!("no kitchen has such a figure for “{name}”: {} is taken", taken.in_words());
    reader.report(&fault::KITCHEN_IMPOSSIBLE, span.clone(), message, TAKEN);
}

/// A temperature under a key.
fn temperature(reader: &mut Reader, fields: &Fields, name: &str, taken: Taken) -> Option<Temperature> {
    within(reader, fields, name, Kind::Temperature, |m| Some(m.temperature()?.to.as_celsius()), taken).map(Temperature::celsius)
}

/// A range of temperatures under a key; a single one is both ends.
fn temperatures(reader: &mut Reader, fields: &Fields, name: &str, taken: Taken) -> Option<Between<Temperature>> {
    let measure = read_measure(reader, fields, name, Kind::Temperature)?;
    let found = measure.value.temperature()?;
    if taken.contains(found.from.as_celsius()) && taken.contains(found.to.as_celsius()) {
        return Some(found);
    }
    impossible(reader, &measure.span, name, taken);
    None
}

/// A table of names and temperatures, as written.
fn named(reader: &mut Reader, table: &DeTable, taken: Taken) -> Vec<(String, Temperature)> {
    let mut entries = Vec::new();
    for (name, value) in in_written_order(table) {
        let read = figure(value).and_then(|text| text.value.parse::<Measure>().ok()?.temperature()).map(|t| t.to);
        match read {
            Some(read) if taken.contains(read.as_celsius()) => entries.push((name.value.to_owned(), read)),
            Some(_) => impossible(reader, &value.span(), name.value, taken),
            None => reader.report(
                &fault::WRONG_QUANTITY,
                value.span(),
                format!("what “{}” stands for is no temperature", name.value),
                "write it with its unit: \"14 °C\"",
            ),
        }
    }
    entries
}
