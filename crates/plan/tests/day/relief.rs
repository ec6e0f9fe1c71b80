//! What would help where wishes give way, put back and planned again.

use crate::checker::faults;
use crate::demo::{book, plan, wanted};
use bench::forecast::rises;
use formula::Formula;
use plan::day::{Timeline, Want, Wanted, timeline};
use plan::engine::{Patient, Propagation, Watch};
use plan::relief::{Help, Relief, relief};

const SERVE: &str = "2026-11-29T09:30[Europe/Vienna]";

fn helped(serve: &str, now: &str) -> (Wanted, Timeline, Vec<Relief>) {
    let book = book();
    let wanted = wanted(&book, &["potato-muffins"], serve, now);
    let day = timeline(&wanted, &Propagation, &mut Patient).expect("a day");
    let relief = relief(&book, &wanted, &day, &Propagation, &mut Patient);
    for one in &relief {
        assert_eq!(faults(&one.then), Vec::<String>::new());
    }
    (wanted, day, relief)
}

fn dose(relief: &[Relief]) -> Option<(&Relief, f64, f64, f64)> {
    relief.iter().find_map(|one| match &one.help {
        Help::Dose(_, doses, takes) => Some((one, doses[0].stated.as_grams(), doses[0].needed.as_grams(), takes.as_minutes())),
        _ => None,
    })
}

/// The formula with so much yeast in a stage.
fn with_yeast(formula: &Formula, stage: &str, gram: f64) -> Formula {
    let mut formula = formula.clone();
    let stages = formula.components.iter_mut().flat_map(|one| &mut one.stages);
    let lines = stages.filter(|one| one.name == stage).flat_map(|one| &mut one.lines);
    for line in lines.filter(|line| line.name.starts_with("yeast")) {
        line.mass.value = quantity::Mass::grams(gram);
    }
    formula
}

/// When a stage's first condition is reached, in minutes: its band.
fn reached(formula: &Formula, wanted: &Wanted, stage: &str) -> (f64, f64, f64) {
    let rises = rises(formula, &wanted.around);
    let rise = rises.iter().find(|rise| formula.stage(rise.at).name == stage).expect("a rise");
    let reached = rise.steps.iter().find_map(|step| step.reached.clone()).expect("it is reached");
    let slow = reached.from.band.map_or(reached.from.value, |(_, slow)| slow);
    (reached.from.value.as_minutes(), slow.as_minutes(), reached.to.value.as_minutes())
}

#[test]
fn more_yeast_spares_the_early_rising() {
    let (wanted, day, relief) = helped(SERVE, "2026-11-26T12:00[Europe/Vienna]");
    assert!(day.unmet.iter().all(|unmet| matches!(unmet.want, Want::Left(_))));
    let (one, stated, needed, takes) = dose(&relief).expect("a dose");
    assert!(one.then.unmet.is_empty());
    assert!(needed > stated && needed < 2.0 * stated, "{stated} g, {needed} g");
    let dosed = with_yeast(&wanted.formulas[0], "dough", needed);
    let (risen, ..) = reached(&dosed, &wanted, "dough");
    assert!((risen - takes).abs() < 1.0, "{risen} min for {takes} min");
    assert!(reached(&wanted.formulas[0], &wanted, "dough").0 > takes);
}

#[test]
fn a_sponge_begun_late_is_used_when_it_is_ripe() {
    let (wanted, day, relief) = helped(SERVE, "2026-11-28T21:30[Europe/Vienna]");
    assert!(day.served > day.wanted);
    let (one, after) = relief
        .iter()
        .find_map(|one| match one.help {
            Help::AsItIs(_, after) => Some((one, after.as_minutes())),
            _ => None,
        })
        .expect("it is ripe");
    assert_eq!(one.then.served, one.then.wanted);
    let (_, slow, closes) = reached(&wanted.formulas[0], &wanted, "sponge");
    assert!(slow <= after && after <= closes, "{after} min in {slow} to {closes} min");
}

#[test]
fn a_sponge_begun_in_the_morning_wants_more_yeast() {
    let (wanted, _, relief) = helped("2026-11-29T11:30[Europe/Vienna]", "2026-11-29T06:00[Europe/Vienna]");
    let (one, stated, needed, takes) = dose(&relief).expect("a dose");
    assert_eq!(one.then.served, one.then.wanted);
    assert!(needed > stated);
    let (_, slow, _) = reached(&with_yeast(&wanted.formulas[0], "sponge", needed), &wanted, "sponge");
    assert!((slow - takes).abs() < 2.0, "even a slow kitchen finds it ripe: {slow} min for {takes} min");
}

#[test]
fn what_had_to_be_begun_earlier_would_have_done() {
    let (_, day, relief) = helped(SERVE, "2026-11-28T21:30[Europe/Vienna]");
    let missed = relief.iter().find_map(|one| match &one.help {
        Help::Earlier(missed) => Some(missed.clone()),
        _ => None,
    });
    let missed = missed.expect("it should have begun earlier");
    let (job, when) = &missed[0];
    assert_eq!(day.dishes[day.jobs[*job].dish].formula.stage(day.jobs[*job].at).name, "sponge");
    let minute = jiff::SignedDuration::from_mins(1);
    let seen = |now: jiff::ZonedDateTime| plan(&["potato-muffins"], SERVE, &now.to_string()).expect("a day");
    assert_eq!(seen(when.clone()).served, day.wanted, "begun by then it is served as wished");
    assert!(seen(when.checked_add(minute).expect("a moment")).served > day.wanted, "a minute later it is not");
}

#[test]
fn no_help_is_told_where_none_is_needed() {
    assert!(helped("2026-11-29T10:00[Europe/Vienna]", "2026-11-26T12:00[Europe/Vienna]").2.is_empty());
}

#[test]
fn reasons_that_were_not_sought_to_the_end_are_told_so() {
    /// Stops after so many questions.
    struct Counting(usize);
    impl Watch for Counting {
        fn wants_to_stop(&mut self) -> bool {
            self.0 = self.0.saturating_sub(1);
            self.0 == 0
        }
    }
    let book = book();
    let wanted = wanted(&book, &["potato-muffins"], SERVE, "2026-11-26T12:00[Europe/Vienna]");
    let mut is_cut = false;
    for questions in (0..40).map(|n| 100 * n * n) {
        let Ok(day) = timeline(&wanted, &Propagation, &mut Counting(questions)) else { continue };
        assert!(day.unmet.is_empty() || !day.conflicts.is_empty() || day.is_why_cut_short, "{questions} questions");
        is_cut |= day.is_why_cut_short;
    }
    assert!(is_cut && !timeline(&wanted, &Propagation, &mut Patient).expect("a day").is_why_cut_short);
}
