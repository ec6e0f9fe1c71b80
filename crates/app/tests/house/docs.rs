//! Documentation that the program makes of its own lists is as fresh as the lists.
//!
//! `UPDATE_DOCS=1 cargo test -p app --test house` writes it anew.

use crate::root;
use formula::read::schema::{FILES, manual, schema};
use std::path::Path;

#[track_caller]
fn fresh(file: &str, expected: &str) {
    let path = root().join(file);
    if std::env::var_os("UPDATE_DOCS").is_some() {
        std::fs::create_dir_all(path.parent().unwrap_or(Path::new("."))).expect("a folder");
        std::fs::write(&path, expected).expect("a file");
    }
    let found = std::fs::read_to_string(&path).unwrap_or_default();
    assert!(found == expected, "{file} is stale: run UPDATE_DOCS=1 cargo test -p app --test house");
}

#[test]
fn the_manual_of_keys() {
    fresh("docs/keys.md", &manual());
}

#[test]
fn the_schemas() {
    for file in &FILES {
        fresh(&format!("docs/{}", file.schema), &format!("{:#}\n", schema(file)));
    }
}

/// Pages of explanation under one heading.
fn pages<'p>(head: &str, pages: impl Iterator<Item = &'p str>) -> String {
    let mut whole = format!("{head}\n\nThe same pages that `wellproved explain NAME` prints.\n");
    for page in pages {
        let body = page.trim_end().replace("\n## ", "\n### ").replacen("# ", "## ", 1);
        whole.push_str(&format!("\n{body}\n"));
    }
    whole
}

#[test]
fn the_manual_of_faults() {
    let faults = formula::fault::ALL.iter().map(|fault| fault.page);
    fresh("docs/faults.md", &pages("# Every fault of the text that `check` can find", faults));
}

#[test]
fn the_manual_of_rules() {
    let rules = bench::rules::ALL.iter().map(|rule| rule.page);
    fresh("docs/rules.md", &pages("# Every rule of the trade that `check` proof-reads by", rules));
}

#[test]
fn the_manual_of_commands() {
    let program = env!("CARGO_BIN_EXE_wellproved");
    let help = |words: &[&str]| {
        let output =
            std::process::Command::new(program).args(words).env_clear().env("COLUMNS", "100").output().expect("the program runs");
        String::from_utf8_lossy(&output.stdout).trim_end().to_owned()
    };
    let mut page = format!("# The commands\n\n```text\n{}\n```\n", help(&["--help"]));
    for command in wellproved_app::command_names() {
        page.push_str(&format!("\n## {command}\n\n```text\n{}\n```\n", help(&[&command, "--help"])));
    }
    fresh("docs/commands.md", &page);
}

/// The picture in the README is what the program draws of the demo formula.
#[test]
fn the_picture_in_the_readme() {
    let program = env!("CARGO_BIN_EXE_wellproved");
    let formula = root().join("examples/saltmarsh/formulas/potato-muffins.toml");
    let output = std::process::Command::new(program)
        .arg("sheet")
        .arg(formula)
        .args(["--format", "svg"])
        .output()
        .expect("the program runs");
    fresh("docs/potato-muffins.svg", &String::from_utf8_lossy(&output.stdout));
}

/// What the documentation shows of a formula is a formula without a fault.
#[test]
fn the_formula_in_the_manual_is_sound() {
    let text = crate::read("docs/document.md");
    let section = text.split("## formulas/*.toml").nth(1).expect("a section on formulas");
    let block = section.split("```toml\n").nth(1).and_then(|rest| rest.split("```").next()).expect("a formula");
    // The picture is not there to be shown.
    let formula = block.split("[photograph]").next().expect("a head").to_owned()
        + "[[component]]"
        + block.split_once("[[component]]").expect("components").1;
    let source = formula::source::Source { file: "formulas/example.toml".into(), text: formula };
    let files = [("formulas/example.toml".to_owned(), source)].into();
    let book = formula::Book::open(formula::BookText { files }).value;
    let found = book.formula("example").expect("the example").diagnostics;
    assert!(found.is_empty(), "{found:#?}");
}

/// The lines of the demo that the README quotes stand in the demo.
#[test]
fn the_readme_quotes_the_demo() {
    let demo = crate::read("examples/saltmarsh/formulas/potato-muffins.toml");
    let readme = crate::read("README.md");
    let quoted = readme.split("```toml\n").nth(1).and_then(|rest| rest.split("```").next()).expect("a quotation");
    for line in quoted.lines() {
        assert!(demo.contains(line), "the demo has no line {line}");
    }
}
