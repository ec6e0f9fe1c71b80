//! `trial`: what is done and seen at the bench, logged.

mod begin;
mod compare;
mod follow;
mod note;
mod show;

pub use note::said as said_of_entries;

use super::Ended;

/// Logs a trial at the bench: begins it with what is expected, notes what was weighed and seen, shows it.
///
///   wellproved trial begin saltmarsh/formulas/potato-muffins.toml
///   wellproved trial note saltmarsh/trials/2026-11-21-potato-muffins.toml "sponge/mix=24 °C"
///   wellproved trial show saltmarsh/trials/2026-11-21-potato-muffins.toml
///   wellproved trial compare saltmarsh --formula potato-muffins
///   wellproved trial follow saltmarsh --of rye-culture
///
/// What was not seen is left out: missing is missing. A figure that is noted anew keeps what it was before, with the
/// time. What trials teach, `wellproved learn` tells.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Trial {
    #[command(subcommand)]
    does: Does,
}

/// What is done with a trial.
#[derive(clap::Subcommand)]
enum Does {
    Begin(begin::Begin),
    Note(note::Note),
    Show(show::Show),
    Compare(compare::Compare),
    Follow(follow::Follow),
}

impl Trial {
    pub fn run(self) -> Ended {
        match self.does {
            Does::Begin(begin) => begin.run(),
            Does::Note(note) => note.run(),
            Does::Show(show) => show.run(),
            Does::Compare(compare) => compare.run(),
            Does::Follow(follow) => follow.run(),
        }
    }
}
