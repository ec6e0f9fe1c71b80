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
    /// A code that does not stand there, and those that do.
    NoSuchCup(String, Vec<u16>),
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
        f.write_str(&self.told("this seat"))
    }
}

impl Wrong {
    /// Why the answer of a seat is none.
    #[must_use]
    pub fn at(&self, seat: impl fmt::Display) -> String {
        self.told(&format!("seat {seat}"))
    }

    fn told(&self, seat: &str) -> String {
        match self {
            Self::NotAsked => format!("that is not asked at {seat}"),
            Self::NoSuchCup(code, there) => {
                let codes: Vec<String> = there.iter().map(u16::to_string).collect();
                format!("no cup {code} stands at {seat}; there stand {}", codes.join(", "))
            }
            Self::NotOne => "one cup is to be chosen, even by a guess".to_owned(),
            Self::NotAll => "every cup is to be named once".to_owned(),
            Self::Tied => "no two may share a rank in this tasting: decide, even by a guess".to_owned(),
            Self::NotPoints => "points are whole numbers from 1 to 9".to_owned(),
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
    let (_, item) = items.iter().find(|(name, _)| name == item).ok_or_else(|| not_asked(seat, item))?;
    match item {
        Item::Choose => {
            let mut codes = value.split_whitespace();
            let (Some(code), None) = (codes.next(), codes.next()) else { return Err(Wrong::NotOne) };
            let chosen = cup(seat, code)?;
            Ok((0..seat.cups.len()).map(|cup| (cup, 0, u32::from(cup == chosen))).collect())
        }
        Item::Order => ranked(tasting, seat, value),
        Item::Score { cup, scale } => {
            let points = value.trim().parse().ok().filter(|points| (1..=9).contains(points)).ok_or(Wrong::NotPoints)?;
            Ok(vec![(*cup, *scale, points)])
        }
    }
}

/// Why something is not asked: points of a cup that does not stand there, or anything else.
fn not_asked(seat: &Seat, item: &str) -> Wrong {
    let code = item.split('.').next().unwrap_or_default();
    let is_code = !code.is_empty() && code.bytes().all(|letter| letter.is_ascii_digit());
    match cup(seat, code) {
        Err(no_such) if is_code => no_such,
        _ => Wrong::NotAsked,
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
    seat.cups
        .iter()
        .position(|cup| cup.code.to_string() == code)
        .ok_or_else(|| Wrong::NoSuchCup(code.to_owned(), seat.cups.iter().map(|cup| cup.code).collect()))
}
