//! A tasting in words and pictures: the leader's sheet, ballots for printing, the report, and what a page may claim.

mod ballots;
mod chart;
mod claim;
mod figures;
mod json;
mod leader;
mod report;
mod scales;
mod table;
mod told;

pub use ballots::{ballots, how};
pub use chart::chart;
pub use claim::{Claim, changed, claim};
pub use json::json;
pub use leader::{Setting, advice, between, key, meanwhile, served};
pub(crate) use report::held;
pub use report::text;
pub use table::Table;
pub(crate) use table::tables;
pub use told::{Told, consent, method_name, told};

use bench::tasting::{Choice, Findings};
use formula::read::Tasting;
use quantity::{Fraction, print};

/// What a report is made from.
#[derive(Debug)]
pub struct Report<'r> {
    /// The tasting.
    pub tasting: &'r Tasting,
    /// What it found.
    pub findings: &'r Findings,
    /// When it was closed: year, month and day.
    pub closed: &'r str,
    /// What each sample was made by: "potato-muffins, revision 3".
    pub made: &'r [String],
}

/// A chance as reports print it: "p = 0.031", "p < 0.001".
fn chance(chance: Fraction) -> String {
    match chance.as_ratio() {
        p if p.is_nan() => "p not told".to_owned(),
        p if p < 0.001 => "p < 0.001".to_owned(),
        p if p < 0.0995 => format!("p = {p:.3}"),
        p => format!("p = {p:.2}"),
    }
}

/// A share in whole percent: one below nought as nought, one above the whole as the whole.
fn percent(share: Fraction) -> String {
    print::percent(Fraction::ratio(share.as_ratio().clamp(0.0, 1.0)), 0)
}

/// Of fewer answers than this nothing is told of the spread; common practice, no source.
const FEW: u32 = 4;

/// Whether the normal approximation holds for a share: five answers of each kind at least. Common practice, no source.
const fn fits_normal(choice: &Choice) -> bool {
    choice.right >= 5 && choice.of - choice.right >= 5
}

/// "1 person", "24 people".
fn people(count: usize) -> String {
    format!("{count} {}", if count == 1 { "person" } else { "people" })
}

/// "one", "one and two", "one, two and three".
fn joined(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [one] => one.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}
