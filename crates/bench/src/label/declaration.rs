//! The nutrition declaration of European law, per 100 g and per portion, each from unrounded figures.

use super::contents::{Held, held};
use super::figure::Shown;
use super::finished::Food;
use formula::ingredient::Figure;
use quantity::{Fraction, Mass};
use science::nutrition::european_energy::{Contents, energy};
use science::nutrition::european_rounding::{Line, print, print_energy};
use science::nutrition::reference_amounts::{Region, of, share};
use science::nutrition::tolerance;

/// A declaration.
#[derive(Clone, Debug)]
pub struct Declaration {
    /// The lines in the order of Annex XV.
    pub lines: Vec<DeclarationLine>,
    /// What a portion weighs, if there are portions.
    pub portion: Option<Mass>,
}

/// A line of a declaration.
#[derive(Clone, Debug)]
pub struct DeclarationLine {
    /// What it is.
    pub title: &'static str,
    /// Whether it is a part of the line above.
    pub is_part: bool,
    /// Its unit.
    pub unit: &'static str,
    /// In 100 g.
    pub in_100_g: Shown,
    /// In a portion.
    pub in_portion: Option<Shown>,
    /// A portion as a share of the reference intake, where there is one.
    pub intake: Option<Fraction>,
}

/// A line that is stated in gram: title, whether it is a part, figure, rule of rounding, reference intake.
type InGram = (&'static str, bool, Figure, Line, &'static str);

const IN_GRAM: [InGram; 7] = [
    ("fat", false, Figure::Fat, Line::Fat, "fat"),
    ("of which saturates", true, Figure::Saturates, Line::FattyAcids, "saturates"),
    ("carbohydrate", false, Figure::AvailableCarbohydrate, Line::Carbohydrate, "carbohydrate"),
    ("of which sugars", true, Figure::Sugars, Line::Carbohydrate, "sugars"),
    ("fibre", false, Figure::Fibre, Line::Fibre, "fibre"),
    ("protein", false, Figure::ProteinLabel, Line::Protein, "protein"),
    ("salt", false, Figure::Sodium, Line::Salt, "salt"),
];

/// The declaration of a food; none where it weighs nothing.
#[must_use]
pub fn declaration(food: &Food, portion: Option<Mass>) -> Option<Declaration> {
    let whole = food.weighs();
    if whole <= Mass::ZERO {
        return None;
    }
    let in_100_g = 100.0 / whole.as_grams();
    let of_portion = portion.map(|portion| portion / whole);
    let line = |title, is_part, unit, all: &Held, rule: &Rule, nutrient: &str| {
        let reference = of(Region::Europe, nutrient);
        let in_portion = of_portion.map(|share| rule.shown(&all.times(share)));
        let is_known = in_portion.as_ref().is_some_and(|shown| shown.printed().is_some());
        DeclarationLine {
            title,
            is_part,
            unit,
            in_100_g: rule.shown(&all.times(in_100_g)),
            in_portion,
            intake: of_portion.zip(reference.filter(|_| is_known)).map(|(part, reference)| share(all.told * part, reference)),
        }
    };
    let mut lines = vec![
        line("energy", false, "kJ", &energy_of(food, true), &Rule::Energy, "energy"),
        line("energy", false, "kcal", &energy_of(food, false), &Rule::Energy, "energy-kcal"),
    ];
    for (title, is_part, figure, rule, nutrient) in IN_GRAM {
        lines.push(line(title, is_part, "g", &in_gram(food, figure), &Rule::Gram(rule), nutrient));
    }
    Some(Declaration { lines, portion })
}

/// How a line is rounded.
enum Rule {
    Energy,
    Gram(Line),
}

impl Rule {
    /// What sources leave untold may be a quarter of the tolerance that the Commission's guidance grants between a label
    /// and an analysis, and a hundredth of the energy; the quarter and the hundredth are this program's own choice.
    fn shown(&self, held: &Held) -> Shown {
        match self {
            Self::Energy => Shown::of(held, 0.01 * held.told, print_energy),
            Self::Gram(line) => {
                let allowed = tolerance::either_way(*line, Mass::grams(held.told)).as_grams() / 4.0;
                Shown::of(held, allowed, |gram| print(*line, Mass::grams(gram)))
            }
        }
    }
}

/// Gram of a figure in all of the food; salt from its sodium.
fn in_gram(food: &Food, figure: Figure) -> Held {
    let held = held(food, figure);
    match figure {
        Figure::Sodium => held.times(science::nutrition::salt::from_sodium(Mass::grams(1.0)).as_grams() / 1000.0),
        _ => held,
    }
}

/// The energy of all of the food by its own factors, at the least and at the most.
fn energy_of(food: &Food, kilojoules: bool) -> Held {
    let figures =
        [Figure::Fat, Figure::AvailableCarbohydrate, Figure::Fibre, Figure::ProteinLabel, Figure::Alcohol].map(|f| held(food, f));
    let by = |pick: &dyn Fn(&Held) -> f64| {
        let [fat, carbohydrate, fibre, protein, alcohol] = figures.each_ref().map(|held| Mass::grams(pick(held)));
        let declared = energy(&Contents { fat, carbohydrate, fibre, protein, alcohol, ..Contents::default() });
        if kilojoules { declared.kilojoules } else { declared.kilocalories }
    };
    let untold = figures.iter().fold(Held::default(), |all, one| all.plus(one, 0.0)).untold;
    Held { told: by(&|held| held.told), most: by(&|held| held.most), untold }
}
