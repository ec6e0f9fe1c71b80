//! What a label calls by name, held against the formula.

use super::Found;
use super::formula::Formula;
use crate::ingredient::nearest;
use crate::read::At;
use crate::{Diagnostic, fault};

/// Reports components that are not there, and stressed names that nothing goes by.
pub fn check(formula: &Formula, found: Found) {
    let components: Vec<&str> = formula.components.iter().map(|component| component.name.as_str()).collect();
    for name in formula.head.label.of.iter().filter(|name| !components.contains(&name.value.as_str())) {
        let message = format!("the formula has no component called “{}”", name.value);
        found.push(meant(fault::UNKNOWN_COMPONENT.at(name.place(&formula.file), message), name, &components));
    }
    let mut names: Vec<&str> = formula.lines().map(|(_, line)| line.name.as_str()).chain(components).collect();
    names.sort_unstable();
    names.dedup();
    for name in formula.head.label.stressed.iter().filter(|name| !names.contains(&name.value.as_str())) {
        let message = format!("nothing in the formula is called “{}”", name.value);
        found.push(meant(fault::REFERENCE_TO_NOTHING.at(name.place(&formula.file), message), name, &names));
    }
}

fn meant(found: Diagnostic, name: &At<String>, known: &[&str]) -> Diagnostic {
    match nearest(&name.value, known.iter().copied()) {
        Some(near) => found.hint(format!("did you mean “{near}”?")),
        None => found.hint("call lines and components by the names that they have in the formula"),
    }
}
