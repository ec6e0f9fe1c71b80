//! A stage and its ingredient lines.

use super::amount::{measure, part};
use super::draft::{LineDraft, StageDraft, StepDraft, Uses};
use super::fields::{Fields, Reader, figure, in_written_order};
use super::formula::{read_loss, read_mass, read_measure, read_name, read_title};
use super::step::read_step;
use super::words::{PercentOf, StageKind};
use super::{Amount, At, keys};
use crate::fault;
use crate::source::Source;
use quantity::{Fraction, Kind};
use std::ops::Range;
use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// Reads a stage.
pub fn read_stage(reader: &mut Reader, source: &Source, table: &DeTable, span: Range<usize>) -> StageDraft {
    let fields = Fields::open(reader, table, span.clone(), &keys::STAGE);
    reader.silence(&fields, &span);
    let name = read_name(reader, &fields);
    let title = read_title(reader, &fields, &name);
    let kind = read_word(reader, &fields, "kind", StageKind::WORDS, StageKind::named).unwrap_or(StageKind::Mixed);
    let percent_of =
        read_word(reader, &fields, "percent-of", PercentOf::WORDS, PercentOf::named).unwrap_or(PercentOf::StageFlour);
    let lines = fields.table(reader, "ingredients").map(|(table, _)| read_lines(reader, table)).unwrap_or_default();
    let steps = read_steps(reader, source, &fields);
    StageDraft {
        title,
        kind,
        percent_of,
        flour: read_mass(reader, &fields, "flour"),
        weight: read_mass(reader, &fields, "weight"),
        boil_off: read_loss(reader, &fields, "boil-off"),
        loss: read_loss(reader, &fields, "loss"),
        kept_back: read_mass(reader, &fields, "kept-back"),
        lines,
        steps,
        name,
    }
}

/// One of the fixed words under a key.
pub fn read_word<T>(
    reader: &mut Reader,
    fields: &Fields,
    name: &str,
    words: &[&str],
    named: impl Fn(&str) -> Option<T>,
) -> Option<T> {
    let word = fields.text(reader, name)?;
    let value = named(word.value);
    if value.is_none() {
        let message = format!("“{}” is no {name}", word.value);
        reader.report_unknown(&fault::UNKNOWN_WORD, word, message, words);
    }
    value
}

fn read_lines(reader: &mut Reader, table: &DeTable) -> Vec<LineDraft> {
    let mut lines = Vec::new();
    for (name, value) in in_written_order(table) {
        match read_line(reader, &name, value) {
            Some(line) => lines.push(line),
            None => reader.unread.push(name.value.to_owned()),
        }
    }
    lines
}

fn read_steps(reader: &mut Reader, source: &Source, fields: &Fields) -> Vec<StepDraft> {
    let mut steps = Vec::new();
    for (table, span) in fields.tables(reader, "step") {
        match read_step(reader, source, table, span) {
            Some(step) => steps.push(step),
            None => reader.unread.push("text".to_owned()),
        }
    }
    steps
}

fn read_line(reader: &mut Reader, name: &At<&str>, value: &Spanned<DeValue>) -> Option<LineDraft> {
    let name = At::new(name.value.to_owned(), name.span.clone());
    if value.span().is_empty() {
        return None;
    }
    if let Some(text) = figure(value) {
        let amount = read_amount(reader, &text)?;
        return Some(plain_line(name, amount));
    }
    let Some(table) = value.get_ref().as_table() else {
        let message = format!("the line “{}” has no amount", name.value);
        reader.report(&fault::AMOUNT_MISSING, value.span(), message, "write water = \"350 g\", or a table with an amount");
        return None;
    };
    let fields = Fields::open(reader, table, value.span(), &keys::LINE);
    reader.silence(&fields, &(name.span.start..value.span().end));
    let uses = read_uses(reader, &fields);
    let amount = read_line_amount(reader, &fields, &name)?;
    let owned = |text: Option<At<&str>>| text.map(|text| text.value.to_owned());
    Some(LineDraft {
        uses,
        amount,
        title: owned(fields.text(reader, "title")),
        note: owned(fields.text(reader, "note")),
        temperature: read_measure(reader, &fields, "temperature", Kind::Temperature).and_then(|m| m.value.temperature()),
        taken_out: read_taken_out(reader, &fields),
        after_scaling: fields.truth(reader, "after-scaling").is_some_and(|truth| truth.value),
        as_flour: fields.truth(reader, "as-flour").map(|truth| truth.value),
        name,
    })
}

/// A line that is only a name and an amount.
const fn plain_line(name: At<String>, amount: At<Amount>) -> LineDraft {
    LineDraft {
        name,
        uses: Uses::OwnName,
        amount,
        title: None,
        note: None,
        temperature: None,
        taken_out: Fraction::ZERO,
        after_scaling: false,
        as_flour: None,
    }
}

/// The share that is taken out again; here the whole may leave, as a bay leaf does.
fn read_taken_out(reader: &mut Reader, fields: &Fields) -> Fraction {
    let share = read_measure(reader, fields, "taken-out", Kind::Share);
    let Some((share, span)) = share.and_then(|m| Some((m.value.share(Default::default())?.to, m.span))) else {
        return Fraction::ZERO;
    };
    if share <= Fraction::WHOLE {
        return share;
    }
    let message = format!("“taken-out” is {}", quantity::print::percent(share, 1));
    reader.report(&fault::LOSS_OVER_WHOLE, span, message, "no more can be taken out than went in: at most 100 %");
    Fraction::WHOLE
}

fn read_amount(reader: &mut Reader, text: &At<String>) -> Option<At<Amount>> {
    let amount = Amount::read(reader, At::new(&text.value, text.span.clone()))?;
    Some(At::new(amount, text.span.clone()))
}

/// The amount of a line written as a table: `amount`, or `share` of what it names.
fn read_line_amount(reader: &mut Reader, fields: &Fields, name: &At<String>) -> Option<At<Amount>> {
    let amount = fields.figure(reader, "amount");
    let share = fields.figure(reader, "share");
    match (amount, share) {
        (Some(amount), None) => read_amount(reader, &amount),
        (None, Some(share)) => {
            let text = At::new(share.value.as_str(), share.span.clone());
            let value = part(text.value).or_else(|| {
                measure(reader, &text, &[Kind::Share]).and_then(|m| m.share(Default::default())).map(|range| range.to)
            })?;
            Some(At::new(Amount::Part(value), share.span))
        }
        (Some(_), Some(share)) => {
            let message = format!("the line “{}” has both an amount and a share", name.value);
            reader.report(&fault::TWO_BASES, share.span, message, "keep the one that is meant");
            None
        }
        (None, None) => {
            let message = format!("the line “{}” has no amount", name.value);
            reader.report(&fault::AMOUNT_MISSING, fields.span(), message, "say how much: amount = \"350 g\"");
            None
        }
    }
}

fn read_uses(reader: &mut Reader, fields: &Fields) -> Uses {
    let mut uses = Uses::OwnName;
    for key in ["ingredient", "stage", "component", "formula"] {
        let Some(text) = fields.text(reader, key) else { continue };
        if uses != Uses::OwnName {
            let message = format!("the line names a second thing with “{key}”");
            reader.report(&fault::TWO_BASES, text.span, message, "a line uses one thing: keep the one that is meant");
            continue;
        }
        let name = At::new(text.value.to_owned(), text.span);
        uses = match key {
            "ingredient" => Uses::Ingredient(name),
            "stage" => Uses::Stage(name),
            "component" => Uses::Component(name),
            _ => Uses::Formula(name),
        };
    }
    uses
}
