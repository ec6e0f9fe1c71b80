//! A lost book's files, written as they were last.

use super::{file_of, is_aside, last_done, told};
use crate::failure::Failure;
use crate::files;
use std::collections::BTreeMap;
use std::path::Path;
use store::{Revision, Store, Stroke};

/// Writes every file that a memory knows into a folder, as it was last saved or written; gives how many came, and those
/// that are there already and stay.
pub async fn bring_back(store: &Store, folder: &Path) -> Result<(usize, Vec<String>), Failure> {
    let mut all: BTreeMap<String, (Vec<Stroke>, Option<Revision>)> = BTreeMap::new();
    for stroke in store.all_strokes().await.map_err(told)?.into_iter().filter(|one| !is_aside(&one.name)) {
        all.entry(file_of(stroke.kind, &stroke.name)).or_default().0.push(stroke);
    }
    for revision in store.revisions().await.map_err(told)? {
        let latest = &mut all.entry(file_of(revision.kind, &revision.name)).or_default().1;
        if latest.as_ref().is_none_or(|known| known.number < revision.number) {
            *latest = Some(revision);
        }
    }
    let (mut came, mut there) = (0, Vec::new());
    for (file, (strokes, revision)) in all {
        let Some(hash) = last(&strokes, revision.as_ref()) else { continue };
        // An empty text is a file that was taken away.
        let Some(text) = store.kept(hash).await.map_err(told)?.filter(|text| !text.is_empty()) else { continue };
        let path = folder.join(&file);
        if path.exists() {
            there.push(file);
            continue;
        }
        files::write_new(&path, text.as_bytes())?;
        came += 1;
    }
    Ok((came, there))
}

/// The text that stood last: what the strokes led to, unless something that they do not know of was saved after them.
fn last<'h>(strokes: &'h [Stroke], revision: Option<&'h Revision>) -> Option<&'h str> {
    let by_strokes = last_done(strokes).map(|one| &one.after).or_else(|| strokes.first().map(|one| &one.before));
    let at = strokes.iter().map(|one| one.at).max();
    let is_later = |one: &&Revision| {
        let was_undone = strokes.iter().any(|stroke| stroke.undone && stroke.after == one.hash);
        at.is_none_or(|at| one.at > at) && !was_undone
    };
    revision.filter(is_later).map(|one| &one.hash).or(by_strokes).map(String::as_str)
}
