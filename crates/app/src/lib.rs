//! The only room with a door to the outside: commands, files, the terminal.
#![allow(clippy::disallowed_methods, clippy::disallowed_types)]

mod book;
mod commands;
mod failure;
mod files;
mod learning;
mod photographs;
mod terminal;

use clap::Parser;
use std::process::ExitCode;

/// Reads the command line, does what it says, and gives the status: 0 fine, 1 faults found, 2 could not run.
#[must_use]
pub fn run() -> ExitCode {
    let arguments = match commands::Arguments::try_parse() {
        Ok(arguments) => arguments,
        Err(error) => {
            // Help and version come this way too, and are no failure.
            let status = if error.use_stderr() { 2 } else { 0 };
            return match terminal::teach(&error) {
                Ok(()) => ExitCode::from(status),
                Err(failure) => could_not_run(&failure),
            };
        }
    };
    match commands::run(arguments) {
        Ok(commands::Outcome::Fine) => ExitCode::SUCCESS,
        Ok(commands::Outcome::FaultsFound) => ExitCode::from(1),
        Err(failure) => could_not_run(&failure),
    }
}

fn could_not_run(failure: &failure::Failure) -> ExitCode {
    terminal::complain(failure);
    ExitCode::from(2)
}
