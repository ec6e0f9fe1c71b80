//! A day's timeline as people see it: by the clock, as a list to work from, to buy by, to hang up, to carry in a pocket.

mod alternatives;
mod calendar;
mod chances;
mod chart;
mod json;
mod markup;
mod prep;
mod relief;
mod shopping;
mod text;
mod wishes;
mod words;

pub use alternatives::{alternatives, alternatives_json, reason};
pub use calendar::calendar;
pub(crate) use chart::STYLE as CHART_LOOK;
pub(crate) use chart::{Days, drawing};
pub use chart::{chart, leading};
pub use json::json;
pub use markup::{Task, alternatives_markup, come_to, fixed, prep_markup, shopping_markup, tasks};
pub use prep::prep;
pub(crate) use prep::{is_told, made_ready, told};
pub use shopping::shopping;
pub(crate) use text::place_in;
pub use text::text;
pub(crate) use wishes::gives_way_in;
pub(crate) use words::station;
pub(crate) use words::{rests, verb_in, what_in};
