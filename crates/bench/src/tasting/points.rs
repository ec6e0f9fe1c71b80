//! What points on a scale say: of liking, or of an attribute.

use super::sheet::Sheet;
use formula::read::Tasting;
use quantity::{Between, Fraction};
use science::sensory::friedman;
use science::sensory::hedonic::{Paired, Summary, limits, paired, summary};
use science::sensory::paired_power;
use science::sensory::ranks::Ranks;
use science::sensory::signed_rank::{SignedRanks, signed_ranks};

/// What a panel's points on one scale say.
#[derive(Clone, Debug, PartialEq)]
pub struct Points {
    /// How many scored.
    pub tasters: usize,
    /// Each sample's counts, mean and median.
    pub summaries: Vec<Summary>,
    /// Of three samples and more, Friedman's statistic over the ranks of the points.
    pub statistic: Option<f64>,
    /// How likely so much unevenness is by chance; of two samples, by the signed ranks.
    pub chance: Fraction,
    /// Whether that was counted out exactly.
    pub is_exact: bool,
    /// Every two samples.
    pub pairs: Vec<PointPair>,
}

/// Two samples on one scale.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PointPair {
    /// The one with more points on the average.
    pub more: usize,
    /// The other.
    pub less: usize,
    /// The signed ranks of the differences.
    pub ranks: SignedRanks,
    /// Their chance, multiplied by the number of pairs (Bonferroni).
    pub chance: Fraction,
    /// Whether they differ: all samples do, and this pair as well.
    pub differ: bool,
    /// The mean difference and Student's test of it, if the steps of the scale are even.
    pub paired: Paired,
    /// Its limits, two-sided at 95 %.
    pub limits: Between<f64>,
    /// How often this panel would find the difference worth seeing, the points scattering as they did.
    pub power: Option<Fraction>,
}

/// What whole sheets say on one scale; none where there are none.
pub fn points(tasting: &Tasting, sheets: &[&Sheet], scale: usize) -> Option<Points> {
    let samples = tasting.samples.len();
    let rows: Vec<Vec<f64>> = sheets.iter().filter_map(|sheet| sheet.figures(samples, scale)).collect();
    let ranks = Ranks::of(&rows).ok()?;
    let of = |sample: usize| rows.iter().map(|row| row[sample]).collect::<Vec<f64>>();
    let summaries: Vec<Summary> =
        (0..samples).map(|sample| summary(&of(sample).iter().map(|points| *points as u8).collect::<Vec<_>>())).collect();
    let between: Vec<(usize, usize)> = (0..samples).flat_map(|one| (one + 1..samples).map(move |other| (one, other))).collect();
    let statistic = (samples > 2).then(|| friedman::statistic(&ranks.sums(), ranks.tasters(), ranks.ties()));
    let (chance, is_exact) = match statistic {
        // Where everybody ties everything there is nothing to tell.
        Some(statistic) if statistic.is_nan() => (Fraction::WHOLE, true),
        Some(statistic) => match friedman::exact_chance(&ranks) {
            Some(exact) => (exact, true),
            None => (friedman::chance(statistic, samples), false),
        },
        None => {
            let told = signed_ranks(&differences(&of(0), &of(1)));
            (told.chance.unwrap_or(Fraction::ratio(f64::NAN)), told.chance.is_some())
        }
    };
    let pair = |(one, other): &(usize, usize)| {
        let (more, less) = if summaries[*one].mean >= summaries[*other].mean { (*one, *other) } else { (*other, *one) };
        let (first, second) = (of(more), of(less));
        let ranks = signed_ranks(&differences(&first, &second));
        let alone = ranks.chance.unwrap_or(Fraction::ratio(f64::NAN)).as_ratio();
        let corrected = Fraction::ratio((alone * between.len() as f64).min(1.0));
        let paired = paired(&first, &second);
        let spread = paired.difference / paired.t * (rows.len() as f64).sqrt();
        let is_told = spread.is_finite() && spread > 0.0;
        PointPair {
            more,
            less,
            ranks,
            chance: corrected,
            differ: chance <= tasting.risk && corrected <= tasting.risk,
            paired,
            limits: limits(&first, &second, Fraction::percent(95.0)),
            power: is_told
                .then(|| paired_power::power(rows.len(), tasting.apart / spread, tasting.risk * (1.0 / between.len() as f64))),
        }
    };
    Some(Points { tasters: rows.len(), statistic, chance, is_exact, pairs: between.iter().map(pair).collect(), summaries })
}

fn differences(first: &[f64], second: &[f64]) -> Vec<f64> {
    first.iter().zip(second).map(|(a, b)| a - b).collect()
}
