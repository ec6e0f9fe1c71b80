//! A seat and its taster: what is shown next, and what is kept of an answer. Pages and ballots both come through here.

use super::{Held, of_sitting};
use crate::failure::Failure;
use crate::memory::told;
use bench::tasting::{Item, Seat, items, read};
use jiff::Timestamp;
use std::collections::BTreeMap;
use store::{Answering, Kept, Store};

/// Somebody at a seat: what that seat may know, and nothing of the others.
pub struct AtSeat {
    /// The tasting.
    pub tasting: formula::read::Tasting,
    /// The sitting and the seat.
    pub number: (i64, i64),
    /// What stands there; what is in the cups is not for its taster's eyes.
    pub seat: Seat,
    /// Whether its taster agreed.
    pub has_agreed: bool,
    /// Whether its answers were removed.
    pub is_forgotten: bool,
    /// Whether the tasting is closed.
    pub is_closed: bool,
    /// What it answered so far, the last word on each item.
    pub answers: BTreeMap<String, String>,
}

/// What a taster sees next.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Screen {
    /// The tasting is over.
    Closed,
    /// This seat's answers were removed.
    Forgotten,
    /// What is in it, and whether the taster agrees.
    Consent,
    /// A cup, by its place, with what is asked of it: nothing where it is only tasted.
    Cup {
        /// The cup.
        cup: usize,
        /// The items asked of it.
        items: Vec<String>,
    },
    /// One of all cups is to be chosen.
    Choose,
    /// All cups are to be put in order.
    Order,
    /// Everything is answered.
    Done,
}

/// The seat that a link's word leads to, if it leads anywhere.
pub async fn seat_by_word(store: &Store, word: &str) -> Result<Option<AtSeat>, Failure> {
    let Some((sitting, seat)) = store.seat_of(word).await.map_err(told)? else { return Ok(None) };
    let held = of_sitting(store, sitting).await?;
    at_seat(store, &held, seat.number).await.map(Some)
}

/// A seat of a sitting, by its number.
pub async fn at_seat(store: &Store, held: &Held, number: i64) -> Result<AtSeat, Failure> {
    let place = held.kept.iter().position(|seat| seat.number == number);
    let Some((kept, seat)) = place.and_then(|place| Some((held.kept.get(place)?, held.seats.get(place)?))) else {
        return Err(Failure::new(format!("there is no seat {number}")));
    };
    let number = (held.sitting.number, number);
    let answers = store.answers_at(number).await.map_err(told)?;
    Ok(AtSeat {
        tasting: held.tasting.clone(),
        number,
        seat: seat.clone(),
        has_agreed: kept.agreed.is_some(),
        is_forgotten: kept.forgotten.is_some(),
        is_closed: held.sitting.closed.is_some(),
        // Corrections come after what they correct.
        answers: answers.into_iter().map(|one| (one.item, one.value)).collect(),
    })
}

impl AtSeat {
    /// Every screen of the seat in order, from agreeing to the end.
    pub fn screens(&self) -> Vec<Screen> {
        let mut screens = vec![Screen::Consent];
        let asked = items(&self.tasting, &self.seat);
        let of_cup = |cup: usize| {
            let own = asked.iter().filter(move |(_, item)| matches!(item, Item::Score { cup: of, .. } if *of == cup));
            own.map(|(name, _)| name.clone()).collect::<Vec<_>>()
        };
        screens.extend((0..self.seat.cups.len()).map(|cup| Screen::Cup { cup, items: of_cup(cup) }));
        screens.extend(asked.iter().find_map(|(_, item)| match item {
            Item::Choose => Some(Screen::Choose),
            Item::Order => Some(Screen::Order),
            Item::Score { .. } => None,
        }));
        screens.push(Screen::Done);
        screens
    }

    /// What its taster sees next: the first screen that is not answered. Cups that are only tasted are left to the page.
    pub fn next_screen(&self) -> Screen {
        match () {
            () if self.is_forgotten => Screen::Forgotten,
            () if self.is_closed => Screen::Closed,
            () if !self.has_agreed => Screen::Consent,
            () => {
                let is_open = |item: &str| !self.answers.contains_key(item);
                let is_next = |screen: &Screen| match screen {
                    Screen::Cup { items, .. } => items.iter().any(|item| is_open(item)),
                    Screen::Choose => is_open("chosen"),
                    Screen::Order => is_open("rank"),
                    Screen::Done => true,
                    Screen::Consent | Screen::Closed | Screen::Forgotten => false,
                };
                self.screens().into_iter().find(is_next).unwrap_or(Screen::Done)
            }
        }
    }
}

/// Notes that the taster at a seat read the notice and agrees.
pub async fn agree(store: &Store, at: &AtSeat, now: Timestamp) -> Result<(), Failure> {
    store.agree(at.number, now).await.map_err(told)
}

/// Keeps an answer, once, if it is one.
pub async fn record_answer(
    store: &Store,
    at: &AtSeat,
    (item, value): (&str, &str),
    client: &str,
    now: Timestamp,
) -> Result<Kept, Failure> {
    read(&at.tasting, &at.seat, item, value).map_err(|wrong| Failure::new(wrong.at(at.number.1)))?;
    if client.is_empty() || client.len() > 100 {
        return Err(Failure::new("an answer is sent under a name of 1 to 100 letters"));
    }
    let value = spaced(value);
    let answering = Answering { seat: at.number, item, value: &value, client, at: now };
    store.answer(&answering).await.map_err(told)
}

/// An answer as it is kept: a space between two words.
pub fn spaced(value: &str) -> String {
    value.split_whitespace().collect::<Vec<_>>().join(" ")
}
