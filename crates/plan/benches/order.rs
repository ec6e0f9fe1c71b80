//! How long the engine takes to find and prove the best order, and how the time grows: `cargo bench -p plan`.
//!
//! Invented days of products that are each prepared, simmered, mixed, shaped and baked by one pair of hands on two
//! rings with one oven, every wait with a least and most with a longest; one slot is five minutes.
#![allow(clippy::disallowed_methods, clippy::print_stdout, reason = "a benchmark looks at the clock and prints")]

use plan::engine::{Engine, Outcome, Propagation, Watch};
use plan::problem::{Link, Measure, Problem, Resource, Task, Wish};
use std::time::{Duration, Instant};

struct Until(Instant);

impl Watch for Until {
    fn wants_to_stop(&mut self) -> bool {
        Instant::now() > self.0
    }
}

/// A small generator of even numbers below a bound, the same on every machine.
struct Dice(u64);

impl Dice {
    fn below(&mut self, bound: u64) -> i32 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        i32::try_from((self.0 >> 33) % bound).unwrap_or(0)
    }
}

/// So many products of five tasks each.
fn day(products: usize, seed: u64) -> Problem {
    let mut dice = Dice(seed);
    let end = i32::try_from(products).unwrap_or(0) * 40 + 60;
    let mut problem = Problem { end, ..Problem::default() };
    let mut stations = [(1, Vec::new()), (2, Vec::new()), (1, Vec::new())];
    for _ in 0..products {
        let first = problem.tasks.len();
        // Prepared, simmered, mixed, shaped, baked: how long, and on which station.
        let steps = [
            (1 + dice.below(2), 0),
            (3 + dice.below(6), 1),
            (1 + dice.below(2), 0),
            (1 + dice.below(3), 0),
            (4 + dice.below(5), 2),
        ];
        for (at, (lasts, station)) in steps.into_iter().enumerate() {
            let task = first + at;
            problem.tasks.push(Task { lasts, earliest: 0, latest: end });
            stations[station].1.push((task, 1));
            if at > 0 {
                let least = dice.below(4);
                problem.links.push(Link { before: task - 1, after: task, least, most: None });
                if dice.below(3) > 0 {
                    problem.wishes.push(Wish::Soon { before: task - 1, after: task, most: least + 2 + dice.below(8) });
                }
            }
        }
    }
    problem.resources = stations.into_iter().map(|(capacity, uses)| Resource { capacity, uses }).collect();
    problem.aims = vec![(0..problem.wishes.len()).map(|wish| (1, Measure::GivesWay(wish))).collect(), vec![(1, Measure::Last)]];
    problem
}

fn main() {
    let mut first = None;
    for products in [4, 8, 12, 30] {
        let problem = day(products, 7);
        let began = Instant::now();
        let outcome = Propagation.solve(&problem, &mut Until(began + Duration::from_secs(10)));
        let took = began.elapsed().as_secs_f64();
        let ratio = took / *first.get_or_insert(took);
        match outcome {
            Outcome::Found(plan) => {
                let last = plan.reached[1];
                let gap = 100.0 * f64::from(last.value - last.bound) / f64::from(last.value);
                println!(
                    "{:>4} tasks: {:>8.1} ms, {ratio:>7.1} times the smallest; done after {} slots, {}",
                    problem.tasks.len(),
                    took * 1000.0,
                    last.value,
                    if plan.is_proved() { "proved".to_owned() } else { format!("at most {gap:.1} % from the best") }
                );
            }
            other => println!("{:>4} tasks: {other:?} after {took:.1} s", problem.tasks.len()),
        }
    }
}
