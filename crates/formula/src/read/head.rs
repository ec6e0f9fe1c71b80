//! What stands before a formula's components: it is carried along as it was read.

use super::fields::{Fields, Reader};
use super::label::{ForLabel, read_label};
use super::settings::read_language;
use super::working::DayTime;
use super::{At, keys};
use crate::fault;
use crate::source::Source;
use std::ops::Range;
use toml::de::DeTable;

/// What stands before the components.
#[derive(Clone, Debug, Default)]
pub struct Head {
    /// What readers see.
    pub title: String,
    /// The introduction.
    pub intro: String,
    /// The language of its texts, where that is not the book's.
    pub language: Option<String>,
    /// The formulas of this book that are the same recipe in other languages.
    pub translations: Vec<At<String>>,
    /// Words to find it by.
    pub tags: Vec<String>,
    /// Where it comes from.
    pub source: Option<String>,
    /// What else a reader should know.
    pub notes: Vec<String>,
    /// How it keeps.
    pub storage: Option<String>,
    /// When it usually comes to the table.
    pub served_at: Option<DayTime>,
    /// A picture.
    pub photograph: Option<Photograph>,
    /// The tastings that its page may cite.
    pub evidence: Vec<At<String>>,
    /// What a label needs to know.
    pub label: ForLabel,
    /// Where these texts stand.
    pub places: Places,
}

impl Head {
    /// The head of a file of which nothing is read yet.
    pub fn untitled(source: &Source) -> Self {
        Self { places: Places { title: source.beginning(), ..Places::default() }, ..Self::default() }
    }
}

/// Where the texts of a formula's head stand.
#[derive(Clone, Debug, Default)]
pub struct Places {
    /// The title, or the file's beginning.
    pub title: Range<usize>,
    /// The introduction.
    pub intro: Range<usize>,
    /// The storage.
    pub storage: Range<usize>,
    /// Each tag.
    pub tags: Vec<Range<usize>>,
    /// Each note.
    pub notes: Vec<Range<usize>>,
}

/// A picture.
#[derive(Clone, Debug)]
pub struct Photograph {
    /// Its path in the book.
    pub file: String,
    /// Where that stands.
    pub place: crate::Place,
    /// What it shows.
    pub alt: String,
}

/// Reads what stands before the components.
pub fn read_head(reader: &mut Reader, source: &Source, fields: &Fields) -> Head {
    let mut head = Head::untitled(source);
    let mut text = |name: &str, place: &mut Range<usize>| {
        let text = fields.text(reader, name)?;
        *place = text.span;
        Some(text.value.to_owned())
    };
    head.title = text("title", &mut head.places.title).unwrap_or_default();
    head.intro = text("intro", &mut head.places.intro).unwrap_or_default();
    head.storage = text("storage", &mut head.places.storage);
    head.source = text("source", &mut Range::default());
    head.language = fields.text(reader, "language").and_then(|text| read_language(reader, At::new(text.value, text.span)));
    head.translations = fields.texts(reader, "translations");
    let (tags, notes) = (fields.texts(reader, "tags"), fields.texts(reader, "notes"));
    head.places.tags = tags.iter().map(|tag| tag.span.clone()).collect();
    head.places.notes = notes.iter().map(|note| note.span.clone()).collect();
    (head.tags, head.notes) = (plain(tags), plain(notes));
    head.served_at = fields.text(reader, "served-at").and_then(|text| read_time(reader, At::new(text.value, text.span)));
    head.evidence = fields.texts(reader, "evidence");
    head.photograph = fields.table(reader, "photograph").and_then(|(table, span)| read_photograph(reader, table, span));
    head.label = fields.table(reader, "label").map(|(table, span)| read_label(reader, table, span)).unwrap_or_default();
    head
}

fn read_time(reader: &mut Reader, text: At<&str>) -> Option<DayTime> {
    let time = DayTime::read(text.value);
    if time.is_none() {
        let message = format!("“{}” is no time of the day", text.value);
        reader.report(&fault::NOT_HOURS_OF_THE_DAY, text.span, message, "write \"09:30\", on a clock of 24 hours");
    }
    time
}

fn plain(texts: Vec<At<String>>) -> Vec<String> {
    texts.into_iter().map(|text| text.value).collect()
}

fn read_photograph(reader: &mut Reader, table: &DeTable, span: Range<usize>) -> Option<Photograph> {
    let fields = Fields::open(reader, table, span, &keys::PHOTOGRAPH);
    let file = fields.text(reader, "file")?;
    let alt = fields.text(reader, "alt").map(|alt| alt.value.trim().to_owned()).unwrap_or_default();
    if alt.is_empty() {
        let message = format!("the photograph “{}” has no description", file.value);
        reader.report(
            &fault::ALT_TEXT_MISSING,
            file.span.clone(),
            message,
            "say in alt what the picture shows, for those who cannot see it",
        );
    }
    let place = reader.place(file.span);
    Some(Photograph { file: file.value.to_owned(), place, alt })
}
