//! Whatever is wrong with a text is told at a place that is there.

use crate::invented::dough;
use formula::source::Source;
use formula::{Book, BookText, Diagnostic, Place};
use proptest::prelude::*;
use std::collections::BTreeMap;

const METHOD: &str = "[[component.stage.step]]\naction = \"mix\"\ntext = \"Stir {water} at {22 °C} with {flour-strong-white: half}…\"\ntime = \"12–18 h\"\nuntil = \"96 °C core\"\n";
const FILES: [&str; 4] = ["formulas/x.toml", "ingredients/x.toml", "kitchens/x.toml", "book.toml"];

/// All that is said of a file of a book, each at a place within it, between letters.
fn said(file: &str, text: &str) -> Vec<Diagnostic> {
    let source = Source { file: file.into(), text: text.to_owned() };
    let opened = Book::open(BookText { files: BTreeMap::from([(file.to_owned(), source)]) });
    let mut said = opened.diagnostics;
    for name in opened.value.formulas.keys() {
        said.extend(opened.value.formula(name).expect("a formula that is listed").diagnostics);
    }
    for found in &said {
        check(text, found, &found.place);
        found.fix.iter().flat_map(|fix| &fix.edits).for_each(|edit| check(text, found, &edit.place));
    }
    said
}

fn check(text: &str, found: &Diagnostic, place: &Place) {
    assert!(text.get(place.span.clone()).is_some(), "{} is placed at {:?} of {} bytes", found.code, place.span, text.len());
    assert!(!found.message.is_empty());
}

/// A text with a stretch cut out and letters put in its place, counted in letters.
fn hurt(text: &str, at: usize, cut: usize, put: &str) -> String {
    let letters: Vec<char> = text.chars().collect();
    let at = at % (letters.len() + 1);
    let end = (at + cut).min(letters.len());
    letters[..at].iter().copied().chain(put.chars()).chain(letters[end..].iter().copied()).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn a_hurt_formula_is_told_of_within_its_text(dough in dough(), at: usize, cut in 0_usize..12, put in "[{}\\[\\]\"'=.,#½°é…\\n a-z0-9%]{0,6}") {
        let text = dough.in_two_stages() + METHOD;
        said(FILES[0], &hurt(&text, at, cut, &put));
    }

    #[test]
    fn any_sentence_is_told_of_within_its_text(sentence in "([{}é…½°:]|5 g|12 min|water|half|\\{water\\}| ){0,12}") {
        let text = format!("{}[[component.stage.step]]\naction = \"mix\"\ntext = '{sentence}'\n", sound_head());
        said(FILES[0], &text);
        said(FILES[0], &text.replace('…', "\\u2026").replace('\'', "\""));
    }

    #[test]
    fn any_text_as_any_file_is_told_of_within_it(text in "\\PC{0,60}", which in 0_usize..4) {
        said(FILES[which], &text);
    }

    #[test]
    fn the_same_text_is_told_the_same(dough in dough(), at: usize, put in "[{}\"=é5]{1,3}") {
        let text = hurt(&(dough.in_three_stages() + METHOD), at, 1, &put);
        prop_assert_eq!(said(FILES[0], &text), said(FILES[0], &text));
    }
}

fn sound_head() -> &'static str {
    "title = \"x\"\n[[component]]\nname = \"c\"\n[[component.stage]]\nname = \"s\"\nkind = \"mixed\"\n[component.stage.ingredients]\nwater = \"1 kg\"\n"
}
