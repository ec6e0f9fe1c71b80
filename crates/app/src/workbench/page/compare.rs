//! Formulas and their revisions side by side.

use super::Way;
use super::addresses::of_formula;
use super::formula::{OnBench, Wanted, ways};
use crate::memory::{document, told};
use crate::revisions::worked_out;
use crate::workbench::answer::{Answer, Refusal, page};
use crate::workbench::desk::Desk;
use crate::workbench::door::{Role, Visitor};
use crate::workbench::frame::Frame;
use ::formula::{Formula, Severity};
use axum::Router;
use axum::extract::{Path, Query, State};
use axum::routing::get;
use bench::compare::{Difference, compare};
use maud::{Markup, html};
use store::{Kind, Revision};

pub const WAY: Way = Way { address: "/compare", title: "Compare", role: Role::Helper };

pub fn routes() -> Router<Desk> {
    Router::new().route("/formula/{name}/compare", get(side_by_side))
}

/// More columns than this nobody reads.
const MOST: usize = 6;

type Pairs = Vec<(String, String)>;

async fn side_by_side(
    State(desk): State<Desk>,
    visitor: Visitor,
    Path(name): Path<String>,
    Query(pairs): Query<Pairs>,
) -> Answer {
    let opened = desk.book();
    let one = OnBench::of(&opened, &name)?;
    let own = document(&one.file).map_or_else(|| name.clone(), |(_, own)| own);
    let said =
        |key: &str| pairs.iter().find(|(name, value)| name == key && !value.trim().is_empty()).map(|(_, value)| value.clone());
    let wanted = Wanted { kitchen: said("kitchen"), room: said("room"), ..Wanted::default() };
    let with: Vec<&str> =
        pairs.iter().filter(|(key, value)| key == "with" && !value.is_empty()).map(|(_, value)| value.as_str()).collect();
    let revisions = match desk.store() {
        Ok(store) => store.history(Kind::Formula, &own).await.map_err(told)?,
        Err(_) => Vec::new(),
    };
    let mut texts = Vec::new();
    for number in with.iter().filter_map(|text| text.strip_prefix("revision-")?.parse::<i64>().ok()) {
        let gone = |_| Refusal::no_such(format!("“{name}” has no revision {number}."));
        texts.push((number, desk.store()?.text(Kind::Formula, &own, number).await.map_err(gone)?));
    }
    let made = tokio::task::block_in_place(|| {
        let checked = one.checked();
        let title = checked.value.head.title.clone();
        let is_sound = checked.diagnostics.iter().all(|found| found.severity < Severity::Error);
        let mut columns: Vec<(String, Formula)> = vec![("as it stands".to_owned(), checked.value)];
        let mut left_out = Vec::new();
        for (number, text) in texts {
            match worked_out(&opened, &name, text) {
                Some(formula) => columns.push((format!("revision {number}"), formula)),
                None => left_out.push(format!("revision {number} has errors")),
            }
        }
        for other in with.iter().filter_map(|text| text.strip_prefix("formula-")) {
            let checked = opened
                .book
                .formula(other)
                .ok_or_else(|| Refusal::no_such(format!("The book has no formula called “{other}”.")))?;
            if checked.diagnostics.iter().any(|found| found.severity == Severity::Error) {
                left_out.push(format!("“{}” has errors", checked.value.head.title));
            } else {
                // A title of a whole meal would leave no room for figures.
                columns.push((quantity::print::capital(&other.replace('-', " ")), checked.value));
            }
        }
        columns.truncate(MOST);
        let body = html! {
            main #work.compare {
                h1 { (title) }
                (ways(&name, &visitor, WAY.address))
                (choosing(&one, &revisions, &with, &wanted))
                @for words in &left_out { p.refused role="alert" { (quantity::print::capital(words)) ": it is left out." } }
                @if !is_sound { p.refused role="alert" { "The formula has errors: mend them on its sheet first." } }
                @else if columns.len() < 2 { p { "Tick what it is held against." } }
                @else { (table(&columns, &wanted.around(&opened)?)) }
            }
        };
        Ok::<_, Refusal>((title, body))
    });
    let (title, body) = made?;
    page(&Frame::of(&visitor, &title, ""), &body)
}

fn table(columns: &[(String, Formula)], around: &bench::forecast::Surroundings) -> Markup {
    let formulas: Vec<&Formula> = columns.iter().map(|(_, formula)| formula).collect();
    let names: Vec<String> = columns.iter().map(|(name, _)| name.clone()).collect();
    html! {
        section aria-labelledby="beside" {
            h2 #beside { "Side by side" }
            (publish::comparison::markup(&compare(&formulas, around, &names), Difference::None))
        }
    }
}

fn choosing(one: &OnBench, revisions: &[Revision], with: &[&str], wanted: &Wanted) -> Markup {
    let tick = |value: String, words: &str| {
        html! { label.tick { input type="checkbox" name="with" value=(value) checked[with.contains(&value.as_str())]; " " (words) } }
    };
    let kitchen = wanted.kitchen.clone().unwrap_or_else(|| one.opened.book.kitchen().name);
    let others = one.opened.book.formulas.keys().filter(|other| *other != one.name());
    html! {
        form.fields.day-form method="get" action=(of_formula(one.name(), WAY.address)) {
            @if !revisions.is_empty() {
                fieldset {
                    legend { "Its revisions" }
                    @for revision in revisions.iter().rev().take(24) {
                        @let note = if revision.note.is_empty() { super::when(&revision.at) } else { revision.note.clone() };
                        (tick(format!("revision-{}", revision.number), &format!("{}: {note}", revision.number)))
                    }
                }
            }
            fieldset {
                legend { "Other formulas" }
                @for other in others {
                    @let title = one.opened.book.formula(other).map_or_else(|| other.clone(), |checked| checked.value.head.title);
                    (tick(format!("formula-{other}"), &title))
                }
            }
            @if one.opened.book.kitchens.len() > 1 {
                label { "In the kitchen" select name="kitchen" {
                    @for (name, one) in &one.opened.book.kitchens { option value=(name) selected[*name == kitchen] { (one.title) } }
                } }
            }
            label { "Room, °C" input type="text" inputmode="decimal" size="5" name="room" value=(wanted.room.clone().unwrap_or_default()); }
            button { "Set side by side" }
        }
        p.fine { "Up to " (MOST) " columns. Revisions are those that were " a href=(of_formula(one.name(), "/history")) { "saved" } "." }
    }
}
