//! What to buy for a day, by the aisle it stands in.

use bench::cost::whole_packs;
use formula::Ingredient;
use formula::read::{Group, Prices};
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

/// The list as text: every ingredient of all that is made once, whole pieces rounded up, and whole packs where the
/// book's prices say what is in one.
#[must_use]
pub fn shopping(timeline: &Timeline, prices: &Prices) -> String {
    let mut items: BTreeMap<(Group, &str), Item> = BTreeMap::new();
    let mut there: BTreeMap<&str, Mass> = BTreeMap::new();
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
                    *there.entry(blend.title.as_str()).or_insert(Mass::ZERO) += line.mass.value;
                }
                _ => {}
            }
        }
    }
    let mut out = String::new();
    let mut aisle = None;
    for ((group, _), item) in &items {
        if aisle != Some(*group) {
            aisle = Some(*group);
            let gap = if out.is_empty() { "" } else { "\n" };
            let heading = aisle_of(*group);
            out.push_str(&format!("{gap}{heading}\n{}\n", "─".repeat(heading.chars().count())));
        }
        out.push_str(&format!("☐ {}\n", in_words(item, prices)));
    }
    if !there.is_empty() {
        out.push_str("\nMade already\n────────────\n");
        there.iter().for_each(|(title, mass)| out.push_str(&format!("☐ {title}, {}\n", print::large_mass(*mass))));
    }
    out
}

fn in_words(item: &Item, prices: &Prices) -> String {
    let title = &item.ingredient.called;
    let amount = match item.pieces.filter(|pieces| *pieces > Count::ZERO) {
        Some(pieces) => {
            let whole = Count::pieces((pieces.as_pieces() - 1e-9).ceil());
            format!("{title}, {} ({})", print::count(whole), print::large_mass(item.mass))
        }
        None => format!("{title}, {}", print::large_mass(item.mass)),
    };
    match whole_packs(item.ingredient, item.mass, prices) {
        Some((packs, pack)) => {
            let word = if packs == Count::pieces(1.0) { "pack" } else { "packs" };
            format!("{amount}: {} {word} of {}", print::count(packs), pack.pack.value)
        }
        None => amount,
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
