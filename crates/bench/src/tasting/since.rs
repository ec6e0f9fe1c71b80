//! What of a formula is otherwise than when it was tasted: only what reaches the mouth counts, not its notes or words.

use formula::resolve::formula::Word;
use formula::{Component, Content, Formula, Stage, Step};
use quantity::Mass;
use std::collections::BTreeMap;

/// Something that is otherwise since a formula was tasted.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Since {
    /// An ingredient, by its title: more or less of it, or there only before or only now.
    Ingredient(String),
    /// The steps of a stage, by its title: what is done, how long, how warm, until when.
    Steps(String),
    /// The size of a piece, by the title of what is made.
    Piece(String),
}

/// Shares that differ by less than this are the same, written or rounded otherwise.
const SAME: f64 = 1e-3;

/// Returns what is otherwise in a formula than in the one that was tasted, each thing once. Making more or less of all of
/// it changes nothing.
#[must_use]
pub fn since(tasted: &Formula, now: &Formula) -> Vec<Since> {
    let mut found = Vec::new();
    for (c, then) in tasted.components.iter().enumerate() {
        // The first component is what a formula is about, whatever it is called.
        let same = now.components.iter().enumerate().find(|(n, one)| if c == 0 { *n == 0 } else { one.name == then.name });
        match same {
            Some((_, now)) => of_component(then, now, &mut found),
            None => found.push(Since::Ingredient(then.title.clone())),
        }
    }
    let is_new = |one: &&Component| !tasted.components.iter().any(|then| then.name == one.name);
    found.extend(now.components.iter().skip(1).filter(is_new).map(|one| Since::Ingredient(one.title.clone())));
    found.sort();
    found.dedup();
    found
}

fn of_component(then: &Component, now: &Component, found: &mut Vec<Since>) {
    let (before, after) = (shares(then), shares(now));
    let title = |key: &(String, String)| before.get(key).or_else(|| after.get(key)).map(|(title, _)| title.clone());
    for key in before.keys().chain(after.keys()) {
        let share = |of: &Shares| of.get(key).map_or(0.0, |(_, share)| *share);
        let (one, other) = (share(&before), share(&after));
        if (one - other).abs() > SAME * one.max(other) {
            found.extend(title(key).map(Since::Ingredient));
        }
    }
    let is_there = |stage: &Stage, among: &Component| among.stages.iter().any(|other| other.name == stage.name);
    for stage in &now.stages {
        let old = then.stages.iter().find(|other| other.name == stage.name);
        if old.is_none_or(|old| steps(old) != steps(stage)) {
            found.push(Since::Steps(stage.title.clone()));
        }
    }
    found.extend(then.stages.iter().filter(|stage| !is_there(stage, now)).map(|stage| Since::Steps(stage.title.clone())));
    let piece = |one: &Component| {
        let yields = &one.yields;
        (yields.scaling_weight.map(Mass::as_grams), yields.thickness.map(|thick| format!("{thick:?}")))
    };
    let ((weight, thick), (weighs, thickness)) = (piece(then), piece(now));
    let differs = match (weight, weighs) {
        (Some(one), Some(other)) => (one - other).abs() > SAME * one.max(other),
        (one, other) => one.is_some() != other.is_some(),
    };
    if differs || thick != thickness {
        found.push(Since::Piece(now.title.clone()));
    }
}

/// Of each line of each stage its title, and its share of the component's flour; of all that is weighed in without flour.
/// What one stage hands on to another is told by what goes into it.
type Shares = BTreeMap<(String, String), (String, f64)>;

fn shares(component: &Component) -> Shares {
    let flour: Mass = component.stages.iter().map(|stage| stage.flour).sum();
    let all = if flour > Mass::ZERO { flour } else { component.stages.iter().map(Stage::mixed).sum() };
    let mut shares = Shares::new();
    for stage in &component.stages {
        for line in stage.lines.iter().filter(|line| !matches!(line.content, Content::Stage(..))) {
            let share = if all > Mass::ZERO { line.mass.value / all } else { 0.0 };
            let warm = line.temperature.map(|warm| format!(" {warm:?}")).unwrap_or_default();
            shares.entry((stage.name.clone(), format!("{}{warm}", line.name))).or_insert((line.title.clone(), 0.0)).1 += share;
        }
    }
    shares
}

/// What is done in a stage, without its words: the verbs, and every figure.
fn steps(stage: &Stage) -> Vec<String> {
    let figures = |step: &Step| {
        let said = step.words.iter().filter_map(|word| match word {
            Word::Measure(measure) => Some(format!("{measure:?}")),
            _ => None,
        });
        said.collect::<Vec<_>>()
    };
    let one =
        |step: &Step| format!("{:?}", (step.action, step.time, step.side_time, &step.until, step.temperature, figures(step)));
    stage.steps.iter().map(one).collect()
}
