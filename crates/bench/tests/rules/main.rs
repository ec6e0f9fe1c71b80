//! Every rule's page is a test, and no rule speaks up on the book of examples.

#![allow(clippy::disallowed_methods, clippy::disallowed_types, reason = "tests open files as the world does")]

mod examples;
mod fixes;
mod hostile;
mod judgement;
mod own_rows;
mod silence;

use bench::rules::{self, Rule};
use formula::fault::page::Page;
use formula::{Book, BookText, Diagnostic};

/// Everything that is wrong with a book, by the rules as well as in itself.
fn proof_read(text: BookText) -> Vec<Diagnostic> {
    let opened = Book::open(text);
    let (book, mut found) = (opened.value, opened.diagnostics);
    for name in book.formulas.keys() {
        let formula = book.formula(name).expect("the book lists it");
        found.extend(formula.diagnostics);
        found.extend(rules::proof_read(&formula.value, &book.kitchen(), &book.settings));
    }
    found
}

/// What is wrong with a rule's page.
fn check(rule: &Rule) -> Vec<String> {
    let page = Page::read(rule.page);
    let wrong = page.check_form(rule.code).into_iter().chain(page.check_examples(proof_read));
    wrong.map(|what| format!("{}: {what}", rule.code)).collect()
}

#[test]
fn every_page_holds() {
    let wrong: Vec<String> = rules::ALL.iter().flat_map(check).collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_file_belongs_to_a_rule() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/src/rules");
    for entry in std::fs::read_dir(folder).expect("the rules' folder is there") {
        let name = entry.expect("it can be listed").file_name().into_string().expect("a page's name is plain");
        if let Some(file) = name.strip_suffix(".md") {
            assert!(rules::named(&file.replace('_', "-")).is_some(), "{name} is the page of no rule");
        }
    }
}

#[test]
fn codes_are_told_apart_from_those_of_faults() {
    for rule in rules::ALL {
        assert!(formula::fault::named(rule.code).is_none(), "{} is a fault, too", rule.code);
        assert_eq!(rules::ALL.iter().filter(|other| other.code == rule.code).count(), 1, "{} stands twice", rule.code);
        assert!(!rule.code.contains(|c: char| c.is_ascii_digit()), "{} has a number", rule.code);
    }
}
