//! The commands, one a file, and the words in which `--help` teaches them.

mod card;
mod check;
mod choices;
mod compare;
mod completions;
mod cost;
mod day;
mod design;
mod exchange;
mod explain;
mod forecast;
mod history;
mod import;
mod ingredients;
mod keep;
mod label;
mod learn;
mod logger;
mod new;
mod publish;
mod ready;
mod save;
mod scale;
mod serve;
mod sheet;
mod solve;
mod store;
mod taste;
mod trial;

pub use cost::costing;
pub use explain::explained;
pub use new::starters;
pub use trial::said_of_entries;

use crate::failure::Stopped;
use clap::{Parser, Subcommand, ValueEnum};

/// How a command ended.
pub enum Outcome {
    /// All is well.
    Fine,
    /// The documents have faults.
    FaultsFound,
}

/// What a command gives.
pub type Ended = Result<Outcome, Stopped>;

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

/// Makes of the list of commands what the command line may say, and what then runs.
macro_rules! commands {
    ($($file:ident::$name:ident),* $(,)?) => {
        #[derive(Subcommand)]
        enum Command {
            $($name(Box<$file::$name>),)*
        }

        /// Their names, as the command line says them.
        pub fn names() -> Vec<String> {
            <Arguments as clap::CommandFactory>::command().get_subcommands().map(|one| one.get_name().to_owned()).collect()
        }

        /// Runs the command that was asked for.
        pub fn run(arguments: Arguments) -> Ended {
            match arguments.command {
                $(Command::$name(command) => command.run(),)*
            }
        }
    };
}

// In the order of the manual.
commands![
    check::Check,
    sheet::Sheet,
    card::Card,
    scale::Scale,
    forecast::Forecast,
    day::Day,
    solve::Solve,
    trial::Trial,
    learn::Learn,
    design::Design,
    taste::Taste,
    exchange::Exchange,
    compare::Compare,
    label::Label,
    cost::Cost,
    publish::Publish,
    serve::Serve,
    ready::Ready,
    save::Save,
    history::History,
    store::Store,
    ingredients::Ingredients,
    import::Import,
    logger::Logger,
    explain::Explain,
    new::New,
    completions::Completions,
];

/// The forms in which findings are reported.
#[derive(Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Format {
    /// For reading.
    Text,
    /// For other programs.
    Json,
}
