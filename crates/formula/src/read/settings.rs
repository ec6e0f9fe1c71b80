//! The book's settings and its kitchens.

use super::fields::{Fields, Reader};
use super::formula::{read_mass, read_measure, stem};
use super::stage::read_word;
use super::words::EggSize;
use super::working::{Working, read_working};
use super::{At, keys, toml_text};
use crate::source::Source;
use crate::{Checked, fault};
use quantity::{Kind, Length, Mass, SpoonSystem, Temperature};

/// What holds for a whole book.
#[derive(Clone, Debug, PartialEq)]
pub struct BookSettings {
    /// The book's title.
    pub title: String,
    /// The author line.
    pub author: Option<String>,
    /// The language of the texts, as BCP 47 writes it.
    pub language: String,
    /// Where the published book will stand.
    pub address: Option<String>,
    /// Whose spoons are meant, if the book says so.
    pub spoons: Option<SpoonSystem>,
    /// A second system printed beside.
    pub second_units: Option<SpoonSystem>,
    /// The egg meant where a line only says how many.
    pub eggs: EggSize,
    /// The kitchen formulas are worked out for.
    pub kitchen: Option<At<String>>,
    /// The currency of costs.
    pub currency: Option<String>,
}

impl Default for BookSettings {
    fn default() -> Self {
        Self {
            title: String::new(),
            author: None,
            language: "en-GB".to_owned(),
            address: None,
            spoons: None,
            second_units: None,
            eggs: EggSize::M,
            kitchen: None,
            currency: None,
        }
    }
}

/// A kitchen: how warm it is, and what it weighs with.
#[derive(Clone, Debug, PartialEq)]
pub struct Kitchen {
    /// The file's name, by which the book calls it.
    pub name: String,
    /// What it is called.
    pub title: String,
    /// How warm the room is.
    pub room: Option<Temperature>,
    /// How cold the fridge is.
    pub fridge: Option<Temperature>,
    /// How high above the sea.
    pub altitude: Option<Length>,
    /// Its scales, the finest first.
    pub scales: Vec<Scale>,
    /// Who works there, and when nobody is at hand.
    pub working: Working,
}

/// A scale.
#[derive(Clone, Debug, PartialEq)]
pub struct Scale {
    /// What it is called.
    pub title: String,
    /// The step of its display.
    pub shows: Mass,
    /// The most it can carry.
    pub up_to: Mass,
}

impl Kitchen {
    /// The scales assumed where no kitchen is stated: one in whole gram, as most homes have.
    #[must_use]
    pub fn assumed() -> Self {
        let scale = Scale { title: "kitchen scale".to_owned(), shows: Mass::grams(1.0), up_to: Mass::kilograms(5.0) };
        Self {
            name: String::new(),
            title: "a kitchen with a 1 g scale (assumed)".to_owned(),
            room: None,
            fridge: None,
            altitude: None,
            scales: vec![scale],
            working: Working::default(),
        }
    }
}

/// Reads `book.toml`.
#[must_use]
pub fn read_book(source: &Source) -> Checked<BookSettings> {
    let mut found = Vec::new();
    let table = toml_text::parse(&source.file, &source.text, &mut found);
    if found.iter().any(|found| found.code == fault::NESTED_TOO_DEEP.code) {
        return Checked { value: BookSettings::default(), diagnostics: found };
    }
    let mut reader = Reader { file: &source.file, found: &mut found, unread: Vec::new(), quiets: Vec::new() };
    let fields = Fields::open(&mut reader, &table, source.beginning(), &keys::BOOK);
    let defaults = BookSettings::default();
    let spoon_words: Vec<&str> = SpoonSystem::ALL.iter().map(|system| system.name()).collect();
    let mut text = |name: &str| fields.text(&mut reader, name).map(|text| At::new(text.value.to_owned(), text.span));
    let plain = |text: Option<At<String>>| text.map(|text| text.value);
    let mut settings = BookSettings {
        title: plain(text("title")).unwrap_or_default(),
        author: plain(text("author")),
        language: plain(text("language")).unwrap_or(defaults.language),
        address: plain(text("address")),
        kitchen: text("kitchen"),
        currency: plain(text("currency")),
        ..BookSettings::default()
    };
    settings.spoons = read_word(&mut reader, &fields, "spoons", &spoon_words, SpoonSystem::named);
    settings.second_units = read_word(&mut reader, &fields, "second-units", &spoon_words, SpoonSystem::named);
    settings.eggs = read_word(&mut reader, &fields, "eggs", EggSize::WORDS, EggSize::named).unwrap_or(defaults.eggs);
    Checked { value: settings, diagnostics: found }
}

/// Reads a kitchen.
#[must_use]
pub fn read_kitchen(source: &Source) -> Checked<Kitchen> {
    let mut found = Vec::new();
    let table = toml_text::parse(&source.file, &source.text, &mut found);
    if found.iter().any(|found| found.code == fault::NESTED_TOO_DEEP.code) {
        return Checked { value: Kitchen { name: stem(&source.file).to_owned(), ..Kitchen::assumed() }, diagnostics: found };
    }
    let mut reader = Reader { file: &source.file, found: &mut found, unread: Vec::new(), quiets: Vec::new() };
    let fields = Fields::open(&mut reader, &table, source.beginning(), &keys::KITCHEN);
    let mut temperature =
        |name| read_measure(&mut reader, &fields, name, Kind::Temperature).and_then(|m| m.value.temperature()).map(|t| t.to);
    let (room, fridge) = (temperature("room"), temperature("fridge"));
    let altitude = read_measure(&mut reader, &fields, "altitude", Kind::Length)
        .and_then(|m| m.value.length(SpoonSystem::Metric))
        .map(|l| l.to);
    let title = fields.text(&mut reader, "title").map(|title| title.value.to_owned()).unwrap_or_default();
    let mut scales: Vec<Scale> = fields
        .tables(&mut reader, "scale")
        .into_iter()
        .filter_map(|(table, span)| {
            let fields = Fields::open(&mut reader, table, span, &keys::SCALE);
            read_scale(&mut reader, &fields)
        })
        .collect();
    scales.sort_by(|a, b| a.shows.as_grams().total_cmp(&b.shows.as_grams()));
    let working = read_working(&mut reader, &fields);
    let value = Kitchen { name: stem(&source.file).to_owned(), title, room, fridge, altitude, scales, working };
    Checked { value, diagnostics: found }
}

fn read_scale(reader: &mut Reader, fields: &Fields) -> Option<Scale> {
    let shows = read_mass(reader, fields, "shows")?;
    if shows.value <= Mass::ZERO {
        reader.report(
            &fault::NOT_AN_AMOUNT,
            shows.span,
            "a scale that shows steps of nothing cannot be".to_owned(),
            "write shows = \"1 g\"",
        );
        return None;
    }
    let up_to = read_mass(reader, fields, "up-to").map_or(Mass::kilograms(5.0), |mass| mass.value);
    let title = fields.text(reader, "title").map_or("scale", |title| title.value).to_owned();
    Some(Scale { title, shows: shows.value, up_to })
}
