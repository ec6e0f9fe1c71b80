//! What a page carries so that its reader can fit it to a kitchen of their own: data and tables that this program
//! worked out, and the scripts that read them. Linear figures are carried as figures, all others as tables.

mod controls;
mod course;
mod figures;
mod flours;
mod lines;
mod rooms;
mod script;
mod size;
mod spoons;
mod ways;

pub use controls::controls;
#[cfg(test)]
pub use script::MODULES;
pub use script::{POLICY, SCRIPT, STYLE, policy};
pub use ways::Way;

use crate::outlook::sure;
use crate::tongue::Tongue;
use bench::forecast::Surroundings;
use formula::read::BookSettings;
use formula::{Book, Formula};
use rayon::prelude::*;
use serde_json::{Map, Value, json};
use std::collections::BTreeMap;

/// All that a page carries for its reader besides what everyone sees.
#[derive(Debug)]
pub struct Reader {
    /// The other ways to raise it, the formula as written left out.
    pub ways: Vec<Way>,
    /// Whether anything in it ferments, so that the room matters.
    pub ferments: bool,
    /// Whose trials its times were learnt from, if any.
    pub learnt: Option<String>,
    /// The data as JSON, safe to stand in a script element.
    pub data: String,
}

/// Works out what the pages of formulas carry for their readers, on all cores: by the formulas' names.
#[must_use]
pub fn readers(book: &Book, formulas: &[Formula], around: &Surroundings) -> BTreeMap<String, Reader> {
    formulas.par_iter().map(|formula| (formula.name.clone(), reader(book, formula, around))).collect()
}

/// Works out what a formula's page carries for its reader; the room is the reader's, all else that kitchen's.
#[must_use]
pub fn reader(book: &Book, formula: &Formula, around: &Surroundings) -> Reader {
    let settings = &book.settings.told_for(&formula.head);
    let ways = ways::ways(book, formula, around);
    let told: Vec<Value> = std::iter::once(way(settings, formula, around, None))
        .chain(ways.iter().map(|other| way(settings, &other.formula, around, Some(other))))
        .collect();
    let ferments = told.iter().any(|way| !way["rooms"].is_null());
    let mut data = Map::new();
    data.insert("name".into(), json!(formula.name));
    let tongue = Tongue::of(&settings.language);
    let learnt = sure::for_readers(formula, &around.calibration, tongue).filter(|_| ferments);
    data.insert("words".into(), tongue.carried());
    data.insert("spoons".into(), spoons::systems(tongue));
    data.insert("own".into(), spoons::own(settings));
    data.insert("eggs".into(), lines::eggs(formula, settings.eggs));
    data.insert("size".into(), size::size(formula, tongue));
    data.insert("room".into(), rooms::usual(around));
    data.insert("ways".into(), Value::Array(told));
    // "</" would end the script element, and "<!--" would begin a comment in it.
    Reader { data: Value::Object(data).to_string().replace('<', "\\u003c"), ways, ferments, learnt }
}

fn way(settings: &BookSettings, formula: &Formula, around: &Surroundings, other: Option<&Way>) -> Value {
    let tongue = Tongue::of(&settings.language);
    json!({
        "key": other.map_or("", |way| way.key.as_str()),
        "title": other.map_or(tongue.as_the_formula_says(), |way| way.title.as_str()),
        "weighs": size::weighs(formula),
        "lines": lines::lines(formula, settings),
        "flours": flours::flours(formula),
        "stages": course::stages(formula, tongue),
        "others": course::others(formula),
        "rooms": rooms::tables(formula, around),
    })
}

/// A figure as a table carries it: five significant digits are finer than anything that is shown.
fn short(value: f64) -> Value {
    if !value.is_finite() {
        return Value::Null;
    }
    format!("{value:.4e}")
        .parse::<f64>()
        .map_or(Value::Null, |value| if value == value.trunc() && value.abs() < 1e9 { json!(value as i64) } else { json!(value) })
}
