//! What lies in a folder besides texts, and an output that takes no more.
#![cfg(unix)]

use crate::sandbox::{Ran, Sandbox, small_formula};
use std::os::unix::fs::symlink;
use std::process::{Command, Stdio};

fn book() -> Sandbox {
    let sandbox = Sandbox::empty();
    sandbox.write("book/formulas/flat.toml", small_formula("flour-bread = \"500 g\"", "Mix {flour-bread}."));
    sandbox
}

#[track_caller]
fn fine_without(ran: &Ran, left_out: &str, reason: &str) {
    assert_eq!(ran.status, 0, "{}{}", ran.out, ran.err);
    assert!(ran.err.contains(&format!("{left_out} is left out: {reason}")), "{}", ran.err);
    assert!(ran.err.contains("1 formula proof-read"), "{}", ran.err);
}

#[test]
fn a_pipe_is_not_waited_for() {
    let sandbox = book();
    for pipe in ["book/formulas/pipe.toml", "alone.toml"] {
        let made = Command::new("mkfifo").arg(sandbox.path(pipe)).status().expect("mkfifo runs");
        assert!(made.success());
    }
    fine_without(&sandbox.run(&["check", "book"]), "formulas/pipe.toml", "it is no ordinary file");
    let ran = sandbox.run(&["check", "alone.toml"]);
    assert_eq!(ran.status, 2);
    assert!(ran.err.contains("neither a folder nor a file"), "{}", ran.err);
}

#[test]
fn links_to_folders_are_not_followed() {
    let sandbox = book();
    symlink(sandbox.path("book"), sandbox.path("book/formulas/round")).expect("a link");
    fine_without(&sandbox.run(&["check", "book"]), "formulas/round", "it is a link to a folder");
}

#[test]
fn a_link_that_leads_nowhere_stops_nothing() {
    let sandbox = book();
    symlink(sandbox.path("nowhere.toml"), sandbox.path("book/formulas/gone.toml")).expect("a link");
    symlink(sandbox.path("book/formulas/itself.toml"), sandbox.path("book/formulas/itself.toml")).expect("a link");
    let ran = sandbox.run(&["check", "book"]);
    fine_without(&ran, "formulas/gone.toml", "it is a link that leads nowhere");
    fine_without(&ran, "formulas/itself.toml", "it is a link that leads nowhere");
}

#[test]
fn links_to_files_are_read() {
    let sandbox = book();
    sandbox.write("shared.toml", small_formula("flour-bread = \"300 g\"", "Mix {flour-bread}."));
    symlink(sandbox.path("shared.toml"), sandbox.path("book/formulas/shared.toml")).expect("a link");
    let ran = sandbox.run(&["check", "book"]);
    assert!(ran.status == 0 && ran.err.contains("2 formulas"), "{}", ran.err);
}

#[cfg(target_os = "linux")]
#[test]
fn an_output_that_is_full_is_a_failure() {
    let sandbox = book();
    for words in [vec!["sheet", "book"], vec!["explain"], vec!["--help"]] {
        let full = std::fs::OpenOptions::new().write(true).open("/dev/full").expect("/dev/full");
        let mut command = Command::new(env!("CARGO_BIN_EXE_wellproved"));
        let output = command.args(&words).current_dir(sandbox.path("")).stdout(full).output().expect("the program runs");
        assert_eq!(output.status.code(), Some(2), "{words:?}");
        let err = String::from_utf8_lossy(&output.stderr);
        assert!(err.contains("could not write the answer: no space left"), "{words:?}: {err}");
    }
}

#[test]
fn a_reader_that_has_gone_away_is_no_failure() {
    let sandbox = book();
    let mut command = Command::new(env!("CARGO_BIN_EXE_wellproved"));
    command.args(["ingredients", "--format", "json"]).current_dir(sandbox.path(""));
    let mut child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().expect("the program runs");
    drop(child.stdout.take());
    let output = child.wait_with_output().expect("the program ends");
    assert_eq!((output.status.code(), output.stderr.len()), (Some(0), 0), "{}", String::from_utf8_lossy(&output.stderr));
}

#[test]
fn a_file_name_that_is_no_address_is_refused() {
    let sandbox = book();
    for name in ["javascript:alert(1)", "a#b", "Flat Bread"] {
        sandbox.write(&format!("book/formulas/{name}.toml"), small_formula("flour-bread = \"300 g\"", "Mix {flour-bread}."));
    }
    let ran = sandbox.run(&["publish", "book"]);
    assert_eq!(ran.status, 1, "{}", ran.err);
    assert_eq!(ran.out.matches("cannot be a formula's file name").count(), 3, "{}", ran.out);
    assert!(ran.out.contains("call it flat-bread.toml"), "{}", ran.out);
    assert!(!sandbox.path("site").exists());
}

#[test]
fn a_title_cannot_command_the_terminal() {
    let sandbox = book();
    let text =
        small_formula("flour-bread = \"300 g\"", "Mix {flour-bread}.").replacen("title = \"", "title = \"\\u001b]0;x\\u0007 ", 1);
    sandbox.write("book/formulas/loud.toml", text + "\n[[component]]\nname = \"\\u001b[2J\"\n");
    for words in [["sheet", "book"], ["check", "book"], ["forecast", "book"]] {
        let ran = sandbox.run(&words);
        assert!(!ran.out.contains(['\u{1b}', '\u{7}']) && !ran.err.contains(['\u{1b}', '\u{7}']), "{}", ran.out);
    }
}

#[test]
fn prices_beside_formulas_are_no_formula() {
    let sandbox = Sandbox::empty();
    sandbox.write("flat/bread.toml", small_formula("flour-bread = \"500 g\"", "Mix {flour-bread}."));
    sandbox.write("flat/prices.toml", "[[price]]\nof = \"flour-bread\"\npack = \"1 kg\"\ncosts = \"1.50 EUR\"\n");
    let ran = sandbox.run(&["forecast", "flat"]);
    assert!(ran.status == 0 && ran.out.contains("0.75\u{a0}EUR"), "{}{}", ran.out, ran.err);
}
