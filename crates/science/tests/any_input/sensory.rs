//! Tasting panels with any input.

use crate::any_number;
use proptest::prelude::*;
use quantity::Fraction;
use science::sensory::forced_choice::Test;
use science::sensory::ranks::Ranks;
use science::sensory::*;

const TESTS: [Test; 4] = [Test::Triangle, Test::DuoTrio, Test::PairedDirected, Test::PairedPreference];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn answers_of_any_panel(right in any::<u32>(), answers in any::<u32>(), few in 0..200_u32, share in any_number(), risk in any_number()) {
        let (share, risk) = (Fraction::ratio(share), Fraction::ratio(risk));
        for test in TESTS {
            for (x, n) in [(right, answers), (few, 100), (few, few)] {
                let _ = forced_choice::chance(test, x, n);
                let _ = forced_choice::deviations(test, x, n);
                let _ = forced_choice::fewest(test, n, risk);
                let _ = discriminators::discriminators(test, x, n, share);
                let _ = similarity::most(test, n, share, risk, similarity::Recipe::Exact);
                let _ = similarity::most(test, n, share, risk, similarity::Recipe::NormalLimit);
                let _ = panel_size::power(test, n, share, risk);
            }
        }
    }

    #[test]
    fn ranks_of_any_panel(rows in prop::collection::vec(prop::collection::vec(any_number(), 0..5), 0..5), statistic in any_number(), n in any::<usize>(), k in 0..9_usize) {
        if let Ok(ranks) = Ranks::of(&rows) {
            let _ = friedman::exact_chance(&ranks);
            let _ = page::exact_chance(&ranks);
            let _ = friedman::statistic(&ranks.sums(), ranks.tasters(), ranks.ties());
        }
        let _ = friedman::chance(statistic, n);
        let _ = friedman::least_difference(n, k, Fraction::ratio(statistic));
        let _ = friedman::exact_critical(n, k, Fraction::ratio(statistic));
        let _ = page::exact_critical(n, k, Fraction::ratio(statistic));
        let _ = page::chance(statistic, n, k);
        let _ = page::critical(n, k, Fraction::ratio(statistic));
        let _ = all_pairs::least_difference(n, k);
        let _ = ranking_power::power(n % 30, k, Fraction::ratio(statistic), Fraction::percent(5.0));
        let _ = ranking_power::power(n, 3, Fraction::percent(5.0), Fraction::ratio(statistic));
        let _ = ranking_power::approximate(n, k, Fraction::ratio(statistic), Fraction::percent(5.0));
        let _ = serving_order::williams(n);
        let _ = serving_order::is_balanced(n, k);
    }

    #[test]
    fn scores_of_any_panel(first in prop::collection::vec(any_number(), 0..9), second in prop::collection::vec(any_number(), 0..9), scores in prop::collection::vec(any::<u8>(), 0..9), seed in any::<u64>(), count in any::<usize>()) {
        let _ = hedonic::paired(&first, &second);
        let _ = hedonic::limits(&first, &second, Fraction::ratio(first.first().copied().unwrap_or(0.95)));
        let _ = signed_rank::signed_ranks(&first);
        let _ = paired_power::power(count, first.first().copied().unwrap_or(0.5), Fraction::percent(5.0));
        let _ = paired_power::smallest(first.first().copied().unwrap_or(0.5).max(0.4), Fraction::percent(5.0), Fraction::percent(80.0));
        let _ = hedonic::summary(&scores);
        let _ = blind_code::codes(seed, count);
        let _ = blind_code::Chance::seeded(seed).below(count);
    }
}
