//! A list to choose from: what can be done with a formula, and with what of it.

use super::Format;
use crate::terminal;
use serde_json::{Value, json};

/// One thing that can be chosen.
pub struct Choice {
    name: &'static str,
    about: &'static str,
    asks: &'static str,
    fits: Vec<String>,
}

impl Choice {
    /// A choice with what of a formula it fits; names that follow each other are told once.
    pub fn of(name: &'static str, about: &'static str, asks: &'static str, mut fits: Vec<String>) -> Self {
        fits.dedup();
        Self { name, about, asks, fits }
    }
}

/// The choices for reading, or for other programs.
pub fn listed(heading: &str, choices: impl Iterator<Item = Choice>, format: Format) -> String {
    if format == Format::Json {
        let one = |one: Choice| json!({ "name": one.name, "about": one.about, "asks": one.asks, "fits": one.fits });
        return format!("{:#}", Value::Array(choices.map(one).collect()));
    }
    let mut out = format!("{heading}\n");
    for one in choices {
        let with = if one.fits.is_empty() { "nothing here".to_owned() } else { one.fits.join(", ") };
        for line in [format!("\n{}: {}", one.name, one.about), format!("with: {with}"), format!("asks: {}", one.asks)] {
            out.push_str(&publish::words::wrap(&line, terminal::width()));
        }
    }
    out
}
