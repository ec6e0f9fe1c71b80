//! Reports of small panels: words in place of figures that so few answers cannot give.

use crate::{found, report, tasting};
use publish::tasting::{json, text, told};

const METHODS: [(&str, usize); 9] = [
    ("triangle", 2),
    ("duo-trio", 2),
    ("paired", 2),
    ("preference", 2),
    ("ranking", 3),
    ("ranking", 6),
    ("liking", 2),
    ("liking", 3),
    ("description", 3),
];
const NAMES: [&str; 6] = ["a", "b", "c", "d", "e", "f"];

/// The percentages in a text.
fn percentages(text: &str) -> Vec<f64> {
    let before = text.split('%').map(|part| part.trim_end().rsplit([' ', '(', '\u{a0}', '\u{202f}']).next().unwrap_or_default());
    before.filter_map(|figure| figure.parse().ok()).collect()
}

#[test]
fn small_panels_are_told_in_words() {
    for (method, samples) in METHODS {
        let named: Vec<_> = NAMES[..samples].iter().map(|name| (*name, "bread")).collect();
        let tasting = tasting(method, &named, "");
        for people in 1..=8 {
            let findings = found(&tasting, people, people % 2 == 0);
            let report = report(&tasting, &findings);
            let (page, words) = (text(&report, 100), told(&report));
            for wrong in ["NaN", "inf", " 1 people", "(1 people", " 1 answers", "1 points", " 1 seats", "1.0000 to 1.0000"] {
                assert!(!page.contains(wrong), "{method}, {people}, {wrong}: {page}");
            }
            assert!(percentages(&page).iter().all(|share| *share <= 100.0), "{method}, {people}: {page}");
            for sentence in words.grounds.iter().chain(&words.limits).chain([&words.conclusion]) {
                let first = sentence.chars().next().expect("words");
                assert!(first.is_uppercase() || first.is_ascii_digit() || first == '“', "{method}: {sentence}");
            }
            assert!(!json(&report).to_string().contains("NaN"));
        }
    }
}

/// The least chance of signed ranks is 2/2ⁿ (all differences of one sign), times the pairs: three samples take seven
/// tasters to reach 5 % (3·2/2⁷ = 0.047), two take six (2/2⁶ = 0.031). Exact, by counting signs.
#[test]
fn a_panel_that_can_show_nothing_is_told_so() {
    for (samples, needed) in [(2, 6), (3, 7), (4, 8)] {
        let named: Vec<_> = NAMES[..samples].iter().map(|name| (*name, "bread")).collect();
        let tasting = tasting("liking", &named, "");
        for people in [needed - 1, needed] {
            let findings = found(&tasting, people, true);
            let limits = told(&report(&tasting, &findings)).limits.join(" ");
            let words = format!("It takes {needed} tasters at least.");
            assert_eq!(limits.contains(&words), people < needed, "{samples} samples, {people}: {limits}");
        }
    }
    // All who agree in ranking three: (1/3!)ⁿ⁻¹, 1/6 of two people, 1/36 of three.
    let named: Vec<_> = NAMES[..3].iter().map(|name| (*name, "bread")).collect();
    let tasting = tasting("ranking", &named, "");
    for (people, is_too_few) in [(1, true), (2, true), (3, false)] {
        let findings = found(&tasting, people, true);
        let limits = told(&report(&tasting, &findings)).limits.join(" ");
        assert_eq!(limits.contains("no ranking reaches 5"), is_too_few, "{people}: {limits}");
    }
}

#[test]
fn who_chose_otherwise_is_counted() {
    for (people, words) in [(1, "1 of 1 chose “A”, nobody “B”"), (5, "5 of 5 chose “A”, nobody “B”")] {
        let tasting = tasting("preference", &[("a", "bread"), ("b", "bread")], "");
        let findings = found(&tasting, people, true);
        let told = told(&report(&tasting, &findings));
        assert!(told.conclusion.starts_with(words), "{}", told.conclusion);
        assert_eq!(told.grounds.join(" ").contains("So few answers"), people < 4);
    }
}

/// Limits of a pair alone stand beside the chance of all pairs: each is named as what it is.
#[test]
fn limits_of_one_pair_are_named_as_such() {
    let tasting = tasting("liking", &[("a", "bread"), ("b", "bread"), ("c", "bread")], "");
    let mut findings = found(&tasting, 12, true);
    let bench::tasting::Finding::Points(scales) = &mut findings.finding else { panic!("points") };
    scales[0].pairs[0].limits = quantity::Between { from: 0.5, to: 1.5 };
    let grounds = told(&report(&tasting, &findings)).grounds.join(" ");
    assert!(grounds.contains("limits at 95 % of this pair alone, not adjusted"), "{grounds}");
    assert!(grounds.contains("everybody’s difference is the same"), "{grounds}");
    assert!(grounds.contains("for all pairs at once"), "{grounds}");
}
