//! What comes of components.

use super::known;
use super::story::Story;
use crate::words::whole_gram as gram;
use bench::forecast::Yielded;
use bench::grounds::by;
use quantity::{Mass, print};
use serde_json::{Value, json};

/// Tells what comes of all components.
pub fn tell(story: &mut Story, yielded: &[Yielded]) {
    story.heading("Yield");
    for one in yielded {
        let component = &story.formula.components[one.component];
        let mut words = format!("{}: {} made", component.title, gram(one.made));
        if one.raw < one.made {
            words.push_str(&format!(", {} of it after make-up", gram(one.raw)));
        }
        if let Some((fits, stated)) = one.pieces {
            let piece = component.yields.scaling_weight.unwrap_or_default();
            words.push_str(&format!(
                "; that is {} pieces of {}, {} are stated",
                print::number(fits, 1),
                print::mass(piece),
                print::count(stated)
            ));
        }
        if one.done != one.raw {
            words.push_str(&format!("; {} when done", gram(one.done)));
        }
        if let Some(piece) = one.piece {
            words.push_str(&format!(", {} a piece", gram(piece)));
        }
        words.push_str(&story.by(by::YIELD));
        story.say(&format!("{words}."));
    }
}

/// What comes of a component, for other programs.
pub fn json(one: &Yielded, title: &str) -> Value {
    let gram = |mass: Mass| known::by(by::YIELD, mass.as_grams(), "gram");
    json!({
        "component": title,
        "made": gram(one.made),
        "raw": gram(one.raw),
        "done": gram(one.done),
        "pieces-it-makes": one.pieces.map(|(fits, _)| known::by(by::YIELD, fits, "pieces")),
        "piece": one.piece.map(gram),
    })
}
