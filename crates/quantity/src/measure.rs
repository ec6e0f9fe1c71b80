//! A figure with its unit, as somebody wrote it: read, converted, printed back.

use crate::{
    Between, Count, Fraction, Kind, Length, Mass, NumberFault, Power, SpoonSystem, Temperature, TimeSpan, Unit, Volume,
    read_number,
};
use std::fmt;
use std::str::FromStr;

/// A figure, or a range of figures, in one unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measure {
    /// The figure or range, in the unit as written.
    pub value: Between<f64>,
    /// The unit as written.
    pub unit: Unit,
}

/// Why a text is not a measure.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fault {
    /// No readable number.
    Number(NumberFault),
    /// A number, then a word that is no unit we know.
    UnknownUnit(String),
    /// The number is below zero where that has no meaning.
    Negative,
    /// A range whose end lies below its beginning.
    Backwards,
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Number(fault) => fault.fmt(f),
            Self::UnknownUnit(word) => write!(f, "“{word}” is not a unit"),
            Self::Negative => f.write_str("the figure is negative"),
            Self::Backwards => f.write_str("the range runs backwards"),
        }
    }
}

impl From<NumberFault> for Fault {
    fn from(fault: NumberFault) -> Self {
        Self::Number(fault)
    }
}

impl FromStr for Measure {
    type Err = Fault;

    /// Reads "350g", "1 1/2 tsp", "2-3 tbsp", "1 h 30 min", "-18 °C", "3" (pieces).
    fn from_str(text: &str) -> Result<Self, Fault> {
        let text = text.trim();
        let (value, unit) = match both_ends(text) {
            Some(ends) => ends?,
            None => one_unit(text)?,
        };
        if !value.to.is_finite() {
            return Err(Fault::Number(NumberFault::NotFinite));
        }
        if unit.kind() != Kind::Temperature && value.from < 0.0 {
            return Err(Fault::Negative);
        }
        if value.to < value.from {
            return Err(Fault::Backwards);
        }
        Ok(Self { value, unit })
    }
}

/// "350 g", or "12-18 h" with one unit for both figures.
fn one_unit(text: &str) -> Result<(Between<f64>, Unit), Fault> {
    let (from, rest) = signed(text)?;
    let (to, rest) = range_end(rest)?;
    match to {
        None => {
            let (value, unit) = compound(from, rest, f64::INFINITY)?;
            Ok((Between::just(value), unit))
        }
        Some(to) => {
            let (to, unit) = single(to, rest)?;
            Ok((Between { from, to }, unit))
        }
    }
}

/// "20 °C - 22 °C", "45 min to 1 h 15 min": a unit at both ends, told in the unit of the second. None
/// where the first end has no unit.
fn both_ends(text: &str) -> Option<Result<(Between<f64>, Unit), Fault>> {
    let (first, second) = ["–", "—", " - ", " to "].iter().find_map(|dash| text.split_once(dash))?;
    if !first.contains(|c: char| c.is_alphabetic() || "%°℃℉".contains(c)) {
        return None;
    }
    let end = |text: &str| {
        let (value, rest) = signed(text.trim())?;
        compound(value, rest, f64::INFINITY)
    };
    Some(end(first).and_then(|(from, unit)| {
        let (to, last) = end(second)?;
        if unit != last && (unit.kind() != last.kind() || unit.kind() == Kind::Temperature) {
            return Err(Fault::UnknownUnit(second.trim().to_owned()));
        }
        Ok((Between { from: from * (unit_size(unit) / unit_size(last)), to }, last))
    }))
}

fn signed(text: &str) -> Result<(f64, &str), Fault> {
    let negative = ['-', '−'].iter().find_map(|sign| text.strip_prefix(*sign));
    let (value, rest) = read_number(negative.unwrap_or(text))?;
    Ok((if negative.is_some() { -value } else { value }, rest))
}

/// The second figure of "12-18", "12 – 18" or "12 to 18".
fn range_end(rest: &str) -> Result<(Option<f64>, &str), Fault> {
    let trimmed = rest.trim_start();
    let after = ["-", "–", "—", "to "].iter().find_map(|dash| trimmed.strip_prefix(dash));
    match after {
        Some(after) => {
            let (value, rest) = signed(after.trim_start())?;
            Ok((Some(value), rest))
        }
        None => Ok((None, rest)),
    }
}

/// The second figure of a range with its unit: which unit the first one has would be unclear in "1-1 h 30 min".
fn single(value: f64, rest: &str) -> Result<(f64, Unit), Fault> {
    if rest.contains(|c: char| c.is_ascii_digit()) {
        return Err(Fault::UnknownUnit(rest.trim().to_owned()));
    }
    compound(value, rest, f64::INFINITY)
}

/// The unit, and for times and weights the further parts of "1 h 30 min" or "1 lb 2 oz", in the unit of
/// the last part. Each part's unit is smaller than the one before, `above`.
fn compound(value: f64, rest: &str, above: f64) -> Result<(f64, Unit), Fault> {
    let word_end = rest.find(|c: char| c.is_ascii_digit()).unwrap_or(rest.len());
    let (word, more) = rest.split_at(word_end);
    let name = word.trim_matches(|c: char| c.is_whitespace());
    if name.is_empty() && more.is_empty() {
        return Ok((value, Unit::Piece));
    }
    let unit = Unit::named(name).ok_or_else(|| Fault::UnknownUnit(rest.trim().to_owned()))?;
    if more.is_empty() {
        return Ok((value, unit));
    }
    if !matches!(unit.kind(), Kind::Time | Kind::Mass) || unit_size(unit) >= above {
        return Err(Fault::UnknownUnit(rest.trim().to_owned()));
    }
    let (next, rest) = read_number(more)?;
    let (tail, smaller) = match unit {
        // "1h30" leaves the minutes to be understood.
        Unit::Hour if rest.trim().is_empty() => (next, Unit::Minute),
        _ => compound(next, rest, unit_size(unit))?,
    };
    if smaller.kind() != unit.kind() || unit_size(smaller) >= unit_size(unit) {
        return Err(Fault::UnknownUnit(more.trim().to_owned()));
    }
    Ok((value * unit_size(unit) / unit_size(smaller) + tail, smaller))
}

const fn unit_size(unit: Unit) -> f64 {
    unit.size(SpoonSystem::Metric)
}

macro_rules! reading {
    ($($(#[$doc:meta])* $name:ident, $kind:ident, $type:ident::$from:ident;)+) => {
        $($(#[$doc])*
        #[must_use]
        pub fn $name(&self, spoons: SpoonSystem) -> Option<Between<$type>> {
            (self.unit.kind() == Kind::$kind).then(|| self.value.map(|v| $type::$from(v * self.unit.size(spoons))))
        })+
    };
}

impl Measure {
    /// One figure in one unit.
    #[must_use]
    pub const fn new(value: f64, unit: Unit) -> Self {
        Self { value: Between::just(value), unit }
    }

    reading! {
        /// The mass, if it is one.
        mass, Mass, Mass::grams;
        /// The volume, if it is one, in the spoons of that system.
        volume, Volume, Volume::millilitres;
        /// The number of pieces, if it is one.
        count, Count, Count::pieces;
        /// The time, if it is one.
        time, Time, TimeSpan::seconds;
        /// The share, if it is one.
        share, Share, Fraction::ratio;
        /// The length, if it is one.
        length, Length, Length::millimetres;
        /// The power, if it is one.
        power, Power, Power::watts;
    }

    /// The temperature, if it is one.
    #[must_use]
    pub fn temperature(&self) -> Option<Between<Temperature>> {
        match self.unit {
            Unit::Celsius => Some(self.value.map(Temperature::celsius)),
            Unit::Fahrenheit => Some(self.value.map(Temperature::fahrenheit)),
            _ => None,
        }
    }
}

impl fmt::Display for Measure {
    /// As the SI brochure asks: a no-break space before the symbol, an en dash in a range.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.value.from)?;
        if !self.value.is_single() {
            write!(f, "\u{2013}{}", self.value.to)?;
        }
        match self.unit {
            Unit::Piece => Ok(()),
            unit => write!(f, "\u{a0}{}", unit.symbol()),
        }
    }
}
