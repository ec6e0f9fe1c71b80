//! `check`: what is found, how it is shown, and the status.

use crate::sandbox::{small_formula, Sandbox};

const FAULTY: &str = r#"title = "Flat bread"
colour = "golden"

[[component]]
name = "bread"

[[component.stage]]
name = "dough"
kind = "final-mix"

[component.stage.ingredients]
flour-bread = "500 g"
watr = "65 %"
salt = "-10 g"
yeast-instant = "3 gramz"

[[component.stage.step]]
action = "mix"
text = "Mix {flour-bread} and {milk} for 5 min."
"#;

#[test]
fn the_demo_book_is_fine() {
    let ran = Sandbox::with_demo().run(&["check", "saltmarsh"]);
    assert_eq!((ran.status, ran.out.trim()), (0, ""), "{}", ran.err);
    assert!(ran.err.contains("nothing amiss"), "{}", ran.err);
}

#[test]
fn every_fault_is_found_in_one_run_under_its_line() {
    let sandbox = Sandbox::empty();
    sandbox.write("flat.toml", FAULTY);
    let ran = sandbox.run(&["check", "flat.toml"]);
    assert_eq!(ran.status, 1);
    insta::assert_snapshot!("faults_as_text", ran.out);
    insta::assert_snapshot!("faults_summary", ran.err);
}

#[test]
fn faults_for_other_programs() {
    let sandbox = Sandbox::empty();
    sandbox.write("flat.toml", FAULTY);
    let ran = sandbox.run(&["check", "flat.toml", "--format", "json"]);
    assert_eq!(ran.status, 1);
    insta::assert_snapshot!("faults_as_json", ran.out);
}

#[test]
fn advice_is_no_fault() {
    let sandbox = Sandbox::empty();
    sandbox.write("flat.toml", small_formula("flour-bread = \"500 g\"", "Mix {flour-bread} for 5 min."));
    let ran = sandbox.run(&["check", "flat.toml"]);
    assert_eq!(ran.status, 0, "{}", ran.out);
    assert!(ran.out.contains("figure-outside-braces"));
}

#[test]
fn what_cannot_be_run_says_why_with_status_2() {
    let sandbox = Sandbox::empty();
    let ran = sandbox.run(&["check", "nowhere"]);
    assert_eq!(ran.status, 2);
    insta::assert_snapshot!("no_such_book", ran.err);
    std::fs::create_dir(sandbox.path("bare")).expect("a folder");
    let ran = sandbox.run(&["check", "bare"]);
    assert_eq!(ran.status, 2);
    assert!(ran.err.contains("holds no formulas"), "{}", ran.err);
}

#[test]
fn a_huge_file_is_refused_unread() {
    let sandbox = Sandbox::empty();
    sandbox.write("book/formulas/large.toml", "");
    let file = std::fs::OpenOptions::new().write(true).open(sandbox.path("book/formulas/large.toml")).expect("a file");
    file.set_len(50 * 1_048_576).expect("50 MB");
    let ran = sandbox.run(&["check", "book"]);
    assert_eq!(ran.status, 1, "{}", ran.err);
    assert!(ran.out.contains("file-too-large") && ran.out.contains("50.0 MB"), "{}", ran.out);
}

#[test]
fn what_is_no_text_is_refused() {
    let sandbox = Sandbox::empty();
    sandbox.write("book/formulas/latin.toml", b"title = \"Brioche \xe0 la crois\xe9e\"\n");
    let ran = sandbox.run(&["check", "book"]);
    assert_eq!(ran.status, 1, "{}", ran.err);
    assert!(ran.out.contains("not-text"), "{}", ran.out);
}

#[test]
fn a_formula_alone_is_checked_without_a_book() {
    let sandbox = Sandbox::empty();
    sandbox.write("flat.toml", small_formula("flour-bread = \"500 g\"\nsalt = \"1 tsp\"", "Mix {flour-bread} and {salt}."));
    let ran = sandbox.run(&["check", "flat.toml"]);
    assert_eq!(ran.status, 1);
    assert!(ran.out.contains("spoons-not-named"), "{}", ran.out);
}

#[test]
fn a_formula_of_a_book_sees_the_book() {
    let ran = Sandbox::with_demo().run(&["check", "saltmarsh/formulas/cardamom-knots.toml"]);
    assert_eq!(ran.status, 0, "{}", ran.out);
    assert!(ran.err.contains("1 formula proof-read"), "{}", ran.err);
}
