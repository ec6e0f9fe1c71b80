//! Ballots of paper, typed: a line each, the seat and what stands on it.

use super::seat::{agree, at_seat, record_answer};
use super::{Held, now, word};
use crate::failure::Failure;
use bench::tasting::items;
use store::{Kept, Store};

/// How a line is written.
pub const HOW: &str = "write seat,answers: 7,543 271 118";

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

/// Takes ballots down, whose tasters have ticked to agree, and says what became of them.
pub async fn enter(store: &Store, held: &Held, ballots: &[(u32, String)]) -> Result<String, Failure> {
    let (mut new, mut corrected, mut already) = (0, 0, 0);
    for (number, answers) in ballots {
        let at = at_seat(store, held, held.seat(*number)?.1).await?;
        let of_seat = |failure: Failure| Failure::new(format!("seat {number}: {failure}"));
        agree(store, &at, now()).await.map_err(of_seat)?;
        let asked = items(&held.tasting, &at.seat);
        let single = asked.first().filter(|_| !held.tasting.method.is_scored());
        let given: Vec<(&str, &str)> = match single {
            Some((item, _)) => vec![(item.as_str(), answers.as_str())],
            None => answers.split_whitespace().map(|one| one.split_once('=').unwrap_or((one, ""))).collect(),
        };
        for (item, value) in given {
            match record_answer(store, &at, (item, value), &word()?, now()).await.map_err(of_seat)? {
                Kept::New => new += 1,
                Kept::Corrected => corrected += 1,
                Kept::Already => already += 1,
            }
        }
    }
    let mut told = vec![format!("{new} {} kept", if new == 1 { "answer" } else { "answers" })];
    told.extend((corrected > 0).then(|| format!("{corrected} corrected (what stood there before is kept)")));
    told.extend((already > 0).then(|| format!("{already} there already")));
    Ok(format!("{}.", told.join(", ")))
}
