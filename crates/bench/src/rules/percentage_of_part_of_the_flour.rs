//! Salt reckoned on the flour of the final mix alone, while a preferment brings more flour.

use super::{Case, Rule};
use formula::read::{Amount, Group, StageKind};
use formula::{Diagnostic, Severity};
use quantity::{Fraction, print};

/// Salt reckoned on the flour of the final mix alone, while a preferment brings more flour.
pub const RULE: Rule = Rule {
    code: "percentage-of-part-of-the-flour",
    severity: Severity::Advice,
    page: include_str!("percentage_of_part_of_the_flour.md"),
    check,
};

/// Salt as people state it of the total flour: common practice, no source.
const USUAL: (Fraction, Fraction) = (Fraction::percent(1.7), Fraction::percent(2.3));

fn share(written: &Amount) -> Option<Fraction> {
    match written {
        Amount::Measure(measure) => measure.share(Default::default()).map(|share| share.to),
        _ => None,
    }
}

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for product in &case.products {
        let Some(figures) = &product.figures else { continue };
        if product.overall.prefermented < Fraction::percent(10.0) {
            continue;
        }
        let stages = case.formula.components[product.component].stages.iter().filter(|stage| stage.kind == StageKind::FinalMix);
        for (stage, line) in stages.flat_map(|stage| stage.lines.iter().map(move |line| (stage, line))) {
            let is_salt = line.ingredient().is_some_and(|one| one.group == Group::Salt);
            let Some(written) = share(&line.written).filter(|_| is_salt) else { continue };
            let is_of_stage = (line.mass.value - stage.flour * written).abs() <= line.mass.value * 0.01;
            if is_of_stage && written >= USUAL.0 && written <= USUAL.1 && figures.salt.as_ratio() < written.as_ratio() * 0.86 {
                let message = format!(
                    "{} of this stage's flour is only {} of the total flour, of which {} is in the preferment",
                    print::percent(written, 1),
                    print::percent(figures.salt, 2),
                    print::percent(product.overall.prefermented, 0),
                );
                found.push(RULE.at(line.place.clone(), message).hint(
                    "write percent-of = \"total flour\" in this \
                     stage if the share is meant of all flour",
                ));
            }
        }
    }
}
