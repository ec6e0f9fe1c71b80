//! Figures and conditions in words, in one unit system or in two.

use crate::method::{Figure, Piece};
use crate::spelling::is_american;
use formula::arithmetic::Counted;
use formula::read::Condition;
use formula::{Component, Line};
use plan::Hours;
use quantity::{Between, Count, Fraction, Kind, Length, Mass, Measure, SpoonSystem, Temperature, TimeSpan, Unit, Volume, print};

/// The units a page is printed in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Units {
    /// Whose spoons and cups the book means.
    pub spoons: SpoonSystem,
    /// A second system printed beside, if any.
    pub second: Option<SpoonSystem>,
}

impl Units {
    /// The units of a book's settings.
    #[must_use]
    pub fn of(settings: &formula::read::BookSettings) -> Self {
        // Kitchens of the United States measure in cups and degrees Fahrenheit, unless the book says otherwise.
        let american = is_american(&settings.language).then_some(SpoonSystem::UsCustomary);
        let second = settings.second_units.or(american);
        Self { spoons: settings.spoons.unwrap_or_default(), second }
    }

    /// Whether the second system is the United States', with its degrees, inches and ounces.
    #[must_use]
    pub const fn is_american(self) -> bool {
        matches!(self.second, Some(SpoonSystem::UsCustomary | SpoonSystem::UsLabel))
    }

    /// The spoons that household measures are printed in.
    #[must_use]
    pub const fn household(self) -> SpoonSystem {
        match self.second {
            Some(system) => system,
            None => self.spoons,
        }
    }

    /// A temperature: "180 °C", or "180 °C (355 °F)".
    #[must_use]
    pub fn temperature(self, range: Between<Temperature>) -> String {
        self.beside(print::celsius(range), || print::fahrenheit(range))
    }

    /// A length: "20 cm", or "20 cm (8 in)".
    #[must_use]
    pub fn length(self, range: Between<Length>) -> String {
        self.beside(print::length(range), || print::inches(range))
    }

    fn beside(self, metric: String, american: impl Fn() -> String) -> String {
        if self.is_american() { format!("{metric} ({})", american()) } else { metric }
    }

    /// A figure of any kind that a sentence names.
    #[must_use]
    pub fn measure(self, measure: &Measure) -> String {
        let spoons = self.spoons;
        let printed = match measure.unit.kind() {
            // Whole degrees where the author thinks in Fahrenheit: 350 °F is not 176.7 °C to anyone's oven.
            Kind::Temperature if measure.unit == Unit::Fahrenheit => {
                let whole = |t: Temperature| Temperature::celsius(t.as_celsius().round());
                measure.temperature().map(|range| self.beside(print::celsius(range.map(whole)), || print::fahrenheit(range)))
            }
            Kind::Temperature => measure.temperature().map(|range| self.temperature(range)),
            Kind::Length => measure.length(spoons).map(|range| self.length(range)),
            Kind::Time => measure.time(spoons).map(print::time),
            Kind::Mass => measure.mass(spoons).map(|range| self.masses(range)),
            Kind::Volume if measure.unit.is_spoon() => {
                measure.volume(spoons).map(|range| format!("{measure} ({})", ranged(range, &print::volume)))
            }
            Kind::Volume => measure.volume(spoons).map(|range| self.volumes(range)),
            _ => None,
        };
        printed.unwrap_or_else(|| measure.to_string())
    }

    fn masses(self, range: Between<Mass>) -> String {
        let both = |print: &dyn Fn(Mass) -> String| ranged(range, print);
        self.beside(both(&print::mass), || both(&print::ounces))
    }

    fn volumes(self, range: Between<Volume>) -> String {
        let metric = ranged(range, &print::volume);
        match self.second.and_then(|system| print::spoons(range.from, system).filter(|_| range.is_single())) {
            Some((spoons, _)) => format!("{metric} ({spoons})"),
            None => metric,
        }
    }
}

/// What a system of spoons and cups is called.
#[must_use]
pub const fn spoons_name(system: SpoonSystem) -> &'static str {
    match system {
        SpoonSystem::Metric => "metric",
        SpoonSystem::Australian => "Australian",
        SpoonSystem::UsCustomary => "US customary",
        SpoonSystem::UsLabel => "US label",
    }
}

fn ranged<T: Copy + PartialEq>(range: Between<T>, print: &dyn Fn(T) -> String) -> String {
    if range.is_single() { print(range.from) } else { format!("{} to {}", print(range.from), print(range.to)) }
}

/// A condition as it follows a comma: "until doubled".
#[must_use]
pub fn until(condition: &Condition, units: Units) -> String {
    match condition {
        Condition::Ripe => "until ripe".to_owned(),
        Condition::RisenBy(share) if *share == Fraction::WHOLE => "until doubled".to_owned(),
        Condition::RisenBy(share) if *share == Fraction::percent(200.0) => "until trebled".to_owned(),
        Condition::RisenBy(share) if *share == Fraction::percent(50.0) => "until risen by half".to_owned(),
        Condition::RisenBy(share) => format!("until risen by {}", print::percent(*share, 0)),
        Condition::Core(_) | Condition::At(_) => until_in_pieces(condition, units).into_iter().map(|piece| piece.text).collect(),
        Condition::Brix(value) => format!("until {}\u{a0}°Brix", print::number(*value, 1)),
        Condition::Pours(value) => format!("until it pours at {}\u{a0}Pa·s", print::number(*value, 2)),
        Condition::Words(words) if words.starts_with("until ") => words.clone(),
        Condition::Words(words) => format!("until {words}"),
    }
}

/// The same in pieces, so that a temperature in it can be told otherwise.
#[must_use]
pub fn until_in_pieces(condition: &Condition, units: Units) -> Vec<Piece> {
    let degrees = |range: &Between<Temperature>| Piece::of(units.temperature(*range), Figure::Temperature(*range));
    match condition {
        Condition::Core(range) => vec![Piece::plain("until "), degrees(range), Piece::plain(" in the middle")],
        Condition::At(range) => vec![Piece::plain("until it is at "), degrees(range)],
        other => vec![Piece::plain(until(other, units))],
    }
}

/// How long a formula takes: what each time is called, its name in data, and the time; what takes none is left out.
#[must_use]
pub fn hours_told(hours: &Hours) -> Vec<(&'static str, &'static str, Between<TimeSpan>)> {
    let all = [
        ("Hands on", "preparing", hours.preparing),
        ("At the heat", "cooking", hours.cooking),
        ("Start to table", "total", hours.total),
    ];
    all.into_iter()
        .filter(|(.., span)| span.to > TimeSpan::ZERO)
        .map(|(label, name, span)| (label, name, print::rounded_time(span)))
        .collect()
}

/// "12 muffins", or what else a component makes.
#[must_use]
pub fn makes(component: &Component) -> String {
    let yields = &component.yields;
    match yields.pieces {
        Some(pieces) => pieces_in_words(component, pieces),
        None => format!("about {}", print::large_mass(rounded(yields.done()))),
    }
}

/// So many pieces of a component, with their word.
#[must_use]
pub fn pieces_in_words(component: &Component, pieces: Count) -> String {
    format!("{}\u{a0}{}", print::count(pieces), component.yields.word(pieces))
}

/// A weight to the nearest 10 g, for what need not be exact.
fn rounded(mass: Mass) -> Mass {
    Mass::grams((mass.as_grams() / 10.0).round() * 10.0)
}

/// The name of a line within a sentence: its title, small at the beginning unless it is a proper name.
#[must_use]
pub fn in_sentence(line: &Line) -> String {
    small(&line.title)
}

/// A title as it reads within a sentence: a first capital that no other follows becomes small.
#[must_use]
pub fn small(title: &str) -> String {
    let without_note = title.split(" (").next().unwrap_or(title);
    let mut letters = without_note.chars();
    match (letters.next(), letters.next()) {
        (Some(first), Some(second)) if first.is_uppercase() && second.is_lowercase() => {
            first.to_lowercase().chain(without_note.chars().skip(1)).collect()
        }
        _ => without_note.to_owned(),
    }
}

/// A percentage for a column headed "%".
#[must_use]
pub fn bare_percent(share: Fraction) -> String {
    print::bakers_percent(share).trim_end_matches(['%', print::NO_BREAK_SPACE]).to_owned()
}

/// A weight for a column headed "g"; empty where there is none.
#[must_use]
pub fn bare_grams(mass: Mass) -> String {
    if mass == Mass::ZERO { String::new() } else { print::mass(mass).trim_end_matches(['g', print::NO_BREAK_SPACE]).to_owned() }
}

/// A figure, or "at least" where an ingredient's part of it is not known.
#[must_use]
pub fn counted(figure: &Counted) -> String {
    let value = print::percent(figure.value, 1);
    if figure.missing.is_empty() {
        return value;
    }
    let names: Vec<&str> = figure.missing.iter().map(|missing| missing.ingredient.as_str()).collect();
    format!("at least {value} (not counted: {})", names.join(", "))
}

/// Breaks a line at the width, further lines indented.
#[must_use]
pub fn wrap(line: &str, width: usize) -> String {
    let (mut out, mut column) = (String::new(), 0);
    for word in line.split(' ') {
        let length = word.chars().count();
        if column > 0 && column + 1 + length > width {
            out.push_str("\n  ");
            column = 2;
        } else if column > 0 {
            out.push(' ');
            column += 1;
        }
        out.push_str(word);
        column += length;
    }
    out.push('\n');
    out
}

/// A weight to the gram, in kilogram where it is large.
#[must_use]
pub fn whole_gram(mass: Mass) -> String {
    print::large_mass(Mass::grams(mass.as_grams().round()))
}
