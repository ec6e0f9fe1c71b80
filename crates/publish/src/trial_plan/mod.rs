//! A plan for a trial in words, and for other programs.

mod draft;
mod json;
mod sheet;
mod text;

pub(crate) use draft::BOWL;
pub use draft::{NOT_BAKED, draft};
pub use json::json;
pub use sheet::{html, sheet};
pub use text::text;

use bench::trial::{Panel, Plan, Question, Test};

/// A plan with the panel that is to taste it.
#[derive(Debug)]
pub struct Laid<'p> {
    /// The plan.
    pub plan: &'p Plan,
    /// What the tasters are asked.
    pub question: Question,
    /// The panel, if one can answer that.
    pub panel: Option<Panel>,
}

/// What a test is called.
#[must_use]
pub const fn name(test: Test) -> &'static str {
    match test {
        Test::Triangle => "triangle test (ISO 4120)",
        Test::DuoTrio => "duo-trio test (ISO 10399)",
        Test::PairedDirected => "paired comparison, which has more of it (ISO 5495)",
        Test::PairedPreference => "paired preference (ISO 5495)",
    }
}

/// Factors joined as a product: "dose × hydration".
fn product(plan: &Plan, factors: &[usize]) -> String {
    let names: Vec<&str> = factors.iter().filter_map(|factor| plan.factors.get(*factor)).map(|one| one.name.as_str()).collect();
    names.join(" × ")
}
