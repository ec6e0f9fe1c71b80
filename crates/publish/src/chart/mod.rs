//! Drawings from a formula's own figures. They read in black and white: patterns and words, never colour alone.

mod overall;

pub use overall::overall_chart;
