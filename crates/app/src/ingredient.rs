//! An ingredient searched for and told: what is known of it, and where its figures come from.

use formula::ingredient::datasets;
use formula::{Ingredient, Pantry};
use quantity::print;
use std::sync::Arc;

/// An exact name alone, or else every ingredient that holds all the words.
pub fn search(pantry: &Pantry, words: &[String]) -> Vec<Arc<Ingredient>> {
    let asked = words.join(" ");
    if let Some(one) = pantry.find(&asked).filter(|_| !asked.is_empty()) {
        return vec![Arc::clone(one)];
    }
    holding(pantry, words)
}

/// Every ingredient whose name or title holds all the words.
pub fn holding(pantry: &Pantry, words: &[String]) -> Vec<Arc<Ingredient>> {
    let holds = |one: &Ingredient| {
        let text = format!("{} {} {}", one.name, one.title, one.also.join(" ")).to_lowercase();
        words.iter().all(|word| text.contains(&word.to_lowercase()))
    };
    pantry.all().filter(|one| holds(one)).cloned().collect()
}

/// What is known of an ingredient besides its figures, each with what it is called; what is not known is left out.
pub fn facts(one: &Ingredient) -> Vec<(&'static str, String)> {
    let parts: Vec<String> =
        one.parts.iter().map(|(part, share)| format!("{} {}", print::percent(*share, 1), part.title)).collect();
    let density = one
        .density
        .as_ref()
        .map(|(density, source)| format!("{} g/ml ({source})", print::number(density.as_grams_per_millilitre(), 3)));
    let piece = one.piece.as_ref().map(|piece| format!("{} ({})", print::mass(piece.weighs), piece.of));
    let all = [
        ("name", one.name.clone()),
        ("also", one.also.join(", ")),
        ("group", one.group.word().to_owned()),
        ("on a label", one.declared.clone().unwrap_or_default()),
        ("bought as", if one.compound { "a mix of several things, which its pack lists" } else { "" }.to_owned()),
        ("counts as", if one.counts_as_flour { "flour" } else { "" }.to_owned()),
        ("made of", parts.join(", ")),
        ("density", density.unwrap_or_default()),
        ("one piece", piece.unwrap_or_default()),
        ("edible part", print::percent(one.edible, 0)),
        ("allergens", if one.allergens.is_empty() { "none of the listed ones".to_owned() } else { one.allergens.join(", ") }),
        ("added sugar", if one.added_sugar { "yes" } else { "no" }.to_owned()),
        ("source", source(one)),
        ("carbohydrate", one.carbohydrate_basis.clone()),
        ("sum", one.sum_note.clone()),
        ("notes", one.notes.clone()),
    ];
    all.into_iter().filter(|(_, value)| !value.is_empty()).collect()
}

/// Where its figures come from.
pub fn source(one: &Ingredient) -> String {
    let source = &one.source;
    let Some(key) = &source.dataset else { return source.name.clone() };
    let dataset = datasets().iter().find(|dataset| dataset.key == *key);
    let title = dataset.map_or_else(|| key.clone(), |dataset| format!("{}, {}", dataset.title, dataset.release));
    let id = source.id.as_ref().map(|id| format!(", {id}")).unwrap_or_default();
    if source.name.is_empty() { format!("{title}{id}") } else { format!("{title}{id}: {}", source.name) }
}
