//! What to buy for a day, by the aisle it stands in.

use bench::cost::{there_already, whole_packs};
use formula::Ingredient;
use formula::read::{Group, Larder, Prices};
use formula::resolve::formula::Content;
use plan::day::Timeline;
use quantity::{Count, Mass, print};
use std::collections::BTreeMap;

/// What is needed of one ingredient.
struct Item<'i> {
    ingredient: &'i Ingredient,
    mass: Mass,
    /// How many pieces, while every line counts them.
    pieces: Option<Count>,
}

/// The list as text: every ingredient of all that is made once, less what the larder holds, whole pieces rounded up, and
/// whole packs where the book's prices say what is in one.
#[must_use]
pub fn shopping(timeline: &Timeline, prices: &Prices, larder: &Larder) -> String {
    let mut out = String::new();
    for (aisle, lines) in to_buy(timeline, prices, larder) {
        heading(&mut out, aisle);
        lines.iter().for_each(|line| out.push_str(&format!("☐ {line}\n")));
    }
    if let Some(on) = larder.on {
        out.push_str(&format!("\nThe larder was counted on {on}.\n"));
    }
    out
}

/// The list by aisles; last what is there already, and what is made already.
pub fn to_buy(timeline: &Timeline, prices: &Prices, larder: &Larder) -> Vec<(&'static str, Vec<String>)> {
    let (items, made) = needed(timeline);
    let (mut aisles, mut there): (Vec<(&str, Vec<String>)>, Vec<String>) = (Vec::new(), Vec::new());
    for ((group, _), item) in items {
        let held = there_already(item.ingredient, item.mass, item.pieces, larder);
        let missing = item.mass - held;
        // What a scale cannot show is not bought.
        if missing < NOTHING {
            there.push(amount(&item, item.mass));
            continue;
        }
        let here = aisle_of(group);
        if aisles.last().is_none_or(|(aisle, _)| *aisle != here) {
            aisles.push((here, Vec::new()));
        }
        let of_it = if held >= NOTHING { format!(" of {}, the rest is there", whole(&item, item.mass)) } else { String::new() };
        let line = format!("{}{of_it}{}", amount(&item, missing), packs(&item, missing, prices));
        aisles.last_mut().into_iter().for_each(|(_, lines)| lines.push(line.clone()));
    }
    let made = made.iter().map(|(title, mass)| format!("{title}, {}", print::large_mass(*mass))).collect();
    let further = [("There already", there), ("Made already", made)];
    aisles.extend(further.into_iter().filter(|(_, lines): &(&str, Vec<String>)| !lines.is_empty()));
    aisles
}

/// Less than a tenth of a gram is nothing.
const NOTHING: Mass = Mass::grams(0.05);

fn heading(out: &mut String, text: &str) {
    let gap = if out.is_empty() { "" } else { "\n" };
    out.push_str(&format!("{gap}{text}\n{}\n", "─".repeat(text.chars().count())));
}

type Items<'t> = BTreeMap<(Group, &'t str), Item<'t>>;

/// What is needed of each ingredient, and of formulas that are made already.
fn needed(timeline: &Timeline) -> (Items<'_>, BTreeMap<&str, Mass>) {
    let (mut items, mut made) = (Items::new(), BTreeMap::new());
    for dish in &timeline.dishes {
        for line in dish.stages.iter().flat_map(|at| &dish.formula.stage(*at).lines) {
            match &line.content {
                Content::Ingredient(one) if !one.is_water() => {
                    let start = || Item { ingredient: one, mass: Mass::ZERO, pieces: Some(Count::ZERO) };
                    let item = items.entry((one.group, one.name.as_str())).or_insert_with(start);
                    item.mass += line.mass.value;
                    item.pieces = item.pieces.zip(line.pieces).map(|(a, b)| a + b);
                }
                Content::Formula(blend) if timeline.dishes.iter().all(|dish| dish.formula.name != blend.name) => {
                    *made.entry(blend.title.as_str()).or_insert(Mass::ZERO) += line.mass.value;
                }
                _ => {}
            }
        }
    }
    (items, made)
}

/// "eggs, 2 (100 g)"; "strong white flour, 480 g".
fn amount(item: &Item, mass: Mass) -> String {
    let title = &item.ingredient.called;
    match pieces(item, mass) {
        Some(pieces) => format!("{title}, {} ({})", print::count(pieces), print::large_mass(mass)),
        None => format!("{title}, {}", print::large_mass(mass)),
    }
}

/// "2", "480 g".
fn whole(item: &Item, mass: Mass) -> String {
    pieces(item, mass).map_or_else(|| print::large_mass(mass), print::count)
}

/// How many whole pieces a part of an item is, where it is counted.
fn pieces(item: &Item, mass: Mass) -> Option<Count> {
    let pieces = item.pieces.filter(|pieces| *pieces > Count::ZERO && item.mass > Mass::ZERO)?;
    Some(Count::pieces((pieces.as_pieces() * (mass / item.mass) - 1e-9).ceil()))
}

fn packs(item: &Item, mass: Mass, prices: &Prices) -> String {
    match whole_packs(item.ingredient, mass, prices) {
        Some((packs, pack)) => {
            let word = if packs == Count::pieces(1.0) { "pack" } else { "packs" };
            format!(": {} {word} of {}", print::count(packs), pack.pack.value)
        }
        None => String::new(),
    }
}

const fn aisle_of(group: Group) -> &'static str {
    match group {
        Group::Flour | Group::Starch => "Flour and starch",
        Group::Sugar | Group::Syrup => "Sugar, honey and syrup",
        Group::Dairy => "Milk, butter and cheese",
        Group::Egg => "Eggs",
        Group::Fat => "Oil and fat",
        Group::Fruit => "Fruit and vegetables",
        Group::Nut => "Nuts and seeds",
        Group::Chocolate => "Cocoa and chocolate",
        Group::Spice => "Spices and herbs",
        Group::Leaven => "Yeast and raising agents",
        Group::Liquid => "Drinks",
        Group::Spirit => "Wine and spirits",
        Group::Salt => "Salt",
        Group::Other => "Other",
    }
}
