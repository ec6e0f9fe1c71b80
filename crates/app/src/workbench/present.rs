//! Who is there: which formula each of those who look on has before them.

use std::collections::BTreeMap;
use std::sync::{Mutex, MutexGuard, PoisonError};

/// Everyone who looks on just now.
#[derive(Debug, Default)]
pub struct Present(Mutex<Seats>);

#[derive(Debug, Default)]
struct Seats {
    next: u64,
    taken: BTreeMap<u64, Seat>,
}

/// Somebody before a page.
#[derive(Clone, Debug)]
pub struct Seat {
    /// The formula; empty for another page.
    pub at: String,
    /// Whose session it is.
    pub session: String,
    /// How others see them.
    pub name: String,
}

impl Present {
    /// Takes a seat and gives its number.
    pub fn sit(&self, seat: Seat) -> u64 {
        let mut seats = self.seats();
        seats.next += 1;
        let number = seats.next;
        seats.taken.insert(number, seat);
        number
    }

    /// Leaves a seat.
    pub fn rise(&self, number: u64) {
        self.seats().taken.remove(&number);
    }

    /// The others: before a formula, who else has it before them; before another page, who is at which formula.
    /// Somebody with two windows is one.
    pub fn others(&self, than: &Seat) -> Vec<String> {
        let seats = self.seats();
        let others = seats.taken.values().filter(|seat| seat.session != than.session && !seat.at.is_empty());
        let near = others.filter(|seat| than.at.is_empty() || seat.at == than.at);
        let one_each: BTreeMap<(&str, &str), &Seat> =
            near.map(|seat| ((seat.session.as_str(), seat.at.as_str()), seat)).collect();
        let told = |seat: &&Seat| if than.at.is_empty() { format!("{} at {}", seat.name, seat.at) } else { seat.name.clone() };
        one_each.values().map(told).collect()
    }

    fn seats(&self) -> MutexGuard<'_, Seats> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn others_are_told_once_and_no_longer_than_they_stay() {
        let present = Present::default();
        let seat = |at: &str, name: &str| Seat { at: at.to_owned(), session: name.to_lowercase(), name: name.to_owned() };
        let ada = seat("rye", "Ada");
        present.sit(ada.clone());
        assert!(present.others(&ada).is_empty());
        let first = present.sit(seat("rye", "Ben"));
        let second = present.sit(seat("rye", "Ben"));
        present.sit(seat("wheat", "Cy"));
        assert_eq!(present.others(&ada), ["Ben"]);
        assert_eq!(present.others(&seat("", "Dan")), ["Ada at rye", "Ben at rye", "Cy at wheat"]);
        present.rise(first);
        assert_eq!(present.others(&ada), ["Ben"]);
        present.rise(second);
        assert!(present.others(&ada).is_empty());
    }
}
