//! The nutrition facts of American law, per serving, each from unrounded figures.

use super::contents::{Held, added_sugars, held};
use super::figure::Shown;
use super::finished::Food;
use super::pack::Serving;
use formula::ingredient::Figure;
use quantity::Mass;
use science::nutrition::american_rounding::{DailyValue, Line, print, print_daily_value, print_trace};
use science::nutrition::printed::Printed;
use science::nutrition::reference_amounts::{ReferenceAmount, Region, of, share};

/// Nutrition facts.
#[derive(Clone, Debug)]
pub struct Facts {
    /// The serving.
    pub serving: Serving,
    /// Calories.
    pub calories: Shown,
    /// The lines below, in the order of the label.
    pub lines: Vec<FactLine>,
}

/// A line of nutrition facts.
#[derive(Clone, Debug)]
pub struct FactLine {
    /// What it is.
    pub title: &'static str,
    /// How deep it stands under the lines above.
    pub depth: usize,
    /// Its unit.
    pub unit: &'static str,
    /// In a serving.
    pub amount: Shown,
    /// As a percentage of the daily value, where there is one and the amount is known.
    pub daily: Option<Printed>,
    /// Whether it is a vitamin or mineral, which stand apart.
    pub is_trace: bool,
}

/// What sources may leave untold of a figure: a quarter of the fifth by which an analysis may differ from a label, the
/// quarter being this program's own choice; of the energy a hundredth.
const LACKS: f64 = 0.05;

/// Title, depth, unit, rule, daily value's name, and what it is held by.
type Macro = (&'static str, usize, &'static str, Line, &'static str, Figure);

const BEFORE_SUGARS: [Macro; 8] = [
    ("Total Fat", 0, "g", Line::Fat, "fat", Figure::Fat),
    ("Saturated Fat", 1, "g", Line::Fat, "saturated-fat", Figure::Saturates),
    ("Trans Fat", 1, "g", Line::Fat, "", Figure::Trans),
    ("Cholesterol", 0, "mg", Line::Cholesterol, "cholesterol", Figure::Cholesterol),
    ("Sodium", 0, "mg", Line::Sodium, "sodium", Figure::Sodium),
    ("Total Carbohydrate", 0, "g", Line::Carbohydrate, "carbohydrate", Figure::Carbohydrate),
    ("Dietary Fiber", 1, "g", Line::Carbohydrate, "fibre", Figure::Fibre),
    ("Total Sugars", 1, "g", Line::Carbohydrate, "", Figure::Sugars),
];

const TRACES: [(&str, &str, &str, Figure); 4] = [
    ("Vitamin D", "mcg", "vitamin-d", Figure::VitaminD),
    ("Calcium", "mg", "calcium", Figure::Calcium),
    ("Iron", "mg", "iron", Figure::Iron),
    ("Potassium", "mg", "potassium", Figure::Potassium),
];

/// The facts of a food by the serving; none where it weighs nothing.
#[must_use]
pub fn facts(food: &Food, serving: &Serving) -> Option<Facts> {
    let whole = food.weighs();
    if whole <= Mass::ZERO {
        return None;
    }
    let part = serving.weighs / whole;
    let of_serving = |figure: Figure| held(food, figure).times(part);
    let line = |(title, depth, unit, rule, nutrient, figure): Macro| {
        fact(title, depth, unit, &of_serving(figure), of(Region::America, nutrient), rule)
    };
    let mut lines: Vec<FactLine> = BEFORE_SUGARS.into_iter().map(line).collect();
    let added = added_sugars(food).times(part);
    lines.push(fact("Added Sugars", 2, "g", &added, of(Region::America, "added-sugars"), Line::Carbohydrate));
    lines.push(fact("Protein", 0, "g", &of_serving(Figure::Protein), None, Line::Carbohydrate));
    for (title, unit, nutrient, figure) in TRACES {
        let Some(daily) = of(Region::America, nutrient) else { continue };
        let amount = of_serving(figure);
        lines.push(FactLine {
            title,
            depth: 0,
            unit,
            daily: percentage(&amount, daily, DailyValue::VitaminOrMineral),
            amount: Shown::of(&amount, LACKS * amount.told, |value| print_trace(daily, value)),
            is_trace: true,
        });
    }
    Some(Facts { serving: serving.clone(), calories: calories(food, part), lines })
}

fn fact(
    title: &'static str,
    depth: usize,
    unit: &'static str,
    held: &Held,
    daily: Option<&ReferenceAmount>,
    rule: Line,
) -> FactLine {
    let amount = Shown::of(held, LACKS * held.told, |value| print(rule, value));
    let daily = daily.filter(|_| amount.printed().is_some());
    FactLine {
        title,
        depth,
        unit,
        daily: daily.and_then(|daily| percentage(held, daily, DailyValue::Macronutrient)),
        amount,
        is_trace: false,
    }
}

/// The percentage of a daily value, from the unrounded amount; none where what is untold would change it.
fn percentage(held: &Held, daily: &ReferenceAmount, of: DailyValue) -> Option<Printed> {
    let print = |value: f64| print_daily_value(of, share(value, daily));
    Shown::of(held, LACKS * held.told, print).printed().filter(|printed| printed.value().is_finite())
}

/// Calories by the general factors, 4, 4 and 9, and 7 for alcohol.
fn calories(food: &Food, part: f64) -> Shown {
    let [fat, carbohydrate, protein, alcohol] =
        [Figure::Fat, Figure::Carbohydrate, Figure::Protein, Figure::Alcohol].map(|figure| held(food, figure).times(part));
    let by = |pick: &dyn Fn(&Held) -> f64| {
        use science::nutrition::american_energy::{Method, Serving, energy};
        let gram = |held: &Held| Mass::grams(pick(held));
        let serving = Serving {
            fat: gram(&fat),
            carbohydrate: gram(&carbohydrate),
            protein: gram(&protein),
            alcohol: gram(&alcohol),
            ..Serving::default()
        };
        energy(&serving, Method::General)
    };
    let untold =
        [&fat, &carbohydrate, &protein, &alcohol].into_iter().fold(Held::default(), |all, one| all.plus(one, 0.0)).untold;
    let all = Held { told: by(&|held| held.told), most: by(&|held| held.most), untold };
    Shown::of(&all, 0.01 * all.told, |value| print(Line::Calories, value))
}
