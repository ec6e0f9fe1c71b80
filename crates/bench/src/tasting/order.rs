//! What a ranking says.

use super::sheet::Sheet;
use formula::read::Tasting;
use quantity::{Between, Fraction};
use science::sensory::discriminators::discriminators;
use science::sensory::forced_choice::Test;
use science::sensory::ranking_power;
use science::sensory::ranks::Ranks;
use science::sensory::{all_pairs, friedman, page};

/// What the ranks of a panel say; rank 1 has most of what was asked.
#[derive(Clone, Debug, PartialEq)]
pub struct Order {
    /// How many ranked.
    pub tasters: usize,
    /// The sum of each sample's ranks.
    pub sums: Vec<f64>,
    /// Friedman's statistic, ties reckoned with.
    pub statistic: f64,
    /// How likely so large a one is by chance.
    pub chance: Fraction,
    /// Whether that was counted out exactly; chi-squared otherwise.
    pub is_exact: bool,
    /// The same by chi-squared, which the exact chance stands above.
    pub by_chi_squared: Fraction,
    /// How far tasters agree: Kendall's W, from 0 to 1.
    pub agreement: f64,
    /// The least difference of rank sums for a pair that was chosen beforehand.
    pub least_for_one: f64,
    /// The same for all pairs at once.
    pub least_for_all: f64,
    /// Whether that is from the table of Newell and MacFarlane; by Bonferroni's rule otherwise.
    pub is_from_table: bool,
    /// Every two samples.
    pub pairs: Vec<Pair>,
    /// The groups that each sample is in, all pairs at once: samples of one group are not told apart.
    pub groups: Vec<Vec<usize>>,
    /// Whether they rose as was expected beforehand.
    pub expected: Option<Expected>,
}

impl Order {
    /// How often such a panel would find one sample that stands out by the difference worth seeing.
    #[must_use]
    pub fn power(&self, tasting: &Tasting) -> Fraction {
        ranking_power::power(self.tasters, self.sums.len(), tasting.tell, tasting.risk)
    }

    /// From which statistic on such a panel without ties finds a difference, counted out exactly; none where it is too
    /// large for that.
    #[must_use]
    pub fn critical(&self, risk: Fraction) -> Option<f64> {
        if self.is_exact { friedman::exact_critical(self.tasters, self.sums.len(), risk) } else { None }
    }

    /// From which L on such a panel without ties came as expected, counted out exactly; none where it is too large.
    #[must_use]
    pub fn critical_of_expected(&self, risk: Fraction) -> Option<f64> {
        page::exact_critical(self.tasters, self.sums.len(), risk)
    }
}

/// Two samples of a ranking.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pair {
    /// The one with the smaller rank sum: more of what was asked.
    pub more: usize,
    /// The other.
    pub less: usize,
    /// By how much the rank sums differ.
    pub difference: f64,
    /// Whether they differ, all pairs judged at once.
    pub differ: bool,
    /// Whether they would differ had this pair been chosen beforehand.
    pub differ_alone: bool,
    /// How many put the first before the other.
    pub before: u32,
    /// Of how many who did not let them share a rank.
    pub of: u32,
    /// The share who put it first, two-sided limits at 95 %, exact.
    pub share: Between<Fraction>,
}

/// An order that was expected beforehand, by Page's test.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Expected {
    /// Page's L.
    pub statistic: f64,
    /// How likely so large a one is by chance, one-sided.
    pub chance: Fraction,
    /// Whether that was counted out exactly; normal otherwise.
    pub is_exact: bool,
    /// The mean of L by chance alone.
    pub mean: f64,
    /// The standard deviation.
    pub deviation: f64,
    /// How many of them L lies above the mean.
    pub deviations: f64,
}

/// What whole sheets say; none where ranks cannot be made of them.
pub fn order(tasting: &Tasting, sheets: &[&Sheet]) -> Option<Order> {
    let samples = tasting.samples.len();
    let rows: Vec<Vec<f64>> = sheets.iter().filter_map(|sheet| sheet.figures(samples, 0)).collect();
    let ranks = Ranks::of(&rows).ok()?;
    let (sums, tasters) = (ranks.sums(), ranks.tasters());
    let statistic = friedman::statistic(&sums, tasters, ranks.ties());
    let exact = friedman::exact_chance(&ranks);
    let all = samples * (samples - 1) / 2;
    let is_five = (tasting.risk.as_percent() - 5.0).abs() < 1e-9;
    let table = all_pairs::least_difference(tasters, samples).filter(|_| is_five);
    let for_all = || friedman::least_difference(tasters, samples, tasting.risk * (1.0 / all as f64));
    let least_for_one = friedman::least_difference(tasters, samples, tasting.risk);
    let least_for_all = table.unwrap_or_else(for_all);
    let pairs = (0..samples).flat_map(|one| (one + 1..samples).map(move |other| (one, other)));
    let pair = |(one, other): (usize, usize)| {
        let (more, less) = if sums[one] <= sums[other] { (one, other) } else { (other, one) };
        let before = rows.iter().filter(|row| row[more] < row[less]).count() as u32;
        let of = rows.iter().filter(|row| (row[more] - row[less]).abs() > 0.0).count() as u32;
        let difference = sums[less] - sums[more];
        let differ = difference >= least_for_all;
        Pair { more, less, difference, differ, differ_alone: difference >= least_for_one, before, of, share: share(before, of) }
    };
    Some(Order {
        tasters,
        statistic,
        chance: exact.unwrap_or_else(|| friedman::chance(statistic, samples)),
        is_exact: exact.is_some(),
        by_chi_squared: friedman::chance(statistic, samples),
        agreement: friedman::agreement(statistic, tasters, samples),
        least_for_one,
        least_for_all,
        is_from_table: table.is_some(),
        pairs: pairs.map(pair).collect(),
        groups: groups(&sums, least_for_all),
        expected: expected(tasting, &rows),
        sums,
    })
}

/// The groups of each sample, counted from the one with most of it: as wide as no two of a group are told apart.
fn groups(sums: &[f64], least: f64) -> Vec<Vec<usize>> {
    let mut sorted: Vec<usize> = (0..sums.len()).collect();
    sorted.sort_by(|a, b| sums[*a].total_cmp(&sums[*b]));
    let mut of = vec![Vec::new(); sums.len()];
    let (mut group, mut reached) = (0, 0);
    for (from, first) in sorted.iter().enumerate() {
        let until = sorted.iter().rposition(|other| sums[*other] - sums[*first] < least).unwrap_or(from) + 1;
        // A run within an earlier one is no group of its own.
        if until > reached {
            sorted[from..until].iter().for_each(|sample| of[*sample].push(group));
            (group, reached) = (group + 1, until);
        }
    }
    of
}

/// The exact two-sided limits of a share, at 95 %.
fn share(of_them: u32, of: u32) -> Between<Fraction> {
    let test = Test::PairedPreference;
    let limits = discriminators(test, of_them, of, Fraction::percent(97.5)).exact;
    let with_guesses = |share: Fraction| Fraction::ratio(share.as_ratio() * (1.0 - test.guess()) + test.guess());
    Between { from: with_guesses(limits.from), to: with_guesses(limits.to) }
}

/// Page's test of the order that was expected: the most expected first has rank 1.
fn expected(tasting: &Tasting, rows: &[Vec<f64>]) -> Option<Expected> {
    if tasting.expected.len() != tasting.samples.len() {
        return None;
    }
    let ordered: Vec<Vec<f64>> = rows.iter().map(|row| tasting.expected.iter().map(|sample| row[*sample]).collect()).collect();
    let ranks = Ranks::of(&ordered).ok()?;
    let statistic = page::statistic(&ranks.sums());
    let exact = page::exact_chance(&ranks);
    let chance = exact.unwrap_or_else(|| page::chance(statistic, ranks.tasters(), ranks.samples()));
    let (tasters, samples) = (ranks.tasters(), ranks.samples());
    let (mean, deviation) = page::moments(tasters, samples);
    Some(Expected {
        statistic,
        chance,
        is_exact: exact.is_some(),
        mean,
        deviation,
        deviations: page::deviations(statistic, tasters, samples),
    })
}
