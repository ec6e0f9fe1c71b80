//! A component's stages: what goes in beside what is done.

use crate::method::sentence;
use crate::needs::heading;
use crate::words::{Units, until};
use formula::read::Attention;
use formula::resolve::formula::Word;
use formula::{Content, Formula, Line, Stage, Step};
use maud::{Markup, html};
use quantity::{Count, print};

/// A component with all its stages.
pub fn component_section(formula: &Formula, c: usize, units: Units) -> Markup {
    let component = &formula.components[c];
    let id = format!("component-{}", component.name);
    html! {
        section.component aria-labelledby=(id) {
            h2 id=(id) { @if let Some(title) = heading(formula, component) { (title) } @else { "Method" } }
            @for (s, stage) in component.stages.iter().enumerate() { (stage_section(formula, (c, s), stage, units)) }
        }
    }
}

fn stage_section(formula: &Formula, at: (usize, usize), stage: &Stage, units: Units) -> Markup {
    html! {
        section.stage {
            h3 { (stage.title) }
            div.beside {
                @if !stage.lines.is_empty() {
                    ul.lines { @for line in &stage.lines { (line_item(line)) } }
                }
                ol.steps { @for step in &stage.steps { (step_item(formula, at, step, units)) } }
            }
        }
    }
}

fn line_item(line: &Line) -> Markup {
    let is_stage = matches!(line.content, Content::Stage(..));
    html! {
        li {
            span.amount { (print::mass(line.mass.value)) }
            span {
                @if is_stage { i { (line.title) } } @else { (line.title) }
                @if let Some(pieces) = line.pieces { " (" (print::count(pieces)) ")" }
                @if let Some(note) = &line.note { span.note { ", " (note) } }
            }
        }
    }
}

fn step_item(formula: &Formula, at: (usize, usize), step: &Step, units: Units) -> Markup {
    let facts = facts(step, formula.components[at.0].yields.pieces, units);
    html! {
        li class=[(step.attention == Attention::Waiting).then_some("waiting")] {
            p { (unbroken(&sentence(formula, at, step, units))) }
            @if !facts.is_empty() { p.facts { (unbroken(&facts.join(" · "))) } }
        }
    }
}

/// The figures of a step once more, short, for a glance from the bench.
fn facts(step: &Step, pieces: Option<Count>, units: Units) -> Vec<String> {
    let mut facts = Vec::new();
    if let Some(time) = step.time {
        let waiting = if step.attention == Attention::Waiting { ", waiting" } else { "" };
        facts.push(format!("{}{waiting}", print::time(time)));
    }
    if let Some(time) = step.side_time {
        facts.push(format!("{} a side", print::time(time)));
    }
    if let (Some(at_once), batches) = (step.at_a_time, step.batches(pieces))
        && batches > 1.0
    {
        facts.push(format!("{} batches of {}", print::number(batches, 0), print::count(at_once)));
    }
    if let Some(range) = step.temperature {
        facts.push(units.temperature(range));
    }
    // A condition that the sentence does not tell of would be lost.
    if let Some(condition) = step.until.as_ref().filter(|_| !step.words.contains(&Word::Until)) {
        facts.push(until(condition, units));
    }
    facts
}

/// A text whose ranges do not break at the line's end: a word joiner holds what follows a dash.
fn unbroken(text: &str) -> String {
    text.replace('–', "–\u{2060}")
}
