//! Ingredients of the author's own: what the bag says, written into the files of ingredients/.

use crate::book::Opened;
use crate::workbench::answer::{Answer, Refusal, see};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::frame::token;
use crate::workbench::hand::Change;
use crate::workbench::page::addresses::coded;
use crate::workbench::page::changes::undoing;
use crate::workbench::page::written::{fields, write};
use crate::workbench::page::{may_write, plain};
use crate::workbench::proof::refuse_faulty;
use ::formula::Ingredient;
use ::formula::read::Group;
use ::formula::read::keys::INGREDIENT;
use axum::extract::{Form, Path, State};
use maud::{Markup, html};
use std::collections::BTreeMap;
use store::hash;
use toml_edit::{DocumentMut, Item, Table};

/// The file that new ones are written into.
const OWN: &str = "ingredients/own.toml";

type Said = BTreeMap<String, String>;

/// The form that begins one.
pub fn form(opened: &Opened, visitor: &Visitor) -> Markup {
    html! {
        section aria-labelledby="fresh" {
            h2 #fresh { "One of our own" }
            p { "What a bag or a jar of yours says. It starts from an ingredient of the table, and then what the label states takes its place." }
            form.fields method="post" action="/ingredients" {
                (token(visitor))
                label { "What readers see" input type="text" name="title" required placeholder="Strong white flour, stone-ground"; }
                label { "Like" input type="text" name="like" list="ingredients" placeholder="flour-strong-white" autocomplete="off"; }
                label { "Or, like none: it is" select name="group" { option value="" { "not said" } @for word in Group::WORDS { option value=(word) { (word) } } } }
                label { "Where its figures come from" input type="text" name="source" required placeholder="the bag, lot of November"; }
                button { "Add it" }
            }
            datalist #ingredients { @for one in opened.book.pantry.all() { option value=(one.name) { (one.title) } } }
        }
    }
}

/// The file of an own ingredient, and the file as a document.
fn found(opened: &Opened, name: &str) -> Result<(String, String, DocumentMut), Refusal> {
    for (file, source) in opened.text.files.iter().filter(|(file, _)| file.starts_with("ingredients/")) {
        let Ok(document) = source.text.parse::<DocumentMut>() else { continue };
        if document.get(name).is_some_and(Item::is_table) {
            return Ok((file.clone(), source.text.clone(), document));
        }
    }
    Err(Refusal::no_such(format!("“{name}” is none of our own: the table's figures are not changed. Add one that is like it.")))
}

/// The figures that are written of one of our own, and what it is like.
pub fn written(opened: &Opened, one: &Ingredient) -> Option<(Vec<String>, Option<String>)> {
    let (_, _, document) = Some(one).filter(|one| one.own).and_then(|one| found(opened, &one.name).ok())?;
    let table = document.get(&one.name)?.as_table_like()?;
    let stated = table.get("per-100-g").and_then(Item::as_table_like);
    let stated = stated.map(|stated| stated.iter().map(|(name, _)| name.to_owned()).collect()).unwrap_or_default();
    Some((stated, table.get("like").and_then(Item::as_str).map(str::to_owned)))
}

/// The form that changes one of our own; nothing for one of the table.
pub async fn change(desk: &Desk, opened: &Opened, one: &Ingredient, visitor: &Visitor) -> Result<Markup, Refusal> {
    let Some(file) = Some(one).filter(|one| one.own).and_then(|one| found(opened, &one.name).ok()).map(|(file, ..)| file) else {
        return Ok(html! {});
    };
    let reach = desk.reach(&file).await;
    let (file, text, document) = found(opened, &one.name)?;
    let Some(table) = document.get(&one.name).and_then(Item::as_table_like) else { return Ok(html! {}) };
    Ok(html! {
        section aria-labelledby="own" {
            h2 #own { "Change what is written of it" }
            p.fine { "In " (file) ". What is left empty is taken from what it is like." }
            (undoing(&file, &format!("/ingredients/{}", coded(&one.name)), &reach, visitor))
            form.keys-form method="post" action={ "/ingredients/" (coded(&one.name)) } {
                (token(visitor))
                input type="hidden" name="from" value=(hash(&text));
                (fields(&INGREDIENT, table, ""))
                p { button { "Write it" } }
            }
            datalist #ingredients { @for one in opened.book.pantry.all() { option value=(one.name) { (one.title) } } }
        }
    })
}

/// Writes a new one.
pub async fn begun(State(desk): State<Desk>, visitor: Visitor, Form(said): Form<Said>) -> Answer {
    may_write(&visitor)?;
    let opened = desk.book();
    let title = said.get("title").map(|title| title.trim()).unwrap_or_default();
    let name = plain(title);
    if name.is_empty() {
        return Err(Refusal::unfit("An ingredient needs a name.", "such as “Strong white flour, stone-ground”"));
    }
    if opened.book.pantry.find(&name).is_some() {
        return Err(Refusal::unfit(format!("There is an ingredient called “{name}” already."), "call the new one more closely"));
    }
    let says = |key: &str| said.get(key).is_some_and(|text| !text.trim().is_empty());
    if !says("like") && !says("group") {
        return Err(Refusal::unfit("What is it?", "say which ingredient of the table it is like, or what it is"));
    }
    if !says("source") {
        return Err(Refusal::unfit(
            "Where do its figures come from?",
            "no figure stands without its source: “the bag, lot of November”",
        ));
    }
    let before = opened.text.files.get(OWN).map(|source| source.text.clone()).unwrap_or_default();
    let broken = |_| Refusal::unfit(format!("{OWN} cannot be read."), "mend it in an editor first");
    let mut document: DocumentMut = before.parse().map_err(broken)?;
    let mut table = Table::new();
    write(&INGREDIENT, &mut table, "", &said, false);
    document.insert(&name, Item::Table(table));
    let text = document.to_string();
    refuse_faulty(&opened, OWN, &text)?;
    let what = format!("{title} added");
    desk.write(Change { file: OWN, from: &hash(&before), text, what: &what, by: &visitor.name }).await?;
    see(&format!("/ingredients/{}", coded(&name)))
}

/// Writes what a form says of one.
pub async fn changed(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>, Form(said): Form<Said>) -> Answer {
    may_write(&visitor)?;
    let opened = desk.book();
    let (file, _, mut document) = found(&opened, &name)?;
    if let Some(table) = document.get_mut(&name).and_then(Item::as_table_like_mut) {
        write(&INGREDIENT, table, "", &said, false);
    }
    let text = document.to_string();
    refuse_faulty(&opened, &file, &text)?;
    let from = said.get("from").cloned().unwrap_or_default();
    let what = format!("{name} changed");
    desk.write(Change { file: &file, from: &from, text, what: &what, by: &visitor.name }).await?;
    see(&format!("/ingredients/{}", coded(&name)))
}
