//! Follows a system of ordinary differential equations through time with its own step length.

use super::exponential::exp;
use crate::{Equation, Standing};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "numeric::dormand_prince",
    source: "dormand-prince-1980",
    place: "table 2, RK5(4)7M; continuous form and step control as in hairer-1993, section II.4-II.6",
    standing: Standing::Published,
    valid: &[],
};

/// How closely to follow, and when to give up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// Allowed error of one step as a share of each state.
    pub relative: f64,
    /// Allowed error of one step where a state is near zero.
    pub absolute: f64,
    /// The most steps tried, refused ones included.
    pub steps: usize,
}

/// How an integration ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ending {
    /// The end of the time was reached.
    Complete,
    /// What was looked for was seen first; what lies before holds.
    Seen,
    /// The step limit was reached first; what lies before holds.
    StepLimit,
    /// A state left the ordinary numbers; what lies before holds.
    NotFinite,
}

/// One accepted step, from which the states between its ends can be read.
#[derive(Clone, Debug, PartialEq)]
pub struct Step<const N: usize> {
    /// The time at which it begins.
    pub start: f64,
    /// How long it is.
    pub length: f64,
    parts: [[f64; N]; 5],
}

/// One state at both ends of a step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ends {
    /// At its beginning.
    pub first: f64,
    /// At its end.
    pub last: f64,
    /// What it would change over the whole step at the slope of its beginning.
    pub leaving: f64,
    /// The same at the slope of its end.
    pub arriving: f64,
}

impl<const N: usize> Step<N> {
    /// The time at which it ends.
    #[must_use]
    pub fn end(&self) -> f64 {
        self.start + self.length
    }

    /// The states at its beginning.
    #[must_use]
    pub const fn first(&self) -> &[f64; N] {
        &self.parts[0]
    }

    /// One state at both ends of the step.
    #[must_use]
    pub fn ends(&self, state: usize) -> Ends {
        let [first, rise, bend, twist, _] = self.parts.map(|part| part[state]);
        Ends { first, last: first + rise, leaving: rise + bend, arriving: rise - bend - twist }
    }

    /// One state at a time within the step, to fourth order.
    #[must_use]
    pub fn one_at(&self, state: usize, time: f64) -> f64 {
        let x = (time - self.start) / self.length;
        let [p0, p1, p2, p3, p4] = self.parts.map(|part| part[state]);
        p0 + x * (p1 + (1.0 - x) * (p2 + x * (p3 + (1.0 - x) * p4)))
    }

    /// The states at a time within the step, to fourth order.
    #[must_use]
    pub fn at(&self, time: f64) -> [f64; N] {
        let x = (time - self.start) / self.length;
        let [p0, p1, p2, p3, p4] = &self.parts;
        std::array::from_fn(|i| p0[i] + x * (p1[i] + (1.0 - x) * (p2[i] + x * (p3[i] + (1.0 - x) * p4[i]))))
    }
}

/// Follows `slope` from one time to a later one, adds the accepted steps to `steps` and gives the
/// last states with how it ended.
///
/// ```text
/// k[s] = f(t + c[s]·h, y + h·Σ a[s,r]·k[r]),   s = 1 … 7
/// y(t + h) = y + h·Σ b[s]·k[s]
/// e = h·Σ (b[s] − b*[s])·k[s]
/// ‖e‖ = √(mean (e / (absolute + relative·max(|y(t)|, |y(t+h)|)))²) ≤ 1
/// h' = 0.9·h·‖e‖^−0.17·‖e before‖^0.04, between h/5 and 10 h
/// ```
///
/// | symbol       | meaning                                              |
/// |--------------|------------------------------------------------------|
/// | `f`          | slope of every state                                 |
/// | `y`, `t`     | states and time                                      |
/// | `h`          | step length, chosen so that `e` stays allowed        |
/// | `e`          | estimated error of one step, fifth against fourth order |
/// | `a b b* c`   | the published coefficients                           |
///
/// Order 5, with a continuous form of order 4. Explicit: a state that decays at rate `r` holds the
/// step near 3.3/r, which costs time, never accuracy; `Limits::steps` bounds the cost. A slope that
/// jumps at a known time wants a restart there: call once for each stretch. A slope that is not
/// finite ends the run. Dormand & Prince (1980); Hairer, Nørsett & Wanner (1993).
///
/// ```
/// # use science::numeric::dormand_prince::{Limits, integrate};
/// let limits = Limits { relative: 1e-9, absolute: 1e-12, steps: 1000 };
/// let ([e], _) = integrate(|_, [y]| [*y], (0.0, 1.0), [1.0], &limits, &mut Vec::new());
/// assert!((e - std::f64::consts::E).abs() < 1e-8);
/// ```
pub fn integrate<const N: usize>(
    slope: impl Fn(f64, &[f64; N]) -> [f64; N],
    span: (f64, f64),
    start: [f64; N],
    limits: &Limits,
    steps: &mut Vec<Step<N>>,
) -> ([f64; N], Ending) {
    integrate_until(slope, span, start, limits, (steps, |_: &Step<N>| false))
}

/// The same, and no further than the step in which something is seen.
pub fn integrate_until<const N: usize>(
    slope: impl Fn(f64, &[f64; N]) -> [f64; N],
    (from, to): (f64, f64),
    start: [f64; N],
    limits: &Limits,
    (steps, mut is_seen): (&mut Vec<Step<N>>, impl FnMut(&Step<N>) -> bool),
) -> ([f64; N], Ending) {
    let (mut time, mut state) = (from, start);
    if !(from.is_finite() && to.is_finite()) {
        return (state, Ending::NotFinite);
    }
    if to <= from {
        return (state, Ending::Complete);
    }
    let mut k1 = slope(time, &state);
    let mut length = first_length(&state, &k1, limits).min(to - from);
    let mut log_before = libm::log(1e-4);
    for _ in 0..limits.steps {
        let last = time + length * 1.000_000_1 >= to;
        if last {
            length = to - time;
        }
        let trial = Trial::new(&slope, time, length, &state, &k1);
        let error = trial.error(&state, length, limits);
        if !error.is_finite() {
            return (state, Ending::NotFinite);
        }
        if error <= 1.0 {
            let step = Step { start: time, length, parts: trial.parts(&state, length) };
            let seen = is_seen(&step);
            steps.push(step);
            time = if last { to } else { time + length };
            state = trial.state;
            k1 = trial.slopes[6];
            if last || seen {
                return (state, if last { Ending::Complete } else { Ending::Seen });
            }
            let log = libm::log(error);
            length *= (0.9 * exp(0.04 * log_before - 0.17 * log)).clamp(0.2, 10.0);
            log_before = log.max(libm::log(1e-4));
        } else {
            length *= (0.9 * exp(-0.2 * libm::log(error))).max(0.2);
        }
        if time + length <= time {
            return (state, Ending::StepLimit);
        }
    }
    (state, Ending::StepLimit)
}

/// A careful first step: a hundredth of the time in which the states would change by themselves.
fn first_length<const N: usize>(state: &[f64; N], slope: &[f64; N], limits: &Limits) -> f64 {
    let size = |values: &[f64; N]| {
        let sum: f64 = (0..N).map(|i| values[i] / (limits.absolute + limits.relative * state[i].abs())).map(|v| v * v).sum();
        (sum / N as f64).sqrt()
    };
    let (states, slopes) = (size(state), size(slope));
    let length = if states < 1e-5 || slopes < 1e-5 { 1e-6 } else { 0.01 * states / slopes };
    if length.is_finite() { length } else { 1e-6 }
}

struct Trial<const N: usize> {
    slopes: [[f64; N]; 7],
    state: [f64; N],
}

impl<const N: usize> Trial<N> {
    fn new(slope: &impl Fn(f64, &[f64; N]) -> [f64; N], time: f64, h: f64, y: &[f64; N], k1: &[f64; N]) -> Self {
        let k1 = *k1;
        let k2 = slope(time + h / 5.0, &std::array::from_fn(|i| y[i] + h * (k1[i] / 5.0)));
        let k3 = slope(time + h * 0.3, &std::array::from_fn(|i| y[i] + h * (A3[0] * k1[i] + A3[1] * k2[i])));
        let k4 = slope(time + h * 0.8, &std::array::from_fn(|i| y[i] + h * (A4[0] * k1[i] + A4[1] * k2[i] + A4[2] * k3[i])));
        let k5 = slope(
            time + h * (8.0 / 9.0),
            &std::array::from_fn(|i| y[i] + h * (A5[0] * k1[i] + A5[1] * k2[i] + A5[2] * k3[i] + A5[3] * k4[i])),
        );
        let k6 = slope(
            time + h,
            &std::array::from_fn(|i| y[i] + h * (A6[0] * k1[i] + A6[1] * k2[i] + A6[2] * k3[i] + A6[3] * k4[i] + A6[4] * k5[i])),
        );
        let state =
            std::array::from_fn(|i| y[i] + h * (B[0] * k1[i] + B[2] * k3[i] + B[3] * k4[i] + B[4] * k5[i] + B[5] * k6[i]));
        let k7 = slope(time + h, &state);
        Self { slopes: [k1, k2, k3, k4, k5, k6, k7], state }
    }

    fn error(&self, before: &[f64; N], h: f64, limits: &Limits) -> f64 {
        let [k1, _, k3, k4, k5, k6, k7] = &self.slopes;
        let sum: f64 = (0..N)
            .map(|i| {
                let e = E[0] * k1[i] + E[2] * k3[i] + E[3] * k4[i] + E[4] * k5[i] + E[5] * k6[i] + E[6] * k7[i];
                let scaled = h * e / (limits.absolute + limits.relative * before[i].abs().max(self.state[i].abs()));
                scaled * scaled
            })
            .sum();
        (sum / N as f64).sqrt()
    }

    fn parts(&self, y: &[f64; N], h: f64) -> [[f64; N]; 5] {
        let [k1, _, k3, k4, k5, k6, k7] = &self.slopes;
        let rise: [f64; N] = std::array::from_fn(|i| self.state[i] - y[i]);
        let bend: [f64; N] = std::array::from_fn(|i| h * k1[i] - rise[i]);
        let twist = std::array::from_fn(|i| rise[i] - h * k7[i] - bend[i]);
        let rest = std::array::from_fn(|i| {
            h * (D[0] * k1[i] + D[2] * k3[i] + D[3] * k4[i] + D[4] * k5[i] + D[5] * k6[i] + D[6] * k7[i])
        });
        [*y, rise, bend, twist, rest]
    }
}

const A3: [f64; 2] = [3.0 / 40.0, 9.0 / 40.0];
const A4: [f64; 3] = [44.0 / 45.0, -56.0 / 15.0, 32.0 / 9.0];
const A5: [f64; 4] = [19_372.0 / 6561.0, -25_360.0 / 2187.0, 64_448.0 / 6561.0, -212.0 / 729.0];
const A6: [f64; 5] = [9017.0 / 3168.0, -355.0 / 33.0, 46_732.0 / 5247.0, 49.0 / 176.0, -5103.0 / 18_656.0];
const B: [f64; 6] = [35.0 / 384.0, 0.0, 500.0 / 1113.0, 125.0 / 192.0, -2187.0 / 6784.0, 11.0 / 84.0];
const E: [f64; 7] = [71.0 / 57_600.0, 0.0, -71.0 / 16_695.0, 71.0 / 1920.0, -17_253.0 / 339_200.0, 22.0 / 525.0, -1.0 / 40.0];
const D: [f64; 7] = [
    -12_715_105_075.0 / 11_282_082_432.0,
    0.0,
    87_487_479_700.0 / 32_700_410_799.0,
    -10_690_763_975.0 / 1_880_347_072.0,
    701_980_252_875.0 / 199_316_789_632.0,
    -1_453_857_185.0 / 822_651_844.0,
    69_997_945.0 / 29_380_423.0,
];
