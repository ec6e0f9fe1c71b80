//! What a seat is asked, item by item, and whether an answer is one.

use super::lay::Seat;
use formula::read::{Method, Tasting};
use std::fmt;

/// Something that a seat is asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Item {
    /// Which of its cups.
    Choose,
    /// In which order all of its cups.
    Order,
    /// How many points for a cup, from 1 to 9, on a scale: the cup's place, from 0, and the scale's.
    Score {
        /// The cup.
        cup: usize,
        /// The scale.
        scale: usize,
    },
}

/// Why an answer is none.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Wrong {
    /// The seat is not asked that.
    NotAsked,
    /// A code that does not stand there.
    NoSuchCup(String),
    /// One cup is to be chosen.
    NotOne,
    /// Every cup is to be ranked, once.
    NotAll,
    /// Two share a rank where each must have its own.
    Tied,
    /// Points from 1 to 9 are to be given.
    NotPoints,
}

impl fmt::Display for Wrong {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotAsked => f.write_str("that is not asked at this seat"),
            Self::NoSuchCup(code) => write!(f, "no cup {code} stands at this seat"),
            Self::NotOne => f.write_str("one cup is to be chosen, even by a guess"),
            Self::NotAll => f.write_str("every cup is to be named once"),
            Self::Tied => f.write_str("no two may share a rank in this tasting: decide, even by a guess"),
            Self::NotPoints => f.write_str("points are whole numbers from 1 to 9"),
        }
    }
}

/// What the answers are called: a choice, a rank, points, or one for each attribute.
#[must_use]
pub fn asked(tasting: &Tasting) -> Vec<&str> {
    match tasting.method {
        Method::Ranking => vec!["rank"],
        Method::Liking => vec!["points"],
        Method::Description => tasting.attributes.iter().map(|one| one.name.value.as_str()).collect(),
        Method::Triangle | Method::DuoTrio | Method::Paired | Method::Preference => vec!["chosen"],
    }
}

/// What a seat is asked, in order, each under the name by which its answer is kept: "chosen", "rank", "271",
/// "271.softness".
#[must_use]
pub fn items(tasting: &Tasting, seat: &Seat) -> Vec<(String, Item)> {
    let scored = || seat.cups.iter().enumerate();
    match tasting.method {
        Method::Ranking => vec![("rank".to_owned(), Item::Order)],
        Method::Liking => scored().map(|(cup, one)| (one.code.to_string(), Item::Score { cup, scale: 0 })).collect(),
        Method::Description => {
            let scales = || tasting.attributes.iter().enumerate();
            let item = |cup: usize, code: u16| {
                scales().map(move |(scale, one)| (format!("{code}.{}", one.name.value), Item::Score { cup, scale }))
            };
            scored().flat_map(|(cup, one)| item(cup, one.code)).collect()
        }
        Method::Triangle | Method::DuoTrio | Method::Paired | Method::Preference => vec![("chosen".to_owned(), Item::Choose)],
    }
}

/// Reads an answer: for each cup that it tells of, its place, the scale, and the figure: 1 for the chosen one and 0
/// for the others, a rank (shared ones the same), or points.
///
/// # Errors
/// [`Wrong`] says why it is none.
pub fn read(tasting: &Tasting, seat: &Seat, item: &str, value: &str) -> Result<Vec<(usize, usize, u32)>, Wrong> {
    let items = items(tasting, seat);
    let (_, item) = items.iter().find(|(name, _)| name == item).ok_or(Wrong::NotAsked)?;
    match item {
        Item::Choose => {
            let chosen = cup(seat, value.trim()).map_err(|_| Wrong::NotOne)?;
            Ok((0..seat.cups.len()).map(|cup| (cup, 0, u32::from(cup == chosen))).collect())
        }
        Item::Order => ranked(tasting, seat, value),
        Item::Score { cup, scale } => {
            let points = value.trim().parse().ok().filter(|points| (1..=9).contains(points)).ok_or(Wrong::NotPoints)?;
            Ok(vec![(*cup, *scale, points)])
        }
    }
}

/// "271 543=118": the first has most of it; those joined by = share their rank.
fn ranked(tasting: &Tasting, seat: &Seat, value: &str) -> Result<Vec<(usize, usize, u32)>, Wrong> {
    let mut ranks: Vec<(usize, usize, u32)> = Vec::new();
    for group in value.split_whitespace() {
        let rank = ranks.len() as u32 + 1;
        for code in group.split('=') {
            let cup = cup(seat, code)?;
            if ranks.iter().any(|(other, ..)| *other == cup) {
                return Err(Wrong::NotAll);
            }
            ranks.push((cup, 0, rank));
        }
        if ranks.len() as u32 > rank && !tasting.ties {
            return Err(Wrong::Tied);
        }
    }
    if ranks.len() == seat.cups.len() { Ok(ranks) } else { Err(Wrong::NotAll) }
}

fn cup(seat: &Seat, code: &str) -> Result<usize, Wrong> {
    seat.cups.iter().position(|cup| cup.code.to_string() == code).ok_or_else(|| Wrong::NoSuchCup(code.to_owned()))
}
