//! Ballots of paper, typed: a line each, the seat and what stands on it.

use super::seat::{AtSeat, at_seat, spaced};
use super::{Held, now, word};
use crate::failure::Failure;
use crate::memory::told;
use bench::tasting::{Wrong, items, read as read_answer};
use store::{Answering, Kept, Store};

/// How a line is written.
pub const HOW: &str = "write seat,answers: 7,543 271 118";
/// So many lines that are none are told; the rest is counted.
const MOST: usize = 5;

/// Reads ballots, a line each; a first line of headings is passed over.
pub fn read(text: &str) -> Result<Vec<(u32, String)>, Failure> {
    let is_row = |(at, line): &(usize, &str)| !line.trim().is_empty() && (*at > 0 || !line.starts_with("seat"));
    let rows = text.lines().enumerate().filter(is_row);
    let row = |(at, line): (usize, &str)| {
        let (seat, answers) = line.split_once(',').unwrap_or((line, ""));
        let seat = seat.trim().parse().map_err(|_| Failure::new(format!("row {} has no seat: “{line}”", at + 1)).hint(HOW))?;
        Ok((seat, answers.trim().trim_matches('"').to_owned()))
    };
    rows.map(row).collect()
}

/// An answer that a ballot gives: what it answers, and with what.
type Given = (String, String);

/// Takes ballots down, all or none of them, whose tasters have ticked to agree, and says what became of them.
pub async fn enter(store: &Store, held: &Held, ballots: &[(u32, String)]) -> Result<String, Failure> {
    if held.sitting.closed.is_some() {
        return Err(Failure::new("the tasting is closed: no ballot is taken any more"));
    }
    let (mut taken, mut wrong) = (Vec::new(), Vec::new());
    for (number, answers) in ballots {
        let at = match held.seat(*number) {
            Ok((_, seat)) => at_seat(store, held, seat).await?,
            Err(none) => {
                let (why, seats) = none.words();
                wrong.push(format!("{why} ({seats})"));
                continue;
            }
        };
        match given(&at, answers) {
            Ok(given) => taken.push((at.number, given)),
            Err(why) => wrong.push(why),
        }
    }
    if !wrong.is_empty() {
        return Err(Failure::new(format!("{}. Nothing was kept", listed(&wrong))));
    }
    let mut all = Vec::new();
    for (seat, given) in &taken {
        for (item, value) in given {
            all.push((*seat, item, value, word()?));
        }
    }
    let at = now();
    let answers: Vec<Answering<'_>> =
        all.iter().map(|(seat, item, value, client)| Answering { seat: *seat, item, value, client, at }).collect();
    let kept = store.answer_all(&answers).await.map_err(|fault| Failure::new(format!("{}. Nothing was kept", told(fault))))?;
    let count = |what: Kept| kept.iter().filter(|one| **one == what).count();
    let (new, corrected, already) = (count(Kept::New), count(Kept::Corrected), count(Kept::Already));
    let mut words = vec![format!("{new} {} kept", if new == 1 { "answer" } else { "answers" })];
    words.extend((corrected > 0).then(|| format!("{corrected} corrected (what stood there before is kept)")));
    words.extend((already > 0).then(|| format!("{already} there already")));
    Ok(format!("{}.", words.join(", ")))
}

/// What a ballot says, item by item, or why it says nothing.
fn given(at: &AtSeat, answers: &str) -> Result<Vec<Given>, String> {
    let seat = at.number.1;
    let asked = items(&at.tasting, &at.seat);
    let single = asked.first().filter(|_| !at.tasting.method.is_scored());
    let given: Vec<Given> = match single {
        Some((item, _)) => vec![(item.clone(), spaced(answers))],
        None => answers.split_whitespace().map(|one| one.split_once('=').unwrap_or((one, ""))).map(owned).collect(),
    };
    if given.is_empty() {
        return Err(format!("seat {seat}: nothing stands on the ballot"));
    }
    for (item, value) in &given {
        read_answer(&at.tasting, &at.seat, item, value).map_err(|wrong| match wrong {
            Wrong::NotAsked | Wrong::NoSuchCup(..) => wrong.at(seat),
            _ => format!("seat {seat}: {wrong}"),
        })?;
    }
    Ok(given)
}

fn owned((item, value): (&str, &str)) -> Given {
    (item.to_owned(), value.to_owned())
}

/// What is wrong, the first few of it.
fn listed(wrong: &[String]) -> String {
    let more = wrong.len().saturating_sub(MOST);
    let told = wrong.iter().take(MOST).map(String::as_str).collect::<Vec<_>>().join("; ");
    if more > 0 { format!("{told}; and {more} more") } else { told }
}
