//! How a component keeps: time in the warm with milk or egg, water activity, and what published tables say.
//! Guidance only: local rules and licensed practice decide.

use super::held::Products;
use super::middle;
use super::surroundings::{Stand, Surroundings};
use formula::read::{Action, Attention};
use formula::{Component, Formula, Known, Stage, Step};
use quantity::{Fraction, Mass, TimeSpan};
use science::keeping::food_code::{self, Treatment};
use science::keeping::listeria::{self, ReadyToEat};

/// What is foreseen of a component's keeping.
#[derive(Clone, Debug)]
pub struct Keeping {
    /// The component.
    pub component: usize,
    /// The hours between 5 and 60 °C before it is cooked or chilled, where raw milk or egg is in it.
    pub warm: Option<Known<TimeSpan>>,
    /// Its water activity by what is dissolved in its water, an upper estimate.
    pub water_activity: Option<Known<Fraction>>,
    /// Whether it is baked, griddled or fried.
    pub is_baked: bool,
    /// What the interaction tables of the Food Code say; without a measured pH most often that it is unknown.
    pub food_code: food_code::Verdict,
    /// What the European criteria for *Listeria* say.
    pub listeria: listeria::Verdict,
    /// How long the fridge is allowed to keep it, by whose rule.
    pub fridge: Known<TimeSpan>,
}

impl Keeping {
    /// Whether it is so dry or sweet that the tables ask for no cold, whatever its pH.
    #[must_use]
    pub fn is_dry(&self) -> bool {
        self.food_code == food_code::Verdict::NotControlled
    }
}

/// The longest stay of ready-to-eat food at 5 °C or below: US Food Code 2022, 3-501.17.
const SEVEN_DAYS: TimeSpan = TimeSpan::days(7.0);
const FOOD_CODE: &str = "US Food Code 2022, 3-501.17: ready-to-eat food held at 5 °C or below, the day of making counted";

/// Foresees how every component keeps.
pub fn keepings(formula: &Formula, around: &Surroundings) -> Vec<Keeping> {
    let mut products = Products::default();
    let indices = 0..formula.components.len();
    indices.filter_map(|component| keeping(formula, component, around, &mut products)).collect()
}

fn keeping(formula: &Formula, c: usize, around: &Surroundings, products: &mut Products) -> Option<Keeping> {
    let component = &formula.components[c];
    let last = component.stages.len().checked_sub(1)?;
    let mut held = products.made(formula, (c, last));
    if held.total <= Mass::ZERO {
        return None;
    }
    // What the heat drives off is water.
    held.boil_off(held.total * component.yields.bake_loss);
    let is_told = held.untold.as_grams() <= held.total.as_grams() * 0.05 && held.water > Mass::ZERO;
    let activity = is_told.then(|| held.water_activity());
    let food_code = food_code::verdict(Treatment::NotHeatedOrNotPackaged, activity, None);
    Some(Keeping {
        component: c,
        warm: warm(component, around),
        water_activity: activity.map(|a_w| Known {
            band: Some((Fraction::ratio((a_w.as_ratio() - 0.04).max(0.0)), a_w)),
            ..Known::computed(
                a_w,
                "water activity of sugars, salt and alcohol; an upper estimate",
                science::keeping::water_activity::mixture::EQUATION.name,
            )
        }),
        is_baked: is_baked(component),
        food_code,
        listeria: listeria::verdict(&ReadyToEat { water_activity: activity, ..ReadyToEat::default() }),
        fridge: Known::assumed(SEVEN_DAYS, FOOD_CODE),
    })
}

fn is_baked(component: &Component) -> bool {
    let bakes = |step: &Step| matches!(step.action, Action::Bake | Action::Griddle | Action::Fry);
    component.stages.iter().flat_map(|stage| &stage.steps).any(bakes)
}

/// The time that stages with raw milk or egg stand in the warm until they meet heat or the cold.
fn warm(component: &Component, around: &Surroundings) -> Option<Known<TimeSpan>> {
    let perishes = |stage: &Stage| stage.lines.iter().any(|line| line.ingredients().any(|one| perishes(one)));
    let from = component.stages.iter().position(perishes)?;
    let mut sum = TimeSpan::ZERO;
    let mut longest = TimeSpan::ZERO;
    for step in component.stages[from..].iter().flat_map(|stage| &stage.steps) {
        if step.action.cooks() {
            break;
        }
        let time = |at: fn(&Step) -> TimeSpan| if is_warm(step, around) { at(step) } else { TimeSpan::ZERO };
        sum += time(|step| step.time.map_or(TimeSpan::ZERO, middle));
        longest += time(|step| step.time.map_or(TimeSpan::ZERO, |time| time.to));
    }
    let source = science::keeping::danger_zone::EQUATION.name;
    Some(Known { band: Some((sum, longest)), ..Known::computed(sum, "the stated times of its steps, added up", source) })
}

fn perishes(one: &formula::Ingredient) -> bool {
    one.is_milk() || (one.group == formula::read::Group::Egg && !one.heat_treated)
}

/// Whether a step's food stands between 5 and 60 °C.
fn is_warm(step: &Step, around: &Surroundings) -> bool {
    let is_put_away = matches!(step.action, Action::Chill | Action::Retard | Action::Store | Action::Serve);
    let is_cold = matches!(around.stand(step), Stand::Place(place) if place.as_celsius() <= 5.0);
    !(is_cold && step.attention == Attention::Waiting || is_put_away)
}
