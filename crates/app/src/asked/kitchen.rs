//! Which kitchen is meant, and what the command line says of it.

use super::unknown;
use crate::book::Opened;
use crate::failure::Failure;
use bench::forecast::Surroundings;
use formula::Book;
use formula::read::{FRIDGES, Kitchen, ROOMS, Taken};
use quantity::{Measure, Temperature, TimeSpan};

/// Which kitchen is meant, and at what time of the day it is served there.
#[derive(clap::Args)]
pub struct InKitchen {
    #[command(flatten)]
    place: Place,
    /// When it is served, for a room that cools down at night: "09:30".
    #[arg(long, value_name = "CLOCK")]
    serve_at: Option<String>,
}

/// Which kitchen is meant; the book's own where nothing is said.
#[derive(Default, clap::Args)]
pub struct Place {
    /// The kitchen of this name instead of the book's own.
    #[arg(long, value_name = "NAME")]
    kitchen: Option<String>,
    /// The room this warm: "19 °C".
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    room: Option<String>,
    /// The fridge this cold: "4 °C".
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    fridge: Option<String>,
    /// Leave out what the book's trials taught: the forecast of the books.
    #[arg(long)]
    without_trials: bool,
}

impl InKitchen {
    /// The surroundings that are meant, with what their trials taught.
    pub fn of(&self, opened: &Opened) -> Result<Surroundings, Failure> {
        let around = self.place.surroundings(opened, &self.place.kitchen(opened)?)?;
        Ok(match &self.serve_at {
            Some(clock) => around.with_serving_at(time_of_day(clock)?),
            None => around,
        })
    }
}

impl Place {
    /// A place as it is said elsewhere than on the command line.
    pub fn said(kitchen: Option<String>, room: Option<String>, fridge: Option<String>) -> Self {
        let said = |text: Option<String>| text.filter(|text| !text.trim().is_empty());
        Self { kitchen: said(kitchen), room: said(room), fridge: said(fridge), without_trials: false }
    }

    /// The kitchen that is meant.
    pub fn kitchen(&self, opened: &Opened) -> Result<Kitchen, Failure> {
        kitchen(&opened.book, self.kitchen.as_deref())
    }

    /// Its surroundings, with what its trials taught and what the command line says of them.
    pub fn surroundings(&self, opened: &Opened, kitchen: &Kitchen) -> Result<Surroundings, Failure> {
        let mut around = Surroundings::of(kitchen);
        if !self.without_trials && !opened.book.trials.is_empty() {
            around = around.taught(opened.taught(kitchen));
        }
        if let Some(room) = &self.room {
            around = around.with_room(temperature(room, "a kitchen", ROOMS)?);
        }
        if let Some(fridge) = &self.fridge {
            around = around.with_fridge(temperature(fridge, "a fridge", FRIDGES)?);
        }
        Ok(around)
    }
}

/// The kitchen of a name, or the book's own.
pub fn kitchen(book: &Book, name: Option<&str>) -> Result<Kitchen, Failure> {
    let Some(name) = name else { return Ok(book.kitchen()) };
    let known = || book.kitchens.keys().map(String::as_str);
    book.kitchens.get(name).cloned().ok_or_else(|| unknown("kitchen", name, known()))
}

/// A time of the day: "09:30", "9.30", "21:00".
pub fn time_of_day(text: &str) -> Result<TimeSpan, Failure> {
    let wrong = || Failure::new(format!("“{text}” is no time of the day")).hint("write hours and minutes: \"09:30\", \"21:00\"");
    let (hours, minutes) = text.trim().split_once([':', '.']).ok_or_else(wrong)?;
    let part = |text: &str, most: u32| text.parse::<u32>().ok().filter(|n| *n <= most && text.len() <= 2).ok_or_else(wrong);
    Ok(TimeSpan::minutes(f64::from(part(hours, 23)? * 60 + part(minutes, 59)?)))
}

/// A temperature in which a kitchen or its fridge can be.
fn temperature(text: &str, of: &str, taken: Taken) -> Result<Temperature, Failure> {
    let wrong = || {
        let such = if taken == FRIDGES { "4 °C" } else { "19 °C" };
        Failure::new(format!("“{text}” is no temperature of {of}"))
            .hint(format!("write it with its unit, {}: \"{such}\"", taken.in_words()))
    };
    let measure: Measure = text.parse().map_err(|_| wrong())?;
    let value = measure.temperature().ok_or_else(wrong)?.to;
    if taken.contains(value.as_celsius()) { Ok(value) } else { Err(wrong()) }
}
