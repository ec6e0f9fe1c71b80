//! Allergens in the words of a list of ingredients: which count under which law, and what is set off by type.

use super::finished::{Food, What};
use super::law::Law;
use formula::Ingredient;
use formula::ingredient::{Allergen, allergens};
use std::collections::BTreeSet;

/// What says that more of a word may follow, as in German compounds: the allergen alone is set off in them.
const MORE: char = '*';

/// Whose rules a list follows, and whether it is German.
#[derive(Clone, Copy, Debug)]
pub struct Speech {
    /// The rules.
    pub law: Law,
    /// Whether its words are German.
    pub is_german: bool,
}

/// A stretch of a label's text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Run {
    /// The words.
    pub words: String,
    /// Whether they are set off by type.
    pub is_strong: bool,
}

/// What a law calls an allergen; none where it does not count there.
#[must_use]
pub fn counted(allergen: &Allergen, law: Law) -> Option<&str> {
    if law.is_european() { allergen.european.as_deref() } else { allergen.american.as_deref() }
}

/// The allergens of an ingredient that count under a law, in the order of the list.
pub fn of(ingredient: &Ingredient, law: Law) -> impl Iterator<Item = &'static Allergen> {
    allergens().iter().filter(move |one| counted(one, law).is_some() && ingredient.allergens.contains(&one.code))
}

/// The allergens of a food that count under a law, in the order of the list.
#[must_use]
pub fn in_food(food: &Food, law: Law) -> Vec<&'static Allergen> {
    let codes: BTreeSet<&str> = food.singles().iter().flat_map(|(one, _)| one.allergens.iter().map(String::as_str)).collect();
    allergens().iter().filter(|one| codes.contains(one.code.as_str()) && counted(one, law).is_some()).collect()
}

/// A name as the list prints it: allergens set off where they are named, and added in brackets where they are not.
/// American law sets nothing off: there they are added, and told again at the end.
#[must_use]
pub fn printed(title: &str, what: &What, Speech { law, is_german }: Speech) -> Vec<Run> {
    let carried: Vec<&Allergen> = match what {
        What::Ingredient(one) => of(one, law).collect(),
        // The parts in the brackets name their own.
        What::Compound(_) => Vec::new(),
    };
    let mut runs = vec![Run { words: title.to_owned(), is_strong: false }];
    let mut unnamed = Vec::new();
    for allergen in carried {
        if !set_off(&mut runs, words_of(allergen, is_german)) {
            unnamed.push(allergen);
        }
    }
    for (at, allergen) in unnamed.iter().enumerate() {
        let before = if at == 0 { " (" } else { ", " };
        runs.push(Run { words: before.to_owned(), is_strong: false });
        let word = words_of(allergen, is_german).first().unwrap_or(&allergen.title);
        runs.push(Run { words: word.trim_end_matches(MORE).to_owned(), is_strong: true });
    }
    if !unnamed.is_empty() {
        runs.push(Run { words: ")".to_owned(), is_strong: false });
    }
    runs.retain(|run| !run.words.is_empty());
    if !law.is_european() {
        runs.iter_mut().for_each(|run| run.is_strong = false);
    }
    runs
}

fn words_of(allergen: &Allergen, is_german: bool) -> &[String] {
    if is_german { &allergen.german } else { &allergen.words }
}

/// Sets every mention of an allergen off; whether there is one.
fn set_off(runs: &mut Vec<Run>, words: &[String]) -> bool {
    let mut is_named = false;
    let mut parted = Vec::new();
    for run in runs.drain(..) {
        let mut rest = run.words.as_str();
        while let Some((from, to)) = mention(rest, words).filter(|_| !run.is_strong) {
            is_named = true;
            parted.push(Run { words: rest[..from].to_owned(), is_strong: false });
            parted.push(Run { words: rest[from..to].to_owned(), is_strong: true });
            rest = &rest[to..];
        }
        // What is set off already may name it, too.
        is_named |= run.is_strong && mention(rest, words).is_some();
        parted.push(Run { words: rest.to_owned(), is_strong: run.is_strong });
    }
    *runs = parted;
    is_named
}

/// Where a text first names one of these words as a whole word: buckwheat is no wheat, nutmeg no nut.
fn mention(text: &str, words: &[String]) -> Option<(usize, usize)> {
    let is_letter = |c: Option<char>| c.is_some_and(char::is_alphanumeric);
    let mut found: Vec<(usize, usize)> = Vec::new();
    // Small letters of ASCII alone, so that places stay what they are in the text.
    let small = text.to_ascii_lowercase();
    for word in words.iter().filter(|word| !word.is_empty()) {
        let (word, goes_on) = word.strip_suffix(MORE).map_or((word.as_str(), false), |word| (word, true));
        let word = word.to_ascii_lowercase();
        let places = small.match_indices(&word).map(|(from, _)| (from, from + word.len()));
        found.extend(places.filter(|(from, to)| {
            !is_letter(small[..*from].chars().next_back()) && (goes_on || !is_letter(small[*to..].chars().next()))
        }));
    }
    found.into_iter().min_by_key(|(from, to)| (*from, std::cmp::Reverse(*to)))
}
