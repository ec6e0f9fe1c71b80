//! Temperatures of interest: where fats melt, eggs set and crumb is done.

use crate::Standing;
use quantity::Temperature;

/// What happens at a temperature, or over a range of them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Landmark {
    /// What happens, in a few words.
    pub name: &'static str,
    /// Where it begins.
    pub from: Temperature,
    /// Where it ends; the same for a single temperature.
    pub to: Temperature,
    /// A key of `sources/heat.toml`.
    pub source: &'static str,
    /// The place in the source.
    pub place: &'static str,
    /// How well it is founded.
    pub standing: Standing,
}

const fn landmark(name: &'static str, [from, to]: [f64; 2], (source, place): (&'static str, &'static str)) -> Landmark {
    Landmark {
        name,
        from: Temperature::celsius(from),
        to: Temperature::celsius(to),
        source,
        place,
        standing: Standing::FromMemory,
    }
}

const fn published(landmark: Landmark) -> Landmark {
    Landmark { standing: Standing::Published, ..landmark }
}

const fn practice(landmark: Landmark) -> Landmark {
    Landmark { standing: Standing::CommonPractice, ..landmark }
}

const WILLE_LUTTON: (&str, &str) = ("wille-lutton-1966", "melting points of the six crystal forms");
const TRADE: (&str, &str) = ("trade", "rules of the bench");
const EGG: (&str, &str) = ("belitz-2009", "ch. 11, proteins of egg");

/// The landmarks, coolest first within each food.
pub const LANDMARKS: &[Landmark] = &[
    landmark("cocoa butter form I melts", [17.3, 17.3], WILLE_LUTTON),
    landmark("cocoa butter form II melts", [23.3, 23.3], WILLE_LUTTON),
    landmark("cocoa butter form III melts", [25.5, 25.5], WILLE_LUTTON),
    landmark("cocoa butter form IV melts", [27.5, 27.5], WILLE_LUTTON),
    landmark("cocoa butter form V, of well-tempered chocolate, melts", [33.8, 33.8], WILLE_LUTTON),
    landmark("cocoa butter form VI, of bloomed chocolate, melts", [36.3, 36.3], WILLE_LUTTON),
    practice(landmark("dark chocolate is cooled to", [27.0, 27.0], TRADE)),
    practice(landmark("dark chocolate is worked at", [31.0, 32.0], TRADE)),
    practice(landmark("dark chocolate is melted to", [45.0, 50.0], TRADE)),
    practice(landmark("butter creams well", [15.0, 20.0], TRADE)),
    practice(landmark("butter laminates well", [18.0, 21.0], TRADE)),
    published(landmark("butter is a thin liquid", [32.0, 35.0], ("butter-board", "melting of butter"))),
    landmark("conalbumin of the white sets", [61.0, 61.0], EGG),
    published(landmark("yolk begins to thicken", [65.0, 65.0], ("egg-handling-notes", "setting of yolk"))),
    published(landmark("yolk no longer flows", [70.0, 70.0], ("egg-handling-notes", "setting of yolk"))),
    landmark("ovalbumin of the white sets", [84.0, 84.0], EGG),
    practice(landmark("the core of a plain crumb is set", [85.0, 95.0], TRADE)),
    practice(landmark("the core of a rich dough is done", [88.0, 93.0], TRADE)),
    practice(landmark("the core of a griddle cake is done", [90.0, 98.0], TRADE)),
    practice(landmark("the core of a lean loaf is done", [94.0, 98.0], TRADE)),
];
