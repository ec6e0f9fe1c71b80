//! The linear programme: the smallest sum of relative changes, within bounds, that meets every aim, or comes as
//! near to it as the bounds let it.

use microlp::{ComparisonOp, OptimizationDirection, Problem, Variable};

/// A line that may change.
#[derive(Clone, Debug)]
pub struct Free {
    /// What of it goes into the product, in gram.
    pub weight: f64,
    /// What it brings to the flour, in gram.
    pub flour: f64,
    /// What it brings to each aim, in the aim's own unit.
    pub brings: Vec<f64>,
}

/// An aim: what the free lines must bring to it together, in its own unit.
#[derive(Clone, Copy, Debug)]
pub struct Wanted {
    /// What is wanted.
    pub amount: f64,
    /// The size against which a miss is judged.
    pub scale: f64,
}

/// What was found: how much each line changes as a share of itself, and how far each aim is missed, in its own unit.
#[derive(Clone, Debug)]
pub struct Found {
    /// Relative changes.
    pub changes: Vec<f64>,
    /// What is lacking of each aim; below zero what is too much.
    pub lacking: Vec<f64>,
}

/// A miss of a whole aim weighs as much as this many lines doubled: no change is so large that a miss would be
/// cheaper.
const MISS: f64 = 1000.0;

/// Solves it for those aims that count; none where the solver gives up.
pub fn solve(free: &[Free], aims: &[Wanted], counts: &dyn Fn(usize) -> bool, within: f64) -> Option<Found> {
    let mut problem = Problem::new(OptimizationDirection::Minimize);
    let lines: Vec<(Variable, Variable)> =
        free.iter().map(|_| (problem.add_var(1.0, (0.0, within)), problem.add_var(1.0, (0.0, within)))).collect();
    let row = |of: &dyn Fn(&Free) -> f64, scale: f64| -> Vec<(Variable, f64)> {
        let told = free.iter().zip(&lines).map(|(one, pair)| (of(one) / scale, *pair)).filter(|(part, _)| part.abs() > 1e-9);
        told.flat_map(|(part, (more, less))| [(more, part), (less, -part)]).collect()
    };
    // The flour as a whole stays: every percentage is a share of it.
    let flour: f64 = free.iter().map(|one| one.flour).sum();
    if flour > 0.0 {
        problem.add_constraint(row(&|one| one.flour, flour), ComparisonOp::Eq, 0.0);
    }
    let mut misses = Vec::new();
    for (n, aim) in aims.iter().enumerate() {
        let now: f64 = free.iter().map(|one| one.brings[n]).sum();
        let miss = counts(n).then(|| (problem.add_var(MISS, (0.0, f64::INFINITY)), problem.add_var(MISS, (0.0, f64::INFINITY))));
        if let Some((lacking, over)) = miss {
            let mut terms = row(&|one| one.brings[n], aim.scale);
            terms.extend([(lacking, 1.0), (over, -1.0)]);
            problem.add_constraint(terms, ComparisonOp::Eq, (aim.amount - now) / aim.scale);
        }
        misses.push(miss);
    }
    let solution = problem.solve().ok()?.into_solution().ok()?;
    let value = |one: Variable| solution.var_value(one);
    Some(Found {
        changes: lines.iter().map(|(more, less)| value(*more) - value(*less)).collect(),
        lacking: misses
            .iter()
            .zip(aims)
            .map(|(miss, aim)| miss.map_or(0.0, |(lacking, over)| (value(lacking) - value(over)) * aim.scale))
            .collect(),
    })
}

/// The aims that together cannot be met, one of them the given one, and none of them to be left out of the quarrel:
/// each of the others is left out in turn, and stays out where the rest still cannot be met.
pub fn quarrel(free: &[Free], aims: &[Wanted], about: usize, within: f64) -> Vec<usize> {
    let mut held: Vec<usize> = (0..aims.len()).collect();
    for n in (0..aims.len()).filter(|n| *n != about) {
        let without: Vec<usize> = held.iter().copied().filter(|one| *one != n).collect();
        if is_missed(free, aims, &without, within) {
            held = without;
        }
    }
    held
}

fn is_missed(free: &[Free], aims: &[Wanted], held: &[usize], within: f64) -> bool {
    solve(free, aims, &|n| held.contains(&n), within)
        .is_some_and(|found| found.lacking.iter().zip(aims).any(|(lacking, aim)| lacking.abs() > aim.scale * NOTICED))
}

/// A miss below this share of its aim is rounding.
pub const NOTICED: f64 = 1e-5;
