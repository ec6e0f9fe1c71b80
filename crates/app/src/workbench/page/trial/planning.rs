//! A trial planned: batches drawn for each day under the codes of their bowls, a sheet to print, and drafts to log by.

use crate::asked::trial_plan::{Asked, Tasting, drafted};
use crate::failure::Failure;
use crate::logbook::save;
use crate::memory::document;
use crate::moment;
use crate::workbench::answer::{Answer, Refusal, page, see};
use crate::workbench::desk::{Desk, Happened};
use crate::workbench::door::Visitor;
use crate::workbench::frame::{Frame, token};
use crate::workbench::page::addresses::asking;
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::header;
use axum::response::{Html, IntoResponse};
use axum::routing::get;
use bench::trial::{Plan, Question, panel};
use clap::ValueEnum;
use maud::{Markup, html};
use publish::trial_plan::{self, Laid};
use serde::Deserialize;

pub fn routes() -> Router<Desk> {
    Router::new().route("/trials/plan", get(plan).post(kept)).route("/trials/plan/sheet", get(sheet))
}

/// What is asked, as it is typed.
#[derive(Clone, Default, Deserialize)]
#[serde(default)]
struct Typed {
    factors: String,
    a_day: String,
    days: String,
    seed: String,
    test: String,
    tell: String,
    formula: String,
    begin: String,
}

impl Typed {
    /// What is not typed is as on the command line; chance starts anew for each plan.
    fn filled(mut self) -> Result<Self, Failure> {
        let or = |field: &mut String, usual: &str| {
            if field.trim().is_empty() {
                usual.clone_into(field);
            }
        };
        or(&mut self.a_day, "4");
        or(&mut self.days, "1");
        or(&mut self.test, "triangle");
        or(&mut self.tell, "40 %");
        or(&mut self.begin, &moment::now(None, &moment::zone(None)?)?.date().to_string());
        let drawn = getrandom::u32().map_err(|why| Failure::new(format!("chance gives no number: {why}")))? % 10_000;
        or(&mut self.seed, &drawn.to_string());
        Ok(self)
    }

    fn planned(&self) -> Result<(Plan, Question), Failure> {
        let whole = |text: &str, what: &str| {
            text.trim().parse().map_err(|_| Failure::new(format!("“{text}” is no whole number of {what}")))
        };
        let test =
            Tasting::from_str(&self.test, false).map_err(|_| Failure::new(format!("“{}” is no way of tasting", self.test)))?;
        let seed: usize = whole(&self.seed, "chance")?;
        let asked = Asked {
            factors: self.factors.lines().map(str::trim).filter(|line| !line.is_empty()).map(str::to_owned).collect(),
            a_day: whole(&self.a_day, "batches")?,
            days: whole(&self.days, "days")?,
            seed: seed as u64,
            test,
            tell: self.tell.clone(),
            power: "80 %".to_owned(),
        };
        asked.planned()
    }

    /// Every field by its name.
    fn fields(&self) -> [(&'static str, &str); 8] {
        [
            ("factors", &self.factors),
            ("a_day", &self.a_day),
            ("days", &self.days),
            ("seed", &self.seed),
            ("test", &self.test),
            ("tell", &self.tell),
            ("formula", &self.formula),
            ("begin", &self.begin),
        ]
    }
}

async fn plan(State(desk): State<Desk>, visitor: Visitor, Query(typed): Query<Typed>) -> Answer {
    let is_asked = !typed.factors.trim().is_empty();
    let typed = typed.filled()?;
    let planned = is_asked.then(|| typed.planned());
    let opened = desk.book();
    let body = html! {
        main #work {
            h1 { "Plan a trial" }
            p.fine { "Say what is varied, and how many batches a day holds. Batches are drawn in a random order under the codes of their bowls; what days cannot hold is parted or thinned out, and what is then mixed up is said." }
            form.fields method="get" action="/trials/plan" {
                label { "What is varied, a line each" textarea name="factors" rows="3" cols="36" required placeholder="yeast = 0.5 %, 1 %" spellcheck="false" { (typed.factors) } }
                label { "Batches a day " input type="number" name="a_day" min="1" max="64" value=(typed.a_day); }
                label { "Days " input type="number" name="days" min="1" max="64" value=(typed.days); }
                label { "Two bowls are tasted as " select name="test" {
                    @for (word, title) in WAYS { option value=(word) selected[word == typed.test] { (title) } }
                } }
                label { "Worth seeing: told by " input type="text" name="tell" size="6" value=(typed.tell); }
                label { "Chance starts at " input type="number" name="seed" min="0" value=(typed.seed); }
                label { "Formula " select name="formula" {
                    @for formula in opened.formulas() { option value=(formula.name) selected[formula.name == typed.formula] { (formula.head.title) } }
                } }
                label { "First day " input type="date" name="begin" value=(typed.begin); }
                button { "Draw the plan" }
            }
            @match &planned {
                None => {}
                Some(Err(failure)) => { div #refusal role="alert" { (Refusal::amiss(failure).words()) } }
                Some(Ok((plan, question))) => { (drawn(&typed, plan, *question, &visitor)) }
            }
        }
    };
    page(&Frame::of(&visitor, "Plan a trial", super::WAY.address), &body)
}

const WAYS: [(&str, &str); 4] = [
    ("triangle", "a triangle: which is the odd one"),
    ("duo-trio", "a duo-trio: which is like the reference"),
    ("paired", "a pair: which has more of it, as expected"),
    ("preference", "a preference: which is liked"),
];

fn drawn(typed: &Typed, plan: &Plan, question: Question, visitor: &Visitor) -> Markup {
    let laid = Laid { plan, question, panel: panel(&question) };
    html! {
        section aria-label="The plan" {
            (trial_plan::html(&laid))
            p { a href=(asking("/trials/plan/sheet", &typed.fields())) { "The sheet to print, with labels for the bowls" } }
            form method="post" action="/trials/plan" {
                (token(visitor))
                @for (name, value) in typed.fields() { input type="hidden" name=(name) value=(value); }
                button { "Keep it: a draft of a trial for each batch" }
            }
            p.fine { "Each draft says its levels and the code of its bowl; log at the bench what was weighed and seen. Nothing is learnt from it before it is baked." }
        }
    }
}

async fn sheet(_visitor: Visitor, Query(typed): Query<Typed>) -> Answer {
    let (plan, question) = typed.filled()?.planned().map_err(|failure| Refusal::amiss(&failure))?;
    let text = trial_plan::sheet(&Laid { plan: &plan, question, panel: panel(&question) });
    let policy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; frame-ancestors 'none'";
    // No picture of its own beside the address is asked for.
    let text = text.replacen("<head>", "<head><link rel=\"icon\" href=\"data:,\">", 1);
    Ok(([(header::CONTENT_SECURITY_POLICY, policy)], Html(text)).into_response())
}

/// Writes the drafts and remembers them as they were planned.
async fn kept(State(desk): State<Desk>, visitor: Visitor, Form(typed): Form<Typed>) -> Answer {
    crate::workbench::page::may_write(&visitor)?;
    if typed.factors.trim().is_empty() {
        return Err(Refusal::unfit("Nothing is said of what is varied.", "load the page again"));
    }
    let (plan, _) = typed.planned().map_err(|failure| Refusal::amiss(&failure))?;
    let _alone = desk.to_write().await;
    let opened = desk.read_again()?;
    let drafts = drafted(&plan, &opened, &typed.formula, &typed.begin).map_err(|failure| Refusal::amiss(&failure))?;
    if let Ok(store) = desk.store() {
        for (file, text) in &drafts {
            if let Some((kind, name)) = document(file) {
                save(store, kind, &name, text, "planned").await?;
            }
        }
    }
    desk.read_again()?;
    let what = format!("{} trials of {} were planned", drafts.len(), typed.formula);
    desk.tell(Happened::Changed { file: String::new(), what, by: visitor.name.clone() });
    see("/trials")
}
