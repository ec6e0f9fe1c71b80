//! The list of ingredients: by weight as put in, water by what the finished food weighs more than all the rest.

use super::allergens::{self, Run, Speech};
use super::finished::{Food, Part, What};
use super::law::Law;
use super::quantities::Asked;
use quantity::{Fraction, Mass};
use science::nutrition::{added_water, cooking};

/// A list of ingredients.
#[derive(Clone, Debug, Default)]
pub struct List {
    /// In the order of weight.
    pub entries: Vec<Entry>,
    /// What became of the added water, if there was any.
    pub water: Option<Water>,
}

/// An ingredient of the list.
#[derive(Clone, Debug)]
pub struct Entry {
    /// Its name without emphasis.
    pub title: String,
    /// Its name as it is printed.
    pub runs: Vec<Run>,
    /// What counts for its place.
    pub mass: Mass,
    /// That as a share of the whole finished food.
    pub share: Fraction,
    /// Whether its quantity is stated.
    pub is_stated: bool,
    /// What it is made of, if it is made of several things.
    pub parts: List,
}

/// What became of added water.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Water {
    /// What went in.
    pub put_in: Mass,
    /// What is counted in the finished food.
    pub counted: Mass,
    /// That as a share of the finished food.
    pub share: Fraction,
    /// Whether it stands in the list.
    pub is_listed: bool,
}

/// What is gathered at the end of an American list: up to this share.
pub const LITTLE: Fraction = Fraction::percent(2.0);

/// The list of a food's ingredients; shares are of the whole that is sold.
#[must_use]
pub fn list(food: &Food, speech: Speech, whole: Mass, asked: &Asked) -> List {
    of(food, food.weighs(), speech, whole, asked)
}

fn of(food: &Food, weighs: Mass, speech: Speech, whole: Mass, asked: &Asked) -> List {
    let mut entries: Vec<Entry> = Vec::new();
    let mut put_in = Mass::ZERO;
    for part in &food.parts {
        if is_water(part) {
            put_in += part.mass;
        } else {
            add(&mut entries, part, speech, whole, asked);
        }
    }
    let others = entries.iter().map(|entry| entry.mass).sum();
    let water = (put_in > Mass::ZERO).then(|| water(put_in, others, weighs, speech.law));
    if let Some(water) = water.filter(|water| water.is_listed) {
        let title = if speech.is_german { "Wasser" } else { "water" }.to_owned();
        entries.push(Entry {
            runs: vec![Run { words: title.clone(), is_strong: false }],
            title,
            mass: water.counted,
            share: share(water.counted, whole),
            is_stated: false,
            parts: List::default(),
        });
    }
    entries.sort_by(|a, b| b.mass.as_grams().total_cmp(&a.mass.as_grams()).then_with(|| a.title.cmp(&b.title)));
    List { entries, water }
}

/// European law counts the water that the finished food holds beyond all else; American law what was put in.
fn water(put_in: Mass, others: Mass, weighs: Mass, law: Law) -> Water {
    let left = added_water::to_list(weighs, others);
    let counted = if law.is_european() && left < put_in { left } else { put_in };
    let share = cooking::share_of_finished(counted, weighs);
    let is_listed = counted > Mass::ZERO && (!law.is_european() || share > added_water::MAY_BE_LEFT_OUT);
    Water { put_in, counted, share, is_listed }
}

fn is_water(part: &Part) -> bool {
    matches!(&part.what, What::Ingredient(one) if one.is_water())
}

/// Adds a part; what goes by the same name and is the same kind of thing is one entry.
fn add(entries: &mut Vec<Entry>, part: &Part, speech: Speech, whole: Mass, asked: &Asked) {
    let runs = allergens::printed(&part.title, &part.what, speech);
    let parts = match &part.what {
        What::Ingredient(_) => List::default(),
        What::Compound(food) => of(food, part.mass, speech, whole, asked),
    };
    let same = |entry: &&mut Entry| entry.runs == runs && entry.parts.entries.is_empty() && parts.entries.is_empty();
    if let Some(entry) = entries.iter_mut().find(same) {
        entry.mass += part.mass;
        entry.share = share(entry.mass, whole);
        entry.is_stated |= asked.is_asked(part);
        return;
    }
    let (mass, is_stated) = (part.mass, asked.is_asked(part) && part.mass > Mass::ZERO);
    entries.push(Entry { title: part.title.clone(), runs, mass, share: share(mass, whole), is_stated, parts });
}

/// A share of the finished food; nothing of nothing.
fn share(mass: Mass, whole: Mass) -> Fraction {
    if whole > Mass::ZERO { cooking::share_of_finished(mass, whole) } else { Fraction::ZERO }
}
