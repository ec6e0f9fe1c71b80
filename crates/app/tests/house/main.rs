//! The house rules that can be read off the files: arrows, sizes, first sentences, fresh documentation.
#![allow(clippy::disallowed_methods, clippy::disallowed_types)] // Tests open files as the world does.

mod arrows;
mod docs;
mod files;
mod serving;

use std::path::{Path, PathBuf};

/// The project's folder.
fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").canonicalize().expect("the project's folder")
}

fn read(file: &str) -> String {
    std::fs::read_to_string(root().join(file)).unwrap_or_else(|error| panic!("{file}: {error}"))
}

/// Every file with one of these endings under a folder, generated and foreign folders left out.
fn files_under(folder: &Path, endings: &[&str]) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).expect("a folder").flatten() {
        let path = entry.path();
        let name = entry.file_name().to_string_lossy().into_owned();
        if path.is_dir() && !name.starts_with('.') && name != "target" && name != "published" && name != "node_modules" {
            found.extend(files_under(&path, endings));
        } else if path.extension().is_some_and(|end| endings.iter().any(|wanted| end == *wanted)) {
            found.push(path);
        }
    }
    found.sort();
    found
}
