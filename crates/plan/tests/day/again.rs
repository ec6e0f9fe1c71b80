//! Planning again when reality has moved, and how sure a plan is.

use crate::demo::{book, moment, wanted};
use plan::day::{Happened, Progress, Refusal, StepName, Timeline, timeline, tries};
use plan::engine::{Patient, Propagation};
use quantity::TimeSpan;

const SERVE: &str = "2026-11-29T09:30[Europe/Vienna]";

fn happened(stage: &str, step: &str, progress: Progress) -> Happened {
    Happened { of: named(stage, step), progress }
}

fn named(stage: &str, step: &str) -> StepName {
    StepName { formula: None, stage: stage.to_owned(), step: step.to_owned() }
}

fn again(now: &str, happened: Vec<Happened>) -> Result<Timeline, Refusal> {
    let mut wanted = wanted(&book(), &["potato-muffins"], SERVE, now);
    wanted.happened = happened;
    timeline(&wanted, &Propagation, &mut Patient)
}

fn stages(timeline: &Timeline) -> Vec<String> {
    let stage = |entry: &plan::day::Entry| {
        let job = &timeline.jobs[entry.job];
        timeline.dishes[job.dish].formula.stage(job.at).name.clone()
    };
    timeline.entries.iter().map(stage).collect()
}

#[test]
fn a_sponge_that_is_ripe_later_moves_the_rest() {
    let ripe = moment("2026-11-29T07:00[Europe/Vienna]");
    let day = again("2026-11-29T07:00[Europe/Vienna]", vec![happened("sponge", "ferment", Progress::Done(ripe.clone()))])
        .expect("a day");
    assert!(!stages(&day).contains(&"sponge".to_owned()), "what is done is not done again");
    assert!(day.entries.iter().all(|entry| entry.begin >= ripe));
    assert!(day.served > day.wanted, "there is not enough time left");
    assert!(day.served <= moment("2026-11-29T11:30[Europe/Vienna]"));
}

#[test]
fn what_goes_on_stays_where_it_is() {
    let begun = moment("2026-11-29T06:30[Europe/Vienna]");
    let day =
        again("2026-11-29T06:40[Europe/Vienna]", vec![happened("dough", "bulk", Progress::Begun(begun.clone()))]).expect("a day");
    let bulk =
        day.entries.iter().find(|entry| day.jobs[entry.job].step == 2 && day.jobs[entry.job].at == (0, 1)).expect("the bulk");
    assert_eq!(bulk.begin, begun);
    assert!(!bulk.is_set_going);
    assert!(!stages(&day).contains(&"sponge".to_owned()), "a dough that rises had its sponge");
}

#[test]
fn what_happened_must_be_one_step_of_the_day() {
    let when = || Progress::Done(moment("2026-11-29T06:10[Europe/Vienna]"));
    for (stage, step) in [("cellar", "mix"), ("sponge", "bake"), ("sponge", "0"), ("sponge", "3")] {
        let told = happened(stage, step, when());
        let refused = again("2026-11-29T06:30[Europe/Vienna]", vec![told.clone()]).err();
        assert_eq!(refused, Some(Refusal::Unknown(told.of)), "{stage} {step}");
    }
}

#[test]
fn a_day_that_cannot_vary_is_always_in_time() {
    let mut day = again("2026-11-26T12:00[Europe/Vienna]", Vec::new()).expect("a day");
    let varied = tries(&day, 500);
    assert!(varied.in_time > 0 && varied.in_time < 500, "{}", varied.in_time);
    assert_eq!(varied, tries(&day, 500), "the same day gives the same answer");
    for job in &mut day.jobs {
        (job.span.early, job.span.late) = (job.span.likely, job.span.likely);
    }
    let fixed = tries(&day, 500);
    assert_eq!((fixed.in_time, fixed.late.1), (500, TimeSpan::ZERO));
}

#[test]
fn a_job_that_is_late_by_its_slack_serves_in_time_and_by_more_does_not() {
    let day = again("2026-11-26T12:00[Europe/Vienna]", Vec::new()).expect("a day");
    let slack = tries(&day, 1).slack;
    let mut exact = day.clone();
    for entry in &day.entries {
        let planned = TimeSpan::seconds(entry.end.timestamp().duration_since(entry.begin.timestamp()).as_secs_f64());
        let span = &mut exact.jobs[entry.job].span;
        (span.early, span.likely, span.late) = (planned, planned, planned);
    }
    for (job, slack) in slack.iter().enumerate().filter(|(_, slack)| slack.is_finite()) {
        for (more, is_late) in [(TimeSpan::ZERO, false), (TimeSpan::minutes(5.0), true)] {
            let mut longer = exact.clone();
            let span = &mut longer.jobs[job].span;
            let likely = span.likely + *slack + more;
            (span.early, span.likely, span.late) = (likely, likely, likely);
            let late = tries(&longer, 1).late.1;
            assert_eq!(late > TimeSpan::ZERO, is_late, "job {job} by {:?}: {late:?}", *slack + more);
        }
    }
}
