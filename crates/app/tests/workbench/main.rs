//! The workbench, asked over HTTP as a browser without scripts asks.
#![allow(clippy::disallowed_methods, clippy::disallowed_types)] // Tests open files as the world does.

mod book;
mod day;
mod exchange;
mod files;
mod history;
mod press;
mod served;
