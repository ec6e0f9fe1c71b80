//! Killed in the middle: what was acknowledged is there, and nothing half.

use crate::{Places, formula, wait};
use std::io::{BufRead, BufReader, Write};
use std::process::{Command, Stdio};
use store::{Address, Kind, Saved, Store};

/// The place that the killed one saves in.
const PLACE: &str = "STORE_THAT_IS_KILLED";

/// The one that is killed: saves on and on, and says each number once it is acknowledged.
#[test]
fn saver() {
    let Ok(place) = std::env::var(PLACE) else { return };
    let address = if place.starts_with("postgres") { Address::Server(place) } else { Address::File(place.into()) };
    wait(async {
        let store = Store::open(&address).await.expect("a store");
        let mut out = std::io::stdout().lock();
        for n in 0_u32.. {
            let text = format!("{}.{n} {}", std::process::id(), "flour ".repeat(300));
            let Saved::New(one) = store.save(&formula("rye", &text)).await.expect("saved") else { panic!("it is new") };
            writeln!(out, "acknowledged {}", one.number).expect("a line");
        }
    });
}

/// A small generator with a fixed seed: Knuth's MMIX constants.
fn next(seed: &mut u64) -> u64 {
    *seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
    *seed >> 33
}

#[test]
fn killed_two_hundred_times() {
    let places = Places::new();
    for address in wait(places.all("killed")) {
        let place = match &address {
            Address::File(path) => path.display().to_string(),
            Address::Server(url) => url.clone(),
        };
        let (mut seed, mut acknowledged) = (7, 0);
        for _ in 0..200 {
            let mut child = Command::new(std::env::current_exe().expect("this test"))
                .args(["--exact", "killed::saver", "--nocapture", "--test-threads=1"])
                .env(PLACE, &place)
                .stdout(Stdio::piped())
                .stderr(Stdio::null())
                .spawn()
                .expect("a child");
            let lines = BufReader::new(child.stdout.take().expect("its words")).lines();
            let numbers = lines.map_while(Result::ok).filter_map(|line| line.rsplit_once("acknowledged ")?.1.parse::<i64>().ok());
            let some = 1 + next(&mut seed) % 4;
            acknowledged = numbers.take(some as usize).last().expect("it saves");
            // A moment that differs from time to time: the next save is somewhere in its middle.
            (0..next(&mut seed) % 200_000).for_each(|n| {
                std::hint::black_box(n);
            });
            child.kill().expect("killed");
            child.wait().expect("gone");
        }
        wait(async {
            let store = Store::open(&address).await.expect("sound");
            let numbers: Vec<i64> =
                store.history(Kind::Formula, "rye").await.expect("a history").iter().map(|one| one.number).collect();
            assert!(numbers.len() as i64 >= acknowledged, "{} of {acknowledged}", numbers.len());
            assert_eq!(numbers, (1..=numbers.len() as i64).collect::<Vec<_>>(), "no hole");
            for number in numbers {
                assert!(store.text(Kind::Formula, "rye", number).await.expect("its text").ends_with("flour "), "whole");
            }
        });
    }
}
