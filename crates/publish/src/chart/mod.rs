//! Drawings from a formula's own figures. They read in black and white: patterns and words, never colour alone.

mod course;
mod overall;

pub use course::course_chart;
pub use overall::overall_chart;

/// How drawings look that carry their look along, so that a page may allow just that.
pub const LOOKS: [&str; 2] = [overall::STYLE, crate::day::CHART_LOOK];
