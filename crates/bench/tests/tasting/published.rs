//! Published examples, entered as answers at laid seats. Sources and values: `rankings.toml` here, and
//! `crates/science/reference/sensory`.

use crate::{code, found, in_order, odd, tasting};
use bench::tasting::{Finding, Order};
use toml::{Table, Value};

/// A ranking that is printed with its results.
fn printed(name: &str) -> Table {
    let all: Table = include_str!("rankings.toml").parse().expect("a table");
    all[name].as_table().expect("a ranking").clone()
}

/// What is found where each taster ranks as its rows say.
fn ranked(printed: &Table, more: &str) -> Order {
    let row = |row: &Value| -> Vec<usize> {
        let ranks = row.as_str().expect("a row").split(' ');
        ranks.map(|rank| rank.parse().expect("a rank")).collect()
    };
    let rows: Vec<Vec<usize>> = printed["rows"].as_array().expect("rows").iter().map(row).collect();
    let ranking = tasting("ranking", rows[0].len(), more);
    let found = found(&ranking, rows.len(), |number, seat, _| in_order(seat, &rows[number]));
    let Finding::Order(order) = found.finding else { panic!("a ranking") };
    let sums: Vec<f64> =
        printed["sums"].as_array().expect("sums").iter().filter_map(Value::as_integer).map(|n| n as f64).collect();
    assert_eq!(order.sums, sums);
    order
}

/// Friedman's F, the least difference of a pair chosen beforehand, and the pairs that differ by it.
#[test]
fn rankings_that_are_printed() {
    for name in ["iso-8587", "eleven", "seven"] {
        let printed = printed(name);
        let word = |key: &str| printed[key].as_str().expect("a figure");
        let order = ranked(&printed, "");
        assert_eq!(
            (format!("{:.2}", order.statistic).as_str(), format!("{:.2}", order.least_for_one).as_str()),
            (word("statistic"), word("least"))
        );
        assert!(order.chance.as_percent() < 5.0, "{name}: {:?}", order.chance);
        let letter = |sample: usize| char::from(b'a' + sample as u8);
        let mut apart: Vec<String> = order
            .pairs
            .iter()
            .filter(|pair| pair.differ_alone)
            .map(|pair| format!("{}{}", letter(pair.more), letter(pair.less)))
            .collect();
        let mut wanted: Vec<&str> = printed["apart"].as_array().expect("pairs").iter().filter_map(Value::as_str).collect();
        apart.sort_unstable();
        wanted.sort_unstable();
        assert_eq!(apart, wanted, "{name}");
        // Newell & MacFarlane (1987), Table 1.
        if let Some(least) = printed.get("all-pairs").and_then(Value::as_integer) {
            assert_eq!((order.least_for_all, order.is_from_table), (least as f64, true));
            assert!(order.pairs.iter().all(|pair| !pair.differ));
            assert!(order.groups.iter().all(|groups| groups == &[0]), "one group: {:?}", order.groups);
        }
    }
}

/// Samples of one group are not told apart by all pairs at once, and only they.
#[test]
fn groups_are_what_the_pairs_say() {
    for name in ["iso-8587", "eleven", "seven", "craig"] {
        let order = ranked(&printed(name), "");
        for pair in &order.pairs {
            let shared = order.groups[pair.more].iter().any(|group| order.groups[pair.less].contains(group));
            assert_eq!(shared, !pair.differ, "{name}: {pair:?} {:?}", order.groups);
        }
    }
}

/// Page's L of an order that was expected, its moments and the exact chance.
#[test]
fn the_trend_of_siegel_and_castellan() {
    let printed = printed("craig");
    // The first in the order expected has the fewest ranks there: rank 1.
    let order = ranked(&printed, "expected = [\"s0\", \"s1\", \"s2\", \"s3\", \"s4\", \"s5\"]");
    let expected = order.expected.expect("an order was expected");
    let seen = [
        format!("{}", expected.mean),
        format!("{:.3}", expected.deviation),
        format!("{:.3}", expected.deviations),
        format!("{:.6}", expected.chance.as_ratio()),
    ];
    let wanted = ["mean", "deviation", "z", "p"].map(|key| printed["expected"][key].as_str().expect("a figure").to_owned());
    assert_eq!((expected.statistic, expected.is_exact, seen), (342.0, true, wanted));
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
