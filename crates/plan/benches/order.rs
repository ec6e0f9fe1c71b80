//! How long the engine takes to find and prove the best order, and how the time grows: `cargo bench -p plan`.
//!
//! Invented days of products that are each prepared, simmered, mixed, shaped and baked by one pair of hands on two
//! rings with one oven, every wait with a least and most with a longest; one slot is five minutes.
//!
//! The same days then go to HiGHS as a plain time-indexed mixed-integer model (`time_indexed.py`), where
//! `tools/test/prepare.sh` has made ready what that needs.
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    clippy::print_stdout,
    reason = "a benchmark looks at the clock, starts what it is held against, and prints"
)]

use plan::engine::{Engine, Outcome, Propagation, Watch};
use plan::problem::{Link, Measure, Problem, Resource, Task, Wish};
use std::fmt::Write as _;
use std::io::Write as _;
use std::path::Path;
use std::process::{Command, Stdio};
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
                    "{:>4} tasks: {:>8.1} ms, {ratio:>7.1} times the smallest; wishes give way by {}, done after {} slots, {}",
                    problem.tasks.len(),
                    took * 1000.0,
                    plan.reached[0].value,
                    last.value,
                    if plan.is_proved() { "proved".to_owned() } else { format!("at most {gap:.1} % from the best") }
                );
                println!("            {}", time_indexed(&problem, last.value, took));
            }
            other => println!("{:>4} tasks: {other:?} after {took:.1} s", problem.tasks.len()),
        }
    }
}

/// So many seconds the mixed-integer model is given.
const PATIENCE: u32 = 30;

/// How the mixed-integer model fares with the same day, in words. Its last slot is a quarter beyond the end that is
/// known already, in its favour.
fn time_indexed(problem: &Problem, last: i32, took: f64) -> String {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let script = root.join("benches/time_indexed.py");
    let python = root.join("../../target/venv/bin/python");
    let mut run = Command::new(python);
    let Ok(mut child) = run.arg(script).stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::null()).spawn() else {
        return "not held against HiGHS: run tools/test/prepare.sh first".to_owned();
    };
    if let Some(mut stdin) = child.stdin.take() {
        let _ = stdin.write_all(told(problem, last + last / 4).as_bytes());
    }
    let Ok(done) = child.wait_with_output() else { return "HiGHS gave no answer".to_owned() };
    let text = String::from_utf8_lossy(&done.stdout);
    let words: Vec<&str> = text.lines().last().unwrap_or_default().split_whitespace().collect();
    let (Some(seconds), [_, wishes, end, wishes_proved, end_proved]) =
        (words.first().and_then(|one| one.parse::<f64>().ok()), &words[..])
    else {
        return "HiGHS gave no answer".to_owned();
    };
    let at_least = if *end_proved == "True" { "" } else { "more than " };
    format!(
        "HiGHS: {seconds:.1} s, {at_least}{:.0} times as long; wishes {wishes} (proved: {wishes_proved}), end {end} (proved: {end_proved})",
        seconds / took
    )
}

/// The problem, a line for each part.
fn told(problem: &Problem, horizon: i32) -> String {
    let mut text = format!("horizon {horizon} {PATIENCE}\n");
    for task in &problem.tasks {
        let _ = writeln!(text, "task {}", task.lasts);
    }
    for link in &problem.links {
        let _ = writeln!(text, "link {} {} {}", link.before, link.after, link.least);
    }
    for wish in &problem.wishes {
        if let Wish::Soon { before, after, most } = wish {
            let _ = writeln!(text, "wish {before} {after} {most}");
        }
    }
    for resource in &problem.resources {
        let tasks: Vec<String> = resource.uses.iter().map(|(task, _)| task.to_string()).collect();
        let _ = writeln!(text, "resource {} {}", resource.capacity, tasks.join(" "));
    }
    text
}
