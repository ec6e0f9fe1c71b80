//! Every fault's page is a test: the marked lines of its examples get that fault, no other line gets any.

#![allow(clippy::disallowed_methods, reason = "the pages' folder is read, to find one that no fault owns")]

use formula::fault::page::{EXAMPLE, Page};
use formula::fault::{self, Fault};
use formula::source::{MOST_BYTES, MOST_LINES, Source};
use formula::{Book, BookText, Diagnostic};
use std::collections::BTreeMap;

/// Everything that is wrong with a book.
fn work_out(text: BookText) -> Vec<Diagnostic> {
    let opened = Book::open(text);
    let mut found = opened.diagnostics;
    for name in opened.value.formulas.keys() {
        let checked = opened.value.formula(name).expect("the book lists it");
        found.extend(opened.value.misplaced(&checked.value));
        found.extend(checked.diagnostics);
    }
    found
}

/// The codes of what is wrong with one formula.
fn codes_of(text: String) -> Vec<&'static str> {
    let source = Source { file: EXAMPLE.into(), text };
    let files = BTreeMap::from([(EXAMPLE.to_owned(), source)]);
    work_out(BookText { files }).iter().map(|found| found.code).collect()
}

/// The codes of what is wrong with a file's bytes before they are read.
fn codes_of_bytes(bytes: Vec<u8>) -> Vec<&'static str> {
    let taken = Source::from_bytes(EXAMPLE, bytes);
    assert_eq!(taken.value.is_none(), !taken.diagnostics.is_empty(), "a file is taken, or refused with a reason");
    taken.diagnostics.iter().map(|found| found.code).collect()
}

/// What is found where a page can only tell of the fault.
fn generated(fault: &Fault) -> Vec<&'static str> {
    let most = usize::try_from(MOST_BYTES).expect("a megabyte can be counted");
    match fault.code {
        "not-text" => codes_of_bytes(b"title = \"Cr\xeape\"".to_vec()),
        "file-too-large" => codes_of_bytes(vec![b'#'; most + 1]),
        "too-many-lines" => codes_of(with_steps(MOST_LINES + 1)),
        code => panic!("{code} tells of its fault but no generated case shows it"),
    }
}

/// A formula of so many steps.
fn with_steps(steps: usize) -> String {
    let head = "title = \"Plum compote\"\n[[component]]\nname = \"compote\"\n[[component.stage]]\nname = \"compote\"\nkind = \"cooked\"\n\
        [component.stage.ingredients]\nplums = \"500 g\"\n";
    let step = "[[component.stage.step]]\naction = \"simmer\"\ntext = \"Stir {plums}.\"\n";
    format!("{head}{}", step.repeat(steps))
}

/// A formula of so many ingredient lines.
fn with_lines(lines: usize) -> String {
    let head = "title = \"Plum compote\"\n[[component]]\nname = \"compote\"\n[[component.stage]]\nname = \"compote\"\nkind = \"cooked\"\n\
        [component.stage.ingredients]\n";
    let lines: String =
        (0..lines).map(|number| format!("plum-{number} = {{ ingredient = \"plums\", amount = \"1 g\" }}\n")).collect();
    format!("{head}{lines}")
}

/// What is wrong with a fault's page.
fn check(fault: &Fault) -> Vec<String> {
    let page = Page::read(fault.page);
    let mut wrong = page.check_form(fault.code);
    wrong.extend(page.check_examples(work_out));
    // What only the disk can show is tested where the disk is, with the command `publish`.
    let needs_disk = matches!(fault.code, "photograph-not-usable" | "evidence-not-held" | "changed-since-tasted");
    for example in page.bad.iter().filter(|example| example.is_told && !needs_disk) {
        if !example.files.is_empty() {
            wrong.push("an example that is only told has a block, too".to_owned());
        }
        if generated(fault) != [fault.code] {
            wrong.push(format!("the generated case gets {:?}", generated(fault)));
        }
    }
    wrong.into_iter().map(|what| format!("{}: {what}", fault.code)).collect()
}

#[test]
fn every_page_holds() {
    let wrong: Vec<String> = fault::ALL.iter().flat_map(check).collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_page_belongs_to_a_fault() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/src/fault");
    for entry in std::fs::read_dir(folder).expect("the pages' folder is there") {
        let name = entry.expect("it can be listed").file_name().into_string().expect("a page's name is plain");
        if let Some(code) = name.strip_suffix(".md") {
            assert!(fault::named(code).is_some(), "{name} is the page of no fault");
        }
    }
}

#[test]
fn a_file_of_just_the_size_is_taken() {
    let most = usize::try_from(MOST_BYTES).expect("a megabyte can be counted");
    assert_eq!(codes_of_bytes(vec![b'#'; most]), [""; 0]);
    assert_eq!(codes_of(with_steps(MOST_LINES)), [""; 0]);
}

#[test]
fn too_many_ingredients_are_refused_like_too_many_steps() {
    let found = codes_of(with_lines(MOST_LINES + 1));
    assert!(found.contains(&fault::TOO_MANY_LINES.code), "{found:?}");
}

#[test]
fn brackets_without_end_are_refused_and_not_followed() {
    for text in ["[".repeat(10_000), format!("tags = {}", "[".repeat(10_000)), format!("tags = {}", "{a=".repeat(10_000))] {
        assert_eq!(codes_of(text), [fault::NESTED_TOO_DEEP.code]);
    }
}
