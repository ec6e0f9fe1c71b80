//! What pages say of themselves, in the language of their book: one catalogue of messages a language, and an accessor
//! a message. The words of the formula are its author's and are never touched.

mod catalogue;
mod day;
mod exchange;
mod label;
mod message;
mod page;
mod script;
mod sheet;
mod trade;

#[cfg(test)]
mod tests;

use catalogue::Catalogue;
use formula::read::German;
use quantity::print::Notation;
pub use script::CARRIED;
use std::fmt;
use std::sync::LazyLock;

/// The language that a page speaks, and how it writes figures.
#[derive(Clone, Copy)]
pub struct Tongue {
    catalogue: &'static Catalogue,
    /// How figures are written.
    pub print: Notation,
}

static BRITISH: LazyLock<Catalogue> = LazyLock::new(|| Catalogue::of("en-GB", &[include_str!("../../words/en-GB.ftl")]));
static AMERICAN: LazyLock<Catalogue> =
    LazyLock::new(|| Catalogue::of("en-US", &[include_str!("../../words/en-GB.ftl"), include_str!("../../words/en-US.ftl")]));
static GERMAN: LazyLock<Catalogue> = LazyLock::new(|| Catalogue::of("de", &[include_str!("../../words/de.ftl")]));
static AUSTRIAN: LazyLock<Catalogue> =
    LazyLock::new(|| Catalogue::of("de-AT", &[include_str!("../../words/de.ftl"), include_str!("../../words/de-AT.ftl")]));
// Switzerland writes no ß.
static SWISS: LazyLock<Catalogue> =
    LazyLock::new(|| Catalogue::of("de-CH", &[&include_str!("../../words/de.ftl").replace('ß', "ss")]));

impl Tongue {
    /// The words for a language as BCP 47 writes it: German of any country, American English, else British English.
    #[must_use]
    pub fn of(language: &str) -> Self {
        if let Some(german) = German::of(language) {
            Self::german(german)
        } else if crate::spelling::is_american(language) {
            Self { catalogue: &AMERICAN, print: quantity::print::ENGLISH }
        } else {
            Self::default()
        }
    }

    /// What a language calls itself, or its tag where there is no catalogue of it.
    #[must_use]
    pub fn name_of(language: &str) -> &str {
        let tongue = Self::of(language);
        let is_known = !tongue.is_english() || language.to_ascii_lowercase().starts_with("en");
        if is_known { tongue.language_name() } else { language }
    }

    /// German of a country, with the marks of CLDR: what parts decimals, and what groups of three digits.
    fn german(german: German) -> Self {
        let (catalogue, point, group) = match german {
            German::Common => (&GERMAN, ',', '.'),
            German::Austrian => (&AUSTRIAN, ',', '\u{a0}'),
            German::Swiss => (&SWISS, '.', '\''),
        };
        let words = Self { catalogue, print: quantity::print::ENGLISH };
        let print = Notation {
            point,
            group,
            grouped_from: 4,
            to: words.figure_to(),
            cups: (words.figure_cup(), words.figure_cups()),
            tablespoon: words.figure_tablespoon(),
            teaspoon: words.figure_teaspoon(),
        };
        Self { print, ..words }
    }

    /// Whether it is English of any country.
    #[must_use]
    pub fn is_english(self) -> bool {
        self.catalogue.language.starts_with("en")
    }

    /// Whether nouns keep their capital within a sentence.
    #[must_use]
    pub fn has_capital_nouns(self) -> bool {
        self.catalogue.language.starts_with("de")
    }

    /// A title as lists order it; German counts an umlaut as its plain letter, as DIN 5007 asks of words.
    #[must_use]
    pub fn in_order(self, title: &str) -> String {
        let small = title.to_lowercase();
        let plain = [("ä", "a"), ("ö", "o"), ("ü", "u"), ("ß", "ss")];
        if self.is_english() { small } else { plain.iter().fold(small, |title, (from, to)| title.replace(from, to)) }
    }
}

impl Default for Tongue {
    fn default() -> Self {
        Self { catalogue: &BRITISH, print: quantity::print::ENGLISH }
    }
}

impl PartialEq for Tongue {
    fn eq(&self, other: &Self) -> bool {
        self.catalogue.language == other.catalogue.language
    }
}

impl Eq for Tongue {}

impl fmt::Debug for Tongue {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Tongue({})", self.catalogue.language)
    }
}
