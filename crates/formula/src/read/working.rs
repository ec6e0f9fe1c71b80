//! Who works in a kitchen: how many pairs of hands, on how many rings, and when nobody is at hand.

use super::At;
use super::fields::{Fields, Reader, figure, in_written_order};
use super::formula::read_measure;
use super::kitchen::{TAKEN, VOLUMES, impossible};
use crate::fault;
use quantity::{Kind, Measure, SpoonSystem, Volume};
use std::fmt;

/// What a kitchen states of the work in it; nothing where it states nothing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Working {
    /// How many people work.
    pub hands: Option<u32>,
    /// How many pans can be on the hob at once.
    pub rings: Option<u32>,
    /// How many bowls can be in use at once.
    pub bowls: Option<u32>,
    /// How many of them hold how much, the smallest first; nothing where they are only counted.
    pub bowl_sizes: Vec<(Volume, u32)>,
    /// When the baker sleeps, every night.
    pub asleep: Option<DayHours>,
    /// When nobody is in the kitchen, every day.
    pub out: Vec<DayHours>,
}

/// From one time of the day to another, past midnight where the second is not after the first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DayHours {
    /// From when.
    pub from: DayTime,
    /// To when.
    pub to: DayTime,
}

/// A time of the day on a clock of 24 hours, in whole minutes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct DayTime {
    minutes: u16,
}

impl DayTime {
    /// Reads "6:30" or "06:30"; 24:00 is the midnight at which the day ends.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let (hour, minute) = text.trim().split_once(':')?;
        let digits = |part: &str, most: usize| (1..=most).contains(&part.len()) && part.bytes().all(|byte| byte.is_ascii_digit());
        if !digits(hour, 2) || !digits(minute, 2) || minute.len() != 2 {
            return None;
        }
        let (hour, minute): (u16, u16) = (hour.parse().ok()?, minute.parse().ok()?);
        let minutes = hour * 60 + minute;
        (minute < 60 && minutes <= 24 * 60).then_some(Self { minutes: minutes % (24 * 60) })
    }

    /// The hour, 0 to 23.
    #[must_use]
    pub const fn hour(self) -> u16 {
        self.minutes / 60
    }

    /// The minute, 0 to 59.
    #[must_use]
    pub const fn minute(self) -> u16 {
        self.minutes % 60
    }
}

impl fmt::Display for DayTime {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:02}:{:02}", self.hour(), self.minute())
    }
}

impl DayHours {
    /// Reads "22:30-06:30"; a stretch of no length, or of a whole day, is none.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let (from, to) = text.split_once(['-', '–'])?;
        let hours = Self { from: DayTime::read(from)?, to: DayTime::read(to)? };
        (hours.from != hours.to).then_some(hours)
    }
}

impl fmt::Display for DayHours {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}–{}", self.from, self.to)
    }
}

/// The most hands, rings, bowls or decks that a kitchen may state: enough for a bakery, little enough to be counted.
pub const MOST_AT_ONCE: u32 = 100;

/// Reads what a kitchen's file says of the work in it.
pub fn read_working(reader: &mut Reader, fields: &Fields) -> Working {
    let hands = read_whole(reader, fields, "hands");
    let rings = read_whole(reader, fields, "rings");
    let bowl_sizes = read_sizes(reader, fields, "bowls");
    let bowls = match fields.table_if_one("bowls") {
        Some(_) => Some(bowl_sizes.iter().map(|(_, count)| count).sum()).filter(|count| *count > 0),
        None => read_whole(reader, fields, "bowls"),
    };
    let asleep = fields.text(reader, "asleep").map(|text| At::new(text.value.to_owned(), text.span));
    let asleep = asleep.and_then(|text| read_hours(reader, text));
    let out = fields.texts(reader, "out").into_iter().filter_map(|text| read_hours(reader, text)).collect();
    Working { hands, rings, bowls, bowl_sizes, asleep, out }
}

/// A whole number under a key, of things that can be counted in a kitchen.
pub fn read_whole(reader: &mut Reader, fields: &Fields, name: &str) -> Option<u32> {
    let count = read_measure(reader, fields, name, Kind::Count)?;
    let pieces = count.value.count(SpoonSystem::Metric)?.to.as_pieces();
    whole(reader, name, At::new(pieces, count.span))
}

fn whole(reader: &mut Reader, name: &str, count: At<f64>) -> Option<u32> {
    if count.value.fract() == 0.0 && (1.0..=f64::from(MOST_AT_ONCE)).contains(&count.value) {
        return Some(count.value as u32);
    }
    let message = format!("no kitchen has such a figure for “{name}”: a whole number from 1 to {MOST_AT_ONCE} is taken");
    reader.report(&fault::KITCHEN_IMPOSSIBLE, count.span, message, TAKEN);
    None
}

/// How many there are of each size, the smallest first, where a table says so.
fn read_sizes(reader: &mut Reader, fields: &Fields, name: &str) -> Vec<(Volume, u32)> {
    let mut sizes = Vec::new();
    for (size, value) in fields.table_if_one(name).map(in_written_order).unwrap_or_default() {
        let volume = size.value.parse::<Measure>().ok().and_then(|one| one.volume(SpoonSystem::Metric));
        let Some(volume) = volume.map(|volume| volume.to) else {
            let message = format!("“{}” is no size of “{name}”", size.value);
            reader.report(&fault::WRONG_QUANTITY, size.span, message, "write what they hold with its unit: \"3 l\" = 2");
            continue;
        };
        if !VOLUMES.contains(volume.as_millilitres()) {
            impossible(reader, &size.span, name, VOLUMES);
            continue;
        }
        let count = figure(value).and_then(|text| text.value.trim().parse::<f64>().ok());
        sizes.extend(whole(reader, name, At::new(count.unwrap_or(f64::NAN), value.span())).map(|count| (volume, count)));
    }
    sizes.sort_by(|a, b| a.0.as_millilitres().total_cmp(&b.0.as_millilitres()));
    sizes
}

fn read_hours(reader: &mut Reader, text: At<String>) -> Option<DayHours> {
    let hours = DayHours::read(&text.value);
    if hours.is_none() {
        let message = format!("“{}” is no stretch of the day", text.value);
        reader.report(&fault::NOT_HOURS_OF_THE_DAY, text.span, message, "write \"22:30-06:30\", on a clock of 24 hours");
    }
    hours
}

#[cfg(test)]
mod tests {
    use super::DayHours;

    #[test]
    fn hours_as_people_write_them() {
        for (text, expected) in [
            ("22:30-06:30", Some("22:30–06:30")),
            ("9:00 – 12:05", Some("09:00–12:05")),
            ("20:00-24:00", Some("20:00–00:00")),
            ("0:00-6:00", Some("00:00–06:00")),
            ("22:30", None),
            ("22-6", None),
            ("25:00-6:00", None),
            ("24:01-6:00", None),
            ("12:60-13:00", None),
            ("8:5-9:00", None),
            ("+8:00-9:00", None),
            ("10:00-10:00", None),
            ("noon-14:00", None),
            ("", None),
        ] {
            assert_eq!(DayHours::read(text).map(|hours| hours.to_string()).as_deref(), expected, "{text}");
        }
    }
}
