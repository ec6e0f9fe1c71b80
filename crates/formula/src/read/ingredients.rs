//! A file of ingredients: the author's own, or one of the built-in table.

use super::draft::IngredientDraft;
use super::fields::{Fields, Reader, figure, in_written_order};
use super::formula::read_mass;
use super::stage::read_word;
use super::words::{Group, Leaven};
use super::{At, keys, toml_text};
use crate::ingredient::{Composition, Figure, Pictured};
use crate::source::Source;
use crate::{Checked, fault};
use quantity::{Density, Fraction, Measure};
use std::ops::Range;
use toml::de::{DeTable, DeValue};

/// Reads a file of ingredients.
#[must_use]
pub fn read_ingredients(source: &Source) -> Checked<Vec<IngredientDraft>> {
    let mut found = Vec::new();
    let table = toml_text::parse(&source.file, &source.text, &mut found);
    let mut reader = Reader { file: &source.file, found: &mut found, unread: Vec::new(), quiets: Vec::new() };
    let mut ingredients = Vec::new();
    for (name, value) in in_written_order(&table) {
        match value.get_ref() {
            DeValue::Table(table) => ingredients.push(read_ingredient(&mut reader, &name, table)),
            _ if value.span().is_empty() => {}
            _ => {
                let message = format!("“{}” is no ingredient", name.value);
                reader.report(&fault::WRONG_KIND, name.span, message, "an ingredient is a table: [mill-white], then its figures");
            }
        }
    }
    Checked { value: ingredients, diagnostics: found }
}

fn read_ingredient(reader: &mut Reader, name: &At<&str>, table: &DeTable) -> IngredientDraft {
    let fields = Fields::open(reader, table, name.span.clone(), &keys::INGREDIENT);
    let owned = |text: Option<At<&str>>| text.map(|text| text.value.to_owned());
    let texts = |texts: Vec<At<String>>| -> Vec<String> { texts.into_iter().map(|text| text.value).collect() };
    let allergens = texts(fields.texts(reader, "allergens"));
    let states_allergens = table.contains_key("allergens");
    IngredientDraft {
        name: At::new(name.value.to_owned(), name.span.clone()),
        title: owned(fields.text(reader, "title")),
        called: owned(fields.text(reader, "called")),
        compound: fields.truth(reader, "compound").map(|truth| truth.value),
        declared: owned(fields.text(reader, "declared")),
        also: texts(fields.texts(reader, "also")),
        like: fields.text(reader, "like").map(|like| At::new(like.value.to_owned(), like.span)),
        made_of: fields.table(reader, "made-of").map(|(table, _)| read_shares(reader, table)).unwrap_or_default(),
        group: read_word(reader, &fields, "group", Group::WORDS, Group::named),
        counts_as_flour: fields.truth(reader, "counts-as-flour").map(|truth| truth.value),
        leaven: read_word(reader, &fields, "leaven", Leaven::WORDS, Leaven::named),
        composition: fields
            .table(reader, "per-100-g")
            .map(|(table, span)| read_composition(reader, table, span))
            .unwrap_or_default(),
        density: fields.table(reader, "density").and_then(|(table, span)| read_density(reader, table, span)),
        piece: fields.table(reader, "piece").and_then(|(table, span)| read_piece(reader, table, span)),
        edible: read_number(reader, &fields, "edible").map(Fraction::ratio),
        allergens: states_allergens.then_some(allergens),
        added_sugar: fields.truth(reader, "added-sugar").map(|truth| truth.value),
        heat_treated: fields.truth(reader, "heat-treated").map(|truth| truth.value),
        whole_nut: fields.truth(reader, "whole-nut").map(|truth| truth.value),
        carbohydrate_basis: owned(fields.text(reader, "carbohydrate-basis")),
        sum_note: owned(fields.text(reader, "sum-note")),
        source: fields.source(reader, "source"),
        notes: owned(fields.text(reader, "notes")),
    }
}

/// A plain number under a key, zero or above.
fn read_number(reader: &mut Reader, fields: &Fields, name: &str) -> Option<f64> {
    let text = fields.figure(reader, name)?;
    number(reader, &text)
}

fn number(reader: &mut Reader, text: &At<String>) -> Option<f64> {
    let value = text.value.replace(',', ".").parse::<f64>().ok();
    match value {
        Some(value) if value.is_finite() && value >= 0.0 => Some(value),
        Some(value) if value < 0.0 => {
            reader.report_plainly(&fault::AMOUNT_NEGATIVE, text.span.clone(), format!("“{}” is negative", text.value));
            None
        }
        Some(_) => {
            reader.report_plainly(&fault::AMOUNT_NOT_FINITE, text.span.clone(), format!("“{}” is no finite number", text.value));
            None
        }
        None => {
            let message = format!("“{}” is no number", text.value);
            reader.report(&fault::NOT_AN_AMOUNT, text.span.clone(), message, "write the number alone, without a unit");
            None
        }
    }
}

/// Analysed figures of published tables add up to as much as 104 g; what is above 105 g is a slip.
const MOST_SUM: f64 = 105.0;

fn read_composition(reader: &mut Reader, table: &DeTable, span: Range<usize>) -> Composition {
    let mut composition = Composition::default();
    for (name, value) in in_written_order(table) {
        let Some(known) = Figure::named(name.value).map(Some).or_else(|| (name.value == "salt").then_some(None)) else {
            let names: Vec<&str> = keys::composition().collect();
            let message = format!("“{}” is no figure of a composition", name.value);
            reader.report_unknown(&fault::UNKNOWN_KEY, name, message, &names);
            continue;
        };
        let Some(text) = figure(value) else {
            let message = format!("“{}” is no number", name.value);
            reader.report(&fault::WRONG_KIND, value.span(), message, "it should be a number of gram in 100 g");
            continue;
        };
        let Some(amount) = number(reader, &text) else { continue };
        match known {
            Some(known) => composition.set(known, amount),
            // A label's salt is sodium times 2.5 by Regulation (EU) 1169/2011, Annex I.
            None => composition.set(Figure::Sodium, amount / 2.5 * 1000.0),
        }
    }
    let sum = composition.sum();
    if sum > MOST_SUM {
        let message = format!("the figures add up to {sum:.1} g in 100 g");
        reader.report(
            &fault::COMPOSITION_OVER_WHOLE,
            span,
            message,
            "fibre is part of carbohydrate here; check the bag's figures",
        );
    }
    composition
}

fn read_density(reader: &mut Reader, table: &DeTable, span: Range<usize>) -> Option<(Density, String)> {
    let fields = Fields::open(reader, table, span, &keys::DENSITY);
    let value = read_number(reader, &fields, "grams-per-ml")?;
    let source = fields.text(reader, "source").map_or("the author", |source| source.value);
    Some((Density::grams_per_millilitre(value), source.to_owned()))
}

fn read_piece(reader: &mut Reader, table: &DeTable, span: Range<usize>) -> Option<Pictured> {
    let fields = Fields::open(reader, table, span, &keys::PIECE);
    let weighs = read_mass(reader, &fields, "weighs")?.value;
    Some(Pictured { weighs, of: fields.text(reader, "of").map(|of| of.value.to_owned()).unwrap_or_default() })
}

fn read_shares(reader: &mut Reader, table: &DeTable) -> Vec<(At<String>, Fraction)> {
    let mut shares = Vec::new();
    for (name, value) in in_written_order(table) {
        let share = figure(value).and_then(|text| text.value.parse::<Measure>().ok()?.share(Default::default()));
        match share {
            Some(share) => shares.push((At::new(name.value.to_owned(), name.span), share.to)),
            None => reader.report(
                &fault::WRONG_QUANTITY,
                value.span(),
                format!("the share of “{}” is no percentage", name.value),
                "write its share of the whole: water = \"50 %\"",
            ),
        }
    }
    shares
}
