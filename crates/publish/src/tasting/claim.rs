//! What a formula's page may claim of a tasting: one sentence, with its evidence.

use super::told::{more_than, title};
use super::{Report, chance, joined, people, percent};
use bench::tasting::{Choice, Finding, Order, Pair, Points, Since, Test};
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

/// What may be claimed of a formula; `standing` are the samples that are known to have been made by it as it stands.
///
/// Where only one sample is this formula, the sentence speaks of it; where several are, it names both by their titles, in
/// whatever order the file has them.
#[must_use]
pub fn claim(report: &Report, formula: &str, standing: &[usize]) -> Option<String> {
    let tasting = report.tasting;
    let is_own = |sample: &formula::read::Sample| sample.formula.as_ref().is_some_and(|own| own.value == formula);
    let made: Vec<usize> = (0..tasting.samples.len()).filter(|sample| is_own(&tasting.samples[*sample])).collect();
    let stands: Vec<usize> = made.iter().copied().filter(|sample| standing.contains(sample)).collect();
    let of = match (made.as_slice(), stands.as_slice()) {
        ([], _) => return None,
        ([one], _) | (_, [one]) => Of::One(*one),
        _ => Of::Several(made),
    };
    match &report.findings.finding {
        Finding::Nothing => None,
        Finding::Choice(choice) => Some(match of {
            Of::One(own) => of_choice(tasting, choice, own),
            Of::Several(_) => between_both(tasting, choice),
        }),
        Finding::Order(order) => Some(of_order(tasting, order, &of)),
        Finding::Points(scales) => {
            let claims = scales.iter().enumerate().map(|(scale, points)| of_points(tasting, scale, points, &of));
            Some(claims.collect::<Vec<_>>().join(" "))
        }
    }
}

/// The samples that a page speaks of.
enum Of {
    /// One sample is the formula.
    One(usize),
    /// Several were made by it.
    Several(Vec<usize>),
}

fn of_choice(tasting: &Tasting, choice: &Choice, own: usize) -> String {
    let (right, of, p) = (choice.right, people(choice.of as usize), chance(choice.chance));
    let other = title(tasting, 1 - own.min(1));
    let is_found = choice.chance <= tasting.risk;
    if let Some(alike) = choice.alike.filter(|alike| alike.is_so) {
        return format!(
            "Told from “{other}” by no more than {} of people, as a blind test of {} shows ({right} right answers).",
            percent(alike.tolerated),
            choice.of
        );
    }
    match choice.test {
        Test::Triangle | Test::DuoTrio => {
            let (test, found) = looked_for(choice.test);
            if is_found {
                format!("Told from “{other}” in a blind {test}: {right} of {of} {found}, {p}.")
            } else {
                format!(
                    "Not told from “{other}” in a blind {test} of {of} ({right} {found}, {p}), which is no proof that they are alike."
                )
            }
        }
        Test::PairedDirected | Test::PairedPreference if !is_found => {
            format!("No difference to “{other}” was found by {of} tasting blind, {p}.")
        }
        Test::PairedDirected | Test::PairedPreference if choice.favoured == Some(own) => {
            format!("{} by {right} of {of} tasting blind, {p}.", sentence(tasting, &[format!("“{other}”")]))
        }
        Test::PairedDirected | Test::PairedPreference => {
            format!("“{other}” {} this one: {right} of {of} tasting blind said so, {p}.", more_than(tasting))
        }
    }
}

/// The name of a test with a right answer, and what is right.
const fn looked_for(test: Test) -> (&'static str, &'static str) {
    match test {
        Test::Triangle => ("triangle test", "found the odd one"),
        _ => ("duo-trio test", "found the one like the reference"),
    }
}

/// A choice between two samples of the same formula.
fn between_both(tasting: &Tasting, choice: &Choice) -> String {
    let (right, of, p) = (choice.right, people(choice.of as usize), chance(choice.chance));
    let both = joined(&named(tasting, &[0, 1]));
    if let Some(alike) = choice.alike.filter(|alike| alike.is_so) {
        return format!(
            "{both} are told apart by no more than {} of people, as a blind test of {} shows ({right} right answers).",
            percent(alike.tolerated),
            choice.of
        );
    }
    let is_found = choice.chance <= tasting.risk;
    match (choice.test, choice.favoured) {
        (Test::Triangle | Test::DuoTrio, _) => {
            let (test, found) = looked_for(choice.test);
            if is_found {
                format!("In a blind {test} {both} were told apart: {right} of {of} {found}, {p}.")
            } else {
                format!(
                    "In a blind {test} of {of} {both} were not told apart ({right} {found}, {p}), which is no proof that they are alike."
                )
            }
        }
        (_, Some(favoured)) if is_found => {
            let (more, less) = (title(tasting, favoured), title(tasting, 1 - favoured.min(1)));
            format!("“{more}” {} “{less}”: {right} of {of} tasting blind said so, {p}.", more_than(tasting))
        }
        _ => format!("No difference between {both} was found by {of} tasting blind, {p}."),
    }
}

/// "Softer than “straight” and “poolish”".
fn sentence(tasting: &Tasting, others: &[String]) -> String {
    let more = more_than(tasting);
    capital(&format!("{} {}", more.strip_prefix("was ").unwrap_or(&more), joined(others)))
}

/// The titles of samples, in the order of the alphabet.
fn named(tasting: &Tasting, samples: &[usize]) -> Vec<String> {
    let mut names: Vec<String> = samples.iter().map(|sample| format!("“{}”", title(tasting, *sample))).collect();
    names.sort();
    names
}

/// "was softer than" of one, "were softer than" of several.
fn of_many(names: &[String], more_than: &str) -> String {
    if names.len() > 1 { more_than.replacen("was ", "were ", 1) } else { more_than.to_owned() }
}

/// The pairs that surely differ, by what each has more of: none, those of one sample, or the surest of several.
struct Surest {
    /// What the one sample has more of than these.
    less: Vec<usize>,
    /// What these have more of than the one sample.
    more: Vec<usize>,
    /// The surest pairs of several, the one with more of it first.
    pairs: Vec<(usize, usize)>,
}

/// Looks among pairs that surely differ, each with how sure it is: the more, the surer.
fn surest(of: &Of, sure: &[(usize, usize, f64)]) -> Surest {
    let mut found = Surest { less: Vec::new(), more: Vec::new(), pairs: Vec::new() };
    match of {
        Of::One(own) => {
            found.less.extend(sure.iter().filter(|(more, ..)| more == own).map(|(_, less, _)| *less));
            found.more.extend(sure.iter().filter(|(_, less, _)| less == own).map(|(more, ..)| *more));
        }
        Of::Several(made) => {
            let own = || sure.iter().filter(|(more, less, _)| made.contains(more) || made.contains(less));
            let most = own().map(|(.., sure)| *sure).fold(f64::NEG_INFINITY, f64::max);
            found.pairs.extend(own().filter(|(.., sure)| *sure >= most).map(|(more, less, _)| (*more, *less)));
        }
    }
    found
}

/// "“sponge of 16 hours” was softer than “sponge of 12 hours”", of every pair, in the order of the alphabet.
fn told_of(tasting: &Tasting, pairs: &[(usize, usize)], more_than: &str) -> String {
    let one = |(more, less): &(usize, usize)| format!("“{}” {more_than} “{}”", title(tasting, *more), title(tasting, *less));
    let mut all: Vec<String> = pairs.iter().map(one).collect();
    all.sort();
    joined(&all)
}

fn of_order(tasting: &Tasting, order: &Order, of: &Of) -> String {
    let (ranking, p) = (format!("blind ranking of {}", people(order.tasters)), chance(order.chance));
    let is_sure = |pair: &&Pair| pair.differ && order.chance <= tasting.risk;
    let sure: Vec<_> = order.pairs.iter().filter(is_sure).map(|pair| (pair.more, pair.less, pair.difference)).collect();
    let found = surest(of, &sure);
    match (of, found.less.is_empty(), found.more.is_empty()) {
        (Of::Several(_), ..) if !found.pairs.is_empty() => {
            format!("In a {ranking} {}, {p}.", told_of(tasting, &found.pairs, &more_than(tasting)))
        }
        (Of::Several(made), ..) => {
            format!("In a {ranking} no sure difference between {} was found, {p}.", joined(&named(tasting, made)))
        }
        (_, false, _) => format!("{} in a {ranking}, {p}.", sentence(tasting, &named(tasting, &found.less))),
        (_, true, false) => {
            let names = named(tasting, &found.more);
            format!("{} {} this one in a {ranking}, {p}.", joined(&names), of_many(&names, &more_than(tasting)))
        }
        (_, true, true) => format!("No sure difference to the others in a {ranking}, {p}."),
    }
}

fn of_points(tasting: &Tasting, scale: usize, points: &Points, of: &Of) -> String {
    let (by, p) = (format!("by {} tasting blind", people(points.tasters)), chance(points.chance));
    let attribute = tasting.attributes.get(scale).filter(|_| tasting.method == Method::Description);
    let differ = points.pairs.iter().filter(|pair| pair.differ);
    let sure: Vec<_> = differ.map(|pair| (pair.more, pair.less, -pair.chance.as_ratio())).collect();
    let found = surest(of, &sure);
    let more_than = attribute.map_or_else(|| more_than(tasting), |one| format!("was nearer to “{}” than", one.high));
    let (less, more) = (named(tasting, &found.less), named(tasting, &found.more));
    let words = match (of, attribute) {
        (Of::Several(_), _) if !found.pairs.is_empty() => format!("{} {by}, {p}.", told_of(tasting, &found.pairs, &more_than)),
        (Of::Several(made), _) => format!("no sure difference between {} {by}, {p}.", joined(&named(tasting, made))),
        (_, Some(one)) if !less.is_empty() => format!("nearer to “{}” than {} {by}, {p}.", one.high, joined(&less)),
        (_, None) if !less.is_empty() => format!("{} {by}, {p}.", sentence(tasting, &less)),
        _ if !more.is_empty() => format!("{} {} this one {by}, {p}.", joined(&more), of_many(&more, &more_than)),
        _ => format!("no sure difference to the others {by}, {p}."),
    };
    attribute.map_or_else(|| capital(&words), |one| format!("{}: {words}", one.title))
}
