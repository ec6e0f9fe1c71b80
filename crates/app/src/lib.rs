//! The only room with a door to the outside: commands, files, the terminal.
#![allow(clippy::disallowed_methods, clippy::disallowed_types)]

mod abreast;
mod asked;
mod book;
mod commands;
mod failure;
mod files;
mod findings;
mod ingredient;
mod labelled;
mod learning;
mod logbook;
mod looking;
mod memory;
mod moment;
mod paid;
mod paper;
mod photographs;
mod press;
mod readings;

mod rests_on;
mod revisions;
mod tasting;
mod terminal;
mod watch;
mod workbench;

use clap::Parser;
use failure::Stopped;
use std::process::ExitCode;

/// The names of the commands, in the order of the manual.
#[must_use]
pub fn command_names() -> Vec<String> {
    commands::names()
}

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
        Ok(commands::Outcome::FaultsFound) | Err(Stopped::Faults) => ExitCode::from(1),
        Err(Stopped::Failed(failure)) => could_not_run(&failure),
    }
}

fn could_not_run(failure: &failure::Failure) -> ExitCode {
    terminal::complain(failure);
    ExitCode::from(2)
}
