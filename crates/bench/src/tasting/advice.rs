//! How many seats a tasting needs to see the difference that is worth seeing.

use super::choice::test;
use super::lay::block;
use crate::trial::{Question, panel};
use formula::read::{MOST_TASTERS, Method, Tasting};
use quantity::Fraction;
use science::sensory::forced_choice::chance;
use science::sensory::paired_power;
use science::sensory::panel_size;
use science::sensory::ranking_power;
use science::sensory::similarity::{Recipe, most};

/// How far the differences of two samples' points scatter from taster to taster, as a standard deviation, where
/// nobody has tasted yet. Common practice, no source.
pub const SPREAD: f64 = 2.0;

/// The fewest answers on which two may be called alike. ISO 4120.
const FEWEST_ALIKE: u32 = 30;

/// The panel that is advised.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Advice {
    /// The fewest tasters.
    pub fewest: u32,
    /// So many that every serving order is used equally often.
    pub seats: u32,
    /// How often that panel finds the difference worth seeing; of two that are alike, how often it says so.
    pub power: Fraction,
}

/// Returns the panel that a tasting asks for; none where no panel of up to five hundred would do.
///
/// For a choice it is exact. In a ranking one sample stands out and the others are alike: panels made up at random.
/// Points are taken to scatter by [`SPREAD`].
#[must_use]
pub fn advise(tasting: &Tasting) -> Option<Advice> {
    let round = block(tasting.method, tasting.samples.len()).max(1) as u32;
    let rounded = |fewest: u32| fewest.div_ceil(round) * round;
    let advice = if let Some(tolerated) = tasting.alike {
        let test = test(tasting);
        let sure = |n: u32| {
            let most = most(test, n, tolerated, tasting.risk, Recipe::Exact);
            most.map_or(Fraction::ZERO, |most| chance(test, most + 1, n).left())
        };
        let fewest = (FEWEST_ALIKE..=MOST_TASTERS).find(|n| sure(*n) >= tasting.power)?;
        let seats = (0..20).map(|more| rounded(fewest) + more * round).find(|n| sure(*n) >= tasting.power)?;
        Advice { fewest, seats, power: sure(seats) }
    } else if tasting.method.is_scored() {
        // Of several samples all pairs are judged at once (Bonferroni).
        let samples = tasting.samples.len();
        let risk = tasting.risk * (2.0 / (samples * (samples - 1)) as f64);
        let apart = tasting.apart / SPREAD;
        let fewest = paired_power::smallest(apart, risk, tasting.power)? as u32;
        Advice { fewest, seats: rounded(fewest), power: paired_power::power(rounded(fewest) as usize, apart, risk) }
    } else if tasting.method == Method::Ranking {
        let samples = tasting.samples.len();
        let power = |n: u32| ranking_power::power(n as usize, samples, tasting.tell, tasting.risk);
        let fewest = ranking_power::smallest(samples, tasting.tell, tasting.risk, tasting.power)? as u32;
        let seats = (0..20).map(|more| rounded(fewest) + more * round).find(|n| power(*n) >= tasting.power)?;
        Advice { fewest, seats, power: power(seats) }
    } else {
        let test = test(tasting);
        let question = Question { test, tell: tasting.tell, significance: tasting.risk, power: tasting.power };
        let advised = panel(&question)?;
        let power = |n: u32| panel_size::power(test, n, tasting.tell, tasting.risk);
        let seats = (0..20).map(|more| rounded(advised.fewest) + more * round).find(|n| power(*n) >= tasting.power)?;
        Advice { fewest: advised.fewest, seats, power: power(seats) }
    };
    (advice.seats <= MOST_TASTERS).then_some(advice)
}
