//! Stages that use each other in a circle: reported once, and cut so that the rest can be worked out.

use super::Found;
use super::formula::Content;
use super::formula::StageAt;
use super::names::Bound;
use crate::diagnostic::told_enough;
use crate::fault;
use crate::read::Draft;
use crate::source::MOST_NAMES;
use std::collections::BTreeMap;

#[derive(Clone, Copy, PartialEq)]
enum Mark {
    OnTheWay,
    Done,
}

/// The first stages of a circle, and how many more there are.
struct Circle {
    stages: Vec<StageAt>,
    left_out: usize,
}

/// Reports every circle and unbinds the line that closes it.
pub fn cut(draft: &Draft, bound: &mut Bound, found: Found) {
    let mut marks = BTreeMap::new();
    let mut closing = Vec::new();
    let stages: Vec<StageAt> = bound.all().map(|(at, _)| at).collect();
    for at in stages {
        follow(bound, at, &mut marks, &mut closing);
    }
    for (at, line, path) in closing {
        let name = |(c, s): StageAt| draft.components[c].stages[s].name.value.as_str();
        let way: Vec<&str> = path.stages.iter().map(|at| name(*at)).collect();
        let more = if path.left_out > 0 { format!(" → ({} more)", path.left_out) } else { String::new() };
        let place = bound.lines(at)[line].draft.name.place(&draft.file);
        let message = format!(
            "the stage “{}” goes into itself: {}",
            name(at),
            way.join(" → ") + &more + " → " + way.first().unwrap_or(&"")
        );
        bound.lines_mut(at)[line].content = None;
        if told_enough(found, fault::CIRCULAR_STAGES.code) {
            continue;
        }
        found.push(fault::CIRCULAR_STAGES.at(place, message).hint("let one of them use an ingredient instead"));
    }
}

/// Walks down from a stage without recursion: a stage, the next line to look at.
fn follow(bound: &Bound, start: StageAt, marks: &mut BTreeMap<StageAt, Mark>, closing: &mut Vec<(StageAt, usize, Circle)>) {
    if marks.contains_key(&start) {
        return;
    }
    let mut way: Vec<(StageAt, usize)> = vec![(start, 0)];
    marks.insert(start, Mark::OnTheWay);
    while let Some((at, line)) = way.last_mut() {
        let (here, number) = (*at, *line);
        let Some(next) = bound.lines(here).get(number) else {
            marks.insert(here, Mark::Done);
            way.pop();
            continue;
        };
        *line += 1;
        let Some(Content::Stage(c, s)) = next.content else { continue };
        match marks.get(&(c, s)) {
            None => {
                marks.insert((c, s), Mark::OnTheWay);
                way.push(((c, s), 0));
            }
            Some(Mark::OnTheWay) => {
                let from = way.iter().position(|(at, _)| *at == (c, s)).unwrap_or(0);
                let stages: Vec<StageAt> = way[from..].iter().map(|(at, _)| *at).take(MOST_NAMES).collect();
                let left_out = way.len() - from - stages.len();
                closing.push((here, number, Circle { stages, left_out }));
            }
            Some(Mark::Done) => {}
        }
    }
}
