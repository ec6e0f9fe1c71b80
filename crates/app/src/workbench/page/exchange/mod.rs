//! Exchanges and targets: one thing for another, or a figure that is wanted, held against the formula before it is kept.

mod choosing;
mod keeping;
mod question;

use super::formula::{OnBench, ways};
use super::{Way, addresses::asking};
use crate::workbench::answer::{Answer, Refusal, page};
use crate::workbench::desk::Desk;
use crate::workbench::door::{Role, Visitor};
use crate::workbench::frame::Frame;
use ::formula::{Formula, Severity};
use axum::Router;
use axum::extract::{Path, Query, State};
use axum::routing::get;
use bench::exchange::Exchanged;
use bench::target::Solved;
use maud::{Markup, html};
use question::{Kind, Question};
use store::hash;

pub const WAY: Way = Way { address: "/exchange", title: "Exchange", role: Role::Helper };

pub fn routes() -> Router<Desk> {
    Router::new().route("/formula/{name}/exchange", get(exchange).post(keeping::kept))
}

/// What a page is asked, each key as often as it was said.
pub type Pairs = Vec<(String, String)>;

/// What came of a question.
enum Made {
    Exchanged(Box<Exchanged>),
    Solved(Box<Solved>),
}

impl Made {
    /// The formula so changed, where the answer changes it.
    fn changed(&self) -> Option<&Exchanged> {
        match self {
            Self::Exchanged(made) => Some(made),
            Self::Solved(solved) => solved.changed.as_ref(),
        }
    }

    fn markup(&self, units: publish::Units) -> Markup {
        match self {
            Self::Exchanged(made) => publish::exchanged::markup(made),
            Self::Solved(solved) => publish::solved::markup(solved, units),
        }
    }
}

async fn exchange(State(desk): State<Desk>, visitor: Visitor, Path(name): Path<String>, Query(pairs): Query<Pairs>) -> Answer {
    let opened = desk.book();
    let one = OnBench::of(&opened, &name)?;
    let question = Question { pairs: &pairs };
    let made = tokio::task::block_in_place(|| {
        let checked = one.checked();
        let is_sound = checked.diagnostics.iter().all(|found| found.severity < Severity::Error);
        let formula = checked.value;
        let asked = question.kind()?;
        let made = asked.as_ref().filter(|_| is_sound && question.is_asked()).map(|kind| question.answer(kind, &one));
        Ok::<_, Refusal>((
            formula.head.title.clone(),
            html! {
                main #work.exchange {
                    h1 { (formula.head.title) }
                    (ways(&name, &visitor, WAY.address))
                    @if is_sound {
                        div.beside {
                            (choosing::lists(&formula, asked.as_ref()))
                            (chosen(&one, &formula, &question, asked.as_ref(), made, &visitor))
                        }
                    } @else {
                        p { "Nothing can be exchanged while the formula has errors. " a href=(super::addresses::of_formula(&name, "")) { "Mend them on its sheet" } "." }
                    }
                }
            },
        ))
    });
    let (title, body) = made?;
    page(&Frame::of(&visitor, &title, ""), &body)
}

/// What is chosen: what it takes, and what came of it.
fn chosen(
    one: &OnBench,
    formula: &Formula,
    question: &Question,
    asked: Option<&Kind>,
    made: Option<Result<Made, Refusal>>,
    visitor: &Visitor,
) -> Markup {
    let Some(kind) = asked else {
        return html! { section.chosen { p { "Choose what is exchanged, or what is wanted. Nothing is written before you have seen it." } } };
    };
    html! {
        section.chosen aria-labelledby="asked" {
            h2 #asked { (quantity::print::capital(kind.name())) }
            p { (quantity::print::capital(&kind.about())) "." }
            (choosing::form(one, formula, question, kind))
            @match made {
                None => {}
                Some(Err(refusal)) => div.refused role="alert" { (refusal.words()) },
                Some(Ok(made)) => {
                    section #made aria-labelledby="seen" {
                        h2 #seen { "Before and after" }
                        @if made.changed().is_some() { (keeping::forms(one, formula, question, kind, visitor)) }
                        (made.markup(publish::Units::of(&one.opened.book.settings)))
                    }
                }
            }
        }
    }
}

/// The address of the same question, for a page that is loaded again.
fn address(name: &str, pairs: &Pairs) -> String {
    asking(&super::addresses::of_formula(name, WAY.address), pairs)
}

/// The text that a question was asked of, by its SHA-256.
fn seen(one: &OnBench) -> String {
    hash(&one.source.text)
}
