//! Claims of freedom from something, and the ingredients that contradict them.

use super::case::ingredients;
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
    let mut lines = case.lines().flat_map(|(_, line)| ingredients(line).map(move |one| (line, one)));
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

/// Whether an ingredient carries one of these allergens.
pub fn carries(one: &Ingredient, codes: &[&str]) -> bool {
    one.allergens.iter().any(|code| codes.contains(&code.as_str()))
}
