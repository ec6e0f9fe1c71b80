//! A forecast as a readable story, and for other programs: one file a chapter, words and JSON beside each other.

pub(crate) mod chart;
mod cooking;
mod cost;
mod countdown;
mod cream;
mod glance;
mod keeping;
pub(crate) mod known;
mod markup;
mod nutrition;
mod pot;
mod rise;
mod spread;
mod story;
pub(crate) mod sure;
mod yielded;

use crate::words::Units;
use bench::forecast::Forecast;
use formula::Formula;
use serde_json::{Value, json};
use story::Story;

pub use glance::{Glance, glance, of_label};
pub use markup::markup;
pub use story::Told;

/// The story of a forecast, lines broken at the width.
#[must_use]
pub fn text(formula: &Formula, forecast: &Forecast, units: Units, width: usize) -> String {
    story::laid_out(&story(formula, forecast, units), width)
}

/// The story of a forecast, part by part.
#[must_use]
pub fn story(formula: &Formula, forecast: &Forecast, units: Units) -> Vec<Told> {
    let mut story = Story::new(formula, units);
    story.title(&formula.head.title);
    story.say(&known::surroundings(&forecast.surroundings, units));
    story.say(&known::taken_for_granted(forecast, units));
    for one in &forecast.rises {
        rise::tell(&mut story, one);
        forecast.in_time.iter().filter(|dose| dose.at == one.at).for_each(|dose| rise::tell_dose(&mut story, dose));
    }
    forecast.cookings.iter().for_each(|one| cooking::tell(&mut story, one));
    forecast.pots.iter().for_each(|one| pot::tell(&mut story, one, &forecast.surroundings));
    forecast.creams.iter().for_each(|one| cream::tell(&mut story, one));
    yielded::tell(&mut story, &forecast.yielded);
    keeping::tell(&mut story, &forecast.keepings);
    nutrition::tell(&mut story, &forecast.nutrition);
    if let Some(cost) = &forecast.cost {
        cost::tell(&mut story, cost);
    }
    if let Some(spread) = &forecast.spread {
        spread::tell(&mut story, spread);
    }
    if !forecast.missing.is_empty() {
        story.heading("Not told");
        for missing in &forecast.missing {
            story.say(&format!("• {missing}."));
        }
    }
    story.say(&format!("\n{}", sure::in_words(formula, forecast)));
    story.done()
}

/// What many kitchens show, for a page.
#[must_use]
pub fn spread_markup(formula: &Formula, spread: &bench::draws::Spread, units: Units) -> maud::Markup {
    let mut story = Story::new(formula, units);
    spread::tell(&mut story, spread);
    markup(&story.done())
}

/// The forecast as JSON: each figure unrounded, with its unit, its band where there is one, and its origin.
#[must_use]
pub fn json(formula: &Formula, forecast: &Forecast) -> Value {
    let title = |component: usize| formula.components[component].title.as_str();
    json!({
        "formula": formula.name,
        "kitchen": known::kitchen(&forecast.surroundings),
        "countdown": countdown::json(formula, forecast),
        "countdown-origin": "hours before serving, by the times that the formula states and those that are foreseen",
        "rises": forecast.rises.iter().map(|one| rise::json(formula, one)).collect::<Vec<_>>(),
        "cookings": forecast.cookings.iter().map(cooking::json).collect::<Vec<_>>(),
        "pots": forecast.pots.iter().map(|one| pot::json(formula, one)).collect::<Vec<_>>(),
        "creams": forecast.creams.iter().map(cream::json).collect::<Vec<_>>(),
        "keeping": forecast.keepings.iter().map(|one| keeping::json(one, title(one.component))).collect::<Vec<_>>(),
        "yield": forecast.yielded.iter().map(|one| yielded::json(one, title(one.component))).collect::<Vec<_>>(),
        "nutrition": forecast.nutrition.iter().map(|one| nutrition::json(one, title(one.component))).collect::<Vec<_>>(),
        "doses-in-time": forecast.in_time.iter().map(|one| rise::dose_json(formula, one)).collect::<Vec<_>>(),
        "cost": forecast.cost.as_ref().map(cost::json),
        "spread": forecast.spread.as_ref().map(|one| spread::json(formula, one)),
        "not-told": forecast.missing,
    })
}
