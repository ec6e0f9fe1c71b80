//! Documents nested deeper than any formula: refused before they can use up the stack.

use crate::{open, with_lines};
use std::iter::repeat_n;

const FILES: [&str; 4] = ["book.toml", "kitchens/x.toml", "ingredients/x.toml", "formulas/x.toml"];
const DEPTHS: [usize; 4] = [33, 1000, 10_000, 170_000];

#[track_caller]
fn refused(text: &str, codes: &[&str]) {
    for file in FILES {
        let outcome = open(&[(file, text.as_bytes().to_vec())]);
        assert!(codes.iter().any(|code| outcome.codes().contains(code)), "{file} was not refused: {:?}", outcome.codes());
    }
}

#[test]
fn arrays_in_arrays() {
    for depth in DEPTHS {
        refused(&format!("title = {}{}", "[".repeat(depth), "]".repeat(depth)), &["nested-too-deep"]);
        refused(&format!("title = {}", "[".repeat(depth)), &["nested-too-deep"]);
        refused(&format!("title = {}1{}", "[ \n".repeat(depth), "] ".repeat(depth)), &["nested-too-deep"]);
    }
}

#[test]
fn inline_tables_in_inline_tables() {
    for depth in DEPTHS {
        refused(&format!("title = {}1{}", "{a=".repeat(depth), "}".repeat(depth)), &["nested-too-deep"]);
        refused(&format!("title = {}", "{a=[".repeat(depth)), &["nested-too-deep"]);
    }
}

#[test]
fn dotted_keys() {
    for depth in DEPTHS.into_iter().chain([500_000]) {
        let path: String = repeat_n("a", depth).collect::<Vec<_>>().join(".");
        refused(&format!("{path} = 1"), &["nested-too-deep"]);
        refused(&format!("[{path}]\nb = 1"), &["nested-too-deep"]);
        refused(&format!("[[{path}]]\nb = 1"), &["nested-too-deep"]);
        refused(&format!("title = {{ {path} = 1 }}"), &["nested-too-deep"]);
    }
}

#[test]
fn dotted_keys_with_quotes_and_spaces() {
    for depth in [33, 10_000, 100_000] {
        let path: String = repeat_n("'a'", depth).collect::<Vec<_>>().join(" . ");
        refused(&format!("{path} = 1"), &["nested-too-deep"]);
        refused(&format!("[ {path} ]"), &["nested-too-deep"]);
    }
}

#[test]
fn a_table_opened_one_level_deeper_each_time() {
    let headers: String = (1..1000).map(|depth| format!("[{}]\n", vec!["a"; depth].join("."))).collect();
    refused(&headers[..headers.len().min(1 << 20)], &["nested-too-deep"]);
}

#[test]
fn brackets_behind_quotes_are_not_hidden() {
    let deep = "[".repeat(50_000);
    for before in ["[\"\"\"a\"\"\"\",", "['''a'''',", "[\"\"\"a\"\"\"\"\",", "[\"a\\\"\",", "[\"\",", "['',", "[\"\"\"\"\"\",", "['\\',", "[\"\\\\\","] {
        let text = format!("title = {before}{deep}");
        refused(&text, &["nested-too-deep", "not-toml"]);
    }
}

#[test]
fn brackets_within_strings_and_remarks_are_no_nesting() {
    let many = "[{".repeat(5000);
    let text = with_lines(&format!("water = \"1 kg\" # {many}\n")).replace("\"x\"", &format!("'''{many}'''"));
    let outcome = open(&[("formulas/x.toml", text.into_bytes())]);
    assert!(!outcome.codes().contains("nested-too-deep"), "{:?}", outcome.codes());
}
