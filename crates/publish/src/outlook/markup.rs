//! A forecast for a page that is looked at while a formula is shaped: a chapter a part that opens and closes.

use super::story::Told;
use maud::{Markup, html};

/// The parts of a story as chapters, all but its title; each is known by its heading.
#[must_use]
pub fn markup(story: &[Told]) -> Markup {
    let begins: Vec<usize> = (0..story.len()).filter(|at| matches!(story[*at], Told::Heading(_))).collect();
    let preface = &story[..begins.first().copied().unwrap_or(story.len())];
    let ends = begins.iter().skip(1).copied().chain([story.len()]);
    html! {
        div #preface { (parts(preface)) }
        @for (begin, end) in begins.iter().zip(ends) {
            @if let Told::Heading(heading) = &story[*begin] {
                section.chapter id={ "chapter-" (key(heading)) } {
                    h3 { (heading) }
                    (parts(&story[begin + 1..end]))
                }
            }
        }
    }
}

fn parts(story: &[Told]) -> Markup {
    html! {
        @for told in story {
            @match told {
                Told::Saying(line) => p { (line.trim()) },
                Told::Drawing(rows) => pre.drawing { (rows) },
                Told::Title(_) | Told::Heading(_) => {}
            }
        }
    }
}

/// A heading as it stands in an address: its letters and digits, joined.
fn key(heading: &str) -> String {
    let plain = |c: char| if c.is_alphanumeric() { c.to_ascii_lowercase() } else { '-' };
    heading.chars().map(plain).collect()
}
