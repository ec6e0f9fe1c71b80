//! sensory against its references.

use crate::harness::{Case, Inputs, Row, check};
use quantity::Fraction;
use science::sensory::forced_choice::Test;
use science::sensory::ranks::{Fault, Ranks};
use science::sensory::{
    all_pairs, blind_code, discriminators, forced_choice, friedman, hedonic, page, paired_power, panel_size, ranking_power,
    serving_order, signed_rank, similarity,
};

/// How each equation answers a point.
pub const CASES: &[Case] = &[
    ("sensory::forced_choice", choose),
    ("sensory::discriminators", tell),
    ("sensory::similarity", |at, _| {
        let recipe = match at.word("recipe") {
            "exact" => similarity::Recipe::Exact,
            _ => similarity::Recipe::NormalLimit,
        };
        let (tolerated, risk) = (Fraction::percent(at.number("p_d")), Fraction::percent(5.0));
        count(similarity::most(Test::Triangle, whole(at, "n"), tolerated, risk, recipe))
    }),
    ("sensory::panel_size", |at, output| {
        let (share, five) = (Fraction::percent(at.number("p_d")), Fraction::percent(5.0));
        match output {
            "power" => panel_size::power(Test::Triangle, whole(at, "n"), share, five).as_ratio(),
            _ => count(panel_size::smallest(Test::Triangle, share, five, Fraction::percent(at.number("power")))),
        }
    }),
    ("sensory::ranking_power", |at, output| {
        let (tasters, samples) = (whole(at, "J") as usize, whole(at, "P") as usize);
        let (share, five) = (Fraction::percent(at.number("p_d")), Fraction::percent(5.0));
        match output {
            "noncentral" => ranking_power::approximate(tasters, samples, share, five).as_ratio(),
            _ => ranking_power::power(tasters, samples, share, five).as_ratio(),
        }
    }),
    ("sensory::friedman", rank),
    ("sensory::all_pairs", |at, _| {
        all_pairs::least_difference(whole(at, "n") as usize, whole(at, "k") as usize).unwrap_or(f64::NAN)
    }),
    ("sensory::page", order),
    ("sensory::hedonic", |at, output| {
        let paired = hedonic::paired(&numbers(at.word("first")), &numbers(at.word("second")));
        let limits = hedonic::limits(&numbers(at.word("first")), &numbers(at.word("second")), Fraction::percent(95.0));
        match output {
            "t" => paired.t,
            "lower" => limits.from,
            "upper" => limits.to,
            _ => paired.chance.as_ratio(),
        }
    }),
    ("sensory::signed_rank", |at, output| {
        let told = signed_rank::signed_ranks(&numbers(at.word("differences")));
        if output == "W" { told.positive } else { told.chance.expect("few tasters").as_ratio() }
    }),
    ("sensory::paired_power", |at, _| {
        paired_power::power(whole(at, "n") as usize, at.number("d"), Fraction::percent(5.0)).as_ratio()
    }),
    ("sensory::serving_order", |at, _| {
        let rows = serving_order::williams(whole(at, "p") as usize);
        let row: String = rows[whole(at, "index") as usize].iter().map(usize::to_string).collect();
        f64::from(u8::from(row == at.word("row")))
    }),
    ("sensory::blind_code", |at, output| {
        let mut chance = blind_code::Chance::seeded(1_234_567);
        let bits = (0..=whole(at, "n")).map(|_| chance.bits()).last().expect("at least one");
        (if output == "high" { bits >> 32 } else { bits & 0xffff_ffff }) as f64
    }),
];

fn whole(at: &Inputs, symbol: &str) -> u32 {
    at.number(symbol) as u32
}

fn count(counted: Option<u32>) -> f64 {
    counted.map_or(f64::NAN, f64::from)
}

fn numbers(text: &str) -> Vec<f64> {
    text.split_whitespace().map(|word| word.parse().expect("a number")).collect()
}

fn ranks(at: &Inputs) -> Ranks {
    let rows: Vec<_> = at.word("scores").split(';').map(numbers).collect();
    Ranks::of(&rows).expect("a panel's scores")
}

fn choose(at: &Inputs, output: &str) -> f64 {
    let test = match at.word("test") {
        "triangle" => Test::Triangle,
        "duo-trio" => Test::DuoTrio,
        "directed" => Test::PairedDirected,
        _ => Test::PairedPreference,
    };
    let answers = whole(at, "n");
    match output {
        "p" => forced_choice::chance(test, whole(at, "x"), answers).as_ratio(),
        "z" => forced_choice::deviations(test, whole(at, "x"), answers),
        _ => {
            let fewest = forced_choice::fewest(test, answers, Fraction::percent(at.number("alpha")));
            if output == "none" { f64::from(u8::from(fewest.is_none())) } else { count(fewest) }
        }
    }
}

fn tell(at: &Inputs, output: &str) -> f64 {
    let confidence = Fraction::percent(95.0);
    let panel = discriminators::discriminators(Test::Triangle, whole(at, "x"), whole(at, "n"), confidence);
    match output {
        "p_d" => panel.share,
        "SE" => panel.error,
        "lower" => panel.limits.from,
        "upper" => panel.limits.to,
        "exact_lower" => panel.exact.from,
        _ => panel.exact.to,
    }
    .as_ratio()
}

fn rank(at: &Inputs, output: &str) -> f64 {
    let (tasters, samples) = (at.number_or("J", 0.0) as usize, at.number_or("P", 0.0) as usize);
    let five = Fraction::percent(5.0);
    match output {
        "F" if tasters > 0 => friedman::statistic(&numbers(at.word("sums")), tasters, 0.0),
        "F" => {
            let ranks = ranks(at);
            friedman::statistic(&ranks.sums(), ranks.tasters(), ranks.ties())
        }
        "p" => friedman::chance(at.number("F"), samples).as_ratio(),
        "LSD" => friedman::least_difference(tasters, samples, five),
        "exact" => friedman::exact_chance(&ranks(at)).expect("a small panel").as_ratio(),
        _ => friedman::exact_critical(tasters, samples, five).expect("a small panel"),
    }
}

fn order(at: &Inputs, output: &str) -> f64 {
    let (tasters, samples) = (at.number_or("J", 0.0) as usize, at.number_or("P", 0.0) as usize);
    match output {
        "L" => page::statistic(&numbers(at.word("sums"))),
        "z" => page::deviations(at.number("L"), tasters, samples),
        "p" => page::chance(at.number("L"), tasters, samples).as_ratio(),
        "approximate" => page::critical(tasters, samples, Fraction::percent(5.0)),
        "critical" => page::exact_critical(tasters, samples, Fraction::percent(at.number("alpha"))).expect("a small panel"),
        _ => page::exact_chance(&ranks(at)).expect("a small panel").as_ratio(),
    }
}

/// The rows of the published table.
pub fn rows() -> Vec<Row> {
    check("sensory", CASES)
}

#[test]
fn every_reference_of_sensory_is_met() {
    rows();
}

/// ISO 8587, Annex A: A-B, A-C, B-E and C-E differ, the other pairs do not.
#[test]
fn the_pairs_of_the_ranking_example() {
    let sums = [17.0, 31.0, 32.0, 23.0, 17.0_f64];
    let least = friedman::least_difference(8, 5, Fraction::percent(5.0));
    let differ: Vec<_> =
        (0..5).flat_map(|a| (a + 1..5).map(move |b| (a, b))).filter(|(a, b)| (sums[*a] - sums[*b]).abs() >= least).collect();
    assert_eq!(differ, [(0, 1), (0, 2), (1, 4), (2, 4)]);
}

/// Williams (1949): every sample equally often in each place and after each other.
#[test]
fn every_design_is_balanced() {
    for samples in 2..=26 {
        let rows = serving_order::williams(samples);
        let each = if samples % 2 == 0 { 1 } else { 2 };
        assert_eq!(rows.len(), samples * each);
        for sample in 1..=samples {
            for place in 0..samples {
                assert_eq!(rows.iter().filter(|row| row[place] == sample).count(), each);
            }
            for other in (1..=samples).filter(|other| *other != sample) {
                let after = rows.iter().flat_map(|row| row.windows(2)).filter(|pair| **pair == [sample, other]).count();
                assert_eq!(after, each, "{samples} samples, {sample} then {other}");
            }
        }
    }
    assert!(serving_order::williams(0).is_empty() && serving_order::williams(27).is_empty());
    assert!(serving_order::is_balanced(6, 3) && !serving_order::is_balanced(0, 3));
}

/// Six orders of a triangle, each once: ISO 4120.
#[test]
fn the_triangle_orders_are_all_there() {
    let mut orders = serving_order::TRIANGLE.to_vec();
    orders.sort_unstable();
    orders.dedup();
    assert_eq!(orders.len(), 6);
    assert!(orders.iter().all(|order| (1..=2).contains(&order.matches('A').count())));
}

/// A session's codes differ, have three digits, and are the same again from the same seed.
#[test]
fn blind_codes_do_not_repeat() {
    let mut codes = blind_code::codes(42, 891).expect("all of them");
    assert_eq!(Some(&codes), blind_code::codes(42, 891).as_ref());
    assert_ne!(Some(&codes), blind_code::codes(43, 891).as_ref());
    codes.sort_unstable();
    codes.dedup();
    assert_eq!(codes.len(), 891);
    assert!(codes.iter().all(|code| (100..1000).contains(code) && code % 111 != 0));
    assert!(blind_code::codes(42, 892).is_none());
}

/// Peryam & Pilgrim (1957): nine words from dislike to like; a score off the scale counts nowhere.
#[test]
fn a_hedonic_summary_counts_every_score() {
    let summary = hedonic::summary(&[1, 9, 5, 5, 0, 10, 7, 8]);
    assert_eq!(summary.counts, [1, 0, 0, 0, 2, 0, 1, 1, 1]);
    assert_eq!(summary.off_scale, 2);
    assert_eq!(summary.median, 6.0);
    assert!((summary.mean - 35.0 / 6.0).abs() < 1e-12);
    assert!(hedonic::summary(&[]).mean.is_nan());
    assert_eq!((hedonic::WORDS[0], hedonic::WORDS[8]), ("dislike extremely", "like extremely"));
}

/// What is no panel is refused in words.
#[test]
fn what_is_no_panel_is_refused() {
    assert_eq!(Ranks::of(&[]), Err(Fault::TooFew));
    assert_eq!(Ranks::of(&[vec![1.0]]), Err(Fault::TooFew));
    assert_eq!(Ranks::of(&[vec![1.0, 2.0], vec![1.0]]), Err(Fault::Uneven));
    assert_eq!(Ranks::of(&[vec![1.0, f64::NAN]]), Err(Fault::NotANumber));
    assert!(friedman::exact_critical(3, 7, Fraction::percent(5.0)).is_none());
    assert!(page::exact_critical(61, 3, Fraction::percent(5.0)).is_none());
    assert!(all_pairs::least_difference(8, 2).is_none() && all_pairs::least_difference(8, 7).is_none());
}
