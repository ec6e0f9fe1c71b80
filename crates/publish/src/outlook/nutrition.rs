//! What is in 100 g and in a piece.

use super::known;
use super::story::Story;
use bench::forecast::{Nutrient, Nutrition};
use bench::grounds::{By, by};
use quantity::{Mass, print};
use serde_json::{Value, json};

/// Tells every component's nutrition.
pub fn tell(story: &mut Story, nutrition: &[Nutrition]) {
    if nutrition.is_empty() {
        return;
    }
    story.heading("In 100 g, as served");
    for one in nutrition {
        let (by_energy, by_tables) = (story.ground(&one.energy), story.by(by::CONTENTS));
        let title = story.formula.components[one.component].title.clone();
        let energy = one.energy.value;
        let figures: Vec<String> = one.per_100_g.iter().map(figure).collect();
        let whole = |value: f64| print::number(value, 0);
        let mut words = format!(
            "{title}: {} kJ ({} kcal){by_energy}; {}{by_tables}",
            whole(energy.kilojoules),
            whole(energy.kilocalories),
            figures.join(", ")
        );
        if let Some(piece) = one.piece {
            let share = piece.as_grams() / 100.0;
            let (kilojoules, kilocalories) = (whole(energy.kilojoules * share), whole(energy.kilocalories * share));
            words.push_str(&format!("; a piece of {} has {kilojoules} kJ ({kilocalories} kcal)", print::mass(rounded(piece))));
        }
        story.say(&format!("{words}."));
        let mut untold: Vec<&str> = one.per_100_g.iter().flat_map(|line| &line.untold).map(String::as_str).collect();
        untold.sort_unstable();
        untold.dedup();
        if !untold.is_empty() {
            let gaps = one.per_100_g.iter().filter(|line| !line.untold.is_empty());
            let which: Vec<&str> = gaps.map(|line| line.title.trim_start_matches("of which ")).collect();
            let (which, untold) = (which.join(", "), untold.join(", "));
            story.say(&format!("  A gap: no source tells the {which} of {untold}, so the true figure is higher."));
        }
    }
    story.say("Figures from tables, for the baker's own use: a label needs its own rounding and your authority's rules.");
}

fn rounded(mass: Mass) -> Mass {
    Mass::grams(mass.as_grams().round())
}

fn figure(line: &Nutrient) -> String {
    let least = if line.untold.is_empty() { "" } else { "at least " };
    format!("{} {least}{}\u{a0}g", line.title, print::number(line.content.as_grams(), 1))
}

/// A component's nutrition for other programs.
pub fn json(one: &Nutrition, title: &str) -> Value {
    let gram = |by: By, mass: Mass| known::by(by, mass.as_grams(), "gram");
    let lines: Vec<Value> = one
        .per_100_g
        .iter()
        .map(|line| json!({ "what": line.title, "content": gram(by::CONTENTS, line.content), "untold": line.untold }))
        .collect();
    json!({
        "component": title,
        "done": gram(by::YIELD, one.done),
        "piece": one.piece.map(|piece| gram(by::YIELD, piece)),
        "kilojoules-in-100-gram": known::figure(&one.energy, "kilojoules", |energy| energy.kilojoules),
        "kilocalories-in-100-gram": known::figure(&one.energy, "kilocalories", |energy| energy.kilocalories),
        "in-100-gram": lines,
    })
}
