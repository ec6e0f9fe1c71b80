//! What a kitchen heats and holds with.

use super::super::fields::{Fields, Reader};
use super::super::formula::{read_mass, read_measure};
use super::super::keys;
use super::super::stage::read_word;
use super::super::words::{HeatsBy, Material};
use super::super::working::read_whole;
use super::{Kitchen, Taken, named, within};
use quantity::{Kind, Length, Mass, Measure, Power, SpoonSystem, Temperature, TemperatureDifference, TimeSpan, Unit, Volume};

/// What pans are heated on.
#[derive(Clone, Debug, PartialEq)]
pub struct Hob {
    /// How it heats.
    pub heats_by: Option<HeatsBy>,
    /// What its largest ring takes up.
    pub power: Option<Power>,
    /// How hot a pan's surface gets, by the mark of the knob.
    pub dial: Vec<(String, Temperature)>,
}

/// A pan.
#[derive(Clone, Debug, PartialEq)]
pub struct Pan {
    /// What it is called.
    pub title: String,
    /// How wide it is inside.
    pub across: Length,
}

/// An oven.
#[derive(Clone, Debug, PartialEq)]
pub struct Oven {
    /// Whether a fan moves its air.
    pub fan: bool,
    /// How hot it really is, by what it is set to; the coolest setting first.
    pub real: Vec<(Temperature, Temperature)>,
    /// How far it falls when it is opened and loaded.
    pub falls_by: Option<TemperatureDifference>,
    /// How long it takes to come back.
    pub recovers_in: Option<TimeSpan>,
    /// How many decks or shelves bake at once.
    pub decks: Option<u32>,
}

/// What fat is heated in.
#[derive(Clone, Debug, PartialEq)]
pub struct Fryer {
    /// How much fat it holds.
    pub holds: Option<Volume>,
    /// What it takes up.
    pub power: Option<Power>,
}

/// A bowl, pot or box.
#[derive(Clone, Debug, PartialEq)]
pub struct Vessel {
    /// What it is called.
    pub title: String,
    /// How much it holds, brim-full.
    pub holds: Volume,
    /// What it weighs empty.
    pub weighs: Option<Mass>,
    /// What it is made of.
    pub material: Option<Material>,
}

/// What kitchens heat with: from a candle's power to a bakery's.
const POWERS: Taken = Taken { from: 50.0, to: 50_000.0, unit: "W" };
const SURFACES: Taken = Taken { from: 20.0, to: 400.0, unit: "°C" };
const ACROSS: Taken = Taken { from: 40.0, to: 2000.0, unit: "mm" };
const FALLS: Taken = Taken { from: 0.0, to: 200.0, unit: "K" };
/// What vessels hold, and what a fridge or a proofer has room for.
pub const VOLUMES: Taken = Taken { from: 10.0, to: 1_000_000.0, unit: "ml" };

/// Reads what a kitchen heats and holds with.
pub fn read(reader: &mut Reader, fields: &Fields, kitchen: &mut Kitchen) {
    if let Some((table, span)) = fields.table(reader, "hob") {
        let fields = Fields::open(reader, table, span, &keys::HOB);
        kitchen.hob = Some(Hob {
            heats_by: read_word(reader, &fields, "heats-by", HeatsBy::WORDS, HeatsBy::named),
            power: power(reader, &fields),
            dial: fields.table(reader, "dial").map(|(table, _)| named(reader, table, SURFACES)).unwrap_or_default(),
        });
    }
    for (table, span) in fields.tables(reader, "pan") {
        let fields = Fields::open(reader, table, span, &keys::PAN);
        let title = title(reader, &fields, "pan");
        let across = |m: &Measure| Some(m.length(SpoonSystem::Metric)?.to.as_millimetres());
        if let Some(across) = within(reader, &fields, "across", Kind::Length, across, ACROSS) {
            kitchen.pans.push(Pan { title, across: Length::millimetres(across) });
        }
    }
    if let Some((table, span)) = fields.table(reader, "oven") {
        let fields = Fields::open(reader, table, span, &keys::OVEN);
        kitchen.oven = Some(oven(reader, &fields));
    }
    if let Some((table, span)) = fields.table(reader, "fryer") {
        let fields = Fields::open(reader, table, span, &keys::FRYER);
        kitchen.fryer = Some(Fryer { holds: volume(reader, &fields), power: power(reader, &fields) });
    }
    for (table, span) in fields.tables(reader, "vessel") {
        let fields = Fields::open(reader, table, span, &keys::VESSEL);
        let title = title(reader, &fields, "bowl");
        let weighs = read_mass(reader, &fields, "weighs").map(|mass| mass.value);
        let material = read_word(reader, &fields, "material", Material::WORDS, Material::named);
        if let Some(holds) = volume(reader, &fields) {
            kitchen.vessels.push(Vessel { title, holds, weighs, material });
        }
    }
    kitchen.fridge_room = volume_of(reader, fields, "fridge-room");
    kitchen.proofer_room = volume_of(reader, fields, "proofer-room");
}

fn oven(reader: &mut Reader, fields: &Fields) -> Oven {
    let real = fields.table(reader, "real").map(|(table, _)| named(reader, table, SURFACES)).unwrap_or_default();
    let set = |(set, real): (String, Temperature)| Some((set.parse::<Measure>().ok()?.temperature()?.to, real));
    let mut real: Vec<(Temperature, Temperature)> = real.into_iter().filter_map(set).collect();
    real.sort_by(|a, b| a.0.as_celsius().total_cmp(&b.0.as_celsius()));
    let falls = within(reader, fields, "falls-by", Kind::Temperature, difference, FALLS);
    let recovers = read_measure(reader, fields, "recovers-in", Kind::Time).and_then(|m| m.value.time(SpoonSystem::Metric));
    Oven {
        fan: fields.truth(reader, "fan").is_some_and(|fan| fan.value),
        real,
        falls_by: falls.map(TemperatureDifference::kelvins),
        recovers_in: recovers.map(|time| time.to),
        decks: read_whole(reader, fields, "decks"),
    }
}

/// A difference of temperature in kelvin: no scale's zero counts.
fn difference(measure: &Measure) -> Option<f64> {
    Some(measure.value.to * if measure.unit == Unit::Fahrenheit { 5.0 / 9.0 } else { 1.0 })
}

fn title(reader: &mut Reader, fields: &Fields, usual: &str) -> String {
    fields.text(reader, "title").map_or(usual, |title| title.value).to_owned()
}

fn power(reader: &mut Reader, fields: &Fields) -> Option<Power> {
    let watts = |m: &Measure| Some(m.power(SpoonSystem::Metric)?.to.as_watts());
    within(reader, fields, "power", Kind::Power, watts, POWERS).map(Power::watts)
}

fn volume(reader: &mut Reader, fields: &Fields) -> Option<Volume> {
    volume_of(reader, fields, "holds")
}

fn volume_of(reader: &mut Reader, fields: &Fields, name: &str) -> Option<Volume> {
    let millilitres = |m: &Measure| Some(m.volume(SpoonSystem::Metric)?.to.as_millilitres());
    within(reader, fields, name, Kind::Volume, millilitres, VOLUMES).map(Volume::millilitres)
}
