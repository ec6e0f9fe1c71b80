//! What is said when wishes stand against each other.

use plan::engine::{Engine, Outcome, Patient, Plan, Propagation, Watch};
use plan::problem::{Link, Measure, Problem, Resource, Task, Wish};

const fn task(lasts: i32) -> Task {
    Task { lasts, earliest: 0, latest: 100 }
}

/// A rise of 6 between two works of 2, with a night and a deadline.
fn a_dough(night: (i32, i32), by: i32) -> Problem {
    Problem {
        end: 100,
        tasks: vec![task(2), task(6), task(2)],
        links: vec![Link { before: 0, after: 1, least: 0, most: Some(0) }, Link { before: 1, after: 2, least: 0, most: Some(1) }],
        resources: vec![Resource { capacity: 1, uses: vec![(0, 1), (2, 1)] }],
        wishes: vec![Wish::EndsBy { task: 2, by }, Wish::Undisturbed { tasks: vec![0, 2], from: night.0, to: night.1 }],
        aims: vec![vec![(1, Measure::GivesWay(0))], vec![(1, Measure::GivesWay(1))]],
        ..Problem::default()
    }
}

#[track_caller]
fn plan(problem: &Problem) -> Plan {
    match Propagation.solve(problem, &mut Patient) {
        Outcome::Found(plan) => plan,
        other => panic!("{other:?}"),
    }
}

#[test]
fn wishes_that_agree() {
    let plan = plan(&a_dough((0, 5), 20));
    assert_eq!(plan.conflicts, vec![]);
    assert!(plan.is_proved());
}

#[test]
fn the_night_and_the_deadline_conflict() {
    // Ten slots of work and rising must lie in 22 to 30: the night gives way by two, or serving does.
    let plan = plan(&a_dough((5, 22), 30));
    assert_eq!(plan.conflicts.len(), 1);
    assert!(!plan.is_why_cut_short);
    let alone = plan.conflicts[0].wishes.iter().map(|(wish, alone)| (*wish, alone.as_ref().map(|alone| alone.by)));
    assert_eq!(alone.collect::<Vec<_>>(), vec![(0, Some(2)), (1, Some(2))]);
    assert_eq!(plan.reached.iter().map(|one| one.value).collect::<Vec<_>>(), vec![0, 2]);
    assert_eq!(plan.begins[0], 20);
}

#[test]
fn no_plan_whatever_gives_way() {
    let mut problem = a_dough((5, 6), 30);
    problem.end = 9;
    assert_eq!(Propagation.solve(&problem, &mut Patient), Outcome::Impossible);
}

#[test]
fn told_to_stop_at_once() {
    struct Hurried;
    impl Watch for Hurried {
        fn wants_to_stop(&mut self) -> bool {
            true
        }
    }
    assert_eq!(Propagation.solve(&a_dough((0, 5), 20), &mut Hurried), Outcome::Stopped);
}
