//! `history`: what a formula said before.

use super::{Ended, Format, Outcome};
use crate::asked::unknown;
use crate::book::Opened;
use crate::failure::Failure;
use crate::memory::{Memory, told, wait};
use crate::revisions::what_changed;
use crate::{book, terminal};
use serde_json::json;
use std::collections::BTreeSet;
use std::path::PathBuf;
use store::{Kind, Revision};

/// Tells what was saved of a book, and what changed from one revision of a formula to the next.
///
///   wellproved history saltmarsh
///   wellproved history saltmarsh --formula cardamom-knots
///   wellproved history saltmarsh --formula cardamom-knots --show 2 > knots-2.toml
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct History {
    /// The book's folder.
    book: PathBuf,
    /// The formula of this name, revision by revision.
    #[arg(long, value_name = "NAME")]
    formula: Option<String>,
    /// What that revision of the formula said, as it was written.
    #[arg(long, value_name = "NUMBER", requires = "formula")]
    show: Option<i64>,
    #[command(flatten)]
    memory: Memory,
    /// The form of the history.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

impl History {
    pub fn run(self) -> Ended {
        let opened = book::open(&self.book)?;
        wait(self.tell(&opened))??;
        Ok(Outcome::Fine)
    }

    async fn tell(&self, opened: &Opened) -> Result<(), Failure> {
        let store = self.memory.open_there(&opened.folder).await?;
        let Some(name) = &self.formula else {
            let all = store.revisions().await.map_err(told)?;
            return terminal::say(&self.all(&all));
        };
        let history = store.history(Kind::Formula, name).await.map_err(told)?;
        if history.is_empty() {
            let saved = store.revisions().await.map_err(told)?;
            let names: BTreeSet<&str> =
                saved.iter().filter(|one| one.kind == Kind::Formula).map(|one| one.name.as_str()).collect();
            let never = opened.book.formulas.contains_key(name);
            let failure = Failure::new(format!("“{name}” was never saved"));
            return Err(if never {
                failure.hint("save the book with `wellproved save`")
            } else {
                unknown("saved formula", name, names.iter().copied())
            });
        }
        if let Some(number) = self.show {
            let text = store.text(Kind::Formula, name, number).await.map_err(told)?;
            return terminal::say(text.trim_end_matches('\n'));
        }
        let mut told_of = Vec::new();
        for one in history.iter().rev() {
            let changed = if one.number > 1 { what_changed(&store, opened, name, one.number).await? } else { String::new() };
            told_of.push((one, changed));
        }
        terminal::say(&match self.format {
            Format::Text => told_of.iter().map(|(one, changed)| in_words(one, changed)).collect::<Vec<_>>().join("\n"),
            Format::Json => {
                format!("{:#}", json!(told_of.iter().map(|(one, changed)| as_json(one, Some(changed))).collect::<Vec<_>>()))
            }
        })
    }

    /// Everything that was saved, the latest revision of each.
    fn all(&self, all: &[Revision]) -> String {
        let is_latest = |n: &usize| all.get(n + 1).is_none_or(|next| (next.kind, &next.name) != (all[*n].kind, &all[*n].name));
        let latest: Vec<&Revision> = (0..all.len()).filter(is_latest).map(|n| &all[n]).collect();
        match self.format {
            Format::Json => format!("{:#}", json!(all.iter().map(|one| as_json(one, None)).collect::<Vec<_>>())),
            Format::Text if latest.is_empty() => "Nothing was saved yet: `wellproved save` does.".to_owned(),
            Format::Text => {
                let line = |one: &&Revision| {
                    format!("{:<12} {:<32} revision {:<4} {}", one.kind.word(), one.name, one.number, moment(one))
                };
                latest.iter().map(line).map(|line| line.trim_end().to_owned()).collect::<Vec<_>>().join("\n")
            }
        }
    }
}

fn moment(one: &Revision) -> String {
    one.at
        .to_zoned_datetime(jiff::tz::TimeZone::try_system().unwrap_or(jiff::tz::TimeZone::UTC))
        .strftime("%Y-%m-%d %H:%M")
        .to_string()
}

fn in_words(one: &Revision, changed: &str) -> String {
    let by = if one.by.is_empty() { String::new() } else { format!(", {}", one.by) };
    let note = if one.note.is_empty() { String::new() } else { format!("\n  “{}”", one.note) };
    let wrapped = || publish::words::wrap(changed, terminal::width().saturating_sub(2)).trim_end().replace("\n  ", "\n");
    let changed = if changed.is_empty() { String::new() } else { format!("\n{}", wrapped()).replace('\n', "\n  ") };
    format!("{:<3} {}{by}{note}{changed}", one.number, moment(one))
}

fn as_json(one: &Revision, changed: Option<&str>) -> serde_json::Value {
    json!({
        "kind": one.kind.word(), "name": one.name, "revision": one.number, "sha-256": one.hash,
        "note": one.note, "by": one.by, "at": one.at.to_string(), "changed": changed,
    })
}
