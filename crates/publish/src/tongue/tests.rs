//! Catalogues are whole: no message is missing, none is left over, and each takes what its accessor fills in.

use super::message::Message;
use super::{CARRIED, Tongue, day, exchange, label, page, sheet, trade};
use crate::page::ON_PAPER;
use bench::cautions::NAMES;
use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};
use formula::ingredient::allergens;
use formula::read::{Action, StageKind};
use plan::day::Station;
use std::collections::{BTreeMap, BTreeSet};

const BRITISH: &str = include_str!("../../words/en-GB.ftl");
const AMERICAN: &str = include_str!("../../words/en-US.ftl");
const GERMAN: &str = include_str!("../../words/de.ftl");
const AUSTRIAN: &str = include_str!("../../words/de-AT.ftl");

/// Weekdays from Monday on and months, by number.
const NUMBERS: [&str; 12] = ["1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12"];

/// What a message is filled with: what is printed, and what chooses a plural.
#[derive(Debug, Default, PartialEq)]
struct Filling {
    printed: BTreeSet<String>,
    chooses: BTreeSet<String>,
}

fn messages(text: &str) -> BTreeMap<String, Filling> {
    let read = fluent_syntax::parser::parse(text).unwrap_or_else(|(_, wrong)| panic!("{wrong:?}"));
    let mut all = BTreeMap::new();
    for entry in read.body {
        let Entry::Message(message) = entry else { continue };
        let mut filling = Filling::default();
        follow(&message.value.expect("a value"), &mut filling);
        let twice = all.insert(message.id.name.to_owned(), filling);
        assert!(twice.is_none(), "{} stands twice", message.id.name);
    }
    all
}

fn follow(pattern: &Pattern<&str>, filling: &mut Filling) {
    for element in &pattern.elements {
        let PatternElement::Placeable { expression } = element else { continue };
        match expression {
            Expression::Inline(InlineExpression::VariableReference { id }) => drop(filling.printed.insert(id.name.to_owned())),
            Expression::Select { selector: InlineExpression::VariableReference { id }, variants } => {
                filling.chooses.insert(id.name.to_owned());
                variants.iter().for_each(|variant| follow(&variant.value, filling));
            }
            other => panic!("an expression that no page uses: {other:?}"),
        }
    }
}

/// Every message that a page, a label or a sheet may ask for, with what it is filled with.
fn asked() -> BTreeMap<String, Vec<&'static str>> {
    let parts: [&[Message]; 6] = [page::PAGE, trade::TRADE, exchange::EXCHANGE, label::LABEL, sheet::SHEET, day::DAY];
    let accessors = parts.into_iter().flatten().map(|message| (message.id.to_owned(), message.takes.to_vec()));
    let carried = CARRIED.iter().map(|(id, takes)| ((*id).to_owned(), takes.to_vec()));
    let list = |prefix: &str, words: Vec<&str>| -> Vec<(String, Vec<&'static str>)> {
        words.iter().map(|word| (format!("{prefix}{}", word.replace('-', "_")), Vec::new())).collect()
    };
    let codes = allergens().iter().map(|one| one.code.as_str()).collect();
    let lists = [
        list("action_", Action::WORDS.to_vec()),
        list("kind_", StageKind::WORDS.to_vec()),
        list("caution_", NAMES.to_vec()),
        list("caution_text_", NAMES.to_vec()),
        list("allergen_", codes),
        list("paper_", ON_PAPER.to_vec()),
        list("station_", Station::ALL.map(crate::day::station).to_vec()),
        list("weekday_", NUMBERS[..7].to_vec()),
        list("month_", NUMBERS.to_vec()),
    ];
    let mut all = BTreeMap::new();
    for (id, takes) in accessors.chain(carried).chain(lists.into_iter().flatten()) {
        if let Some(other) = all.insert(id.clone(), takes.clone()) {
            let order = |takes: Vec<&'static str>| takes.into_iter().collect::<BTreeSet<_>>();
            assert_eq!(order(other), order(takes), "{id} is filled differently by page and script");
        }
    }
    all
}

#[test]
fn every_catalogue_has_every_message_and_no_other() {
    let asked = asked();
    for (language, text) in [("en-GB", BRITISH), ("de", GERMAN)] {
        let told = messages(text);
        let missing: Vec<_> = asked.keys().filter(|id| !told.contains_key(*id)).collect();
        let unused: Vec<_> = told.keys().filter(|id| !asked.contains_key(*id)).collect();
        assert!(missing.is_empty() && unused.is_empty(), "{language}: missing {missing:?}, asked for by nothing {unused:?}");
    }
    for (country, whole, other) in [("en-US", BRITISH, AMERICAN), ("de-AT", GERMAN, AUSTRIAN)] {
        let whole = messages(whole);
        let unknown: Vec<_> = messages(other).into_keys().filter(|id| !whole.contains_key(id)).collect();
        assert!(unknown.is_empty(), "{country} says {unknown:?} otherwise, which is said nowhere");
    }
}

#[test]
fn every_message_takes_what_it_is_filled_with() {
    let asked = asked();
    for (language, text) in [("en-GB", BRITISH), ("en-US", AMERICAN), ("de", GERMAN), ("de-AT", AUSTRIAN)] {
        for (id, filling) in messages(text) {
            let takes = &asked[&id];
            let printed: BTreeSet<String> =
                takes.iter().filter(|name| **name != "count").map(|name| (*name).to_owned()).collect();
            let chooses: BTreeSet<String> =
                takes.iter().filter(|name| **name == "count").map(|name| (*name).to_owned()).collect();
            assert_eq!(filling, Filling { printed, chooses }, "{language}: {id}");
        }
    }
}

#[test]
fn every_message_can_be_said() {
    for tongue in ["en-GB", "en-US", "de", "de-AT", "de-CH"].map(Tongue::of) {
        for (id, takes) in asked() {
            let with: Vec<_> = takes.iter().map(|name| (*name, if *name == "count" { 2.0.into() } else { "x".into() })).collect();
            let told = tongue.catalogue.told(&id, &with);
            assert!(told.as_ref().is_ok_and(|told| !told.is_empty()), "{tongue:?}: {id} is {told:?}");
        }
    }
}

/// Names and figures of every message that the scripts say, as they stand in their source.
fn said(script: &str) -> Vec<(String, BTreeSet<String>)> {
    let calls = script.split("say('").skip(1).filter_map(|call| {
        let (name, rest) = call.split_once('\'')?;
        let Some(figures) = rest.strip_prefix(", {") else { return Some((name.to_owned(), BTreeSet::new())) };
        Some((name.to_owned(), keys(figures)))
    });
    calls.collect()
}

/// The keys of an object up to the brace that ends it.
fn keys(object: &str) -> BTreeSet<String> {
    let (mut depth, mut part, mut parts) = (0, String::new(), Vec::new());
    for letter in object.chars() {
        match letter {
            '}' if depth == 0 => break,
            ',' if depth == 0 => parts.push(std::mem::take(&mut part)),
            '(' | '{' | '[' => depth += 1,
            ')' | '}' | ']' => depth -= 1,
            _ => {}
        }
        part.push(letter);
    }
    parts.push(part);
    let key = |part: &String| part.trim_start_matches([',', ' ']).split(':').next().unwrap_or_default().trim().to_owned();
    parts.iter().map(key).filter(|key| !key.is_empty()).collect()
}

#[test]
fn scripts_say_what_the_page_carries_and_have_no_words_of_their_own() {
    let carried: BTreeMap<&str, BTreeSet<String>> =
        CARRIED.iter().map(|(id, takes)| (*id, takes.iter().map(|name| (*name).to_owned()).collect())).collect();
    let mut unsaid: BTreeSet<&str> = carried.keys().copied().collect();
    for script in crate::reader::MODULES {
        for (name, figures) in said(script) {
            let takes = carried.get(&*name).unwrap_or_else(|| panic!("no page carries “{name}”"));
            assert_eq!(&figures, takes, "“{name}” is filled with what it does not take");
            unsaid.remove(&*name);
        }
        for line in script.lines().map(str::trim).filter(|line| !line.starts_with("//")) {
            let texts = line.split(['\'', '`']).skip(1).step_by(2);
            let is_told = |text: &str| {
                text.split_once(' ').is_some_and(|(first, next)| is_word(first) && next.split(' ').next().is_some_and(is_word))
            };
            let wrong: Vec<&str> = texts.filter(|text| is_told(text)).collect();
            assert!(wrong.is_empty(), "words of a script's own: {wrong:?} in {line}");
        }
    }
    assert!(unsaid.is_empty(), "carried and never said: {unsaid:?}");
}

fn is_word(text: &str) -> bool {
    !text.is_empty() && text.chars().all(|letter| letter.is_ascii_alphabetic() || letter == ',')
}

/// CLDR, plurals.xml, of both languages: "one" is i = 1 and v = 0, all else "other"; the samples are CLDR's own.
#[test]
fn plurals_are_those_of_cldr() {
    let samples = [0.0, 1.0, 2.0, 3.0, 11.0, 16.0, 21.0, 100.0, 101.0, 1000.0, 10_000.0, 1_000_000.0];
    for (language, one, other) in [("en-GB", "formula", "formulas"), ("de", "Rezept", "Rezepte")] {
        let locale: icu_locale_core::Locale = language.parse().expect("a language");
        let rules = icu_plurals::PluralRules::try_new(locale.into(), Default::default()).expect("its rules");
        for count in samples {
            let word = if count == 1.0 { one } else { other };
            assert_eq!(Tongue::of(language).formulas_counted(count, "n".to_owned()), format!("n {word}"), "{language} {count}");
            let is_one = rules.category_for(count as u64) == icu_plurals::PluralCategory::One;
            assert_eq!(is_one, count == 1.0, "CLDR as ICU4X reads it: {language} {count}");
        }
    }
}

/// CLDR, as ICU4X reads it: in Germany a decimal comma and points between groups of three from four digits on, in Austria
/// spaces, in Switzerland a point and apostrophes; the minus is the SI brochure's in every language.
#[test]
fn german_numbers_are_those_of_cldr() {
    use icu_decimal::input::Decimal;
    for language in ["de", "de-AT", "de-CH"] {
        let locale: icu_locale_core::Locale = language.parse().expect("a language");
        let icu = icu_decimal::DecimalFormatter::try_new(locale.into(), Default::default()).expect("its numbers");
        let print = Tongue::of(language).print;
        for text in ["0", "0.5", "7.25", "999", "1000", "1234.5", "12345.67", "1234567.891", "-1234.5"] {
            let decimal: Decimal = text.parse().expect("a number");
            let expected = icu.format(&decimal).to_string().replace('-', "\u{2212}");
            assert_eq!(print.number(text.parse().expect("a number"), 3), expected, "{language}");
        }
    }
}

/// No ß in Switzerland, as its Federal Chancellery writes ("Rechtschreibung", 2017, from memory); Jänner in Austria
/// (CLDR, de-AT, from memory).
#[test]
fn german_of_a_country_is_spelt_as_there() {
    let swiss = Tongue::of("de-CH");
    assert!(asked().keys().all(|id| !swiss.catalogue.fixed(id).contains('ß')));
    assert_eq!((swiss.egg_white(), swiss.label_protein()), ("Eiweiss", "Eiweiss"));
    let january: jiff::ZonedDateTime = "2026-01-06T09:00[UTC]".parse().expect("a moment");
    let told = ["de", "de-AT", "de-CH"].map(|language| Tongue::of(language).day(&january));
    assert_eq!(told, ["Dienstag, 6. Januar", "Dienstag, 6. Jänner", "Dienstag, 6. Januar"]);
}

/// A decimal comma, a dash between ends of one unit and no space that breaks before a unit, after the SI brochure (9th
/// edition, 5.4); the short words of German kitchens are from memory.
#[test]
fn german_figures_read_as_german() {
    use quantity::{Between, Count, Mass, SpoonSystem, Temperature, TimeSpan, Volume};
    let print = Tongue::of("de").print;
    assert_eq!(print.mass(Mass::grams(1234.5)), "1.234\u{a0}g");
    assert_eq!(print.mass(Mass::grams(7.5)), "7,5\u{a0}g");
    let range = Between { from: Temperature::celsius(23.5), to: Temperature::celsius(25.0) };
    assert_eq!(print.celsius(range), "23,5–25\u{a0}°C");
    let hours = Between { from: TimeSpan::minutes(70.0), to: TimeSpan::minutes(205.0) };
    assert_eq!(print.time(hours), "1\u{a0}h 10\u{a0}min bis 3\u{a0}h 25\u{a0}min");
    assert_eq!(print.count(Count::pieces(1.5)), "1½");
    let spoons = |volume: f64| print.spoons(Volume::millilitres(volume), SpoonSystem::Metric).map(|(told, _)| told);
    assert_eq!(spoons(500.0).as_deref(), Some("2\u{a0}Tassen"));
    assert_eq!(spoons(15.0).as_deref(), Some("1\u{a0}EL"));
    assert_eq!(spoons(2.5).as_deref(), Some("½\u{a0}TL"));
}
