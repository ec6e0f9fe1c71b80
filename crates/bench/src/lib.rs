//! A formula in a kitchen: what its scales can show, what must be minded, what its doughs will do
//! there, questions asked backwards, one thing exchanged for another, what a hand does to its sheet, formulas side by
//! side, and what trials teach.

pub mod calibration;
pub mod cautions;
pub mod compare;
pub mod cost;
pub mod draws;
pub mod exchange;
pub mod forecast;
pub mod gesture;
pub mod grounds;
pub mod label;
pub mod rules;
pub mod target;
pub mod tasting;
pub mod trial;
pub mod weighing;
