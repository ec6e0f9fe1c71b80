//! How the workbench bears fifty people who edit and look on at once, for a minute, as their browsers would.
//!
//! `cargo bench -p app --bench crowd` prints what was asked, how long answers took, errors and the most memory held;
//! beside them how long the smallest answer takes in the same crowd. Nothing here passes or fails. `CROWD_SECONDS` and
//! `CROWD_PROGRAM` say how long, and of which build.
#![allow(clippy::disallowed_methods, clippy::disallowed_types, clippy::print_stdout, missing_docs)]

mod asking;
mod person;

use asking::Place;
use person::{Seen, Tally};
use std::io::{BufRead, BufReader};
use std::net::Ipv4Addr;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};

const PEOPLE: u8 = 50;

fn main() {
    let seconds = std::env::var("CROWD_SECONDS").ok().and_then(|text| text.parse().ok()).unwrap_or(60);
    let folder = tempfile::tempdir().expect("a folder");
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/saltmarsh");
    let book = folder.path().join("book");
    assert!(Command::new("cp").arg("-r").arg(demo).arg(&book).status().expect("cp").success());
    let formulas: Vec<String> = std::fs::read_dir(book.join("formulas"))
        .expect("formulas")
        .flatten()
        .map(|entry| entry.path().file_stem().expect("a name").to_string_lossy().into_owned())
        .collect();
    let (mut program, port, opened) = serve(&book);
    println!("open in {:.0} ms, {:.0} MB", opened.as_secs_f64() * 1000.0, memory(&program, "VmHWM"));
    let tally: Arc<Mutex<Tally>> = Arc::default();
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().expect("a runtime");
    let begun = Instant::now();
    runtime.block_on(async {
        let until = begun + Duration::from_secs(seconds);
        let people = (0..PEOPLE).map(|n| {
            let place = Place { to: ([127, 0, 0, 1], port).into(), from: Ipv4Addr::new(127, 0, 2, n + 1) };
            let formula = formulas[usize::from(n) % formulas.len()].clone();
            tokio::spawn(person::works(place, formula, n, until, Arc::clone(&tally)))
        });
        for person in people.collect::<Vec<_>>() {
            person.await.expect("a person");
        }
    });
    told(&tally.lock().expect("a tally"), begun.elapsed());
    println!("memory: {:.0} MB at the most (wanted: under 300)", memory(&program, "VmHWM"));
    program.kill().expect("an end");
    let _ = program.wait();
}

fn told(tally: &Tally, took: Duration) {
    let all: Vec<f64> = tally.seen.values().flat_map(|seen| seen.times.iter().copied()).collect();
    let errors: usize = tally.seen.values().map(|seen| seen.errors.len()).sum();
    println!("{PEOPLE} people for {:.0} s: {} answers, {errors} errors", took.as_secs_f64(), all.len());
    row("all together", &all);
    for (what, Seen { times, errors }) in &tally.seen {
        row(what, times);
        for error in errors.iter().take(3) {
            println!("    {error}");
        }
    }
}

fn row(what: &str, times: &[f64]) {
    let mut times = times.to_vec();
    times.sort_by(f64::total_cmp);
    let at = |share: f64| {
        times.get(((times.len() as f64 * share) as usize).min(times.len().saturating_sub(1))).copied().unwrap_or(f64::NAN)
    };
    println!(
        "  {what:<22} {:>6}   median {:>6.1} ms   95 in 100 under {:>6.1} ms   worst {:>7.1} ms",
        times.len(),
        at(0.5),
        at(0.95),
        at(1.0)
    );
}

/// The program with a book, its port, and how long it took to open.
fn serve(book: &Path) -> (Child, u16, Duration) {
    let begun = Instant::now();
    // Another build of it may be named.
    let program = std::env::var("CROWD_PROGRAM").unwrap_or_else(|_| env!("CARGO_BIN_EXE_wellproved").to_owned());
    let mut child = Command::new(program)
        .arg("serve")
        .arg(book)
        .args(["--no-open", "--port", "0"])
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .expect("the program runs");
    let mut lines = BufReader::new(child.stdout.take().expect("its words")).lines().map_while(Result::ok);
    let line = lines.next().expect("it opens");
    let opened = begun.elapsed();
    let port = line.trim_end_matches('/').rsplit_once(':').expect("a port").1.parse().expect("a port");
    (child, port, opened)
}

/// A figure of the program's memory in megabytes, where the system tells it.
fn memory(program: &Child, what: &str) -> f64 {
    let status = std::fs::read_to_string(format!("/proc/{}/status", program.id())).unwrap_or_default();
    let line = status.lines().find(|line| line.starts_with(what)).unwrap_or_default();
    line.split_whitespace().nth(1).and_then(|kb| kb.parse::<f64>().ok()).map_or(f64::NAN, |kb| kb / 1024.0)
}
