//! Times as loggers write them.

/// What times count from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Clock {
    /// Days of the calendar.
    Dated,
    /// Midnight of the first day.
    OfDay,
    /// When the logger was started.
    Started,
}

/// The form of times.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Form {
    /// A date and a time of the day.
    Date,
    /// A time of the day.
    Clock,
    /// Seconds since 1970; so many of them a unit.
    Unix(f64),
    /// A bare number, so many seconds a unit.
    Elapsed(f64),
}

impl Form {
    /// What such times count from.
    pub const fn clock(self) -> Clock {
        match self {
            Self::Date | Self::Unix(_) => Clock::Dated,
            Self::Clock => Clock::OfDay,
            Self::Elapsed(_) => Clock::Started,
        }
    }
}

/// In which order day and month stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Order {
    /// The day first.
    DayFirst,
    /// The month first.
    MonthFirst,
    /// Either would do; the day is taken first.
    Either,
    /// The year stands first, or no date at all.
    Told,
}

/// The numbers of a date and the seconds of the day.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Parts {
    date: Option<(i64, i64, i64)>,
    year_first: bool,
    dots: bool,
    clock: Option<f64>,
}

/// Whether a cell holds a date, a time of the day, or both.
pub fn kinds(cell: &str) -> (bool, bool) {
    parts(cell).map_or((false, false), |parts| (parts.date.is_some(), parts.clock.is_some()))
}

fn parts(cell: &str) -> Option<Parts> {
    let mut all = Parts::default();
    let (mut afternoon, mut any) = (None, false);
    let cell = cell.trim().replace(['T', 't', ','], " ");
    for word in cell.split_whitespace() {
        let word = word.trim_end_matches(['Z', 'z']);
        match word.to_ascii_lowercase().replace('.', "").as_str() {
            "am" => afternoon = Some(false),
            "pm" => afternoon = Some(true),
            "" | "utc" | "gmt" | "uhr" => {}
            _ if word.contains(':') => all.clock = Some(clock(word)?),
            _ => {
                let (date, year_first) = date(word)?;
                (all.date, all.year_first, all.dots) = (Some(date), year_first, word.contains('.'));
            }
        }
        any = true;
    }
    if let (Some(afternoon), Some(clock)) = (afternoon, all.clock) {
        let hours = (clock / 3600.0).floor();
        if !(1.0..=12.0).contains(&hours) {
            return None;
        }
        all.clock = Some(clock - hours * 3600.0 + (hours % 12.0 + if afternoon { 12.0 } else { 0.0 }) * 3600.0);
    }
    any.then_some(all)
}

/// Seconds of "18:20", "18:20:30.5", "18:20:30+01:00"; the offset is the logger's own and changes nothing.
fn clock(word: &str) -> Option<f64> {
    let word = word.split(['+']).next()?;
    let word = word.rsplit_once('-').map_or(word, |(clock, _)| clock);
    let mut numbers = word.split(':').map(|part| part.parse::<f64>().ok());
    let (hours, minutes) = (numbers.next()??, numbers.next()??);
    let seconds = numbers.next().unwrap_or(Some(0.0))?;
    let is_time =
        hours.fract() == 0.0 && (0.0..24.0).contains(&hours) && (0.0..60.0).contains(&minutes) && (0.0..61.0).contains(&seconds);
    (is_time && numbers.next().is_none()).then_some(hours * 3600.0 + minutes * 60.0 + seconds)
}

/// The three numbers of a date as they stand, and whether the first is the year.
fn date(word: &str) -> Option<((i64, i64, i64), bool)> {
    let sign = ['-', '/', '.'].into_iter().find(|sign| word.contains(*sign))?;
    let mut numbers = word.trim_end_matches('.').split(sign).map(|part| part.parse::<i64>().ok().filter(|n| *n >= 0));
    let date = (numbers.next()??, numbers.next()??, numbers.next()??);
    let is_year = |n: i64| (1970..=2200).contains(&n);
    let is_day = |n: i64| (1..=31).contains(&n);
    let year_first = is_year(date.0) && is_day(date.1) && is_day(date.2);
    let year_last = is_day(date.0) && is_day(date.1) && (is_year(date.2) || date.2 < 100);
    (numbers.next().is_none() && (year_first || year_last)).then_some((date, year_first))
}

/// In which order day and month stand in a column of times: as only one of them fits, or as the rows follow each other
/// more closely.
pub fn order(times: impl Iterator<Item = String>, month_first: bool) -> Order {
    let all: Vec<Parts> = times.filter_map(|time| parts(&time)).filter(|one| one.date.is_some() && !one.year_first).collect();
    if all.is_empty() {
        return Order::Told;
    }
    if month_first {
        return Order::MonthFirst;
    }
    let is_above = |take: fn(&(i64, i64, i64)) -> i64| all.iter().filter_map(|one| one.date.as_ref()).any(|date| take(date) > 12);
    if all.iter().any(|one| one.dots) || is_above(|date| date.0) {
        return Order::DayFirst;
    }
    if is_above(|date| date.1) {
        return Order::MonthFirst;
    }
    let widest = |order: Order| {
        let moments: Vec<f64> = all.iter().filter_map(|one| of_calendar(one, order)).collect();
        moments.windows(2).map(|two| (two[1] - two[0]).abs()).fold(0.0, f64::max)
    };
    let (day, month) = (widest(Order::DayFirst), widest(Order::MonthFirst));
    if day < month {
        Order::DayFirst
    } else if month < day {
        Order::MonthFirst
    } else {
        Order::Either
    }
}

/// The seconds of a cell.
pub fn seconds(cell: &str, form: Form, order: Order) -> Option<f64> {
    match form {
        Form::Unix(unit) | Form::Elapsed(unit) => {
            let number = cell.trim().replace(',', ".").parse::<f64>().ok()?;
            Some(number * unit).filter(|seconds| seconds.is_finite() && *seconds >= 0.0)
        }
        Form::Clock => parts(cell)?.clock,
        Form::Date => of_calendar(&parts(cell)?, order),
    }
}

fn of_calendar(parts: &Parts, order: Order) -> Option<f64> {
    let (a, b, c) = parts.date?;
    let (year, month, day) = match (parts.year_first, order) {
        (true, _) => (a, b, c),
        (false, Order::MonthFirst) => (c, a, b),
        (false, _) => (c, b, a),
    };
    let year = if year < 100 { 2000 + year } else { year };
    if !(1..=12).contains(&month) || day > days_of(year, month) {
        return None;
    }
    Some(days(year, month, day) as f64 * 86400.0 + parts.clock.unwrap_or(0.0))
}

fn days_of(year: i64, month: i64) -> i64 {
    let next = if month == 12 { days(year + 1, 1, 1) } else { days(year, month + 1, 1) };
    next - days(year, month, 1)
}

/// Days since the beginning of 1970 by the Gregorian calendar: years begin with March, so that the leap day is the last.
fn days(year: i64, month: i64, day: i64) -> i64 {
    let (year, month) = if month > 2 { (year, month - 3) } else { (year - 1, month + 9) };
    let leaps = year.div_euclid(4) - year.div_euclid(100) + year.div_euclid(400);
    year * 365 + leaps + (153 * month + 2) / 5 + day - 719_469
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Unix times of these dates: GNU coreutils 9.1, `date -u -d … +%s`.
    #[test]
    fn times_of_the_calendar() {
        for (cell, order, expected) in [
            ("1970-01-01 00:00", Order::Told, 0.0),
            ("2026-11-14T18:20:30", Order::Told, 1_794_680_430.0),
            ("14.11.2026 18:20", Order::DayFirst, 1_794_680_400.0),
            ("11/14/26 6:20 PM", Order::MonthFirst, 1_794_680_400.0),
            ("29/02/2028, 00:00", Order::DayFirst, 1_835_395_200.0),
            ("2026-11-14 18:20:30+01:00", Order::Told, 1_794_680_430.0),
        ] {
            assert_eq!(seconds(cell, Form::Date, order), Some(expected), "{cell}");
        }
        for wrong in ["", "noon", "2027-02-29 10:00", "2026-11-14 25:00", "31.11.2026 10:00"] {
            assert_eq!(seconds(wrong, Form::Date, Order::DayFirst), None, "{wrong}");
        }
    }

    #[test]
    fn the_order_of_day_and_month() {
        let order = |cells: &[&str]| order(cells.iter().map(|cell| (*cell).to_owned()), false);
        assert_eq!(order(&["3/4/2026 10:00", "3/5/2026 10:00"]), Order::MonthFirst);
        assert_eq!(order(&["3/4/2026 10:00", "4/4/2026 10:00"]), Order::DayFirst);
        assert_eq!(order(&["3/4/2026 10:00", "3/4/2026 11:00"]), Order::Either);
        assert_eq!(order(&["3/14/2026 10:00"]), Order::MonthFirst);
        assert_eq!(order(&["2026-03-04 10:00"]), Order::Told);
    }
}
