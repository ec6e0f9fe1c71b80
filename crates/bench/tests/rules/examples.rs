//! The book of examples, which no rule may find fault with.

use bench::rules;
use formula::source::Source;
use formula::{Book, BookText};
use std::collections::BTreeMap;
use std::path::Path;

fn examples() -> Book {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/saltmarsh");
    let mut files = BTreeMap::new();
    for part in ["", "kitchens", "ingredients", "formulas"] {
        for entry in std::fs::read_dir(folder.join(part)).expect("a folder").flatten() {
            let path = entry.path();
            if path.extension().is_some_and(|ending| ending == "toml") {
                let name = path.file_name().expect("a name").to_string_lossy();
                let file = if part.is_empty() { name.into_owned() } else { format!("{part}/{name}") };
                let text = std::fs::read_to_string(&path).expect("text");
                files.insert(file.clone(), Source { file: file.into(), text });
            }
        }
    }
    Book::open(BookText { files }).value
}

#[test]
fn no_rule_speaks_up() {
    let book = examples();
    let mut said = Vec::new();
    for name in book.formulas.keys() {
        let formula = book.formula(name).expect("the book lists it").value;
        let found = rules::proof_read(&formula, &book.kitchen(), &book.settings);
        said.extend(found.into_iter().map(|one| format!("{name}: {}: {}", one.code, one.message)));
    }
    assert_eq!(said, [""; 0]);
}
