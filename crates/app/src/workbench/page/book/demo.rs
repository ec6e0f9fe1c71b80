//! A book without a formula: the demo book can be laid there, or a first formula begun.

use super::fresh;
use crate::files;
use crate::workbench::answer::{Answer, Refusal, see};
use crate::workbench::desk::{Desk, Happened};
use crate::workbench::door::Visitor;
use crate::workbench::frame::token;
use crate::workbench::page::may_write;
use axum::extract::State;
use maud::{Markup, html};

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
pub fn empty(desk: &Desk, visitor: &Visitor) -> Markup {
    html! {
        p { "There is no formula in this folder yet: " code { (desk.folder().display()) } }
        section aria-labelledby="look" {
            h2 #look { "Look around first" }
            p { "The demo book is a small invented one: potato muffins with a sponge from the evening before, cardamom knots, a rye tin, and what is served with them. "
                "It is laid into this folder as plain files that are yours to change." }
            form method="post" action="/demo" { (token(visitor)) button { "Lay the demo book here" } }
        }
        (fresh::form(&[], visitor))
    }
}

/// Lays the demo book into the folder; nothing that is there is written over.
pub async fn laid(State(desk): State<Desk>, visitor: Visitor) -> Answer {
    may_write(&visitor)?;
    let _alone = desk.to_write().await;
    if !desk.book().book.formulas.is_empty() {
        return Err(Refusal::unfit("The book has formulas already: the demo book is laid into an empty one.", ""));
    }
    if let Some((there, _)) = DEMO.iter().find(|(file, _)| desk.folder().join(file).exists()) {
        return Err(Refusal::unfit(format!("{there} is there already, and nothing is written over."), "choose an empty folder"));
    }
    for (file, text) in DEMO {
        files::write_new(&desk.folder().join(file), text.as_bytes())?;
    }
    desk.read_again()?;
    desk.tell(Happened::Changed {
        file: String::new(),
        what: "the demo book was laid here".to_owned(),
        by: visitor.name.clone(),
    });
    see("/tour")
}
