//! Pages as self-contained HTML: readable with scripts off and no network, on a phone and on paper.

mod abroad;
mod alone;
mod day;
mod evidence;
pub(crate) mod figure;
mod formula;
mod index;
mod leaf;
mod lists;
mod sheets;
mod stages;
mod style;
mod table;

pub use abroad::xml_text;
pub(crate) use alone::alone;
pub use evidence::{Cited, evidence_name, evidence_page};
pub(crate) use formula::contained;
pub use formula::formula_page;
pub use index::index_page;
pub use leaf::{Leaf, ON_PAPER, OnPaper};
pub use lists::{LISTS, ingredients_page, tags_page};
pub use sheets::{beside, sheets};
pub(crate) use style::squeezed;

use ::formula::read::BookSettings;
use maud::{DOCTYPE, Markup, PreEscaped, html};
use style::STYLE;

/// The mark by which a page of this program is known from others that lie in the same folder.
pub const MARK: &str = "<meta name=\"generator\" content=\"Wellproved\">";

/// What every page is wrapped in.
struct Shell<'s> {
    title: &'s str,
    description: &'s str,
    settings: &'s BookSettings,
    /// The file's name in the book; empty for a page that stands alone.
    file: &'s str,
    /// The languages in which it stands, each with its page.
    alternates: Vec<(String, String)>,
    /// What the page is in the words of the Open Graph protocol.
    kind: &'static str,
    /// The address of its picture and what that shows.
    image: Option<(String, &'s str)>,
    /// Structured data for the head, already safe to stand in a script.
    structured: Option<String>,
    /// What its scripts need, where it has any.
    scripted: Option<Scripted>,
    /// How it looks beyond what all pages share.
    style: &'static str,
}

/// Scripts of a page: what may run, how it looks, and the data and script that stand at its end.
struct Scripted {
    policy: &'static str,
    style: &'static str,
    end: Markup,
}

impl<'s> Shell<'s> {
    /// A page that only lists or shows.
    const fn plain(title: &'s str, description: &'s str, settings: &'s BookSettings, file: &'s str) -> Self {
        Self {
            title,
            description,
            settings,
            file,
            alternates: Vec::new(),
            kind: "website",
            image: None,
            structured: None,
            scripted: None,
            style: "",
        }
    }

    fn wrap(self, body: Markup) -> String {
        let page = html! {
            (DOCTYPE)
            html lang=(self.settings.language) {
                head {
                    meta charset="utf-8";
                    meta name="viewport" content="width=device-width, initial-scale=1";
                    meta name="color-scheme" content="light dark";
                    (PreEscaped(MARK))
                    title { (self.title) }
                    @if !self.description.is_empty() {
                        meta name="description" content=(self.description);
                    }
                    (abroad::told(&self))
                    @if let Some(scripted) = &self.scripted {
                        meta http-equiv="Content-Security-Policy" content=(scripted.policy);
                    }
                    style {
                        (PreEscaped(STYLE.as_str())) (PreEscaped(self.style))
                        @if let Some(scripted) = &self.scripted { (PreEscaped(scripted.style)) }
                    }
                    @if let Some(data) = &self.structured {
                        script type="application/ld+json" { (PreEscaped(data)) }
                    }
                }
                body { (body) @if let Some(scripted) = self.scripted { (scripted.end) } }
            }
        };
        page.into_string()
    }
}

/// Paragraphs of an author's text, parted by empty lines.
fn paragraphs(text: &str) -> Markup {
    html! {
        @for paragraph in text.split("\n\n").map(str::trim).filter(|paragraph| !paragraph.is_empty()) {
            p { (paragraph) }
        }
    }
}

/// The first sentence of an author's text, for lists.
pub fn first_sentence(text: &str) -> &str {
    let end = text.find(". ").map_or(text.len(), |at| at + 1);
    text[..end].trim()
}
