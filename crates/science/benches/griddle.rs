//! How long a griddle cook takes here, and how much longer the same cook takes in NumPy.
//!
//! `cargo bench -p science --bench griddle`. The comparison wants a Python with NumPy, named by
//! `PYTHON` or found at `target/venv/bin/python`; without one only our own times are shown.

// A benchmark reads the clock, starts the program it compares with, and prints.
#![allow(clippy::disallowed_methods, clippy::disallowed_types, clippy::print_stdout)]

use quantity::*;
use science::heat::cook::{Piece, Stage, cook, course};
use science::heat::course::Course;
use science::heat::griddle::{kitchen, turned};
use science::heat::*;
use std::hint::black_box;
use std::process::Command;
use std::time::Instant;

const SIDE: TimeSpan = TimeSpan::minutes(3.0);

/// Core at the flip and at the end, top at the flip, in °C, and water lost in percent.
type Figures = [f64; 4];

fn main() {
    let (piece, stages) = (cake(48), stages());
    let fine = figures(&course(&cake(384), &stages));
    let ours = best(|| drop(black_box(course(black_box(&piece), &stages))));
    let off = apart(&figures(&course(&piece, &stages)), &fine);
    println!("griddle cook, 48 cells, 6 min, one flip: {:.2} ms; {off:.2} K from 384 cells (limit 5 ms)", ours * 1e3);
    let both = best(|| drop(black_box(cook(black_box(&piece), &stages))));
    println!("  with its lower bound by conduction: {:.2} ms", both * 1e3);
    match numpy() {
        Some((seconds, theirs)) => {
            let ratio = seconds / ours;
            let off = apart(&theirs, &fine);
            println!("  NumPy: {seconds:.1} s, {ratio:.0} times as long (limit 50); {off:.2} K from 384 cells");
            println!("  both figures: {:.2?} ours, {theirs:.2?} NumPy", figures(&course(&piece, &stages)));
        }
        None => println!("  no Python with NumPy found; nothing to compare with"),
    }
    let (solid, faces) = slab();
    let plain = best(|| drop(black_box(conduction(black_box(&solid), faces, TimeSpan::minutes(10.0)))));
    println!("plain conduction, 100 cells, 10 min: {:.3} ms (limit 0.5 ms)", plain * 1e3);
}

fn pan() -> Face {
    Face::Contact { transfer: surroundings::GRIDDLE.usual, against: Temperature::celsius(139.0) }
}

fn stages() -> Vec<Stage> {
    turned(pan(), kitchen(Temperature::celsius(25.0)), &[SIDE, SIDE], TimeSpan::ZERO)
}

fn cake(cells: u16) -> Piece {
    let batter = Composition {
        water: Fraction::percent(52.0),
        protein: Fraction::percent(7.0),
        fat: Fraction::percent(6.0),
        carbohydrate: Fraction::percent(32.5),
        fibre: Fraction::percent(1.0),
        ash: Fraction::percent(1.5),
        ice: Fraction::ZERO,
    };
    let density = Density::kilograms_per_cubic_metre(800.0);
    Piece { cells, ..Piece::new(Length::millimetres(12.0), batter, density, Temperature::celsius(22.0)) }
}

fn slab() -> (conduction::Solid, [Face; 2]) {
    let solid = conduction::Solid {
        shape: Shape::Slab,
        thickness: Length::millimetres(20.0),
        cells: 100,
        conductivity: Conductivity::watts_per_metre_kelvin(0.31),
        density: Density::kilograms_per_cubic_metre(800.0),
        heat: SpecificHeat::joules_per_kilogram_kelvin(2990.0),
        start: Temperature::celsius(22.0),
    };
    (solid, [pan(), Face::Insulated])
}

fn figures(course: &Course) -> Figures {
    let at = |time: TimeSpan| course.core_at(time).map_or(f64::NAN, Temperature::as_celsius);
    let flip = course.times.partition_point(|time| *time < SIDE);
    let top = course.cells[flip].last().map_or(f64::NAN, |cell| cell.as_celsius());
    [at(SIDE), course.core().as_celsius(), top, course.loss.last().map_or(f64::NAN, |loss| loss.as_percent())]
}

/// The largest difference of the three temperatures.
fn apart(one: &Figures, other: &Figures) -> f64 {
    one.iter().zip(other).take(3).map(|(a, b)| (a - b).abs()).fold(0.0, f64::max)
}

/// The best of many runs, in seconds.
fn best(run: impl Fn()) -> f64 {
    let timed = |_| {
        let begun = Instant::now();
        run();
        begun.elapsed().as_secs_f64()
    };
    (0..100).map(timed).fold(f64::INFINITY, f64::min)
}

/// Seconds and figures of the script beside this file.
fn numpy() -> Option<(f64, Figures)> {
    let root = concat!(env!("CARGO_MANIFEST_DIR"), "/../..");
    let python = std::env::var("PYTHON").unwrap_or_else(|_| format!("{root}/target/venv/bin/python"));
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/benches/griddle.py");
    let output = Command::new(python).arg(script).output().ok()?;
    let numbers: Vec<f64> =
        String::from_utf8(output.stdout).ok()?.split_whitespace().filter_map(|word| word.parse().ok()).collect();
    let [seconds, figures @ ..] = numbers.as_slice() else { return None };
    Some((*seconds, figures.try_into().ok()?))
}
