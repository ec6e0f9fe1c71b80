//! Prints figures as the program tells them in the language asked for, one JSON row each, and the words that a page
//! carries: what the page's own scripts are held to.
#![allow(clippy::print_stdout, clippy::disallowed_methods, reason = "its whole purpose; the language is asked for")]

use publish::tongue::Tongue;
use publish::words::{bare_grams_in, bare_percent_in};
use quantity::{Between, Count, Fraction, Mass, SpoonSystem, Temperature, TimeSpan, Volume, print};
use serde_json::{Value, json};

/// Figures that meet every rounding: halves, ends of ranges, and values strewn evenly over powers of ten.
fn values() -> Vec<f64> {
    let corners =
        [0.0, 0.04, 0.05, 0.125, 0.25, 0.5, 0.75, 1.0 / 3.0, 1.5, 2.5, 9.95, 12.5, 13.5, 99.5, 100.5, 450.0, 452.2, 9999.5];
    let mut seed: u64 = 20_261_125;
    let strewn = (0..700).map(move |n| {
        // Knuth's multiplier: any even spread will do.
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        let share = (seed >> 11) as f64 / (1u64 << 53) as f64;
        let value = libm::pow(10.0, f64::from(n % 70) / 10.0 - 2.0) * (0.5 + share);
        // Every fourth is a round one.
        if n % 4 == 0 { (value * 8.0).round() / 8.0 } else { value }
    });
    corners.into_iter().chain(strewn).collect()
}

fn row(value: f64, tongue: Tongue) -> Value {
    let print = tongue.print;
    let (mass, volume) = (Mass::grams(value), Volume::millilitres(value));
    let degrees = Between { from: Temperature::celsius(value - 20.0), to: Temperature::celsius(value - 15.5) };
    let span = |value: f64| TimeSpan::minutes((value * 2.0).round() / 2.0);
    let times = Between { from: span(value), to: span(value * 1.5) };
    let rounded = print::rounded_time(Between::just(TimeSpan::minutes(value)));
    let spoons: Vec<Value> = SpoonSystem::ALL
        .iter()
        .map(|system| json!([system.name(), print.spoons(volume, *system).map(|(told, _)| told)]))
        .collect();
    json!({
        "value": value,
        "mass": print.mass(mass),
        "bare": bare_grams_in(mass, tongue),
        "large": print.large_mass(mass),
        "ounces": print.ounces(mass),
        "percent": [Fraction::percent(value).as_percent(), bare_percent_in(Fraction::percent(value), tongue)],
        "two": print.number(value, 2),
        "count": print.count(Count::pieces((value * 24.0).round() / 24.0)),
        "celsius": print.celsius(degrees),
        "fahrenheit": print.fahrenheit(degrees),
        "time": [times.from.as_seconds(), times.to.as_seconds(), print.time(times)],
        "about": print.time(rounded),
        "spoons": spoons,
    })
}

fn main() {
    let tongue = Tongue::of(&std::env::args().nth(1).unwrap_or_default());
    let rows: Vec<Value> = values().into_iter().map(|value| row(value, tongue)).collect();
    println!("{}", json!({ "words": tongue.carried_by_name(), "rows": rows }));
}
