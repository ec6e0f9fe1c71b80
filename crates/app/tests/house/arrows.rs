//! The arrow table of ARCHITECTURE.md, held to the manifests.

use crate::{read, root};
use std::collections::{BTreeMap, BTreeSet};

/// The table's rows: a crate, and what it may use.
fn allowed() -> BTreeMap<String, BTreeSet<String>> {
    let text = read("ARCHITECTURE.md");
    let section = text.split("## Arrows").nth(1).expect("a section on arrows");
    let rows = section.lines().skip_while(|line| !line.starts_with("|---")).skip(1).take_while(|line| line.starts_with('|'));
    rows.map(|row| {
        let cells: Vec<&str> = row.trim_matches('|').split('|').map(str::trim).collect();
        let uses = cells[1]
            .split(',')
            .map(|name| name.trim().trim_matches('`').to_owned())
            .filter(|name| !name.is_empty() && name != "–");
        (cells[0].trim_matches('`').to_owned(), uses.collect())
    })
    .collect()
}

/// The crates of the workspace and which others each manifest names outside of tests.
fn manifests() -> BTreeMap<String, BTreeSet<String>> {
    let crates: BTreeSet<String> = std::fs::read_dir(root().join("crates"))
        .expect("crates")
        .flatten()
        .map(|entry| entry.file_name().to_string_lossy().into_owned())
        .collect();
    let uses = |name: &str| {
        let manifest = read(&format!("crates/{name}/Cargo.toml"));
        let section = manifest.split("\n[dependencies]").nth(1).unwrap_or_default();
        let section = section.split("\n[").next().unwrap_or_default();
        let named = section.lines().filter_map(|line| line.split(['.', ' ', '=']).next());
        named.filter(|other| crates.contains(*other)).map(str::to_owned).collect()
    };
    crates.iter().map(|name| (name.clone(), uses(name))).collect()
}

#[test]
fn every_crate_has_a_row_and_every_row_a_crate() {
    let (allowed, manifests) = (allowed(), manifests());
    assert_eq!(allowed.keys().collect::<Vec<_>>(), manifests.keys().collect::<Vec<_>>());
}

#[test]
fn no_manifest_has_an_arrow_that_the_table_does_not() {
    let allowed = allowed();
    for (name, uses) in manifests() {
        for other in uses {
            assert!(allowed[&name].contains(&other), "{name} uses {other}, which ARCHITECTURE.md does not allow");
        }
    }
}

#[test]
fn arrows_only_point_down() {
    let allowed = allowed();
    fn deep(allowed: &BTreeMap<String, BTreeSet<String>>, name: &str, way: &mut Vec<String>) {
        assert!(!way.iter().any(|other| other == name), "a circle: {way:?} → {name}");
        way.push(name.to_owned());
        allowed[name].iter().for_each(|other| deep(allowed, other, way));
        way.pop();
    }
    allowed.keys().for_each(|name| deep(&allowed, name, &mut Vec::new()));
}

/// Paths in back quotes that look like files of this house must be there.
#[test]
fn the_files_that_the_map_names_exist() {
    for document in ["ARCHITECTURE.md", "CONTRIBUTING.md", "README.md"] {
        let text = read(document);
        for quoted in text.split('`').skip(1).step_by(2) {
            let is_path = quoted.starts_with("crates/")
                || quoted.starts_with("docs/")
                || quoted.starts_with("examples/")
                || quoted.starts_with("tools/");
            if is_path && !quoted.contains(['*', ' ', '<', 'N']) {
                assert!(root().join(quoted).exists(), "{document} names {quoted}, which is not there");
            }
        }
    }
}
