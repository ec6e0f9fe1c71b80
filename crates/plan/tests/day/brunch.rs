//! The demo brunch at half past nine, with a baker asleep from 22:30 to 06:30.

use crate::checker::faults;
use crate::demo::{book, plan, wanted};
use formula::read::Action;
use jiff::ZonedDateTime;
use plan::day::{Entry, Readies, Station, Timeline, Want, timeline};
use plan::engine::{Patient, Propagation};

const SERVE: &str = "2026-11-29T09:30[Europe/Vienna]";
const NOW: &str = "2026-11-26T12:00[Europe/Vienna]";

fn action(timeline: &Timeline, entry: &Entry) -> Action {
    let job = &timeline.jobs[entry.job];
    timeline.dishes[job.dish].formula.stage(job.at).steps[job.step].action
}

/// When a step of that stage begins.
fn begin<'t>(timeline: &'t Timeline, stage: &str, wanted: Action) -> &'t ZonedDateTime {
    let is_it = |entry: &&Entry| {
        let job = &timeline.jobs[entry.job];
        let there = timeline.dishes[job.dish].formula.stage(job.at);
        there.name == stage && action(timeline, entry) == wanted && job.is_step()
    };
    &timeline.entries.iter().find(is_it).unwrap_or_else(|| panic!("no {wanted:?} of {stage}")).begin
}

fn clock(moment: &ZonedDateTime) -> String {
    moment.strftime("%a %H:%M").to_string()
}

#[test]
fn muffins_take_a_working_bakers_course() {
    let timeline = plan(&["potato-muffins"], SERVE, NOW).expect("a timeline");
    assert_eq!(faults(&timeline), Vec::<String>::new());
    assert!(timeline.reached.iter().all(plan::engine::Reached::is_proved));
    assert_eq!(clock(&timeline.served), "Sun 09:30");
    // The sponge the evening before, within its 12 to 18 hours; the syrup that keeps before bed, the curd fresh.
    assert_eq!(begin(&timeline, "sponge", Action::Mix).date(), timeline.served.date().yesterday().expect("a day"));
    assert_eq!(begin(&timeline, "syrup", Action::Reduce).date(), timeline.served.date().yesterday().expect("a day"));
    assert_eq!(begin(&timeline, "curd", Action::Whip).date(), timeline.served.date());
    assert!(begin(&timeline, "syrup", Action::Reduce).hour() < 22 || begin(&timeline, "syrup", Action::Reduce).minute() <= 10);
}

#[test]
fn the_muffins_need_a_baker_who_is_up_before_half_past_six() {
    let timeline = plan(&["potato-muffins"], SERVE, NOW).expect("a timeline");
    let night = timeline.unmet.iter().find(|unmet| matches!(unmet.want, Want::Left(_))).expect("the night gives way");
    assert_eq!(timeline.unmet.len(), 1);
    let in_conflict = |want: Want| timeline.conflicts.iter().flatten().find(|one| one.want == want);
    let served = in_conflict(Want::Served).expect("serving stands against the night");
    assert_eq!(served.alone, Some(night.gives_way), "as much later served as earlier up");
    assert_eq!(in_conflict(night.want).and_then(|one| one.alone), Some(night.gives_way));
}

#[test]
fn served_later_nobody_has_to_get_up() {
    let timeline = plan(&["potato-muffins"], "2026-11-29T10:00[Europe/Vienna]", NOW).expect("a timeline");
    assert_eq!(faults(&timeline), Vec::<String>::new());
    assert!(timeline.unmet.is_empty() && timeline.conflicts.is_empty());
    assert!(timeline.left.iter().all(|left| left.kept == Some((left.away.from.clone(), left.away.to.clone()))));
}

#[test]
fn the_tin_loaf_is_baked_in_time_to_rest() {
    let timeline = plan(&["caraway-rye-tin"], SERVE, NOW).expect("a timeline");
    assert_eq!(faults(&timeline), Vec::<String>::new());
    let rest = begin(&timeline, "tin", Action::Rest);
    assert!(timeline.served.timestamp().duration_since(rest.timestamp()).as_hours() >= 20);
    let heats = timeline
        .entries
        .iter()
        .find(|entry| timeline.jobs[entry.job].readies == Some(Readies::Oven))
        .expect("the oven is heated");
    assert!(heats.end <= *begin(&timeline, "tin", Action::Bake));
}

#[test]
fn nothing_that_rises_dawdles_where_something_else_can_wait() {
    for (name, keeps) in [("caraway-rye-tin", "tin"), ("potato-muffins", "syrup"), ("cardamom-knots", "base")] {
        let timeline = plan(&[name], SERVE, NOW).expect("a timeline");
        // Soft butter may well wait overnight.
        for entry in timeline.entries.iter().filter(|entry| timeline.jobs[entry.job].is_step()) {
            let job = &timeline.jobs[entry.job];
            let waits = entry.needed.timestamp().duration_since(entry.end.timestamp()).as_mins();
            let rises = matches!(action(&timeline, entry), Action::Ferment | Action::Bulk | Action::Proof | Action::Retard);
            assert!(!rises || waits == 0, "{name}: {:?} waits {waits} min", action(&timeline, entry));
            let stage = &timeline.dishes[job.dish].formula.stage(job.at).name;
            assert!(
                waits < 60 || stage == keeps || action(&timeline, entry) == Action::Chill || job.readies.is_some(),
                "{name}: {stage} waits {waits} min"
            );
        }
    }
}

#[test]
fn all_five_together_stand_the_check() {
    let all = ["potato-muffins", "caraway-rye-tin", "cardamom-knots", "buckwheat-chickpea-griddle-bread", "cider-apple-fritters"];
    let timeline = plan(&all, SERVE, "2026-11-25T12:00[Europe/Vienna]").expect("a timeline");
    assert_eq!(faults(&timeline), Vec::<String>::new());
    assert_eq!(clock(&timeline.served), "Sun 09:30");
    assert_eq!(timeline.dishes.len(), 6, "the base syrup is made for the knots");
    assert!(begin(&timeline, "base", Action::Simmer) < begin(&timeline, "glaze", Action::Glaze));
}

#[test]
fn what_is_there_already_is_not_made() {
    let book = book();
    let mut wanted = wanted(&book, &["cardamom-knots"], SERVE, NOW);
    wanted.there.insert("base-syrup".to_owned());
    let timeline = timeline(&wanted, &Propagation, &mut Patient).expect("a timeline");
    assert_eq!(timeline.dishes.len(), 1);
    assert_eq!(faults(&timeline), Vec::<String>::new());
}

#[test]
fn what_asks_for_more_than_the_room_stands_in_the_proofer() {
    let timeline = plan(&["caraway-rye-tin", "cardamom-knots"], SERVE, "2026-11-25T12:00[Europe/Vienna]").expect("a timeline");
    assert_eq!(faults(&timeline), Vec::<String>::new());
    let warm = timeline.entries.iter().filter(|entry| timeline.jobs[entry.job].stations.contains(&Station::Proofer));
    let warm: Vec<Action> = warm.map(|entry| action(&timeline, entry)).collect();
    assert_eq!(warm, [Action::Bulk, Action::Proof], "the rye wants 27 °C in a room of 22; the knots do not");
}

/// Butter that a line wants at 18 or 20 °C comes out of the fridge an hour before; milk that is to be warm does not.
#[test]
fn butter_is_taken_out_an_hour_before() {
    let timeline = plan(&["cardamom-knots"], SERVE, NOW).expect("a timeline");
    let ready = timeline.entries.iter().filter(|entry| matches!(timeline.jobs[entry.job].readies, Some(Readies::Soft(_))));
    let ready: Vec<(&Entry, &ZonedDateTime)> = ready
        .map(|entry| {
            let after = timeline.follows.iter().find(|one| one.before == entry.job).and_then(|one| one.after).expect("its step");
            (entry, &timeline.entries.iter().find(|other| other.job == after).expect("its time").begin)
        })
        .collect();
    assert_eq!(ready.len(), 2, "for the dough and for the filling");
    for (entry, needed) in ready {
        let before = needed.timestamp().duration_since(entry.begin.timestamp()).as_mins();
        assert!((60..=13 * 60).contains(&before) && entry.is_set_going, "{before} min");
    }
}
