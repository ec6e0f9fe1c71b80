//! A thermometer logger's table on a trial's page: what is made of it is shown first, and written when it is to be kept.

use super::noting::{Noting, take};
use super::{logbook, waiting_steps};
use crate::failure::Failure;
use crate::logbook::Logbook;
use crate::readings::{Ready, Wanted, head, ready};
use crate::workbench::answer::{Answer, Refusal, page, see};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::frame::{Frame, token};
use axum::Router;
use axum::extract::{Form, FromRequest, Multipart, Path, Request, State};
use axum::http::header;
use axum::routing::post;
use formula::import::{Asked, Scale, read_logger};
use formula::logging::Entry;
use formula::source::Source;
use maud::{Markup, html};
use std::collections::BTreeMap;

pub fn routes() -> Router<Desk> {
    Router::new().route("/trial/{name}/logger", post(shown)).route("/trial/{name}/logger/keep", post(kept))
}

/// What the form says, the table as `text`.
type Said = BTreeMap<String, String>;

/// What the guesses are put right with: under which name, and what is asked.
const GUESSES: [(&str, &str, &str); 4] = [
    ("begins", "The step began, by the logger's clock", "its first row"),
    ("lasts", "and lasted", "as noted, or to the last row"),
    ("every", "Readings averaged over", "15 min"),
    ("column", "The heading of the column of temperatures", "as guessed"),
];

/// The form that a trial's page has for a table.
pub fn form(name: &str, steps: &[(String, String)], visitor: &Visitor) -> Markup {
    html! {
        @if !steps.is_empty() {
            section.stage aria-label="A thermometer's logger" {
                h2 { "A thermometer's logger" }
                p.fine { "Its table (CSV) is read and shown first; nothing is written before you keep it." }
                form.logger method="post" action={ "/trial/" (name) "/logger" } enctype="multipart/form-data" {
                    (token(visitor))
                    label { "The table " input type="file" accept=".csv,.txt,text/csv" name="table" required; }
                    (of_the_step(steps, &Said::new()))
                    button { "Show what it says" }
                }
            }
        }
    }
}

/// Which step it is of, and whether the thermometer hung in the air.
fn of_the_step(steps: &[(String, String)], said: &Said) -> Markup {
    let chosen = word(said, "step");
    html! {
        label { "of " select name="step" { @for (step, told) in steps { option value=(step) selected[chosen == Some(step)] { (told) } } } }
        label.tick { input type="checkbox" name="air" value="yes" checked[said.contains_key("air")]; span { "it hung in the air beside the dough: its mean is the step's room" } }
    }
}

fn word<'s>(said: &'s Said, key: &str) -> Option<&'s str> {
    said.get(key).map(|text| text.trim()).filter(|text| !text.is_empty())
}

fn broken() -> Refusal {
    Refusal::unfit("The form did not come whole.", "send it once more")
}

/// Reads a form with a file, or one that carries the table on.
async fn read(request: Request) -> Result<Said, Refusal> {
    let kind = request.headers().get(header::CONTENT_TYPE).map(|kind| kind.as_bytes().to_ascii_lowercase()).unwrap_or_default();
    if !kind.starts_with(b"multipart/form-data") {
        let form = Form::<Said>::from_request(request, &()).await;
        return form.map(|Form(said)| said).map_err(|_| broken());
    }
    let mut fields = Multipart::from_request(request, &()).await.map_err(|_| broken())?;
    let mut said = Said::new();
    while let Some(field) = fields.next_field().await.map_err(|_| broken())? {
        let name = field.name().unwrap_or_default().to_owned();
        let bytes = field.bytes().await.map_err(|_| broken())?;
        if name == "table" {
            let checked = Source::from_bytes("the table", bytes.to_vec());
            let why = checked.diagnostics.first().map(|one| (one.message.clone(), one.hint.clone().unwrap_or_default()));
            let source = checked.value.ok_or_else(|| {
                let (message, hint) = why.unwrap_or_default();
                Refusal::unfit(message, hint)
            })?;
            said.insert("text".to_owned(), source.text);
        } else {
            said.insert(name, String::from_utf8_lossy(&bytes).into_owned());
        }
    }
    Ok(said)
}

/// What would be noted of the table.
fn made(logbook: &Logbook, said: &Said) -> Result<Ready, Refusal> {
    let text = word(said, "text").ok_or_else(|| Refusal::unfit("No table came.", "choose the file that the logger wrote"))?;
    let source = Source { file: "the table".into(), text: format!("{text}\n") };
    let scale = match word(said, "scale") {
        Some("fahrenheit") => Some(Scale::Fahrenheit),
        Some("celsius") => Some(Scale::Celsius),
        _ => None,
    };
    let asked = Asked { column: word(said, "column").map(str::to_owned), scale, month_first: said.contains_key("month") };
    let checked = read_logger(&source, &asked);
    let Some(log) = checked.value else {
        let first = checked.diagnostics.first();
        let row = first.map_or(1, |one| source.line_and_column(one.place.span.start).0);
        let message = first.map(|one| one.message.clone()).unwrap_or_default();
        return Err(Refusal::unfit(
            format!("Line {row} of the table: {message}"),
            first.and_then(|one| one.hint.clone()).unwrap_or_default(),
        ));
    };
    let wanted = Wanted {
        step: word(said, "step").unwrap_or_default(),
        begins: word(said, "begins"),
        lasts: word(said, "lasts"),
        every: word(said, "every").unwrap_or("15 min"),
        of_the_air: said.contains_key("air"),
    };
    ready(logbook, &log, &wanted).map_err(|failure| Refusal::amiss(&failure))
}

/// Shows what is made of a table, with what was guessed to be put right; a table that cannot be read is told of there too.
async fn shown(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>, request: Request) -> Answer {
    let said = read(request).await?;
    let body = tokio::task::block_in_place(|| -> Result<Markup, Refusal> {
        let logbook = logbook(&desk, &name)?;
        if word(&said, "text").is_none() {
            made(&logbook, &said)?;
        }
        let made = made(&logbook, &said);
        let steps = waiting_steps(&logbook)?;
        Ok(html! {
            main #work.logging {
                h1 { "A thermometer's logger" }
                p.fine { a href={ "/trial/" (name) } { "Back to the trial" } ". Nothing is written yet." }
                @match &made {
                    Ok(ready) => {
                        ul { @for told in &ready.told { li { (told) } } }
                        @if let Some((file, course)) = &ready.course { p { "trials/" (file) } pre.difference { (head(course)) } }
                        p.fine { "What the step's readings or its room were before stays beside it as a correction." }
                    }
                    Err(refusal) => { div #refusal role="alert" { (refusal.words()) } }
                }
                form.logger method="post" action={ "/trial/" (name) "/logger" } {
                    (token(&visitor))
                    textarea hidden name="text" { (word(&said, "text").unwrap_or_default()) }
                    (of_the_step(&steps, &said))
                    (guesses(&said))
                    button { "Look again" }
                    @if made.is_ok() { button formaction={ "/trial/" (name) "/logger/keep" } { "Keep it" } }
                }
            }
            link rel="stylesheet" href=(crate::workbench::asset::address("logging.css"));
        })
    })?;
    page(&Frame::of(&visitor, "A thermometer's logger", super::WAY.address), &body)
}

fn guesses(said: &Said) -> Markup {
    let scales = [("", "as the table says"), ("celsius", "°C"), ("fahrenheit", "°F")];
    html! {
        @for (key, called, usual) in GUESSES {
            label { (called) " " input type="text" name=(key) autocomplete="off" placeholder=(usual) value=(word(said, key).unwrap_or_default()); }
        }
        label { "Its scale " select name="scale" { @for (key, told) in scales { option value=(key) selected[word(said, "scale") == Some(key)] { (told) } } } }
        label.tick { input type="checkbox" name="month" value="yes" checked[said.contains_key("month")]; span { "the month stands before the day" } }
    }
}

/// Writes it into the trial, as any note: what stood there stays beside it.
async fn kept(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>, request: Request) -> Answer {
    let said = read(request).await?;
    let alone = desk.to_write().await;
    let (book, entry, course) = tokio::task::block_in_place(|| -> Result<_, Refusal> {
        let mut book = logbook(&desk, &name)?;
        let ready = made(&book, &said)?;
        let Some((file, text)) = ready.course else { return Ok((book, ready.entry, None)) };
        let file = free(&book, &file, &text)?;
        // The readings are known to the trial before they are written, so that a refusal leaves nothing behind.
        let key = format!("trials/{file}");
        book.opened.text.files.insert(key.clone(), Source { file: key.into(), text: text.clone() });
        let Entry::Course(figure, _) = ready.entry else { return Ok((book, ready.entry, None)) };
        Ok((book, Entry::Course(figure, file.clone()), Some((file, text))))
    })?;
    let beside = course.as_ref().map(|(file, text)| (file.as_str(), text.as_bytes()));
    let entries = [entry];
    take(&desk, &visitor, &book, &Noting { alone: &alone, entries: &entries, number: "", why: "", beside }).await?;
    drop(book);
    see(&format!("/trial/{name}"))
}

/// A name for readings under which nothing else lies.
fn free(book: &Logbook, file: &str, text: &str) -> Result<String, Refusal> {
    let stem = file.trim_end_matches(".csv");
    for number in 1..1000 {
        let name = if number == 1 { file.to_owned() } else { format!("{stem}-{number}.csv") };
        match std::fs::read(book.path.with_file_name(&name)) {
            Ok(there) if there != text.as_bytes() => {}
            _ => return Ok(name),
        }
    }
    Err(Failure::new("the step has a thousand tables of readings already").into())
}
