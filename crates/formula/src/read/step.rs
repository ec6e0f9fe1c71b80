//! A step of the method.

use super::draft::StepDraft;
use super::fields::{Fields, Reader};
use super::formula::{read_count, read_measure};
use super::stage::read_word;
use super::words::{Action, Attention, Condition};
use super::{At, keys};
use crate::source::Source;
use quantity::{Between, Kind, SpoonSystem, TimeSpan};
use std::ops::Range;
use toml::de::DeTable;

/// Reads a step; one without a sentence is left out.
pub fn read_step(reader: &mut Reader, source: &Source, table: &DeTable, span: Range<usize>) -> Option<StepDraft> {
    let fields = Fields::open(reader, table, span, &keys::STEP);
    let action = read_word(reader, &fields, "action", Action::WORDS, Action::named).unwrap_or(Action::Mix);
    let time = read_time(reader, &fields, "time");
    let side_time = read_time(reader, &fields, "side-time");
    let at_a_time = read_count(reader, &fields, "at-a-time").map(|count| count.value);
    let decks = read_count(reader, &fields, "decks").map(|count| count.value);
    let until = fields.text(reader, "until").map(|text| Condition::read(text.value));
    let temperature = read_measure(reader, &fields, "temperature", Kind::Temperature).and_then(|m| m.value.temperature());
    let attention = read_word(reader, &fields, "attention", Attention::WORDS, Attention::named).unwrap_or(Attention::Active);
    let equipment = fields.texts(reader, "equipment").into_iter().map(|text| text.value).collect();
    let text = fields.text(reader, "text")?;
    let letters = letters_begin(source, &text);
    let text = At::new(text.value.to_owned(), text.span);
    Some(StepDraft { action, text, letters, time, side_time, at_a_time, decks, until, temperature, attention, equipment })
}

fn read_time(reader: &mut Reader, fields: &Fields, name: &str) -> Option<Between<TimeSpan>> {
    read_measure(reader, fields, name, Kind::Time)?.value.time(SpoonSystem::Metric)
}

/// Where a text's letters begin in the file, if it holds no escapes that would shift them.
fn letters_begin(source: &Source, text: &At<&str>) -> Option<usize> {
    let written = source.text.get(text.span.clone())?;
    let offset = written.find(text.value)?;
    Some(text.span.start + offset)
}
