//! The page as readers will see it, before it is published: made by the same code, nothing written.

use super::OnBench;
use super::kitchen::Wanted;
use crate::workbench::answer::{Answer, Refusal};
use crate::workbench::desk::Desk;
use crate::workbench::door::Visitor;
use crate::workbench::page::addresses::coded;
use crate::workbench::page::tastings::evidence;
use axum::Router;
use axum::extract::{Path, Query, State};
use axum::http::header;
use axum::response::{Html, IntoResponse};
use axum::routing::get;
use formula::Severity;
use plan::day::{Workplace, usual};
use publish::page::{Leaf, formula_page};
use publish::reader::{POLICY, reader};

pub fn routes() -> Router<Desk> {
    Router::new().route("/formula/{name}/page", get(page))
}

async fn page(State(desk): State<Desk>, _visitor: Visitor, Path(name): Path<String>, Query(wanted): Query<Wanted>) -> Answer {
    let opened = desk.book();
    let one = OnBench::of(&opened, &name)?;
    let evidence = evidence(&desk, &opened).await?;
    let made = tokio::task::block_in_place(|| {
        let checked = one.checked();
        if checked.diagnostics.iter().any(|found| found.severity == Severity::Error) {
            return Err(Refusal::unfit("The formula has errors.", "mend them on its sheet first"));
        }
        let around = wanted.around(&opened)?;
        let reader = reader(&opened.book, &checked.value, &around);
        let day = usual(&checked.value, Workplace::of(&wanted.kitchen(&opened)?), &around);
        let settings = &opened.book.settings;
        // The evidence sheets of pages that are not published yet are those of the workbench.
        let mut claims = evidence.claims(&checked.value);
        claims.iter_mut().for_each(|claim| claim.page = sheet_of(&claim.page));
        let leaf = Leaf { reader: Some(&reader), day: day.as_ref(), claims: &claims, ..Leaf::alone(settings) };
        Ok(formula_page(&checked.value, &leaf))
    })?;
    // The page has its script within it, and brings the rule by which only that may run.
    Ok(([(header::CONTENT_SECURITY_POLICY, POLICY.as_str())], Html(made)).into_response())
}

/// Where the workbench shows the evidence that a published page has beside it.
fn sheet_of(file: &str) -> String {
    format!("/tastings/{}/evidence", coded(file.trim_end_matches(".evidence.html")))
}
