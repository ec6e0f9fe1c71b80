//! The book's index: every formula with what it makes and how long it takes.

use super::{Shell, first_sentence};
use crate::words::makes;
use formula::Formula;
use formula::read::BookSettings;
use maud::html;
use plan::hours;
use quantity::{TimeSpan, print};

/// The index of a book.
#[must_use]
pub fn index_page(formulas: &[Formula], settings: &BookSettings) -> String {
    let title = if settings.title.is_empty() { "Formulas" } else { &settings.title };
    let body = html! {
        main {
            header.head {
                h1 { (title) }
                @if let Some(author) = &settings.author { p.byline { (author) } }
            }
            ul.index {
                @for formula in formulas {
                    li {
                        h2 { a href={ (formula.name) ".html" } { (formula.head.title) } }
                        @if !formula.head.intro.is_empty() { p { (first_sentence(&formula.head.intro)) } }
                        p.facts { (facts(formula).join(" · ")) }
                    }
                }
            }
        }
    };
    Shell { title, description: "", language: &settings.language, structured: None, scripted: None }.wrap(body)
}

fn facts(formula: &Formula) -> Vec<String> {
    let mut facts: Vec<String> = formula.components.first().map(|main| vec![makes(main)]).unwrap_or_default();
    let total = hours(formula).total;
    if total.to > TimeSpan::ZERO {
        facts.push(format!("{} from start to table", print::time(print::rounded_time(total))));
    }
    facts.extend(formula.head.tags.iter().cloned());
    facts
}
