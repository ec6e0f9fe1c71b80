//! Labels against published worked examples, the official American specimen, and the traps of the law.

mod allergens;
mod german;
mod hostile;
mod panels;
mod weights;

use bench::label::{Label, Law, Sold, label};
use formula::source::Source;
use formula::{Book, BookText, Formula};

/// A book of these files; none may have an error.
fn book(files: &[(&str, &str)]) -> Book {
    let source = |(file, text): &(&str, &str)| ((*file).to_owned(), Source { file: (*file).into(), text: (*text).to_owned() });
    let opened = Book::open(BookText { files: files.iter().map(source).collect() });
    let errors: Vec<_> = opened.diagnostics.iter().filter(|d| d.severity == formula::Severity::Error).collect();
    assert!(errors.is_empty(), "{errors:?}");
    opened.value
}

/// The formula of a text among these ingredients.
fn worked_out(text: &str, ingredients: &str) -> (Book, Formula) {
    let book = book(&[("formulas/example.toml", text), ("ingredients/own.toml", ingredients)]);
    let checked = book.formula("example").expect("the example");
    let errors: Vec<_> = checked.diagnostics.iter().filter(|d| d.severity == formula::Severity::Error).collect();
    assert!(errors.is_empty(), "{errors:?}");
    (book, checked.value)
}

/// The label of a formula's text.
fn drafted(text: &str, ingredients: &str, law: Law) -> Label {
    let (book, formula) = worked_out(text, ingredients);
    label(&formula, &book.settings, law, &Sold::default()).expect("a label")
}

/// A food of one stage with these lines, which weighs so much when it is baked.
fn baked(title: &str, lines: &str, raw: f64, finished: f64) -> String {
    let loss = 100.0 * (1.0 - finished / raw);
    format!(
        "title = \"{title}\"\n[[component]]\nname = \"food\"\n[component.yield]\nbake-loss = \"{loss:.9} %\"\n[[component.stage]]\n\
         name = \"mix\"\nkind = \"final-mix\"\n[component.stage.ingredients]\n{lines}\n"
    )
}
