//! The doors of the real workbench, asked as browsers ask, and as nobody should.
#![allow(clippy::disallowed_methods, clippy::disallowed_types)] // Tests open files as the world does.
#![allow(clippy::print_stdout, clippy::print_stderr)] // They say what could not be tested here.

mod coming_in;
mod fuzzed;
mod hostile;
mod killed;
mod roles;
#[path = "../commands/sandbox.rs"]
#[allow(dead_code)] // Some of it serves the commands alone.
mod sandbox;
mod served;
mod trouble;
