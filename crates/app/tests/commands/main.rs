//! The real program, run the way people run it.
#![allow(clippy::disallowed_methods, clippy::disallowed_types)] // Tests open files as the world does.

mod card;
mod check;
mod compare;
mod cost;
mod day;
mod design;
mod disk;
mod evidence;
mod exchange;
mod explain;
mod forecast;
mod help;
mod import;
mod ingredients;
mod label;
mod learn;
mod logger;
mod new;
mod press;
mod publish;
mod ready;
mod sandbox;
mod save;
mod scale;
mod sheet;
mod solve;
mod synthetic;
mod taste;
mod trial;
