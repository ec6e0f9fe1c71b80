//! Plans for trials, held to published designs and to what must hold of any.

use bench::trial::{Factor, Fraction, Kind, NoPlan, Plan, Question, Wanted, confounded, fraction, panel, propose};
use quantity::Fraction as Share;
use science::sensory::forced_choice::Test;
use std::collections::{BTreeMap, BTreeSet};

fn factors(sizes: &[usize]) -> Vec<Factor> {
    let one = |(i, size): (usize, &usize)| Factor { name: format!("f{i}"), levels: (0..*size).map(|l| l.to_string()).collect() };
    sizes.iter().enumerate().map(one).collect()
}

fn plan(sizes: &[usize], a_day: usize, days: usize) -> Plan {
    plan_from(sizes, a_day, days, 7)
}

fn plan_from(sizes: &[usize], a_day: usize, days: usize, seed: u64) -> Plan {
    propose(&Wanted { factors: factors(sizes), a_day, days, seed }).expect("a plan")
}

/// A combination as textbooks write it: the letters of the factors at their high level, (1) for none.
fn word(levels: &[usize]) -> String {
    let word: String =
        levels.iter().enumerate().filter(|(_, level)| **level == 1).map(|(i, _)| char::from(b'a' + i as u8)).collect();
    if word.is_empty() { "(1)".to_owned() } else { word }
}

fn words_by_day(plan: &Plan) -> BTreeSet<BTreeSet<String>> {
    plan.days.iter().map(|day| day.iter().map(|batch| word(&batch.levels)).collect()).collect()
}

/// Montgomery & Runger, Applied Statistics and Probability for Engineers (2003), figure 14-25: the 2³ design in two
/// blocks with ABC confounded.
#[test]
fn three_factors_in_two_days() {
    let found = plan(&[2, 2, 2], 4, 2);
    let expected = [["(1)", "ab", "ac", "bc"], ["a", "b", "c", "abc"]];
    assert_eq!(words_by_day(&found), expected.map(|day| day.map(str::to_owned).into()).into());
    assert_eq!(found.kind, Kind::Confounded { with_the_day: vec![vec![0, 1, 2]], times: 1 });
}

/// The same book, exercise 14-25: a 2⁴ design in four blocks gives up two products of three and one of two (ABD, ABC
/// and with them CD); § 14-8 gives the 2⁵ in two blocks ABCDE. No set of contrasts gives up less.
#[test]
fn what_is_given_up_to_the_day_is_the_least_there_is() {
    let lengths = |factors, days| {
        let mut lengths: Vec<u32> =
            bench::trial::products(&confounded(factors, days).expect("days")).iter().map(|bits| bits.count_ones()).collect();
        lengths.sort_unstable();
        lengths
    };
    assert_eq!(lengths(4, 4), [2, 3, 3]);
    assert_eq!(lengths(4, 2), [4]);
    assert_eq!(lengths(5, 2), [5]);
    // Box, Hunter & Hunter (1978), blocking arrangements, from memory: ABC, CDE and with them ABDE.
    assert_eq!(lengths(5, 4), [3, 3, 4]);
    assert_eq!(lengths(3, 4), [2, 2, 2]);
    assert_eq!(confounded(3, 8), None);
}

/// Resolutions of two-level fractions: NIST's Dataplot file DEXRES4 for those of resolution IV with 8 and 16 runs, the
/// rest from Box, Hunter & Hunter (1978), table 12.15, from memory.
#[test]
fn fractions_have_their_published_resolution() {
    for (factors, most, batches, resolution) in [
        (3, 4, 4, 3),
        (4, 8, 8, 4),
        (5, 16, 16, 5),
        (5, 8, 8, 3),
        (6, 32, 32, 6),
        (6, 16, 16, 4),
        (6, 8, 8, 3),
        (7, 32, 32, 4),
        (7, 16, 16, 4),
        (7, 8, 8, 3),
    ] {
        let (found, made) = fraction(factors, most).expect("a fraction");
        assert_eq!((made.len(), found.resolution), (batches, resolution), "{factors} factors in {most}");
        assert!(is_orthogonal(&made), "{factors} factors in {most}");
        assert_eq!(made.iter().collect::<BTreeSet<_>>().len(), batches);
    }
    assert!(fraction(3, 3).is_none() && fraction(7, 7).is_none());
}

/// The half of 2³ with C = AB: (c, a, b, abc) is the fraction of textbooks that holds abc.
#[test]
fn the_half_of_three_factors() {
    let (found, made) = fraction(3, 4).expect("a half");
    let words: BTreeSet<String> = made.iter().map(|levels| word(levels)).collect();
    assert_eq!(words, ["a", "b", "c", "abc"].map(str::to_owned).into());
    assert_eq!(found.generators, [(2, vec![0, 1])]);
    // Each factor looks like the product of the two others.
    assert_eq!(found.alike.len(), 3);
}

/// Every two factors see all four pairs of levels equally often.
fn is_orthogonal(made: &[Vec<usize>]) -> bool {
    let factors = made.first().map_or(0, Vec::len);
    (0..factors).all(|a| {
        (0..a).all(|b| {
            let mut pairs = BTreeMap::new();
            made.iter().for_each(|levels| *pairs.entry((levels[a], levels[b])).or_insert(0) += 1);
            pairs.len() == 4 && pairs.values().all(|count| count * 4 == made.len())
        })
    })
}

/// Balanced incomplete blocks: v, k, b, r, λ as in Cochran & Cox (1957), table 11.3, from memory; λ(v−1) = r(k−1) and
/// every pair is counted.
#[test]
fn days_too_small_for_all_see_each_pair_equally_often() {
    for (v, k, b, r, lambda) in [
        (3, 2, 3, 2, 1),
        (4, 2, 6, 3, 1),
        (4, 3, 4, 3, 2),
        (5, 2, 10, 4, 1),
        (5, 4, 5, 4, 3),
        (6, 3, 10, 5, 2),
        (7, 3, 7, 3, 1),
        (7, 4, 7, 4, 2),
        (8, 4, 14, 7, 3),
        (11, 5, 11, 5, 2),
        (13, 3, 26, 6, 1),
        (13, 4, 13, 4, 1),
    ] {
        let found = plan(&[v], k, b);
        assert_eq!(found.kind, Kind::BalancedPairs { each: r, together: lambda }, "{v} in days of {k}");
        assert_eq!(found.days.len(), b);
        let mut pairs = BTreeMap::new();
        for day in &found.days {
            for (i, one) in day.iter().enumerate() {
                day[..i].iter().for_each(|other| {
                    let pair = [one.levels[0], other.levels[0]];
                    *pairs.entry((pair[0].min(pair[1]), pair[0].max(pair[1]))).or_insert(0) += 1;
                });
            }
        }
        assert!(pairs.len() == v * (v - 1) / 2 && pairs.values().all(|count| *count == lambda), "{v} in days of {k}: {pairs:?}");
    }
}

/// What holds of any plan: days are not overfull, every level is baked, codes differ, and the seed decides all.
#[test]
fn any_plan_is_sound() {
    for sizes in [&[2][..], &[3], &[2, 3], &[2, 2, 2], &[3, 3], &[2, 2, 2, 2], &[2, 3, 4], &[2; 5], &[2; 7]] {
        for (a_day, days) in [(2, 3), (4, 1), (4, 2), (6, 3), (8, 4), (5, 7), (24, 1)] {
            let wanted = |seed| Wanted { factors: factors(sizes), a_day, days, seed };
            let Ok(found) = propose(&wanted(1)) else { continue };
            assert!(found.days.len() <= days && found.days.iter().all(|day| day.len() <= a_day), "{sizes:?} {a_day} {days}");
            let batches: Vec<_> = found.days.iter().flatten().collect();
            for (factor, size) in sizes.iter().enumerate() {
                let levels: BTreeSet<usize> = batches.iter().map(|batch| batch.levels[factor]).collect();
                assert_eq!(levels.len(), *size, "{sizes:?} {a_day} {days}");
            }
            let codes: BTreeSet<u16> = batches.iter().map(|batch| batch.code).collect();
            assert_eq!(codes.len(), batches.len());
            assert_eq!(found.days, propose(&wanted(1)).expect("the same").days);
        }
    }
    assert_ne!(plan_from(&[2, 2, 2], 8, 1, 1).days, plan_from(&[2, 2, 2], 8, 1, 2).days, "another seed, another order");
}

/// Mixed levels over days: six combinations of 2 × 3 on two days of three see each level of the three once a day.
#[test]
fn mixed_levels_are_spread_evenly() {
    let found = plan(&[2, 3], 3, 2);
    assert_eq!(found.kind, Kind::EvenDays { is_even: true });
    for day in &found.days {
        assert_eq!(day.iter().map(|batch| batch.levels[1]).collect::<BTreeSet<_>>().len(), 3);
    }
}

#[test]
fn what_cannot_be_planned_is_told_why() {
    let of = |factors: Vec<Factor>, a_day, days| propose(&Wanted { factors, a_day, days, seed: 1 }).expect_err("no plan");
    assert_eq!(of(Vec::new(), 4, 1), NoPlan::NothingVaried);
    assert_eq!(of(factors(&[1]), 4, 1), NoPlan::NotTwoLevels("f0".to_owned()));
    assert_eq!(of(factors(&[3, 3]), 4, 1), NoPlan::TooMany { fewest: 9, can: 4 });
    assert_eq!(of(factors(&[2, 2, 2]), 3, 1), NoPlan::TooMany { fewest: 4, can: 3 });
    assert_eq!(of(factors(&[2, 2]), 0, 5), NoPlan::TooMany { fewest: 4, can: 0 });
    assert_eq!(of(factors(&[2; 8]), 4, 1), NoPlan::TooLarge);
    assert_eq!(of(factors(&[100, 100, 100]), 4, 1), NoPlan::TooLarge);
    assert_eq!(of(factors(&[2, 2]), usize::MAX, usize::MAX), NoPlan::TooLarge);
    let twice = [factors(&[2]), factors(&[2])].concat();
    assert_eq!(of(twice, 4, 1), NoPlan::NamedTwice("f0".to_owned()));
}

/// Panels of the triangle test at 5 %: ISO 4120, table A.3, recomputed exactly from the binomial distribution (for 50, 40, 30 and
/// 20 % who tell, at risks of 20, 10 and 5 % of missing them); rounded up to whole sets of the six orders.
#[test]
fn panels_are_those_of_the_standard() {
    let percent = Share::percent;
    for (tell, sizes) in [(50.0, [16, 20, 23]), (40.0, [23, 30, 40]), (30.0, [40, 53, 66]), (20.0, [87, 117, 147])] {
        for (power, size) in [80.0, 90.0, 95.0].into_iter().zip(sizes) {
            let question =
                Question { test: Test::Triangle, tell: percent(tell), significance: percent(5.0), power: percent(power) };
            let found = panel(&question).expect("a panel");
            assert_eq!(found.fewest, size, "{tell} % at {power} %");
            assert!(found.tasters >= size && found.tasters.is_multiple_of(6) && found.power >= percent(power));
        }
    }
    // 24 tasters would find less than 23 do, so 30 are taken; 15 of 30 is evidence (p = 0.043), 14 is not (FAO table).
    let question = Question { test: Test::Triangle, tell: percent(40.0), significance: percent(5.0), power: percent(80.0) };
    let found = panel(&question).expect("a panel");
    assert_eq!((found.tasters, found.right), (30, 15));
}

#[test]
fn a_difference_that_nobody_tells_has_no_panel() {
    let percent = Share::percent;
    let question = |tell| Question { test: Test::DuoTrio, tell: percent(tell), significance: percent(5.0), power: percent(80.0) };
    assert!(panel(&question(0.0)).is_none() && panel(&question(30.0)).is_some());
}

/// A fraction says what it mixes up.
#[test]
fn a_fraction_says_what_is_alike() {
    let Kind::Part { fraction: Fraction { resolution, alike, .. }, is_even } = plan(&[2, 2, 2, 2], 8, 1).kind else {
        panic!("a part")
    };
    // 2^(4-1) with D = ABC: AB = CD, AC = BD, AD = BC (any textbook).
    assert_eq!((resolution, alike.len(), is_even), (4, 3, None));
}
