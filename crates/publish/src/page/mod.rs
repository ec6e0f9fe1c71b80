//! Pages as self-contained HTML: readable with scripts off and no network, on a phone and on paper.

pub(crate) mod figure;
mod formula;
mod index;
mod sheets;
mod stages;
mod table;

pub(crate) use formula::contained;
pub use formula::formula_page;
pub use index::index_page;
pub use sheets::sheets;

use maud::{DOCTYPE, Markup, PreEscaped, html};

const STYLE: &str = include_str!("style.css");

/// What every page is wrapped in.
struct Shell<'s> {
    title: &'s str,
    description: &'s str,
    language: &'s str,
    /// Structured data for the head, already safe to stand in a script.
    structured: Option<String>,
    /// What its scripts need, where it has any.
    scripted: Option<Scripted>,
}

/// Scripts of a page: what may run, how it looks, and the data and script that stand at its end.
struct Scripted {
    policy: &'static str,
    style: &'static str,
    end: Markup,
}

impl Shell<'_> {
    fn wrap(self, body: Markup) -> String {
        let page = html! {
            (DOCTYPE)
            html lang=(self.language) {
                head {
                    meta charset="utf-8";
                    meta name="viewport" content="width=device-width, initial-scale=1";
                    meta name="color-scheme" content="light dark";
                    title { (self.title) }
                    @if !self.description.is_empty() {
                        meta name="description" content=(self.description);
                    }
                    @if let Some(scripted) = &self.scripted {
                        meta http-equiv="Content-Security-Policy" content=(scripted.policy);
                    }
                    style { (PreEscaped(STYLE)) @if let Some(scripted) = &self.scripted { (PreEscaped(scripted.style)) } }
                    @if let Some(data) = self.structured {
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
fn first_sentence(text: &str) -> &str {
    let end = text.find(". ").map_or(text.len(), |at| at + 1);
    text[..end].trim()
}
