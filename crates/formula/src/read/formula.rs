//! A formula file: its head, its components and their yields.

use super::amount::measure;
use super::draft::{ComponentDraft, Draft, YieldDraft};
use super::fields::{Fields, Reader};
use super::head::{Head, read_head};
use super::keys;
use super::stage::read_stage;
use super::{At, toml_text};
use crate::source::{MOST_LINES, MOST_STAGES, Source};
use crate::{Checked, fault};
use quantity::{Count, Fraction, Kind, Length, Mass, Measure, SpoonSystem, Volume, print};
use std::ops::Range;
use toml::de::DeTable;

/// Reads a formula; what cannot be read is reported and left out.
#[must_use]
pub fn read_formula(source: &Source) -> Checked<Draft> {
    let mut found = Vec::new();
    let table = toml_text::parse(&source.file, &source.text, &mut found);
    let unreadable = found.iter().any(|d| d.code == fault::NESTED_TOO_DEEP.code);
    let unread = found.iter().map(|found| found.place.file.to_string()).collect();
    let mut reader = Reader { file: &source.file, found: &mut found, unread, quiets: Vec::new() };
    let value = if unreadable { empty(source) } else { read(&mut reader, source, &table) };
    Checked { value, diagnostics: found }
}

fn empty(source: &Source) -> Draft {
    Draft {
        file: source.file.clone(),
        name: stem(&source.file).to_owned(),
        head: Head::untitled(source),
        components: Vec::new(),
        quiets: Vec::new(),
        unread: Vec::new(),
    }
}

/// The file's name without folder and ending.
pub fn stem(file: &str) -> &str {
    let name = file.rsplit('/').next().unwrap_or(file);
    name.strip_suffix(".toml").unwrap_or(name)
}

fn read(reader: &mut Reader, source: &Source, table: &DeTable) -> Draft {
    let fields = Fields::open(reader, table, source.beginning(), &keys::FORMULA);
    let mut draft = empty(source);
    draft.head = read_head(reader, source, &fields);
    reader.silence(&fields, &(0..usize::MAX));
    for (table, span) in reaching_on(fields.tables(reader, "component"), usize::MAX) {
        draft.components.push(read_component(reader, source, table, span));
    }
    draft.quiets = std::mem::take(&mut reader.quiets);
    draft.unread = std::mem::take(&mut reader.unread);
    check_size(reader, &mut draft);
    draft
}

/// Tables each with the stretch from its own beginning to the next one's, the last to that end.
pub fn reaching_on<T>(tables: Vec<(T, Range<usize>)>, end: usize) -> Vec<(T, Range<usize>)> {
    let ends: Vec<usize> = tables.iter().skip(1).map(|(_, span)| span.start).chain([end]).collect();
    tables.into_iter().zip(ends).map(|((table, span), end)| (table, span.start..end.max(span.end))).collect()
}

/// Reports a formula with too many parts, and refuses to go on with it.
fn check_size(reader: &mut Reader, draft: &mut Draft) {
    let stages = || draft.components.iter().flat_map(|component| &component.stages);
    let counts = [
        ("components", draft.components.len(), MOST_STAGES),
        ("stages", stages().count(), MOST_STAGES),
        ("ingredient lines", stages().map(|stage| stage.lines.len()).sum(), MOST_LINES),
        ("steps", stages().map(|stage| stage.steps.len()).sum(), MOST_LINES),
    ];
    if let Some((what, count, most)) = counts.into_iter().find(|(_, count, most)| count > most) {
        let message = format!("the formula has {count} {what}; it may have {most}");
        reader.report(&fault::TOO_MANY_LINES, 0..0, message, "split it into several formulas");
        draft.components.clear();
    }
}

fn read_component(reader: &mut Reader, source: &Source, table: &DeTable, span: Range<usize>) -> ComponentDraft {
    let fields = Fields::open(reader, table, span.clone(), &keys::COMPONENT);
    let name = read_name(reader, &fields);
    let title = read_title(reader, &fields, &name);
    reader.silence(&fields, &span);
    let yields = fields.table(reader, "yield").map(|(table, span)| read_yield(reader, table, span));
    let stages = reaching_on(fields.tables(reader, "stage"), span.end);
    let stages = stages.into_iter().map(|(table, span)| read_stage(reader, source, table, span)).collect();
    ComponentDraft { name, title, yields, stages }
}

/// Whether a name is made of small letters, digits and hyphens alone, so that it can be part of an address.
pub fn is_plain(name: &str) -> bool {
    !name.is_empty() && name.chars().all(|c| c.is_lowercase() || c.is_ascii_digit() || c == '-')
}

/// A name by which other parts of the text call this one.
pub fn read_name(reader: &mut Reader, fields: &Fields) -> At<String> {
    let Some(name) = fields.text(reader, "name") else { return At::new(String::new(), fields.span()) };
    if !is_plain(name.value) {
        let message = format!("“{}” cannot be a name", name.value);
        reader.report(
            &fault::NAME_NOT_PLAIN,
            name.span.clone(),
            message,
            "a name is made of small letters, digits and hyphens; what readers see goes into title",
        );
    }
    At::new(name.value.to_owned(), name.span)
}

/// The title, or the name with its hyphens opened and a capital.
pub fn read_title(reader: &mut Reader, fields: &Fields, name: &At<String>) -> String {
    if let Some(title) = fields.text(reader, "title") {
        return title.value.to_owned();
    }
    print::capital(&name.value.replace('-', " "))
}

fn read_yield(reader: &mut Reader, table: &DeTable, span: Range<usize>) -> YieldDraft {
    let fields = Fields::open(reader, table, span.clone(), &keys::YIELD);
    let piece: Vec<String> = fields.texts(reader, "piece").into_iter().map(|word| word.value).collect();
    YieldDraft {
        span,
        pieces: read_count(reader, &fields, "pieces"),
        piece: piece.first().map(|one| (one.clone(), piece.get(1).cloned().unwrap_or_else(|| plural(one)))),
        scaling_weight: read_mass(reader, &fields, "scaling-weight"),
        total: read_mass(reader, &fields, "total"),
        thickness: read_measure(reader, &fields, "thickness", Kind::Length)
            .and_then(|m| m.value.length(SpoonSystem::Metric))
            .map(|l| l.to),
        make_up_loss: read_loss(reader, &fields, "make-up-loss"),
        bake_loss: read_loss(reader, &fields, "bake-loss"),
        serves: read_count(reader, &fields, "serves").map(|count| count.value),
        tin: fields.text(reader, "tin").and_then(|text| read_tin(reader, &text)),
        tins: read_count(reader, &fields, "tins").map(|count| count.value),
    }
}

/// The regular English plural.
fn plural(one: &str) -> String {
    let hisses = ["s", "x", "z", "ch", "sh"].iter().any(|end| one.ends_with(end));
    format!("{one}{}", if hisses { "es" } else { "s" })
}

/// A figure of one kind under a key.
pub fn read_measure(reader: &mut Reader, fields: &Fields, name: &str, kind: Kind) -> Option<At<Measure>> {
    let text = fields.figure(reader, name)?;
    let value = measure(reader, &At::new(&text.value, text.span.clone()), &[kind]);
    if value.is_none() {
        reader.unread.push(name.to_owned());
    }
    Some(At::new(value?, text.span))
}

/// A number of pieces under a key, at least one of them.
pub fn read_count(reader: &mut Reader, fields: &Fields, name: &str) -> Option<At<Count>> {
    let count = read_measure(reader, fields, name, Kind::Count)?;
    let value = count.value.count(SpoonSystem::Metric)?.to;
    if value > Count::ZERO {
        return Some(At::new(value, count.span));
    }
    reader.report(&fault::YIELD_IMPOSSIBLE, count.span, format!("“{name}” is none"), "at least one is needed");
    reader.unread.push(name.to_owned());
    None
}

/// A weight under a key.
pub fn read_mass(reader: &mut Reader, fields: &Fields, name: &str) -> Option<At<Mass>> {
    let mass = read_measure(reader, fields, name, Kind::Mass)?;
    Some(At::new(mass.value.mass(SpoonSystem::Metric)?.to, mass.span))
}

/// A share that is lost, which must leave something.
pub fn read_loss(reader: &mut Reader, fields: &Fields, name: &str) -> Option<At<Fraction>> {
    let share = read_measure(reader, fields, name, Kind::Share)?;
    let value = share.value.share(SpoonSystem::Metric)?.to;
    if value < Fraction::WHOLE {
        return Some(At::new(value, share.span));
    }
    let message = format!("“{name}” is {}, which leaves nothing", quantity::print::percent(value, 1));
    reader.report(&fault::LOSS_OVER_WHOLE, share.span, message, "a loss is a share of what went in: below 100 %");
    None
}

/// "23 x 13 x 7 cm", "round 20 x 5 cm", "2 l".
fn read_tin(reader: &mut Reader, text: &At<&str>) -> Option<Volume> {
    let volume = tin_volume(text.value);
    if volume.is_none() {
        let message = format!("“{}” is no tin", text.value);
        reader.report(
            &fault::NOT_AN_AMOUNT,
            text.span.clone(),
            message,
            "write \"23 x 13 x 7 cm\", \"round 20 x 5 cm\" or \"2 l\"",
        );
    }
    volume
}

/// The volume of a tin written by its sides, its diameter and height, or its content.
#[must_use]
pub fn tin_volume(text: &str) -> Option<Volume> {
    if let Some(volume) = text.parse::<Measure>().ok().and_then(|m| m.volume(SpoonSystem::Metric)) {
        return Some(volume.to);
    }
    let (round, sides) = text.strip_prefix("round ").map_or((false, text), |rest| (true, rest));
    let sides: Vec<&str> = sides.split(['x', '×']).map(str::trim).collect();
    let last: Measure = sides.last()?.parse().ok()?;
    let mut lengths = Vec::new();
    for side in &sides {
        let value = side.parse::<f64>().map_or_else(|_| side.parse::<Measure>().ok(), |v| Some(Measure::new(v, last.unit)))?;
        lengths.push(value.length(SpoonSystem::Metric)?.to);
    }
    let product = |sides: &[Length]| Volume::millilitres(sides.iter().map(|side| side.as_centimetres()).product());
    match (round, &lengths[..]) {
        (false, [_, _, _]) => Some(product(&lengths)),
        (true, [across, height]) => Some(product(&[*across, *across, *height]) * (std::f64::consts::PI / 4.0)),
        _ => None,
    }
}
