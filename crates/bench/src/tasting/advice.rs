//! How many seats a tasting needs to see the difference that is worth seeing.

use super::choice::test;
use super::lay::block;
use crate::trial::{Question, panel};
use formula::read::{MOST_TASTERS, Method, Tasting};
use quantity::Fraction;
use science::sensory::forced_choice::{Test, chance};
use science::sensory::paired_power;
use science::sensory::panel_size;
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
/// For a choice it is exact. A ranking is taken as the choice between two samples, which of them is put first: the
/// test over all samples may find less or more. Points are taken to scatter by [`SPREAD`].
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
        let apart = tasting.apart / SPREAD;
        let fewest = paired_power::smallest(apart, tasting.risk, tasting.power)? as u32;
        Advice { fewest, seats: rounded(fewest), power: paired_power::power(rounded(fewest) as usize, apart, tasting.risk) }
    } else {
        let test = if tasting.method == Method::Ranking { Test::PairedPreference } else { test(tasting) };
        let question = Question { test, tell: tasting.tell, significance: tasting.risk, power: tasting.power };
        let advised = panel(&question)?;
        let power = |n: u32| panel_size::power(test, n, tasting.tell, tasting.risk);
        let seats = (0..20).map(|more| rounded(advised.fewest) + more * round).find(|n| power(*n) >= tasting.power)?;
        Advice { fewest: advised.fewest, seats, power: power(seats) }
    };
    (advice.seats <= MOST_TASTERS).then_some(advice)
}
