//! A trial: what was seen when a formula was baked. What was not seen is missing, never nought.

mod beside;
mod cook;
mod step;

pub use beside::{Correction, PhotographSeen};
pub use cook::CookSeen;
pub use step::StepSeen;

use super::amount::measure;
use super::course::read_course;
use super::fields::{Fields, Reader, figure, in_written_order};
use super::formula::{read_mass, read_measure, stem};
use super::stage::read_word;
use super::words::Action;
use super::{At, keys, toml_text};
use crate::source::{MOST_LINES, Source};
use crate::{Checked, fault};
use beside::{read_corrections, read_ph, read_photographs};
use cook::read_cook;
use quantity::{Kind, Length, Mass, SpoonSystem, Temperature, TimeSpan, Volume};
use std::ops::Range;
use std::sync::Arc;
use toml::de::DeTable;
use toml::value::Date;

/// What was seen when a formula was baked.
#[derive(Clone, Debug)]
pub struct Trial {
    /// The file it stands in.
    pub file: Arc<str>,
    /// The file's name, by which the book calls it.
    pub name: String,
    /// What it is called.
    pub title: String,
    /// The formula that was baked.
    pub formula: At<String>,
    /// Which text of it, where that is told.
    pub revision: Option<String>,
    /// The kitchen, where it is not the book's own.
    pub kitchen: Option<At<String>>,
    /// The day on which it was begun.
    pub date: Option<Date>,
    /// What else was seen.
    pub notes: Vec<String>,
    /// Why nothing is to be learnt from it.
    pub left_out: Option<String>,
    /// Stages as they were mixed.
    pub mixes: Vec<MixSeen>,
    /// Steps in which something rose.
    pub rises: Vec<RiseSeen>,
    /// Batches that were cooked.
    pub cooks: Vec<CookSeen>,
    /// Photographs that were taken.
    pub photographs: Vec<PhotographSeen>,
    /// Figures that were put right, with what they were.
    pub corrections: Vec<Correction>,
    /// The numbers of entries that came from elsewhere, so that none is taken twice.
    pub received: Vec<String>,
}

/// The stage that a record is about.
#[derive(Clone, Debug)]
pub struct OfStage {
    /// Its component, where that is told.
    pub component: Option<At<String>>,
    /// The stage.
    pub stage: At<String>,
}

/// A stage as it was mixed.
#[derive(Clone, Debug)]
pub struct MixSeen {
    /// The stage.
    pub of: OfStage,
    /// How warm it came from the bowl.
    pub temperature: Option<Temperature>,
    /// Its pH, from the bowl.
    pub ph: Option<f64>,
    /// Lines that were weighed otherwise, or went in otherwise warm.
    pub lines: Vec<WeighedSeen>,
}

/// A line as it was weighed.
#[derive(Clone, Debug)]
pub struct WeighedSeen {
    /// The line's name in the formula.
    pub name: At<String>,
    /// How much was weighed.
    pub mass: Option<Mass>,
    /// How warm it went in.
    pub temperature: Option<Temperature>,
}

/// A step in which something rose.
#[derive(Clone, Debug)]
pub struct RiseSeen {
    /// The stage.
    pub of: OfStage,
    /// Which waiting step.
    pub step: Option<StepSeen>,
    /// The air where it stood.
    pub room: Option<Temperature>,
    /// How long the step took.
    pub lasted: Option<TimeSpan>,
    /// When it had twice its volume.
    pub doubled_after: Option<TimeSpan>,
    /// When it was judged ripe.
    pub ripe_after: Option<TimeSpan>,
    /// What a jar and a thermometer showed, in the order of time.
    pub readings: Vec<Reading>,
}

/// A reading of a rise.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Reading {
    /// When, from the step's beginning.
    pub after: TimeSpan,
    /// How high in a straight jar.
    pub height: Option<Length>,
    /// How much room it took.
    pub volume: Option<Volume>,
    /// How warm.
    pub temperature: Option<Temperature>,
    /// How sour.
    pub ph: Option<f64>,
}

impl RiseSeen {
    /// How far it had risen at each reading, against the first one; empty where nothing was read at the beginning.
    #[must_use]
    pub fn risen(&self) -> Vec<(TimeSpan, f64)> {
        let by = |figure: &dyn Fn(&Reading) -> Option<f64>| {
            let first = self.readings.iter().find(|reading| reading.after <= TimeSpan::ZERO).and_then(figure);
            let share = |reading: &Reading| Some((reading.after, figure(reading)? / first?));
            self.readings.iter().filter_map(share).collect::<Vec<_>>()
        };
        let heights = by(&|reading| reading.height.map(Length::as_millimetres));
        if heights.is_empty() { by(&|reading| reading.volume.map(Volume::as_millilitres)) } else { heights }
    }
}

/// Reads a trial; `files` gives the text of a file that lies beside it.
#[must_use]
pub fn read_trial<'s>(source: &Source, files: &dyn Fn(&str) -> Option<&'s Source>) -> Checked<Trial> {
    let mut found = Vec::new();
    let table = toml_text::parse(&source.file, &source.text, &mut found);
    let mut trial = Trial {
        file: source.file.clone(),
        name: stem(&source.file).to_owned(),
        title: String::new(),
        formula: At::new(String::new(), source.beginning()),
        revision: None,
        kitchen: None,
        date: None,
        notes: Vec::new(),
        left_out: None,
        mixes: Vec::new(),
        rises: Vec::new(),
        cooks: Vec::new(),
        photographs: Vec::new(),
        corrections: Vec::new(),
        received: Vec::new(),
    };
    if found.iter().any(|found| found.code == fault::NESTED_TOO_DEEP.code) {
        return Checked { value: trial, diagnostics: found };
    }
    let mut reader = Reader { file: &source.file, found: &mut found, unread: Vec::new(), quiets: Vec::new() };
    let fields = Fields::open(&mut reader, &table, source.beginning(), &keys::TRIAL);
    let mut text = |name: &str| fields.text(&mut reader, name).map(|text| At::new(text.value.to_owned(), text.span));
    trial.title = text("title").map(|title| title.value).unwrap_or_default();
    trial.formula = text("formula").unwrap_or(trial.formula);
    trial.revision = text("revision").map(|revision| revision.value);
    trial.kitchen = text("kitchen");
    trial.left_out = text("left-out").map(|why| why.value);
    trial.date = fields.date(&mut reader, "date").map(|date| date.value);
    trial.notes = fields.texts(&mut reader, "notes").into_iter().map(|note| note.value).collect();
    for (table, span) in fields.tables(&mut reader, "mix") {
        trial.mixes.push(read_mix(&mut reader, table, span));
    }
    trial.photographs = read_photographs(&mut reader, &fields);
    trial.corrections = read_corrections(&mut reader, &fields);
    trial.received = fields.texts(&mut reader, "received").into_iter().map(|one| one.value).collect();
    let mut courses = Vec::new();
    for (table, span) in fields.tables(&mut reader, "rise") {
        let (rise, course) = read_rise(&mut reader, table, span, files);
        trial.rises.push(rise);
        courses.extend(course);
    }
    for (table, span) in fields.tables(&mut reader, "cook") {
        trial.cooks.push(read_cook(&mut reader, table, span));
    }
    found.extend(courses);
    Checked { value: trial, diagnostics: found }
}

fn of_stage(reader: &mut Reader, fields: &Fields) -> OfStage {
    let mut text = |name: &str| fields.text(reader, name).map(|text| At::new(text.value.to_owned(), text.span));
    let component = text("component");
    OfStage { component, stage: text("stage").unwrap_or_else(|| At::new(String::new(), fields.span())) }
}

fn read_mix(reader: &mut Reader, table: &DeTable, span: Range<usize>) -> MixSeen {
    let fields = Fields::open(reader, table, span, &keys::MIX_SEEN);
    let mut lines = Vec::new();
    if let Some((table, _)) = fields.table(reader, "ingredients") {
        for (name, value) in in_written_order(table) {
            let name = At::new(name.value.to_owned(), name.span);
            if let Some(own) = value.get_ref().as_table() {
                let own = Fields::open(reader, own, value.span(), &keys::WEIGHED);
                let mass = read_mass(reader, &own, "amount").map(|mass| mass.value);
                lines.push(WeighedSeen { name, mass, temperature: read_temperature(reader, &own, "temperature") });
            } else if let Some(text) = figure(value) {
                let mass = measure(reader, &At::new(&text.value, text.span), &[Kind::Mass]);
                let mass = mass.and_then(|mass| mass.mass(SpoonSystem::Metric)).map(|mass| mass.to);
                lines.push(WeighedSeen { name, mass, temperature: None });
            } else {
                let message = format!("“{}” is neither a weight nor a table here", name.value);
                reader.report(&fault::WRONG_KIND, value.span(), message, "write what the scale showed: water = \"352 g\"");
            }
        }
    }
    let temperature = read_temperature(reader, &fields, "temperature");
    MixSeen { of: of_stage(reader, &fields), temperature, ph: read_ph(reader, &fields), lines }
}

fn read_rise<'s>(
    reader: &mut Reader,
    table: &DeTable,
    span: Range<usize>,
    files: &dyn Fn(&str) -> Option<&'s Source>,
) -> (RiseSeen, Vec<crate::Diagnostic>) {
    let fields = Fields::open(reader, table, span, &keys::RISE_SEEN);
    let mut found = Vec::new();
    let mut readings = Vec::new();
    for (table, span) in fields.tables(reader, "reading") {
        readings.extend(read_reading(reader, table, span));
    }
    if let Some(course) = fields.text(reader, "course") {
        match files(course.value) {
            Some(source) => {
                let read = read_course(source);
                readings.extend(read.value);
                found.extend(read.diagnostics);
            }
            None => reader.report(
                &fault::COURSE_MISSING,
                course.span.clone(),
                format!("there is no file “{}” beside this trial", course.value),
                "a course is a CSV file in the same folder, called by its name",
            ),
        }
    }
    if readings.len() > MOST_LINES {
        let message = format!("this rise has {} readings; it may have {MOST_LINES}", readings.len());
        reader.report(
            &fault::TOO_MANY_LINES,
            fields.span().start..fields.span().start,
            message,
            "one a minute is more than enough",
        );
        readings.clear();
    }
    readings.sort_by(|a, b| a.after.as_seconds().total_cmp(&b.after.as_seconds()));
    let rise = RiseSeen {
        of: of_stage(reader, &fields),
        step: read_word(reader, &fields, "step", Action::WORDS, StepSeen::named),
        room: read_temperature(reader, &fields, "room"),
        lasted: read_time(reader, &fields, "lasted"),
        doubled_after: read_time(reader, &fields, "doubled-after"),
        ripe_after: read_time(reader, &fields, "ripe-after"),
        readings,
    };
    let is_measured = rise.readings.iter().any(|reading| reading.height.is_some() || reading.volume.is_some());
    if is_measured && rise.risen().is_empty() {
        reader.report(
            &fault::RISE_WITHOUT_BEGINNING,
            rise.of.stage.span.clone(),
            format!("how far “{}” rose cannot be told: nothing was read at the beginning", rise.of.stage.value),
            "add the reading at \"0 min\", as the dough was put in the jar; without it, heights and volumes teach nothing",
        );
    }
    (rise, found)
}

fn read_reading(reader: &mut Reader, table: &DeTable, span: Range<usize>) -> Option<Reading> {
    let fields = Fields::open(reader, table, span, &keys::READING);
    let temperature = read_temperature(reader, &fields, "temperature");
    let height = read_length(reader, &fields, "height");
    let volume = read_measure(reader, &fields, "volume", Kind::Volume);
    let size = volume.as_ref().and_then(|volume| volume.value.volume(SpoonSystem::Metric)).map(|volume| volume.to);
    let is_nothing = height.is_some_and(|height| height <= Length::ZERO) || size.is_some_and(|size| size <= Volume::ZERO);
    if is_nothing {
        takes_no_room(reader, fields.span());
    }
    let ph = read_ph(reader, &fields);
    let after = read_time(reader, &fields, "after")?;
    let seen = |reading: Reading| if is_nothing { Reading { height: None, volume: None, ..reading } } else { reading };
    Some(seen(Reading { after, height, volume: size, temperature, ph }))
}

/// A dough or a piece that takes no room is a slip of the pen.
pub fn takes_no_room(reader: &mut Reader, span: Range<usize>) {
    let message = "what takes no room at all was not measured".to_owned();
    reader.report(&fault::READING_OF_NOTHING, span, message, "leave out what was not measured: missing is missing");
}

fn read_temperature(reader: &mut Reader, fields: &Fields, name: &str) -> Option<Temperature> {
    let range = read_measure(reader, fields, name, Kind::Temperature)?.value.temperature()?;
    Some(Temperature::celsius(f64::midpoint(range.from.as_celsius(), range.to.as_celsius())))
}

fn read_time(reader: &mut Reader, fields: &Fields, name: &str) -> Option<TimeSpan> {
    let range = read_measure(reader, fields, name, Kind::Time)?.value.time(SpoonSystem::Metric)?;
    Some((range.from + range.to) * 0.5)
}

fn read_length(reader: &mut Reader, fields: &Fields, name: &str) -> Option<Length> {
    let range = read_measure(reader, fields, name, Kind::Length)?.value.length(SpoonSystem::Metric)?;
    Some((range.from + range.to) * 0.5)
}
