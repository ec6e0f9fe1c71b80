//! Drawings from a formula's own figures. They read in black and white: patterns and words, never colour alone.

mod course;
mod overall;

pub use course::course_chart;
pub use overall::overall_chart;
