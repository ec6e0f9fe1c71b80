//! The main job in five short steps, for somebody who is here for the first time.

use super::demo;
use crate::book::Opened;
use crate::workbench::answer::{Answer, page};
use crate::workbench::desk::Desk;
use crate::workbench::door::{Role, Visitor};
use crate::workbench::frame::Frame;
use crate::workbench::page::addresses::{asking, of_formula};
use axum::extract::State;
use maud::{Markup, html};
use store::{Kind, Stroke};

/// The formula of the demo book that the tour is about.
const OF_THE_DEMO: &str = "potato-muffins";

pub async fn tour(State(desk): State<Desk>, visitor: Visitor) -> Answer {
    let opened = desk.book();
    let name = about(&opened);
    let strokes = match (desk.store(), &name) {
        (Ok(store), Some(name)) => store.strokes(Kind::Formula, name).await.unwrap_or_default(),
        _ => Vec::new(),
    };
    let body = html! {
        main #work.tour {
            h1 { "Five steps to know the workbench" }
            @match &name {
                Some(name) => (steps(&opened, name, &strokes, &visitor)),
                None => p { "The book has no formula yet. " a href="/" { "Begin one, or lay the demo book here" } ", then come back." },
            }
        }
    };
    page(&Frame::of(&visitor, "Five steps", ""), &body)
}

/// The formula that the steps are walked with.
fn about(opened: &Opened) -> Option<String> {
    let known = |name: &str| opened.book.formulas.contains_key(name).then(|| name.to_owned());
    known(OF_THE_DEMO).or_else(|| opened.book.formulas.keys().next().cloned())
}

fn steps(opened: &Opened, name: &str, strokes: &[Stroke], visitor: &Visitor) -> Markup {
    let title = opened.book.formula(name).map(|checked| checked.value.head.title).unwrap_or_default();
    let amount =
        wet(opened, name).map_or_else(|| "what is wet in it".to_owned(), |title| format!("the {}", title.to_lowercase()));
    let is_done = |of: &dyn Fn(&Stroke) -> bool| strokes.iter().any(|one| !one.undone && demo::is_own(one) && of(one));
    let changed = is_done(&|one| one.what != "begun" && !one.what.starts_with("exchange"));
    let exchanged = is_done(&|one| one.what.starts_with("exchange"));
    let is_laid = strokes.iter().any(|one| !demo::is_own(one));
    let day = asking("/day", &[("formula", name), ("serve", "09:30")]);
    html! {
        p { "Everything below happens in “" (title) "”. Whatever you change there, " b { "Undo" } " takes it back, today or next week." }
        ol.steps {
            (step("Change an amount", changed, &html! {
                "Open " a href=(of_formula(name, "")) { "its sheet" } " and type another weight for " (amount) ". "
                "The percentage follows, and so do the true water, the rise and the cost beside the sheet, while you type."
            }))
            (step("Ask why", false, &html! {
                "Where something is not as the trade would do it, a remark stands at that very line. Type 4 as the salt’s percentage and one appears: "
                b { "why?" } " tells the reason with its source, and often a button mends it."
            }))
            (step("Exchange the leaven", exchanged, &html! {
                "On " a href=(of_formula(name, "/exchange")) { "its exchanges" } " choose “leaven”, look at before and after side by side, "
                "the new times and what cannot be kept; then keep it, or make it a formula of its own."
            }))
            (step("Plan for half past nine", false, &html! {
                "The " a href=(day) { "day" } " counts back from the table: what to do when, with your hours of sleep kept free. "
                "Click a task to say when you really did it, and the rest moves."
            }))
            (step("Publish and print", false, &html! {
                a href="/publish" { "Proof-read the book" } " once more, press the button, and open the page that your readers will cook from. "
                "Any page of the workbench prints in black."
            }))
        }
        p.way { a href="/" { "To the book" } @if is_laid && visitor.role >= Role::Owner { " · " a href="/changes#demo" { "Take the demo book away again" } } }
    }
}

/// The ingredient of a formula whose amount changes most: its milk, its water, or its first.
fn wet(opened: &Opened, name: &str) -> Option<String> {
    let formula = opened.book.formula(name)?.value;
    let wares: Vec<_> = formula.lines().filter_map(|(_, line)| line.ingredient()).collect();
    let of = |begin: &str| wares.iter().find(|ware| ware.name.starts_with(begin));
    let found = of("milk").or_else(|| of("water")).or_else(|| wares.first())?;
    Some(if found.called.is_empty() { found.title.clone() } else { found.called.clone() })
}

fn step(title: &str, is_done: bool, words: &Markup) -> Markup {
    html! { li { h2 { (title) @if is_done { span.fine { " · done" } } } p { (words) } } }
}
