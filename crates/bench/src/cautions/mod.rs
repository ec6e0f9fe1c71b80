//! The cautions that customarily stand by a recipe, each with the reason it is shown here.

use crate::rules::Traits;
use formula::arithmetic::mixture;
use formula::read::{Action, Group};
use formula::{Formula, Ingredient};
use quantity::{Between, Temperature};

/// A caution and its source; heading and text are the matter of whoever tells it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Caution {
    /// What it is about, in a word to tell it by: "raw-flour".
    pub name: &'static str,
    /// Whose advice it restates.
    pub source: &'static str,
}

const RAW_FLOUR: Caution = Caution { name: "raw-flour", source: "after US Food and Drug Administration consumer advice" };
const RAW_EGG: Caution = Caution { name: "raw-egg", source: "after US Food and Drug Administration consumer advice" };
const HONEY: Caution = Caution { name: "honey", source: "after public health advice on infant botulism" };
const NUTS: Caution = Caution { name: "whole-nuts", source: "after UK National Health Service advice" };
const HOT_SUGAR: Caution = Caution { name: "hot-sugar", source: "common practice, no source" };
const HOT_OIL: Caution = Caution { name: "hot-fat", source: "common practice, no source" };
const KEPT_WARM: Caution = Caution {
    name: "held-warm",
    source: "after the US Food Code 2022, 3-501.16 and 3-403.11, and England's food hygiene regulations",
};
const ALCOHOL: Caution = Caution { name: "alcohol", source: "after the USDA table of nutrient retention factors, release 6" };

/// Every caution by its name, for those who word them.
pub const NAMES: [&str; 8] =
    [RAW_FLOUR.name, RAW_EGG.name, HONEY.name, NUTS.name, HOT_SUGAR.name, HOT_OIL.name, KEPT_WARM.name, ALCOHOL.name];

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
