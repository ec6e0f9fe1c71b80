//! Figures as readers see them: rounded, grouped, with the space and symbol of the SI brochure.

mod english;

pub use english::*;

use crate::{Between, Count, Fraction, Length, Mass, SpoonSystem, Temperature, TimeSpan, Volume};

/// The space between a number and its symbol, which must not break at the line's end.
pub const NO_BREAK_SPACE: char = '\u{a0}';

/// A word or phrase with a capital.
#[must_use]
pub fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

/// How a language writes figures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Notation {
    /// What parts the whole from its decimals.
    pub point: char,
    /// What parts groups of three digits.
    pub group: char,
    /// How many digits are parted into groups at the least.
    pub grouped_from: usize,
    /// The word between two ends of unlike units: "50 min to 1 h 10 min".
    pub to: &'static str,
    /// A cup, and more than one.
    pub cups: (&'static str, &'static str),
    /// The short word for a tablespoon.
    pub tablespoon: &'static str,
    /// The short word for a teaspoon.
    pub teaspoon: &'static str,
}

impl Default for Notation {
    fn default() -> Self {
        ENGLISH
    }
}

/// English, with the narrow space of the SI brochure between groups of five and more digits.
pub const ENGLISH: Notation = Notation {
    point: '.',
    group: '\u{202f}',
    grouped_from: 5,
    to: "to",
    cups: ("cup", "cups"),
    tablespoon: "tbsp",
    teaspoon: "tsp",
};

fn with_symbol(number: &str, symbol: &str) -> String {
    format!("{number}{NO_BREAK_SPACE}{symbol}")
}

/// How many decimals show a value to about three figures.
fn decimals_for(value: f64) -> usize {
    match value.abs() {
        v if v < 0.1 => 3,
        v if v < 1.0 => 2,
        v if v < 10.0 => 1,
        _ => 0,
    }
}

const FRACTIONS: [(f64, &str); 7] =
    [(0.125, "⅛"), (0.25, "¼"), (1.0 / 3.0, "⅓"), (0.5, "½"), (2.0 / 3.0, "⅔"), (0.75, "¾"), (0.875, "⅞")];

/// A sum of times as it is worth telling: to the minute below an hour, to five minutes below three
/// hours, to half an hour below a day, to the hour above.
#[must_use]
pub fn rounded_time(range: Between<TimeSpan>) -> Between<TimeSpan> {
    let hours = range.to.as_hours();
    let step = match hours {
        h if h < 1.0 => 1.0,
        h if h < 3.0 => 5.0,
        h if h < 24.0 => 30.0,
        _ => 60.0,
    };
    let to_step = |t: TimeSpan| TimeSpan::minutes((t.as_minutes() / step).round() * step);
    range.map(to_step)
}

impl Notation {
    /// A number with so many decimals, trailing zeros dropped, many digits in groups of three.
    #[must_use]
    pub fn number(self, value: f64, decimals: usize) -> String {
        let text = format!("{value:.decimals$}");
        let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
        let text = if text == "-0" { "0" } else { text };
        let (sign, digits) = text.strip_prefix('-').map_or(("", text), |digits| ("\u{2212}", digits));
        let (whole, part) = digits.split_once('.').map_or((digits, None), |(whole, part)| (whole, Some(part)));
        let mut grouped = String::from(sign);
        for (place, digit) in whole.chars().enumerate() {
            if whole.len() >= self.grouped_from && place > 0 && (whole.len() - place).is_multiple_of(3) {
                grouped.push(self.group);
            }
            grouped.push(digit);
        }
        if let Some(part) = part {
            grouped.push(self.point);
            grouped.push_str(part);
        }
        grouped
    }

    /// A mass in gram: "350 g", "7.5 g", "0.86 g".
    #[must_use]
    pub fn mass(self, value: Mass) -> String {
        let grams = value.as_grams();
        with_symbol(&self.number(grams, decimals_for(grams)), "g")
    }

    /// A mass as a large weight reads best: kilogram from 10 kg on.
    #[must_use]
    pub fn large_mass(self, value: Mass) -> String {
        if value.as_grams().abs() < 10_000.0 {
            return self.mass(value);
        }
        with_symbol(&self.number(value.as_kilograms(), 2), "kg")
    }

    /// A mass in ounces, or pounds and ounces from a pound on.
    #[must_use]
    pub fn ounces(self, value: Mass) -> String {
        let ounces = value.as_ounces();
        if ounces < 15.95 {
            return with_symbol(&self.number(ounces, if ounces < 1.0 { 2 } else { 1 }), "oz");
        }
        // To a tenth of an ounce first, so that no "1 lb 16 oz" can come of rounding.
        let tenths = (ounces * 10.0).round();
        let (pounds, rest) = ((tenths / 160.0).floor(), tenths % 160.0 / 10.0);
        let pounds = with_symbol(&self.number(pounds, 0), "lb");
        if rest == 0.0 { pounds } else { format!("{pounds} {}", with_symbol(&self.number(rest, 1), "oz")) }
    }

    /// A volume in millilitre, or litre from 1 l on.
    #[must_use]
    pub fn volume(self, value: Volume) -> String {
        let millilitres = value.as_millilitres();
        if millilitres >= 1000.0 {
            return with_symbol(&self.number(value.as_litres(), 2), "l");
        }
        with_symbol(&self.number(millilitres, decimals_for(millilitres)), "ml")
    }

    /// A share in percent with so many decimals.
    #[must_use]
    pub fn percent(self, value: Fraction, decimals: usize) -> String {
        with_symbol(&self.number(value.as_percent(), decimals), "%")
    }

    /// A baker's percentage: two decimals below one percent, else one.
    #[must_use]
    pub fn bakers_percent(self, value: Fraction) -> String {
        self.percent(value, if value.as_percent().abs() < 1.0 { 2 } else { 1 })
    }

    /// A count, with the common fractions as signs: "2", "1½".
    #[must_use]
    pub fn count(self, value: Count) -> String {
        let pieces = value.as_pieces();
        let whole = pieces.floor();
        match FRACTIONS.iter().find(|(part, _)| (pieces - whole - part).abs() < 1e-6) {
            Some((_, sign)) if whole > 0.0 => format!("{}{sign}", self.number(whole, 0)),
            Some((_, sign)) => (*sign).to_owned(),
            None => self.number(pieces, 2),
        }
    }

    /// A range or single figure in one printed form: "12–18 h".
    fn ranged<T: Copy + PartialEq>(self, range: Between<T>, value: impl Fn(T) -> String, symbol: &str) -> String {
        let from = value(range.from);
        let to = value(range.to);
        if from == to {
            return with_symbol(&from, symbol);
        }
        with_symbol(&format!("{from}–{to}"), symbol)
    }

    /// Degrees Celsius: "23 °C", "180–190 °C".
    #[must_use]
    pub fn celsius(self, range: Between<Temperature>) -> String {
        self.ranged(range, |t| self.number(t.as_celsius(), 1), "°C")
    }

    /// Degrees Fahrenheit to the whole degree, or to the nearest five above 250 °F, as ovens and fat are set.
    #[must_use]
    pub fn fahrenheit(self, range: Between<Temperature>) -> String {
        let rounded = |t: Temperature| {
            let degrees = t.as_fahrenheit();
            if degrees > 250.0 { (degrees / 5.0).round() * 5.0 } else { degrees.round() }
        };
        self.ranged(range, |t| self.number(rounded(t), 0), "°F")
    }

    /// A time: "45 s", "35 min", "1 h 30 min", "12–18 h", "2 d".
    #[must_use]
    pub fn time(self, range: Between<TimeSpan>) -> String {
        if range.is_single() {
            return self.span(range.from);
        }
        let (from, to) = (range.from.as_seconds(), range.to.as_seconds());
        for (size, symbol) in [(86_400.0, "d"), (3600.0, "h"), (60.0, "min"), (1.0, "s")] {
            let even = |seconds: f64| (seconds / size * 2.0).fract() == 0.0;
            let suits = match size {
                86_400.0 => to >= 3.0 * size,
                60.0 | 1.0 => to < 180.0 * size,
                _ => true,
            };
            if (from >= size || from == 0.0) && to >= size && even(from) && even(to) && suits {
                return self.ranged(range, |t| self.number(t.as_seconds() / size, 1), symbol);
            }
        }
        format!("{} {} {}", self.span(range.from), self.to, self.span(range.to))
    }

    fn span(self, value: TimeSpan) -> String {
        let mut seconds = value.as_seconds().round() as u64;
        if seconds < 60 {
            return with_symbol(&self.number(value.as_seconds(), 0), "s");
        }
        let days_too = seconds >= 48 * 3600;
        let mut parts = Vec::new();
        for (size, symbol) in [(86_400, "d"), (3600, "h"), (60, "min"), (1, "s")] {
            if size == 86_400 && !days_too {
                continue;
            }
            if seconds >= size {
                parts.push(with_symbol(&self.number((seconds / size) as f64, 0), symbol));
                seconds %= size;
            }
        }
        parts.join(" ")
    }

    /// A length in the unit that suits it: "3 mm", "20 cm".
    #[must_use]
    pub fn length(self, range: Between<Length>) -> String {
        if range.to.as_millimetres() < 10.0 {
            return self.ranged(range, |l| self.number(l.as_millimetres(), 1), "mm");
        }
        self.ranged(range, |l| self.number(l.as_centimetres(), 1), "cm")
    }

    /// A length in inches to the nearest quarter, or eighth below an inch.
    #[must_use]
    pub fn inches(self, range: Between<Length>) -> String {
        let steps = if range.to.as_inches() < 1.0 { 8.0 } else { 4.0 };
        self.ranged(range, |l| self.count(Count::pieces((l.as_inches() * steps).round() / steps)), "in")
    }

    /// The nearest spoon or cup measure a kitchen has, and how far it is off as a share.
    /// None where nothing a spoon can hold comes within a tenth.
    #[must_use]
    pub fn spoons(self, value: Volume, system: SpoonSystem) -> Option<(String, Fraction)> {
        let (unit, names, parts): (Volume, (&str, &str), &[f64]) = match value.as_millilitres() {
            v if v >= system.cup().as_millilitres() * 0.23 => {
                (system.cup(), self.cups, &[0.25, 1.0 / 3.0, 0.5, 2.0 / 3.0, 0.75, 1.0])
            }
            v if v >= system.tablespoon().as_millilitres() * 0.95 => {
                (system.tablespoon(), (self.tablespoon, self.tablespoon), &[0.5, 1.0])
            }
            _ => (system.teaspoon(), (self.teaspoon, self.teaspoon), &[0.125, 0.25, 0.5, 0.75, 1.0]),
        };
        let ratio = value / unit;
        let whole = ratio.floor();
        let nearest = std::iter::once(0.0).chain(parts.iter().copied()).map(|part| whole + part).min_by(|a, b| {
            let off = |x: f64| (x - ratio).abs();
            off(*a).total_cmp(&off(*b))
        })?;
        let off = Fraction::ratio(nearest / ratio - 1.0);
        if nearest == 0.0 || !off.is_finite() || off.abs() > Fraction::percent(10.0) {
            return None;
        }
        let name = if nearest > 1.0 { names.1 } else { names.0 };
        Some((with_symbol(&self.count(Count::pieces(nearest)), name), off))
    }
}
