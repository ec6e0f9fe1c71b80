//! Figures and conditions in words, in one unit system or in two.

use crate::method::{Figure, Piece};
use crate::spelling::is_american;
use crate::tongue::Tongue;
use formula::arithmetic::Counted;
use formula::read::{Condition, Group};
use formula::resolve::UNNAMED_PIECE;
use formula::{Component, Content, Line};
use plan::Hours;
use quantity::{Between, Count, Fraction, Kind, Length, Mass, Measure, SpoonSystem, Temperature, TimeSpan, Unit, Volume, print};

/// The units a page is printed in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Units {
    /// Whose spoons and cups the book means.
    pub spoons: SpoonSystem,
    /// A second system printed beside, if any.
    pub second: Option<SpoonSystem>,
    /// The language, and how it writes figures.
    pub tongue: Tongue,
}

impl Units {
    /// The units of a book's settings, told in English: what the terminal speaks.
    #[must_use]
    pub fn of(settings: &formula::read::BookSettings) -> Self {
        // Kitchens of the United States measure in cups and degrees Fahrenheit, unless the book says otherwise.
        let american = is_american(&settings.language).then_some(SpoonSystem::UsCustomary);
        let second = settings.second_units.or(american);
        Self { spoons: settings.spoons.unwrap_or_default(), second, tongue: Tongue::default() }
    }

    /// The same, told in the book's own language: what readers see.
    #[must_use]
    pub fn for_readers(settings: &formula::read::BookSettings) -> Self {
        Self { tongue: Tongue::of(&settings.language), ..Self::of(settings) }
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
        self.beside(self.tongue.print.celsius(range), || self.tongue.print.fahrenheit(range))
    }

    /// A length: "20 cm", or "20 cm (8 in)".
    #[must_use]
    pub fn length(self, range: Between<Length>) -> String {
        self.beside(self.tongue.print.length(range), || self.tongue.print.inches(range))
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
                measure
                    .temperature()
                    .map(|range| self.beside(self.tongue.print.celsius(range.map(whole)), || self.tongue.print.fahrenheit(range)))
            }
            Kind::Temperature => measure.temperature().map(|range| self.temperature(range)),
            Kind::Length => measure.length(spoons).map(|range| self.length(range)),
            Kind::Time => measure.time(spoons).map(|range| self.tongue.print.time(range)),
            Kind::Mass => measure.mass(spoons).map(|range| self.masses(range)),
            Kind::Volume if measure.unit.is_spoon() => measure
                .volume(spoons)
                .map(|range| format!("{} ({})", self.written(measure), self.ranged(range, |one| self.tongue.print.volume(one)))),
            Kind::Volume => measure.volume(spoons).map(|range| self.volumes(range)),
            _ => None,
        };
        printed.unwrap_or_else(|| self.written(measure))
    }

    /// A measure as its author wrote it, the spoon by its name in the page's language.
    fn written(self, measure: &Measure) -> String {
        if self.tongue.is_english() {
            return measure.to_string();
        }
        let print = self.tongue.print;
        let plural = measure.value.to > 1.0;
        let symbol = match measure.unit {
            Unit::Piece => return self.ranged(measure.value, |number| print.count(Count::pieces(number))),
            Unit::Cup => [print.cups.0, print.cups.1][usize::from(plural)],
            Unit::Tablespoon => print.tablespoon,
            Unit::Teaspoon => print.teaspoon,
            unit => unit.symbol(),
        };
        format!("{}\u{a0}{symbol}", self.ranged(measure.value, |number| print.count(Count::pieces(number))))
    }

    fn masses(self, range: Between<Mass>) -> String {
        let print = self.tongue.print;
        self.beside(self.ranged(range, |mass| print.mass(mass)), || self.ranged(range, |mass| print.ounces(mass)))
    }

    fn volumes(self, range: Between<Volume>) -> String {
        let print = self.tongue.print;
        let metric = self.ranged(range, |volume| print.volume(volume));
        match self.second.and_then(|system| print.spoons(range.from, system).filter(|_| range.is_single())) {
            Some((spoons, _)) => format!("{metric} ({spoons})"),
            None => metric,
        }
    }

    fn ranged<T: Copy + PartialEq>(self, range: Between<T>, print: impl Fn(T) -> String) -> String {
        let to = self.tongue.print.to;
        if range.is_single() { print(range.from) } else { format!("{} {to} {}", print(range.from), print(range.to)) }
    }
}

/// A condition as it follows a comma: "until doubled".
#[must_use]
pub fn until(condition: &Condition, units: Units) -> String {
    let (tongue, print) = (units.tongue, units.tongue.print);
    match condition {
        Condition::Ripe => tongue.until_ripe().to_owned(),
        Condition::RisenBy(share) if *share == Fraction::WHOLE => tongue.until_doubled().to_owned(),
        Condition::RisenBy(share) if *share == Fraction::percent(200.0) => tongue.until_trebled().to_owned(),
        Condition::RisenBy(share) if *share == Fraction::percent(50.0) => tongue.until_risen_by_half().to_owned(),
        Condition::RisenBy(share) => tongue.until_risen_by(print.percent(*share, 0)),
        Condition::Core(_) | Condition::At(_) => until_in_pieces(condition, units).into_iter().map(|piece| piece.text).collect(),
        Condition::Brix(value) => tongue.until_brix(print.number(*value, 1)),
        Condition::Pours(value) => tongue.until_it_pours(print.number(*value, 2)),
        Condition::Words(words) => {
            let begins = words.strip_prefix(tongue.until()).is_some_and(|rest| rest.starts_with(' '));
            if begins { words.clone() } else { format!("{} {words}", tongue.until()) }
        }
    }
}

/// The same in pieces, so that a temperature in it can be told otherwise.
#[must_use]
pub fn until_in_pieces(condition: &Condition, units: Units) -> Vec<Piece> {
    let tongue = units.tongue;
    let degrees = |range: &Between<Temperature>| Piece::of(units.temperature(*range), Figure::Temperature(*range));
    // The figure is marked, so that the sentence is cut where it stands.
    let around = |sentence: String, range: &Between<Temperature>| {
        let (before, after) = sentence.split_once(HOLE).unwrap_or((&sentence, ""));
        let pieces = [Piece::plain(before), degrees(range), Piece::plain(after)];
        pieces.into_iter().filter(|piece| !piece.text.is_empty()).collect()
    };
    match condition {
        Condition::Core(range) => around(tongue.until_core(HOLE), range),
        Condition::At(range) => around(tongue.until_at(HOLE), range),
        other => vec![Piece::plain(until(other, units))],
    }
}

/// What stands for a figure while its sentence is worded.
const HOLE: &str = "\u{fffc}";

/// How long a formula takes: what each time is called, its name in data, and the time; what takes none is left out.
#[must_use]
pub fn hours_told(hours: &Hours, tongue: Tongue) -> Vec<(&'static str, &'static str, Between<TimeSpan>)> {
    let all = [
        (tongue.hands_on(), "preparing", hours.preparing),
        (tongue.at_the_heat(), "cooking", hours.cooking),
        (tongue.start_to_table(), "total", hours.total),
    ];
    all.into_iter()
        .filter(|(.., span)| span.to > TimeSpan::ZERO)
        .map(|(label, name, span)| (label, name, print::rounded_time(span)))
        .collect()
}

/// "12 muffins", or what else a component makes.
#[must_use]
pub fn makes(component: &Component, tongue: Tongue) -> String {
    let yields = &component.yields;
    match yields.pieces {
        Some(pieces) => pieces_in_words(component, pieces, tongue),
        None => format!("{} {}", tongue.about(), tongue.print.large_mass(rounded(yields.done()))),
    }
}

/// What one piece of a component is called, and more of them; the page's own words where the author gives none.
#[must_use]
pub fn piece_words(component: &Component, tongue: Tongue) -> (&str, &str) {
    let (one, more) = &component.yields.piece;
    if one == UNNAMED_PIECE { (tongue.piece(), tongue.pieces()) } else { (one, more) }
}

/// So many pieces of a component, with their word.
#[must_use]
pub fn pieces_in_words(component: &Component, pieces: Count, tongue: Tongue) -> String {
    let (one, more) = piece_words(component, tongue);
    format!("{}\u{a0}{}", tongue.print.count(pieces), if pieces == Count::pieces(1.0) { one } else { more })
}

/// A weight to the nearest 10 g, for what need not be exact.
fn rounded(mass: Mass) -> Mass {
    Mass::grams((mass.as_grams() / 10.0).round() * 10.0)
}

/// The name of a line within a sentence: its title, small at the beginning unless it is a proper name.
#[must_use]
pub fn in_sentence(line: &Line, tongue: Tongue) -> String {
    small_in(&line.title, tongue)
}

/// What so many pieces of a line are called within a sentence.
#[must_use]
pub fn counted_title(line: &Line, pieces: Count, tongue: Tongue) -> String {
    match &line.content {
        Content::Ingredient(one) if tongue.has_capital_nouns() && one.group == Group::Egg && line.title == one.called => {
            tongue.egg(one.piece_of_egg(), pieces).to_owned()
        }
        _ => small_in(&line.counted_title(pieces), tongue),
    }
}

/// A title within a sentence of that language: German nouns keep their capital.
#[must_use]
pub fn small_in(title: &str, tongue: Tongue) -> String {
    if tongue.has_capital_nouns() { title.split(" (").next().unwrap_or(title).to_owned() } else { small(title) }
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
    bare_percent_in(share, Tongue::default())
}

/// The same in a language.
#[must_use]
pub fn bare_percent_in(share: Fraction, tongue: Tongue) -> String {
    tongue.print.bakers_percent(share).trim_end_matches(['%', print::NO_BREAK_SPACE]).to_owned()
}

/// A weight for a column headed "g"; empty where there is none.
#[must_use]
pub fn bare_grams(mass: Mass) -> String {
    bare_grams_in(mass, Tongue::default())
}

/// The same in a language.
#[must_use]
pub fn bare_grams_in(mass: Mass, tongue: Tongue) -> String {
    if mass == Mass::ZERO {
        String::new()
    } else {
        tongue.print.mass(mass).trim_end_matches(['g', print::NO_BREAK_SPACE]).to_owned()
    }
}

/// A figure, or "at least" where an ingredient's part of it is not known.
#[must_use]
pub fn counted(figure: &Counted) -> String {
    counted_in(figure, Tongue::default())
}

/// The same in a language.
#[must_use]
pub fn counted_in(figure: &Counted, tongue: Tongue) -> String {
    let value = tongue.print.percent(figure.value, 1);
    if figure.missing.is_empty() {
        return value;
    }
    let names: Vec<&str> = figure.missing.iter().map(|missing| missing.ingredient.as_str()).collect();
    format!("{} {value} ({})", tongue.at_least(), tongue.not_counted(names.join(", ")))
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
