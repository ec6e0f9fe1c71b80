//! The bowl of a planned trial: what it gets in place of what the formula says.

use super::Expected;
use crate::trial_plan::BOWL;
use formula::read::{Amount, Trial};
use formula::{Formula, Line};
use quantity::{Kind, Mass, Measure, SpoonSystem};

/// A level of a plan, as the bowl's draft says it.
#[derive(Clone, Debug, PartialEq)]
pub struct Level {
    /// As it was typed: "0.5 %".
    pub told: String,
    /// How much that is, where it can be told.
    pub mass: Option<Mass>,
}

/// Lays the levels of a planned bowl over what is expected of its formula; any other trial is left as it is.
pub fn planned(expected: &mut Expected, trial: &Trial, formula: &Formula) {
    if !trial.title.starts_with(BOWL) {
        return;
    }
    let lines: Vec<&Line> = formula.stages().flat_map(|(_, stage)| &stage.lines).collect();
    for note in &trial.notes {
        let meant: Vec<usize> = (0..lines.len()).filter(|at| told_of(note, lines[*at]).is_some()).collect();
        for at in &meant {
            let told = told_of(note, lines[*at]).unwrap_or_default();
            // Where several lines could be meant, nobody but the baker knows how much goes where.
            let mass = told.parse().ok().filter(|_| meant.len() == 1).and_then(|level| mass(lines[*at], &level));
            if let Some(weight) = expected.weights.get_mut(*at) {
                weight.bowl = Some(Level { told: told.to_owned(), mass });
            }
        }
    }
}

/// The level that a note tells of a line, by its name, its title or a word of them: "yeast 0.5 %" of instant yeast.
fn told_of<'n>(note: &'n str, line: &Line) -> Option<&'n str> {
    let of = |name: &str| note.strip_prefix(name)?.strip_prefix(' ').filter(|told| told.parse::<Measure>().is_ok());
    let words = line.name.split('-').chain(line.title.split(' '));
    [line.name.as_str(), &line.title].into_iter().chain(words).filter(|word| !word.is_empty()).find_map(of)
}

fn mass(line: &Line, level: &Measure) -> Option<Mass> {
    match level.unit.kind() {
        Kind::Mass => level.mass(SpoonSystem::Metric).map(|mass| mass.to),
        Kind::Share => share_of(line, level),
        _ => None,
    }
}

/// A share in place of the one that the line states.
fn share_of(line: &Line, measure: &Measure) -> Option<Mass> {
    let Amount::Measure(stated) = &line.written else { return None };
    let (stated, level) = (stated.share(SpoonSystem::Metric)?.to, measure.share(SpoonSystem::Metric)?.to);
    (stated.as_ratio() > 0.0).then(|| line.mass.value * (level.as_ratio() / stated.as_ratio()))
}
