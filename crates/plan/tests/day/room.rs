//! Bowls, room in the fridge and decks of the oven.

use crate::checker::faults;
use crate::demo::{book, wanted};
use formula::read::{Action, DayHours, Kitchen};
use plan::day::{HowFar, Space, Station, Timeline, Want, Wanted, Workplace, timeline};
use plan::engine::{Patient, Propagation, Watch};
use proptest::prelude::*;
use quantity::{Count, TimeSpan, Volume};
use std::sync::Arc;

const SERVE: &str = "2026-11-29T09:30[Europe/Vienna]";
const NOW: &str = "2026-11-25T12:00[Europe/Vienna]";

fn asked(names: &[&str], change: impl Fn(&mut Kitchen)) -> Wanted {
    let book = book();
    let mut kitchen = book.kitchen();
    change(&mut kitchen);
    Wanted { place: Workplace::of(&kitchen), ..wanted(&book, names, SERVE, NOW) }
}

fn missing(timeline: &Timeline, space: Space) -> Option<HowFar> {
    timeline.unmet.iter().find(|unmet| unmet.want == Want::Room(space)).map(|unmet| unmet.gives_way)
}

fn planned(wanted: &Wanted) -> Timeline {
    let day = timeline(wanted, &Propagation, &mut Patient).expect("a day");
    assert_eq!(faults(&day), Vec::<String>::new());
    day
}

/// The sponge's bowl is not empty before the dough is mixed in another: two at once, and a third for the curd.
#[test]
fn too_few_bowls_are_told() {
    for (bowls, expected) in [(1, Some(HowFar::Room(1))), (2, None), (6, None)] {
        let day = planned(&asked(&["potato-muffins"], |kitchen| {
            kitchen.working.bowls = Some(bowls);
            kitchen.working.bowl_sizes.clear();
        }));
        assert_eq!(missing(&day, Space::Bowls), expected, "{bowls} bowls");
        let is_told = day.conflicts.iter().flatten().any(|one| one.want == Want::Room(Space::Bowls));
        assert_eq!(is_told, expected.is_some(), "{bowls} bowls");
    }
}

/// A kilogram of dough is never less than three quarters of a litre, and doubled at least one and a half: a bowl of a litre
/// holds no dough that doubles, one of six litres holds any of these.
#[test]
fn a_dough_stands_in_a_bowl_in_which_it_can_rise() {
    let day = |sizes: &[(f64, u32)]| {
        let sizes: Vec<_> = sizes.iter().map(|(size, count)| (Volume::millilitres(size * 1000.0), *count)).collect();
        planned(&asked(&["potato-muffins"], |kitchen| {
            kitchen.working.bowls = Some(sizes.iter().map(|(_, count)| count).sum());
            kitchen.working.bowl_sizes.clone_from(&sizes);
        }))
    };
    let of_the_dough = |day: &Timeline| -> Vec<(usize, i32)> {
        let is_its = |job: usize| day.dishes[day.jobs[job].dish].formula.stage(day.jobs[job].at).name == "dough";
        let stays = day.stays.iter().filter(|stay| stay.space == Space::Bowls && is_its(stay.from));
        stays.map(|stay| (stay.size, stay.amount)).collect()
    };
    assert_eq!(of_the_dough(&day(&[(1.0, 3), (6.0, 1)])), [(1, 1)]);
    let parted: i32 = of_the_dough(&day(&[(1.0, 8)])).iter().map(|(_, amount)| amount).sum();
    assert!(parted >= 2, "parted among small bowls");
    // The sponge stands in one of them until the dough is mixed in another.
    let one_large = day(&[(0.1, 5), (6.0, 1)]);
    let missing = one_large.unmet.iter().find(|unmet| unmet.want == Want::Large(1)).map(|unmet| unmet.gives_way);
    assert_eq!(missing, Some(HowFar::Room(1)));
    assert!(day(&[(0.1, 5), (6.0, 2)]).unmet.iter().all(|unmet| !matches!(unmet.want, Want::Large(_) | Want::Room(_))));
}

/// Two loaves that are proofed at one heat stand beside each other where there is room for both.
#[test]
fn a_proofer_holds_as_much_as_it_has_room_for() {
    for (room, is_shared) in [(None, false), (Some(4.0), false), (Some(60.0), true)] {
        let mut wanted = asked(&["caraway-rye-tin"], |kitchen| {
            kitchen.proofer_room = room.map(|litres| Volume::millilitres(litres * 1000.0));
            kitchen.oven.as_mut().expect("an oven").decks = Some(2);
            kitchen.working.hands = Some(2);
        });
        let mut second = (*wanted.formulas[0]).clone();
        second.name = "second-tin".to_owned();
        wanted.formulas.push(Arc::new(second));
        let day = planned(&wanted);
        let warm: Vec<_> = day.entries.iter().filter(|entry| day.jobs[entry.job].stations.contains(&Station::Proofer)).collect();
        let overlaps = warm.iter().enumerate().any(|(at, one)| warm[at + 1..].iter().any(|other| other.begin < one.end));
        assert_eq!(overlaps, is_shared, "{room:?} l");
    }
}

/// 1.5 kg of dough that rises to twice its room and stands in a tub wants more than four litres.
#[test]
fn a_fridge_too_small_is_told() {
    for (litres, is_missing) in [(4.0, true), (6.0, false)] {
        let day =
            planned(&asked(&["cardamom-knots"], |kitchen| kitchen.fridge_room = Some(Volume::millilitres(litres * 1000.0))));
        assert_eq!(missing(&day, Space::Fridge).is_some(), is_missing, "{litres} l");
    }
}

/// The two tins take one deck: with two decks a second dough bakes beside the first, with one after it.
#[test]
fn decks_are_shared_at_one_heat() {
    for (decks, is_shared) in [(1, false), (2, true)] {
        let mut wanted = asked(&["caraway-rye-tin"], |kitchen| {
            kitchen.oven.as_mut().expect("an oven").decks = Some(decks);
            kitchen.working.hands = Some(2);
        });
        let mut second = (*wanted.formulas[0]).clone();
        second.name = "second-tin".to_owned();
        wanted.formulas.push(Arc::new(second));
        // A small proofer would keep the bakes apart as well.
        wanted.around.proofer = None;
        let day = planned(&wanted);
        let bakes: Vec<_> = day.entries.iter().filter(|entry| is_bake(&day, entry.job)).collect();
        let overlaps = bakes.iter().enumerate().any(|(at, one)| bakes[at + 1..].iter().any(|other| other.begin < one.end));
        assert_eq!(overlaps, is_shared, "{decks} decks");
    }
}

#[test]
fn what_has_no_room_in_the_oven_goes_in_loads() {
    let mut wanted = asked(&["caraway-rye-tin"], |kitchen| kitchen.oven.as_mut().expect("an oven").decks = Some(2));
    let bakes = |wanted: &Wanted| -> Vec<(u32, TimeSpan)> {
        let day = planned(wanted);
        day.jobs.iter().enumerate().filter(|(job, _)| is_bake(&day, *job)).map(|(_, job)| (job.loads, job.span.likely)).collect()
    };
    let one_load = bakes(&wanted);
    let mut formula = (*wanted.formulas[0]).clone();
    for step in formula.components.iter_mut().flat_map(|component| &mut component.stages).flat_map(|stage| &mut stage.steps) {
        step.decks = step.decks.map(|_| Count::pieces(5.0));
    }
    wanted.formulas = vec![Arc::new(formula)];
    let in_loads = bakes(&wanted);
    for ((one, time), (more, longer)) in one_load.into_iter().zip(in_loads) {
        assert_eq!((one, more), (1, 3));
        assert_eq!(longer, time * 3.0);
    }
}

fn is_bake(day: &Timeline, job: usize) -> bool {
    let job = &day.jobs[job];
    job.is_step() && day.dishes[job.dish].formula.stage(job.at).steps[job.step].action == Action::Bake
}

/// Stops after so many questions.
struct Counting(usize);

impl Watch for Counting {
    fn wants_to_stop(&mut self) -> bool {
        self.0 = self.0.saturating_sub(1);
        self.0 == 0
    }
}

const FORMULAS: [&str; 6] = [
    "potato-muffins",
    "caraway-rye-tin",
    "cardamom-knots",
    "buckwheat-chickpea-griddle-bread",
    "cider-apple-fritters",
    "base-syrup",
];

proptest! {
    #![proptest_config(ProptestConfig { cases: 16, ..ProptestConfig::default() })]

    /// Whatever a kitchen has, and however long is looked for, what is told stands the check.
    #[test]
    fn days_of_generated_kitchens_stand_the_check(
        formulas in prop::sample::subsequence(&FORMULAS[..], 1..=3),
        (hands, rings, bowls, decks) in (1..3_u32, 1..4_u32, 1..7_u32, 1..4_u32),
        sizes in prop::collection::vec((0.5..6.0_f64, 1..4_u32), 0..4),
        proofer in prop::option::of(5.0..60.0_f64),
        litres in 1.0..20.0_f64,
        (asleep, out) in (prop::option::of((19..24_u32, 4..9_u32)), prop::option::of((10..14_u32, 14..18_u32))),
        lasts in 0.5..2.0_f64,
        patience in 1_000..8_000_usize,
    ) {
        let hours = |(from, to): (u32, u32)| DayHours::read(&format!("{from}:00-{to}:00"));
        let mut wanted = asked(&formulas, |kitchen| {
            kitchen.working.hands = Some(hands);
            kitchen.working.rings = Some(rings);
            kitchen.working.bowls = Some(bowls);
            kitchen.working.bowl_sizes = sizes.iter().map(|(size, count)| (Volume::millilitres(size * 1000.0), *count)).collect();
            kitchen.working.bowl_sizes.sort_by(|a, b| a.0.as_millilitres().total_cmp(&b.0.as_millilitres()));
            kitchen.proofer_room = proofer.map(|litres| Volume::millilitres(litres * 1000.0));
            kitchen.working.asleep = asleep.and_then(hours);
            kitchen.working.out = out.and_then(hours).into_iter().collect();
            kitchen.fridge_room = Some(Volume::millilitres(litres * 1000.0));
            kitchen.oven.as_mut().expect("an oven").decks = Some(decks);
        });
        for formula in &mut wanted.formulas {
            let mut changed = (**formula).clone();
            let steps = changed.components.iter_mut().flat_map(|one| &mut one.stages).flat_map(|stage| &mut stage.steps);
            for step in steps {
                step.time = step.time.map(|time| time.map(|span| span * lasts));
            }
            *formula = Arc::new(changed);
        }
        if let Ok(day) = timeline(&wanted, &Propagation, &mut Counting(patience)) {
            prop_assert_eq!(faults(&day), Vec::<String>::new());
        }
    }
}
