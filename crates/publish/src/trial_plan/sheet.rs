//! A plan for a trial on paper: each day's batches for whoever bakes, and labels for the bowls that say no more than
//! their codes.

use super::Laid;
use crate::page::alone;
use maud::html;

const STYLE: &str = include_str!("sheet.css");

/// One page with the batches of each day in their order, and after them the labels to cut out.
#[must_use]
pub fn sheet(laid: &Laid) -> String {
    let plan = laid.plan;
    let names: Vec<&str> = plan.factors.iter().map(|factor| factor.name.as_str()).collect();
    let title = format!("A trial of {}", names.join(", "));
    let body = html! {
        h1 { (title) }
        p { "Bake in this order, which is random (seed " (plan.seed) "), and change nothing else. Keep this sheet from whoever tastes." }
        @for (day, number) in plan.days.iter().zip(1..) {
            h2 { "Day " (number) }
            table {
                thead { tr {
                    th scope="col" { "batch" } th scope="col" { "bowl" }
                    @for name in &names { th scope="col" { (name) } }
                    th scope="col" { "begun" } th scope="col" { "seen" }
                } }
                tbody {
                    @for (batch, place) in day.iter().zip(1..) {
                        tr {
                            th scope="row" { (place) } td.bowl { (batch.code) }
                            @for (factor, level) in plan.factors.iter().zip(&batch.levels) { td { (factor.levels.get(*level).map_or("", String::as_str)) } }
                            td {} td {}
                        }
                    }
                }
            }
        }
        section.bowls {
            h1 { "Labels for the bowls" }
            ul { @for batch in plan.days.iter().flatten() { li { (batch.code) } } }
        }
    };
    alone(&title, "en-GB", STYLE, &body)
}
