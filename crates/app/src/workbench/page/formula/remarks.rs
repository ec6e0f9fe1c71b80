//! What proof-reading found, each remark at the very figure it is about.

use crate::workbench::page::addresses::asking;
use formula::read::stem;
use formula::source::line_and_column;
use formula::{Diagnostic, Formula, Place};
use maud::{Markup, html};
use std::collections::{BTreeMap, BTreeSet};

/// The remarks on a formula, by the line of its text or by the table that they stand in.
pub struct Remarks<'r> {
    text: &'r str,
    by_line: BTreeMap<usize, Vec<&'r Diagnostic>>,
    by_table: BTreeMap<usize, Vec<&'r Diagnostic>>,
    elsewhere: Vec<&'r Diagnostic>,
}

impl<'r> Remarks<'r> {
    /// Sorts what was found by what stands on the sheet: a line of ingredients, a step, a stage, a yield.
    pub fn of(formula: &Formula, text: &'r str, found: &'r [Diagnostic]) -> Self {
        let lines: BTreeSet<usize> = formula.lines().map(|(_, line)| row(text, &line.place)).collect();
        let steps = formula.steps().map(|(_, step)| &step.place);
        let stages = formula.stages().map(|(_, stage)| &stage.place);
        let yields = formula.components.iter().filter_map(|component| component.yields.place.as_ref());
        let tables: BTreeSet<usize> = steps.chain(stages).chain(yields).map(|place| table(text, place)).collect();
        let mut remarks = Self { text, by_line: BTreeMap::new(), by_table: BTreeMap::new(), elsewhere: Vec::new() };
        for one in found {
            let (line, table) = (row(text, &one.place), table(text, &one.place));
            if one.place.file != formula.file {
                remarks.elsewhere.push(one);
            } else if lines.contains(&line) {
                remarks.by_line.entry(line).or_default().push(one);
            } else if tables.contains(&table) {
                remarks.by_table.entry(table).or_default().push(one);
            } else {
                remarks.elsewhere.push(one);
            }
        }
        remarks
    }

    /// The text that they were made on.
    pub const fn text(&self) -> &'r str {
        self.text
    }

    /// What is said of a line of ingredients.
    pub fn of_line(&self, place: &Place) -> &[&'r Diagnostic] {
        self.by_line.get(&row(self.text, place)).map_or(&[], Vec::as_slice)
    }

    /// What is said of the step, stage or yield that has its place there.
    pub fn of_table(&self, place: &Place) -> Markup {
        let found = self.by_table.get(&table(self.text, place)).map_or(&[][..], Vec::as_slice);
        html! { @for one in found { (remark(one, None)) } }
    }

    /// What is said of no single figure on the sheet.
    pub fn of_the_whole(&self, name: &str) -> Markup {
        let told: usize = self.by_line.values().chain(self.by_table.values()).map(Vec::len).sum();
        html! {
            section #remarks aria-label="Remarks" {
                @match (self.elsewhere.len(), told) {
                    (0, 0) => p.fine { "Proof-read: nothing amiss." },
                    (_, 0) => {},
                    (_, told) => p.fine { "Proof-read: " (told) " " (if told == 1 { "remark stands" } else { "remarks stand" }) " at what " (if told == 1 { "it is" } else { "they are" }) " about." },
                }
                @for one in &self.elsewhere {
                    (remark(one, Some(html! { a href={ "/formula/" (name) "/text#line-" (line_and_column(self.text, one.place.span.start).0) } { "line " (line_and_column(self.text, one.place.span.start).0) } })))
                }
            }
        }
    }
}

/// The line of a text that a place is in.
fn row(text: &str, place: &Place) -> usize {
    line_and_column(text, place.span.start).0
}

/// Where the table begins that a place is in: the last line above it that opens one.
fn table(text: &str, place: &Place) -> usize {
    let before = text.get(..place.span.start).unwrap_or(text);
    let line = before.rfind('\n').map_or(0, |end| end + 1);
    if text[line..].starts_with('[') {
        return line;
    }
    before.rfind("\n[").map_or(0, |at| at + 1)
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
                a href=(asking(&format!("/why/{}", one.code), &[("of", stem(&one.place.file))])) { "why? " span.apart { (one.code) } }
            }
            @if let Some(fix) = &one.fix {
                button type="button" data-gesture="mend" data-key=(one.code) data-amount=(one.place.span.start) { (fix.title) }
            }
        }
    }
}
