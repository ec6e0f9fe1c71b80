//! Sizes and first sentences.

use crate::{files_under, root};

/// Short enough to be read at a sitting; a longer file is parted by meaning.
const MOST_LINES: usize = 360;

#[test]
fn files_are_short_and_begin_with_a_sentence() {
    for path in files_under(&root().join("crates"), &["rs"]) {
        let text = std::fs::read_to_string(&path).expect("text");
        assert!(text.starts_with("//!"), "{} does not begin with a //! sentence", path.display());
        let lines = text.lines().count();
        assert!(lines <= MOST_LINES, "{} has {lines} lines", path.display());
    }
    for path in files_under(&root().join("crates"), &["css", "js", "mjs"]) {
        let lines = std::fs::read_to_string(&path).expect("text").lines().count();
        assert!(lines <= MOST_LINES, "{} has {lines} lines", path.display());
    }
}

#[test]
fn every_room_has_its_note_at_the_door() {
    for entry in std::fs::read_dir(root().join("crates")).expect("crates").flatten() {
        let note = entry.path().join("README.md");
        let text = std::fs::read_to_string(&note).unwrap_or_else(|_| panic!("{} is missing", note.display()));
        for word in ["**Owns**", "**Refuses**", "**Read first**"] {
            assert!(text.contains(word), "{} does not say what it {word}", note.display());
        }
        assert!(text.lines().count() <= 12, "{} is longer than a note", note.display());
    }
}

#[test]
fn no_drawers_without_a_name() {
    for path in files_under(&root().join("crates"), &["rs"]) {
        let name = path.file_stem().expect("a name").to_string_lossy().into_owned();
        assert!(!["utils", "util", "common", "helpers", "types", "misc"].contains(&name.as_str()), "{}", path.display());
    }
}

/// Each dependency earns a line of reason above it.
#[test]
fn every_dependency_has_its_reason() {
    let manifest = crate::read("Cargo.toml");
    let section =
        manifest.split("[workspace.dependencies]").nth(1).and_then(|rest| rest.split("\n[").next()).expect("dependencies");
    let mut reason = false;
    for line in section.lines().filter(|line| !line.contains("path = ")) {
        match line.trim() {
            "" => reason = false,
            line if line.starts_with('#') => reason = true,
            line => assert!(reason, "no reason stands above {line}"),
        }
    }
}
