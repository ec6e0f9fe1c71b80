//! `explain`: why a fault is one, with a bad and a good example; faults of the text and rules of the trade alike.

use super::{Ended, Outcome};
use crate::failure::Failure;
use crate::terminal;
use bench::rules;
use formula::fault;
use formula::ingredient::{did_you_mean, nearest};

/// Says why a fault is one, with a bad and a good example.
///
/// Without a name it lists all faults, then all rules.
#[derive(clap::Args)]
pub struct Explain {
    /// The fault's or rule's name, as `check` prints it in brackets.
    fault: Option<String>,
}

/// What can be explained: its name, how bad it is, its page.
type Explained = (&'static str, &'static str, &'static str);

/// All faults, then all rules, in the order of the manual.
fn all() -> Vec<Explained> {
    let faults = fault::ALL.iter().map(|fault| (fault.code, fault.severity.name(), fault.page));
    faults.chain(rules::ALL.iter().map(|rule| (rule.code, rule.severity.name(), rule.page))).collect()
}

/// The page of a fault or rule.
pub fn explained(code: &str) -> Option<&'static str> {
    all().into_iter().find(|(name, ..)| *name == code).map(|(.., page)| page)
}

impl Explain {
    pub fn run(self) -> Ended {
        let all = all();
        let Some(code) = self.fault else {
            terminal::say(&list(&all))?;
            return Ok(Outcome::Fine);
        };
        if let Some(page) = explained(&code) {
            terminal::say(page.trim_end())?;
            return Ok(Outcome::Fine);
        }
        let near = nearest(&code, all.iter().map(|(name, ..)| *name));
        let failure = Failure::new(format!("no fault or rule is called “{code}”"));
        Err(failure
            .hint(match near {
                Some(near) => did_you_mean(near),
                None => "`wellproved explain` lists them all".to_owned(),
            })
            .into())
    }
}

fn list(all: &[Explained]) -> String {
    let width = all.iter().map(|(code, ..)| code.len()).max().unwrap_or(0);
    let about = |page: &str| page.lines().skip(1).find(|line| !line.trim().is_empty()).unwrap_or_default().to_owned();
    all.iter().map(|(code, severity, page)| format!("{code:width$}  {severity:7}  {}\n", about(page))).collect()
}
