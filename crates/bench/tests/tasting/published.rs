//! Published examples, entered as answers at laid seats. Sources and values: `crates/science/reference/sensory`.

use crate::{code, found, in_order, odd, tasting};
use bench::tasting::{Finding, Order};

fn ranked<const P: usize>(more: &str, rows: &[[usize; P]]) -> Order {
    let ranking = tasting("ranking", P, more);
    let found = found(&ranking, rows.len(), |number, seat, _| in_order(seat, &rows[number]));
    match found.finding {
        Finding::Order(order) => order,
        other => panic!("{other:?}"),
    }
}

/// Ranks with the rank sums of the worked example in ISO 8587, Annex A, which prints the sums alone.
pub const ISO_8587: [[usize; 5]; 8] = [
    [1, 3, 5, 4, 2],
    [1, 4, 5, 3, 2],
    [2, 3, 4, 5, 1],
    [2, 4, 3, 1, 5],
    [2, 4, 5, 1, 3],
    [2, 5, 3, 4, 1],
    [3, 5, 2, 4, 1],
    [4, 3, 5, 1, 2],
];

/// Rank sums 17, 31, 32, 23, 17 of 8 tasters: F 10.60, least difference 12.40; A-B, A-C, B-E and C-E differ.
#[test]
fn the_ranking_of_iso_8587() {
    let order = ranked("", &ISO_8587);
    assert_eq!(order.sums, [17.0, 31.0, 32.0, 23.0, 17.0]);
    assert_eq!((format!("{:.2}", order.statistic), format!("{:.2}", order.least_for_one)), ("10.60".into(), "12.40".into()));
    assert!(order.is_exact && order.chance.as_percent() < 5.0, "{:?}", order.chance);
    let mut alone: Vec<(usize, usize)> =
        order.pairs.iter().filter(|pair| pair.differ_alone).map(|pair| (pair.more, pair.less)).collect();
    alone.sort_unstable();
    assert_eq!(alone, [(0, 1), (0, 2), (4, 1), (4, 2)]);
    // Newell & MacFarlane (1987), Table 1, 8 tasters and 5 samples: 18, which no pair reaches.
    assert_eq!((order.least_for_all, order.is_from_table), (18.0, true));
    assert!(order.pairs.iter().all(|pair| !pair.differ));
}

/// A hand-out's 11 tasters and 4 samples, sums 33, 14, 20, 43: F 27.76; D-B, D-C, A-B and A-C differ pair by pair.
#[test]
fn the_ranking_of_eleven() {
    let mut rows = vec![[3, 1, 2, 4]; 7];
    rows.extend([[2, 1, 3, 4], [3, 2, 1, 4], [3, 2, 1, 4], [4, 2, 1, 3]]);
    let order = ranked("", &rows);
    assert_eq!((order.sums.as_slice(), format!("{:.2}", order.statistic)), (&[33.0, 14.0, 20.0, 43.0][..], "27.76".into()));
    let alone = order.pairs.iter().filter(|pair| pair.differ_alone).map(|pair| (pair.more, pair.less));
    assert_eq!(alone.collect::<Vec<_>>(), [(1, 0), (2, 0), (1, 3), (2, 3)]);
}

/// Craig's data (Siegel & Castellan 1988, p. 186): rank sums 9, 6, 11, 20, 20, 18 of 4: L 342, exact p 0.000566.
#[test]
fn the_trend_of_siegel_and_castellan() {
    // The first in the order expected has the fewest ranks there: rank 1.
    let names = "expected = [\"s0\", \"s1\", \"s2\", \"s3\", \"s4\", \"s5\"]";
    let rows = [[1, 2, 3, 5, 4, 6], [1, 2, 3, 6, 5, 4], [2, 1, 3, 6, 5, 4], [5, 1, 2, 3, 6, 4]];
    let order = ranked(names, &rows);
    let expected = order.expected.expect("an order was expected");
    assert_eq!((order.sums.as_slice(), expected.statistic), (&[9.0, 6.0, 11.0, 20.0, 20.0, 18.0][..], 342.0));
    assert!(expected.is_exact && (expected.chance.as_ratio() - 0.000_566).abs() < 5e-7, "{:?}", expected.chance);
}

/// The FAO's table of triangles (V7180E, Appendix A), every level of some rows: the last answer makes it evidence.
#[test]
fn triangles_of_the_fao() {
    for (of, needed) in [(12, [7, 8, 9, 10]), (24, [12, 13, 15, 16]), (30, [14, 15, 17, 19]), (60, [26, 27, 30, 33])] {
        for (risk, fewest) in ["10 %", "5 %", "1 %", "0.1 %"].into_iter().zip(needed) {
            let triangle = tasting("triangle", 2, &format!("risk = \"{risk}\""));
            for right in [fewest - 1, fewest] {
                let found = found(&triangle, of, |number, seat, _| odd(seat, number < right));
                let Finding::Choice(choice) = found.finding else { panic!("a choice") };
                assert_eq!((choice.right, choice.of, choice.needed), (right as u32, of as u32, Some(fewest as u32)));
                assert_eq!(choice.chance <= triangle.risk, right == fewest, "{right} of {of} at {risk}");
            }
        }
    }
}

/// Duo-trio, one-sided, and preference, two-sided, exact binomial: 20 and 21 of 30.
#[test]
fn pairs_and_duo_trios() {
    for (method, needed) in [("duo-trio", 20), ("preference", 21)] {
        let tasting = tasting(method, 2, "");
        for right in [needed - 1, needed] {
            let found = found(&tasting, 30, |number, seat, _| {
                let wanted = seat.reference.unwrap_or(0);
                code(seat, if number < right { wanted } else { 1 - wanted })
            });
            let Finding::Choice(choice) = found.finding else { panic!("a choice") };
            assert_eq!(choice.right, right as u32);
            assert_eq!(choice.chance <= tasting.risk, right == needed, "{method} {right}");
        }
    }
}
