//! Ingredients that are weighed and named in no sentence.

use super::Found;
use super::formula::{Content, Formula, Line, Word};
use crate::diagnostic::{Edit, Place};
use crate::fault;
use crate::read::{Draft, StepDraft};
use quantity::Mass;
use std::collections::BTreeMap;
use std::sync::Arc;

/// How much of each line, by stage and line, sentences use up.
pub type Used = BTreeMap<(usize, usize), Mass>;

/// Ingredients that no sentence of their stage or a later one names.
pub fn report(draft: &Draft, formula: &Formula, c: usize, used: &Used, found: Found) {
    for (s, stage) in formula.components[c].stages.iter().enumerate() {
        let has_method = formula.components[c].stages[s..].iter().any(|stage| !stage.steps.is_empty());
        if !has_method && !stage.lines.is_empty() {
            let place = draft.components[c].stages[s].name.place(&draft.file);
            let message = format!("the stage “{}” has no method", stage.name);
            found.push(fault::NO_METHOD.at(place, message).hint("tell what is done in [[component.stage.step]]"));
            continue;
        }
        let mut behind = None;
        for (l, line) in stage.lines.iter().enumerate() {
            let is_told = used.contains_key(&(s, l)) || told_by_stage(formula, c, s, line);
            if !is_told {
                let message = format!("“{}” is weighed, but no step of “{}” uses it", line.name, stage.name);
                let hint = format!("name it in a sentence as {{{}}}, or take the line out", line.name);
                let one = fault::INGREDIENT_NEVER_USED.at(line.place.clone(), message).hint(hint);
                let behind = behind.get_or_insert_with(|| behind_the_first(draft, formula, (c, s)));
                found.push(match behind {
                    Some((place, title)) => {
                        let edit = Edit { place: place.clone(), text: format!(", {{{}}}", line.name) };
                        one.mended_by(format!("name it beside “{title}”"), edit)
                    }
                    None => one,
                });
            }
        }
    }
}

/// Behind the first line of a stage that a sentence of it names: where another one can be named, and behind what.
fn behind_the_first(draft: &Draft, formula: &Formula, (c, s): (usize, usize)) -> Option<(Place, String)> {
    let lines: BTreeMap<&str, &Line> =
        formula.components[c].stages[s].lines.iter().map(|line| (line.name.as_str(), line)).collect();
    let named = |step: &StepDraft| {
        let letters = step.letters?;
        step.text.value.match_indices('{').find_map(|(at, _)| {
            let behind = &step.text.value[at + 1..];
            let inner = &behind[..behind.find(['{', '}']).filter(|end| behind[*end..].starts_with('}'))?];
            let line = lines.get(inner.split(':').next().unwrap_or(inner).trim())?;
            Some((letters + at + inner.len() + 2, line.title.clone()))
        })
    };
    let (at, title) = draft.components[c].stages.get(s)?.steps.iter().find_map(named)?;
    Some((Place { file: Arc::clone(&draft.file), span: at..at }, title))
}

/// Whether a line that is another stage is told of by that stage's own name.
fn told_by_stage(formula: &Formula, c: usize, from: usize, line: &Line) -> bool {
    let Content::Stage(oc, os) = line.content else { return false };
    let steps = formula.components[c].stages[from..].iter().flat_map(|stage| &stage.steps);
    steps.flat_map(|step| &step.words).any(|word| *word == Word::Stage(oc, os))
}
