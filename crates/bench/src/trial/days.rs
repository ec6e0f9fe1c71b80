//! Parting batches into days so that a good day favours none.

use science::sensory::blind_code::Chance;

/// Designs in which each two of so many things stand together on equally many days of so many batches, as days that
/// are turned round a circle; the last thing stands in the middle where that is said. Difference sets and families as
/// in Cochran & Cox (1957), chapter 11, from memory; the tests count the pairs.
struct Turned {
    things: usize,
    a_day: usize,
    first_days: &'static [&'static [usize]],
    has_middle: bool,
}

const TURNED: [Turned; 7] = [
    Turned { things: 6, a_day: 3, first_days: &[&[5, 0, 1], &[0, 1, 3]], has_middle: true },
    Turned { things: 7, a_day: 3, first_days: &[&[0, 1, 3]], has_middle: false },
    Turned { things: 7, a_day: 4, first_days: &[&[0, 3, 5, 6]], has_middle: false },
    Turned { things: 8, a_day: 4, first_days: &[&[7, 0, 1, 3], &[2, 4, 5, 6]], has_middle: true },
    Turned { things: 11, a_day: 5, first_days: &[&[1, 3, 4, 5, 9]], has_middle: false },
    Turned { things: 13, a_day: 3, first_days: &[&[0, 1, 4], &[0, 2, 7]], has_middle: false },
    Turned { things: 13, a_day: 4, first_days: &[&[0, 1, 3, 9]], has_middle: false },
];

/// Returns days on which each two things stand together equally often; nothing where so many days are too few.
pub fn balanced_pairs(things: usize, a_day: usize, days: usize) -> Option<Vec<Vec<usize>>> {
    if a_day < 2 || a_day >= things {
        return None;
    }
    let turned = TURNED.iter().find(|one| one.things == things && one.a_day == a_day).map(Turned::all);
    let all = turned.or_else(|| every_day(things, a_day, days))?;
    (all.len() <= days).then_some(all)
}

impl Turned {
    fn all(&self) -> Vec<Vec<usize>> {
        let round = if self.has_middle { self.things - 1 } else { self.things };
        let turn = |thing: usize, by: usize| if thing < round { (thing + by) % round } else { thing };
        let day = |first: &&[usize], by: usize| first.iter().map(|thing| turn(*thing, by)).collect();
        self.first_days.iter().flat_map(|first| (0..round).map(move |by| day(first, by))).collect()
    }
}

/// Every choice of so many things, unless that takes more days.
fn every_day(things: usize, a_day: usize, days: usize) -> Option<Vec<Vec<usize>>> {
    let mut all: Vec<Vec<usize>> = vec![Vec::new()];
    for place in 0..a_day {
        let mut longer = Vec::new();
        for chosen in &all {
            let next = chosen.last().map_or(0, |last| last + 1);
            longer.extend((next..=things - (a_day - place)).map(|thing| [chosen.as_slice(), &[thing]].concat()));
        }
        all = longer;
        // Choices only grow in number until half of the things are chosen; the bound keeps the search small.
        if all.len() > days.saturating_mul(64) + 64 {
            return None;
        }
    }
    Some(all)
}

/// How many times the random start is tried, and how many exchanges it may take.
const STARTS: usize = 20;
const EXCHANGES: usize = 400;

/// Batches to part, and how often each level of each factor stands among them.
struct Parting<'b> {
    batches: &'b [Vec<usize>],
    totals: Vec<Vec<usize>>,
}

/// Parts batches into days of at most so many, each level of each factor as evenly over the days as exchanges of two
/// batches find it. Gives the days, and whether they are as even as their sizes allow.
pub fn even_days(batches: &[Vec<usize>], levels: &[usize], a_day: usize, chance: &mut Chance) -> (Vec<Vec<usize>>, bool) {
    let count = batches.len().div_ceil(a_day.max(1));
    let total = |factor: usize, level: usize| batches.iter().filter(|batch| batch[factor] == level).count();
    let totals = levels.iter().enumerate().map(|(factor, size)| (0..*size).map(|level| total(factor, level)).collect());
    let parting = Parting { batches, totals: totals.collect() };
    let mut best: Option<(usize, Vec<Vec<usize>>)> = None;
    for _ in 0..STARTS {
        let mut order: Vec<usize> = (0..batches.len()).collect();
        chance.shuffle(&mut order);
        let mut days: Vec<Vec<usize>> = (0..count).map(|day| order.iter().copied().skip(day).step_by(count).collect()).collect();
        for _ in 0..EXCHANGES {
            if !parting.exchange(&mut days) {
                break;
            }
        }
        let left = days.iter().map(|day| parting.uneven(day)).sum();
        if best.as_ref().is_none_or(|(least, _)| left < *least) {
            best = Some((left, days));
        }
        if left == 0 {
            break;
        }
    }
    let (left, days) = best.unwrap_or_default();
    (days, left == 0)
}

impl Parting<'_> {
    /// Exchanges the first two batches that make their days more even, if there are such.
    fn exchange(&self, days: &mut [Vec<usize>]) -> bool {
        for second in 1..days.len() {
            let (before, rest) = days.split_at_mut(second);
            let other = &mut rest[0];
            for one in before {
                if self.exchange_between(one, other) {
                    return true;
                }
            }
        }
        false
    }

    fn exchange_between(&self, one: &mut [usize], other: &mut [usize]) -> bool {
        let now = self.uneven(one) + self.uneven(other);
        for i in 0..one.len() {
            for j in 0..other.len() {
                std::mem::swap(&mut one[i], &mut other[j]);
                if self.uneven(one) + self.uneven(other) < now {
                    return true;
                }
                std::mem::swap(&mut one[i], &mut other[j]);
            }
        }
        false
    }

    /// How often levels stand in a day beyond or below the nearest whole numbers to their share.
    fn uneven(&self, day: &[usize]) -> usize {
        let mut uneven = 0;
        for (factor, totals) in self.totals.iter().enumerate() {
            for (level, total) in totals.iter().enumerate() {
                let here = day.iter().filter(|batch| self.batches[**batch][factor] == level).count();
                let share = total * day.len();
                let (low, high) = (share / self.batches.len(), share.div_ceil(self.batches.len()));
                uneven += low.saturating_sub(here) + here.saturating_sub(high);
            }
        }
        uneven
    }
}
