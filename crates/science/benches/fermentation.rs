//! How long a day's fermentation takes here, and how much longer SciPy's integrators need for it.
//!
//! `cargo bench -p science --bench fermentation`. The comparison wants a Python with SciPy, named
//! by `PYTHON` or found at `target/venv/bin/python`; without one only our own times are shown.

// A benchmark reads the clock, starts the program it compares with, and prints.
#![allow(clippy::disallowed_methods, clippy::disallowed_types, clippy::print_stdout)]

use quantity::{Mass, Rate, Temperature, TimeSpan};
use science::ferment::{
    Carried, Course, Dough, DoughKind, Fermentation, Hold, Leaven, Limits, Room, Strain, TemperaturePath, Warming, Yeast,
    YeastForm,
};
use std::hint::black_box;
use std::process::Command;
use std::time::Instant;

const DAY: TimeSpan = TimeSpan::hours(24.0);
const CLOSE: Limits = Limits { relative: 1e-12, absolute: 1e-15, steps: 100_000 };

/// Yeast, bacteria, acid, gas made and gas lost at the end.
type Figures = [f64; 5];

/// One line of the script: case, method, seconds, figures.
struct Theirs {
    case: String,
    method: String,
    seconds: f64,
    figures: Figures,
}

fn main() {
    let theirs = scipy("1e-6");
    let close = scipy("1e-10");
    for (name, fermentation) in [("preferment", preferment()), ("sourdough", sourdough())] {
        let ours = best(|| drop(black_box(black_box(&fermentation).run(DAY))));
        let course = fermentation.run(DAY);
        let reading = best(|| {
            black_box((course.doubled(), course.ripe(), course.sugar_spent()));
        });
        let exact = figures(&Fermentation { limits: CLOSE, ..fermentation }.run(DAY));
        let off = apart(&figures(&course), &exact);
        println!("{name}: {:.1} µs for 24 h, off by {off:.1e}; {:.1} µs to read it", ours * 1e6, reading * 1e6);
        for line in theirs.iter().filter(|line| line.case == name) {
            let (off, ratio) = (apart(&line.figures, &exact), line.seconds / ours);
            println!("  {:<5} {:6.1} ms, {ratio:5.0} times as long, off by {off:.1e}", line.method, line.seconds * 1e3);
        }
        if let Some(line) = close.iter().find(|line| line.case == name) {
            println!("  {} at 1e-10 against ours at 1e-12: {:.1e} apart", line.method, apart(&line.figures, &exact));
        }
    }
}

/// From 18 °C towards a room of 24 °C.
fn drifting() -> TemperaturePath {
    let room = Room { from: TimeSpan::ZERO, air: Temperature::celsius(24.0), approach: Rate::per_hour(0.35) };
    TemperaturePath::Rooms { start: Temperature::celsius(18.0), rooms: vec![room], own_heat: Warming::Ignored }
}

fn preferment() -> Fermentation {
    let dough = Dough { water: Mass::kilograms(1.0), hold: Hold::of(DoughKind::Liquid), ..Dough::default() };
    let yeast = Yeast { form: YeastForm::Instant, mass: Mass::grams(0.85) };
    Fermentation::new(&dough, &Leaven::yeast(Strain::Bakers, yeast), drifting())
}

fn sourdough() -> Fermentation {
    let dough = Dough { water: Mass::kilograms(1.0), hold: Hold::of(DoughKind::LiquidCulture), ..Dough::default() };
    let culture = Carried::ripe_culture(Mass::kilograms(1.0 / 11.0));
    Fermentation::new(&dough, &Leaven::carried(Strain::Sourdough, culture), drifting())
}

/// The best of many runs, in seconds.
fn best(run: impl Fn()) -> f64 {
    let timed = |_| {
        let begun = Instant::now();
        run();
        begun.elapsed().as_secs_f64()
    };
    (0..400).map(timed).fold(f64::INFINITY, f64::min)
}

fn figures(course: &Course) -> Figures {
    let state = course.last().state;
    [
        state.yeast.as_grams(),
        state.bacteria.as_grams(),
        state.acid.as_millimoles(),
        state.gas_made.as_moles(),
        state.gas_lost.as_moles(),
    ]
}

/// The largest relative difference.
fn apart(one: &Figures, other: &Figures) -> f64 {
    one.iter().zip(other).map(|(a, b)| if *b == 0.0 { a.abs() } else { (a / b - 1.0).abs() }).fold(0.0, f64::max)
}

/// What the script prints, or nothing where it cannot run.
fn scipy(tolerance: &str) -> Vec<Theirs> {
    let home = concat!(env!("CARGO_MANIFEST_DIR"), "/../../target/venv/bin/python");
    let python = std::env::var("PYTHON").unwrap_or_else(|_| home.to_owned());
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/benches/fermentation.py");
    match Command::new(python).args([script, tolerance]).output() {
        Ok(output) => String::from_utf8_lossy(&output.stdout).lines().filter_map(read).collect(),
        Err(_) => Vec::new(),
    }
}

/// The order of the script's states: yeast is the fourth, bacteria the fifth, then from the tenth
/// acid, gas made and gas lost.
fn read(line: &str) -> Option<Theirs> {
    let words: Vec<&str> = line.split_whitespace().collect();
    let number = |place: usize| words.get(place).and_then(|word| word.parse().ok());
    let figures = [number(6)?, number(7)?, number(12)?, number(13)?, number(14)?];
    Some(Theirs { case: words[0].to_owned(), method: words[1].to_owned(), seconds: number(2)?, figures })
}
