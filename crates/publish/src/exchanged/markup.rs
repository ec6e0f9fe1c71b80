//! What an exchange changes, on a page: before and after side by side, the times, and what cannot be kept.

use super::text::figures;
use crate::comparison;
use crate::outlook::known;
use bench::compare::Difference;
use bench::exchange::Exchanged;
use maud::{Markup, html};
use quantity::print;

/// What an exchange changes, with the grounds of its figures.
#[must_use]
pub fn markup(exchanged: &Exchanged) -> Markup {
    let grounds: Vec<String> = exchanged.rests_on.iter().filter_map(known::ground).collect();
    html! { (changes(exchanged)) (list("Where the figures come from", &grounds)) }
}

/// The same without its equations, which stand with those of the answer that asked for it.
pub fn changes(exchanged: &Exchanged) -> Markup {
    let found: Vec<String> = exchanged.found.iter().map(|found| format!("{} ({})", found.message, found.code)).collect();
    html! {
        (list("What cannot be kept", &exchanged.lost))
        (lines(exchanged))
        (times(exchanged))
        (list("To mind", &exchanged.minded))
        (list("Proof-reading would now say", &found))
        (comparison::markup(&exchanged.comparison, Difference::Slight))
        p.fine { "Reckoned by: " (exchanged.grounds) "." }
    }
}

/// A list under its heading; nothing where it is empty.
pub fn list(title: &str, items: &[String]) -> Markup {
    html! { @if !items.is_empty() { h3 { (title) } ul { @for item in items { li { (item) } } } } }
}

fn lines(exchanged: &Exchanged) -> Markup {
    html! {
        h3 { "Lines" }
        @if exchanged.lines.is_empty() { p { "No weight changes." } } @else {
            div.scroll tabindex="0" role="group" aria-label="Lines before and after" {
                table {
                    thead { tr {
                        th scope="col" { "stage" } th scope="col" { "line" }
                        th.number scope="col" { "before" } th.number scope="col" { "% of its flour" }
                        th.number scope="col" { "after" } th.number scope="col" { "% of its flour" }
                    } }
                    tbody {
                        @for line in &exchanged.lines {
                            @let (before, after) = (figures(line.before), figures(line.after));
                            tr {
                                td { (line.stage) } th scope="row" { (line.title) }
                                td.number { (before.0) } td.number { (before.1) } td.number { (after.0) } td.number { (after.1) }
                            }
                        }
                    }
                }
            }
        }
    }
}

fn times(exchanged: &Exchanged) -> Markup {
    html! {
        h3 { "New times in the method" }
        @if exchanged.times.is_empty() { p { "No time in the method changes." } } @else {
            div.scroll tabindex="0" role="group" aria-label="New times in the method" {
                table {
                    thead { tr { th scope="col" { "stage" } th scope="col" { "step" } th.number scope="col" { "before" } th.number scope="col" { "after" } } }
                    tbody {
                        @for new in &exchanged.times {
                            tr {
                                td { (new.stage) } th scope="row" { (new.action.word()) }
                                td.number { (new.before.map_or_else(|| "no time".to_owned(), print::time)) } td.number { (print::time(new.after)) }
                            }
                        }
                    }
                }
            }
        }
    }
}
