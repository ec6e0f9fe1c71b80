//! How long something takes.

use crate::define::quantity;

quantity! {
    /// A span of time, stored in second.
    TimeSpan {
        /// So many second.
        seconds, as_seconds: 1.0;
        /// So many minute.
        minutes, as_minutes: 60.0;
        /// So many hour.
        hours, as_hours: 3600.0;
        /// So many days of 24 h.
        days, as_days: 86_400.0;
    }
}

impl TimeSpan {
    /// The span as ISO 8601 writes it, to the whole second: `PT1H30M`, `P1DT2H`, `PT0S`.
    #[must_use]
    pub fn iso_8601(self) -> String {
        let mut seconds = self.as_seconds().max(0.0).round() as u64;
        let mut take = |size: u64| {
            let count = seconds / size;
            seconds %= size;
            count
        };
        let (days, hours, minutes, rest) = (take(86_400), take(3600), take(60), take(1));
        let mut text = String::from("P");
        if days > 0 {
            text.push_str(&format!("{days}D"));
        }
        let clock: String = [(hours, 'H'), (minutes, 'M'), (rest, 'S')]
            .iter()
            .filter(|(count, _)| *count > 0)
            .map(|(count, letter)| format!("{count}{letter}"))
            .collect();
        match (clock.is_empty(), days > 0) {
            (false, _) => format!("{text}T{clock}"),
            (true, true) => text,
            (true, false) => "PT0S".to_owned(),
        }
    }
}
