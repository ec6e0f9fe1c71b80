//! The trade's words that a page tells by: what is done, kinds of stages, spoons, eggs, allergens, nutrients, cautions.

use super::Tongue;
use super::message::messages;
use bench::cautions::Caution;
use formula::ingredient::Allergen;
use formula::ingredient::eggs::EggPart;
use formula::read::{Action, StageKind};
use quantity::{Count, SpoonSystem};

messages!(TRADE {
    about;
    a_side(time: String);
    at_least;
    at_the_heat;
    at_the_heat_part;
    egg_white;
    egg_whites;
    egg_whole;
    egg_wholes;
    egg_yolk;
    egg_yolks;
    eggs_of_size(eggs: String, size: &str);
    energy;
    figure_cup;
    figure_cups;
    figure_tablespoon;
    figure_teaspoon;
    figure_to;
    hands_on;
    hands_on_part;
    nutrient_carbohydrate;
    nutrient_fat;
    nutrient_fibre;
    nutrient_protein;
    nutrient_saturates;
    nutrient_sodium;
    nutrient_sugars;
    part_of_the(stage: &str);
    piece;
    pieces;
    spoons_australian;
    spoons_metric;
    spoons_us_customary;
    spoons_us_label;
    start_to_table;
    the_whole(stage: &str);
    then;
    until;
    until_at(degrees: &str);
    until_brix(degrees: String);
    until_core(degrees: &str);
    until_doubled;
    until_it_pours(viscosity: String);
    until_ripe;
    until_risen_by(share: String);
    until_risen_by_half;
    until_trebled;
    waiting;
});

impl Tongue {
    /// What a step does: "knead".
    #[must_use]
    pub fn action(self, action: Action) -> &'static str {
        self.catalogue.fixed_in("action_", action.word())
    }

    /// What a stage is: "final-mix".
    #[must_use]
    pub fn kind(self, kind: StageKind) -> &'static str {
        self.catalogue.fixed_in("kind_", kind.word())
    }

    /// What lies beside a page to be printed: "recipe card".
    #[must_use]
    pub fn on_paper(self, name: &str) -> &'static str {
        self.catalogue.fixed_in("paper_", name)
    }

    /// Whose spoons and cups.
    #[must_use]
    pub fn spoons(self, system: SpoonSystem) -> &'static str {
        match system {
            SpoonSystem::Metric => self.spoons_metric(),
            SpoonSystem::Australian => self.spoons_australian(),
            SpoonSystem::UsCustomary => self.spoons_us_customary(),
            SpoonSystem::UsLabel => self.spoons_us_label(),
        }
    }

    /// The word for so many eggs or parts of them.
    #[must_use]
    pub fn egg(self, part: EggPart, count: Count) -> &'static str {
        let (one, more) = self.eggs_counted(part);
        if count > Count::pieces(1.0) { more } else { one }
    }

    /// The words for one egg, white or yolk, and for more.
    #[must_use]
    pub fn eggs_counted(self, part: EggPart) -> (&'static str, &'static str) {
        match part {
            EggPart::Whole => (self.egg_whole(), self.egg_wholes()),
            EggPart::White => (self.egg_white(), self.egg_whites()),
            EggPart::Yolk => (self.egg_yolk(), self.egg_yolks()),
        }
    }

    /// What an allergen is called.
    #[must_use]
    pub fn allergen(self, allergen: &Allergen) -> &'static str {
        self.catalogue.fixed_in("allergen_", &allergen.code)
    }

    /// The figures of a serving, in their order.
    #[must_use]
    pub fn nutrients(self) -> [&'static str; 7] {
        [
            self.nutrient_fat(),
            self.nutrient_saturates(),
            self.nutrient_carbohydrate(),
            self.nutrient_sugars(),
            self.nutrient_fibre(),
            self.nutrient_protein(),
            self.nutrient_sodium(),
        ]
    }

    /// A caution: what it is about, and what to mind.
    #[must_use]
    pub fn caution(self, caution: &Caution) -> (&'static str, &'static str) {
        (self.catalogue.fixed_in("caution_", caution.name), self.catalogue.fixed_in("caution_text_", caution.name))
    }
}
