//! An answer on a page.

use super::text::{amount, equations, grounds};
use crate::exchanged::{changes_markup, list};
use crate::words::Units;
use bench::target::Solved;
use maud::{Markup, html};

/// An answer: its figures with their grounds, what cannot be met, and the formula as it then is.
#[must_use]
pub fn markup(solved: &Solved, units: Units) -> Markup {
    let unmet = solved.unmet.iter().map(|one| {
        let (wanted, reached) = (amount(&one.wanted, units), amount(&one.reached, units));
        format!("{} {wanted}: {reached} is the nearest; {}", one.aim, one.why)
    });
    html! {
        (figures(solved, units))
        (list("What cannot be met", &unmet.collect::<Vec<_>>()))
        @match &solved.changed {
            Some(changed) => (changes_markup(changed)),
            None => { (list("To mind", &solved.minded)) p.fine { "Reckoned by: " (solved.grounds) "." } },
        }
        (list("Where the figures come from", &equations(solved)))
    }
}

fn figures(solved: &Solved, units: Units) -> Markup {
    html! {
        @if !solved.figures.is_empty() {
            h3 { "The answer" }
            div.scroll tabindex="0" role="group" aria-label="The answer" {
                table {
                    thead { tr { th scope="col" { "what" } th.number scope="col" { "figure" } th.number scope="col" { "from … to" } th scope="col" { "grounds" } } }
                    tbody {
                        @for figure in &solved.figures {
                            @let band = figure.known.band.as_ref().map(|(low, high)| format!("{} … {}", amount(low, units), amount(high, units)));
                            tr {
                                th scope="row" { (figure.what) } td.number { b { (amount(&figure.known.value, units)) } }
                                td.number { (band.unwrap_or_default()) } td { (grounds(&figure.known.origin)) }
                            }
                        }
                    }
                }
            }
        }
    }
}
