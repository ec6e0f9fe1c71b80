//! Tastings begun on a page, and changed by the same fields until their table is laid.

use super::{Fields, WAY, leads, sitting};
use crate::book::Opened;
use crate::tasting::in_book;
use crate::workbench::answer::{Answer, Refusal, page, see};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::frame::{Frame, token};
use crate::workbench::hand::Change;
use crate::workbench::page::addresses::coded;
use crate::workbench::page::changes::undoing;
use crate::workbench::page::plain;
use crate::workbench::page::written::{self, Said, Sheet, Target};
use crate::workbench::proof::fault;
use axum::Form;
use axum::extract::{Path, State};
use formula::read::keys::TASTING;
use formula::read::{MOST_SAMPLES, Method};
use maud::{Markup, html};
use std::collections::BTreeMap;
use store::hash;
use toml_edit::{ArrayOfTables, DocumentMut, Item, Table, value};

pub async fn all(State(desk): State<Desk>, visitor: Visitor) -> Answer {
    leads(&visitor)?;
    let opened = desk.book();
    let body = html! {
        main #work {
            h1 { "Tastings" }
            @if opened.book.tastings.is_empty() { p { "There is no tasting yet." } }
            ul.index {
                @for tasting in opened.book.tastings.values() {
                    li { h2 { a href={ "/tastings/" (tasting.name) } { (tasting.title) } } p { (tasting.question) } }
                }
            }
            section aria-labelledby="fresh" { h2 #fresh { "Another tasting" } (form(&opened, &visitor)) }
        }
    };
    page(&Frame::of(&visitor, "Tastings", WAY.address), &body)
}

/// What a method asks, as a person who leads a tasting says it.
const fn asks(method: Method) -> &'static str {
    match method {
        Method::Triangle => "triangle: three cups, two alike; which is the odd one?",
        Method::DuoTrio => "duo-trio: a reference and two cups; which is like it?",
        Method::Paired => "paired: two cups; which has more of it?",
        Method::Preference => "preference: two cups; which is preferred?",
        Method::Ranking => "ranking: three cups or more, put in order",
        Method::Liking => "liking: each cup on nine points",
        Method::Description => "description: each cup on scales of your own",
    }
}

/// So many samples stand open; the others are folded.
const SHOWN: usize = 3;

fn form(opened: &Opened, visitor: &Visitor) -> Markup {
    let formulas = opened.names();
    let sample = |n: usize| {
        html! {
            div.sample {
                input type="text" name={ "sample-" (n) } aria-label={ "Sample " (n + 1) } placeholder={ "sample " (n + 1) }; " "
                select name={ "formula-" (n) } aria-label={ "Formula of sample " (n + 1) } {
                    option value="" { "made by" }
                    @for name in &formulas { option value=(name) { (name) } }
                }
            }
        }
    };
    html! {
        form.fields method="post" action="/tastings" {
            (token(visitor))
            label { "What it is called" input type="text" name="title" required placeholder="Overnight or straight"; }
            label { "How it is asked" select name="method" required { @for method in Method::WORDS.iter().filter_map(|word| Method::named(word)) { option value=(method.word()) { (asks(method)) } } } }
            label { "What tasters are asked" input type="text" name="question" required placeholder="Which is the odd one?"; }
            fieldset {
                legend { "What is tasted" }
                @for n in 0..SHOWN { (sample(n)) }
                details { summary { "More samples" } @for n in SHOWN..MOST_SAMPLES { (sample(n)) } }
            }
            fieldset {
                legend { "What is described " span.fine { "(for a description alone)" } }
                input type="text" name="attribute" aria-label="Attribute" placeholder="crumb"; " from " input type="text" name="low" aria-label="Word at the low end" placeholder="firm"; " to "
                input type="text" name="high" aria-label="Word at the high end" placeholder="soft";
            }
            label { "Seats " span.fine { "as many as are advised if left out" } input type="number" name="panel" min="1" max="500"; }
            label { "Day " span.fine { "may be left out" } input type="date" name="date"; }
            button { "Begin it" }
        }
        p.fine { "Everything else — a pause, a rinse, more scales, the difference worth seeing — is asked on its own page afterwards." }
    }
}

pub async fn begun(State(desk): State<Desk>, visitor: Visitor, Form(said): Fields) -> Answer {
    leads(&visitor)?;
    let opened = desk.book();
    let field = |name: &str| said.get(name).map(|text| text.trim()).unwrap_or_default();
    let name = plain(field("title"));
    if name.is_empty() {
        return Err(Refusal::unfit("A tasting needs a name.", "such as “Overnight or straight”"));
    }
    let file = format!("tastings/{name}.toml");
    if opened.text.files.contains_key(&file) {
        return Err(Refusal::unfit(format!("The book has a tasting called “{name}” already."), "give the new one another name"));
    }
    let method = Method::named(field("method")).ok_or_else(|| Refusal::unfit("How is it asked?", "choose one of the methods"))?;
    if field("question").is_empty() {
        return Err(Refusal::unfit("What are tasters asked?", "one question, such as “Which is the odd one?”"));
    }
    let mut document = DocumentMut::new();
    document["title"] = value(field("title"));
    document["method"] = value(method.word());
    document["question"] = value(field("question"));
    if let Some(day) = Some(field("date")).filter(|day| !day.is_empty()) {
        let day = day.parse::<toml_edit::Datetime>().map_err(|_| Refusal::unfit("That is no day.", "such as 2026-11-28"))?;
        document["date"] = value(day);
    }
    if let Some(panel) = Some(field("panel")).filter(|panel| !panel.is_empty()) {
        let seats = panel.parse::<i64>().map_err(|_| Refusal::unfit("Seats are a whole number.", "such as 24"))?;
        document["panel"] = value(seats);
    }
    document["sample"] = Item::ArrayOfTables(samples(&opened, &said, method)?);
    if method == Method::Description {
        document["attribute"] = Item::ArrayOfTables(attribute(&said)?);
    }
    let text = document.to_string();
    if let Some(found) = fault(&opened, &file, &text) {
        let hint = found.hint.clone().unwrap_or_default();
        return Err(Refusal::unfit(format!("{}: nothing was written.", quantity::print::capital(&found.message)), hint));
    }
    desk.write(Change { file: &file, from: &hash(""), text, what: "begun", by: &visitor.name }).await?;
    see(&format!("/tastings/{}", coded(&name)))
}

/// The samples that a form names: each its title and the formula it is made by.
fn samples(opened: &Opened, said: &BTreeMap<String, String>, method: Method) -> Result<ArrayOfTables, Refusal> {
    let field = |name: String| said.get(&name).map(|text| text.trim()).unwrap_or_default();
    let mut rows = ArrayOfTables::new();
    for n in 0..MOST_SAMPLES {
        let (title, formula) = (field(format!("sample-{n}")), field(format!("formula-{n}")));
        if title.is_empty() && formula.is_empty() {
            continue;
        }
        let called = if title.is_empty() { formula } else { title };
        let name = plain(called);
        if name.is_empty() || rows.iter().any(|row| row.get("name").and_then(Item::as_str) == Some(&name)) {
            return Err(Refusal::unfit(format!("Sample {} needs a name of its own.", n + 1), "such as “sponge of 12 hours”"));
        }
        if !opened.names().contains(&formula) {
            return Err(Refusal::unfit(format!("By which formula is “{called}” made?"), "choose it beside the sample"));
        }
        let mut row = Table::new();
        row["name"] = value(name);
        row["title"] = value(called);
        row["formula"] = value(formula);
        rows.push(row);
    }
    let takes = method.samples();
    if !(takes.from..=takes.to).contains(&rows.len()) {
        let wanted = if takes.from == takes.to { takes.from.to_string() } else { format!("{} to {}", takes.from, takes.to) };
        let message = format!("A tasting by {} has {wanted} samples, and here are {}.", method.word(), rows.len());
        return Err(Refusal::unfit(message, "name another sample, take one out, or choose another method"));
    }
    Ok(rows)
}

/// What is described, with the words at both ends of its scale.
fn attribute(said: &BTreeMap<String, String>) -> Result<ArrayOfTables, Refusal> {
    let field = |name: &str| said.get(name).map(|text| text.trim()).unwrap_or_default();
    let (title, low, high) = (field("attribute"), field("low"), field("high"));
    if plain(title).is_empty() || low.is_empty() || high.is_empty() {
        return Err(Refusal::unfit("What is described, and from which word to which?", "such as crumb, from firm to soft"));
    }
    let mut row = Table::new();
    row["name"] = value(plain(title));
    row["title"] = value(title);
    row["low"] = value(low);
    row["high"] = value(high);
    let mut rows = ArrayOfTables::new();
    rows.push(row);
    Ok(rows)
}

/// The tasting's text as fields. Once it was held, what is changed counts for the next table alone.
pub async fn changing(desk: &Desk, visitor: &Visitor, name: &str, was_held: bool) -> Result<Markup, Refusal> {
    let opened = desk.book();
    let (file, text, document) = document(&opened, name)?;
    let reach = desk.reach(&file).await;
    let to = format!("/tastings/{}", coded(name));
    Ok(html! {
        h2 { "What is asked" }
        (undoing(&file, &to, &reach, visitor))
        details open[!was_held] {
            summary { "Change it" }
            p.fine { "In " (file) ". What you leave as it is stays as it is, comments too. " @if was_held { "What was tasted before stays as it was; changes count for the next table." } @else { "It can be changed until the table is laid." } }
            form.keys-form data-written method="post" action=(to) {
                (token(visitor))
                input type="hidden" name="from" value=(hash(&text));
                (Sheet::of(&opened, &Said::new()).fields(&TASTING, document.as_table(), ""))
                (written::writing())
            }
        }
    })
}

/// The file of a tasting with its text.
fn document(opened: &Opened, name: &str) -> Result<(String, String, DocumentMut), Refusal> {
    let tasting = in_book(opened, name).map_err(|failure| Refusal::no_such(failure.words().0))?;
    let file = tasting.file.to_string();
    let (text, document) = written::document(opened, &file)?;
    Ok((file, text, document))
}

pub async fn changed(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>, Form(said): Fields) -> Answer {
    leads(&visitor)?;
    let opened = desk.book();
    let (file, _, document) = document(&opened, &name)?;
    if sitting(&desk, &name).await?.is_some_and(|held| held.sitting.closed.is_none()) {
        return Err(Refusal::conflict("The table is laid: what is asked stays until it is closed or cleared.", ""));
    }
    let target = Target { file: &file, keys: &TASTING, table: "" };
    target.write((&desk, &visitor), document, &said, "tasting changed").await?;
    see(&format!("/tastings/{}", coded(&name)))
}
