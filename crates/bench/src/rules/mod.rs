//! Proof-reading by the rules of the trade: a file and a page for each rule, and one list of them.

mod case;
mod claims;
mod customs;
mod stages;
mod texts;

pub use case::{Case, Product};
pub use customs::{Custom, custom};

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

macro_rules! rules {
    ($($name:ident,)+) => {
        $(mod $name;)+
        /// All rules, in the order of the manual.
        pub const ALL: &[Rule] = &[$($name::RULE,)+];
    };
}

rules! {
    percentage_of_part_of_the_flour,
    bake_loss_missing,
    bake_loss_outside_custom,
    make_up_loss_missing,
    dough_does_not_fit_the_tin,
    hydration_outside_custom,
    salt_outside_custom,
    sugars_outside_custom,
    fat_outside_custom,
    yeast_outside_custom,
    prefermented_flour_outside_custom,
    dough_without_salt,
    rise_without_leaven,
    chemical_leaven_outside_custom,
    below_what_the_scale_shows,
    spooned_leaven_or_salt,
    flour_by_volume,
    liquid_too_hot_for_yeast,
    salt_straight_onto_yeast,
    alcohol_in_yeasted_dough,
    cinnamon_in_yeasted_dough,
    condition_without_time,
    waiting_without_time,
    retard_too_warm,
    retard_without_temperature,
    fridge_warmer_than_the_step,
    ripe_without_temperature,
    rise_without_temperature,
    rise_too_warm,
    butter_melts_in_the_proof,
    egg_or_milk_long_warm,
    cooking_without_an_end,
    core_below_custom,
    oil_temperature_outside_custom,
    griddle_outside_custom,
    oven_hotter_than_usual,
    cooking_without_temperature,
    oven_heat_in_words,
    hours_in_words,
    temperature_without_thermometer,
    raw_egg_never_cooked,
    raw_flour_never_cooked,
    tasting_raw_dough,
    children_at_the_hot_pan,
    honey_for_infants,
    alcohol_for_children,
    filling_without_cold_storage,
    gluten_free_with_gluten,
    milk_free_with_milk,
    egg_free_with_egg,
    nut_free_with_nuts,
    alcohol_free_with_alcohol,
    vegan_with_animal_food,
    allergen_left_out,
    sulphites_not_mentioned,
    introduction_missing,
    storage_missing,
    yield_missing,
    servings_missing,
    unknown_rule,
    silenced_without_a_reason,
}

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
