//! The other formulas that a formula is made by way of, and the stages of one that make its product.

use formula::Formula;
use formula::resolve::formula::StageAt;
use std::collections::BTreeSet;
use std::sync::Arc;

/// The other formulas whose products are used, near and far, each once, in an order in which each comes after those it uses itself.
#[must_use]
pub fn used_formulas(formula: &Formula) -> Vec<Arc<Formula>> {
    let stages: BTreeSet<StageAt> = formula.stages().map(|(at, _)| at).collect();
    let mut found = BTreeSet::new();
    let mut order = Vec::new();
    let mut way: Vec<Arc<Formula>> = direct(formula, &stages);
    while let Some(here) = way.last().cloned() {
        let open = !found.contains(&here.name);
        let below = if open { direct(&here, &product_stages(&here)) } else { Vec::new() };
        let waits: Vec<_> = below.into_iter().filter(|other| !found.contains(&other.name)).collect();
        if waits.is_empty() {
            way.pop();
            if open {
                found.insert(here.name.clone());
                order.push(here);
            }
        } else {
            way.extend(waits);
        }
    }
    order
}

fn direct(formula: &Formula, stages: &BTreeSet<StageAt>) -> Vec<Arc<Formula>> {
    stages.iter().flat_map(|at| formula.stage(*at).uses_formulas()).cloned().collect()
}

/// The stages by way of which a formula's first component is made: what other formulas use of it.
#[must_use]
pub fn product_stages(formula: &Formula) -> BTreeSet<StageAt> {
    let mut way: Vec<StageAt> = formula.stages().map(|(at, _)| at).filter(|(c, _)| *c == 0).collect();
    let mut seen = BTreeSet::new();
    while let Some(at) = way.pop() {
        if seen.insert(at) {
            way.extend(formula.stage(at).uses());
        }
    }
    seen
}
