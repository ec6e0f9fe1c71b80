//! What a book's ingredients, energy and work cost.

use super::amount::measure;
use super::fields::{Fields, Reader};
use super::{At, keys, toml_text};
use crate::source::Source;
use crate::{Checked, fault};
use quantity::{Kind, Measure, Money};
use std::sync::Arc;
use toml::value::Date;

/// The prices of a book.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Prices {
    /// The file they stand in.
    pub file: Arc<str>,
    /// What packs cost, in written order.
    pub packs: Vec<Pack>,
    /// A kilowatt-hour of electricity.
    pub electricity: Option<Money>,
    /// A kilowatt-hour of gas.
    pub gas: Option<Money>,
    /// An hour of work.
    pub hour: Option<Money>,
}

/// What a pack of an ingredient costs.
#[derive(Clone, Debug, PartialEq)]
pub struct Pack {
    /// The ingredient.
    pub of: At<String>,
    /// How much is in it: a weight, a volume or a count.
    pub pack: At<Measure>,
    /// What it costs.
    pub costs: Money,
    /// On which day.
    pub on: Option<Date>,
    /// Where it is bought.
    pub from: Option<String>,
}

/// Reads `prices.toml`. What it calls by name is bound by the book.
#[must_use]
pub fn read_prices(source: &Source) -> Checked<Prices> {
    let mut found = Vec::new();
    let table = toml_text::parse(&source.file, &source.text, &mut found);
    let mut prices = Prices { file: Arc::clone(&source.file), ..Prices::default() };
    if found.iter().any(|found| found.code == fault::NESTED_TOO_DEEP.code) {
        return Checked { value: prices, diagnostics: found };
    }
    let mut reader = Reader { file: &source.file, found: &mut found, unread: Vec::new(), quiets: Vec::new() };
    let reader = &mut reader;
    let fields = Fields::open(reader, &table, source.beginning(), &keys::PRICES);
    prices.electricity = money(reader, &fields, "electricity");
    prices.gas = money(reader, &fields, "gas");
    prices.hour = money(reader, &fields, "hour");
    for (table, span) in fields.tables(reader, "price") {
        let fields = Fields::open(reader, table, span, &keys::PRICE);
        prices.packs.extend(pack(reader, &fields));
    }
    Checked { value: prices, diagnostics: found }
}

fn pack(reader: &mut Reader, fields: &Fields) -> Option<Pack> {
    let of = fields.text(reader, "of").map(|text| At::new(text.value.to_owned(), text.span));
    let costs = money(reader, fields, "costs");
    let on = fields.date(reader, "on").map(|date| date.value);
    let from = fields.text(reader, "from").map(|text| text.value.to_owned());
    let text = fields.figure(reader, "pack")?;
    let pack = measure(reader, &At::new(&text.value, text.span.clone()), &[Kind::Mass, Kind::Volume, Kind::Count])?;
    if pack.value.from <= 0.0 {
        reader.report(&fault::NOT_AN_AMOUNT, text.span, "a pack of nothing cannot be".to_owned(), "write pack = \"1.5 kg\"");
        return None;
    }
    Some(Pack { of: of?, pack: At::new(pack, text.span), costs: costs?, on, from })
}

/// An amount of money under a key.
fn money(reader: &mut Reader, fields: &Fields, name: &str) -> Option<Money> {
    let text = fields.text(reader, name)?;
    match text.value.parse::<Money>() {
        Ok(money) if !money.amount.is_sign_negative() => Some(money),
        Ok(_) => {
            let message = format!("“{}” is less than nothing", text.value);
            reader.report(&fault::NOT_MONEY, text.span, message, "write what is paid: costs = \"1.35 EUR\"");
            None
        }
        Err(why) => {
            reader.report(&fault::NOT_MONEY, text.span, why.to_string(), "the currency is the three letters of ISO 4217");
            None
        }
    }
}
