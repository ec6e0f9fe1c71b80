//! The kitchen that a formula is looked at in: changed by one gesture, and kept in the page's address.

use crate::asked::{Place, time_of_day};
use crate::book::Opened;
use crate::failure::Failure;
use crate::workbench::answer::Refusal;
use bench::forecast::Surroundings;
use formula::Formula;
use formula::read::{Action, Kitchen, Pan};
use maud::{Markup, html};
use quantity::{Length, Measure, SpoonSystem};
use serde::Deserialize;

/// What of the kitchen is other than the book says.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default)]
pub struct Wanted {
    /// Another kitchen.
    pub kitchen: Option<String>,
    /// A warmer or colder room.
    pub room: Option<String>,
    /// A warmer or colder fridge.
    pub fridge: Option<String>,
    /// How wide the pan is that all is simmered in.
    pub pan: Option<String>,
    /// When it is served.
    pub serve: Option<String>,
}

impl Wanted {
    /// The place that is meant; a bare number is in degrees Celsius.
    pub fn place(&self) -> Place {
        let degrees = |text: &Option<String>| {
            let text = text.as_deref().map(str::trim)?;
            Some(if text.parse::<f64>().is_ok() { format!("{text} °C") } else { text.to_owned() })
        };
        Place::said(self.kitchen.clone(), degrees(&self.room), degrees(&self.fridge))
    }

    /// The kitchen that is meant.
    pub fn kitchen(&self, opened: &Opened) -> Result<Kitchen, Refusal> {
        let mut kitchen = self.place().kitchen(opened).map_err(|failure| Refusal::amiss(&failure))?;
        if let Some(text) = self.pan.as_deref().map(str::trim).filter(|text| !text.is_empty()) {
            kitchen.pans = vec![Pan { title: String::new(), across: across(text)? }];
        }
        Ok(kitchen)
    }

    /// The surroundings that are meant.
    pub fn around(&self, opened: &Opened) -> Result<Surroundings, Refusal> {
        let amiss = |failure: Failure| Refusal::amiss(&failure);
        let around = self.place().surroundings(opened, &self.kitchen(opened)?).map_err(amiss)?;
        Ok(match self.serve.as_deref().filter(|serve| !serve.is_empty()) {
            Some(clock) => around.with_serving_at(time_of_day(clock).map_err(amiss)?),
            None => around,
        })
    }

    /// A name for all of it together.
    pub fn key(&self) -> String {
        format!("{:?}", (&self.kitchen, &self.room, &self.fridge, &self.pan, &self.serve))
    }
}

/// How wide a pan is that somebody types; a bare number is in centimetres.
fn across(text: &str) -> Result<Length, Refusal> {
    let written = if text.replace(',', ".").parse::<f64>().is_ok() { format!("{text} cm") } else { text.to_owned() };
    let length = written.parse::<Measure>().ok().and_then(|measure| measure.length(SpoonSystem::Metric)).map(|range| range.to);
    let fits = |across: &Length| (5.0..=100.0).contains(&across.as_centimetres());
    length.filter(fits).ok_or_else(|| Refusal::unfit(format!("“{text}” is no pan."), "write how wide it is inside: 22 cm, 9 in"))
}

/// The controls; without scripts they load the page anew.
pub fn markup(opened: &Opened, formula: &Formula, wanted: &Wanted) -> Markup {
    let chosen = wanted.kitchen.clone().unwrap_or_else(|| opened.book.kitchen().name);
    let of = |text: &Option<String>| text.clone().unwrap_or_default();
    let kitchen = opened.book.kitchens.get(&chosen).cloned().unwrap_or_else(|| opened.book.kitchen());
    let degrees = |known: Option<quantity::Temperature>| known.map(|at| format!("{}", at.as_celsius())).unwrap_or_default();
    html! {
        form #kitchen.kitchen method="get" data-kitchen {
            @if opened.book.kitchens.len() > 1 {
                label { "Kitchen "
                    select name="kitchen" {
                        @for (name, kitchen) in &opened.book.kitchens {
                            option value=(name) selected[*name == chosen] { (kitchen.title) }
                        }
                    }
                }
            }
            label { "Room, °C " input type="text" inputmode="decimal" size="5" name="room" value=(of(&wanted.room)) placeholder=(degrees(kitchen.room)); }
            label { "Fridge, °C " input type="text" inputmode="decimal" size="5" name="fridge" value=(of(&wanted.fridge)) placeholder=(degrees(kitchen.fridge)); }
            @if formula.steps().any(|(_, step)| matches!(step.action, Action::Simmer | Action::Reduce | Action::Boil)) {
                label { "Pan across, cm " input type="text" inputmode="decimal" size="5" name="pan" value=(of(&wanted.pan)) placeholder=(narrowest(&kitchen)); }
            }
            label { "Served at " input type="time" name="serve" value=(wanted.serve.clone().unwrap_or_else(|| "09:30".to_owned())); }
            noscript { button { "Look" } }
        }
    }
}

/// The pan that is taken where a step names none.
fn narrowest(kitchen: &Kitchen) -> String {
    let across = kitchen.pans.iter().map(|pan| pan.across.as_centimetres()).min_by(f64::total_cmp);
    across.map(|across| quantity::print::number(across, 1)).unwrap_or_default()
}
