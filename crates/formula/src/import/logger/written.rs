//! A logger's readings in the book's own form: the course of a rise, the log of a room.

use super::{Clock, Log, Logged};

const DAY: f64 = 86400.0;

impl Log {
    /// When it was read first and last.
    #[must_use]
    pub fn span(&self) -> Option<(f64, f64)> {
        Some((self.readings.first()?.seconds, self.readings.last()?.seconds))
    }

    /// The log with moments that count from a clock: of one that was started, from the moment of the start.
    #[must_use]
    pub fn started_at(mut self, seconds: f64) -> Self {
        if self.clock == Clock::Started {
            self.readings.iter_mut().for_each(|one| one.seconds += seconds);
            self.clock = Clock::Dated;
        }
        self
    }

    /// The readings from a moment on, as long as that lasts.
    #[must_use]
    pub fn part(&self, from: f64, lasts: Option<f64>) -> Vec<Logged> {
        let is_in = |one: &&Logged| one.seconds >= from && lasts.is_none_or(|lasts| one.seconds <= from + lasts);
        self.readings.iter().filter(is_in).copied().collect()
    }

    /// The log of a room: rows of clock and temperature, averaged by the half-hour.
    #[must_use]
    pub fn as_room(&self) -> String {
        let row = |one: &Logged| format!("{},{}\n", clock(one.seconds, self.clock), tenths(one.celsius));
        let rows: String = averaged(&self.readings, 0.0, 1800.0).iter().map(row).collect();
        format!("time,temperature\n{rows}")
    }
}

/// The course of a rise that began at a moment: minutes and temperatures, averaged over `every` so many seconds, so that a
/// thermometer that is read each second does not outvote the jar.
#[must_use]
pub fn as_course(readings: &[Logged], from: f64, every: f64) -> String {
    let row = |one: &Logged| format!("{},{}\n", tenths((one.seconds - from) / 60.0), tenths(one.celsius));
    let rows: String = averaged(readings, from, every).iter().map(row).collect();
    format!("time (min),temperature (°C)\n{rows}")
}

/// The text of a kitchen with the log of its room, and the file that is meant: its own, where it names one.
#[must_use]
pub fn with_room_log(kitchen: &str, file: &str) -> Option<(String, String)> {
    let mut document: toml_edit::DocumentMut = kitchen.parse().ok()?;
    match document.get("room-log").and_then(|item| item.as_str()) {
        Some(own) => Some((own.to_owned(), kitchen.to_owned())),
        None => {
            document["room-log"] = toml_edit::value(file);
            Some((file.to_owned(), document.to_string()))
        }
    }
}

/// The mean of readings; none of nothing.
#[must_use]
pub fn mean(readings: &[Logged]) -> Option<f64> {
    (!readings.is_empty()).then(|| readings.iter().map(|one| one.celsius).sum::<f64>() / readings.len() as f64)
}

/// Readings averaged over stretches of that many seconds, each at the middle of what was read in it.
fn averaged(readings: &[Logged], from: f64, every: f64) -> Vec<Logged> {
    let stretch = |one: &Logged| ((one.seconds - from) / every).floor();
    let middle = |part: &[Logged]| Logged {
        seconds: part.iter().map(|one| one.seconds).sum::<f64>() / part.len() as f64,
        celsius: mean(part).unwrap_or_default(),
    };
    readings.chunk_by(|a, b| stretch(a) == stretch(b)).map(middle).collect()
}

fn tenths(value: f64) -> String {
    let rounded = (value * 10.0).round() / 10.0;
    if rounded.fract() == 0.0 { format!("{rounded:.0}") } else { format!("{rounded:.1}") }
}

/// A moment as the book writes one: "2026-11-03 06:00", or "06:00".
#[must_use]
pub fn clock(seconds: f64, clock: Clock) -> String {
    let minutes = ((seconds.rem_euclid(DAY)) / 60.0).floor() as i64;
    let of_day = format!("{:02}:{:02}", minutes / 60, minutes % 60);
    if clock == Clock::Dated { format!("{} {of_day}", date((seconds / DAY).floor() as i64)) } else { of_day }
}

/// The date of a day since 1970, by the Gregorian calendar.
fn date(day: i64) -> String {
    let day = day + 719_468;
    let era = day.div_euclid(146_097);
    let of_era = day.rem_euclid(146_097);
    let year = (of_era - of_era / 1460 + of_era / 36_524 - of_era / 146_096) / 365;
    let of_year = of_era - (365 * year + year / 4 - year / 100);
    let month = (5 * of_year + 2) / 153;
    let number = of_year - (153 * month + 2) / 5 + 1;
    let (month, year) = if month < 10 { (month + 3, year + era * 400) } else { (month - 9, year + era * 400 + 1) };
    format!("{year:04}-{month:02}-{number:02}")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Dates of these Unix times: GNU coreutils 9.1, `date -u -d @…`.
    #[test]
    fn moments_are_written_as_they_were_read() {
        assert_eq!(clock(1_794_680_400.0, Clock::Dated), "2026-11-14 18:20");
        assert_eq!(clock(1_835_395_200.0, Clock::Dated), "2028-02-29 00:00");
        assert_eq!(clock(0.0, Clock::Dated), "1970-01-01 00:00");
        assert_eq!(clock(22_230.0, Clock::OfDay), "06:10");
    }

    #[test]
    fn a_course_is_averaged() {
        let readings: Vec<Logged> =
            (0..60).map(|n| Logged { seconds: 100.0 + f64::from(n) * 60.0, celsius: 20.0 + f64::from(n / 30) }).collect();
        assert_eq!(as_course(&readings, 100.0, 1800.0), "time (min),temperature (°C)\n14.5,20\n44.5,21\n");
    }
}
