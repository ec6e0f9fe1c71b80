//! Several figures at once: each line may move by so much, all flour stays, and what is nearest to the formula as
//! it is wins. What cannot be met is told with the aims, or the bounds, that stand against it.

mod aims;
mod programme;

use super::hydration::share;
use super::{Amount, Answer, Asked, Target, Unmet, let_pieces_follow, weighed_in};
use crate::exchange::{Desk, Unfit};
use aims::{ALL, Aim, Now, Of};
use formula::arithmetic::{Weighed, weighed};
use formula::read::{Prices, StageKind};
use formula::resolve::formula::StageAt;
use formula::{Formula, Ingredient, Line};
use programme::{Found, Free, NOTICED, Wanted, quarrel, solve as programme};
use quantity::{Fraction, Mass, print};
use rust_decimal::prelude::ToPrimitive;
use std::sync::Arc;

/// The target.
pub static TARGET: Target = Target {
    name: "reformulate",
    about: "several figures at once by small changes of all lines, nearest to the formula as it is",
    asks: "--aim FIGURE=SHARE for each of hydration, true-hydration, salt, sugars, fat, egg and protein, as shares of all flour, and price=\"0.60 EUR\" for what a piece may cost; --within \"20 %\", --keep a line as it is",
    grounds: "a linear programme: the smallest sum of relative changes of lines, all flour kept; figures by the ingredient table",
    fits,
    solve,
};

/// How far a line may move where nothing is said: common practice, no source.
const WITHIN: Fraction = Fraction::percent(20.0);

fn fits(_: &Formula) -> Vec<String> {
    ALL.iter().map(|aim| aim.name.to_owned()).collect()
}

/// A line that brings less than this share of every figure aimed at stays as it is: judgement.
const OF_CONSEQUENCE: f64 = 0.01;

/// What is to be solved.
struct Posed<'p> {
    aims: Vec<Sought>,
    lines: Vec<(StageAt, &'p Line)>,
    free: Vec<Free>,
    wanted: Vec<Wanted>,
    within: f64,
}

/// An aim with what it is now and what it should be.
struct Sought {
    aim: &'static Aim,
    now: Now,
    wanted: f64,
}

impl Sought {
    fn told(&self, figure: f64) -> Amount {
        (self.aim.told)(figure, &self.now.told)
    }

    fn in_words(&self) -> String {
        match self.told(self.wanted) {
            Amount::Share(share) => format!("{} {}", self.aim.name, print::percent(share, 1)),
            Amount::Price(money) => format!("{} {money}", self.aim.name),
            _ => self.aim.name.to_owned(),
        }
    }
}

fn solve(desk: &mut Desk, asked: &Asked) -> Result<Answer, Unfit> {
    let posed = posed(desk, asked)?;
    let count = posed.aims.len();
    let gave_up = || Unfit::NotSo("the programme found no answer: give it wider bounds".to_owned());
    let found = programme(&posed.free, &posed.wanted, &|_| true, posed.within).ok_or_else(gave_up)?;
    let mut answer = Answer::default();
    for ((at, line), change) in posed.lines.iter().zip(&found.changes) {
        if change.abs() > 1e-7 {
            desk.balance.set(*at, &line.name, weighable(line.mass.value * (1.0 + change)));
            answer.tell(
                format!("{} changes by", line.title),
                Amount::Share(Fraction::ratio(*change)),
                "the smallest sum of relative changes",
                "linear programme",
            );
            if line.pieces.is_some() {
                desk.minded.push(format!("{} was counted and is written by weight now", line.title));
            }
        }
    }
    let more = posed.free.iter().zip(&found.changes).map(|(one, change)| one.weight * change).sum::<f64>();
    let_pieces_follow(desk, 0, 1.0 + more / weighed_in(desk.before, 0));
    for n in 0..count {
        let sought = &posed.aims[n];
        let reached = sought.wanted - found.lacking[n] / sought.now.among;
        let name = sought.aim.name;
        let (by, source) = if sought.aim.of == Of::All {
            ("packs, energy and hands by their prices", "the book's prices")
        } else {
            ("the baker's arithmetic", "the sources of the ingredients")
        };
        answer.tell(format!("{name} before"), sought.now.told.clone(), by, source);
        answer.tell(format!("{name} then"), sought.told(reached), by, source);
        if found.lacking[n].abs() > posed.wanted[n].scale * NOTICED {
            let why = why(&posed, n, &found);
            let (wanted, reached) = (sought.told(sought.wanted), sought.told(reached));
            answer.unmet.push(Unmet { aim: name.to_owned(), wanted, reached, why });
        }
    }
    Ok(answer)
}

fn posed<'p>(desk: &Desk<'p>, asked: &Asked) -> Result<Posed<'p>, Unfit> {
    let aims = asked_for(desk, asked)?;
    let within = asked.within.unwrap_or(WITHIN);
    if !(within > Fraction::ZERO && within < Fraction::WHOLE) {
        return Err(Unfit::NotSaid("--within above nothing and below 100 %", "such as --within \"20 %\"".to_owned()));
    }
    let before = desk.before;
    for name in &asked.keep {
        if !before.lines().any(|(at, line)| at.0 == 0 && is_called(line, name)) {
            let has = before.lines().filter(|(at, _)| at.0 == 0).map(|(_, line)| line.name.clone()).collect();
            return Err(Unfit::Nothing { wanted: format!("line called “{name}” in its main component"), has });
        }
    }
    let (mut lines, mut free) = (Vec::new(), Vec::new());
    for part in weighed(before, 0) {
        let Some(one) = part.line.ingredient().filter(|_| part.stage.0 == 0 && part.mass > Mass::ZERO) else { continue };
        // A leaven is a matter of time, not of arithmetic.
        let is_leaven = one.yeast().is_some() || one.leaven.is_some();
        if is_leaven || asked.keep.iter().any(|name| is_called(part.line, name)) {
            continue;
        }
        lines.push((part.stage, part.line));
        free.push(brought(before, &part, one, &aims, &desk.book.prices));
    }
    season(&mut lines, &mut free);
    // What lines that stay bring is not the programme's: it asks of the free ones what is lacking.
    let wanted = aims.iter().enumerate().map(|(n, sought)| {
        let of_free: f64 = free.iter().map(|one| one.brings[n]).sum();
        let lacking = (sought.wanted - sought.now.figure) * sought.now.among;
        Wanted { amount: of_free + lacking, scale: sought.wanted.max(0.001) * sought.now.among }
    });
    let wanted = wanted.collect();
    Ok(Posed { aims, lines, free, wanted, within: within.as_ratio() })
}

/// Leaves out the lines of no consequence: a spice is not there for its fat.
fn season(lines: &mut Vec<(StageAt, &Line)>, free: &mut Vec<Free>) {
    let totals: Vec<f64> =
        (0..free.first().map_or(0, |one| one.brings.len())).map(|n| free.iter().map(|one| one.brings[n]).sum()).collect();
    let matters = |one: &Free| one.flour > 0.0 || one.brings.iter().zip(&totals).any(|(own, all)| *own > all * OF_CONSEQUENCE);
    let keep: Vec<bool> = free.iter().map(matters).collect();
    let mut kept = keep.iter();
    lines.retain(|_| kept.next().copied().unwrap_or(true));
    let mut kept = keep.iter();
    free.retain(|_| kept.next().copied().unwrap_or(true));
}

fn asked_for(desk: &Desk, asked: &Asked) -> Result<Vec<Sought>, Unfit> {
    let names = || ALL.iter().map(|aim| aim.name).collect::<Vec<_>>().join(", ");
    if asked.aims.is_empty() {
        let how = format!("such as --aim salt=\"2 %\"; there are: {}", names());
        return Err(Unfit::NotSaid("--aim, what it should come to", how));
    }
    let mut found: Vec<Sought> = Vec::new();
    for (name, wanted) in &asked.aims {
        let aim = ALL.iter().find(|aim| aim.name == *name);
        let aim = aim.ok_or_else(|| Unfit::NotSaid("--aim of a figure it knows", format!("“{name}” is none of: {}", names())))?;
        if found.iter().any(|known| known.aim.name == aim.name) {
            return Err(Unfit::NotSo(format!("{name} is aimed at twice")));
        }
        let now = (aim.now)(desk)?;
        found.push(Sought { aim, wanted: figure(name, wanted, &now.told)?, now });
    }
    Ok(found)
}

/// The figure that is wanted, in what the aim is told in.
fn figure(name: &str, wanted: &Amount, now: &Amount) -> Result<f64, Unfit> {
    match (wanted, now) {
        (Amount::Share(wanted), Amount::Share(_)) if *wanted == Fraction::ZERO => Ok(0.0),
        (Amount::Share(wanted), Amount::Share(_)) => {
            let text = format!("{} %", wanted.as_percent());
            share(Some(&text), "--aim", "such as --aim salt=\"2 %\"", Fraction::percent(400.0)).map(Fraction::as_ratio)
        }
        (Amount::Price(wanted), Amount::Price(now)) if wanted.currency == now.currency => {
            Ok(wanted.amount.to_f64().unwrap_or(0.0))
        }
        (_, Amount::Price(now)) => {
            Err(Unfit::NotSaid("--aim in the book's money", format!("such as --aim {name}=\"0.60 {}\"", now.currency)))
        }
        _ => Err(Unfit::NotSaid("--aim, a share of all flour", format!("such as --aim {name}=\"2 %\""))),
    }
}

fn is_called(line: &Line, name: &str) -> bool {
    line.name == name || line.ingredient().is_some_and(|one| one.name == name)
}

/// What a line brings to the flour and to each aim, counted as the overall formula and the cost count it.
fn brought(formula: &Formula, part: &Weighed, one: &Arc<Ingredient>, aims: &[Sought], prices: &Prices) -> Free {
    let is_added = formula.stage(part.stage).kind == StageKind::Inclusion || part.line.after_scaling;
    let in_mix = if is_added { Fraction::ZERO } else { part.line.taken_out.left() };
    let mut free = Free { weight: part.mass.as_grams(), flour: 0.0, brings: vec![0.0; aims.len()] };
    for (single, share) in one.singles() {
        let is_flour = if one.parts.is_empty() { part.line.is_flour } else { single.counts_as_flour };
        let grams = part.mass.as_grams() * share.as_ratio();
        if is_flour {
            free.flour += grams;
        }
        for (sought, sum) in aims.iter().zip(&mut free.brings) {
            let counted = match sought.aim.of {
                Of::Flour if is_flour => grams,
                Of::Rest if !is_flour => grams * in_mix.as_ratio(),
                _ => continue,
            };
            // Where no source says, the sheet counts nothing and says so; this counts alike.
            *sum += counted * (sought.aim.brings)(&single, prices).unwrap_or(0.0);
        }
    }
    // What is bought is bought whole, and for all that is mixed.
    for (sought, sum) in aims.iter().zip(&mut free.brings).filter(|(sought, _)| sought.aim.of == Of::All) {
        *sum += part.line.mass.value.as_grams() * (sought.aim.brings)(one, prices).unwrap_or(0.0);
    }
    free
}

/// What stands against an aim: bounds alone, or the other aims with which it quarrels.
fn why(posed: &Posed, n: usize, found: &Found) -> String {
    let others: Vec<String> = quarrel(&posed.free, &posed.wanted, n, posed.within)
        .into_iter()
        .filter(|one| *one != n)
        .map(|one| posed.aims[one].in_words())
        .collect();
    let at_bound = |(k, change): (usize, &f64)| {
        let helps = posed.free[k].brings[n] * change * found.lacking[n] > 1e-9;
        let matters = helps && change.abs() > posed.within - 1e-6;
        matters.then(|| posed.lines[k].1.title.clone())
    };
    let mut bound: Vec<String> = found.changes.iter().enumerate().filter_map(at_bound).collect();
    bound.dedup();
    let limit = print::percent(Fraction::ratio(posed.within), 1);
    let moved = if bound.is_empty() {
        "no line that may move brings it nearer".to_owned()
    } else {
        format!("{} moved by the whole {limit} already", bound.join(", "))
    };
    if others.is_empty() {
        format!("out of reach by itself: {moved}")
    } else {
        format!("it stands against {}: {moved}", others.join(" and "))
    }
}

/// As fine as the balance holds weights.
fn weighable(mass: Mass) -> Mass {
    let steps = if mass < Mass::grams(10.0) { 1000.0 } else { 100.0 };
    Mass::grams((mass.as_grams() * steps).round() / steps)
}
