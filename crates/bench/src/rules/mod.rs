//! Proof-reading by the rules of the trade: a file and a page for each rule, and one list of them.

mod case;
mod claims;
mod customs;
mod stages;
mod texts;

mod alcohol_for_children;
mod alcohol_free_with_alcohol;
mod alcohol_in_yeasted_dough;
mod allergen_left_out;
mod bake_loss_missing;
mod bake_loss_outside_custom;
mod below_what_the_scale_shows;
mod butter_melts_in_the_proof;
mod chemical_leaven_outside_custom;
mod children_at_the_hot_pan;
mod cinnamon_in_yeasted_dough;
mod condition_without_time;
mod cooking_without_an_end;
mod cooking_without_temperature;
mod core_below_custom;
mod core_not_reached;
mod dough_does_not_fit_the_tin;
mod dough_temperature_out_of_reach;
mod dough_without_salt;
mod egg_free_with_egg;
mod egg_or_milk_long_warm;
mod fat_outside_custom;
mod filling_without_cold_storage;
mod flour_by_volume;
mod fridge_warmer_than_the_step;
mod gluten_free_with_gluten;
mod griddle_outside_custom;
mod heat_not_enough_for_egg_and_flour;
mod held_neither_hot_nor_cold;
mod honey_for_infants;
mod hours_in_words;
mod hydration_outside_custom;
mod introduction_missing;
mod liquid_too_hot_for_yeast;
mod make_up_loss_missing;
mod milk_free_with_milk;
mod nut_free_with_nuts;
mod oil_temperature_outside_custom;
mod oven_heat_in_words;
mod oven_hotter_than_usual;
mod pan_too_hot_for_the_thickness;
mod percentage_of_part_of_the_flour;
mod preferment_spent;
mod prefermented_flour_outside_custom;
mod raw_egg_never_cooked;
mod raw_flour_never_cooked;
mod retard_too_warm;
mod retard_without_temperature;
mod ripe_without_temperature;
mod rise_after_the_oven;
mod rise_far_from_the_room;
mod rise_too_warm;
mod rise_without_leaven;
mod rise_without_temperature;
mod salt_outside_custom;
mod salt_straight_onto_yeast;
mod servings_missing;
mod silenced_without_a_reason;
mod spooned_leaven_or_salt;
mod stage_used_before_it_is_made;
mod step_shorter_than_its_condition;
mod storage_missing;
mod sugars_outside_custom;
mod sulphites_not_mentioned;
mod syrup_misses_its_brix;
mod tasting_raw_dough;
mod temperature_without_thermometer;
mod unknown_rule;
mod vegan_with_animal_food;
mod waiting_without_time;
mod whole_nuts_for_small_children;
mod yeast_outside_custom;
mod yield_missing;

pub use case::{Case, Product};
pub use customs::{Custom, custom};
pub use stages::Traits;

use formula::diagnostic::told_enough;
use formula::read::{BookSettings, Kitchen};
use formula::{Diagnostic, Formula, Place, Severity};

/// A rule of the trade.
pub struct Rule {
    /// A readable phrase that names the fault.
    pub code: &'static str,
    /// How bad it is.
    pub severity: Severity,
    /// Why it is a fault, with a bad and a good example: the text of `explain`.
    pub page: &'static str,
    /// Reports every place where a formula breaks it.
    pub check: fn(&Case, &mut Vec<Diagnostic>),
}

impl Rule {
    /// What this rule finds at a place.
    fn at(&self, place: Place, message: impl Into<String>) -> Diagnostic {
        Diagnostic { code: self.code, severity: self.severity, place, message: message.into(), hint: None, fix: None }
    }
}

/// All rules, in the order of the manual.
pub const ALL: &[Rule] = &[
    percentage_of_part_of_the_flour::RULE,
    bake_loss_missing::RULE,
    bake_loss_outside_custom::RULE,
    make_up_loss_missing::RULE,
    dough_does_not_fit_the_tin::RULE,
    hydration_outside_custom::RULE,
    salt_outside_custom::RULE,
    sugars_outside_custom::RULE,
    fat_outside_custom::RULE,
    yeast_outside_custom::RULE,
    prefermented_flour_outside_custom::RULE,
    dough_without_salt::RULE,
    rise_without_leaven::RULE,
    chemical_leaven_outside_custom::RULE,
    below_what_the_scale_shows::RULE,
    spooned_leaven_or_salt::RULE,
    flour_by_volume::RULE,
    liquid_too_hot_for_yeast::RULE,
    salt_straight_onto_yeast::RULE,
    alcohol_in_yeasted_dough::RULE,
    cinnamon_in_yeasted_dough::RULE,
    condition_without_time::RULE,
    waiting_without_time::RULE,
    retard_too_warm::RULE,
    retard_without_temperature::RULE,
    fridge_warmer_than_the_step::RULE,
    ripe_without_temperature::RULE,
    rise_without_temperature::RULE,
    rise_far_from_the_room::RULE,
    rise_too_warm::RULE,
    butter_melts_in_the_proof::RULE,
    egg_or_milk_long_warm::RULE,
    held_neither_hot_nor_cold::RULE,
    cooking_without_an_end::RULE,
    core_below_custom::RULE,
    oil_temperature_outside_custom::RULE,
    griddle_outside_custom::RULE,
    oven_hotter_than_usual::RULE,
    cooking_without_temperature::RULE,
    preferment_spent::RULE,
    step_shorter_than_its_condition::RULE,
    dough_temperature_out_of_reach::RULE,
    core_not_reached::RULE,
    heat_not_enough_for_egg_and_flour::RULE,
    pan_too_hot_for_the_thickness::RULE,
    syrup_misses_its_brix::RULE,
    oven_heat_in_words::RULE,
    hours_in_words::RULE,
    temperature_without_thermometer::RULE,
    stage_used_before_it_is_made::RULE,
    rise_after_the_oven::RULE,
    raw_egg_never_cooked::RULE,
    raw_flour_never_cooked::RULE,
    tasting_raw_dough::RULE,
    children_at_the_hot_pan::RULE,
    honey_for_infants::RULE,
    whole_nuts_for_small_children::RULE,
    alcohol_for_children::RULE,
    filling_without_cold_storage::RULE,
    gluten_free_with_gluten::RULE,
    milk_free_with_milk::RULE,
    egg_free_with_egg::RULE,
    nut_free_with_nuts::RULE,
    alcohol_free_with_alcohol::RULE,
    vegan_with_animal_food::RULE,
    allergen_left_out::RULE,
    sulphites_not_mentioned::RULE,
    introduction_missing::RULE,
    storage_missing::RULE,
    yield_missing::RULE,
    servings_missing::RULE,
    unknown_rule::RULE,
    silenced_without_a_reason::RULE,
];

/// The rule of that code.
#[must_use]
pub fn named(code: &str) -> Option<&'static Rule> {
    ALL.iter().find(|rule| rule.code == code)
}

/// Something that the author silenced, with the reason.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Silenced {
    /// What would have been said.
    pub found: Diagnostic,
    /// Why it is not.
    pub reason: String,
}

/// What the rules find in a formula.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Judged {
    /// What is said.
    pub found: Vec<Diagnostic>,
    /// What the author silenced, for the sheet to show.
    pub silenced: Vec<Silenced>,
}

/// Proof-reads a formula that has no errors of its own.
#[must_use]
pub fn proof_read(formula: &Formula, kitchen: &Kitchen, settings: &BookSettings) -> Vec<Diagnostic> {
    judge(formula, kitchen, settings).found
}

/// Proof-reads a formula, and keeps apart what its author silenced.
#[must_use]
pub fn judge(formula: &Formula, kitchen: &Kitchen, settings: &BookSettings) -> Judged {
    let case = Case::of(formula, kitchen, settings);
    let mut all = Vec::new();
    for rule in ALL {
        (rule.check)(&case, &mut all);
    }
    let mut judged = Judged::default();
    for found in all {
        match reason(formula, &found) {
            Some(reason) => judged.silenced.push(Silenced { found, reason }),
            None if told_enough(&judged.found, found.code) => {}
            None => judged.found.push(found),
        }
    }
    judged
}

/// The reason for which an author silenced what is found, if one is given.
fn reason(formula: &Formula, found: &Diagnostic) -> Option<String> {
    let mut quiets = formula.quiets.iter().filter(|quiet| !quiet.reason.is_empty());
    let silences = |quiet: &&formula::read::Quiet| quiet.rule == found.code && quiet.covers.contains(&found.place.span.start);
    quiets.find(silences).map(|quiet| quiet.reason.clone())
}
