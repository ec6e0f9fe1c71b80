//! Choosing a plan: all of it if a day holds it, in blocks if days do, in part if they do not.

use super::days::{balanced_pairs, even_days};
use super::two_levels::{confounded, day, fraction, letters, products};
use super::{Batch, Kind, MOST_BATCHES, MOST_FACTORS, NoPlan, Plan, Wanted};
use science::sensory::blind_code::{Chance, codes};

/// Proposes a plan with random orders of baking and blind codes.
///
/// # Errors
/// [`NoPlan`] where the factors are none, or more than can be baked.
pub fn propose(wanted: &Wanted) -> Result<Plan, NoPlan> {
    let levels = sizes(wanted)?;
    let combinations = combinations(&levels);
    let mut chance = Chance::seeded(wanted.seed);
    let (kind, mut days) = chosen(wanted, &levels, &combinations, &mut chance)?;
    chance.shuffle(&mut days);
    days.iter_mut().for_each(|day| chance.shuffle(day));
    let count = days.iter().map(Vec::len).sum();
    let mut codes = codes(wanted.seed ^ 0x5eed, count).unwrap_or_default().into_iter();
    let mut batch = |levels: Vec<usize>| Batch { levels, code: codes.next().unwrap_or_default() };
    let days = days.into_iter().map(|day| day.into_iter().map(&mut batch).collect()).collect();
    Ok(Plan { factors: wanted.factors.clone(), kind, days, seed: wanted.seed })
}

/// How many levels each factor has.
fn sizes(wanted: &Wanted) -> Result<Vec<usize>, NoPlan> {
    let factors = &wanted.factors;
    if factors.is_empty() {
        return Err(NoPlan::NothingVaried);
    }
    for (i, factor) in factors.iter().enumerate() {
        let is_twice = factor.levels.iter().enumerate().any(|(i, level)| factor.levels[..i].contains(level));
        if factor.levels.len() < 2 || is_twice {
            return Err(NoPlan::NotTwoLevels(factor.name.clone()));
        }
        if factors[..i].iter().any(|other| other.name == factor.name) {
            return Err(NoPlan::NamedTwice(factor.name.clone()));
        }
    }
    let sizes: Vec<usize> = factors.iter().map(|factor| factor.levels.len()).collect();
    let all = sizes.iter().try_fold(1_usize, |all, size| all.checked_mul(*size).filter(|all| *all <= MOST_BATCHES));
    let can = wanted.a_day.checked_mul(wanted.days).filter(|can| *can <= MOST_BATCHES);
    if factors.len() > MOST_FACTORS || all.is_none() || can.is_none() {
        return Err(NoPlan::TooLarge);
    }
    Ok(sizes)
}

/// Every combination of levels, the first factor changing fastest.
fn combinations(levels: &[usize]) -> Vec<Vec<usize>> {
    levels.iter().fold(vec![Vec::new()], |all, size| {
        (0..*size).flat_map(|level| all.iter().map(move |one| [one.as_slice(), &[level]].concat())).collect()
    })
}

type Days = Vec<Vec<Vec<usize>>>;

fn chosen(wanted: &Wanted, levels: &[usize], all: &[Vec<usize>], chance: &mut Chance) -> Result<(Kind, Days), NoPlan> {
    let (a_day, days) = (wanted.a_day, wanted.days);
    let can = a_day * days;
    if all.len() <= a_day && days > 0 {
        let times = a_day / all.len();
        let one = all.iter().cycle().take(all.len() * times).cloned().collect();
        return Ok((Kind::CompleteDays { times }, vec![one; days]));
    }
    let two_levels = levels.iter().all(|size| *size == 2);
    if all.len() <= can {
        let in_blocks = two_levels.then(|| in_blocks(levels.len(), all, a_day, days)).flatten();
        return Ok(in_blocks.or_else(|| in_pairs(all, a_day, days)).unwrap_or_else(|| {
            let (days, is_even) = even_days(all, levels, a_day, chance);
            (Kind::EvenDays { is_even }, picked(&days, all))
        }));
    }
    match fraction(levels.len(), can).filter(|_| two_levels) {
        Some((fraction, batches)) if batches.len() <= a_day => Ok((Kind::Part { fraction, is_even: None }, vec![batches])),
        Some((fraction, batches)) => {
            let (days, is_even) = even_days(&batches, levels, a_day, chance);
            Ok((Kind::Part { fraction, is_even: Some(is_even) }, picked(&days, &batches)))
        }
        None => Err(NoPlan::TooMany { fewest: fewest(levels, all.len()), can }),
    }
}

/// The fewest batches that any plan here has.
fn fewest(levels: &[usize], all: usize) -> usize {
    let two_levels = levels.iter().all(|size| *size == 2);
    let part = |most: usize| fraction(levels.len(), most).is_some();
    if two_levels { (1..=all).find(|most| part(*most)).unwrap_or(all) } else { all }
}

fn picked(days: &[Vec<usize>], batches: &[Vec<usize>]) -> Days {
    days.iter().map(|day| day.iter().map(|batch| batches[*batch].clone()).collect()).collect()
}

/// All combinations of factors at two levels on the fewest days that hold them, given up to them what matters least.
fn in_blocks(factors: usize, all: &[Vec<usize>], a_day: usize, days: usize) -> Option<(Kind, Days)> {
    let needed = (1..=factors).map(|power| 1_usize << power).find(|blocks| all.len() / blocks <= a_day)?;
    let contrasts = confounded(factors, needed).filter(|_| needed <= days)?;
    let mut parted: Days = vec![Vec::new(); needed];
    for one in all {
        parted[day(&contrasts, one)].push(one.clone());
    }
    let times = days / needed;
    let with_the_day = products(&contrasts).into_iter().map(letters).collect();
    Some((Kind::Confounded { with_the_day, times }, (0..times).flat_map(|_| parted.clone()).collect()))
}

/// Each two combinations together on equally many days.
fn in_pairs(all: &[Vec<usize>], a_day: usize, days: usize) -> Option<(Kind, Days)> {
    let parted = balanced_pairs(all.len(), a_day, days)?;
    let each = parted.len() * a_day / all.len();
    let together = each * (a_day - 1) / (all.len() - 1);
    Some((Kind::BalancedPairs { each, together }, picked(&parted, all)))
}
