//! Claims of freedom from something, and the ingredients that contradict them.

use super::{Case, Rule};
use formula::{Diagnostic, Ingredient};

/// What turns a claim into its opposite, or into the offer of an exchange.
const DENIALS: [&str; 11] =
    ["not ", "never", "n't ", "no claim", "cannot", "instead", "can be", "to make it", "replace", "swap", "stand in"];

/// Reports every claim, made in one of these phrases, that an ingredient of the formula contradicts.
pub fn hold_to(
    case: &Case,
    rule: &Rule,
    phrases: &[&str],
    contradicts: impl Fn(&Ingredient) -> bool,
    found: &mut Vec<Diagnostic>,
) {
    let mut lines = case.formula.lines().flat_map(|(_, line)| line.ingredients().map(move |one| (line, one)));
    let Some((line, one)) = lines.find(|(_, one)| contradicts(one)) else { return };
    for sentence in &case.head {
        let Some(phrase) = phrases.iter().find(|phrase| sentence.says(&[phrase])) else { continue };
        if DENIALS.iter().any(|word| sentence.words.contains(word))
            || found.last().is_some_and(|last| last.place == sentence.place)
        {
            continue;
        }
        let message = format!("“{phrase}” is claimed, but “{}” is {}", line.name, one.title);
        found.push(
            rule.at(sentence.place.clone(), message)
                .hint("take the claim out, or exchange the ingredient; people with an allergy rely on it"),
        );
    }
}

/// Cereals whose gluten harms; oats are not among them for everyone, and count only where they are named.
pub const GLUTEN: &[&str] = &["wheat", "rye", "barley"];
/// Nuts of the allergen list, peanuts apart.
pub const NUTS: &[&str] =
    &["almond", "hazelnut", "walnut", "cashew", "pecan", "brazil-nut", "pistachio", "macadamia", "pine-nut"];
