//! What is sent from the bench: each entry with a number of its own, so that one that comes twice is taken once.

use super::{figures, logbook, strokes};
use crate::failure::Failure;
use crate::findings;
use crate::logbook::{Against, Logbook};
use crate::photographs::{free_name, print_of_trial};
use crate::workbench::answer::{Answer, Refusal, parts, see, wants_parts};
use crate::workbench::desk::{Alone, Desk};
use crate::workbench::door::Visitor;
use crate::workbench::hand::Change;
use axum::Router;
use axum::body::Bytes;
use axum::extract::{DefaultBodyLimit, Form, Path, Query, State};
use axum::http::HeaderMap;
use axum::routing::post;
use formula::logging::{Entry, Figure, Shown};
use formula::read::keys::{COOK_SEEN, MIX_SEEN, READING, RISE_SEEN, WEIGHED};
use maud::html;
use publish::logged::in_words;
use quantity::Measure;
use serde::Deserialize;

/// A photograph of any phone fits in.
const MOST_OF_A_PHOTOGRAPH: usize = 32 << 20;

pub fn routes() -> Router<Desk> {
    Router::new()
        .route("/trial/{name}/note", post(note))
        .route("/trial/{name}/photograph", post(photograph).layer(DefaultBodyLimit::max(MOST_OF_A_PHOTOGRAPH)))
}

/// What a form of the bench says.
#[derive(Default, Deserialize)]
#[serde(default)]
struct Said {
    /// The entry's own number.
    number: String,
    figure: String,
    amount: String,
    unit: String,
    /// The expected figure, tapped.
    #[serde(rename = "as")]
    as_said: String,
    /// Minutes after the step began.
    after: String,
    words: String,
    why: String,
    /// Whether a trial that was left out is to count.
    count: String,
}

impl Said {
    fn entry(&self, logbook: &Logbook) -> Result<Entry, Refusal> {
        let words = self.words.trim();
        if !self.count.is_empty() {
            return Ok(Entry::LeftOut(String::new()));
        }
        if !words.is_empty() {
            return Ok(Entry::Note(words.split_whitespace().collect::<Vec<_>>().join(" ")));
        }
        let amount = if self.as_said.is_empty() { self.amount.trim() } else { self.as_said.trim() };
        let is_bare = !amount.is_empty() && amount.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | ','));
        let amount = if is_bare { amount.replace(',', ".") } else { amount.replace('\u{a0}', " ") };
        let with_unit = if is_bare && !self.unit.is_empty() { format!("{amount} {}", self.unit) } else { amount };
        let after = self.after.trim().replace(',', ".");
        let value = if after.is_empty() { with_unit } else { format!("{with_unit} after {after} min") };
        let formula = logbook.formula()?;
        let unfit = |why: formula::logging::Unnoted| Refusal::unfit(why.message, why.hint);
        let (figure, value) = Figure::read(&self.figure, &value, &formula).map_err(unfit)?;
        if !value.is_empty() && value.parse::<Measure>().is_err() {
            return Err(Refusal::unfit(format!("“{value}” is no figure"), format!("write {}", example(figure.key))));
        }
        Ok(Entry::Figure(figure, value))
    }
}

/// How a figure of that key is written: "a temperature, such as “24.5 °C”".
fn example(key: &str) -> String {
    let tables = [&MIX_SEEN, &WEIGHED, &RISE_SEEN, &READING, &COOK_SEEN];
    let known = tables.iter().find_map(|table| table.key(key));
    known.map_or("a number", |known| known.value.describe()).replace('"', "")
}

async fn note(
    State(desk): State<Desk>,
    visitor: Visitor,
    headers: HeaderMap,
    Path(name): Path<String>,
    Form(said): Form<Said>,
) -> Answer {
    let alone = desk.to_write().await;
    let book = tokio::task::block_in_place(|| logbook(&desk, &name))?;
    let entry = said.entry(&book)?;
    take(
        &desk,
        &visitor,
        &book,
        &Noting { alone: &alone, entries: &[entry], number: &said.number, why: &said.why, beside: None },
    )
    .await?;
    drop(book);
    answer(&desk, &visitor, &headers, &name).await
}

/// What is said of a photograph.
#[derive(Default, Deserialize)]
#[serde(default)]
struct OfPhotograph {
    number: String,
    shows: String,
    across: String,
}

async fn photograph(
    State(desk): State<Desk>,
    visitor: Visitor,
    headers: HeaderMap,
    Path(name): Path<String>,
    Query(said): Query<OfPhotograph>,
    bytes: Bytes,
) -> Answer {
    let alone = desk.to_write().await;
    let unfit = |failure: Failure| Refusal::unfit(failure.to_string(), "");
    let (book, print) = tokio::task::block_in_place(|| -> Result<_, Refusal> {
        Ok((logbook(&desk, &name)?, print_of_trial(&bytes, "photograph").map_err(unfit)?))
    })?;
    let text = |text: &str| Some(text.trim().to_owned()).filter(|text| !text.is_empty());
    let shows = text(&said.shows);
    let across = text(&said.across).map(|across| format!("{} mm", across.replace(',', ".")));
    let file = free_name(&book.path, shows.as_deref(), &print)?;
    let entry = Entry::Photograph(Shown { file: file.clone(), shows, across });
    take(
        &desk,
        &visitor,
        &book,
        &Noting { alone: &alone, entries: &[entry], number: &said.number, why: "", beside: Some((&file, &print.bytes)) },
    )
    .await?;
    drop(book);
    answer(&desk, &visitor, &headers, &name).await
}

/// Entries that came together.
pub struct Noting<'n> {
    /// The right to write.
    pub alone: &'n Alone<'n>,
    /// What is noted.
    pub entries: &'n [Entry],
    /// The number by which it is known where it comes twice.
    pub number: &'n str,
    /// Why a figure is put right.
    pub why: &'n str,
    /// A file that goes beside the trial, and what it holds.
    pub beside: Option<(&'n str, &'n [u8])>,
}

/// Lays entries into a trial, once: nothing is done where their number was received before.
pub async fn take(desk: &Desk, visitor: &Visitor, book: &Logbook, noting: &Noting<'_>) -> Result<(), Refusal> {
    let number = Some(noting.number.trim()).filter(|number| !number.is_empty() && number.len() <= 64);
    let (noted, text) = tokio::task::block_in_place(|| book.note(noting.entries, number, noting.why)).map_err(refused)?;
    let Some(text) = text else { return Ok(()) };
    // The picture or the readings first: a trial never names what is not there.
    if let Some((file, bytes)) = noting.beside {
        crate::files::write(&book.path.with_file_name(file), bytes)?;
    }
    let formula = book.formula()?;
    let called = |name: &str| in_words(name, &formula).unwrap_or_else(|| name.to_owned());
    let said = crate::commands::said_of_entries(noting.entries, &noted, &called);
    let file = book.trial().map(|trial| trial.file.to_string()).unwrap_or_default();
    let change = Change { file: &file, from: "", text: text.clone(), what: &said, by: &visitor.name };
    desk.note_down(noting.alone, change).await?;
    // What is written is kept, whatever becomes of the memory.
    if let Ok(store) = desk.store()
        && let Err(failure) = book.remember_in(store, &text, &said).await
    {
        crate::terminal::complain(&failure);
    }
    Ok(())
}

fn refused(against: Against) -> Refusal {
    match against {
        Against::Failed(failure) => Refusal::unfit(failure.to_string(), ""),
        Against::Faults(found, _) => {
            let first = found.first();
            Refusal::unfit(
                first.map(|one| one.message.clone()).unwrap_or_else(|| findings::summary(&found, 1)),
                first.and_then(|one| one.hint.clone()).unwrap_or_default(),
            )
        }
    }
}

/// What was noted, for the page's own script; the page itself for a browser without.
async fn answer(desk: &Desk, visitor: &Visitor, headers: &HeaderMap, name: &str) -> Answer {
    if !wants_parts(headers) {
        return see(&format!("/trial/{name}"));
    }
    let book = tokio::task::block_in_place(|| logbook(desk, name))?;
    let strokes = strokes(desk, name, visitor).await;
    parts(&html! { (strokes) (figures::noted(&book)?) })
}
