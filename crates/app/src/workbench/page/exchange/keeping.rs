//! What came of a question is kept: written into the formula as a stroke, or as a formula of its own beside it.

use super::question::{Kind, Question};
use super::{Pairs, WAY, address, seen};
use crate::workbench::answer::{Answer, Refusal, see};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::frame::token;
use crate::workbench::hand::Change;
use crate::workbench::page::addresses::of_formula;
use crate::workbench::page::formula::OnBench;
use crate::workbench::page::{may_write, plain};
use ::formula::Formula;
use axum::extract::{Form, Path, State};
use maud::{Markup, html};
use store::hash;
use toml_edit::{DocumentMut, value};

/// The two ways to keep it.
pub fn forms(one: &OnBench, formula: &Formula, question: &Question, kind: &Kind, visitor: &Visitor) -> Markup {
    let carried = || {
        html! {
            (token(visitor))
            input type="hidden" name="seen" value=(seen(one));
            @for (key, value) in question.pairs.iter().filter(|(_, value)| !value.is_empty()) { input type="hidden" name=(key) value=(value); }
        }
    };
    let address = of_formula(&formula.name, WAY.address);
    html! {
        div.keeping {
            form.fields method="post" action=(address) { (carried()) input type="hidden" name="keep-as" value="here"; button { "Write it into this formula" } span.fine { "Undo takes it back." } }
            form.fields method="post" action=(address) { (carried()) input type="hidden" name="keep-as" value="beside";
                label { "Or keep it beside as" input type="text" name="title" required value={ (formula.head.title) ", " (kind.name()) } size="28"; } button { "Write a new formula" } }
        }
    }
}

/// Makes it again of the text that was seen, and writes it.
pub async fn kept(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>, Form(pairs): Form<Pairs>) -> Answer {
    may_write(&visitor)?;
    let opened = desk.book();
    let one = OnBench::of(&opened, &name)?;
    let question = Question { pairs: &pairs };
    let kind = question.kind()?.ok_or_else(|| Refusal::unfit("Which exchange?", "choose one of the list"))?;
    if question.get("seen").is_none_or(|seen_then| seen_then != seen(&one)) {
        let message = "The formula was changed since you asked: nothing was written.";
        return Err(Refusal::conflict(message, format!("ask again: {}", address(&name, &asked_alone(&pairs)))));
    }
    let made = tokio::task::block_in_place(|| question.answer(&kind, &one))?;
    let changed = made.changed().ok_or_else(|| Refusal::unfit("The formula stays as it is: there is nothing to write.", ""))?;
    if question.get("keep-as").as_deref() == Some("beside") {
        return beside(&desk, &visitor, &question, &kind, &changed.text).await;
    }
    let change =
        Change { file: &one.file, from: &seen(&one), text: changed.text.clone(), what: &kind.stroke(), by: &visitor.name };
    desk.write(change).await?;
    see(&of_formula(&name, ""))
}

async fn beside(desk: &Desk, visitor: &Visitor, question: &Question<'_>, kind: &Kind, text: &str) -> Answer {
    let title = question.get("title").unwrap_or_default();
    let name = plain(&title);
    if name.is_empty() {
        return Err(Refusal::unfit("The new formula needs a name.", "go back and write one"));
    }
    if desk.book().book.formulas.contains_key(&name) {
        return Err(Refusal::unfit(
            format!("The book has a formula called “{name}” already."),
            "go back and give it another name",
        ));
    }
    let broken = |_| Refusal::unfit("The new text cannot be read.", "");
    let mut document: DocumentMut = text.parse().map_err(broken)?;
    document["title"] = value(&title);
    let file = format!("formulas/{name}.toml");
    let text = document.to_string();
    desk.write(Change { file: &file, from: &hash(""), text, what: &kind.stroke(), by: &visitor.name }).await?;
    see(&of_formula(&name, ""))
}

/// The question without what belongs to the keeping.
fn asked_alone(pairs: &Pairs) -> Pairs {
    let own = |key: &str| matches!(key, "token" | "seen" | "keep-as" | "title");
    pairs.iter().filter(|(key, _)| !own(key)).cloned().collect()
}
