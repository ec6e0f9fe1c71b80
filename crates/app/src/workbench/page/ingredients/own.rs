//! Ingredients of the author's own: what the bag says, written into the files of ingredients/.

use crate::book::Opened;
use crate::workbench::answer::{Answer, Refusal, see};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::frame::token;
use crate::workbench::hand::{Change, Reach};
use crate::workbench::page::addresses::coded;
use crate::workbench::page::changes::undoing;
use crate::workbench::page::written::{self, Said, Sheet, Target};
use crate::workbench::page::{may_write, plain};
use ::formula::Ingredient;
use ::formula::read::Group;
use ::formula::read::keys::INGREDIENT;
use axum::extract::{Form, Path, State};
use axum::http::HeaderMap;
use maud::{Markup, html};
use store::hash;
use toml_edit::{DocumentMut, Item, Table};

/// The file that new ones are written into.
const OWN: &str = "ingredients/own.toml";

/// The form that begins one.
pub fn form(opened: &Opened, visitor: &Visitor, typed: &Said) -> Markup {
    let said = |field: &str| typed.get(field).map(String::as_str).unwrap_or_default();
    html! {
        section aria-labelledby="fresh" {
            h2 #fresh { "One of our own" }
            p { "What a bag or a jar of yours says. It starts from an ingredient of the table, and then what the label states takes its place." }
            form.fields data-written method="post" action="/ingredients" {
                (token(visitor))
                label { "What readers see" input type="text" name="title" value=(said("title")) required placeholder="Strong white flour, stone-ground"; }
                label { "Like" input type="text" name="like" value=(said("like")) list="ingredients" placeholder="flour-strong-white" autocomplete="off"; }
                label { "Or, like none: it is" select name="group" { option value="" { "not said" } @for word in Group::WORDS { option value=(word) selected[*word == said("group")] { (word) } } } }
                label { "Where its figures come from" input type="text" name="source" value=(said("source")) required placeholder="the bag, lot of November"; }
                button { "Add it" }
            }
            (written::wares(opened))
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
pub fn stated(opened: &Opened, one: &Ingredient) -> Option<(Vec<String>, Option<String>)> {
    let (_, _, document) = Some(one).filter(|one| one.own).and_then(|one| found(opened, &one.name).ok())?;
    let table = document.get(&one.name)?.as_table_like()?;
    let stated = table.get("per-100-g").and_then(Item::as_table_like);
    let stated = stated.map(|stated| stated.iter().map(|(name, _)| name.to_owned()).collect()).unwrap_or_default();
    Some((stated, table.get("like").and_then(Item::as_str).map(str::to_owned)))
}

/// The form that changes one of our own, with what was just written or refused, and what is typed already; nothing for
/// one of the table.
pub async fn change(desk: &Desk, one: &Ingredient, visitor: &Visitor, typed: &Said) -> Result<(Markup, Reach), Refusal> {
    let opened = desk.book();
    let Some((file, text, document)) = Some(one).filter(|one| one.own).and_then(|one| found(&opened, &one.name).ok()) else {
        return Ok((html! {}, Reach::default()));
    };
    let reach = desk.reach(&file).await;
    let Some(table) = document.get(&one.name).and_then(Item::as_table_like) else { return Ok((html! {}, reach)) };
    let address = format!("/ingredients/{}", coded(&one.name));
    let form = html! {
        section aria-labelledby="own" {
            h2 #own { "Change what is written of it" }
            p.fine { "In " (file) ". What is left empty is taken from what it is like." }
            (undoing(&file, &address, &reach, visitor))
            form.keys-form data-written method="post" action=(address) {
                (token(visitor))
                input type="hidden" name="from" value=(hash(&text));
                (Sheet::of(&opened, typed).fields(&INGREDIENT, table, ""))
                (written::writing())
            }
            (written::wares(&opened))
        }
    };
    Ok((form, reach))
}

/// Writes a new one.
pub async fn begun(State(desk): State<Desk>, visitor: Visitor, headers: HeaderMap, Form(said): Form<Said>) -> Answer {
    may_write(&visitor)?;
    match begin(&desk, &visitor, &said).await {
        Ok(name) => see(&format!("/ingredients/{}", coded(&name))),
        Err(refusal) => refusal.again(&headers, |why| super::listed(&desk, &visitor, &super::Sought::default(), (why, &said))),
    }
}

/// Writes what a form says of a new one; gives its name.
async fn begin(desk: &Desk, visitor: &Visitor, said: &Said) -> Result<String, Refusal> {
    let opened = desk.book();
    let (title, name) = may_begin(&opened, said)?;
    let before = opened.text.files.get(OWN).map(|source| source.text.clone()).unwrap_or_default();
    let broken = |_| Refusal::unfit(format!("{OWN} cannot be read."), "mend it in an editor first");
    let mut document: DocumentMut = before.parse().map_err(broken)?;
    document.insert(&name, Item::Table(Table::new()));
    let target = Target { file: OWN, keys: &INGREDIENT, table: &name };
    let text = target.made(&opened, document, said, "")?.text;
    let what = format!("{title} added");
    desk.write(Change { file: OWN, from: &hash(&before), text, what: &what, by: &visitor.name }).await?;
    Ok(name)
}

/// The title and the name of a new one, where enough is said of it.
fn may_begin<'s>(opened: &Opened, said: &'s Said) -> Result<(&'s str, String), Refusal> {
    let title = said.get("title").map(|title| title.trim()).unwrap_or_default();
    let name = plain(title);
    if name.is_empty() {
        return Err(Refusal::unfit("An ingredient needs a name.", "such as “Strong white flour, stone-ground”").of("title"));
    }
    if opened.book.pantry.find(&name).is_some() {
        let message = format!("There is an ingredient called “{name}” already.");
        return Err(Refusal::unfit(message, "call the new one more closely").of("title"));
    }
    let says = |key: &str| said.get(key).is_some_and(|text| !text.trim().is_empty());
    if !says("like") && !says("group") {
        return Err(Refusal::unfit("What is it?", "say which ingredient of the table it is like, or what it is").of("like"));
    }
    if !says("source") {
        let hint = "no figure stands without its source: “the bag, lot of November”";
        return Err(Refusal::unfit("Where do its figures come from?", hint).of("source"));
    }
    Ok((title, name))
}

/// Writes what a form says of one.
pub async fn changed(
    State(desk): State<Desk>,
    visitor: Visitor,
    Path(name): Path<String>,
    headers: HeaderMap,
    Form(said): Form<Said>,
) -> Answer {
    may_write(&visitor)?;
    let (file, _, document) = found(&desk.book(), &name)?;
    let target = Target { file: &file, keys: &INGREDIENT, table: &name };
    match target.write((&desk, &visitor), document, &said, &format!("{name} changed")).await {
        Ok(()) => see(&format!("/ingredients/{}?written=yes", coded(&name))),
        Err(refusal) => {
            let page = super::shown(&desk, &visitor, &name, &said).await?;
            refusal.again(&headers, |why| page.under(&visitor, why))
        }
    }
}
