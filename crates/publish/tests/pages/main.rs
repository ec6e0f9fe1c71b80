//! Pages of the demo book: what they show is what they state as data, and every reader can use them.
#![allow(clippy::disallowed_methods, clippy::disallowed_types)] // Tests open files as the world does.

mod day;
mod demo;
mod german;
mod structured;
mod weights;
mod words;
