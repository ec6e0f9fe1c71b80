//! The cautions that customarily stand by a recipe, each with the reason it is shown here.

use crate::rules::Traits;
use formula::arithmetic::mixture;
use formula::read::{Action, Group};
use formula::{Formula, Ingredient};
use quantity::{Between, Temperature};

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
const KEPT_WARM: Caution = Caution {
    title: "Held warm and rewarmed",
    text: "Hold hot food at 57 °C (135 °F) or more. Warm through quickly and only once, to 74 °C (165 °F) in the middle where it is held hot after that. Your local rules may ask for more: 63 °C in England.",
    source: "after the US Food Code 2022, 3-501.16 and 3-403.11, and England's food hygiene regulations",
};
const ALCOHOL: Caution = Caution {
    title: "Alcohol",
    text: "Contains alcohol, which does not all cook off: tell guests, and leave it out for children.",
    source: "after the USDA table of nutrient retention factors, release 6",
};

/// The cautions that a formula calls for, in the order of their rank.
#[must_use]
pub fn cautions(formula: &Formula) -> Vec<Caution> {
    let any = |asked: &dyn Fn(&Ingredient) -> bool| formula.lines().any(|(_, line)| line.ingredients().any(|one| asked(one)));
    let does = |actions: &[Action]| formula.steps().any(|(_, step)| actions.contains(&step.action));
    let has_sugar = any(&|one| matches!(one.group, Group::Sugar | Group::Syrup));
    let alcohol = (0..formula.components.len()).any(|c| mixture(formula, c).alcohol);
    let candidates = [
        (any(&|one| Traits::of(one).has(Traits::FLOUR)), RAW_FLOUR),
        (any(&|one| Traits::of(one).has(Traits::EGG)), RAW_EGG),
        (any(&|one| one.holds("honey")), HONEY),
        (any(&|one| one.whole_nut), NUTS),
        (does(&[Action::Boil, Action::Simmer, Action::Reduce]) && has_sugar, HOT_SUGAR),
        (does(&[Action::Fry]), HOT_OIL),
        (does(&[Action::Rewarm]) || is_held_warm(formula), KEPT_WARM),
        (alcohol, ALCOHOL),
    ];
    candidates.into_iter().filter(|(called_for, _)| *called_for).map(|(_, caution)| caution).collect()
}

/// Whether a step holds food well above the warmth of a room.
fn is_held_warm(formula: &Formula) -> bool {
    let is_warm = |range: Between<Temperature>| range.to >= Temperature::celsius(40.0);
    formula.steps().any(|(_, step)| step.action == Action::Hold && step.temperature.is_some_and(is_warm))
}
