//! Whether what raw data say of a seat can have been answered there.

use bench::tasting::{Sheet, Tasted, asked};
use formula::read::{Method, Tasting};
use std::collections::BTreeSet;

/// Something that there is a row of: the seat, the cup's place from 0, and the scale.
pub type Asked = (u32, usize, usize);

/// Why a seat's rows cannot be, if they cannot.
pub fn judge(tasting: &Tasting, sheet: &Sheet, given: &BTreeSet<Asked>) -> Result<(), String> {
    let seat = sheet.seat;
    served(tasting, sheet)?;
    for (place, cup) in sheet.cups.iter().enumerate() {
        for (scale, name) in asked(tasting).iter().enumerate() {
            if !given.contains(&(seat, place, scale)) {
                let code = cup.code;
                return Err(format!("seat {seat} has no row for “{name}” of {code}; a missing answer is a row without one"));
            }
        }
    }
    let missing = sheet.cups.iter().filter(|cup| cup.answers.iter().any(Option::is_none)).count();
    if tasting.method.is_scored() || missing == sheet.cups.len() {
        return Ok(());
    }
    if missing > 0 {
        return Err(format!("seat {seat} has answered of some cups and not of others: it is one answer, all of it or none"));
    }
    let answers: Vec<u32> = sheet.cups.iter().filter_map(|cup| cup.answers.first().copied().flatten()).collect();
    if tasting.method == Method::Ranking {
        return ranked(tasting, seat, &answers);
    }
    match answers.iter().filter(|answer| **answer == 1).count() {
        1 => Ok(()),
        chosen => Err(format!("seat {seat} chose {chosen} cups: it is one with 1, the others with 0")),
    }
}

/// Ranks from 1 on, each once; where two share one, the next is left out.
fn ranked(tasting: &Tasting, seat: u32, ranks: &[u32]) -> Result<(), String> {
    let told = ranks.iter().map(u32::to_string).collect::<Vec<_>>().join(", ");
    let before = |rank: u32| ranks.iter().filter(|other| **other < rank).count() as u32;
    let is_tied = |rank: u32| ranks.iter().filter(|other| **other == rank).count() > 1;
    if !tasting.ties && ranks.iter().any(|rank| is_tied(*rank)) {
        return Err(format!("seat {seat} has the ranks {told}: no two may share one in this tasting"));
    }
    if ranks.iter().all(|rank| *rank == before(*rank) + 1) {
        return Ok(());
    }
    Err(format!("seat {seat} has the ranks {told}: they go from 1 to {} without a gap", ranks.len()))
}

/// What stands at a seat: the cups of its method.
fn served(tasting: &Tasting, sheet: &Sheet) -> Result<(), String> {
    let seat = sheet.seat;
    let times = |sample: usize| sheet.cups.iter().filter(|cup: &&Tasted| cup.sample == sample).count();
    let mut served: Vec<usize> = (0..tasting.samples.len()).map(times).collect();
    served.sort_unstable();
    let is_served = match tasting.method {
        Method::Triangle => served == [1, 2],
        _ => served.iter().all(|times| *times == 1),
    };
    if !is_served {
        let wanted = if tasting.method == Method::Triangle { "one of them and two of the other" } else { "each sample once" };
        return Err(format!("seat {seat} has other cups than a tasting by {}: {wanted}", tasting.method.word()));
    }
    match (tasting.method == Method::DuoTrio, sheet.reference) {
        (true, None) => Err(format!("seat {seat} has no reference: a row of place 0 names it")),
        (false, Some(_)) => Err(format!("seat {seat} has a reference, which only a duo-trio has")),
        _ => Ok(()),
    }
}
