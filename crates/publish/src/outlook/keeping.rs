//! How components keep: guidance, never a certificate.

use super::known::{self, time};
use super::story::Story;
use bench::forecast::Keeping;
use bench::grounds::{By, by};
use quantity::{TimeSpan, print};
use serde_json::{Value, json};

/// Tells how all components keep.
pub fn tell(story: &mut Story, keepings: &[Keeping]) {
    if keepings.is_empty() {
        return;
    }
    story.heading("Keeping");
    for keeping in keepings {
        let title = story.formula.components[keeping.component].title.clone();
        let mut sentences = Vec::new();
        if let Some(warm) = &keeping.warm {
            let ground = story.ground(warm);
            sentences.push(warm_in_words(warm.value, keeping.is_baked, &ground));
        }
        if let Some(activity) = &keeping.water_activity {
            let ground = story.ground(activity);
            sentences.push(format!("water activity at most {}{ground}", print::number(activity.value.as_ratio(), 2)));
        }
        sentences.push(cold(keeping));
        story.say(&format!("{title}: {}.", sentences.join("; ")));
    }
    story.say(
        "These are published limits as guidance; your local rules and a licensed laboratory decide. When in doubt, throw it out.",
    );
}

fn warm_in_words(warm: TimeSpan, is_baked: bool, ground: &str) -> String {
    let verdict = if warm > TimeSpan::hours(4.0) {
        "longer than the 4 h that guides allow for milk and egg: chill it, or shorten the wait"
    } else if warm > TimeSpan::hours(2.0) {
        "within the 4 h that guides allow for milk and egg, but not to be chilled again"
    } else {
        "within the 2 h after which milk and egg may still be chilled"
    };
    let until = if is_baked { " before the heat" } else { "" };
    format!("its milk or egg stands about {} in the warm{until}{ground}: {verdict}", time(warm))
}

fn cold(keeping: &Keeping) -> String {
    let days = print::number(keeping.fridge.value.as_days(), 0);
    if keeping.is_baked {
        "baked things are customarily kept as the storage line says, and mould or staling ends it (common practice, no source); with a cold filling they belong in the fridge".to_owned()
    } else if keeping.is_dry() {
        "so dry or sweet that published tables ask for no cold; keep it closed against mould all the same".to_owned()
    } else {
        format!(
            "without a measured pH the published tables give no verdict: keep it cold, at most {days} days at 5 °C or below, quality apart"
        )
    }
}

/// A component's keeping for other programs.
pub fn json(keeping: &Keeping, title: &str) -> Value {
    json!({
        "component": title,
        "warm": keeping.warm.as_ref().map(known::hours),
        "water-activity": keeping.water_activity.as_ref().map(known::share),
        "baked": keeping.is_baked,
        "food-code": guidance(keeping.food_code.guidance(), by::FOOD_CODE),
        "listeria": guidance(keeping.listeria.guidance(), by::LISTERIA),
        "fridge-at-most": known::hours(&keeping.fridge),
    })
}

/// A guidance with the table that it is read from.
fn guidance(words: &str, by: By) -> Value {
    json!({ "value": words, "origin": known::origin(&by.known(()).origin) })
}
