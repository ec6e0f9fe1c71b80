//! What a piece may cost: the pieces that are cut from the batch, the size of the batch, or the weight of one line.

use super::{Amount, Answer, Asked, Target, let_pieces_follow, weighed_in};
use crate::cost::{self, Cost, cost};
use crate::exchange::{Desk, Part, Unfit, grams};
use crate::forecast::foresee;
use formula::{Formula, Known};
use quantity::{Count, Fraction, Mass, Money, print};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

/// The target.
pub static TARGET: Target = Target {
    name: "price",
    about: "what a piece may cost to make: by lighter pieces of the same batch, by a larger batch, or by the weight of one line",
    asks: "--to \"0.60 EUR\"; --of batch, or of the line that is free, else the weight of the pieces is",
    grounds: "the prices of the book's packs, energy by custom, hands by the stated times; the baker's arithmetic",
    fits,
    solve,
};

/// A piece below this share of its weight is another thing: judgement.
const SMALLEST: Fraction = Fraction::percent(25.0);
/// No more batches at once than these: judgement.
const LARGEST: f64 = 20.0;
/// A line may become this many times what it is: judgement.
const MOST: f64 = 10.0;

/// What `of` says where the batch is free.
const BATCH: &str = "batch";

fn fits(formula: &Formula) -> Vec<String> {
    let in_pieces = formula.components.iter().find(|component| component.yields.pieces.is_some());
    let Some(component) = in_pieces else { return Vec::new() };
    let lines = formula.lines().filter(|(_, line)| line.ingredient().is_some_and(|one| !one.is_water()));
    [component.yields.piece.1.clone(), BATCH.to_owned()].into_iter().chain(lines.map(|(_, line)| line.name.clone())).collect()
}

fn solve(desk: &mut Desk, asked: &Asked) -> Result<Answer, Unfit> {
    let wanted = wanted(asked.to.as_deref())?;
    let before = costed(desk, desk.before)?;
    if wanted.currency != before.currency {
        return Err(Unfit::NotSaid(
            "--to in the book's currency",
            format!("such as --to \"{} {}\"", wanted.amount, before.currency),
        ));
    }
    let mut answer = Answer::default();
    answer.tell_known("a piece before", piece(&before, before.total()));
    let parts = [
        ("ingredients", before.ingredients()),
        ("energy", before.of_energy()),
        ("hands", before.of_hands()),
        ("packaging", before.of_packaging()),
    ];
    for (part, whole) in parts.into_iter().filter(|(_, whole)| !whole.is_zero()) {
        answer.tell_known(format!("of that {part}"), Known { band: None, ..piece(&before, whole) });
    }
    let then = match asked.of.as_deref() {
        Some(BATCH) => by_the_batch(desk, &before, wanted.amount, &mut answer)?,
        Some(_) => by_a_line(desk, &before, wanted.amount, &mut answer)?,
        None => by_the_piece(desk, &before, wanted.amount, &mut answer)?,
    };
    answer.tell_known("a piece then", piece(&then, then.total()));
    for lacking in &before.missing {
        desk.minded.push(format!("{lacking} has no price: the true cost is higher"));
    }
    Ok(answer)
}

fn wanted(text: Option<&str>) -> Result<Money, Unfit> {
    let how = "such as --to \"0.60 EUR\"";
    let text = text.ok_or_else(|| Unfit::NotSaid("--to, what a piece may cost", how.to_owned()))?;
    match text.parse::<Money>() {
        Ok(money) if money.amount > Decimal::ZERO => Ok(money),
        Ok(_) => Err(Unfit::NotSo("nothing is made for nothing".to_owned())),
        Err(why) => Err(Unfit::NotSaid("--to, what a piece may cost", format!("{why}; {how}"))),
    }
}

/// What a formula costs here, if it can be told by the piece.
pub fn costed(desk: &Desk, formula: &Formula) -> Result<Cost, Unfit> {
    let around = foresee(formula, desk.around);
    let costs = cost(formula, &around, &desk.book.prices, &desk.book.settings);
    let costs = costs.ok_or_else(|| Unfit::NotSo("the book states no prices: `prices.toml` has none".to_owned()))?;
    if costs.makes.0.is_none_or(|pieces| pieces.as_pieces() <= 0.0) {
        return Err(Unfit::NotSo("it does not come in pieces: its yield states none".to_owned()));
    }
    Ok(costs)
}

/// A piece's share of a sum; of all that it costs with the band of its energy.
fn piece(costs: &Cost, whole: Decimal) -> Known<Amount> {
    let money = |whole: Decimal| {
        let amount = costs.a_piece(whole).unwrap_or_default();
        Amount::Price(Money { amount, currency: costs.currency.clone() })
    };
    let (low, high) = costs.of_energy_at_most();
    let known = Known::computed(money(whole), "packs, energy and hands by their prices", "the book's prices");
    if low == high {
        return known;
    }
    Known { band: Some((money(whole - costs.of_energy() + low), money(whole - costs.of_energy() + high))), ..known }
}

/// The fewest pieces of which none costs more, by halving: what more pieces take of the heat comes in steps, so that
/// now and then a piece fewer would do too. Of the most that may be, what they cost where even they cost more.
fn fewest(most: f64, wanted: Decimal, costed: impl Fn(f64) -> Result<Cost, Unfit>) -> Result<Result<(f64, Cost), Cost>, Unfit> {
    let is_dear = |costs: &Cost| costs.a_piece(costs.total()).is_some_and(|one| one > wanted);
    let (mut too_few, mut enough, mut costs) = (0.0, most.max(1.0), costed(most.max(1.0))?);
    if is_dear(&costs) {
        return Ok(Err(costs));
    }
    while enough - too_few > 1.0 {
        let middle = ((enough + too_few) / 2.0).floor();
        let there = costed(middle)?;
        if is_dear(&there) {
            too_few = middle;
        } else {
            (enough, costs) = (middle, there);
        }
    }
    Ok(Ok((enough, costs)))
}

/// The same batch cut into the fewest pieces of which none costs more.
fn by_the_piece(desk: &mut Desk, before: &Cost, wanted: Decimal, answer: &mut Answer) -> Result<Cost, Unfit> {
    let component = in_pieces(desk.before);
    let yields = &desk.before.components[component].yields;
    let was = yields.pieces.unwrap_or(Count::pieces(1.0));
    let most = (was.as_pieces() / SMALLEST.as_ratio()).floor();
    let costed = |pieces| costed(desk, &cut(desk.before, component, pieces));
    let Ok((pieces, costs)) = fewest(most, wanted, costed)? else {
        let small = print::percent(SMALLEST, 0);
        return Err(Unfit::NotSo(format!(
            "each {} would weigh less than {small} of what it does; hands are {} of the cost, and a larger batch shares them: --of batch",
            yields.piece.0,
            print::percent(Fraction::ratio(share(before.of_hands(), before.total())), 0)
        )));
    };
    let weighs = weight(yields.raw(), pieces);
    desk.manuscript.set(Part::Yield(component), "pieces", &print::number(pieces, 0), "scaling-weight");
    desk.manuscript.set_if_there(Part::Yield(component), "scaling-weight", &grams(weighs));
    answer.tell(format!("{} before", yields.piece.1), Amount::Count(was), "as the yield states", "arithmetic");
    answer.tell(format!("{} then", yields.piece.1), Amount::Count(Count::pieces(pieces)), "whole pieces", "arithmetic");
    answer.tell(format!("a {} is scaled at", yields.piece.0), Amount::Mass(weighs), "the batch by its pieces", "arithmetic");
    desk.minded.push("smaller pieces are done sooner and lose more: foresee them, and state their thickness".to_owned());
    Ok(costs)
}

/// The smallest larger batch of which no piece costs more; hands and the heating-up are shared by more.
fn by_the_batch(desk: &mut Desk, before: &Cost, wanted: Decimal, answer: &mut Answer) -> Result<Cost, Unfit> {
    let component = in_pieces(desk.before);
    let yields = &desk.before.components[component].yields;
    let was = yields.pieces.map_or(1.0, Count::as_pieces);
    let costed = |pieces: f64| {
        let mut many = desk.before.clone();
        many.components[component].yields.pieces = Some(Count::pieces(pieces));
        let mut costs = costed(desk, &many)?;
        for item in &mut costs.items {
            item.bought = item.bought * (pieces / was);
            item.costs = (item.costs * cost::decimal(pieces)).checked_div(cost::decimal(was)).unwrap_or(item.costs);
        }
        Ok(costs)
    };
    let (pieces, costs) = fewest(was * LARGEST, wanted, costed)?.map_err(|least| {
        Unfit::NotSo(format!(
            "even {} times the batch costs {} {} a piece: ingredients {}, hands at every batch of the heat {}",
            print::number(LARGEST, 0),
            least.a_piece(least.total()).unwrap_or_default().round_dp(3),
            before.currency,
            least.a_piece(least.ingredients()).unwrap_or_default().round_dp(3),
            least.a_piece(least.of_hands()).unwrap_or_default().round_dp(3),
        ))
    })?;
    answer.tell(format!("{} before", yields.piece.1), Amount::Count(Count::pieces(was)), "as the yield states", "arithmetic");
    answer.tell(format!("{} then", yields.piece.1), Amount::Count(Count::pieces(pieces)), "whole pieces", "arithmetic");
    answer.tell("times as much", Amount::Factor(pieces / was), "the ratio of the pieces", "arithmetic");
    desk.minded.push(format!("`wellproved scale` with --pieces {} weighs it out", print::number(pieces, 0)));
    desk.minded.push("hands are counted by the stated times; shaping many more pieces takes longer than that".to_owned());
    Ok(costs)
}

fn in_pieces(formula: &Formula) -> usize {
    formula.components.iter().position(|one| one.yields.pieces.is_some()).unwrap_or_default()
}

fn share(part: Decimal, whole: Decimal) -> f64 {
    part.checked_div(whole).and_then(|share| share.to_f64()).unwrap_or_default()
}

/// The formula with its batch cut into so many pieces.
fn cut(formula: &Formula, component: usize, pieces: f64) -> Formula {
    let mut formula = formula.clone();
    let yields = &mut formula.components[component].yields;
    (yields.pieces, yields.scaling_weight) = (Some(Count::pieces(pieces)), Some(weight(yields.raw(), pieces)));
    formula
}

/// To the tenth of a gram below, so that there is enough for the last piece.
fn weight(raw: Mass, pieces: f64) -> Mass {
    Mass::grams((raw.as_grams() / pieces * 10.0).floor() / 10.0)
}

/// As many pieces, and less or more of one line: exact algebra, since a cost is a sum over lines.
fn by_a_line(desk: &mut Desk, before: &Cost, wanted: Decimal, answer: &mut Answer) -> Result<Cost, Unfit> {
    let (at, line) = desk.line("line with a price", |line| line.ingredient().is_some())?;
    let one = line.ingredient().ok_or_else(|| Unfit::NotBalanced(line.title.clone()))?;
    let gram = cost::a_gram(one, &desk.book.prices).filter(|gram| *gram > Decimal::ZERO);
    let gram = gram.ok_or_else(|| Unfit::NotSo(format!("{} has no price in the book", line.title)))?;
    let pieces = before.makes.0.map_or(1.0, Count::as_pieces);
    let too_much = before.total() - wanted * cost::decimal(pieces);
    let less = too_much.checked_div(gram).and_then(|less| less.to_f64()).unwrap_or(f64::INFINITY);
    // To the hundredth of a gram below, so that a piece does not cost a breath more.
    let now = Mass::grams(((line.mass.value.as_grams() - less) * 100.0 + 1e-6).floor() / 100.0);
    if now < Mass::grams(0.01) || now > line.mass.value * MOST {
        let all = print::mass(line.mass.value);
        let costs = (gram * cost::decimal(line.mass.value.as_grams())).round_dp(2);
        let found = format!("all {all} of {} cost {costs} {}", line.title, before.currency);
        return Err(Unfit::NotSo(format!("{found}: by that line alone a piece does not come to {wanted} {}", before.currency)));
    }
    let change = now - line.mass.value;
    desk.balance.set(at, &line.name, now);
    let used = super::hydration::used(desk.before, at);
    let inside = weighed_in(desk.before, 0);
    if at.0 == 0 && inside > 0.0 {
        let_pieces_follow(desk, 0, 1.0 + change.as_grams() * used / inside);
    }
    answer.tell(format!("{} before", line.title), Amount::Mass(line.mass.value), "as the formula states", "arithmetic");
    answer.tell(format!("{} then", line.title), Amount::Mass(now), "what the rest leaves, by its price", "the book's prices");
    desk.minded.push("another dough: read what the figures say of it before it is baked".to_owned());
    let mut then = before.clone();
    if let Some(item) = then.items.iter_mut().find(|item| item.title == one.called) {
        item.costs += gram * cost::decimal(change.as_grams());
    }
    Ok(then)
}
