//! What a formula's label says under a law: a draft, with every gap told. Nothing here certifies anything.

mod allergens;
mod contents;
mod declaration;
mod facts;
mod figure;
mod finished;
mod gaps;
mod law;
mod list;
mod pack;
mod quantities;

pub use allergens::{Run, Speech};
pub use declaration::{Declaration, DeclarationLine};
pub use facts::{FactLine, Facts};
pub use figure::Shown;
pub use finished::{Food, Part, What, finished};
pub use law::{Law, Rule};
pub use list::{Entry, LITTLE, List, Water};
pub use pack::{DateForm, Pack, Serving};
pub use quantities::{Asked, Quantity};
pub use science::nutrition::serving::EATEN_AS;

use formula::ingredient::Allergen;
use formula::read::{BookSettings, ForLabel, is_german};
use formula::{Component, Formula};
use quantity::{Mass, TimeSpan};
use std::collections::BTreeSet;

/// A draft of a label.
#[derive(Clone, Debug)]
pub struct Label {
    /// Whose rules it follows.
    pub law: Law,
    /// Whether it is written in German, as the Union's law has it in German; a label under another law is English.
    pub is_german: bool,
    /// What the food is.
    pub name: String,
    /// The components that are sold together.
    pub components: Vec<String>,
    /// What one batch of it weighs.
    pub makes: Mass,
    /// The list of ingredients.
    pub list: List,
    /// The quantities that the name or the author asks for, over the whole food.
    pub quantities: Vec<Quantity>,
    /// The allergens that count.
    pub allergens: Vec<&'static Allergen>,
    /// The nutrition declaration of European law.
    pub declaration: Option<Declaration>,
    /// The nutrition facts of American law.
    pub facts: Option<Facts>,
    /// What is in a pack.
    pub pack: Pack,
    /// How a buyer keeps it.
    pub storage: Option<String>,
    /// How long it keeps once packed, how its date is written, and whether it must be used by then.
    pub keeps: Option<(TimeSpan, DateForm, bool)>,
    /// What is said of alcohol.
    pub alcohol: Option<Alcohol>,
    /// Who answers for it.
    pub sold_by: Option<String>,
    /// What is missing.
    pub gaps: Vec<String>,
    /// What the author or the authority must still decide.
    pub open: Vec<String>,
}

/// Alcohol that went into a food.
#[derive(Clone, Debug, PartialEq)]
pub struct Alcohol {
    /// Gram in 100 g of the finished food, as if heat had driven none of it off.
    pub at_most: Mass,
    /// Which ingredients bring it.
    pub from: Vec<String>,
}

/// What a label is asked of.
#[derive(Clone, Debug, Default)]
pub struct Sold {
    /// The components; those that the author sells together if none is named.
    pub components: Vec<usize>,
    /// The kind of food of American law, instead of the one that the formula states.
    pub eaten_as: Option<&'static str>,
}

/// The label of a formula, of the components named or of those that its author sells together.
#[must_use]
pub fn label(formula: &Formula, settings: &BookSettings, law: Law, of: &Sold) -> Option<Label> {
    let usual = sold(formula);
    let sold = if of.components.is_empty() { usual.clone() } else { of.components.clone() };
    let is_usual = sold == usual;
    let all: Vec<&Component> = sold.iter().filter_map(|c| formula.components.get(*c)).collect();
    // What comes in pieces gives the piece; else the first of all.
    let main = all.iter().find(|one| one.yields.pieces.is_some()).or(all.first()).copied()?;
    if all.len() < sold.len() {
        return None;
    }
    let food = food(formula, &sold);
    let whole = food.weighs();
    if whole <= Mass::ZERO {
        return None;
    }
    // What the author says of the pack holds for what is usually in it: sold otherwise, it is another food.
    let told = formula.head.label.clone();
    let mut said = if is_usual { told } else { ForLabel { stressed: told.stressed, ..ForLabel::default() } };
    said.eaten_as = of.eaten_as.or(said.eaten_as);
    let said = &said;
    let name = match &said.name {
        Some(name) => name.clone(),
        None if sold.len() == 1 && formula.components.len() > 1 => main.title.clone(),
        None => formula.head.title.clone(),
    };
    let asked = match law.is_european() {
        true => Asked::of(&name, said.stressed.iter().map(|one| one.value.clone())),
        false => Asked::default(),
    };
    let pack = pack::pack(said, main, whole);
    let portion = pack::portion(said, main, &pack, whole);
    let serving = pack::serving(said, &pack, density(&food), law);
    let speech = Speech { law, is_german: law == Law::Eu && is_german(settings.language_of(&formula.head)) };
    let mut label = Label {
        law,
        is_german: speech.is_german,
        list: list::list(&food, speech, whole, &asked),
        quantities: quantities::quantities(&food, &asked),
        allergens: allergens::in_food(&food, law),
        declaration: law.is_european().then(|| declaration::declaration(&food, portion)).flatten(),
        facts: serving.as_ref().and_then(|serving| facts::facts(&food, serving)),
        storage: said.storage.clone().or_else(|| formula.head.storage.clone()),
        keeps: said.keeps.map(|keeps| (keeps, pack::date_form(keeps), said.use_by)),
        alcohol: alcohol(&food),
        sold_by: settings.sold_by.clone(),
        components: sold.iter().map(|c| formula.components[*c].title.clone()).collect(),
        makes: whole,
        name,
        pack,
        gaps: Vec::new(),
        open: Vec::new(),
    };
    label.gaps = gaps::gaps(&label, &food, said.eaten_as.is_some());
    label.open = gaps::open(&label, &food, formula);
    Some(label)
}

/// The components that the author sells together, or those that go into no other.
#[must_use]
pub fn sold(formula: &Formula) -> Vec<usize> {
    let of = &formula.head.label.of;
    let named: Vec<usize> =
        of.iter().filter_map(|name| formula.components.iter().position(|component| component.name == name.value)).collect();
    if !named.is_empty() {
        return named;
    }
    let used: BTreeSet<usize> = formula
        .stages()
        .flat_map(|(at, stage)| stage.uses().map(move |(c, _)| (at.0, c)))
        .filter(|(own, c)| own != c)
        .map(|(_, c)| c)
        .collect();
    (0..formula.components.len()).filter(|c| !used.contains(c)).collect()
}

/// One component as it is, or several put together.
fn food(formula: &Formula, sold: &[usize]) -> Food {
    if let [one] = sold {
        return finished(formula, *one);
    }
    let part = |c: &usize| {
        let food = finished(formula, *c);
        finished::compound(&formula.components[*c].name, &formula.components[*c].title, food.weighs(), food)
    };
    Food { parts: sold.iter().map(part).collect(), steam: Mass::ZERO }
}

/// What a millilitre of a food weighs where water and sugar make almost all of it: a syrup's, by its strength.
fn density(food: &Food) -> Option<quantity::Density> {
    use formula::ingredient::Figure;
    let (sugars, whole) = (contents::held(food, Figure::Sugars).told, food.weighs());
    let fat_and_protein = contents::held(food, Figure::Fat).told + contents::held(food, Figure::Protein).told;
    let strength = quantity::Fraction::ratio(sugars / whole.as_grams());
    let is_syrup = strength > quantity::Fraction::percent(30.0) && fat_and_protein < 0.02 * whole.as_grams();
    is_syrup.then(|| science::sugar::density::density(strength))
}

fn alcohol(food: &Food) -> Option<Alcohol> {
    use formula::ingredient::Figure;
    let held = contents::held(food, Figure::Alcohol).times(100.0 / food.weighs().as_grams());
    let mut from: Vec<String> =
        food.singles().iter().filter(|(one, _)| one.is_alcoholic()).map(|(one, _)| one.called.clone()).collect();
    from.sort_unstable();
    from.dedup();
    (!from.is_empty()).then(|| Alcohol { at_most: Mass::grams(held.told), from })
}
