//! Factors at two levels: which part of all combinations to bake, and which products of factors to give up to the day.
//!
//! A product of factors is a set of bits, the first factor the lowest.

use std::collections::BTreeSet;

/// A part of all combinations of factors at two levels.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fraction {
    /// Factors that follow from others: each with the factors whose product it is, counted from the first.
    pub generators: Vec<(usize, Vec<usize>)>,
    /// The fewest factors that are mixed up with each other: three, a factor looks like a product of two; four, two
    /// products of two look alike; five and more, neither.
    pub resolution: usize,
    /// Products of two that look like a factor, or like another product of two.
    pub alike: Vec<[Vec<usize>; 2]>,
}

/// The generators of the fractions with the fewest mixed up: for so many factors, each further factor's bits. Box,
/// Hunter & Hunter (1978), table 12.15, from memory; those of resolution IV as in NIST's Dataplot file DEXRES4.
const FRACTIONS: [(usize, &[u32]); 10] = [
    (3, &[0b11]),
    (4, &[0b111]),
    (5, &[0b1111]),
    (5, &[0b11, 0b101]),
    (6, &[0b1_1111]),
    (6, &[0b111, 0b1110]),
    (6, &[0b11, 0b101, 0b110]),
    (7, &[0b1111, 0b1_1011]),
    (7, &[0b111, 0b1110, 0b1101]),
    (7, &[0b11, 0b101, 0b110, 0b111]),
];

/// Returns the largest part of all combinations of so many factors with at most so many batches, and its batches as
/// levels 0 and 1; nothing where there is none.
#[must_use]
pub fn fraction(factors: usize, most: usize) -> Option<(Fraction, Vec<Vec<usize>>)> {
    let fits = |(of, generators): &&(usize, &[u32])| *of == factors && 1 << (factors - generators.len()) <= most;
    let (_, generators) = FRACTIONS.iter().find(fits)?;
    let base = factors - generators.len();
    let batches = (0..1_u32 << base).map(|bits| {
        let own = (0..base).map(|factor| (bits >> factor & 1) as usize);
        // As signs: a product of an even number of factors is high where an even number of them is low.
        let product = |generator: &u32| {
            let low = (generator & !bits).count_ones();
            usize::from(low.is_multiple_of(2))
        };
        own.chain(generators.iter().map(product)).collect()
    });
    Some((described(factors, base, generators), batches.collect()))
}

fn described(factors: usize, base: usize, generators: &[u32]) -> Fraction {
    let words = products(&generators.iter().enumerate().map(|(i, bits)| bits | 1 << (base + i)).collect::<Vec<_>>());
    let resolution = words.iter().map(|word| word.count_ones() as usize).min().unwrap_or(factors);
    let pairs: Vec<u32> = effects(factors).filter(|bits| bits.count_ones() <= 2).collect();
    let mut alike = Vec::new();
    for (i, one) in pairs.iter().enumerate() {
        for other in &pairs[i + 1..] {
            if words.contains(&(one ^ other)) {
                alike.push([one, other].map(|bits| letters(*bits)));
            }
        }
    }
    let generators = generators.iter().enumerate().map(|(i, bits)| (base + i, letters(*bits))).collect();
    Fraction { generators, resolution, alike }
}

/// Returns the products of so many factors that are given up when all combinations are baked on 2, 4, 8 … days: those
/// with no factor alone, the fewest products of two, then of three. Nothing where a day would hold fewer than two.
///
/// Confounding by defining contrasts: Montgomery & Runger (2003), § 14-8; every set of contrasts is tried.
#[must_use]
pub fn confounded(factors: usize, days: usize) -> Option<Vec<u32>> {
    let contrasts = days.trailing_zeros() as usize;
    if !days.is_power_of_two() || contrasts == 0 || contrasts >= factors || factors > 6 {
        return None;
    }
    let candidates: Vec<u32> = effects(factors).filter(|bits| bits.count_ones() > 1).collect();
    let mut best: Option<(Vec<usize>, Vec<u32>)> = None;
    let mut chosen = Vec::new();
    search(&candidates, contrasts, &mut chosen, &mut |contrasts| {
        let given_up = products(contrasts);
        // Contrasts that depend on each other make fewer days than wanted.
        if given_up.len() != days - 1 || given_up.iter().any(|bits| bits.count_ones() < 2) {
            return;
        }
        let lengths: Vec<usize> =
            (2..=factors).map(|length| given_up.iter().filter(|bits| bits.count_ones() as usize == length).count()).collect();
        if best.as_ref().is_none_or(|(least, _)| lengths < *least) {
            best = Some((lengths, contrasts.to_vec()));
        }
    });
    best.map(|(_, contrasts)| contrasts)
}

fn search(candidates: &[u32], wanted: usize, chosen: &mut Vec<u32>, found: &mut dyn FnMut(&[u32])) {
    if chosen.len() == wanted {
        found(chosen);
        return;
    }
    for (i, one) in candidates.iter().enumerate() {
        chosen.push(*one);
        search(&candidates[i + 1..], wanted, chosen, found);
        chosen.pop();
    }
}

/// Every product that contrasts and their products give, themselves included.
#[must_use]
pub fn products(contrasts: &[u32]) -> BTreeSet<u32> {
    (1..1_u32 << contrasts.len())
        .map(|mask| contrasts.iter().enumerate().filter(|(i, _)| mask >> i & 1 == 1).fold(0, |all, (_, bits)| all ^ bits))
        .filter(|bits| *bits != 0)
        .collect()
}

/// The day of a combination: one bit for each contrast.
#[must_use]
pub fn day(contrasts: &[u32], levels: &[usize]) -> usize {
    let bits = levels.iter().enumerate().fold(0_u32, |bits, (factor, level)| bits | (*level as u32) << factor);
    contrasts.iter().enumerate().fold(0, |day, (i, contrast)| day | ((contrast & bits).count_ones() as usize % 2) << i)
}

fn effects(factors: usize) -> impl Iterator<Item = u32> {
    1..1_u32 << factors
}

/// The factors in a product, counted from the first.
#[must_use]
pub fn letters(bits: u32) -> Vec<usize> {
    (0..32).filter(|factor| bits >> factor & 1 == 1).collect()
}
