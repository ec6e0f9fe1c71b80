//! `sheet` in all its forms.

use crate::sandbox::{Sandbox, small_formula};

const MUFFINS: &str = "saltmarsh/formulas/potato-muffins.toml";

#[test]
fn as_text() {
    insta::assert_snapshot!("sheet_as_text", Sandbox::with_demo().fine(&["sheet", MUFFINS]));
}

/// A baker of a German book reads German, on the terminal too.
#[test]
fn as_german_text() {
    let words = ["sheet", "halligofen", "--formula", "kuemmel-roggen-kasten"];
    insta::assert_snapshot!("sheet_as_german_text", Sandbox::with_german().fine(&words));
}

#[test]
fn as_rows_for_a_spreadsheet() {
    let sandbox = Sandbox::with_demo();
    let out = sandbox.fine(&["sheet", MUFFINS, "--format", "csv"]);
    let mut reader = csv::Reader::from_reader(out.as_bytes());
    let rows: Vec<csv::StringRecord> = reader.records().map(|row| row.expect("a row as wide as the heading")).collect();
    assert!(rows.len() > 15);
    insta::assert_snapshot!("sheet_as_csv", out);
}

#[test]
fn as_json() {
    let out = Sandbox::with_demo().fine(&["sheet", MUFFINS, "--format", "json"]);
    let value: serde_json::Value = serde_json::from_str(&out).expect("JSON");
    let muffins = &value[0]["components"][0];
    let total = muffins["overall"].as_array().expect("rows").iter().map(|row| row["grams"].as_f64().expect("gram")).sum::<f64>();
    let mixed = muffins["stages"].as_array().expect("stages").last().expect("a stage")["mixed-grams"].as_f64().expect("gram");
    assert!((total - mixed).abs() < 1e-6, "the overall formula weighs what is mixed: {total} and {mixed}");
}

#[test]
fn as_a_page_and_as_a_drawing() {
    let sandbox = Sandbox::with_demo();
    let page = sandbox.fine(&["sheet", "saltmarsh", "--format", "html"]);
    assert!(page.starts_with("<!DOCTYPE html>") && page.matches("<article").count() == 6);
    let drawing = sandbox.fine(&["sheet", MUFFINS, "--format", "svg"]);
    assert!(drawing.starts_with("<svg") && drawing.contains("<title"));
}

#[test]
fn no_cell_is_taken_for_a_command() {
    let sandbox = Sandbox::empty();
    let formula = small_formula("flour-bread = { amount = \"500 g\", title = \"=1+1\", note = \"@here\" }", "Mix {flour-bread}.");
    sandbox.write("flat.toml", formula.replace("Flat bread", "-2+3"));
    let out = sandbox.fine(&["sheet", "flat.toml", "--format", "csv"]);
    assert!(out.contains("'=1+1") && out.contains("'@here") && out.contains("'-2+3"), "{out}");
    // Whatever a spreadsheet takes for a command: no cell of text begins with it.
    for title in ["=cmd", "+1", "-1", "@SUM(A1)", "\\t=1", "\\r=1"] {
        sandbox.write("flat.toml", formula.replace("Flat bread", title));
        let out = sandbox.fine(&["sheet", "flat.toml", "--format", "csv"]);
        let mut reader = csv::Reader::from_reader(out.as_bytes());
        for row in reader.records().map(|row| row.expect("a row")) {
            assert!(row.iter().all(|cell| !cell.starts_with(['=', '+', '-', '@', '\t', '\r'])), "{title:?}: {row:?}");
        }
    }
}

#[test]
fn a_formula_that_is_not_there() {
    let ran = Sandbox::with_demo().run(&["sheet", "saltmarsh", "--formula", "rolls"]);
    assert_eq!(ran.status, 2);
    assert!(ran.err.contains("no formula called “rolls”") && ran.err.contains("potato-muffins"), "{}", ran.err);
}

#[test]
fn a_drawing_shows_one_formula() {
    let ran = Sandbox::with_demo().run(&["sheet", "saltmarsh", "--format", "svg"]);
    assert_eq!(ran.status, 2);
    assert!(ran.err.contains("one formula") && ran.err.contains("say --formula with one of: base-syrup"), "{}", ran.err);
}

#[test]
fn no_line_ends_in_a_space() {
    let sandbox = Sandbox::with_demo();
    for words in [vec!["sheet", "saltmarsh"], vec!["ingredients", "rye"], vec!["ingredients", "semolina-durum"]] {
        let out = sandbox.fine(&words);
        let loose: Vec<&str> = out.lines().filter(|line| line.ends_with([' ', '\u{a0}'])).collect();
        assert!(loose.is_empty(), "{words:?}: {loose:?}");
    }
}

/// What an author silences is not said by `check`, and stands on the sheet with its reason.
#[test]
fn what_is_silenced_stands_on_the_sheet() {
    let sandbox = Sandbox::empty();
    let formula = small_formula(
        "flour-bread = \"500 g\"\nwater = \"65 %\"\nsalt = \"5 %\"\nyeast-instant = \"1 %\"",
        "Mix {flour-bread}, {water}, {yeast-instant} and {salt}.",
    );
    sandbox.write("flat.toml", &formula);
    assert!(sandbox.run(&["check", "flat.toml"]).out.contains("salt-outside-custom"));
    let quiet = formula.replacen("\n\n", "\nquiet = { salt-outside-custom = \"a crust for baking fish in\" }\n\n", 1);
    sandbox.write("flat.toml", quiet);
    assert!(!sandbox.run(&["check", "flat.toml"]).out.contains("salt-outside-custom"));
    let sheet = sandbox.fine(&["sheet", "flat.toml"]);
    assert!(sheet.contains("Silenced by its author") && sheet.contains("a crust for baking fish in"), "{sheet}");
}
