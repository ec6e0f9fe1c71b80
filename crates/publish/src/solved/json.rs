//! An answer for other programs: each figure with its unit, band and grounds, and the formula so changed.

use crate::exchanged;
use crate::outlook::known::origin;
use bench::target::{Amount, Figure, Solved};
use serde_json::{Value, json};

/// The answer as JSON.
#[must_use]
pub fn json(solved: &Solved) -> Value {
    json!({
        "target": solved.target,
        "figures": solved.figures.iter().map(figure).collect::<Vec<_>>(),
        "unmet": solved.unmet.iter().map(|one| json!({
            "aim": one.aim,
            "wanted": told(&one.wanted).0,
            "reached": told(&one.reached).0,
            "unit": told(&one.wanted).1,
            "why": one.why,
        })).collect::<Vec<_>>(),
        "to-mind": solved.minded,
        "grounds": solved.grounds,
        "changed": solved.changed.as_ref().map(exchanged::json),
    })
}

fn figure(figure: &Figure) -> Value {
    let (value, unit) = told(&figure.known.value);
    let band = figure.known.band.as_ref().map(|(low, high)| [told(low).0, told(high).0]);
    json!({ "what": figure.what, "value": value, "unit": unit, "band": band, "origin": origin(&figure.known.origin) })
}

fn told(amount: &Amount) -> (Value, String) {
    let (value, unit) = match *amount {
        Amount::Mass(mass) => (mass.as_grams(), "g"),
        Amount::Share(share) => (share.as_percent(), "%"),
        Amount::Temperature(warm) => (warm.as_celsius(), "°C"),
        Amount::Time(time) => (time.as_hours(), "h"),
        Amount::Clock(clock) => (clock.as_hours(), "h after midnight"),
        Amount::Volume(volume) => (volume.as_millilitres(), "ml"),
        Amount::Count(count) => (count.as_pieces(), "pieces"),
        Amount::Factor(factor) => (factor, "1"),
        Amount::Viscosity(thick) => (thick.as_pascal_seconds(), "Pa·s"),
        Amount::Warming(by) => (by.as_kelvins(), "K"),
        // Money is decimal: a text keeps every digit.
        Amount::Price(ref money) => return (json!(money.amount.normalize().to_string()), money.currency.clone()),
    };
    (json!(value), unit.to_owned())
}
