//! How much a difference matters.

use formula::Known;

/// How much a difference matters, told by a word and never by colour alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Difference {
    /// They are the same, as far as anything shows it.
    None,
    /// Less than is noticed.
    Slight,
    /// It is noticed.
    Clear,
    /// It makes another product of it.
    Large,
}

impl Difference {
    /// The word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::None => "same",
            Self::Slight => "slight",
            Self::Clear => "clear",
            Self::Large => "large",
        }
    }
}

/// What is just noticed.
#[derive(Clone, Copy, Debug)]
pub enum Step {
    /// So much in the row's own unit.
    Points(f64),
    /// Such a share of the figure.
    Share(f64),
}

/// How many steps are another product: common practice, no source.
const LARGE: f64 = 3.0;
/// The part of a step below which nothing shows it: of what is weighed, and of what is only foreseen.
const NOTHING_WEIGHED: f64 = 0.05;
const NOTHING_FORESEEN: f64 = 0.2;

/// How far apart figures are, and how much that matters. A formula without the figure counts as none of it
/// where that has a meaning, and else as clearly different.
pub fn grade(cells: &[Option<Known<f64>>], step: Step, is_weighed: bool) -> (f64, Difference) {
    let is_whole = cells.iter().all(Option::is_some);
    let values: Vec<f64> = match (is_whole, is_weighed) {
        (false, true) => cells.iter().map(|cell| cell.as_ref().map_or(0.0, |cell| cell.value)).collect(),
        _ => cells.iter().flatten().map(|cell| cell.value).collect(),
    };
    let (Some(low), Some(high)) = (values.iter().copied().reduce(f64::min), values.iter().copied().reduce(f64::max)) else {
        return (0.0, Difference::None);
    };
    let apart = match values[..] {
        [first, second] if cells.len() == 2 => second - first,
        _ => high - low,
    };
    let noticed = match step {
        Step::Points(points) => points,
        Step::Share(share) => share * low.abs().max(high.abs()),
    };
    let steps = if noticed > 0.0 { (high - low) / noticed } else { 0.0 };
    let nothing = if is_weighed { NOTHING_WEIGHED } else { NOTHING_FORESEEN };
    let difference = match steps {
        s if s < nothing => Difference::None,
        s if s < 1.0 => Difference::Slight,
        s if s < LARGE => Difference::Clear,
        _ => Difference::Large,
    };
    let is_lacking = !is_whole && !is_weighed && !values.is_empty();
    (apart, if is_lacking { difference.max(Difference::Clear) } else { difference })
}

#[cfg(test)]
mod tests {
    use super::{Difference, Step, grade};
    use formula::Known;

    #[test]
    fn differences_by_size() {
        let cell = |value: f64| Some(Known::assumed(value, "a test"));
        for (values, step, expected) in [
            (vec![cell(65.0), cell(65.0)], Step::Points(2.0), Difference::None),
            (vec![cell(65.0), cell(66.0)], Step::Points(2.0), Difference::Slight),
            (vec![cell(65.0), cell(68.0)], Step::Points(2.0), Difference::Clear),
            (vec![cell(65.0), cell(75.0)], Step::Points(2.0), Difference::Large),
            (vec![cell(1.0), cell(0.5)], Step::Share(0.2), Difference::Clear),
            (vec![cell(1.0), None], Step::Share(0.2), Difference::Large),
        ] {
            assert_eq!(grade(&values, step, true).1, expected, "{values:?}");
        }
        assert_eq!(grade(&[cell(3.0), None], Step::Share(0.2), false).1, Difference::Clear);
    }
}
