//! How long a million water activities take.
//!
//! `cargo bench -p science --bench water_activity`.

// A benchmark reads the clock and prints.
#![allow(clippy::disallowed_methods, clippy::disallowed_types, clippy::print_stdout)]

use quantity::{Fraction, Mass};
use science::keeping::water_activity::solute::{Dissolved, named};
use science::keeping::water_activity::{mixture, norrish};
use std::hint::black_box;
use std::time::Instant;

const MILLION: u32 = 1_000_000;

fn main() {
    let dissolved: Vec<Dissolved> = ["sucrose", "glucose", "fructose"]
        .into_iter()
        .filter_map(|name| Some(Dissolved { solute: named(name)?, mass: Mass::grams(20.0) }))
        .collect();
    let water = |i: u32| Mass::grams(30.0 + f64::from(i % 1000) * 0.1);
    report("three sugars, Norrish", |i| norrish::water_activity(water(i), &dissolved));
    report("the same with salt and alcohol", |i| {
        let (salt, ethanol) = (Mass::grams(1.0), Mass::grams(3.0));
        mixture::water_activity(&mixture::Mixture { water: water(i), solutes: &dissolved, salt, ethanol })
    });
}

fn report(what: &str, activity: impl Fn(u32) -> Fraction) {
    let begun = Instant::now();
    for i in 0..MILLION {
        black_box(activity(black_box(i)));
    }
    println!("a million water activities, {what}: {:.3} s (limit 1 s)", begun.elapsed().as_secs_f64());
}
