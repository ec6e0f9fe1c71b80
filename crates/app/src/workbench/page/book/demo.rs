//! A book without a formula: the demo book can be laid there, or a first formula begun.

use super::fresh;
use crate::book::Opened;
use crate::failure::Failure;
use crate::files;
use crate::memory::{document, file_of, last_done, told};
use crate::workbench::answer::{Answer, Refusal, see};
use crate::workbench::desk::{Desk, Happened};
use crate::workbench::door::{Role, Visitor};
use crate::workbench::frame::token;
use crate::workbench::hand::Change;
use crate::workbench::page::may_own;
use axum::extract::State;
use maud::{Markup, html};
use std::collections::BTreeSet;
use store::Stroke;

/// Files of the demo book, with what they say.
macro_rules! files {
    ($($name:literal),* $(,)?) => {
        &[$(($name, include_str!(concat!("../../../../../../examples/saltmarsh/", $name)))),*]
    };
}

/// The demo book, settings last: before they are there, nothing is half a book.
const DEMO: &[(&str, &str)] = files![
    "formulas/base-syrup.toml",
    "formulas/buckwheat-chickpea-griddle-bread.toml",
    "formulas/caraway-rye-tin.toml",
    "formulas/cardamom-knots.toml",
    "formulas/cider-apple-fritters.toml",
    "formulas/potato-muffins.toml",
    "ingredients/bought.toml",
    "ingredients/culture.toml",
    "ingredients/mill.toml",
    "kitchens/boathouse-week.csv",
    "kitchens/boathouse.toml",
    "kitchens/estuary.toml",
    "tastings/potato-of-yesterday.csv",
    "tastings/potato-of-yesterday.toml",
    "tastings/softer-muffins.csv",
    "tastings/softer-muffins.toml",
    "trials/2026-11-03-muffins.toml",
    "trials/2026-11-09-knots.toml",
    "trials/2026-11-14-muffins.toml",
    "trials/2026-11-14-sponge.csv",
    "trials/2026-10-17-rye.toml",
    "trials/2026-10-31-rye.toml",
    "trials/2026-11-15-rye.toml",
    "larder.toml",
    "prices.toml",
    "book.toml",
];

/// What stands on the page of a book without a formula.
pub async fn empty(desk: &Desk, visitor: &Visitor) -> Markup {
    let strokes = match desk.store() {
        Ok(store) => store.all_strokes().await.unwrap_or_default(),
        Err(_) => Vec::new(),
    };
    let files = DEMO.iter().map(|(file, _)| (*file, strokes.iter().filter(|one| file_of(one.kind, &one.name) == *file)));
    let files: Vec<(&str, Vec<Stroke>)> = files.map(|(file, strokes)| (file, strokes.cloned().collect())).collect();
    html! {
        (gone(&desk.book(), files.iter().map(|(file, strokes)| (*file, strokes.as_slice())), visitor))
        p { "There is no formula in this folder yet: " code { (desk.folder().display()) } }
        @if visitor.role >= Role::Owner { section aria-labelledby="look" {
            h2 #look { "Look around first" }
            p { "The demo book is a small invented one: potato muffins with a sponge from the evening before, cardamom knots, a rye tin, and what is served with them. "
                "It is laid into this folder as plain files that are yours to change." }
            form method="post" action="/demo" { (token(visitor)) button { "Lay the demo book here" } }
        } }
        (fresh::form(&[], visitor))
    }
}

/// What is told of a file that was laid with the demo book, and of one that was taken away with it.
const LAID: &str = "laid with the demo book";
const TAKEN: &str = "taken away with the demo book";

/// Lays the demo book into the folder; nothing that is there is written over.
pub async fn laid(State(desk): State<Desk>, visitor: Visitor) -> Answer {
    may_own(&visitor)?;
    let alone = desk.to_write().await;
    if !desk.book().book.formulas.is_empty() {
        return Err(Refusal::unfit("The book has formulas already: the demo book is laid into an empty one.", ""));
    }
    if let Some((there, _)) = DEMO.iter().find(|(file, _)| desk.folder().join(file).exists()) {
        return Err(Refusal::unfit(format!("{there} is there already, and nothing is written over."), "choose an empty folder"));
    }
    for (file, text) in DEMO {
        let by = &visitor.name;
        desk.remember(&alone, &Change { file, from: "", text: (*text).to_owned(), what: LAID, by }).await;
        files::write_new(&desk.folder().join(file), text.as_bytes())?;
    }
    tell(&desk, "the demo book was laid here", &visitor)?;
    see("/tour")
}

/// Takes away every file that was laid with the demo book, settings first: what stays is never read as half a book.
/// Each is in the memory as it was last, and can be brought back.
pub async fn taken_away(State(desk): State<Desk>, visitor: Visitor) -> Answer {
    may_own(&visitor)?;
    let alone = desk.to_write().await;
    let strokes = desk.store()?.all_strokes().await.map_err(told)?;
    let laid = laid_here(&strokes);
    if laid.is_empty() {
        return Err(Refusal::unfit(
            "No demo book was laid here.",
            "what lay in the folder before is not the workbench's to take away",
        ));
    }
    for file in laid.iter().rev() {
        if desk.on_the_disk(file)?.is_empty() {
            continue;
        }
        let change = Change { file, from: "", text: String::new(), what: TAKEN, by: &visitor.name };
        desk.remember(&alone, &change).await;
        let path = desk.folder().join(file);
        std::fs::remove_file(&path).map_err(|error| Failure::file("remove", &path, &error))?;
    }
    let folders: BTreeSet<_> = laid.iter().filter_map(|file| file.rsplit_once('/')).map(|(folder, _)| folder).collect();
    for folder in folders {
        // One that holds something of one's own stays.
        let _ = std::fs::remove_dir(desk.folder().join(folder));
    }
    tell(&desk, "the demo book was taken away", &visitor)?;
    see("/changes")
}

/// Brings back every file that was taken away with the demo book and is not there now, as it was last; settings last.
pub async fn brought_back(State(desk): State<Desk>, visitor: Visitor) -> Answer {
    may_own(&visitor)?;
    let _alone = desk.to_write().await;
    let store = desk.store()?;
    let mut came = 0;
    for (file, _) in DEMO {
        let Some((kind, name)) = document(file) else { continue };
        let strokes = store.strokes(kind, &name).await.map_err(told)?;
        let Some(taken) = last_done(&strokes).filter(|last| last.what == TAKEN) else { continue };
        let path = desk.folder().join(file);
        let text = store.kept(&taken.before).await.map_err(told)?.filter(|_| !path.exists());
        let Some(text) = text else { continue };
        files::write_new(&path, text.as_bytes())?;
        store.mark(taken, true).await.map_err(told)?;
        came += 1;
    }
    if came == 0 {
        return Err(Refusal::unfit(
            "Nothing of the demo book is to be brought back.",
            "it was not taken away, or its files are there",
        ));
    }
    tell(&desk, "the demo book was brought back", &visitor)?;
    see("/")
}

/// Says that the demo book was taken away, with the button that brings all of it back.
pub fn gone<'s>(opened: &Opened, files: impl Iterator<Item = (&'s str, &'s [Stroke])>, visitor: &Visitor) -> Markup {
    let is_gone = |(file, strokes): &(&str, &[Stroke])| {
        last_done(strokes).is_some_and(|last| last.what == TAKEN) && !opened.text.files.contains_key(*file)
    };
    let count = files.filter(is_gone).count();
    html! {
        @if count > 0 && visitor.role >= Role::Owner {
            section.welcome role="status" aria-label="The demo book is gone" {
                p { "The demo book was taken away: " (count) @if count == 1 { " file" } @else { " files" } ", each kept in the memory as it was last." }
                form method="post" action="/demo/back" { (token(visitor)) button { "Bring the demo book back" } }
            }
        }
    }
}

fn tell(desk: &Desk, what: &str, visitor: &Visitor) -> Result<(), Failure> {
    desk.read_again()?;
    desk.tell(Happened::Changed { file: String::new(), what: what.to_owned(), by: visitor.name.clone() });
    Ok(())
}

/// The files of the demo book that were laid here and are remembered so, in the order in which they were laid.
pub fn laid_here<'s>(strokes: impl IntoIterator<Item = &'s Stroke>) -> Vec<&'static str> {
    let laid = strokes.into_iter().filter(|one| one.what == LAID && !one.undone);
    let laid: BTreeSet<String> = laid.map(|one| file_of(one.kind, &one.name)).collect();
    DEMO.iter().map(|(file, _)| *file).filter(|file| laid.contains(*file)).collect()
}

/// Whether all that happened to a file is that it came and went with the demo book.
pub fn is_untouched(strokes: &[Stroke]) -> bool {
    !strokes.iter().any(is_own)
}

/// Whether a change is one that somebody made, and not the demo book's coming or going.
pub fn is_own(stroke: &Stroke) -> bool {
    stroke.what != LAID && stroke.what != TAKEN
}

/// The button that takes the demo book away.
pub fn away(visitor: &Visitor) -> Markup {
    html! { form method="post" action="/demo/away" { (token(visitor)) button { "Take the demo book away" } } }
}
