//! The workbench, asked over HTTP as a browser without scripts asks.
#![allow(clippy::disallowed_methods, clippy::disallowed_types)] // Tests open files as the world does.

mod book;
mod browsed;
mod day;
mod exchange;
mod files;
mod history;
mod press;
mod refused;
#[path = "../commands/sandbox.rs"]
#[allow(dead_code)] // Some of it serves the commands alone.
mod sandbox;
#[path = "../doors/served.rs"]
#[allow(dead_code)] // Some of it serves those who are not meant to come in.
mod served;
mod sheet;
mod tastings;
mod trials;
