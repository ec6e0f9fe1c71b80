//! Goes through a plan slot by slot and says what is wrong with it. Knows nothing of any engine.

use plan::problem::{Edge, Problem, Slot, Wish};

/// Everything in which a plan breaks its problem.
pub fn faults(problem: &Problem, begins: &[Slot]) -> Vec<String> {
    let mut found = Vec::new();
    if begins.len() != problem.tasks.len() {
        return vec![format!("{} beginnings for {} tasks", begins.len(), problem.tasks.len())];
    }
    let end = |task: usize| begins[task] + problem.tasks[task].lasts;
    for (at, task) in problem.tasks.iter().enumerate() {
        if begins[at] < task.earliest || begins[at] > task.latest || end(at) > problem.end {
            found.push(format!("task {at} at {} outside {task:?}", begins[at]));
        }
    }
    for link in &problem.links {
        let wait = begins[link.after] - end(link.before);
        if wait < link.least || link.most.is_some_and(|most| wait > most) {
            found.push(format!("a wait of {wait} in {link:?}"));
        }
    }
    for (at, resource) in problem.resources.iter().enumerate() {
        for slot in 0..problem.end {
            let in_use: i32 = resource
                .uses
                .iter()
                .filter(|(task, _)| begins[*task] <= slot && slot < end(*task))
                .map(|(_, amount)| amount)
                .sum();
            if in_use > resource.capacity {
                found.push(format!("{in_use} of {} of resource {at} in use at {slot}", resource.capacity));
            }
        }
    }
    found
}

/// Whether a wish is granted, counted slot by slot.
pub fn is_granted(problem: &Problem, wish: &Wish, begins: &[Slot]) -> bool {
    let end = |task: usize| begins[task] + problem.tasks[task].lasts;
    match wish {
        Wish::Soon { before, after, most } => begins[*after] - end(*before) <= *most,
        Wish::EndsBy { task, by } => end(*task) <= *by,
        Wish::Begins { task, from, to } => (*from..=*to).contains(&begins[*task]),
        Wish::Room { capacity, stays } => (0..=problem.end).all(|slot| {
            let edge = |edge: &Edge| match *edge {
                Edge::Begin(task) => begins[task],
                Edge::End(task) => end(task),
            };
            let is_there =
                |stay: &&plan::problem::Stay| begins[stay.from] <= slot && stay.until.iter().any(|one| edge(one) > slot);
            stays.iter().filter(is_there).map(|stay| stay.amount).sum::<i32>() <= *capacity
        }),
        Wish::Undisturbed { tasks, from, to } => {
            (*from..*to).all(|slot| !tasks.iter().any(|task| begins[*task] <= slot && slot < end(*task)))
        }
    }
}
