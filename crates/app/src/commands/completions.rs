//! `completions`: scripts that complete commands in a shell.

use super::{Arguments, Ended, Outcome};
use crate::terminal;
use clap::CommandFactory;
use clap_complete::Shell;

/// Prints a script that completes commands and options in a shell.
///
///   wellproved completions bash > ~/.local/share/bash-completion/completions/wellproved
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Completions {
    /// The shell.
    shell: Shell,
}

impl Completions {
    pub fn run(self) -> Ended {
        let mut script = Vec::new();
        clap_complete::generate(self.shell, &mut Arguments::command(), "wellproved", &mut script);
        terminal::say(&String::from_utf8_lossy(&script))?;
        Ok(Outcome::Fine)
    }
}
