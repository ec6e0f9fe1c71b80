//! What is in 100 g and in a piece of a component, as it is served: energy and the seven figures of a European
//! label, with the water that cooking takes away. What no source tells is a gap and is said, never a zero.

use super::held::Products;
use formula::arithmetic::{Mixture, mixture};
use formula::ingredient::Figure;
use formula::{Formula, Known};
use quantity::{Count, Mass};
use science::nutrition::european_energy::{Contents, DeclaredEnergy, energy};

/// What is foreseen of a component's nutrition.
#[derive(Clone, Debug)]
pub struct Nutrition {
    /// The component.
    pub component: usize,
    /// What it weighs when it is done.
    pub done: Mass,
    /// A piece of it as served, if it comes in pieces.
    pub piece: Option<Mass>,
    /// Energy in 100 g.
    pub energy: Known<DeclaredEnergy>,
    /// Gram in 100 g, in the order of a European label.
    pub per_100_g: Vec<Nutrient>,
}

/// A figure of a declaration.
#[derive(Clone, Debug)]
pub struct Nutrient {
    /// What it is.
    pub title: &'static str,
    /// Gram in 100 g, of what is told.
    pub content: Mass,
    /// The ingredients for which no source tells it.
    pub untold: Vec<String>,
}

/// The figures of a European label after the energy, with their titles.
const LINES: [(&str, Figure); 8] = [
    ("fat", Figure::Fat),
    ("of which saturates", Figure::Saturates),
    ("carbohydrate", Figure::AvailableCarbohydrate),
    ("of which sugars", Figure::Sugars),
    ("fibre", Figure::Fibre),
    ("protein", Figure::ProteinLabel),
    ("salt", Figure::Sodium),
    ("alcohol", Figure::Alcohol),
];

/// Works out every component's nutrition as it is served.
#[must_use]
pub fn nutrition(formula: &Formula) -> Vec<Nutrition> {
    let mut products = Products::default();
    (0..formula.components.len()).filter_map(|component| one(formula, component, &mut products)).collect()
}

fn one(formula: &Formula, component: usize, products: &mut Products) -> Option<Nutrition> {
    let mix = mixture(formula, component);
    let yields = &formula.components[component].yields;
    let last = formula.components[component].stages.len().checked_sub(1)?;
    let made = products.made(formula, (component, last));
    // Of what was weighed in, water leaves: as steam from pans, and what the oven or griddle drives off.
    let kept = made.total / (made.total + made.steam);
    let done = mix.ingoing * kept * yields.bake_loss.left();
    if done.as_grams().partial_cmp(&0.0) != Some(std::cmp::Ordering::Greater) {
        return None;
    }
    let per_100 = 100.0 / done.as_grams();
    let grams = |figure: Figure| Mass::grams(in_gram(&mix, figure) * per_100);
    let contents = Contents {
        fat: grams(Figure::Fat),
        carbohydrate: grams(Figure::AvailableCarbohydrate),
        fibre: grams(Figure::Fibre),
        protein: grams(Figure::ProteinLabel),
        alcohol: grams(Figure::Alcohol),
        ..Contents::default()
    };
    let lines = LINES.iter().filter(|(_, figure)| *figure != Figure::Alcohol || grams(*figure) > Mass::ZERO);
    let source = science::nutrition::european_energy::EQUATION.name;
    let pieces = yields.pieces.filter(|pieces| *pieces > Count::ZERO);
    Some(Nutrition {
        component,
        done,
        piece: pieces.map(|pieces| yields.done() / pieces.as_pieces()),
        energy: Known::computed(energy(&contents), "energy by the European factors", source),
        per_100_g: lines
            .map(|(title, figure)| Nutrient { title, content: grams(*figure), untold: untold(&mix, *figure) })
            .collect(),
    })
}

/// Gram of a figure in the whole; salt from its sodium.
fn in_gram(mix: &Mixture, figure: Figure) -> f64 {
    let (total, _) = mix.total(figure);
    match figure {
        Figure::Sodium => science::nutrition::salt::from_sodium(Mass::grams(total / 1000.0)).as_grams(),
        _ => total,
    }
}

fn untold(mix: &Mixture, figure: Figure) -> Vec<String> {
    mix.total(figure).1.iter().map(|missing| missing.ingredient.clone()).collect()
}
