//! The kitchen that a formula is looked at in: changed by one gesture, and kept in the page's address.

use crate::asked::{Place, time_of_day};
use crate::book::Opened;
use crate::failure::Failure;
use crate::workbench::answer::Refusal;
use bench::forecast::Surroundings;
use formula::read::Kitchen;
use maud::{Markup, html};
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
        self.place().kitchen(opened).map_err(|failure| Refusal::amiss(&failure))
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
        format!("{:?}", (&self.kitchen, &self.room, &self.fridge, &self.serve))
    }
}

/// The controls; without scripts they load the page anew.
pub fn markup(opened: &Opened, wanted: &Wanted) -> Markup {
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
            label { "Served at " input type="time" name="serve" value=(wanted.serve.clone().unwrap_or_else(|| "09:30".to_owned())); }
            noscript { button { "Look" } }
        }
    }
}
