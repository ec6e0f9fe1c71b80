//! A room as it was measured: rows of time and temperature from a logger, averaged by the half-hour.

use crate::source::Source;
use crate::{Checked, Place, fault};
use quantity::{Measure, Temperature, TimeSpan};
use std::sync::Arc;

/// The clock is cut into so many parts.
const PARTS: usize = 48;

/// Reads comma-separated rows whose first field holds a clock ("2026-10-12 06:00", "06:00") and whose second
/// a temperature in degree Celsius or with its unit. A first row of headings is skipped. Several days are
/// averaged by the half-hour.
///
/// Reports the first row that is neither, and a file without any.
#[must_use]
pub fn read_room_log(source: &Source) -> Checked<Vec<(TimeSpan, Temperature)>> {
    let mut sums = [(0.0, 0_u32); PARTS];
    let mut found = Vec::new();
    let mut start = 0;
    for (number, line) in source.text.split_inclusive('\n').enumerate() {
        let span = start..start + line.trim_end().len();
        start += line.len();
        let row = line.trim();
        if row.is_empty() {
            continue;
        }
        match reading(row) {
            Some((minutes, temperature)) => {
                let part = &mut sums[(minutes / 30).min(PARTS - 1)];
                *part = (part.0 + temperature, part.1 + 1);
            }
            None if number == 0 => {}
            None => {
                let place = Place { file: Arc::clone(&source.file), span };
                let message = format!("“{row}” is no reading of a room");
                let hint = "each row is a time and a temperature: 2026-10-12 06:00, 17.4";
                found.push(fault::WRONG_QUANTITY.at(place, message).hint(hint));
                break;
            }
        }
    }
    let middle = |part: usize| TimeSpan::minutes(part as f64 * 30.0 + 15.0);
    let parts = sums.iter().enumerate().filter(|(_, (_, count))| *count > 0);
    let value: Vec<_> = parts.map(|(part, (sum, count))| (middle(part), Temperature::celsius(sum / f64::from(*count)))).collect();
    if value.is_empty() && found.is_empty() {
        let place = Place { file: Arc::clone(&source.file), span: 0..0 };
        found.push(fault::NOTHING_IN_IT.at(place, "the log of the room holds no readings".to_owned()));
    }
    Checked { value, diagnostics: found }
}

/// The minutes after midnight and the degrees of a row.
fn reading(row: &str) -> Option<(usize, f64)> {
    let (time, rest) = row.split_once([',', ';', '\t'])?;
    let clock = time.trim().trim_matches('"').rsplit(['T', ' ']).next()?;
    let (hours, minutes) = clock.split_once(':')?;
    let hours = hours.parse::<usize>().ok().filter(|hours| *hours < 24)?;
    let minutes = minutes.get(..2)?.parse::<usize>().ok().filter(|minutes| *minutes < 60)?;
    let text = rest.split([',', ';', '\t']).next()?.trim().trim_matches('"');
    let degrees = text.parse::<f64>().ok().or_else(|| Some(text.parse::<Measure>().ok()?.temperature()?.to.as_celsius()));
    let degrees = degrees.filter(|degrees| super::ROOMS.contains(*degrees))?;
    Some((hours * 60 + minutes, degrees))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str, expected: &[(f64, f64)]) {
        let read = read_room_log(&Source { file: "kitchens/x.csv".into(), text: text.to_owned() });
        let found: Vec<(f64, f64)> = read.value.iter().map(|(at, t)| (at.as_hours(), t.as_celsius())).collect();
        assert_eq!(found, expected, "{text:?}: {:?}", read.diagnostics);
        assert_eq!(read.diagnostics.is_empty(), !expected.is_empty());
    }

    #[test]
    fn rows_are_averaged_by_the_half_hour() {
        check(
            "time,temperature\n2026-10-12 06:00, 17.0\n2026-10-13T06:10:30,18.0\n15:45;22.5 °C\n",
            &[(6.25, 17.5), (15.75, 22.5)],
        );
        check("06:00\t68 °F", &[(6.25, 20.0)]);
        for wrong in ["", "time,temperature\n", "x\n25:00,17", "x\n06:00,NaN", "x\n06:00,400"] {
            check(wrong, &[]);
        }
    }
}
