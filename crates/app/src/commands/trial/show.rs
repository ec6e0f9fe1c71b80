//! `trial show`: what was noted, and what it was before.

use crate::commands::{Ended, Format, Outcome};
use crate::failure::Failure;
use crate::logbook::Logbook;
use crate::memory::{Memory, told, wait};
use crate::terminal;
use formula::logging::{corrections, figures};
use publish::logged::{Change, Shown, is_same_figure};
use std::collections::BTreeMap;
use std::path::PathBuf;
use store::{Kind, Store, hash};

/// Shows a trial: every figure, what it was before it was put right, and what was changed in the file itself.
///
///   wellproved trial show saltmarsh/trials/2026-11-14-muffins.toml
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Show {
    /// The trial's file.
    trial: PathBuf,
    /// The form in which it is shown.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
    #[command(flatten)]
    memory: Memory,
}

impl Show {
    pub fn run(self) -> Ended {
        let logbook = Logbook::open(&self.trial)?;
        let trial = logbook.trial()?;
        let (by_hand, number) = wait(self.remembered(&logbook))??;
        let revision = match (&trial.revision, number) {
            (None, _) => String::new(),
            (Some(_), Some(number)) => format!(", revision {number}"),
            (Some(hash), None) => format!(", the text {}", hash.chars().take(12).collect::<String>()),
        };
        let shown = Shown { trial, text: logbook.text(), revision, by_hand };
        terminal::say(&match self.format {
            Format::Text => shown.text(terminal::width()),
            Format::Json => format!("{:#}", shown.json()),
        })?;
        Ok(Outcome::Fine)
    }

    /// What changed in the file itself from one remembered text to the next, and which revision of the formula was baked;
    /// nothing where nothing is remembered.
    async fn remembered(&self, logbook: &Logbook) -> Result<(Vec<Change>, Option<i64>), Failure> {
        let Ok(store) = self.memory.open_there(&logbook.opened.folder).await else { return Ok((Vec::new(), None)) };
        let trial = logbook.trial()?;
        let formulas = store.history(Kind::Formula, &trial.formula.value).await.map_err(told)?;
        let number = formulas.iter().find(|one| Some(&one.hash) == trial.revision.as_ref()).map(|one| one.number);
        let by_hand = by_hand(&store, logbook).await?;
        store.close().await;
        Ok((by_hand, number))
    }
}

async fn by_hand(store: &Store, logbook: &Logbook) -> Result<Vec<Change>, Failure> {
    let history = store.history(Kind::Trial, &logbook.name).await.map_err(told)?;
    let mut texts = Vec::new();
    for one in &history {
        texts.push((
            store.text(Kind::Trial, &logbook.name, one.number).await.map_err(told)?,
            one.at.strftime("%Y-%m-%dT%H:%M:%SZ").to_string(),
        ));
    }
    let is_latest = history.last().is_some_and(|one| one.hash == hash(logbook.text()));
    if !is_latest && !texts.is_empty() {
        texts.push((logbook.text().to_owned(), String::new()));
    }
    Ok(texts.windows(2).flat_map(|two| changed(&two[0].0, &two[1].0, &two[1].1)).collect())
}

/// The figures that changed or went from one text to the next without a correction that tells it, and corrections that
/// went.
fn changed(before: &str, after: &str, at: &str) -> Vec<Change> {
    let change = |figure: &str, was: &str, is: &str| Change {
        figure: figure.to_owned(),
        was: was.to_owned(),
        is: is.to_owned(),
        at: at.to_owned(),
    };
    let (told_before, told_after) = (corrections(before), corrections(after));
    let lost = told_before.iter().filter(|one| !told_after.contains(one));
    let mut all: Vec<Change> = lost.map(|(figure, was)| change(&format!("the correction of {figure}"), was, "")).collect();
    let new: Vec<&str> = told_after.iter().filter(|one| !told_before.contains(one)).map(|(figure, _)| figure.as_str()).collect();
    let (before, after) = (by_name(before), by_name(after));
    for (name, was) in &before {
        let is = after.get(name).cloned().unwrap_or_default();
        let is_more = name == "notes" && is.starts_with(was.as_str());
        if is != *was && !is_more && !new.iter().any(|figure| is_same_figure(figure, name)) {
            all.push(change(name, was, &is));
        }
    }
    all
}

/// Figures by their names; lists in one text.
fn by_name(text: &str) -> BTreeMap<String, String> {
    let mut all = BTreeMap::<String, String>::new();
    for (name, value) in figures(text) {
        all.entry(name).and_modify(|had| had.push_str(&format!("; {value}"))).or_insert(value);
    }
    all
}
