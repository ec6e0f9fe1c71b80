//! Courses as rows of bars.

const STEPS: [char; 8] = ['▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'];

/// A row of bars from the lowest figure to the highest.
pub fn bars(values: impl Iterator<Item = f64> + Clone, lowest: f64, highest: f64) -> String {
    let bar = |value: f64| {
        let share = if highest > lowest { (value - lowest) / (highest - lowest) } else { 0.0 };
        STEPS[((share.clamp(0.0, 1.0) * 7.0).round() as usize).min(7)]
    };
    values.map(bar).collect()
}
