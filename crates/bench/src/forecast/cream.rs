//! Creamed and stirred mixtures: how warm they come from the bowl, how firm their fat is, how strong their alcohol.

use super::held::Products;
use super::mixing::{is_butter, mixed};
use super::surroundings::Surroundings;
use formula::read::StageKind;
use formula::resolve::formula::StageAt;
use formula::{Formula, Known, Stage};
use quantity::{Fraction, Mass, Temperature};
use science::heat::solid_fat;
use science::keeping::alcohol_strength;

/// What is foreseen of a mixture that no heat changes.
#[derive(Clone, Debug)]
pub struct Cream {
    /// The component and stage.
    pub at: StageAt,
    /// How warm it comes from the bowl.
    pub temperature: Known<Temperature>,
    /// The solid share of butter's fat at that temperature, where butter carries it.
    pub solid_fat: Option<Known<Fraction>>,
    /// Alcohol by volume of its water and alcohol, where there is any.
    pub alcohol: Option<Known<Fraction>>,
    /// The water activity of what is dissolved, an upper estimate.
    pub water_activity: Option<Known<Fraction>>,
}

/// Solid fat of butter that is firm, workable, and too soft to hold air: common practice, no source.
const FIRM: Fraction = Fraction::percent(35.0);
const SOFT: Fraction = Fraction::percent(12.0);

impl Cream {
    /// How firm the butter is, in words.
    #[must_use]
    pub fn firmness(&self) -> Option<&'static str> {
        let solid = self.solid_fat.as_ref()?.value;
        Some(if solid > FIRM {
            "firm: it will not take up air yet"
        } else if solid >= SOFT {
            "soft enough to cream, and firm enough to hold air"
        } else {
            "nearly melted: it will not hold air"
        })
    }
}

/// Foresees every creamed or stirred stage.
pub fn creams(formula: &Formula, around: &Surroundings) -> Vec<Cream> {
    let mut products = Products::default();
    let stirred = formula.stages().filter(|(_, stage)| matches!(stage.kind, StageKind::Creamed | StageKind::Mixed));
    stirred.map(|(at, stage)| cream(formula, at, stage, around, &mut products)).collect()
}

fn cream(formula: &Formula, at: StageAt, stage: &Stage, around: &Surroundings, products: &mut Products) -> Cream {
    let temperature = mixed((stage, at.1), around, &|_, _| None).computed;
    let made = products.made(formula, at);
    let butter: Mass =
        stage.lines.iter().filter(|line| line.ingredient().is_some_and(|one| is_butter(one))).map(|line| line.mass.value).sum();
    let is_carried = butter.as_grams() > stage.mixed().as_grams() * 0.2;
    let solid = science::heat::solid_fat::EQUATION.name;
    let spread = science::heat::solid_fat::SPREAD;
    let fat = solid_fat(temperature.value);
    let band = Some(((fat - spread).max(Fraction::ZERO), fat + spread));
    let alcohol = made.ethanol > Mass::ZERO && made.water > Mass::ZERO;
    let strength = || alcohol_strength::by_volume(Fraction::ratio(made.ethanol / (made.ethanol + made.water)));
    let activity = || {
        Known::computed(
            made.water_activity(),
            "water activity of sugars, salt and alcohol",
            science::keeping::water_activity::mixture::EQUATION.name,
        )
    };
    Cream {
        at,
        solid_fat: is_carried.then(|| Known { band, ..Known::computed(fat, "the solid fat of butter", solid) }),
        alcohol: alcohol
            .then(|| Known::computed(strength(), "the strength of a mix", science::keeping::alcohol_strength::EQUATION.name)),
        water_activity: (made.water > Mass::ZERO).then(activity),
        temperature,
    }
}
