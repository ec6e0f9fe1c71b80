//! A trial is begun: from a formula as it stands, or from a saved revision of it.

use crate::book::Opened;
use crate::logbook::{Wanted, beginning, remember_begun};
use crate::memory::{file_of, told};
use crate::moment;
use crate::workbench::answer::{Answer, Refusal, see};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::frame::token;
use crate::workbench::hand::Change;
use axum::Router;
use axum::extract::{Form, State};
use axum::routing::post;
use formula::source::Source;
use formula::{Formula, Severity};
use jiff::tz::TimeZone;
use maud::{Markup, html};
use serde::Deserialize;
use store::{Kind, Revision};

pub fn routes() -> Router<Desk> {
    Router::new().route("/trials/begin", post(begun))
}

/// So many of a formula's last revisions stand to be chosen.
const MOST_REVISIONS: usize = 8;

/// The form that begins a trial.
pub async fn form(desk: &Desk, opened: &Opened, visitor: &Visitor) -> Markup {
    let mut choices: Vec<(String, String)> = Vec::new();
    for formula in opened.formulas() {
        let (name, title) = (&formula.name, &formula.head.title);
        let saved = match desk.store() {
            Ok(store) => store.history(Kind::Formula, name).await.unwrap_or_default(),
            Err(_) => Vec::new(),
        };
        choices.push((name.clone(), if saved.is_empty() { title.clone() } else { format!("{title}, as it stands") }));
        let mut saved: Vec<&Revision> = saved.iter().collect();
        saved.sort_by_key(|one| std::cmp::Reverse(one.number));
        choices.extend(saved.into_iter().take(MOST_REVISIONS).map(|one| (format!("{name}@{}", one.number), words(title, one))));
    }
    html! {
        form.beginning method="post" action="/trials/begin" {
            (token(visitor))
            label { "Bake " select name="formula" { @for (choice, told) in &choices { option value=(choice) { (told) } } } }
            label { "called " input type="text" name="title" maxlength="200" placeholder="what is tried" autocomplete="off"; }
            button { "Begin a trial" }
        }
    }
}

fn words(title: &str, one: &Revision) -> String {
    let day = one.at.to_zoned_datetime(TimeZone::try_system().unwrap_or(TimeZone::UTC)).date();
    let note = if one.note.is_empty() { String::new() } else { format!(": {}", one.note) };
    format!("{title}, revision {} of {day}{note}", one.number)
}

/// What is said of a trial that is to be begun.
#[derive(Deserialize)]
struct Begun {
    formula: String,
    #[serde(default)]
    title: String,
}

/// The formula that is meant, and the text of it that is baked: as it stands, or a saved revision, "potato-muffins@2".
async fn meant(desk: &Desk, opened: &Opened, choice: &str) -> Result<(Formula, String), Refusal> {
    let no_such = |name: &str| Refusal::no_such(format!("The book has no formula called “{name}”."));
    let Some((name, number)) = choice.split_once('@') else {
        let text = opened.book.formulas.get(choice).map(|source| source.text.clone()).ok_or_else(|| no_such(choice))?;
        let formula = tokio::task::block_in_place(|| opened.book.formula(choice)).ok_or_else(|| no_such(choice))?.value;
        return Ok((formula, text));
    };
    opened.book.formulas.get(name).ok_or_else(|| no_such(name))?;
    let no_revision = || Refusal::no_such(format!("“{name}” has no revision {number}."));
    let number: i64 = number.parse().map_err(|_| no_revision())?;
    let saved = desk.store()?.history(Kind::Formula, name).await.map_err(told)?;
    if saved.iter().all(|one| one.number != number) {
        return Err(no_revision());
    }
    let text = desk.store()?.text(Kind::Formula, name, number).await.map_err(told)?;
    let source = Source { file: format!("formulas/{name}.toml").into(), text: text.clone() };
    let checked = tokio::task::block_in_place(|| opened.book.revised(&source));
    if checked.diagnostics.iter().any(|found| found.severity == Severity::Error) {
        let message = format!("Revision {number} of “{name}” has faults in the book as it is now.");
        return Err(Refusal::unfit(message, "its history shows its text"));
    }
    Ok((checked.value, text))
}

async fn begun(State(desk): State<Desk>, visitor: Visitor, Form(said): Form<Begun>) -> Answer {
    let alone = desk.to_write().await;
    let opened = desk.read_again()?;
    let (formula, text) = meant(&desk, &opened, &said.formula).await?;
    let date = moment::now(None, &moment::zone(None)?)?.date().to_string();
    let kitchen = opened.book.kitchen();
    // A second and a third of a day are told apart by a number.
    let free = |number: &usize| {
        let name = if *number == 1 { formula.name.clone() } else { format!("{}-{number}", formula.name) };
        (!opened.folder.join(format!("trials/{date}-{name}.toml")).exists()).then_some(name)
    };
    let name = (1..100).find_map(|number| free(&number)).unwrap_or_else(|| formula.name.clone());
    let wanted = Wanted {
        formula: &formula,
        text: &text,
        kitchen: &kitchen.name,
        title: Some(said.title.trim()).filter(|title| !title.is_empty()),
        name: Some(&name),
        date: &date,
    };
    let (trial, text) = beginning(&opened, &wanted)?;
    let file = file_of(Kind::Trial, &trial);
    desk.note_down(&alone, Change { file: &file, from: "", text, what: "begun", by: &visitor.name }).await?;
    if let Ok(store) = desk.store() {
        remember_begun(store, &wanted, &opened.folder.join(&file)).await?;
    }
    see(&format!("/trial/{trial}"))
}
