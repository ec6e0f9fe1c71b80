//! Tables are laid evenly: every order equally often, codes that repeat and tell nothing.

use crate::tasting;
use bench::tasting::{Cup, Seat, advise, block, lay};
use formula::read::Method;
use proptest::prelude::*;
use std::collections::{BTreeMap, BTreeSet};

proptest! {
    /// Williams (1949): each sample equally often in each place and after each other one, whatever the seed.
    #[test]
    fn orders_are_balanced(samples in 2_usize..=8, rounds in 1_usize..=4, seed: u64, liking: bool) {
        let method = if liking || samples < 3 { Method::Liking } else { Method::Ranking };
        let seats = lay(method, samples, block(method, samples) * rounds, seed);
        let mut places: BTreeMap<(usize, usize), usize> = BTreeMap::new();
        let mut after: BTreeMap<(usize, usize), usize> = BTreeMap::new();
        for seat in &seats {
            let order: Vec<usize> = seat.cups.iter().map(|cup| cup.sample).collect();
            let all: BTreeSet<usize> = order.iter().copied().collect();
            prop_assert_eq!(all.len(), samples);
            for (place, sample) in order.iter().enumerate() {
                *places.entry((*sample, place)).or_default() += 1;
            }
            order.windows(2).for_each(|two| *after.entry((two[0], two[1])).or_default() += 1);
        }
        let each: BTreeSet<usize> = places.values().copied().collect();
        prop_assert_eq!((places.len(), each.len()), (samples * samples, 1));
        let each: BTreeSet<usize> = after.values().copied().collect();
        prop_assert_eq!((after.len(), each.len()), (samples * (samples - 1), 1));
    }

    /// ISO 4120: six orders, once for every six tasters. ISO 10399 and ISO 5495: every reference and place alike.
    #[test]
    fn choices_are_balanced(rounds in 1_usize..=6, seed: u64) {
        for (method, orders) in [(Method::Triangle, 6), (Method::DuoTrio, 4), (Method::Paired, 2), (Method::Preference, 2)] {
            let mut served: BTreeMap<(Option<usize>, Vec<usize>), usize> = BTreeMap::new();
            for seat in lay(method, 2, orders * rounds, seed) {
                *served.entry((seat.reference, seat.cups.iter().map(|cup| cup.sample).collect())).or_default() += 1;
            }
            prop_assert_eq!(served.len(), orders);
            prop_assert!(served.values().all(|times| *times == rounds));
        }
    }

    /// Codes have three figures; none repeats in a room, and none looks like more than a number.
    #[test]
    fn codes_tell_nothing(seats in 1_usize..=120, samples in 3_usize..=7, seed: u64) {
        let table = lay(Method::Ranking, samples, seats, seed);
        let codes: Vec<u16> = table.iter().flat_map(|seat| seat.cups.iter().map(|cup| cup.code)).collect();
        let different: BTreeSet<u16> = codes.iter().copied().collect();
        prop_assert_eq!(different.len(), codes.len());
        for code in codes {
            let (a, b, c) = (code / 100, code / 10 % 10, code % 10);
            prop_assert!((1..=9).contains(&a) && !(a == b && b == c) && code % 100 != 0, "{}", code);
            let is_run = (b == a + 1 && c == b + 1) || (a == b + 1 && b == c + 1);
            prop_assert!(!is_run, "{}", code);
        }
        prop_assert_eq!(&table, &lay(Method::Ranking, samples, seats, seed), "the same seed gives the same table");
    }
}

/// A room with more cups than codes: each seat's own codes differ.
#[test]
fn a_large_room_has_different_codes_at_each_seat() {
    let table = lay(Method::Liking, 8, 500, 3);
    assert_eq!(table.len(), 500);
    for seat in &table {
        let different: BTreeSet<u16> = seat.cups.iter().map(|cup| cup.code).collect();
        assert_eq!(different.len(), 8);
    }
    let codes = |seat: &Seat| seat.cups.iter().map(|cup: &Cup| cup.code).collect::<Vec<_>>();
    assert_ne!(codes(&table[0]), codes(&table[110]));
}

/// ISO 4120, number of assessors, recomputed exactly: 40 for a power of 80 % where 30 % tell it; rounded up to sixes.
#[test]
fn the_panel_that_is_advised() {
    let advice = advise(&tasting("triangle", 2, "tell = \"30 %\"")).expect("a panel");
    assert_eq!((advice.fewest, advice.seats), (40, 42));
    let advice = advise(&tasting("liking", 2, "apart = 1")).expect("a panel");
    // Cohen (1988): 34 for half a standard deviation; pairs of orders.
    assert_eq!((advice.fewest, advice.seats), (34, 34));
    assert!(advise(&tasting("triangle", 2, "tell = \"2 %\"")).is_none());
    let alike = advise(&tasting("triangle", 2, "alike = \"30 %\"")).expect("a panel");
    assert!(alike.fewest >= 30 && alike.seats.is_multiple_of(6) && alike.power.as_percent() >= 80.0, "{alike:?}");
}

/// Where a duo-trio's last block is not used up, references are as many of each as can be.
#[test]
fn references_take_turns() {
    for seed in 0..50 {
        for seats in 1..=13 {
            let table = lay(formula::read::Method::DuoTrio, 2, seats, seed);
            let of = |sample: usize| table.iter().filter(|seat| seat.reference == Some(sample)).count();
            assert!(of(0).abs_diff(of(1)) <= 1, "{seats} seats: {} and {}", of(0), of(1));
        }
    }
}
