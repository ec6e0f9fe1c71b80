//! A table laid: which cup stands where before each seat, under which code.

use formula::read::Method;
use science::sensory::blind_code::{Chance, codes};
use science::sensory::serving_order::{TRIANGLE, williams};

/// A cup before a seat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cup {
    /// Its three figures.
    pub code: u16,
    /// What is in it: the sample's place in the tasting, from 0.
    pub sample: usize,
}

/// What stands before a seat, in the order of tasting.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Seat {
    /// What the reference is, where there is one; it stands first and has no code.
    pub reference: Option<usize>,
    /// The cups.
    pub cups: Vec<Cup>,
}

/// After how many seats every order was used equally often.
#[must_use]
pub fn block(method: Method, samples: usize) -> usize {
    orders(method, samples).len()
}

/// Lays a table: the same seed gives the same table on every machine.
///
/// Orders come in blocks that use each equally often: the six of a triangle, both references and both places of a
/// duo-trio, both places of a pair, the rows of a Williams design for the rest. As long as there are enough of them,
/// every cup in the room has a code of its own; a larger room has different codes at each seat.
#[must_use]
pub fn lay(method: Method, samples: usize, seats: usize, seed: u64) -> Vec<Seat> {
    let mut chance = Chance::seeded(seed);
    let mut named: Vec<usize> = (0..samples).collect();
    chance.shuffle(&mut named);
    let mut plans: Vec<Plan> = Vec::new();
    let orders = orders(method, samples);
    while plans.len() < seats && !orders.is_empty() {
        let mut next = orders.clone();
        chance.shuffle(&mut next);
        plans.extend(alternated(next));
    }
    plans.truncate(seats);
    let all = codes(chance.bits(), 891).unwrap_or_default();
    let plain: Vec<u16> = all.into_iter().filter(|code| !is_telling(*code)).collect();
    let cups: usize = plans.iter().map(|(_, cups)| cups.len()).sum();
    let mut next = 0;
    let mut draw = || {
        next += 1;
        plain[(next - 1) % plain.len()]
    };
    let is_wide = cups > plain.len();
    let mut lay = |(reference, cups): Plan| Seat {
        reference: reference.map(|sample| named[sample]),
        cups: cups.into_iter().map(|sample| Cup { code: draw(), sample: named[sample] }).collect(),
    };
    let mut table: Vec<Seat> = plans.drain(..).map(&mut lay).collect();
    if is_wide {
        // The codes went round: each seat draws its own.
        for seat in &mut table {
            let own = codes(chance.bits(), 891).unwrap_or_default();
            let own = own.into_iter().filter(|code| !is_telling(*code));
            seat.cups.iter_mut().zip(own).for_each(|(cup, code)| cup.code = code);
        }
    }
    table
}

/// References take turns, so that a block that is not used up has as many of each as can be.
fn alternated(block: Vec<Plan>) -> Vec<Plan> {
    let first = block.first().and_then(|(reference, _)| *reference);
    let (ones, others): (Vec<Plan>, Vec<Plan>) = block.into_iter().partition(|(reference, _)| *reference == first);
    if others.is_empty() {
        return ones;
    }
    ones.into_iter().zip(others).flat_map(|(one, other)| [one, other]).collect()
}

/// A reference, if there is one, and the samples in their order.
type Plan = (Option<usize>, Vec<usize>);

/// Every order of a method once: a reference, if there is one, and the samples by their places.
fn orders(method: Method, samples: usize) -> Vec<Plan> {
    let pair = |first: usize| vec![first, 1 - first];
    match method {
        Method::Triangle => {
            let order = |order: &&str| (None, order.bytes().map(|letter| usize::from(letter == b'B')).collect());
            TRIANGLE.iter().map(order).collect()
        }
        Method::DuoTrio => (0..4).map(|n| (Some(n / 2), pair(n % 2))).collect(),
        Method::Paired | Method::Preference => (0..2).map(|first| (None, pair(first))).collect(),
        Method::Ranking | Method::Liking | Method::Description => {
            let row = |row: Vec<usize>| (None, row.into_iter().map(|sample| sample - 1).collect());
            williams(samples).into_iter().map(row).collect()
        }
    }
}

/// Codes that look like more than a number: a hundred, a run of figures up or down. Common practice, no source.
const fn is_telling(code: u16) -> bool {
    let (hundreds, tens, ones) = (code / 100, code / 10 % 10, code % 10);
    let rises = tens == hundreds + 1 && ones == tens + 1;
    let falls = hundreds == tens + 1 && tens == ones + 1;
    code.is_multiple_of(100) || rises || falls
}
