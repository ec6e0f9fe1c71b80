//! The amount on a line: a weight, a percentage, pieces, a spoon, a part of another stage.

use super::fields::Reader;
use super::{At, EggSize};
use crate::fault;
use quantity::{Between, Count, Fault, Fraction, Kind, Measure, NumberFault, SpoonSystem, Unit, read_number};

/// An amount as it was written.
#[derive(Clone, Debug, PartialEq)]
pub enum Amount {
    /// A weight, volume, count or baker's percentage.
    Measure(Measure),
    /// So many eggs of a size class.
    Eggs(Between<f64>, EggSize),
    /// That part of another stage, component or formula.
    Part(Fraction),
}

/// The largest figure that is worked with, in the stored scale: a million tonnes, a million cubic metres.
pub const MOST_AMOUNT: f64 = 1e12;
/// The largest share that is worked with: a million times the flour.
const MOST_SHARE: f64 = 1e6;

const PARTS: [(&str, f64); 7] = [
    ("all", 1.0),
    ("half", 0.5),
    ("a third", 1.0 / 3.0),
    ("two thirds", 2.0 / 3.0),
    ("a quarter", 0.25),
    ("three quarters", 0.75),
    ("a fifth", 0.2),
];

/// That part of a whole, if the text is one of the words for it.
pub fn part(text: &str) -> Option<Fraction> {
    PARTS.iter().find(|(word, _)| *word == text).map(|(_, share)| Fraction::ratio(*share))
}

impl Amount {
    /// How many pieces are meant, if it is a count.
    #[must_use]
    pub fn pieces(&self) -> Option<Count> {
        match self {
            Self::Eggs(count, _) => Some(Count::pieces(count.middle())),
            Self::Measure(measure) if measure.unit == Unit::Piece => Some(Count::pieces(measure.value.middle())),
            _ => None,
        }
    }

    /// An amount as the document writes it, outside a document.
    ///
    /// # Errors
    /// [`Fault`] if it is no part, no eggs of a size class and no figure with a unit.
    pub fn parse(text: &str) -> Result<Self, Fault> {
        if let Some(part) = part(text.trim()) {
            return Ok(Self::Part(part));
        }
        match eggs(text) {
            Some((count, size)) => Ok(Self::Eggs(Between::just(count), size)),
            None => text.parse().map(Self::Measure),
        }
    }

    /// Reads an amount, or reports why it is none.
    pub fn read(reader: &mut Reader, text: At<&str>) -> Option<Self> {
        if let Some(part) = part(text.value.trim()) {
            return Some(Self::Part(part));
        }
        if let Some((count, size)) = eggs(text.value) {
            return Some(Self::Eggs(Between::just(count), size));
        }
        measure(reader, &text, &[Kind::Mass, Kind::Volume, Kind::Count, Kind::Share]).map(Self::Measure)
    }
}

/// "2 M", "3 large".
fn eggs(text: &str) -> Option<(f64, EggSize)> {
    let (count, rest) = read_number(text).ok()?;
    Some((count, EggSize::named(rest.trim())?)).filter(|(count, _)| *count <= MOST_AMOUNT)
}

/// Reads a figure of one of these kinds, or reports why it is none.
pub fn measure(reader: &mut Reader, text: &At<&str>, kinds: &[Kind]) -> Option<Measure> {
    match text.value.parse::<Measure>() {
        Ok(measure) if kinds.contains(&measure.unit.kind()) => finite(reader, text, measure),
        Ok(measure) => {
            let wanted: Vec<&str> = kinds.iter().map(|kind| kind.name()).collect();
            let message = format!("“{}” is a {}", text.value, measure.unit.kind().name());
            reader.report(
                &fault::WRONG_QUANTITY,
                text.span.clone(),
                message,
                format!("a {} is wanted here", wanted.join(" or ")),
            );
            None
        }
        Err(fault) => {
            report(reader, text, &fault);
            None
        }
    }
}

fn finite(reader: &mut Reader, text: &At<&str>, measure: Measure) -> Option<Measure> {
    if measure.unit.kind() == Kind::Temperature && measure.temperature().is_some_and(|t| t.from.as_kelvins() < 0.0) {
        let message = format!("“{}” is below absolute zero, −273.15 °C", text.value);
        reader.report_plainly(&fault::BELOW_ABSOLUTE_ZERO, text.span.clone(), message);
        return None;
    }
    let most = if measure.unit.kind() == Kind::Share { MOST_SHARE } else { MOST_AMOUNT };
    if measure.value.to.abs() * measure.unit.size(SpoonSystem::Metric) > most {
        let message = format!("“{}” is more than any kitchen holds", text.value);
        reader.report(&fault::AMOUNT_NOT_FINITE, text.span.clone(), message, "take out the digits that are too many");
        return None;
    }
    Some(measure)
}

fn report(reader: &mut Reader, text: &At<&str>, why: &Fault) {
    let span = text.span.clone();
    let written = text.value;
    match why {
        Fault::Negative => reader.report(
            &fault::AMOUNT_NEGATIVE,
            span,
            format!("“{written}” is negative"),
            "an amount is at least nothing; what is taken away belongs into loss, boil-off or kept-back",
        ),
        Fault::Number(NumberFault::NotFinite) => {
            reader.report_plainly(&fault::AMOUNT_NOT_FINITE, span, format!("“{written}” is no amount: {why}"));
        }
        Fault::UnknownUnit(word) => {
            let known: Vec<&str> = Unit::ALL.iter().map(|unit| unit.symbol()).filter(|symbol| !symbol.is_empty()).collect();
            reader.report_unknown(
                &fault::UNKNOWN_UNIT,
                At::new(word, span),
                format!("“{word}” in “{written}” is not a unit"),
                &known,
            );
        }
        Fault::Number(NumberFault::Missing) if written.parse::<f64>().is_ok() => {
            reader.report_plainly(&fault::AMOUNT_NOT_FINITE, span, format!("“{written}” is not a finite number"));
        }
        Fault::Number(_) | Fault::Backwards => reader.report(
            &fault::NOT_AN_AMOUNT,
            span,
            format!("“{written}” is no amount: {why}"),
            "write a number and a unit, such as \"350 g\", \"68 %\", \"1 1/2 tsp\", 3, \"2 M\" or \"all\"",
        ),
    }
}
