//! Steps that are fixed: at a time, not before it, not after it; and what is told where that cannot be.

use crate::checker::faults;
use crate::demo::{book, moment, wanted};
use jiff::{SignedDuration, ZonedDateTime};
use plan::day::{AIMS, Begins, Fix, Happened, Progress, Refusal, StepName, Timeline, Want, Wanted, timeline};
use plan::engine::{Patient, Propagation};
use proptest::prelude::*;

// Late enough that nobody has to be up early for it.
const SERVE: &str = "2026-11-29T11:00[Europe/Vienna]";
const NOW: &str = "2026-11-26T12:00[Europe/Vienna]";

fn named(stage: &str, step: &str) -> StepName {
    StepName { formula: None, stage: stage.to_owned(), step: step.to_owned() }
}

fn fix(stage: &str, step: &str, begins: Begins, when: &str) -> Fix {
    Fix { of: named(stage, step), begins, when: moment(&format!("2026-11-{when}[Europe/Vienna]")) }
}

fn with(fixes: Vec<Fix>) -> Wanted {
    Wanted { fixes, ..wanted(&book(), &["potato-muffins"], SERVE, NOW) }
}

fn planned(wanted: &Wanted) -> Timeline {
    let day = timeline(wanted, &Propagation, &mut Counting(20_000)).expect("a day");
    assert_eq!(faults(&day), Vec::<String>::new());
    day
}

fn begin(day: &Timeline, job: usize) -> ZonedDateTime {
    day.entries.iter().find(|entry| entry.job == job).expect("its entry").begin.clone()
}

fn begins(day: &Timeline) -> ZonedDateTime {
    begin(day, day.fixed[0].job)
}

#[test]
fn a_step_is_fixed_and_the_rest_moves() {
    let free = planned(&with(Vec::new()));
    let own = planned(&with(vec![fix("sponge", "mix", Begins::NotBefore, "20T00:00")]));
    let usual = begins(&own);
    assert_eq!(own.entries, free.entries, "what is granted anyway changes nothing");
    for (how, when, expected) in [
        (Begins::At, "28T20:00", "28T20:00"),
        (Begins::At, "28T20:02", "28T20:00"),
        (Begins::At, "28T20:03", "28T20:05"),
        (Begins::NotAfter, "28T16:04", "28T16:00"),
        (Begins::NotBefore, "28T23:11", "28T23:15"),
    ] {
        let day = planned(&with(vec![fix("sponge", "mix", how, when)]));
        let begun = begins(&day);
        let expected = moment(&format!("2026-11-{expected}[Europe/Vienna]"));
        match how {
            Begins::At => assert_eq!(begun, expected, "{when}"),
            Begins::NotAfter => assert!(begun <= expected && expected < usual, "{begun} {usual}"),
            Begins::NotBefore => assert!(begun >= expected && expected > usual, "{begun} {usual}"),
        }
        assert!(day.unmet.iter().all(|unmet| !matches!(unmet.want, Want::Fixed(_))), "{when}");
        assert_ne!(begun, usual);
    }
}

#[test]
fn what_is_fixed_goes_before_serving_and_both_are_named() {
    assert_eq!(AIMS[0], "as fixed");
    let day = planned(&with(vec![fix("griddling", "griddle", Begins::At, "29T11:30")]));
    assert_eq!(begins(&day), moment("2026-11-29T11:30[Europe/Vienna]"));
    assert!(day.served > day.wanted);
    let wants: Vec<Want> = day.conflicts.iter().flatten().map(|one| one.want).collect();
    assert!(wants.contains(&Want::Fixed(0)) && wants.contains(&Want::Served), "{wants:?}");
    let alone = day.conflicts.iter().flatten().find(|one| one.want == Want::Fixed(0)).expect("told");
    let (sooner, _) = alone.kept.clone().expect("when it would begin instead");
    let instead = alone.alone.expect("how far").time().as_seconds() as i64;
    assert_eq!(sooner, begins(&day).checked_sub(SignedDuration::from_secs(instead)).expect("a moment"));
    // Put back, it is served in time.
    let back = Fix { when: sooner, ..day.fixed[0].fix.clone() };
    assert_eq!(planned(&with(vec![back])).served, day.wanted);
}

#[test]
fn what_cannot_be_gives_way_as_little_as_can_be() {
    let now = moment(NOW);
    // The past, and a step that follows another one at once.
    let day = planned(&with(vec![fix("syrup", "1", Begins::At, "26T11:00")]));
    assert!(begins(&day) >= now);
    assert!(day.unmet.iter().any(|unmet| unmet.want == Want::Fixed(0)));
    let both = vec![fix("dough", "mix", Begins::NotBefore, "29T07:00"), fix("dough", "mix", Begins::NotAfter, "29T06:00")];
    let day = planned(&with(both));
    let wants: Vec<Want> = day.conflicts[0].iter().map(|one| one.want).collect();
    assert_eq!(wants, [Want::Fixed(0), Want::Fixed(1)]);
    let unknown = fix("cellar", "mix", Begins::At, "29T06:00");
    let refused = timeline(&with(vec![unknown.clone()]), &Propagation, &mut Patient).err();
    assert_eq!(refused, Some(Refusal::Unknown(unknown.of)));
}

#[test]
fn days_before_and_after_are_within_reach() {
    // A syrup keeps for three days.
    let day = planned(&with(vec![fix("syrup", "1", Begins::At, "27T10:00")]));
    assert_eq!(begins(&day), moment("2026-11-27T10:00[Europe/Vienna]"));
    assert_eq!(day.unmet, []);
    let later = planned(&with(vec![fix("griddling", "griddle", Begins::NotBefore, "30T18:00")]));
    assert_eq!(begins(&later), moment("2026-11-30T18:00[Europe/Vienna]"));
    for year in ["2126", "1926"] {
        let when = moment(&format!("{year}-11-29T09:00[Europe/Vienna]"));
        let far = Fix { when, ..fix("griddling", "griddle", Begins::At, "29T09:00") };
        let refused = timeline(&with(vec![far.clone()]), &Propagation, &mut Patient).err();
        assert_eq!(refused, Some(Refusal::FarOff(far.of)));
    }
}

#[test]
fn what_has_happened_is_not_wished_for_any_more() {
    let begun = moment("2026-11-29T06:25[Europe/Vienna]");
    let mut wanted = with(vec![fix("dough", "bulk", Begins::At, "29T07:30")]);
    wanted.now = moment("2026-11-29T06:40[Europe/Vienna]");
    wanted.happened = vec![Happened { of: named("dough", "bulk"), progress: Progress::Begun(begun.clone()) }];
    let day = planned(&wanted);
    assert!(day.fixed[0].has_happened && day.unmet.iter().all(|unmet| unmet.want != Want::Fixed(0)));
    assert_eq!(begins(&day), begun);
    assert!(day.entries.iter().any(|entry| entry.job == day.fixed[0].job && entry.is_going));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 12, ..ProptestConfig::default() })]

    /// Whatever is fixed to whenever, the day keeps its rules, and what is not told to give way is kept.
    #[test]
    fn any_steps_are_fixed(fixes in prop::collection::vec((0..40_usize, 0..3_usize, -2400..900_i64), 1..4)) {
        let wanted = with(Vec::new());
        let free = planned(&wanted);
        let jobs: Vec<usize> = (0..free.jobs.len()).filter(|job| free.jobs[*job].is_step()).collect();
        let fixes = fixes.into_iter().map(|(job, how, minutes)| {
            let job = &free.jobs[jobs[job % jobs.len()]];
            let stage = free.dishes[job.dish].formula.stage(job.at).name.clone();
            let when = wanted.serve.checked_add(SignedDuration::from_mins(minutes)).expect("a moment");
            let formula = Some(free.dishes[job.dish].formula.name.clone());
            Fix { of: StepName { formula, stage, step: (job.step + 1).to_string() }, begins: Begins::ALL[how], when }
        });
        let wanted = Wanted { fixes: fixes.collect(), ..wanted };
        let day = timeline(&wanted, &Propagation, &mut Counting(3000)).expect("a day");
        prop_assert_eq!(faults(&day), Vec::<String>::new());
    }
}

/// Stops after so many questions.
struct Counting(usize);

impl plan::engine::Watch for Counting {
    fn wants_to_stop(&mut self) -> bool {
        self.0 = self.0.saturating_sub(1);
        self.0 == 0
    }
}
