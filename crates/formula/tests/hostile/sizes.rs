//! Documents that are too large, or large at one place.

use crate::{Outcome, open, open_formula, with_lines};
use std::fmt::Write;

const MEGABYTE: usize = 1 << 20;

fn numbered(count: usize, line: impl Fn(usize) -> String) -> String {
    let mut text = (0..count).fold(String::new(), |mut text, number| {
        let _ = writeln!(text, "{}", line(number));
        text
    });
    text.truncate(MEGABYTE - 300);
    text.truncate(text.rfind('\n').map_or(0, |at| at + 1));
    text
}

#[track_caller]
fn book_of(file: &str, text: String) -> Outcome {
    open(&[(file, text.into_bytes())])
}

#[test]
fn over_a_megabyte_is_refused() {
    for size in [MEGABYTE + 1, 50 * MEGABYTE] {
        for file in ["book.toml", "kitchens/x.toml", "ingredients/x.toml", "formulas/x.toml"] {
            book_of(file, "#".repeat(size)).refused_as("file-too-large");
        }
    }
    book_of("formulas/x.toml", "#".repeat(MEGABYTE));
}

#[test]
fn half_a_million_entries_in_an_array() {
    let entries = "1,".repeat(MEGABYTE / 2 - 50);
    open_formula(&format!("tags = [{entries}]")).refused_as("wrong-kind").said_briefly();
    open_formula(&format!("component = [{}]", "{},".repeat(MEGABYTE / 3 - 50))).refused_as("key-missing").said_briefly();
    open_formula(&format!("title = [{entries}")).refused_as("not-toml");
    book_of("book.toml", format!("title = [{entries}]")).refused_as("wrong-kind");
}

#[test]
fn more_lines_than_are_allowed() {
    let ten_thousand_and_one = numbered(10_001, |n| format!("l{n} = {{ ingredient = \"water\", amount = \"1 g\" }}"));
    open_formula(&with_lines(&ten_thousand_and_one)).refused_as("too-many-lines").said_briefly();
}

#[test]
fn as_many_unknown_lines_as_a_megabyte_holds() {
    let unknown = numbered(150_000, |n| format!("{n}=1"));
    open_formula(&with_lines(&unknown)).refused_as("too-many-lines").said_briefly();
}

#[test]
fn as_many_steps_as_a_megabyte_holds() {
    let steps = numbered(40_000, |_| "[[component.stage.step]]\ntext=\"{w}\"".to_owned());
    open_formula(&with_lines(&format!("water = \"1 g\"\n{steps}"))).refused_as("too-many-lines").said_briefly();
}

#[test]
fn as_many_stages_as_a_megabyte_holds() {
    let stages = numbered(60_000, |n| format!("[[component.stage]]\nname=\"s{n}\""));
    open_formula(&format!("title=\"x\"\n[[component]]\nname=\"c\"\n{stages}")).said_briefly();
    let components = numbered(60_000, |n| format!("[[component]]\nname=\"s{n}\""));
    open_formula(&format!("title=\"x\"\n{components}")).said_briefly();
}

#[test]
fn as_many_unknown_keys_as_a_megabyte_holds() {
    let keys = numbered(100_000, |n| format!("k{n}=1"));
    book_of("formulas/x.toml", keys.clone()).refused_as("unknown-key").said_briefly();
    book_of("ingredients/x.toml", format!("[a.per-100-g]\n{keys}")).refused_as("unknown-key").said_briefly();
    book_of("ingredients/x.toml", format!("[a.made-of]\n{}", numbered(70_000, |n| format!("k{n}=\"1 %\"")))).said_briefly();
    book_of("ingredients/x.toml", numbered(70_000, |n| format!("[k{n}]\nlike=\"w\""))).said_briefly();
}

#[test]
fn a_sentence_of_many_thousand_references_to_nothing() {
    let lines = numbered(5000, |n| format!("l{n} = {{ ingredient = \"water\", amount = \"1 g\" }}"));
    for reference in ["{zz}", "{water-of-the-well}", "{l1}", "{", "}", "{l1: zz}", "{1 zz}", "5 g {l2}"] {
        let sentence = reference.repeat(100_000 / reference.len());
        let text = format!("{lines}[[component.stage.step]]\ntext = \"{sentence}\"\n");
        open_formula(&with_lines(&text)).said_briefly();
    }
}

#[test]
fn names_of_a_hundred_thousand_letters() {
    let name = "a".repeat(100_000);
    let texts = [
        with_lines(&format!("{name} = \"1 g\"")),
        with_lines(&format!("water = {{ ingredient = \"{name}\", amount = \"1 g\" }}")),
        with_lines(&format!("water = {{ stage = \"{name}\", amount = \"1 g\" }}")),
        with_lines(&format!("water = {{ formula = \"{name}\", amount = \"1 g\" }}")),
        with_lines(&format!("water = \"1 g\"\n[[component.stage.step]]\naction = \"{name}\"\ntext = \"{{{name}}}\"")),
        with_lines(&format!("water = \"1 {name}\"")),
        with_lines(&format!("water = \"{}\"", "1".repeat(100_000))),
        format!("{name} = 1"),
        format!(
            "[[component]]\nname = \"{name}\"\n[[component.stage]]\nname = \"{name}\"\n[component.stage.ingredients]\n{name} = 1"
        ),
        format!("[photograph]\nfile = \"{name}\""),
    ];
    for text in texts {
        let outcome = open_formula(&text);
        assert!(!outcome.said.is_empty());
        outcome.said_briefly();
    }
    book_of("ingredients/x.toml", format!("[{name}]\nlike = \"{name}\"\nmade-of = {{ {name} = \"50 %\" }}")).said_briefly();
    book_of("book.toml", format!("title = \"x\"\nkitchen = \"{name}\"\nspoons = \"{name}\"")).refused_as("unknown-kitchen");
}

#[test]
fn more_stages_or_components_than_are_allowed() {
    let stages = numbered(20_000, |_| "[[component.stage]]\nname=\"s\"\nkind=\"mixed\"".to_owned());
    open_formula(&with_lines(&format!("water = \"1 g\"\n{stages}"))).refused_as("too-many-lines").said_briefly();
    let components = numbered(20_000, |_| "[[component]]\nname=\"c\"".to_owned());
    open_formula(&with_lines(&format!("water = \"1 g\"\n{components}"))).refused_as("too-many-lines").said_briefly();
}
