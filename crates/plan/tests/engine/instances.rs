//! Known instances with their published optima.
//!
//! ft06: H. Fisher and G. L. Thompson, "Probabilistic learning combinations of local job-shop scheduling
//! rules", in Industrial Scheduling, Prentice-Hall 1963; optimum 55.
//! la01: S. Lawrence, "Resource constrained project scheduling", Carnegie-Mellon University 1984; optimum 666.
//! Both are distributed by the OR-Library of J. E. Beasley. The figures are from memory; that their optima
//! come out as published confirms them.
//! j301_1: the first instance of the set j30 of PSPLIB, R. Kolisch and A. Sprecher, "PSPLIB: a project
//! scheduling problem library", European Journal of Operational Research 96 (1997) 205-216; optimum 43.

use crate::checker::faults;
use plan::engine::{Engine, Outcome, Patient, Propagation};
use plan::problem::{Link, Measure, Problem, Resource, Task};

const FT06: &str = "\
2 1 0 3 1 6 3 7 5 3 4 6
1 8 2 5 4 10 5 10 0 10 3 4
2 5 3 4 5 8 0 9 1 1 4 7
1 5 0 5 2 5 3 3 4 8 5 9
2 9 1 3 4 5 5 4 0 3 3 1
1 3 3 3 5 9 0 10 4 4 2 1";

const LA01: &str = "\
1 21 0 53 4 95 3 55 2 34
0 21 3 52 4 16 2 26 1 71
3 39 4 98 1 42 2 31 0 12
1 77 0 55 4 79 2 66 3 77
0 83 3 34 2 64 1 19 4 37
1 54 2 43 4 79 0 92 3 62
3 69 4 77 1 87 2 87 0 93
2 38 0 60 1 41 3 24 4 83
3 17 1 49 4 25 0 44 2 98
4 77 3 79 2 43 1 75 0 96";

/// A job a line: machine and time in turn.
fn job_shop(text: &str, end: i32) -> Problem {
    let mut problem = Problem { end, aims: vec![vec![(1, Measure::Last)]], ..Problem::default() };
    for job in text.lines() {
        let figures: Vec<usize> = job.split_whitespace().map(|word| word.parse().expect("a number")).collect();
        for (at, operation) in figures.chunks(2).enumerate() {
            let task = problem.tasks.len();
            problem.tasks.push(Task { lasts: operation[1] as i32, earliest: 0, latest: end });
            if at > 0 {
                problem.links.push(Link { before: task - 1, after: task, least: 0, most: None });
            }
            while problem.resources.len() <= operation[0] {
                problem.resources.push(Resource { capacity: 1, uses: Vec::new() });
            }
            problem.resources[operation[0]].uses.push((task, 1));
        }
    }
    problem
}

#[track_caller]
fn check(problem: &Problem, optimum: i32) {
    let Outcome::Found(plan) = Propagation.solve(problem, &mut Patient) else { panic!("no plan") };
    assert_eq!(faults(problem, &plan.begins), Vec::<String>::new());
    assert_eq!((plan.reached[0].value, plan.reached[0].bound), (optimum, optimum));
}

#[test]
fn ft06_takes_55() {
    check(&job_shop(FT06, 200), 55);
}

#[test]
fn la01_takes_666() {
    check(&job_shop(LA01, 1500), 666);
}

/// Job, time, what it needs of the four resources, and the jobs after it.
const J301_1: &str = "\
1 0 0 0 0 0 2 3 4
2 8 4 0 0 0 6 11 15
3 4 10 0 0 0 7 8 13
4 6 0 0 0 3 5 9 10
5 3 3 0 0 0 20
6 8 0 0 0 8 30
7 5 4 0 0 0 27
8 9 0 1 0 0 12 19 27
9 2 6 0 0 0 14
10 7 0 0 0 1 16 25
11 9 0 5 0 0 20 26
12 2 0 7 0 0 14
13 6 4 0 0 0 17 18
14 3 0 8 0 0 17
15 9 3 0 0 0 25
16 10 0 0 0 5 21 22
17 6 0 0 0 8 22
18 5 0 0 0 7 20 22
19 3 0 1 0 0 24 29
20 7 0 10 0 0 23 25
21 2 0 0 0 6 28
22 7 2 0 0 0 23
23 2 3 0 0 0 24
24 3 0 9 0 0 30
25 3 4 0 0 0 30
26 7 0 0 4 0 31
27 8 0 0 0 7 28
28 3 0 8 0 0 31
29 7 0 7 0 0 32
30 2 0 7 0 0 32
31 2 0 0 2 0 32
32 0 0 0 0 0";

#[test]
fn j301_1_takes_43() {
    let end = 158;
    let mut problem = Problem { end, aims: vec![vec![(1, Measure::Last)]], ..Problem::default() };
    problem.resources = [12, 13, 4, 12].map(|capacity| Resource { capacity, uses: Vec::new() }).to_vec();
    for (job, line) in J301_1.lines().enumerate() {
        let figures: Vec<i32> = line.split_whitespace().map(|word| word.parse().expect("a number")).collect();
        problem.tasks.push(Task { lasts: figures[1], earliest: 0, latest: end });
        for (resource, amount) in figures[2..6].iter().enumerate().filter(|(_, amount)| **amount > 0) {
            problem.resources[resource].uses.push((job, *amount));
        }
        let after = figures[6..].iter().map(|other| Link { before: job, after: *other as usize - 1, least: 0, most: None });
        problem.links.extend(after);
    }
    check(&problem, 43);
}
