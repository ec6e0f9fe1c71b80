//! Creamed and stirred mixtures.

use super::known::{self, degrees};
use super::story::Story;
use bench::forecast::Cream;
use formula::read::StageKind;
use quantity::{Fraction, print};
use serde_json::{Value, json};

/// Tells a mixture.
pub fn tell(story: &mut Story, cream: &Cream) {
    let units = story.units;
    let title = story.formula.stage(cream.at).title.clone();
    story.stage(cream.at, &title);
    let ground = story.ground(&cream.temperature);
    let mut words = format!("It comes from the bowl at {}{ground}", degrees(cream.temperature.value, units));
    if let (Some(solid), Some(firmness)) = (&cream.solid_fat, cream.firmness()) {
        let ground = story.ground(solid);
        let (low, high) = solid.band.unwrap_or((solid.value, solid.value));
        let (low, high) = (print::number(low.as_percent(), 0), print::percent(high, 0));
        words.push_str(&format!(", with {low} to {high} of the butter's fat solid{ground}: {firmness}"));
    }
    story.say(&format!("{words}."));
    if cream.firmness().is_none() && story.formula.stage(cream.at).kind == StageKind::Creamed {
        story.say("How firm it holds cannot be told: it is known here of butter alone.");
    }
    if let Some(alcohol) = &cream.alcohol {
        let ground = story.ground(alcohol);
        let strength = print::percent(alcohol.value, 1);
        story.say(&format!(
            "Its liquid holds {strength} of alcohol by volume{ground}: not for children, nor for anyone who avoids it."
        ));
    }
    if let Some(activity) = cream.water_activity.as_ref().filter(|activity| activity.value < Fraction::ratio(0.97)) {
        let ground = story.ground(activity);
        story.say(&format!(
            "Its water activity is about {}{ground}, or a little lower.",
            print::number(activity.value.as_ratio(), 2)
        ));
    }
}

/// A mixture for other programs.
pub fn json(cream: &Cream) -> Value {
    json!({
        "temperature": known::temperature(&cream.temperature),
        "solid-fat": cream.solid_fat.as_ref().map(known::share),
        "firmness": cream.firmness(),
        "alcohol-by-volume": cream.alcohol.as_ref().map(known::share),
        "water-activity": cream.water_activity.as_ref().map(known::share),
    })
}
