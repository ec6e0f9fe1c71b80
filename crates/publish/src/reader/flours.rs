//! What changes with the protein of a reader's flour: by how much each figure, for a percent more.

use super::figures::by_key;
use super::short;
use bench::exchange::with_protein;
use formula::ingredient::Figure;
use formula::{Formula, Ingredient};
use quantity::{Fraction, Mass};
use serde_json::{Map, Value, json};
use std::sync::Arc;

/// So many flours a reader may describe; of more, the heaviest.
const MOST: usize = 3;
/// One percent more protein.
const ONE: Fraction = Fraction::percent(1.0);

/// The flours with known protein whose stages have a liquid that can answer it.
pub fn flours(formula: &Formula) -> Vec<Value> {
    let base = by_key(formula);
    let told = heaviest(formula).into_iter().filter_map(|(flour, _)| {
        let protein = flour.composition.share(Figure::Protein)?;
        let changed = by_key(&with_protein(formula, &flour, ONE)?);
        let slopes: Map<String, Value> = base
            .iter()
            .filter_map(|(key, was)| Some((key, changed.get(key)? - was)))
            .filter(|(_, by)| by.abs() > 1e-7)
            .map(|(key, by)| (key.clone(), short(by)))
            .collect();
        Some(json!({ "name": flour.name, "called": flour.called, "protein": short(protein.as_percent()), "by": slopes }))
    });
    told.take(MOST).collect()
}

fn heaviest(formula: &Formula) -> Vec<(Arc<Ingredient>, Mass)> {
    let mut all: Vec<(Arc<Ingredient>, Mass)> = Vec::new();
    for (_, line) in formula.lines().filter(|(_, line)| line.is_flour) {
        let Some(one) = line.ingredient() else { continue };
        match all.iter_mut().find(|(other, _)| other.name == one.name) {
            Some((_, sum)) => *sum += line.mass.value,
            None => all.push((Arc::clone(one), line.mass.value)),
        }
    }
    all.sort_by(|a, b| b.1.as_grams().total_cmp(&a.1.as_grams()));
    all
}
