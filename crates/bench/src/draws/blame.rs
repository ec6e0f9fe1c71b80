//! Which of the things that vary a result feels most: the squared rank correlation of each, as a share of all
//! that they explain together.

/// The share of the spread that goes with each input; all nought where nothing spreads. `seen` holds the inputs
/// and the result of each kitchen.
///
/// Inputs that do not depend on each other explain a variance by the square of their correlation each; ranks
/// stand in for figures, so that a bent answer counts as well as a straight one. The same as Spearman's
/// coefficient, see Saltelli and others, Global Sensitivity Analysis (2008), section 1.2.5, from memory.
#[must_use]
pub fn blamed(seen: &[(&Vec<f64>, f64)]) -> Vec<f64> {
    let inputs = seen.first().map_or(0, |(draw, _)| draw.len());
    let results = ranks(&seen.iter().map(|(_, value)| *value).collect::<Vec<_>>());
    let squares: Vec<f64> = (0..inputs)
        .map(|input| {
            let own = ranks(&seen.iter().map(|(draw, _)| draw[input]).collect::<Vec<_>>());
            let together = correlation(&own, &results);
            // What chance alone would show in so many kitchens is not counted.
            let chance = 1.0 / (seen.len().max(2) as f64 - 1.0);
            (together * together - chance).max(0.0)
        })
        .collect();
    let sum: f64 = squares.iter().sum();
    if sum > 0.0 { squares.into_iter().map(|square| square / sum).collect() } else { vec![0.0; inputs] }
}

/// The place of each value among all, equal ones sharing theirs.
fn ranks(values: &[f64]) -> Vec<f64> {
    let mut order: Vec<usize> = (0..values.len()).collect();
    order.sort_by(|a, b| values[*a].total_cmp(&values[*b]));
    let mut ranks = vec![0.0; values.len()];
    let mut from = 0;
    while from < order.len() {
        let same = order[from..].iter().take_while(|at| values[**at] == values[order[from]]).count().max(1);
        for at in &order[from..from + same] {
            ranks[*at] = from as f64 + (same as f64 - 1.0) / 2.0;
        }
        from += same;
    }
    ranks
}

fn correlation(a: &[f64], b: &[f64]) -> f64 {
    let mean = |values: &[f64]| values.iter().sum::<f64>() / values.len() as f64;
    let (middle_a, middle_b) = (mean(a), mean(b));
    let sum = |of: &dyn Fn(f64, f64) -> f64| a.iter().zip(b).map(|(a, b)| of(a - middle_a, b - middle_b)).sum::<f64>();
    let both = libm::sqrt(sum(&|a, _| a * a) * sum(&|_, b| b * b));
    if both > 0.0 { sum(&|a, b| a * b) / both } else { 0.0 }
}
