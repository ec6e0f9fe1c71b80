//! The cautions that customarily stand by a recipe, each with the reason it is shown here.

use formula::arithmetic::mixture;
use formula::read::Action;
use formula::{Content, Formula};
use std::collections::BTreeSet;

/// A caution with its heading, text and source.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Caution {
    /// What it is about.
    pub title: &'static str,
    /// What to mind.
    pub text: &'static str,
    /// Whose advice it restates.
    pub source: &'static str,
}

const RAW_FLOUR: Caution = Caution {
    title: "Raw flour and dough",
    text: "Milling does not kill germs: do not taste raw dough or batter, and wash hands and bench afterwards.",
    source: "after US Food and Drug Administration consumer advice",
};
const RAW_EGG: Caution = Caution {
    title: "Raw egg",
    text: "Cook through, to at least 71 °C in the middle of an egg dish; do not leave egg mixtures warm for more than two hours. \
           Where egg stays raw, use pasteurised egg for infants, in pregnancy, in old age and with a weak immune system.",
    source: "after US Food and Drug Administration consumer advice",
};
const HONEY: Caution = Caution {
    title: "Honey",
    text: "Not for children under twelve months, not even baked.",
    source: "after public health advice on infant botulism",
};
const NUTS: Caution = Caution {
    title: "Whole nuts",
    text: "Whole nuts can choke children under five years; grind or chop them finely.",
    source: "after UK National Health Service advice",
};
const HOT_SUGAR: Caution = Caution {
    title: "Hot sugar",
    text: "Boiling syrup clings and burns deeply: keep children away, have cold water ready, cool a burn under running water for 20 minutes.",
    source: "common practice, no source",
};
const HOT_OIL: Caution = Caution {
    title: "Hot fat",
    text: "Fill the pan no more than a third, keep water away, never leave it; if it smokes or burns, turn off the heat and cover it. Do not move it hot.",
    source: "common practice, no source",
};
const ALCOHOL: Caution = Caution {
    title: "Alcohol",
    text: "Contains alcohol, which does not all cook off: tell guests, and leave it out for children.",
    source: "after the USDA table of nutrient retention factors, release 6",
};

/// The cautions that a formula calls for, in the order of their rank.
#[must_use]
pub fn cautions(formula: &Formula) -> Vec<Caution> {
    let mut groups = BTreeSet::new();
    let mut names = BTreeSet::new();
    let stages = || formula.components.iter().flat_map(|component| &component.stages);
    for line in stages().flat_map(|stage| &stage.lines) {
        match &line.content {
            Content::Ingredient(one) => note(one, &mut groups, &mut names),
            Content::Formula(blend) => blend.ingredients.iter().for_each(|(one, ..)| note(one, &mut groups, &mut names)),
            Content::Stage(..) => {}
        }
    }
    let does = |actions: &[Action]| stages().flat_map(|stage| &stage.steps).any(|step| actions.contains(&step.action));
    let alcohol = (0..formula.components.len()).any(|c| mixture(formula, c).alcohol);
    let has_group = |group: &str| groups.contains(group);
    let candidates = [
        (has_group("flour"), RAW_FLOUR),
        (has_group("egg"), RAW_EGG),
        (names.contains("honey"), HONEY),
        (names.iter().any(|name| WHOLE_NUTS.contains(&name.as_str())), NUTS),
        (does(&[Action::Boil, Action::Simmer, Action::Reduce]) && (has_group("sugar") || has_group("syrup")), HOT_SUGAR),
        (does(&[Action::Fry]), HOT_OIL),
        (alcohol, ALCOHOL),
    ];
    candidates.into_iter().filter(|(called_for, _)| *called_for).map(|(_, caution)| caution).collect()
}

const WHOLE_NUTS: [&str; 9] =
    ["almonds", "almonds-blanched", "hazelnuts", "walnuts", "pecans", "cashews", "pistachios", "macadamias", "peanuts"];

/// Notes an ingredient, what it starts from and what it is mixed of.
fn note(ingredient: &formula::Ingredient, groups: &mut BTreeSet<String>, names: &mut BTreeSet<String>) {
    groups.insert(ingredient.group.clone());
    names.extend(ingredient.kinds.iter().cloned());
    ingredient.parts.iter().for_each(|(part, _)| note(part, groups, names));
}
