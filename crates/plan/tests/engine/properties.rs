//! Generated problems: whatever the engine finds, the checker must find nothing wrong with.

use crate::checker::{faults, is_granted};
use plan::engine::{Engine, Outcome, Patient, Propagation, Watch};
use plan::problem::{Edge, Link, Measure, Problem, Resource, Slot, Stay, Task, Wish};
use proptest::prelude::*;

/// Chains of tasks with waits, shared hands and rings, a night, deadlines.
fn problem() -> impl Strategy<Value = Problem> {
    let task = (1..5_i32, 0..4_i32, prop::option::of(0..6_i32), any::<bool>(), 0..3_i32);
    let chains = prop::collection::vec(prop::collection::vec(task, 1..4), 1..4);
    (chains, 18..34_i32, 0..14_i32, 0..10_i32, 1..3_i32).prop_map(|(chains, end, night, length, hands)| {
        let mut problem = Problem { end, ..Problem::default() };
        let mut busy = Resource { capacity: hands, uses: Vec::new() };
        let mut rings = Resource { capacity: 2, uses: Vec::new() };
        let (mut fresh, mut stays) = (Vec::new(), Vec::new());
        for chain in chains {
            let first = problem.tasks.len();
            for (at, (lasts, least, most, is_active, needs)) in chain.iter().enumerate() {
                let task = problem.tasks.len();
                problem.tasks.push(Task { lasts: *lasts, earliest: 0, latest: end });
                if at > 0 {
                    problem.links.push(Link { before: task - 1, after: task, least: *least, most: None });
                    if let Some(most) = most {
                        problem.wishes.push(Wish::Soon { before: task - 1, after: task, most: least + most });
                    }
                }
                if *is_active {
                    busy.uses.push((task, 1));
                }
                if *needs > 0 {
                    rings.uses.push((task, *needs));
                }
            }
            let last = problem.tasks.len() - 1;
            problem.wishes.push(Wish::EndsBy { task: last, by: end - 4 });
            problem.wishes.push(Wish::EndsBy { task: first, by: end / 2 });
            // At a slot, not before it, not after it; some of them where no task can begin.
            let (from, to) = [(night, night), (night, 1000), (-1000, night - 3)][length as usize % 3];
            problem.wishes.push(Wish::Begins { task: last, from: from - 5, to });
            fresh.push((-1, Measure::Begin(last)));
            if first < last {
                fresh.push((2, Measure::Wait(first, last)));
                let until = if night % 2 == 0 { Edge::Begin(last) } else { Edge::End(last) };
                stays.push(Stay { from: first, until: vec![until, Edge::Begin(first + 1)], amount: 1 + length % 3 });
            }
        }
        let tasks = busy.uses.iter().map(|(task, _)| *task).collect();
        problem.wishes.push(Wish::Undisturbed { tasks, from: night, to: night + length });
        problem.wishes.push(Wish::Room { capacity: 1 + night % 4, stays });
        problem.resources = vec![busy, rings];
        problem.aims = vec![(0..problem.wishes.len()).map(|wish| (1, Measure::GivesWay(wish))).collect(), fresh];
        problem
    })
}

/// The least that the first aim can come to, by trying everything: only for very small problems.
fn by_trying(problem: &Problem) -> Option<Slot> {
    let mut best = None;
    let mut begins = vec![0; problem.tasks.len()];
    try_from(problem, 0, &mut begins, &mut best);
    best
}

fn try_from(problem: &Problem, at: usize, begins: &mut Vec<Slot>, best: &mut Option<Slot>) {
    if at == begins.len() {
        if faults(problem, begins).is_empty() {
            let value = problem.value(&problem.aims[0], begins);
            *best = Some(best.map_or(value, |other| other.min(value)));
        }
        return;
    }
    for begin in 0..=problem.end - problem.tasks[at].lasts {
        begins[at] = begin;
        try_from(problem, at + 1, begins, best);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, ..ProptestConfig::default() })]

    #[test]
    fn every_plan_stands_the_check(problem in problem()) {
        if let Outcome::Found(plan) = Propagation.solve(&problem, &mut Patient) {
            prop_assert_eq!(faults(&problem, &plan.begins), Vec::<String>::new());
            prop_assert!(plan.is_proved());
            for (aim, reached) in problem.aims.iter().zip(&plan.reached) {
                prop_assert_eq!(problem.value(aim, &plan.begins), reached.value);
            }
            let granted = |wish: &Wish| is_granted(&problem, wish, &plan.begins);
            prop_assert_eq!(plan.conflicts.is_empty(), problem.wishes.iter().all(granted));
            for (wish, one) in problem.wishes.iter().map(|wish| (wish, problem.gives_way(wish, &plan.begins))) {
                prop_assert_eq!(one == 0, granted(wish), "{:?}", wish);
            }
            for (wish, alone) in plan.conflicts.iter().flat_map(|conflict| &conflict.wishes) {
                let Some(alone) = alone else { continue };
                prop_assert_eq!(problem.gives_way(&problem.wishes[*wish], &alone.begins), alone.by);
                prop_assert_eq!(faults(&problem, &alone.begins), Vec::<String>::new());
            }
        }
    }

    #[test]
    fn it_can_be_stopped_at_any_moment(problem in problem(), questions in 0..400_usize) {
        struct Counting(usize);
        impl Watch for Counting {
            fn wants_to_stop(&mut self) -> bool {
                self.0 = self.0.saturating_sub(1);
                self.0 == 0
            }
        }
        if let Outcome::Found(plan) = Propagation.solve(&problem, &mut Counting(questions)) {
            prop_assert_eq!(faults(&problem, &plan.begins), Vec::<String>::new());
            for (aim, reached) in problem.aims.iter().zip(&plan.reached) {
                prop_assert_eq!(problem.value(aim, &plan.begins), reached.value);
                prop_assert!(reached.bound <= reached.value);
            }
            // Nobody is left to think that there is no reason.
            let is_granted = problem.wishes.iter().all(|wish| is_granted(&problem, wish, &plan.begins));
            prop_assert!(is_granted || !plan.conflicts.is_empty() || plan.is_why_cut_short);
        }
    }

    #[test]
    fn a_conflict_cannot_be_made_smaller(problem in problem()) {
        if let Outcome::Found(plan) = Propagation.solve(&problem, &mut Patient)
            && let Some(conflict) = plan.conflicts.first()
        {
            let only = |kept: &[usize]| Problem {
                wishes: kept.iter().map(|wish| problem.wishes[*wish].clone()).collect(),
                aims: Vec::new(),
                ..problem.clone()
            };
            let wishes: Vec<usize> = conflict.wishes.iter().map(|(wish, _)| *wish).collect();
            let is_against_itself = |kept: &[usize]| match Propagation.solve(&only(kept), &mut Patient) {
                Outcome::Found(plan) => !plan.conflicts.is_empty(),
                _ => true,
            };
            prop_assert!(is_against_itself(&wishes));
            for without in &wishes {
                let kept: Vec<usize> = wishes.iter().copied().filter(|wish| wish != without).collect();
                prop_assert!(!is_against_itself(&kept), "{} is not needed", without);
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, ..ProptestConfig::default() })]

    #[test]
    fn nothing_better_is_found_by_trying_everything(mut problem in problem()) {
        problem.end = problem.end.min(14);
        prop_assume!(problem.tasks.len() <= 3);
        let found = match Propagation.solve(&problem, &mut Patient) {
            Outcome::Found(plan) => Some(plan.reached[0].value),
            _ => None,
        };
        prop_assert_eq!(found, by_trying(&problem));
    }
}
