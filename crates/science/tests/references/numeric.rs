//! numeric against its references.

use crate::harness::{Case, Inputs, Row, check};
use proptest::prelude::*;
use science::numeric::dormand_prince::{Ending, Limits, integrate};
use science::numeric::exponential::exp;
use science::numeric::{least_squares, maximum, root, tridiagonal};

/// How each equation answers a point.
pub const CASES: &[Case] = &[
    ("numeric::tridiagonal", slab),
    ("numeric::dormand_prince", closed_form),
    ("numeric::exponential", |inputs, _| exp(inputs.number("x"))),
    ("numeric::root", crossing),
    ("numeric::maximum", summit),
    ("numeric::least_squares", adsorption),
];

/// The rows of the published table.
pub fn rows() -> Vec<Row> {
    check("numeric", CASES)
}

#[test]
fn every_reference_of_numeric_is_met() {
    rows();
}

/// −u'' = x on a grid of `n` cells, at `x`.
fn slab(inputs: &Inputs, _: &str) -> f64 {
    let n = inputs.number("n") as usize;
    let h = 1.0 / n as f64;
    let mut u: Vec<f64> = (1..n).map(|i| i as f64 * h * h * h).collect();
    let side = vec![-1.0; n - 1];
    tridiagonal::solve(&side, &vec![2.0; n - 1], &side, &mut u, &mut vec![0.0; n - 1]);
    u[(inputs.number("x") * n as f64).round() as usize - 1]
}

fn limits(relative: f64) -> Limits {
    Limits { relative, absolute: relative * 1e-3, steps: 100_000 }
}

fn closed_form(inputs: &Inputs, _: &str) -> f64 {
    let (time, limits) = (inputs.number("t"), limits(1e-9));
    let run = |slope: fn(f64, &[f64; 2]) -> [f64; 2], start| integrate(slope, (0.0, time), start, &limits, &mut Vec::new()).0[0];
    match inputs.word("problem") {
        "decay" => run(|_, y| [-y[0], 0.0], [1.0, 0.0]),
        "logistic" => run(|_, y| [y[0] / 4.0 * (1.0 - y[0] / 20.0), 0.0], [1.0, 0.0]),
        "oscillation" => run(|_, y| [y[1], -y[0]], [0.0, 1.0]),
        _ => run(|t, y| [libm::cos(t) - y[0], 0.0], [0.0, 0.0]),
    }
}

fn crossing(inputs: &Inputs, _: &str) -> f64 {
    let found = match inputs.word("problem") {
        "square" => root::find(|x| x * x - 2.0, (0.0, 2.0), 1e-12),
        "cosine" => root::find(|x| libm::cos(x) - x, (0.0, 1.0), 1e-12),
        "sine" => root::find(libm::sin, (2.0, 4.0), 1e-12),
        _ => root::find(|x| x * libm::exp(x) - 1.0, (0.0, 10.0), 1e-12),
    };
    found.expect("the signs differ")
}

fn summit(inputs: &Inputs, _: &str) -> f64 {
    match inputs.word("problem") {
        "rise-and-fall" => maximum::find(|x| x * libm::exp(-x), (0.0, 4.0), 1e-9),
        "gamma" => maximum::find(|x| x * x * libm::exp(-x), (0.0, 4.0), 1e-9),
        _ => maximum::find(libm::sin, (0.0, 3.0), 1e-9),
    }
}

const PRESSURE: [f64; 14] = [77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0];
const VOLUME: [f64; 14] = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78];

fn adsorption(inputs: &Inputs, _: &str) -> f64 {
    let start = if inputs.number("start") == 1.0 { [500.0, 1e-4] } else { [250.0, 5e-4] };
    let differences =
        |[b1, b2]: [f64; 2]| PRESSURE.iter().zip(VOLUME).map(|(x, y)| b1 * (1.0 - libm::exp(-b2 * x)) - y).collect::<Vec<_>>();
    let fit = least_squares::fit(differences, start, [(0.0, 1e4), (0.0, 1.0)]);
    match inputs.word("constant") {
        "b1" => fit.constants[0],
        "b2" => fit.constants[1],
        _ => fit.squares,
    }
}

#[test]
fn ten_times_more_steps_bring_fifth_order() {
    // Over one step the error falls with the sixth power of its length, so over a run with the fifth.
    let error = |relative: f64| {
        let mut steps = Vec::new();
        let (y, _) = integrate(|_, y: &[f64; 2]| [y[1], -y[0]], (0.0, 20.0), [0.0, 1.0], &limits(relative), &mut steps);
        ((y[0] - libm::sin(20.0)).abs(), steps.len() as f64)
    };
    let ((coarse, few), (fine, many)) = (error(1e-5), error(1e-10));
    let order = libm::log(coarse / fine) / libm::log(many / few);
    assert!((4.5..6.0).contains(&order), "order {order}");
}

/// The same where the slope depends on state and time: y' = t·y from 1, whose logarithm is t²/2. A stage at a wrong
/// time costs half as many steps again.
#[test]
fn order_holds_where_time_counts() {
    let error = |relative: f64| {
        let mut steps = Vec::new();
        let ([y], _) = integrate(|t, [y]: &[f64; 1]| [t * y], (0.0, 3.0), [1.0], &limits(relative), &mut steps);
        ((y / libm::exp(4.5) - 1.0).abs(), steps.len() as f64)
    };
    let ((coarse, few), (fine, many)) = (error(1e-4), error(1e-9));
    let order = libm::log(coarse / fine) / libm::log(many / few);
    assert!((4.5..7.0).contains(&order) && many < 100.0, "order {order}, {few} and {many} steps");
}

/// A slope that is a polynomial of the time alone is integrated exactly up to the fifth power of it, whatever the step:
/// ∫ 6·t⁵ dt from 0 to 2 is 64, ∫ 5·t⁴ dt is 32. Steps are long here, so a stage at a wrong time shows.
#[test]
fn powers_of_time_come_out_exactly() {
    let loose = Limits { relative: 1e3, absolute: 1e3, steps: 100 };
    for (power, expected) in [(1, 4.0), (2, 8.0), (3, 16.0), (4, 32.0)] {
        let mut steps = Vec::new();
        let slope = |t: f64, _: &[f64; 1]| [f64::from(power + 1) * libm::pow(t, f64::from(power))];
        let ([y], ending) = integrate(slope, (0.0, 2.0), [0.0], &loose, &mut steps);
        assert!(ending == Ending::Complete && steps.len() < 20, "{} steps", steps.len());
        assert!((y - expected).abs() < 1e-9, "power {power}: {y}");
    }
}

#[test]
fn states_between_steps_are_as_good_as_at_the_ends() {
    let mut steps = Vec::new();
    integrate(|_, y: &[f64; 2]| [y[1], -y[0]], (0.0, 20.0), [0.0, 1.0], &limits(1e-8), &mut steps);
    for step in &steps {
        for part in 0..=10 {
            let time = step.start + step.length * f64::from(part) / 10.0;
            assert!((step.at(time)[0] - libm::sin(time)).abs() < 3e-7);
        }
    }
}

/// For y' = −y the change of a whole step at the slope of an end is −h times the state there, exactly.
#[test]
fn the_ends_of_a_step_know_their_slopes() {
    let mut steps = Vec::new();
    let (last, _) = integrate(|_, [y]: &[f64; 1]| [-*y], (0.0, 2.0), [3.0], &limits(1e-9), &mut steps);
    for step in &steps {
        let ends = step.ends(0);
        assert!(
            (ends.leaving + step.length * ends.first).abs() < 1e-14 && (ends.arriving + step.length * ends.last).abs() < 1e-14
        );
        assert!((ends.first - step.at(step.start)[0]).abs() < 1e-14 && (ends.last - step.at(step.end())[0]).abs() < 1e-14);
    }
    assert!((steps[steps.len() - 1].ends(0).last - last[0]).abs() < 1e-14);
}

#[test]
fn a_run_that_cannot_go_on_says_so() {
    let few = Limits { relative: 1e-6, absolute: 1e-9, steps: 5 };
    let run = |slope: fn(f64, &[f64; 1]) -> [f64; 1]| integrate(slope, (0.0, 10.0), [1.0], &few, &mut Vec::new()).1;
    assert_eq!(run(|_, y| [-100.0 * y[0]]), Ending::StepLimit);
    assert_eq!(run(|_, _| [f64::NAN]), Ending::NotFinite);
    assert_eq!(run(|_, y| [y[0] * 1e308]), Ending::NotFinite);
}

#[test]
fn a_constant_that_wants_to_leave_its_bounds_stops_there() {
    let fit = least_squares::fit(|[a, b]| vec![a - 3.0, b - 1.0, a + b - 4.0], [0.5, 0.5], [(0.0, 2.0), (0.0, 5.0)]);
    // With a = 2 the least of (b − 1)² + (b − 2)² is at 1.5.
    assert!((fit.constants[0] - 2.0).abs() < 1e-12 && (fit.constants[1] - 1.5).abs() < 1e-6);
}

#[test]
fn the_exponential_agrees_with_the_platform_library() {
    for i in -70_000..=70_000 {
        let x = f64::from(i) * 0.009_999_7;
        assert!((exp(x) / libm::exp(x) - 1.0).abs() < 6e-16, "{x}");
    }
    for x in [f64::INFINITY, 800.0, -800.0, f64::NEG_INFINITY] {
        assert_eq!(exp(x), libm::exp(x));
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_dominant_diagonal_gives_back_its_unknowns(rows in prop::collection::vec((-1.0..1.0f64, -1.0..1.0f64, -9.0..9.0f64), 1..40)) {
        let lower: Vec<f64> = rows.iter().map(|row| row.0).collect();
        let upper: Vec<f64> = rows.iter().map(|row| row.1).collect();
        let unknowns: Vec<f64> = rows.iter().map(|row| row.2).collect();
        let diagonal = vec![2.5; rows.len()];
        let at = |i: Option<usize>| i.and_then(|i| unknowns.get(i)).copied().unwrap_or(0.0);
        let mut right: Vec<f64> = (0..rows.len())
            .map(|i| lower[i] * at(i.checked_sub(1)) + 2.5 * unknowns[i] + upper[i] * at(Some(i + 1)))
            .collect();
        tridiagonal::solve(&lower, &diagonal, &upper, &mut right, &mut vec![0.0; rows.len()]);
        for (got, expected) in right.iter().zip(&unknowns) {
            prop_assert!((got - expected).abs() < 1e-11);
        }
    }

    #[test]
    fn no_figures_make_a_method_panic(a in any::<f64>(), b in any::<f64>(), c in any::<f64>()) {
        let few = Limits { relative: 1e-6, absolute: 1e-9, steps: 200 };
        let _ = integrate(|t, [y]: &[f64; 1]| [a * y + b * t], (0.0, c), [b], &few, &mut Vec::new());
        let _ = (root::find(|x| a * x + b, (b, c), 1e-9), maximum::find(|x| a * x * x + b, (b, c), 1e-9), exp(a));
        let _ = least_squares::fit(|[x]| vec![a * x - b, x * c], [a], [(b, c)]);
        tridiagonal::solve(&[a, b], &[b, c, a], &[c], &mut [a, b, c], &mut [0.0; 2]);
    }
}
