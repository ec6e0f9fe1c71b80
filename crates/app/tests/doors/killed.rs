//! Killed in the middle of saves: every acknowledged one is there, no file is half, no comment is lost.

use crate::sandbox::Sandbox;
use crate::served::{Asked, Served, escaped, next};
use std::collections::BTreeMap;
use std::process::Command;
use std::sync::mpsc;
use std::time::{Duration, Instant};

const FILE: &str = "saltmarsh/formulas/cardamom-knots.toml";
const TEXT: &str = "/formula/cardamom-knots/text";
const TIMES: u32 = 200;
/// So many saves are acknowledged before it is killed in the middle of the next one, at most.
const SAVES: u64 = 3;

/// The text of a save: comments all through it, and long enough to be half written.
fn text(first: &str, n: u32) -> String {
    format!("# save {n}\n{first}\n# {}\n# the end of save {n}\n", "a comment that is not to be lost. ".repeat(400))
}

#[test]
fn killed_two_hundred_times_on_sqlite() {
    killed_while_saving("");
}

/// Where `TEST_DATABASE_URL` names a server.
#[test]
fn killed_two_hundred_times_on_postgres() {
    let Ok(server) = std::env::var("TEST_DATABASE_URL") else { return };
    killed_while_saving(&schema(&server, "killed"));
}

fn killed_while_saving(server: &str) {
    let environment = if server.is_empty() { vec![] } else { vec![("WELLPROVED_STORE", server)] };
    let mut served = Served::of(Sandbox::with_demo(), &["--port", "0"], &environment);
    let first = served.sandbox.read(FILE);
    let (mut seed, mut n, mut stands) = (7, 0, first.clone());
    let mut took: u64 = 30_000;
    let mut fates = BTreeMap::<(bool, bool), u32>::new();
    for round in 0..TIMES {
        let token = served.get(TEXT, "").token();
        for _ in 0..next(&mut seed) % (SAVES + 1) {
            n += 1;
            let begun = Instant::now();
            let answer = saved(&served, &token, &stands, &text(&first, n));
            took = begun.elapsed().as_micros().try_into().unwrap_or(took);
            assert_eq!(answer, 200, "save {n}: {}", served.journal());
            stands = text(&first, n);
        }
        // The one that may not be acknowledged: killed at a moment that differs from time to time, within what the
        // last one took and a little more.
        n += 1;
        let body = body(&stands, &text(&first, n));
        let asked = asked(&token, &body);
        let after = Duration::from_micros(next(&mut seed) % (took + took / 4).max(1));
        let acknowledged = std::thread::scope(|scope| {
            let (told, heard) = mpsc::channel();
            let served = &served;
            let answer = scope.spawn(move || {
                let status = served.try_ask(&asked).map(|answer| answer.status);
                drop(told);
                status
            });
            // Until it is answered, or so long.
            let _: Result<(), _> = heard.recv_timeout(after);
            let killed = Command::new("kill").args(["-9", &served.child.id().to_string()]).status().expect("kill");
            assert!(killed.success());
            answer.join().expect("an answer")
        });
        served.kill();
        let now = served.sandbox.read(FILE);
        let next_one = text(&first, n);
        assert!(
            now == next_one || (now == stands && acknowledged != Some(200)),
            "round {round}: {acknowledged:?}, {} letters",
            now.len()
        );
        *fates.entry((acknowledged.is_some(), now == next_one)).or_default() += 1;
        stands = now;
        served.again(&["--port", "0"], &environment);
    }
    println!("killed: {fates:?} (acknowledged, written)");
    // Everything acknowledged is remembered, too: undone stroke by stroke it is the first text again.
    let token = served.get(TEXT, "").token();
    let mut steps = 0;
    while served.post("/formula/cardamom-knots/back", "", &token, &[]).status == 303 {
        steps += 1;
        assert!(steps <= n, "no more strokes than saves");
    }
    assert_eq!(served.sandbox.read(FILE), first);
    let checked = Command::new(env!("CARGO_BIN_EXE_wellproved"))
        .args(["store", "saltmarsh", "check"])
        .envs(environment)
        .current_dir(served.sandbox.path(""))
        .output();
    assert!(checked.expect("the program runs").status.success(), "the memory is sound");
}

fn body(before: &str, after: &str) -> String {
    format!("from={}&text={}", hash(before), escaped(after))
}

fn asked<'a>(token: &'a str, body: &'a str) -> Asked<'a> {
    let kind = ("Content-Type", "application/x-www-form-urlencoded");
    Asked {
        method: "POST",
        path: TEXT,
        headers: vec![("x-token", token), ("x-parts", "1"), kind],
        body: body.as_bytes(),
        from: None,
    }
}

fn saved(served: &Served, token: &str, before: &str, after: &str) -> u16 {
    served.ask(&asked(token, &body(before, after))).status
}

fn hash(text: &str) -> String {
    use sha2::Digest;
    sha2::Sha256::digest(text.as_bytes()).iter().map(|byte| format!("{byte:02x}")).collect()
}

/// An empty schema of its own on the server.
pub fn schema(server: &str, name: &str) -> String {
    let name = format!("workbench_{}_{name}", std::process::id());
    let made = Command::new("psql").args([server, "-qc", &format!("CREATE SCHEMA {name}")]).status().expect("psql");
    assert!(made.success());
    format!("{server}?options=-csearch_path%3D{name}")
}
