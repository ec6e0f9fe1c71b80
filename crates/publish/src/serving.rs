//! What is in a serving of all that a formula makes, in words that the page and the structured data share.

use crate::tongue::Tongue;
use bench::forecast::nutrition;
use formula::read::Action;
use formula::{Content, Formula};
use quantity::{Count, Mass};
use std::collections::BTreeMap;

/// A serving.
#[derive(Clone, Debug)]
pub struct Serving {
    /// "One of 6 servings of all that is made, about 210 g".
    pub size: String,
    /// Its energy.
    pub kilojoules: String,
    /// The same in the older unit.
    pub kilocalories: String,
    /// Its figures.
    pub lines: Vec<ServingLine>,
}

/// A figure of a serving.
#[derive(Clone, Debug)]
pub struct ServingLine {
    /// What it is.
    pub title: &'static str,
    /// How much.
    pub content: String,
    /// What schema.org calls it.
    pub property: &'static str,
}

/// What the forecast calls a figure, and how schema.org does, in the order of their titles. Salt is declared there as
/// its sodium.
const LINES: [(&str, &str); 7] = [
    ("fat", "fatContent"),
    ("of which saturates", "saturatedFatContent"),
    ("carbohydrate", "carbohydrateContent"),
    ("of which sugars", "sugarContent"),
    ("fibre", "fiberContent"),
    ("protein", "proteinContent"),
    ("salt", "sodiumContent"),
];

/// Regulation (EU) No 1169/2011, annex I: salt is sodium times 2.5.
const SALT_OF_SODIUM: f64 = 2.5;

impl Serving {
    /// A serving of a formula; none where it does not say how many it serves, or where any figure has a gap.
    #[must_use]
    pub fn of(formula: &Formula, tongue: Tongue) -> Option<Self> {
        let print = tongue.print;
        let serves = formula.components.first()?.yields.serves.filter(|serves| *serves > Count::ZERO)?;
        if goes_into_itself(formula) || fries_in_untold_fat(formula) {
            return None;
        }
        let all = nutrition(formula);
        if all.len() != formula.components.len() || all.iter().flat_map(|one| &one.per_100_g).any(|line| !line.untold.is_empty())
        {
            return None;
        }
        let (mut grams, mut kilojoules, mut kilocalories, mut done) = (BTreeMap::new(), 0.0, 0.0, Mass::ZERO);
        for one in &all {
            let share = one.done.as_grams() / 100.0 / serves.as_pieces();
            done += one.done / serves.as_pieces();
            kilojoules += one.energy.value.kilojoules * share;
            kilocalories += one.energy.value.kilocalories * share;
            for line in &one.per_100_g {
                *grams.entry(line.title).or_insert(0.0) += line.content.as_grams() * share;
            }
        }
        let content = |key: &str| {
            let value = grams.get(key).copied().unwrap_or_default();
            match key {
                "salt" => format!("{}\u{a0}mg", print.number(value / SALT_OF_SODIUM * 1000.0, 0)),
                _ => format!("{}\u{a0}g", print.number(value, 1)),
            }
        };
        let titles = tongue.nutrients();
        let lines =
            LINES.iter().zip(titles).map(|((key, property), title)| ServingLine { title, content: content(key), property });
        let whole = |value: f64, unit: &str| format!("{}\u{a0}{unit}", print.number(value, 0));
        Some(Self {
            size: tongue.serving_size(print.count(serves), print.mass(Mass::grams((done.as_grams() / 5.0).round() * 5.0))),
            kilojoules: whole(kilojoules, "kJ"),
            kilocalories: whole(kilocalories, "kcal"),
            lines: lines.collect(),
        })
    }
}

/// Whether the product of one component goes into another, so that adding them up would count it twice.
fn goes_into_itself(formula: &Formula) -> bool {
    formula.lines().any(|((c, _), line)| matches!(line.content, Content::Stage(other, _) if other != c))
}

/// Whether something is fried in fat that no line tells of: how much it takes up is then not known.
fn fries_in_untold_fat(formula: &Formula) -> bool {
    let fries = |step: &formula::Step| step.action == Action::Fry;
    let has_fat =
        |line: &formula::Line| matches!(&line.content, Content::Ingredient(one) if one.group == formula::read::Group::Fat);
    formula.stages().any(|(_, stage)| stage.steps.iter().any(fries) && !stage.lines.iter().any(has_fat))
}
