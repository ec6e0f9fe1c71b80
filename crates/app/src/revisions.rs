//! Revisions of a formula held against each other, and one saved.

use crate::book::Opened;
use crate::failure::Failure;
use crate::memory::{document, told};
use bench::forecast::Surroundings;
use formula::source::Source;
use formula::{Formula, Severity};
use jiff::Timestamp;
use store::{Kind, Saved, Saving, Store};

/// More changes than this are counted, not told.
const MOST_CHANGES: usize = 6;

/// What changed from the revision before, in the trade's terms; of words alone that they changed.
pub async fn what_changed(store: &Store, opened: &Opened, name: &str, number: i64) -> Result<String, Failure> {
    let text = async |number: i64| store.text(Kind::Formula, name, number).await.map_err(told);
    let (before, after) = (worked_out(opened, name, text(number - 1).await?), worked_out(opened, name, text(number).await?));
    let (Some(before), Some(after)) = (before, after) else { return Ok("one of the two has faults".to_owned()) };
    let around = Surroundings::of(&opened.book.kitchen());
    let columns = [(number - 1).to_string(), number.to_string()];
    let changes = publish::comparison::changes(&bench::compare::compare(&[&before, &after], &around, &columns), MOST_CHANGES);
    Ok(if changes.is_empty() { "its words".to_owned() } else { changes })
}

/// A revision in its book as the book is now; none where it has errors.
pub fn worked_out(opened: &Opened, name: &str, text: String) -> Option<Formula> {
    let checked = opened.book.revised(&Source { file: format!("formulas/{name}.toml").into(), text });
    checked.diagnostics.iter().all(|found| found.severity < Severity::Error).then_some(checked.value)
}

/// Saves every text of a book; tells of each what became of it.
pub async fn save_all(store: &Store, opened: &Opened, note: &str, by: &str) -> Result<Vec<(Kind, String, Saved)>, Failure> {
    let mut all = Vec::new();
    for (file, source) in &opened.text.files {
        let Some((kind, name)) = document(file) else { continue };
        let saving = Saving { kind, name: &name, text: &source.text, note, by, at: Timestamp::now(), from: None };
        let saved = store.save(&saving).await.map_err(told)?;
        all.push((kind, name, saved));
    }
    Ok(all)
}
