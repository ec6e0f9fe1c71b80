//! The commands, one a file, and the words in which `--help` teaches them.

mod check;
mod compare;
mod completions;
mod day;
mod design;
mod exchange;
mod explain;
mod forecast;
mod ingredients;
mod keep;
mod learn;
mod new;
mod publish;
mod scale;
mod sheet;
mod solve;

use check::proof_read;

use crate::failure::Failure;
use clap::{Parser, Subcommand, ValueEnum};

/// How a command ended.
pub enum Outcome {
    /// All is well.
    Fine,
    /// The documents have faults.
    FaultsFound,
}

/// What a command gives.
pub type Ended = Result<Outcome, Failure>;

/// From a formula written once to the sheet, the weights and the page.
///
/// A BOOK is a folder of formulas: book.toml, kitchens/, ingredients/, formulas/*.toml.
/// Wherever a BOOK is asked for, a single formula's file will do too.
///
///   wellproved check examples/saltmarsh
///   wellproved sheet examples/saltmarsh/formulas/potato-muffins.toml
///   wellproved publish examples/saltmarsh --out published
///
/// Status: 0 all is well, 1 faults were found, 2 the command could not run.
#[derive(Parser)]
#[command(
    name = "wellproved",
    version,
    verbatim_doc_comment,
    max_term_width = 100,
    subcommand_required = true,
    arg_required_else_help = true
)]
pub struct Arguments {
    #[command(subcommand)]
    command: Command,
}

#[derive(Subcommand)]
enum Command {
    Check(check::Check),
    Sheet(sheet::Sheet),
    Scale(Box<scale::Scale>),
    Forecast(forecast::Forecast),
    Day(Box<day::Day>),
    Solve(Box<solve::Solve>),
    Learn(learn::Learn),
    Design(design::Design),
    Exchange(Box<exchange::Exchange>),
    Compare(compare::Compare),
    Publish(publish::Publish),
    Ingredients(ingredients::Ingredients),
    Explain(explain::Explain),
    New(new::New),
    Completions(completions::Completions),
}

/// The forms in which findings are reported.
#[derive(Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Format {
    /// For reading.
    Text,
    /// For other programs.
    Json,
}

/// Runs the command that was asked for.
pub fn run(arguments: Arguments) -> Ended {
    match arguments.command {
        Command::Check(command) => command.run(),
        Command::Sheet(command) => command.run(),
        Command::Scale(command) => command.run(),
        Command::Forecast(command) => command.run(),
        Command::Day(command) => command.run(),
        Command::Solve(command) => command.run(),
        Command::Learn(command) => command.run(),
        Command::Design(command) => command.run(),
        Command::Exchange(command) => command.run(),
        Command::Compare(command) => command.run(),
        Command::Publish(command) => command.run(),
        Command::Ingredients(command) => command.run(),
        Command::Explain(command) => command.run(),
        Command::New(command) => command.run(),
        Command::Completions(command) => command.run(),
    }
}
