//! A day planned again from what was seen of a dough. The truth is a kitchen whose leaven is known to the test alone.

use crate::checker::faults;
use crate::demo::{book, moment, wanted};
use bench::calibration::Untold;
use bench::forecast::{Calibration, Learnt, Surroundings, rises};
use jiff::{SignedDuration, ZonedDateTime};
use plan::day::{Happened, Progress, Refusal, Seen, StepName, Timeline, Unused, Wanted, What, timeline};
use plan::engine::{Patient, Propagation};
use quantity::{Fraction, Temperature, TimeSpan};

const SERVE: &str = "2026-11-29T11:00[Europe/Vienna]";
const BEGUN: &str = "2026-11-29T06:25[Europe/Vienna]";
const NOW: &str = "2026-11-29T07:10[Europe/Vienna]";

fn named(stage: &str, step: &str) -> StepName {
    StepName { formula: None, stage: stage.to_owned(), step: step.to_owned() }
}

/// The muffins while their dough rises, the syrup made.
fn rising(seen: Vec<Seen>) -> Wanted {
    let mut wanted = wanted(&book(), &["potato-muffins"], SERVE, NOW);
    wanted.happened = vec![
        Happened { of: named("dough", "bulk"), progress: Progress::Begun(moment(BEGUN)) },
        Happened { of: named("syrup", "cool"), progress: Progress::Done(moment(BEGUN)) },
    ];
    wanted.seen = seen;
    wanted
}

fn planned(wanted: &Wanted) -> Timeline {
    let day = timeline(wanted, &Propagation, &mut Patient).expect("a day");
    assert_eq!(faults(&day), Vec::<String>::new());
    day
}

/// How long the bulk is taken to last.
fn bulk(day: &Timeline) -> TimeSpan {
    let is_it = |job: &&plan::day::Job| job.at == (0, 1) && job.step == 2;
    day.jobs.iter().find(is_it).expect("the bulk").span.likely
}

/// How far the dough has risen after so long with a leaven so lively, and when it has doubled.
fn truth(around: &Surroundings, vigour: f64, after: TimeSpan) -> (f64, TimeSpan) {
    let formula = book().formula("potato-muffins").expect("the muffins").value;
    let mut calibration = Calibration::default();
    let lively = Learnt { middle: vigour.ln(), spread: 0.1, scatter: 0.0, trials: 1 };
    calibration.leavens.insert("yeast-instant".to_owned(), lively);
    let all = rises(&formula, &around.clone().taught(calibration));
    let rise = all.iter().find(|rise| rise.at == (0, 1)).expect("the rise");
    let step = &rise.steps[0];
    let risen = |after: TimeSpan| rise.course.at(step.lasts.from + after).expect("a moment").risen;
    (risen(after) / risen(TimeSpan::ZERO), step.reached.as_ref().expect("it doubles").from.value)
}

fn risen(times: f64, at: &str) -> Seen {
    Seen { of: named("dough", "bulk"), what: What::Risen(Fraction::ratio(times - 1.0), moment(at)) }
}

#[test]
fn a_hidden_liveliness_is_found_again() {
    let around = rising(Vec::new()).around;
    for vigour in [0.6, 1.0, 1.5] {
        let (times, doubled) = truth(&around, vigour, TimeSpan::minutes(45.0));
        let told = bulk(&planned(&rising(vec![risen(times, "2026-11-29T07:10[Europe/Vienna]")])));
        assert!((told - doubled).abs() < doubled * 0.01, "{vigour}: {told:?}, and it doubles after {doubled:?}");
    }
}

#[test]
fn a_dough_that_came_colder_takes_longer_and_the_rest_moves() {
    let warm = |degrees: f64| vec![Seen { of: named("dough", "mix"), what: What::Warm(Temperature::celsius(degrees)) }];
    let days = [18.0, 22.0, 26.0].map(|degrees| planned(&rising(warm(degrees))));
    assert!(bulk(&days[0]) > bulk(&days[1]) && bulk(&days[1]) > bulk(&days[2]));
    for day in &days {
        let entry = |step: usize| {
            day.entries.iter().find(|entry| day.jobs[entry.job].at == (0, 1 + step / 3) && day.jobs[entry.job].step == step % 3)
        };
        let (bulk, divide) = (entry(2).expect("the bulk"), entry(3).expect("the dividing"));
        assert_eq!(bulk.begin, moment(BEGUN), "what goes on stays where it is");
        assert!(divide.begin >= bulk.end && day.learnt.len() == 1);
    }
    let cold = planned(&rising(vec![Seen { of: named("dough", "bulk"), what: What::Warm(Temperature::celsius(17.0)) }]));
    assert!(bulk(&cold) > bulk(&days[1]), "a colder place as well");
}

#[test]
fn what_teaches_nothing_is_told_so() {
    let early = moment(BEGUN).checked_sub(SignedDuration::from_mins(5)).expect("a moment");
    let late = moment(NOW).checked_add(SignedDuration::from_mins(5)).expect("a moment");
    let half = |when: ZonedDateTime| Seen { of: named("dough", "bulk"), what: What::Risen(Fraction::percent(50.0), when) };
    for (seen, why) in [
        (half(early), Unused::NotThen),
        (half(late), Unused::NotThen),
        (risen(40.0, "2026-11-29T06:30[Europe/Vienna]"), Unused::Untold(Untold::DoesNotFit)),
        (Seen { of: named("griddling", "proof"), ..half(moment(NOW)) }, Unused::NotBegun),
    ] {
        let refused = timeline(&rising(vec![seen.clone()]), &Propagation, &mut Patient).err();
        assert_eq!(refused, Some(Refusal::Unused(Box::new(seen), why)));
    }
    let nowhere = Seen { of: named("cellar", "bulk"), ..half(moment(NOW)) };
    let refused = timeline(&rising(vec![nowhere.clone()]), &Propagation, &mut Patient).err();
    assert_eq!(refused, Some(Refusal::Unknown(nowhere.of)));
}
