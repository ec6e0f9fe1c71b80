//! What several trials say together of one figure: least squares with a prior, so that one trial already helps and
//! ten dominate.

use crate::forecast::Learnt;

/// What one trial says of a figure, on the scale on which it scatters evenly.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Evidence {
    /// Which trial, counted from the first.
    pub trial: usize,
    /// The figure by this trial alone.
    pub middle: f64,
    /// How far its readings leave that open, as a standard deviation.
    pub error: f64,
}

/// How many trials the scatter that is assumed counts as much as: judgement.
const ASSUMED_SCATTER: f64 = 4.0;
/// A trial this many standard deviations from what the others lead to expect is out of line: by chance one in eighty.
pub const OUT_OF_LINE: f64 = 2.5;

/// Returns what is known after so much evidence. With no evidence it is the prior.
///
/// ```text
/// m = (m_0/P² + Σ x_i/(s² + e_i²)) / (1/P² + Σ 1/(s² + e_i²)),   spread⁻² = the lower sum
/// s² = (4·s_0² + Σ w_i·max(0, (x_i − m)² − e_i²)) / (4 + Σ w_i − 1),   w_i = s_0²/(s_0² + e_i²)
/// ```
///
/// `m_0`, `P`, `s_0`: middle, spread and scatter before; `x_i`, `e_i`: what each trial says and how far its readings
/// leave that open. The least squares of normal errors with a normal prior; the scatter's own prior is judgement.
#[must_use]
pub fn taught(prior: &Learnt, evidence: &[Evidence]) -> Learnt {
    let mut scatter = prior.scatter;
    let mut known = together(prior, evidence, scatter);
    if evidence.len() > 1 {
        for _ in 0..3 {
            scatter = scattered(prior, evidence, known.middle);
            known = together(prior, evidence, scatter);
        }
    }
    known
}

fn together(prior: &Learnt, evidence: &[Evidence], scatter: f64) -> Learnt {
    let own = 1.0 / (prior.spread * prior.spread);
    let start = (own * prior.middle, own);
    let (sum, weight) = evidence.iter().fold(start, |(sum, weight), one| {
        let more = 1.0 / (scatter * scatter + one.error * one.error);
        (sum + more * one.middle, weight + more)
    });
    Learnt { middle: sum / weight, spread: 1.0 / weight.sqrt(), scatter, trials: prior.trials + evidence.len() }
}

fn scattered(prior: &Learnt, evidence: &[Evidence], middle: f64) -> f64 {
    let assumed = prior.scatter * prior.scatter;
    let (mut squares, mut count) = (0.0, 0.0);
    for one in evidence {
        let error = one.error * one.error;
        let weight = assumed / (assumed + error);
        let apart = one.middle - middle;
        squares += weight * (apart * apart - error).max(0.0);
        count += weight;
    }
    ((ASSUMED_SCATTER * assumed + squares) / (ASSUMED_SCATTER + (count - 1.0_f64).max(0.0))).sqrt()
}

/// Returns how many standard deviations a trial lies from what the prior and the others lead to expect.
#[must_use]
pub fn strangeness(prior: &Learnt, evidence: &[Evidence], which: usize) -> f64 {
    let Some(own) = evidence.get(which) else { return 0.0 };
    let others = taught(prior, &without(evidence, own.trial));
    let spread = (others.spread * others.spread + others.scatter * others.scatter + own.error * own.error).sqrt();
    (own.middle - others.middle) / spread
}

/// The evidence of all trials but one.
#[must_use]
pub fn without(evidence: &[Evidence], trial: usize) -> Vec<Evidence> {
    evidence.iter().filter(|one| one.trial != trial).copied().collect()
}
