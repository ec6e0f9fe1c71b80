//! What a formula's page may claim of a tasting: one sentence, with its evidence.

use super::told::{more_than, title};
use super::{Report, chance, joined, percent};
use bench::tasting::{Choice, Finding, Order, Points, Since, Test};
use formula::read::{Method, Tasting};
use quantity::print::capital;

/// A claim with the page of its evidence.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Claim {
    /// The sentence.
    pub words: String,
    /// The file of the evidence sheet.
    pub page: String,
    /// What readers must know besides: that the formula was changed since.
    pub changed: Option<String>,
}

/// What is otherwise since it was tasted as `tasted` says ("revision 3"), in a sentence; none where nothing is.
#[must_use]
pub fn changed(tasted: &str, since: &[Since]) -> Option<String> {
    let one = |one: &Since| match one {
        Since::Ingredient(title) => title.clone(),
        Since::Steps(title) => format!("the steps of “{title}”"),
        Since::Piece(title) => format!("the size of “{title}”"),
    };
    let all: Vec<String> = since.iter().take(5).map(one).collect();
    let more = if since.len() > all.len() { " and more" } else { "" };
    (!all.is_empty()).then(|| format!("Tasted was {tasted}; changed since: {}{more}.", all.join(", ")))
}

/// What may be claimed of a formula: of the first sample of the tasting that was made by it.
#[must_use]
pub fn claim(report: &Report, formula: &str) -> Option<String> {
    let tasting = report.tasting;
    let is_own = |sample: &formula::read::Sample| sample.formula.as_ref().is_some_and(|own| own.value == formula);
    let own = tasting.samples.iter().position(is_own)?;
    match &report.findings.finding {
        Finding::Nothing => None,
        Finding::Choice(choice) => Some(of_choice(tasting, choice, own)),
        Finding::Order(order) => Some(of_order(tasting, order, own)),
        Finding::Points(scales) => {
            let claims = scales.iter().enumerate().map(|(scale, points)| of_points(tasting, scale, points, own));
            Some(claims.collect::<Vec<_>>().join(" "))
        }
    }
}

fn of_choice(tasting: &Tasting, choice: &Choice, own: usize) -> String {
    let (right, of, p) = (choice.right, choice.of, chance(choice.chance));
    let other = title(tasting, 1 - own.min(1));
    let is_found = choice.chance <= tasting.risk;
    if let Some(alike) = choice.alike.filter(|alike| alike.is_so) {
        return format!(
            "Told from “{other}” by no more than {} of people, as a blind test of {of} shows ({right} right answers).",
            percent(alike.tolerated)
        );
    }
    match choice.test {
        Test::Triangle | Test::DuoTrio => {
            let (test, found) = match choice.test {
                Test::Triangle => ("triangle test", "found the odd one"),
                _ => ("duo-trio test", "found the one like the reference"),
            };
            if is_found {
                format!("Told from “{other}” in a blind {test}: {right} of {of} people {found}, {p}.")
            } else {
                format!(
                    "Not told from “{other}” in a blind {test} of {of} people ({right} {found}, {p}), which is no proof that they are alike."
                )
            }
        }
        Test::PairedDirected | Test::PairedPreference if !is_found => {
            format!("No difference to “{other}” was found by {of} people tasting blind, {p}.")
        }
        Test::PairedDirected | Test::PairedPreference if choice.favoured == Some(own) => {
            format!("{} by {right} of {of} people tasting blind, {p}.", sentence(tasting, &[format!("“{other}”")]))
        }
        Test::PairedDirected | Test::PairedPreference => {
            format!("“{other}” {} this one: {right} of {of} people tasting blind said so, {p}.", more_than(tasting))
        }
    }
}

/// "Softer than “straight” and “poolish”".
fn sentence(tasting: &Tasting, others: &[String]) -> String {
    let more = more_than(tasting);
    capital(&format!("{} {}", more.strip_prefix("was ").unwrap_or(&more), joined(others)))
}

fn of_order(tasting: &Tasting, order: &Order, own: usize) -> String {
    let (tasters, p) = (order.tasters, chance(order.chance));
    let named = |sample: usize| format!("“{}”", title(tasting, sample));
    let differ = || order.pairs.iter().filter(|pair| pair.differ && order.chance <= tasting.risk);
    let less: Vec<String> = differ().filter(|pair| pair.more == own).map(|pair| named(pair.less)).collect();
    let more: Vec<String> = differ().filter(|pair| pair.less == own).map(|pair| named(pair.more)).collect();
    match (less.is_empty(), more.is_empty()) {
        (false, _) => format!("{} in a blind ranking of {tasters} people, {p}.", sentence(tasting, &less)),
        (true, false) => {
            format!("{} {} this one in a blind ranking of {tasters} people, {p}.", joined(&more), more_than(tasting))
        }
        (true, true) => format!("No sure difference to the others in a blind ranking of {tasters} people, {p}."),
    }
}

fn of_points(tasting: &Tasting, scale: usize, points: &Points, own: usize) -> String {
    let (tasters, p) = (points.tasters, chance(points.chance));
    let named = |sample: usize| format!("“{}”", title(tasting, sample));
    let attribute = tasting.attributes.get(scale).filter(|_| tasting.method == Method::Description);
    let differ = || points.pairs.iter().filter(|pair| pair.differ);
    let less: Vec<String> = differ().filter(|pair| pair.more == own).map(|pair| named(pair.less)).collect();
    let more: Vec<String> = differ().filter(|pair| pair.less == own).map(|pair| named(pair.more)).collect();
    let head = attribute.map(|one| format!("{}: ", one.title)).unwrap_or_default();
    match (attribute, less.is_empty(), more.is_empty()) {
        (Some(one), false, _) => {
            format!("{head}nearer to “{}” than {} by {tasters} people tasting blind, {p}.", one.high, joined(&less))
        }
        (None, false, _) => format!("{} by {tasters} people tasting blind, {p}.", sentence(tasting, &less)),
        (Some(one), true, false) => {
            format!("{head}{} was nearer to “{}”, by {tasters} people tasting blind, {p}.", joined(&more), one.high)
        }
        (None, true, false) => {
            format!("{} {} this one by {tasters} people tasting blind, {p}.", joined(&more), more_than(tasting))
        }
        (_, true, true) => format!(
            "{head}{} sure difference to the others by {tasters} people tasting blind, {p}.",
            if head.is_empty() { "No" } else { "no" }
        ),
    }
}
