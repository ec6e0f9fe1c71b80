//! What proof-reading found, each remark at the very figure it is about.

use formula::source::line_and_column;
use formula::{Diagnostic, Formula, Place};
use maud::{Markup, html};
use std::collections::BTreeMap;

/// The remarks on a formula, by the line of its text.
pub struct Remarks<'r> {
    text: &'r str,
    by_line: BTreeMap<usize, Vec<&'r Diagnostic>>,
    elsewhere: Vec<&'r Diagnostic>,
}

impl<'r> Remarks<'r> {
    /// Sorts what was found by the lines that stand on the sheet.
    pub fn of(formula: &Formula, text: &'r str, found: &'r [Diagnostic]) -> Self {
        let row = |place: &Place| line_and_column(text, place.span.start).0;
        let lines = formula.lines().map(|(_, line)| row(&line.place));
        let shown: Vec<usize> = lines.chain(formula.steps().map(|(_, step)| row(&step.place))).collect();
        let mut remarks = Self { text, by_line: BTreeMap::new(), elsewhere: Vec::new() };
        for one in found {
            let here = row(&one.place);
            // A remark on a step's time or condition belongs to the step whose sentence stands nearest above.
            let near = if shown.contains(&here) { Some(here) } else { None };
            match near.filter(|_| one.place.file == formula.file) {
                Some(line) => remarks.by_line.entry(line).or_default().push(one),
                None => remarks.elsewhere.push(one),
            }
        }
        remarks
    }

    /// What is said of what stands at a place.
    pub fn at(&self, place: &Place) -> &[&'r Diagnostic] {
        self.by_line.get(&line_and_column(self.text, place.span.start).0).map_or(&[], Vec::as_slice)
    }

    /// What is said at a place, as markup.
    pub fn markup_at(&self, place: &Place) -> Markup {
        html! { @for one in self.at(place) { (remark(one, None)) } }
    }

    /// What is said of no single figure on the sheet.
    pub fn of_the_whole(&self, name: &str) -> Markup {
        let told: usize = self.by_line.values().map(Vec::len).sum();
        html! {
            section #remarks aria-label="Remarks" {
                @if self.elsewhere.is_empty() && told == 0 { p.fine { "Proof-read: nothing amiss." } }
                @for one in &self.elsewhere {
                    (remark(one, Some(html! { a href={ "/formula/" (name) "/text#line-" (line_and_column(self.text, one.place.span.start).0) } { "line " (line_and_column(self.text, one.place.span.start).0) } })))
                }
            }
        }
    }
}

/// One remark with its reason, and the remedy by one click.
pub fn remark(one: &Diagnostic, place: Option<Markup>) -> Markup {
    html! {
        div class={ "remark " (one.severity.name()) } {
            p {
                b { (quantity::print::capital(one.severity.name())) ": " }
                (one.message) @if let Some(place) = &place { " (" (place) ")" }
            }
            p.fine {
                @if let Some(hint) = &one.hint { (hint) " · " }
                a href={ "/why/" (one.code) } { "why? " span.apart { (one.code) } }
            }
            @if let Some(fix) = &one.fix {
                button type="button" data-gesture="mend" data-key=(one.code) data-amount=(one.place.span.start) { (fix.title) }
            }
        }
    }
}
