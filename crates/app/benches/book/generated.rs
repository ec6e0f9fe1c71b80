//! Large books, made of the demo.

use std::path::{Path, PathBuf};

/// A book of so many formulas: the demo's five dishes over and over, each with a title of its own.
pub fn generated(root: &Path, formulas: usize) -> PathBuf {
    let example = root.join("examples/saltmarsh");
    let book = root.join(format!("target/bench/book-{formulas}"));
    let _ = std::fs::remove_dir_all(&book);
    for part in ["formulas", "ingredients", "kitchens"] {
        std::fs::create_dir_all(book.join(part)).expect("a folder under target");
    }
    for part in ["ingredients", "kitchens"] {
        for entry in std::fs::read_dir(example.join(part)).expect("the demo book").flatten() {
            std::fs::copy(entry.path(), book.join(part).join(entry.file_name())).expect("a copy");
        }
    }
    std::fs::copy(example.join("book.toml"), book.join("book.toml")).expect("a copy");
    let mut dishes: Vec<PathBuf> =
        std::fs::read_dir(example.join("formulas")).expect("the demo book").flatten().map(|entry| entry.path()).collect();
    dishes.sort();
    let texts: Vec<(String, String)> = dishes
        .iter()
        .map(|path| {
            (
                path.file_stem().unwrap_or_default().to_string_lossy().into_owned(),
                without_evidence(&std::fs::read_to_string(path).expect("a formula")),
            )
        })
        .collect();
    let base = texts.iter().find(|(name, _)| name == "base-syrup");
    if let Some((name, text)) = base {
        std::fs::write(book.join(format!("formulas/{name}.toml")), text).expect("a formula");
    }
    let dishes: Vec<&(String, String)> = texts.iter().filter(|(name, _)| name != "base-syrup").collect();
    for number in 0..formulas - 1 {
        let (name, text) = dishes[number % dishes.len()];
        let text = text.replacen("title = \"", &format!("title = \"No. {number}, "), 1);
        std::fs::write(book.join(format!("formulas/{name}-{number:05}.toml")), text).expect("a formula");
    }
    book
}

/// The generated book holds no tastings that its formulas could cite.
fn without_evidence(text: &str) -> String {
    text.split_inclusive('\n').filter(|line| !line.starts_with("evidence = ")).collect()
}
