//! A component's stages: what goes in beside what is done.

use super::figure::{At, line_key, piece, plain, step_key, weight};
use crate::method::{Figure, Piece, pieces};
use crate::needs::heading;
use crate::tongue::Tongue;
use crate::words::{Units, until_in_pieces};
use formula::read::Attention;
use formula::resolve::formula::Word;
use formula::{Content, Formula, Line, Stage, Step};
use maud::{Markup, html};

/// A component with all its stages.
pub fn component_section(formula: &Formula, c: usize, units: Units) -> Markup {
    let component = &formula.components[c];
    let id = format!("component-{}", component.name);
    html! {
        section.component aria-labelledby=(id) {
            h2 id=(id) { @if let Some(title) = heading(formula, component) { (title) } @else { (units.tongue.method()) } }
            @for (s, stage) in component.stages.iter().enumerate() { (stage_section(formula, (c, s), stage, units)) }
        }
    }
}

fn stage_section(formula: &Formula, at: At, stage: &Stage, units: Units) -> Markup {
    html! {
        section.stage {
            h3 { (stage.title) }
            div.beside {
                @if !stage.lines.is_empty() {
                    ul.lines { @for (n, line) in stage.lines.iter().enumerate() { (line_item(at, n, line, units.tongue)) } }
                }
                ol.steps { @for (n, step) in stage.steps.iter().enumerate() { (step_item(formula, at, n, step, units)) } }
            }
        }
    }
}

fn line_item((c, s): At, n: usize, line: &Line, tongue: Tongue) -> Markup {
    let is_stage = matches!(line.content, Content::Stage(..));
    let (mass, key) = (line.mass.value, line_key(c, s, n));
    html! {
        li data-line=(key) {
            span.amount { (weight(mass, &tongue.print.mass(mass), &key, mass)) }
            span {
                @if is_stage { i { (line.title) } } @else { (line.title) }
                @if let Some(pieces) = line.pieces { " (" span data-n=(plain(pieces.as_pieces())) data-k=(key) { (tongue.print.count(pieces)) } ")" }
                @if let Some(note) = &line.note { span.note { ", " (note) } }
            }
        }
    }
}

fn step_item(formula: &Formula, at: At, n: usize, step: &Step, units: Units) -> Markup {
    let facts = facts(step, units);
    let (tongue, print) = (units.tongue, units.tongue.print);
    let batches = step.batches(formula.components[at.0].yields.pieces);
    html! {
        li class=[(step.attention == Attention::Waiting).then_some("waiting")] data-step=(step_key(at, n)) {
            p { @for one in pieces(formula, at, step, units) { (piece(formula, at, &one)) } }
            @if !facts.is_empty() || step.at_a_time.is_some() {
                p.facts {
                    @for (n, fact) in facts.iter().enumerate() {
                        @if n > 0 { " · " }
                        @for one in fact { (piece(formula, at, one)) }
                    }
                    @if let Some(at_once) = step.at_a_time {
                        span data-batches=(plain(at_once.as_pieces())) {
                            @if batches > 1.0 { " · " (tongue.batches(print.number(batches, 0), print.count(at_once))) }
                        }
                    }
                }
            }
        }
    }
}

/// The figures of a step once more, short, for a glance from the bench.
fn facts(step: &Step, units: Units) -> Vec<Vec<Piece>> {
    let (tongue, print) = (units.tongue, units.tongue.print);
    let mut facts = Vec::new();
    if let Some(time) = step.time {
        let waiting = if step.attention == Attention::Waiting { format!(", {}", tongue.waiting()) } else { String::new() };
        facts.push(vec![Piece::of(print.time(time), Figure::Lasts(time)), Piece::plain(waiting)]);
    }
    if let Some(time) = step.side_time {
        facts.push(vec![Piece::plain(tongue.a_side(print.time(time)))]);
    }
    if let Some(range) = step.temperature {
        facts.push(vec![Piece::of(units.temperature(range), Figure::Stands(range))]);
    }
    // A condition that the sentence does not tell of would be lost.
    if let Some(condition) = step.until.as_ref().filter(|_| !step.words.contains(&Word::Until)) {
        facts.push(until_in_pieces(condition, units));
    }
    facts
}
