//! The real program, run the way people run it.

mod sandbox;
mod check;
mod sheet;
mod scale;
mod publish;
mod new;
mod ingredients;
mod explain;
mod help;
