//! `explain`: why a fault is one, with a bad and a good example.

use super::{Ended, Outcome};
use crate::failure::Failure;
use crate::terminal;
use formula::fault;
use formula::ingredient::nearest;

/// Says why a fault is one, with a bad and a good example.
///
/// Without a name it lists all faults.
#[derive(clap::Args)]
pub struct Explain {
    /// The fault's name, as `check` prints it in brackets.
    fault: Option<String>,
}

impl Explain {
    pub fn run(self) -> Ended {
        let Some(code) = self.fault else {
            terminal::say(&list())?;
            return Ok(Outcome::Fine);
        };
        if let Some(fault) = fault::named(&code) {
            terminal::say(fault.page.trim_end())?;
            return Ok(Outcome::Fine);
        }
        let near = nearest(&code, fault::ALL.iter().map(|fault| fault.code));
        let failure = Failure::new(format!("no fault is called “{code}”"));
        Err(failure.hint(match near {
            Some(near) => format!("did you mean “{near}”?"),
            None => "`wellproved explain` lists them all".to_owned(),
        }))
    }
}

fn list() -> String {
    let width = fault::ALL.iter().map(|fault| fault.code.len()).max().unwrap_or(0);
    let about = |page: &str| page.lines().skip(1).find(|line| !line.trim().is_empty()).unwrap_or_default().to_owned();
    fault::ALL
        .iter()
        .map(|fault| format!("{:width$}  {:7}  {}\n", fault.code, fault.severity.name(), about(fault.page)))
        .collect()
}
