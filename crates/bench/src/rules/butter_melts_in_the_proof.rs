//! A dough rich in butter proofed so warm that the butter runs out.

use super::{Case, Rule};
use formula::read::Action;
use formula::{Diagnostic, Severity};
use quantity::{Fraction, Mass, Temperature, print};

/// A dough rich in butter proofed so warm that the butter runs out.
pub const RULE: Rule = Rule {
    code: "butter-melts-in-the-proof",
    severity: Severity::Advice,
    page: include_str!("butter_melts_in_the_proof.md"),
    check,
};

/// From here on butter carries the structure: common practice, no source.
const MUCH: Fraction = Fraction::percent(25.0);
/// Where butter begins to run: common practice, no source.
const MELTING: Temperature = Temperature::celsius(28.0);

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for product in &case.products {
        let rows = product.overall.rows.iter().filter(|row| row.kind.ingredient().is_some_and(|one| one.is_a("butter")));
        let butter = Fraction::ratio(rows.map(|row| row.mass).sum::<Mass>() / product.overall.total_flour);
        if butter < MUCH {
            continue;
        }
        let steps = case.formula.components[product.component].stages.iter().flat_map(|stage| &stage.steps);
        for step in steps.filter(|step| step.action == Action::Proof) {
            let Some(temperature) = step.temperature.filter(|range| range.to > MELTING) else { continue };
            let message = format!(
                "{} of butter on the flour, proofed at {}: butter softens to oil above {} (common \
                 practice, no source)",
                print::percent(butter, 0),
                print::celsius(temperature),
                print::celsius(quantity::Between::just(MELTING))
            );
            found.push(RULE.at(step.place.clone(), message).hint("proof cooler and longer, at 24 to 27 °C"));
        }
    }
}
