//! The reader is told to taste dough or batter that is still raw.

use super::stages::Traits;
use super::texts::all;
use super::{Case, Rule};
use formula::{Diagnostic, Severity};

/// The reader is told to taste dough or batter that is still raw.
pub const RULE: Rule =
    Rule { code: "tasting-raw-dough", severity: Severity::Warning, page: include_str!("tasting_raw_dough.md"), check };

const TASTE: [&str; 7] = ["taste the", "taste a", "taste some", "taste it", "lick the", "try the", "try a little"];
const RAW: [&str; 4] = ["dough", "batter", "sponge", "levain"];

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    if !case.formula.stages().any(|(at, _)| case.stages.traits(at).has(Traits::FLOUR.with(Traits::EGG))) {
        return;
    }
    for sentence in all(case).into_iter().filter(|sentence| !sentence.denies()) {
        if sentence.says(&TASTE) && sentence.says(&RAW) {
            let message = "raw flour and raw egg are not to be tasted";
            found.push(RULE.at(sentence.place, message).hint(
                "take the invitation out; season by the figures, or \
                 cook a spoonful first",
            ));
        }
    }
}
