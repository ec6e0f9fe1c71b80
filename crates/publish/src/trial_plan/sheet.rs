//! A plan for a trial on paper: each day's batches for whoever bakes, and labels for the bowls that say no more than
//! their codes.

use super::Laid;
use super::text::{made_up, tasting};
use crate::page::alone;
use maud::{Markup, html};

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
        (days(laid, true))
        section.bowls {
            h1 { "Labels for the bowls" }
            ul { @for batch in plan.days.iter().flatten() { li { (batch.code) } } }
        }
    };
    alone(&title, "en-GB", STYLE, &body)
}

/// The same for a page of the workbench: how the plan is made up, the batches, and who must taste them.
#[must_use]
pub fn html(laid: &Laid) -> Markup {
    html! {
        p { (made_up(laid.plan)) }
        (days(laid, false))
        p { "Bake in this order, which is random (seed " (laid.plan.seed) "), and change nothing else." }
        p { (tasting(laid)) }
    }
}

/// Each day's batches in their order; on paper with room to write.
fn days(laid: &Laid, is_paper: bool) -> Markup {
    let plan = laid.plan;
    html! {
        @for (day, number) in plan.days.iter().zip(1..) {
            h2 { "Day " (number) }
            div.scroll tabindex=[(!is_paper).then_some("0")] role=[(!is_paper).then_some("region")] aria-label=[(!is_paper).then(|| format!("Day {number}"))] {
                table {
                    thead { tr {
                        th scope="col" { "batch" } th scope="col" { "bowl" }
                        @for factor in &plan.factors { th scope="col" { (factor.name) } }
                        @if is_paper { th scope="col" { "begun" } th scope="col" { "seen" } }
                    } }
                    tbody {
                        @for (batch, place) in day.iter().zip(1..) {
                            tr {
                                th scope="row" { (place) } td.bowl { (batch.code) }
                                @for (factor, level) in plan.factors.iter().zip(&batch.levels) { td { (factor.levels.get(*level).map_or("", String::as_str)) } }
                                @if is_paper { td {} td {} }
                            }
                        }
                    }
                }
            }
        }
    }
}
