//! The real program, run the way people run it.

mod check;
mod explain;
mod help;
mod ingredients;
mod new;
mod publish;
mod sandbox;
mod scale;
mod sheet;
