//! The messages of a day: its list, its drawing, its place on a page, and how its moments are written.

use super::Tongue;
use super::message::messages;
use jiff::ZonedDateTime;
use plan::day::{Begins, Station, Why};

messages!(DAY {
    day_a_night_without_sleep;
    day_all_day_in_the_kitchen;
    day_an_oven;
    day_and(one: &str, other: &str);
    day_and_the(one: &str, other: &str);
    day_asleep(hours: String);
    day_asleep_until(time: String);
    day_assumed(what: String);
    day_at_hand(time: String);
    day_being_back(time: String);
    day_bowls(count: f64, many: String);
    day_bowls_of(bowls: String, size: String);
    day_cannot_be(what: String);
    day_date(weekday: &str, day: String, month: &str);
    day_decks(count: f64, many: String);
    day_drawn;
    day_fixed_at(time: String);
    day_fixed_not_after(time: String);
    day_fixed_not_before(time: String);
    day_fridge;
    day_fridge_room(room: String);
    day_getting_up(time: String);
    day_hands(count: f64, many: String);
    day_heat_oven;
    day_heat_the_oven;
    day_heat_the_oven_to(heat: String);
    day_in(kitchen: &str, what: String);
    day_in_the_fridge(room: String);
    day_in_the_proofer(room: String);
    day_is_planned;
    day_legend;
    day_legend_fixed;
    day_missing(what: String);
    day_on_the_table(time: String);
    day_out(hours: String);
    day_out_only(from: String, to: String);
    day_out_until(time: String);
    day_past_its_best(by: String, action: &str, thing: String);
    day_rings(count: f64, many: String);
    day_served_later(by: String, time: String);
    day_sleep_only(from: String, to: String);
    day_soft(things: String);
    day_take_out(things: String);
    day_the(thing: String);
    day_the_day;
    day_until(time: String);
    day_of_serving;
    day_what_is_done(dishes: String);
    day_what_is_served(dishes: String);
    day_what_to_do;
    days_before(count: f64, days: String);
});

impl Tongue {
    /// A day of the calendar: "Sunday 29 November".
    pub(crate) fn day(self, moment: &ZonedDateTime) -> String {
        let weekday = format!("{}", moment.weekday().to_monday_one_offset());
        let month = format!("{}", moment.month());
        let (weekday, month) = (self.catalogue.fixed_in("weekday_", &weekday), self.catalogue.fixed_in("month_", &month));
        self.day_date(weekday, moment.day().to_string(), month)
    }

    /// How a step is fixed: "fixed not before 06:30".
    pub(crate) fn fixed(self, begins: Begins, time: String) -> String {
        match begins {
            Begins::At => self.day_fixed_at(time),
            Begins::NotBefore => self.day_fixed_not_before(time),
            Begins::NotAfter => self.day_fixed_not_after(time),
        }
    }

    /// A station's name.
    pub(crate) fn station(self, station: Station) -> &'static str {
        self.catalogue.fixed_in("station_", crate::day::station(station))
    }

    /// Until when nobody is at hand: "asleep until 06:10".
    pub(crate) fn away_until(self, why: Why, time: String) -> String {
        if why == Why::Asleep { self.day_asleep_until(time) } else { self.day_out_until(time) }
    }
}
