//! What a choice says: a triangle, a duo-trio, a pair.

use super::sheet::Sheet;
use formula::read::{Method, Tasting};
use quantity::{Between, Fraction};
use science::sensory::discriminators::{Discriminators, discriminators};
use science::sensory::forced_choice::{Test, chance, deviations, fewest};
use science::sensory::panel_size;
use science::sensory::similarity::{Recipe, most};

/// The risks, in percent, at which tables of critical numbers are printed.
const LEVELS: [f64; 4] = [10.0, 5.0, 1.0, 0.1];

/// What the choices of a panel say.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Choice {
    /// The test they were held to.
    pub test: Test,
    /// How many chose each sample, where a sample is chosen; all are nought where the odd one is looked for.
    pub votes: [u32; 2],
    /// The sample that most chose, or that was expected; none where there is a right answer.
    pub favoured: Option<usize>,
    /// How many answered right, or chose that sample.
    pub right: u32,
    /// Of how many.
    pub of: u32,
    /// How likely so many are by guessing alone.
    pub chance: Fraction,
    /// How many would be by guessing alone, on the average.
    pub guessed: f64,
    /// How many standard deviations above that they lie: for large panels, where the exact chance stands beside it.
    pub deviations: f64,
    /// The fewest that would have been evidence.
    pub needed: Option<u32>,
    /// The fewest that would have been evidence at each risk of the published tables.
    pub levels: [(Fraction, Option<u32>); 4],
    /// The share who really tell, guesses taken off, with one-sided limits at 95 %.
    pub told: Discriminators,
    /// The share who chose as most did, with two-sided limits at 95 %.
    pub share: Between<Fraction>,
    /// How often this panel would have found the difference worth seeing.
    pub power: Fraction,
    /// Whether two may be called alike, where that was asked.
    pub alike: Option<Alike>,
}

/// Whether two may be called alike.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Alike {
    /// The share who may tell them apart nevertheless.
    pub tolerated: Fraction,
    /// The most right answers that allow it, by the exact binomial; none where no answer would.
    pub most: Option<u32>,
    /// The same by the normal limit, which some tables print: another by one answer at the most.
    pub by_normal: Option<u32>,
    /// Whether it is so.
    pub is_so: bool,
}

/// The test of a tasting in which something is chosen. A direction that was not fixed beforehand counts both ways.
pub fn test(tasting: &Tasting) -> Test {
    match tasting.method {
        Method::Triangle => Test::Triangle,
        Method::DuoTrio => Test::DuoTrio,
        Method::Paired if !tasting.expected.is_empty() => Test::PairedDirected,
        _ => Test::PairedPreference,
    }
}

/// What whole sheets say.
pub fn choice(tasting: &Tasting, sheets: &[&Sheet]) -> Choice {
    let test = test(tasting);
    let of = sheets.len() as u32;
    let mut votes = [0, 0];
    let (right, favoured) = if matches!(tasting.method, Method::Triangle | Method::DuoTrio) {
        (sheets.iter().filter(|sheet| is_right(sheet)).count() as u32, None)
    } else {
        for sample in sheets.iter().filter_map(|sheet| sheet.chosen()) {
            votes[sample.min(1)] += 1;
        }
        let winner = usize::from(votes[1] > votes[0]);
        let favoured = tasting.expected.first().copied().unwrap_or(winner);
        (votes[favoured.min(1)], Some(favoured))
    };
    let sure = Fraction::percent(95.0);
    let two_sided = discriminators(test, right, of, Fraction::percent(97.5)).exact;
    let with_guesses = |share: Fraction| Fraction::ratio(share.as_ratio() * (1.0 - test.guess()) + test.guess());
    Choice {
        test,
        votes,
        favoured,
        right,
        of,
        chance: chance(test, right, of),
        guessed: f64::from(of) * test.guess(),
        deviations: deviations(test, right, of),
        needed: fewest(test, of, tasting.risk),
        levels: LEVELS.map(Fraction::percent).map(|risk| (risk, fewest(test, of, risk))),
        told: discriminators(test, right, of, sure),
        share: Between { from: with_guesses(two_sided.from), to: with_guesses(two_sided.to) },
        power: panel_size::power(test, of, tasting.tell, tasting.risk),
        alike: tasting.alike.map(|tolerated| {
            let by = |recipe| most(test, of, tolerated, tasting.risk, recipe);
            let (most, by_normal) = (by(Recipe::Exact), by(Recipe::NormalLimit));
            Alike { tolerated, most, by_normal, is_so: most.is_some_and(|most| right <= most) }
        }),
    }
}

/// Whether the odd one, or the one like the reference, was chosen.
fn is_right(sheet: &Sheet) -> bool {
    let Some(chosen) = sheet.chosen() else { return false };
    match sheet.reference {
        Some(reference) => chosen == reference,
        None => sheet.cups.iter().filter(|cup| cup.sample == chosen).count() == 1,
    }
}
