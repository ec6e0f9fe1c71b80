//! `trial follow`: figures from trial to trial.

use crate::asked::{proof_read, unknown};
use crate::book::Opened;
use crate::commands::{Ended, Format, Outcome};
use crate::failure::Failure;
use crate::memory::{Memory, document, told, wait};
use crate::terminal;
use formula::Formula;
use publish::logged::{Followed, followed, followed_json};
use std::collections::BTreeSet;
use std::path::PathBuf;
use store::{Kind, Store, hash};

/// Follows what was measured from trial to trial: how warm, how sour, how long, over the weeks.
///
///   wellproved trial follow saltmarsh
///   wellproved trial follow saltmarsh --formula caraway-rye-tin --figure levain
///   wellproved trial follow saltmarsh --of rye-culture
///
/// It is asked of the book's memory, which also has trials that are no longer in its folder: a figure noted at the bench
/// is remembered at once, what was changed in a file itself when the book is saved.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Follow {
    /// The book's folder.
    book: PathBuf,
    /// Only trials of the formula of this name.
    #[arg(long, value_name = "NAME")]
    formula: Option<String>,
    /// Only stages that hold this ingredient: a culture, a flour.
    #[arg(long, value_name = "INGREDIENT")]
    of: Option<String>,
    /// Only figures in whose name that stands: "levain/ferment", "ph".
    #[arg(long, value_name = "WORDS")]
    figure: Option<String>,
    #[command(flatten)]
    memory: Memory,
    /// The form in which they are told.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

impl Follow {
    pub fn run(self) -> Ended {
        let opened = proof_read(&self.book)?;
        let all = wait(self.all(&opened))??;
        if all.is_empty() {
            return Err(Failure::new("nothing of that was measured in a trial that is remembered")
                .hint("`wellproved save` remembers trials that were written by hand")
                .into());
        }
        terminal::say(&match self.format {
            Format::Text => followed(&all, terminal::width()),
            Format::Json => format!("{:#}", followed_json(&all)),
        })?;
        Ok(Outcome::Fine)
    }

    async fn all(&self, opened: &Opened) -> Result<Vec<Followed>, Failure> {
        let formulas = crate::asked::chosen(opened.formulas(), self.formula.as_slice())?;
        let stages: Vec<(&Formula, Option<BTreeSet<&str>>)> =
            formulas.iter().map(|formula| (formula, self.of.as_deref().map(|of| holding(formula, of)))).collect();
        if let Some(of) =
            self.of.as_ref().filter(|_| stages.iter().all(|(_, stages)| stages.as_ref().is_some_and(BTreeSet::is_empty)))
        {
            let known: BTreeSet<&str> = formulas.iter().flat_map(Formula::lines).map(|(_, line)| line.name.as_str()).collect();
            return Err(unknown("line", of, known.iter().copied()));
        }
        let store = self.memory.open_there(&opened.folder).await?;
        let mut all = Vec::new();
        for (formula, stages) in stages {
            all.extend(self.of_one(&store, formula, stages.as_ref()).await?);
        }
        let unsaved = unsaved(&store, opened).await?;
        store.close().await;
        if unsaved > 0 {
            terminal::remark(&format!(
                "{unsaved} of the book's trials say otherwise than is remembered: `wellproved save` takes that in"
            ));
        }
        Ok(all)
    }

    /// The figures of a formula that are meant, each with what every trial tells of it.
    async fn of_one(&self, store: &Store, formula: &Formula, stages: Option<&BTreeSet<&str>>) -> Result<Vec<Followed>, Failure> {
        let mut all: Vec<Followed> = Vec::new();
        for one in store.figures(&formula.name).await.map_err(told)? {
            let is_there = |stages: &BTreeSet<&str>| one.figure.split('/').take(2).any(|part| stages.contains(part));
            let is_meant = self.figure.as_ref().is_none_or(|words| one.figure.contains(words.as_str()));
            if !is_meant || !stages.is_none_or(is_there) {
                continue;
            }
            let noted = (one.on, one.trial, one.value);
            match all.iter_mut().find(|other| other.figure == one.figure) {
                Some(other) => other.noted.push(noted),
                None => {
                    let title = formula.head.title.clone();
                    all.push(Followed { formula: title, figure: one.figure, noted: vec![noted] });
                }
            }
        }
        Ok(all)
    }
}

/// The stages of a formula in which an ingredient stands.
fn holding<'f>(formula: &'f Formula, ingredient: &str) -> BTreeSet<&'f str> {
    let lines = formula.lines().filter(|(_, line)| line.name == ingredient);
    lines.map(|(at, _)| formula.stage(at).name.as_str()).collect()
}

/// How many of the book's trials say otherwise than their latest revision.
async fn unsaved(store: &Store, opened: &Opened) -> Result<usize, Failure> {
    let mut count = 0;
    for (file, source) in &opened.text.files {
        let Some((Kind::Trial, name)) = document(file) else { continue };
        let latest = store.latest(Kind::Trial, &name).await.map_err(told)?;
        count += usize::from(latest.is_none_or(|latest| latest.hash != hash(&source.text)));
    }
    Ok(count)
}
