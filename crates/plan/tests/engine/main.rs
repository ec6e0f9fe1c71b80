//! The engine against published optima, and against an independent checker on generated problems.

mod checker;
mod instances;
mod properties;
mod wishes;
