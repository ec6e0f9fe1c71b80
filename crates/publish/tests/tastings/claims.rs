//! What a formula's page may claim, of every method and in any order of the samples.

use crate::{Named, found, report, tasting};
use publish::tasting::claim;

/// The claim of twelve people who all answer alike, for "bread".
fn claimed(method: &str, samples: &[Named], standing: &[usize]) -> String {
    let more = if method == "paired" { "comparative = \"softer\"" } else { "" };
    let tasting = tasting(method, samples, more);
    let findings = found(&tasting, 12, true);
    claim(&report(&tasting, &findings), "bread", standing).expect("a claim")
}

/// Several samples of the formula: both are named, whichever stands first in the file. One: the sentence speaks of it.
#[test]
fn both_are_named_where_both_are_the_formula() {
    for (method, both, one) in [
        (
            "triangle",
            "In a blind triangle test “A” and “B” were told apart: 12 of 12 people found the odd one, ",
            "Told from “B”",
        ),
        ("duo-trio", "In a blind duo-trio test “A” and “B” were told apart: 12 of 12 people found the one", "Told from “B”"),
        ("paired", "“A” was softer than “B”: 12 of 12 people tasting blind said so, p ", "Softer than “B” by 12 of 12 people"),
        ("preference", "“A” was preferred to “B”: 12 of 12 people tasting", "Preferred to “B” by 12 of 12 people"),
        ("liking", "“A” was liked more than “B” by 12 people tasting blind, p ", "Liked more than “B” by 12 people"),
        ("description", "Crumb: “A” was nearer to “soft” than “B” by 12 people", "Crumb: nearer to “soft” than “B” by 12"),
    ] {
        let told = claimed(method, &[("a", "bread"), ("b", "bread")], &[]);
        assert!(told.starts_with(both), "{told}");
        assert_eq!(told, claimed(method, &[("b", "bread"), ("a", "bread")], &[]));
        for samples in [[("a", "bread"), ("b", "cake")], [("b", "cake"), ("a", "bread")]] {
            let told = claimed(method, &samples, &[]);
            assert!(told.starts_with(one), "{told}");
        }
        // Of two samples of the formula only one was made by the text that stands.
        for (samples, standing) in [([("a", "bread"), ("b", "bread")], 0), ([("b", "bread"), ("a", "bread")], 1)] {
            let told = claimed(method, &samples, &[standing]);
            assert!(told.starts_with(one), "{told}");
        }
        // Where both stand, neither is “this one”.
        assert!(claimed(method, &[("a", "bread"), ("b", "bread")], &[0, 1]).starts_with(both));
    }
}

/// Of a ranking the surest pair is told: twelve who all agree put the first before the last by 24, the others by 12.
#[test]
fn the_surest_pair_is_told() {
    let orders = [["a", "b", "c"], ["c", "a", "b"], ["b", "c", "a"], ["c", "b", "a"]];
    for order in orders {
        let told = claimed("ranking", &order.map(|name| (name, "bread")), &[]);
        assert_eq!(told, "In a blind ranking of 12 people “A” was put before “C”, p < 0.001.");
        let of = |name: &'static str| (name, if name == "c" { "bread" } else { "cake" });
        let told = claimed("ranking", &order.map(of), &[]);
        assert_eq!(told, "“A” and “B” were put before this one in a blind ranking of 12 people, p < 0.001.");
    }
}

/// What was not found is told of both as well.
#[test]
fn nothing_sure_names_both_too() {
    for samples in [[("a", "bread"), ("b", "bread")], [("b", "bread"), ("a", "bread")]] {
        let tasting = tasting("preference", &samples, "");
        let findings = found(&tasting, 3, true);
        let told = claim(&report(&tasting, &findings), "bread", &[]).expect("a claim");
        assert_eq!(told, "No difference between “A” and “B” was found by 3 people tasting blind, p = 0.25.");
    }
}
