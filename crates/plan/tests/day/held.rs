//! What is held warm, or stored and warmed again, where that helps.

use crate::checker::faults;
use crate::demo::{book, wanted};
use formula::read::{Action, Attention, DayHours};
use plan::day::{Space, Timeline, Wanted, timeline};
use plan::engine::{Patient, Propagation};
use quantity::{Between, TimeSpan};
use std::sync::Arc;

const SERVE: &str = "2026-11-29T09:30[Europe/Vienna]";
const NOW: &str = "2026-11-26T12:00[Europe/Vienna]";

fn planned(wanted: &Wanted) -> Timeline {
    let day = timeline(wanted, &Propagation, &mut Patient).expect("a day");
    assert_eq!(faults(&day), Vec::<String>::new());
    day
}

fn does(day: &Timeline, action: Action) -> bool {
    day.jobs.iter().any(|job| day.dishes[job.dish].formula.stage(job.at).steps[job.step].action == action)
}

#[test]
fn bread_is_warmed_again_only_where_nobody_could_griddle_it_fresh() {
    let book = book();
    let mut wanted = wanted(&book, &["buckwheat-chickpea-griddle-bread"], SERVE, NOW);
    let fresh = planned(&wanted);
    assert!(!does(&fresh, Action::Store) && !does(&fresh, Action::Rewarm));
    wanted.place.out = vec![DayHours::read("06:30-09:10").expect("hours")];
    let kept = planned(&wanted);
    assert!(does(&kept, Action::Store) && does(&kept, Action::Rewarm));
    assert!(kept.unmet.is_empty(), "{:?}", kept.unmet);
    let warmed = kept.entries.last().expect("the rewarming");
    assert!(kept.served.timestamp().duration_since(warmed.begin.timestamp()).as_mins() <= 15);
}

/// Fritters that are fried long before the muffins leave no hand free are past their best, unless they are held.
#[test]
fn fritters_are_held_in_the_oven_where_the_formula_says_so() {
    let book = book();
    let mut wanted = wanted(&book, &["cider-apple-fritters"], SERVE, NOW);
    wanted.place.out = vec![DayHours::read("08:35-09:15").expect("hours")];
    let without = planned(&wanted);
    assert!(!without.unmet.is_empty() && !does(&without, Action::Hold));
    let mut formula = (*wanted.formulas[0]).clone();
    let frying = formula.components[0].stages.last_mut().expect("a stage");
    let mut hold = frying.steps.last().expect("a step").clone();
    hold.action = Action::Hold;
    hold.attention = Attention::Waiting;
    hold.time = Some(Between { from: TimeSpan::ZERO, to: TimeSpan::minutes(60.0) });
    hold.equipment = vec!["oven at 90 °C".to_owned()];
    frying.steps.push(hold);
    wanted.formulas = vec![Arc::new(formula)];
    let held = planned(&wanted);
    assert!(held.unmet.is_empty(), "{:?}", held.unmet);
    let entry = held.entries.iter().find(|entry| held.jobs[entry.job].is_held(&held.dishes)).expect("the hold");
    let lasts = entry.end.timestamp().duration_since(entry.begin.timestamp()).as_mins();
    assert!(entry.end == held.served && (30..=60).contains(&lasts), "{lasts}");
    assert!(held.stays.iter().any(|stay| stay.space == Space::Oven && stay.from == entry.job));
}
