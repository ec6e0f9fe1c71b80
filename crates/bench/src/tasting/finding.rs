//! What a tasting found, from the sheets of its seats.

use super::asked::asked;
use super::choice::{Choice, choice};
use super::lay::block;
use super::order::{Order, order};
use super::points::{Points, points};
use super::sheet::Sheet;
use formula::read::{Method, Tasting};

/// What a tasting found.
#[derive(Clone, Debug, PartialEq)]
pub struct Findings {
    /// How many seats there were.
    pub seats: usize,
    /// How many answered everything; only these are reckoned with.
    pub whole: usize,
    /// How many answered in part.
    pub in_part: usize,
    /// Whether every serving order was used equally often among those.
    pub is_balanced: bool,
    /// What they say.
    pub finding: Finding,
}

/// What whole sheets say.
#[derive(Clone, Debug, PartialEq)]
pub enum Finding {
    /// Nobody answered everything.
    Nothing,
    /// Of a choice.
    Choice(Choice),
    /// Of a ranking.
    Order(Order),
    /// Of points, scale by scale.
    Points(Vec<Points>),
}

/// Returns what a tasting found.
#[must_use]
pub fn find(tasting: &Tasting, sheets: &[Sheet]) -> Findings {
    let whole: Vec<&Sheet> = sheets.iter().filter(|sheet| sheet.is_whole()).collect();
    let silent = sheets.iter().filter(|sheet| sheet.is_silent()).count();
    let finding = match tasting.method {
        _ if whole.is_empty() => Finding::Nothing,
        Method::Ranking => order(tasting, &whole).map_or(Finding::Nothing, Finding::Order),
        Method::Liking | Method::Description => {
            let scales: Vec<Points> = (0..asked(tasting).len()).filter_map(|scale| points(tasting, &whole, scale)).collect();
            if scales.is_empty() { Finding::Nothing } else { Finding::Points(scales) }
        }
        Method::Triangle | Method::DuoTrio | Method::Paired | Method::Preference => Finding::Choice(choice(tasting, &whole)),
    };
    let (in_part, is_balanced) = (sheets.len() - whole.len() - silent, is_balanced(tasting, &whole));
    Findings { seats: sheets.len(), whole: whole.len(), in_part, is_balanced, finding }
}

/// Whether every order was served equally often.
fn is_balanced(tasting: &Tasting, sheets: &[&Sheet]) -> bool {
    let order = |sheet: &&Sheet| (sheet.reference, sheet.cups.iter().map(|cup| cup.sample).collect::<Vec<_>>());
    let mut served: Vec<_> = sheets.iter().map(order).collect();
    served.sort_unstable();
    let orders = block(tasting.method, tasting.samples.len());
    let mut times: Vec<usize> = served.chunk_by(|a, b| a == b).map(<[_]>::len).collect();
    times.dedup();
    let mut different = served;
    different.dedup();
    different.len() == orders && times.len() == 1
}
