//! A mix with raw egg or milk stands warm for longer than the usual four hours before it is cooked.

use super::stages::{Traits, heats};
use super::{Case, Rule};
use formula::read::Action;
use formula::{Content, Stage};
use formula::{Diagnostic, Severity};
use quantity::{Temperature, TimeSpan, print};
use std::collections::BTreeMap;

/// A mix with raw egg or milk stands warm for longer than the usual four hours before it is cooked.
pub const RULE: Rule =
    Rule { code: "egg-or-milk-long-warm", severity: Severity::Warning, page: include_str!("egg_or_milk_long_warm.md"), check };

/// Four hours in all between fridge and heat, after Food Standards Australia New Zealand, standard 3.2.2.
const MOST: TimeSpan = TimeSpan::hours(4.0);
/// Below this nothing counts: chilled, after the same standard and the English 8 °C.
const COLD: Temperature = Temperature::celsius(8.0);

/// The warm time at the end of a stage, nothing once it has been cooked, and the step in which it passed the most.
fn run(stage: &Stage, before: TimeSpan) -> (TimeSpan, Option<usize>) {
    let (mut clock, mut crossed) = (before, None);
    for (i, step) in stage.steps.iter().enumerate() {
        if heats(step) {
            return (TimeSpan::seconds(0.0), crossed);
        }
        let is_cold = matches!(step.action, Action::Retard | Action::Chill | Action::Store)
            || step.temperature.is_some_and(|range| range.to <= COLD);
        if let Some(time) = step.time.filter(|_| !is_cold) {
            clock += time.from;
            crossed = crossed.or((clock > MOST).then_some(i));
        }
    }
    (clock, crossed)
}

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    let mut clocks: BTreeMap<(usize, usize), TimeSpan> = BTreeMap::new();
    for (at, stage) in case.formula.stages().filter(|(at, _)| case.stages.traits(*at).has(Traits::EGG.with(Traits::MILK))) {
        let before = stage.lines.iter().filter_map(|line| match &line.content {
            Content::Stage(c, s) => clocks.get(&(*c, *s)).copied(),
            _ => None,
        });
        let before = before.fold(TimeSpan::seconds(0.0), TimeSpan::max);
        let already = before > MOST;
        let (clock, crossed) = run(stage, before);
        if let Some(step) = crossed.filter(|_| !already) {
            let message = format!(
                "by the shortest times stated, egg or milk has stood warm for {} by \
                 the end of this step",
                print::time(quantity::Between::just(clock))
            );
            found.push(RULE.at(stage.steps[step].place.clone(), message).hint(
                "shorten the wait, or put the mix in \
                 the fridge for part of it; the custom is four hours in all, and local rules decide",
            ));
        }
        clocks.insert(at, clock);
    }
}
