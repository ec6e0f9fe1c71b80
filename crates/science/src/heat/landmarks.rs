//! Temperatures of interest: where fats melt, eggs set and crumb is done.

use crate::entry::{self, Origin};
use quantity::{Between, Temperature};
use std::sync::LazyLock;

/// The entries of `data/heat_landmarks.toml`, as text.
pub const DATA: &str = include_str!("../../data/heat_landmarks.toml");

/// What happens at a temperature, or over a range of them.
#[derive(Clone, Debug, PartialEq)]
pub struct Landmark {
    /// What happens, in a few words.
    pub name: String,
    /// From where to where; a single temperature has both ends alike.
    pub at: Between<Temperature>,
    /// Where the figures come from.
    pub origin: Origin,
}

static LANDMARKS: LazyLock<Vec<Landmark>> = LazyLock::new(|| {
    entry::read(DATA, "landmark", |row| {
        let end = |key| row.number(key).map(Temperature::celsius);
        let at = Between { from: end("from_celsius")?, to: end("to_celsius")? };
        Some(Landmark { name: row.word("name")?, at, origin: row.origin()? })
    })
});

/// The landmarks, coolest first within each food.
///
/// ```
/// use science::heat::landmarks;
/// let chocolate = landmarks::all().iter().find(|landmark| landmark.name.contains("well-tempered"));
/// assert_eq!(chocolate.map(|form| form.at.from.as_celsius()), Some(33.8));
/// ```
#[must_use]
pub fn all() -> &'static [Landmark] {
    &LANDMARKS
}
