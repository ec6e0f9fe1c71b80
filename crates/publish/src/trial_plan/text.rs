//! A plan for a trial in words.

use super::{Laid, name, product};
use crate::words::wrap;
use bench::trial::{Batch, Kind, Plan, Test};
use quantity::print;

/// The plan, lines broken at the width.
#[must_use]
pub fn text(laid: &Laid, width: usize) -> String {
    let plan = laid.plan;
    let names: Vec<&str> = plan.factors.iter().map(|factor| factor.name.as_str()).collect();
    let title = format!("A trial of {}", names.join(", "));
    let mut out = format!("{title}\n{}\n\n", "═".repeat(title.chars().count()));
    out.push_str(&wrap(&made_up(plan), width));
    for (number, day) in plan.days.iter().enumerate() {
        out.push_str(&format!("\nDay {}\n", number + 1));
        for (place, batch) in day.iter().enumerate() {
            out.push_str(&format!("{:>4}. bowl {}: {}\n", place + 1, batch.code, levels(plan, batch)));
        }
    }
    out.push_str(&wrap(
        &format!(
            "\nBake in this order, which is random (seed {}), and change nothing else. Write the numbers on the bowls and keep this list from whoever tastes.",
            plan.seed
        ),
        width,
    ));
    out.push_str(&wrap(&format!("\n{}", tasting(laid)), width));
    out
}

/// The levels of a batch: "dose 1 %, hydration 65 %".
fn levels(plan: &Plan, batch: &Batch) -> String {
    let one = |(factor, level): (&bench::trial::Factor, &usize)| {
        format!("{} {}", factor.name, factor.levels.get(*level).map_or("", String::as_str))
    };
    plan.factors.iter().zip(&batch.levels).map(one).collect::<Vec<_>>().join(", ")
}

/// How the plan is made up, what it tells and what it does not.
pub(super) fn made_up(plan: &Plan) -> String {
    let batches: usize = plan.days.iter().map(Vec::len).sum();
    let days = if plan.days.len() == 1 { "one day".to_owned() } else { format!("{} days", plan.days.len()) };
    let head = format!("{batches} batches on {days}");
    match &plan.kind {
        Kind::CompleteDays { times: 1 } => {
            format!("{head}: every combination each day, so that no day favours any (complete blocks).")
        }
        Kind::CompleteDays { times } => {
            format!("{head}: every combination {times} times each day, so that no day favours any (complete blocks).")
        }
        Kind::Confounded { with_the_day, times } => {
            let given_up: Vec<String> = with_the_day.iter().map(|factors| product(plan, factors)).collect();
            let times = if *times == 1 { "once".to_owned() } else { format!("{times} times") };
            let pairs = with_the_day.iter().any(|factors| factors.len() == 2);
            let warning = if pairs { " If you care for such a pair, bake more a day." } else { "" };
            format!(
                "{head}: every combination {times}. The days are blocks: what each factor does alone is told whatever the day was like; only {} cannot be told from the day.{warning} Blocks by defining contrasts: Montgomery & Runger (2003), § 14-8.",
                given_up.join(" and ")
            )
        }
        Kind::BalancedPairs { each, together } => format!(
            "{head}: each combination on {each} days, and each two together on {}, so that every comparison is equally sharp (balanced incomplete blocks: Cochran & Cox 1957, chapter 11).",
            if *together == 1 { "one".to_owned() } else { together.to_string() }
        ),
        Kind::EvenDays { is_even } => format!("{head}: every combination once. {}", even(*is_even)),
        Kind::Part { fraction, is_even } => {
            let chosen: Vec<String> = fraction
                .generators
                .iter()
                .map(|(factor, of)| format!("{} as {}", product(plan, &[*factor]), product(plan, of)))
                .collect();
            let mut words = format!(
                "{head}, a part of all {} combinations: {} (a fractional factorial of resolution {}; Box, Hunter & Hunter 1978). {}",
                1_usize << plan.factors.len(),
                chosen.join(", "),
                roman(fraction.resolution),
                mixed_up(plan, &fraction.alike, fraction.resolution)
            );
            if let Some(is_even) = is_even {
                words.push_str(&format!(" {}", even(*is_even)));
            }
            words
        }
    }
}

const fn even(is_even: bool) -> &'static str {
    if is_even {
        "Each day sees every level as often as its size allows, so that a good day favours no level."
    } else {
        "The days could not be made even: a good day favours some levels, so repeat one batch every day to see how days differ."
    }
}

fn mixed_up(plan: &Plan, alike: &[[Vec<usize>; 2]], resolution: usize) -> String {
    let shown: Vec<String> =
        alike.iter().take(7).map(|[one, other]| format!("{} looks like {}", product(plan, one), product(plan, other))).collect();
    let more = if alike.len() > shown.len() { format!(", and {} more", alike.len() - shown.len()) } else { String::new() };
    match resolution {
        3 => format!(
            "What a factor does alone is mixed up with pairs of others: {}{more}. Good for finding which factor matters at all.",
            shown.join(", ")
        ),
        4 => {
            format!("What each factor does alone is told apart; pairs are mixed up among themselves: {}{more}.", shown.join(", "))
        }
        _ => "What each factor does alone, and each pair, is told apart.".to_owned(),
    }
}

const fn roman(resolution: usize) -> &'static str {
    match resolution {
        3 => "III",
        4 => "IV",
        5 => "V",
        6 => "VI",
        _ => "VII",
    }
}

/// The panel in words, with the limits of what it can tell.
pub(super) fn tasting(laid: &Laid) -> String {
    let question = &laid.question;
    let percent = |share| print::percent(share, 0);
    let wanted =
        format!("a {}, at {} risk of seeing a difference that is none", name(question.test), percent(question.significance));
    match laid.panel {
        Some(panel) => format!(
            "Tasting, two bowls at a time{}: {wanted}. To see a difference that {} of people truly tell, {} of the time, takes {} tasters, each one answer; with {} every serving order is used equally often. Evidence is then {}, and {} such panels in 100 would miss it. Say before tasting what is in it (allergens, alcohol), and cook through what holds raw egg or flour.",
            pairs(laid.plan),
            percent(question.tell),
            percent(question.power),
            panel.fewest,
            panel.tasters,
            evidence(question.test, panel.right, panel.tasters),
            print::number(100.0 * panel.power.left().as_ratio(), 0),
        ),
        None => format!(
            "Tasting: {wanted}. A difference that {} of people tell is too small to be seen {} of the time by any panel of up to two thousand: choose a larger difference, or fewer demands.",
            percent(question.tell),
            percent(question.power)
        ),
    }
}

/// Which two bowls, where each day has no more than two.
fn pairs(plan: &Plan) -> String {
    let pair = |day: &Vec<Batch>| match &day[..] {
        [one, other] => Some(format!("{} and {}", one.code, other.code)),
        _ => None,
    };
    let pairs: Option<Vec<String>> = plan.days.iter().map(pair).collect();
    pairs.filter(|pairs| !pairs.is_empty()).map(|pairs| format!(" ({})", pairs.join("; "))).unwrap_or_default()
}

fn evidence(test: Test, right: u32, of: u32) -> String {
    match test {
        Test::Triangle | Test::DuoTrio => format!("{right} right answers of {of} or more"),
        Test::PairedDirected => format!("{right} answers of {of} or more for the bowl that was expected"),
        Test::PairedPreference => format!("{right} answers of {of} or more for one and the same bowl"),
    }
}
