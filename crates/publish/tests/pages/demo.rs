//! The demo book, opened for tests.

use formula::source::Source;
use formula::{Book, BookText, Formula};
use std::path::Path;

/// The demo book.
pub fn book() -> Book {
    open("../../examples/saltmarsh")
}

/// The German book, in which all but the keys of its files is German.
pub fn german_book() -> Book {
    open("tests/halligofen")
}

fn open(book: &str) -> Book {
    let folder = || Path::new(env!("CARGO_MANIFEST_DIR")).join(book);
    let mut text = BookText::default();
    let mut add = |file: String| {
        let content = std::fs::read_to_string(folder().join(&file)).expect("a file of the demo book");
        text.files.insert(file.clone(), Source { file: file.into(), text: content });
    };
    add("book.toml".to_owned());
    for part in ["kitchens", "ingredients", "formulas"] {
        for entry in std::fs::read_dir(folder().join(part)).expect("the demo book").flatten() {
            add(format!("{part}/{}", entry.file_name().to_string_lossy()));
        }
    }
    Book::open(text).value
}

/// Every formula of the demo book.
pub fn formulas(book: &Book) -> Vec<Formula> {
    book.formulas.keys().map(|name| book.formula(name).expect("a formula").value).collect()
}

/// A page's text as a reader sees it: tags dropped, entities read, spaces folded, joiners gone.
pub fn visible(page: &str) -> String {
    let body = page.split("<body>").nth(1).expect("a body");
    let mut text = String::new();
    let mut in_tag = false;
    for letter in body.chars() {
        match letter {
            '<' => in_tag = true,
            '>' => in_tag = false,
            _ if in_tag => {}
            letter => text.push(letter),
        }
    }
    folded(&text.replace("&lt;", "<").replace("&gt;", ">").replace("&quot;", "\"").replace("&amp;", "&"))
}

/// Spaces of any kind folded into one, word joiners dropped.
pub fn folded(text: &str) -> String {
    text.replace('\u{2060}', "").split_whitespace().collect::<Vec<_>>().join(" ")
}
