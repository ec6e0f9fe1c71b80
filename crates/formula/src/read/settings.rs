//! The book's settings.

use super::fields::{Fields, Reader};
use super::head::Head;
use super::stage::read_word;
use super::words::{EggSize, PictureKeeping};
use super::{At, keys, toml_text};
use crate::source::Source;
use crate::{Checked, fault};
use quantity::SpoonSystem;
use std::borrow::Cow;

/// What holds for a whole book.
#[derive(Clone, Debug, PartialEq)]
pub struct BookSettings {
    /// The book's title.
    pub title: String,
    /// The author line.
    pub author: Option<String>,
    /// The language of the texts, as BCP 47 writes it.
    pub language: String,
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
    /// Name and address of whoever answers for what is sold.
    pub sold_by: Option<String>,
    /// Where the pages will stand, with a slash at its end.
    pub address: Option<String>,
    /// Where the pictures of pages are kept.
    pub photographs: PictureKeeping,
}

impl BookSettings {
    /// Whether the book is written in German, of any country.
    #[must_use]
    pub fn is_german(&self) -> bool {
        is_german(&self.language)
    }

    /// The language of a formula's texts: its own, or the book's.
    #[must_use]
    pub fn language_of<'s>(&'s self, head: &'s Head) -> &'s str {
        head.language.as_deref().unwrap_or(&self.language)
    }

    /// The settings as they hold for a formula, which may have a language of its own.
    #[must_use]
    pub fn told_for(&self, head: &Head) -> Cow<'_, Self> {
        match &head.language {
            Some(language) if *language != self.language => Cow::Owned(Self { language: language.clone(), ..self.clone() }),
            _ => Cow::Borrowed(self),
        }
    }
}

/// A language as BCP 47 writes it; what cannot be one is reported.
pub fn read_language(reader: &mut Reader, text: At<&str>) -> Option<String> {
    if is_language(text.value) {
        return Some(text.value.to_owned());
    }
    let message = format!("“{}” is no language", text.value);
    reader.report(&fault::NOT_A_LANGUAGE, text.span, message, "write it as \"en-GB\", \"de\" or \"fr\"");
    None
}

/// Whether a text has the form of a language tag (RFC 5646, 2.1): two or three letters, then parts of two to eight letters
/// and digits.
fn is_language(text: &str) -> bool {
    let mut parts = text.split('-');
    let is_first = |part: &str| (2..=3).contains(&part.len()) && part.chars().all(|c| c.is_ascii_alphabetic());
    let is_further = |part: &str| (2..=8).contains(&part.len()) && part.chars().all(|c| c.is_ascii_alphanumeric());
    parts.next().is_some_and(is_first) && parts.all(is_further)
}

/// The German of a country, which spells and names some things its own way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum German {
    /// That of Germany, and of every country without a way of its own here.
    Common,
    /// Austria's.
    Austrian,
    /// Switzerland's, and Liechtenstein's.
    Swiss,
}

impl German {
    /// The German that a language is, as BCP 47 writes it; none if it is another language.
    #[must_use]
    pub fn of(language: &str) -> Option<Self> {
        let mut parts = language.split('-');
        let is_german = parts.next().is_some_and(|first| first.eq_ignore_ascii_case("de"));
        let country = parts.find_map(|part| match part.to_ascii_uppercase().as_str() {
            "AT" => Some(Self::Austrian),
            "CH" | "LI" => Some(Self::Swiss),
            _ => None,
        });
        is_german.then(|| country.unwrap_or(Self::Common))
    }
}

/// Whether a language, as BCP 47 writes it, is German of any country.
#[must_use]
pub fn is_german(language: &str) -> bool {
    German::of(language).is_some()
}

impl Default for BookSettings {
    fn default() -> Self {
        Self {
            title: String::new(),
            author: None,
            language: "en-GB".to_owned(),
            spoons: None,
            second_units: None,
            eggs: EggSize::M,
            kitchen: None,
            currency: None,
            sold_by: None,
            address: None,
            photographs: PictureKeeping::Embedded,
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
        language: defaults.language,
        kitchen: text("kitchen"),
        currency: plain(text("currency")),
        sold_by: plain(text("sold-by")),
        ..BookSettings::default()
    };
    if let Some(language) =
        fields.text(&mut reader, "language").and_then(|text| read_language(&mut reader, At::new(text.value, text.span)))
    {
        settings.language = language;
    }
    settings.spoons = read_word(&mut reader, &fields, "spoons", &spoon_words, SpoonSystem::named);
    settings.second_units = read_word(&mut reader, &fields, "second-units", &spoon_words, SpoonSystem::named);
    settings.address = read_address(&mut reader, &fields);
    settings.photographs = read_word(&mut reader, &fields, "photographs", PictureKeeping::WORDS, PictureKeeping::named)
        .unwrap_or(defaults.photographs);
    settings.eggs = read_word(&mut reader, &fields, "eggs", EggSize::WORDS, EggSize::named).unwrap_or(defaults.eggs);
    Checked { value: settings, diagnostics: found }
}

/// The address of the published book, ended by a slash so that a page's name can follow.
fn read_address(reader: &mut Reader, fields: &Fields) -> Option<String> {
    let address = fields.text(reader, "address")?;
    if !is_address(address.value) {
        let message = format!("“{}” is no address that pages can stand at", address.value);
        reader.report(&fault::NOT_AN_ADDRESS, address.span, message, "write it in full: https://example.org/book/");
        return None;
    }
    Some(format!("{}/", address.value.trim_end_matches('/')))
}

/// Whether a text is an absolute address of the web as RFC 3986 writes it: scheme, host and path, no query or fragment.
fn is_address(text: &str) -> bool {
    let Some(rest) = text.strip_prefix("https://").or_else(|| text.strip_prefix("http://")) else { return false };
    let host = rest.split('/').next().unwrap_or_default();
    let is_host = |c: char| c.is_ascii_alphanumeric() || matches!(c, '.' | '-' | ':' | '[' | ']');
    let is_path = |c: char| c.is_ascii_alphanumeric() || "/-._~!$&'()*+,;=:@%".contains(c);
    host.starts_with(|c: char| c.is_ascii_alphanumeric() || c == '[')
        && host.chars().all(is_host)
        && rest.chars().all(|c| is_path(c) || is_host(c))
}
