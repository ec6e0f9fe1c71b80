//! The other ways to raise a formula, made by the exchanges: a ripe culture for yeast, yeast for a culture, or all
//! mixed at once.

use crate::tongue::Tongue;
use crate::words::small_in;
use bench::exchange::{Remade, Wishes, is_culture_build, is_yeasted, remade};
use bench::forecast::{Surroundings, Verdict, rises_for_a_table};
use formula::arithmetic::mixture;
use formula::ingredient::allergens;
use formula::read::Leaven;
use formula::resolve::formula::StageAt;
use formula::{Book, Formula, Stage};
use std::collections::BTreeSet;

/// Another way to raise a formula.
#[derive(Debug)]
pub struct Way {
    /// How the page's address calls it.
    pub key: String,
    /// What readers choose.
    pub title: String,
    /// The formula made that way.
    pub formula: Formula,
    /// What cannot be kept.
    pub lost: Vec<String>,
    /// What must be minded.
    pub minded: Vec<String>,
}

/// The ways that can be made, and in which all rises that was foreseen to rise.
pub fn ways(book: &Book, formula: &Formula, around: &Surroundings) -> Vec<Way> {
    let Some((_, stage)) = formula.stages().find(|(_, stage)| is_yeasted(stage) || is_culture_build(stage)) else {
        return Vec::new();
    };
    let language = book.settings.language_of(&formula.head);
    let pantry = book.pantry.told_in(language);
    let culture = pantry.all().find(|one| one.leaven == Some(Leaven::Culture));
    let mut asked: Vec<(&str, Option<&str>, String)> = Vec::new();
    let tongue = Tongue::of(language);
    let title = small_in(&stage.title, tongue);
    if is_culture_build(stage) {
        asked.push(("leaven", Some("yeast-instant"), tongue.way_yeast(&title)));
    } else {
        if let Some(culture) = culture {
            let words = tongue.way_culture(small_in(&culture.called, tongue), &title);
            asked.push(("leaven", Some(&culture.name), words));
        }
        asked.push(("straight", None, tongue.way_straight(&title)));
    }
    let reached = foreseen(formula, around);
    let make = |(exchange, into, title): (&str, Option<&str>, String)| {
        let wishes = Wishes { of: Some(stage.name.clone()), into: into.map(str::to_owned), ..Wishes::default() };
        let Remade { formula: made, lost, minded } = remade(exchange, book, &formula.name, around, &wishes).ok()?;
        // A way in which something would not rise any more is none.
        let made_so = foreseen(&made, around);
        if reached.iter().any(|(name, rises)| *rises && made_so.contains(&(name.clone(), false))) {
            return None;
        }
        let [lost, mut minded] = [lost, minded].map(|told| told.iter().map(|one| tongue.of_exchange(one)).collect::<Vec<_>>());
        minded.splice(0..0, new_allergens(formula, &made, tongue));
        let key = into.map_or_else(|| exchange.to_owned(), str::to_owned);
        Some(Way { key, title, formula: made, lost, minded })
    };
    asked.into_iter().filter_map(make).collect()
}

/// Of each rise by its stage's name, whether all its conditions are reached.
fn foreseen(formula: &Formula, around: &Surroundings) -> BTreeSet<(String, bool)> {
    let named = |at: StageAt| -> &Stage { formula.stage(at) };
    let rises = rises_for_a_table(formula, around);
    rises.iter().map(|rise| (named(rise.at).name.clone(), rise.steps.iter().all(|step| step.verdict != Verdict::Never))).collect()
}

/// What comes in that the formula did not hold, and some must not eat.
fn new_allergens(before: &Formula, after: &Formula, tongue: Tongue) -> Option<String> {
    let all = |formula: &Formula| -> BTreeSet<String> {
        (0..formula.components.len()).flat_map(|component| mixture(formula, component).allergens).collect()
    };
    let (had, has) = (all(before), all(after));
    let new = allergens().iter().filter(|one| has.contains(&one.code) && !had.contains(&one.code));
    let titles: Vec<&str> = new.map(|one| tongue.allergen(one)).collect();
    (!titles.is_empty()).then(|| tongue.way_allergen(titles.join(", ")))
}
