//! What a book's ingredients, energy and work cost.

use super::amount::measure;
use super::fields::{Fields, Reader};
use super::formula::{read_loss, read_measure};
use super::{At, keys, toml_text};
use crate::source::Source;
use crate::{Checked, fault};
use quantity::{Fraction, Kind, Measure, Money, SpoonSystem};
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
    /// What a piece is packed in.
    pub packaging: Option<Money>,
    /// What is wanted of a price.
    pub wanted: Wanted,
}

/// What is wanted of a price.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Wanted {
    /// The share of the price before tax that ingredients may take.
    pub food_cost: Option<Fraction>,
    /// The share of the price before tax that is left when all is paid.
    pub margin: Option<Fraction>,
    /// The share of the price before tax that a stall, a shop or a card takes.
    pub fees: Fraction,
    /// The share of what is made that is not sold.
    pub unsold: Fraction,
    /// The tax that comes on top of the price.
    pub tax: Option<Fraction>,
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
    /// The part of it that is left after peel and trimming, where this pack differs from the table.
    pub edible: Option<Fraction>,
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
    prices.packaging = money(reader, &fields, "packaging");
    prices.wanted = wanted(reader, &fields);
    for (table, span) in fields.tables(reader, "price") {
        let fields = Fields::open(reader, table, span, &keys::PRICE);
        prices.packs.extend(pack(reader, &fields));
    }
    Checked { value: prices, diagnostics: found }
}

fn wanted(reader: &mut Reader, fields: &Fields) -> Wanted {
    let mut share = |name: &str| read_loss(reader, fields, name).map(|share| (share.value, share.span));
    let (food_cost, margin) = (share("food-cost"), share("margin"));
    let (fees, unsold) = (share("fees"), share("unsold"));
    let tax = share("tax").map(|(tax, _)| tax);
    if let Some((_, span)) = food_cost.as_ref().filter(|(food_cost, _)| *food_cost <= Fraction::ZERO) {
        let message = "a price of which ingredients take nothing has no end".to_owned();
        reader.report(&fault::NOT_AN_AMOUNT, span.clone(), message, "write the share that ingredients may take: \"30 %\"");
    }
    let of = |share: &Option<(Fraction, std::ops::Range<usize>)>| share.as_ref().map(|(share, _)| *share);
    let taken = of(&fees).unwrap_or_default();
    if let Some((_, span)) = margin.as_ref().filter(|(left, _)| *left + taken >= Fraction::WHOLE) {
        let message = "margin and fees together leave nothing to pay the costs from".to_owned();
        reader.report(&fault::LOSS_OVER_WHOLE, span.clone(), message, "both are shares of the price before tax: below 100 %");
    }
    Wanted {
        food_cost: of(&food_cost).filter(|share| *share > Fraction::ZERO),
        margin: of(&margin),
        fees: taken,
        unsold: of(&unsold).unwrap_or_default(),
        tax,
    }
}

fn pack(reader: &mut Reader, fields: &Fields) -> Option<Pack> {
    let of = fields.text(reader, "of").map(|text| At::new(text.value.to_owned(), text.span));
    let costs = money(reader, fields, "costs");
    let on = fields.date(reader, "on").map(|date| date.value);
    let from = fields.text(reader, "from").map(|text| text.value.to_owned());
    let edible = read_edible(reader, fields);
    let text = fields.figure(reader, "pack")?;
    let pack = measure(reader, &At::new(&text.value, text.span.clone()), &[Kind::Mass, Kind::Volume, Kind::Count])?;
    if pack.value.from <= 0.0 {
        reader.report(&fault::NOT_AN_AMOUNT, text.span, "a pack of nothing cannot be".to_owned(), "write pack = \"1.5 kg\"");
        return None;
    }
    Some(Pack { of: of?, pack: At::new(pack, text.span), costs: costs?, on, from, edible })
}

/// The part that is left after peel and trimming: more than nothing, at most all.
fn read_edible(reader: &mut Reader, fields: &Fields) -> Option<Fraction> {
    let share = read_measure(reader, fields, "edible", Kind::Share)?;
    let value = share.value.share(SpoonSystem::Metric)?.to;
    if value > Fraction::ZERO && value <= Fraction::WHOLE {
        return Some(value);
    }
    let message = format!("{} of a pack cannot be left after trimming", quantity::print::percent(value, 1));
    reader.report(&fault::NOT_AN_AMOUNT, share.span, message, "write what is left to use: \"75 %\"");
    None
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
