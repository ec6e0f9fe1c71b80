//! The messages that a page carries for its scripts.

use super::Tongue;
use fluent_bundle::FluentValue;
use serde_json::{Value, json};

/// The messages that scripts say, each with what it is filled with; a `count` chooses the plural.
pub const CARRIED: &[(&str, &[&str])] = &[
    ("a_room_of", &["degrees"]),
    ("a_tin_of", &["litres"]),
    ("about", &[]),
    ("as_the_method_says", &[]),
    ("back_to_the_page", &[]),
    ("batches", &["many", "at_once"]),
    ("beat_eggs", &["whole", "weight", "left"]),
    ("day_of_serving", &[]),
    ("days_before", &["count", "days"]),
    ("egg_white", &[]),
    ("egg_whites", &[]),
    ("egg_whole", &[]),
    ("egg_wholes", &[]),
    ("egg_yolk", &[]),
    ("egg_yolks", &[]),
    ("eggs_like", &["size"]),
    ("eggs_of_size", &["eggs", "size"]),
    ("figure_cup", &[]),
    ("figure_cups", &[]),
    ("figure_tablespoon", &[]),
    ("figure_teaspoon", &[]),
    ("figure_to", &[]),
    ("foreseen_after", &["place", "after", "from", "to", "says"]),
    ("foreseen_at", &["degrees"]),
    ("foreseen_kept_at", &["degrees"]),
    ("foreseen_never", &["place"]),
    ("foreseen_ripe", &["place", "from", "to", "says"]),
    ("found", &["found", "all"]),
    ("have_ready", &["what"]),
    ("liquid_alone_cannot", &["room", "liquid"]),
    ("liquid_at", &["room", "liquid", "degrees", "hot"]),
    ("liquid_too_hot", &[]),
    ("method_says", &["time"]),
    ("next", &[]),
    ("of_protein", &["flour", "percent"]),
    ("piece", &[]),
    ("pieces", &[]),
    ("previous", &[]),
    ("served_then", &["time"]),
    ("serving", &[]),
    ("so_long_before", &["time"]),
    ("so_many_times", &["times"]),
    ("spoons_and_cups_of", &["first", "whose", "cup", "tablespoon", "teaspoon"]),
    ("spoons_first", &[]),
    ("step", &[]),
    ("stop", &[]),
    ("time_is_up", &["step"]),
    ("timer", &[]),
    ("timer_of", &["time"]),
    ("timers", &[]),
    ("times_are_foreseen", &[]),
    ("times_of_the_batch", &[]),
    ("told_for", &["what"]),
    ("waiting", &[]),
    ("weights_first", &[]),
    ("whose_cups_and_spoons", &["whose"]),
];

/// A number of each plural that a carried message may have, by the names of CLDR.
const PLURALS: [(&str, f64); 2] = [("one", 1.0), ("other", 2.0)];

impl Tongue {
    /// The words of a page's scripts in the order of their list, and how they write numbers. What a message is filled
    /// with stands in braces.
    #[must_use]
    pub fn carried(self) -> Value {
        let messages: Vec<Value> = CARRIED.iter().map(|(id, takes)| self.with_plurals(id, takes)).collect();
        self.with_notation(Value::Array(messages))
    }

    /// The same by name, for scripts that are not joined to a page's one.
    #[must_use]
    pub fn carried_by_name(self) -> Value {
        let named = CARRIED.iter().map(|(id, takes)| ((*id).to_owned(), self.with_plurals(id, takes)));
        self.with_notation(Value::Object(named.collect()))
    }

    fn with_notation(self, messages: Value) -> Value {
        let notation = json!({ "point": self.print.point, "group": self.print.group, "from": self.print.grouped_from });
        json!({ "language": self.catalogue.language, "notation": notation, "messages": messages })
    }

    fn with_plurals(self, id: &str, takes: &[&'static str]) -> Value {
        if takes.contains(&"count") {
            let plurals = PLURALS.map(|(name, count)| (name.to_owned(), json!(self.with_braces(id, takes, count))));
            return Value::Object(plurals.into_iter().collect());
        }
        if takes.is_empty() { json!(self.catalogue.fixed(id)) } else { json!(self.with_braces(id, takes, 0.0)) }
    }

    fn with_braces(self, id: &str, takes: &[&'static str], count: f64) -> String {
        let value = |name: &str| match name {
            "count" => FluentValue::from(count),
            name => FluentValue::from(format!("{{{name}}}")),
        };
        let with: Vec<(&'static str, FluentValue)> = takes.iter().map(|name| (*name, value(name))).collect();
        self.catalogue.filled(id, &with)
    }
}
