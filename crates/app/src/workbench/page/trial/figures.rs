//! What was noted of a trial so far, as a list and beside each field.

use crate::logbook::Logbook;
use crate::workbench::answer::Refusal;
use formula::Formula;
use formula::logging::{Figure, doubt, figures};
use maud::{Markup, html};
use publish::logged::{in_words, is_same_figure};
use quantity::print;

/// The figures that stand in no list: they are the trial's head.
const HEAD: [&str; 5] = ["title", "formula", "revision", "kitchen", "date"];

/// Everything that was noted, each figure with what it was before.
pub fn noted(logbook: &Logbook) -> Result<Markup, Refusal> {
    let trial = logbook.trial()?;
    let formula = logbook.formula()?;
    let all: Vec<(String, String)> =
        figures(logbook.text()).into_iter().filter(|(name, _)| !HEAD.contains(&name.as_str())).collect();
    Ok(html! {
        section #noted aria-label="What was noted" {
            h2 { "Noted" }
            @if all.is_empty() { p { "Nothing yet. What is not noted is missing, never nought." } }
            dl {
                @for (name, value) in &all {
                    div {
                        dt data-figure=(name) { (in_words(name, &formula).unwrap_or_else(|| name.clone())) }
                        dd {
                            (value)
                            @if let Some(why) = asked(name, value, &formula) { p.remark { "Is this right? " (print::capital(&why)) ". It stands as noted; note it again to put it right." } }
                            @for one in trial.corrections.iter().filter(|one| is_same_figure(&one.figure, name)) {
                                span.fine { ", was " (one.was) @if let Some(why) = &one.why { ": " (why) } }
                            }
                        }
                    }
                }
            }
        }
    })
}

/// What is asked about a figure that can hardly be meant so.
fn asked(name: &str, value: &str, formula: &Formula) -> Option<String> {
    let (name, after) = name.split_once(" after ").unwrap_or((name, ""));
    let value_at = if after.is_empty() { value.to_owned() } else { format!("{value} after {after}") };
    let (figure, _) = Figure::read(name, &value_at, formula).ok()?;
    doubt(&figure, value, formula)
}

/// What a figure was noted as, for the place beside its field.
pub fn value(logbook: &Logbook, name: &str) -> String {
    let all = figures(logbook.text());
    all.into_iter().find(|(other, _)| other == name || is_same_figure(name, other)).map(|(_, value)| value).unwrap_or_default()
}
