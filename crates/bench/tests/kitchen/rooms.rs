//! What the room, the fridge, a proofer and the height above the sea change.

use crate::{LOAF, high, kitchen, work_out};
use bench::forecast::{Forecast, Surroundings, forecast, foresee};
use formula::read::Kitchen;
use quantity::{Between, Temperature, TimeSpan};

fn doubled(foreseen: &Forecast) -> f64 {
    let steps = foreseen.rises.iter().flat_map(|rise| &rise.steps);
    let reached = steps.filter_map(|step| step.reached.as_ref()).next().expect("it doubles");
    reached.from.value.as_hours()
}

/// Limits that hold anywhere: a colder room is slower, and a room that cools at night lies between both.
#[test]
fn the_dough_feels_the_room_it_stands_in() {
    let loaf = work_out(LOAF);
    let (cold, warm) = (doubled(&forecast(&loaf, &kitchen(17.0))), doubled(&forecast(&loaf, &kitchen(23.0))));
    assert!(cold > warm, "{cold} h at 17 °C, {warm} h at 23 °C");
    let night = Kitchen { night: Some(Temperature::celsius(17.0)), ..kitchen(23.0) };
    let at = |hour: f64| doubled(&foresee(&loaf, &Surroundings::of(&night).with_serving_at(TimeSpan::hours(hour))));
    let (by_day, by_night) = (at(17.0), at(5.0));
    assert!(warm - 1e-6 <= by_day && by_day < by_night && by_night <= cold + 1e-6, "{warm} {by_day} {by_night} {cold}");
}

/// What a method asks for is held only where a proofer can hold it.
#[test]
fn a_proofer_holds_what_the_room_does_not() {
    let text = LOAF.replace("until = \"doubled\"", "until = \"doubled\"\ntemperature = \"28 °C\"");
    let loaf = work_out(&text);
    let proofer = Some(Between { from: Temperature::celsius(24.0), to: Temperature::celsius(40.0) });
    let without = forecast(&loaf, &kitchen(17.0));
    let with = forecast(&loaf, &Kitchen { proofer, ..kitchen(17.0) });
    assert!(doubled(&with) < doubled(&without));
    let stands = |foreseen: &Forecast| foreseen.rises[0].steps[0].stands;
    assert_eq!(stands(&with), None);
    assert_eq!(stands(&without).map(|stands| stands.found), Some(Temperature::celsius(17.0)));
}

/// At 2,000 m water boils 6.7 K lower (79.5 kPa in the ICAO standard atmosphere, steam tables; from memory): no moist middle gets hotter than that.
#[test]
fn high_up_the_middle_stays_cooler() {
    let loaf = work_out(LOAF);
    let middle = |metres: f64| forecast(&loaf, &high(metres)).cookings[0].core_range().to.as_celsius();
    assert!((middle(0.0) - 100.0).abs() < 0.2 && (middle(2000.0) - 93.3).abs() < 0.3, "{} {}", middle(0.0), middle(2000.0));
}
