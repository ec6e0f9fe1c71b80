//! Gestures: what a hand does to a formula is written into the author's own text and nothing else changes; what
//! cannot be done is refused and leaves the text as it was.

mod amounts;
mod lines;
mod properties;

use bench::exchange::{Part, Unfit};
use bench::gesture::{Gesture, Holding, gesture};
use formula::source::Source;
use formula::{Book, BookText, Diagnostic, Formula, Severity};

/// A dough with everything that a hand may meet: flour by weight, percentages, spoons, an egg, comments.
const DOUGH: &str = r#"title = "Plain dough"

[[component]]
name = "loaf"
title = "Loaf"

[component.yield]
pieces = 2
scaling-weight = "150 g"

[[component.stage]]
name = "sponge"
title = "Sponge"
kind = "sponge"

[component.stage.ingredients]
flour-strong-white = "100 g"
water = "100 %"
yeast-instant = "0.2 g"

[[component.stage.step]]
action = "mix"
text = "Stir {yeast-instant} into {water} and {flour-strong-white}."

[[component.stage]]
name = "dough"
title = "Dough"
kind = "final-mix"

[component.stage.ingredients]
sponge = "all" # whatever it makes
# The mill's own flour.
flour-strong-white = "300 g"
flour-rye-dark = "100 g" # coarse
water = "55 %"
egg-whole = "1 M"
sugar-caster = "1 tbsp"
salt = { amount = "2 %", note = "fine" }

[[component.stage.step]]
action = "mix"
text = "Mix {sponge} with {water}, {flour-rye-dark} and {flour-strong-white}, then {egg-whole}, {sugar-caster} and {salt}."
time = "6 min"
"#;

fn book(text: &str) -> Book {
    let source = Source { file: "formulas/example.toml".into(), text: text.to_owned() };
    Book::open(BookText { files: [("formulas/example.toml".to_owned(), source)].into() }).value
}

/// The text after a gesture.
fn after(text: &str, doing: &Gesture) -> Result<String, Unfit> {
    let source = Source { file: "formulas/example.toml".into(), text: text.to_owned() };
    gesture(&book(text), &source, doing).map(|(text, _)| text)
}

fn worked_out(text: &str) -> Formula {
    let checked = book(text).formula("example").expect("the example");
    // What a hand makes too small for the pieces that were asked for is still what it typed.
    let is_sound = |found: &Diagnostic| found.severity < Severity::Error || found.code == "yield-impossible";
    assert!(checked.diagnostics.iter().all(is_sound), "{:#?}", checked.diagnostics);
    checked.value
}

/// What a line weighs, in gram.
fn grams(formula: &Formula, stage: usize, line: &str) -> f64 {
    let stage = &formula.components[0].stages[stage];
    stage.lines.iter().find(|one| one.name == line).expect("the line").mass.value.as_grams()
}

/// The lines of two texts that are not the same.
fn changed<'t>(before: &'t str, after: &'t str) -> Vec<(&'t str, &'t str)> {
    assert_eq!(before.lines().count(), after.lines().count(), "{after}");
    before.lines().zip(after.lines()).filter(|(a, b)| a != b).collect()
}

const FINAL: (usize, usize) = (0, 1);

#[test]
fn a_word_of_a_step_or_a_yield_is_written_in_its_place() {
    let longer = after(DOUGH, &Gesture::Word(Part::Step(FINAL, 0), "time", "8-9 min".to_owned())).expect("written");
    assert_eq!(changed(DOUGH, &longer), [("time = \"6 min\"", "time = \"8-9 min\"")]);
    let more = after(DOUGH, &Gesture::Word(Part::Yield(0), "pieces", "3".to_owned())).expect("written");
    assert_eq!(changed(DOUGH, &more), [("pieces = 2", "pieces = 3")]);
    let warm = after(DOUGH, &Gesture::Word(Part::Step(FINAL, 0), "temperature", "24 °C".to_owned())).expect("written");
    assert!(warm.contains("time = \"6 min\"\ntemperature = \"24 °C\"\n"), "{warm}");
    let gone = after(&warm, &Gesture::Word(Part::Step(FINAL, 0), "temperature", String::new())).expect("taken out");
    assert_eq!(gone, DOUGH);
}

/// A sentence with quotes, braces and line ends stays one value of the document.
#[test]
fn words_cannot_leave_their_quotes() {
    for words in ["say \"when\"", "back\\slash", "two\nlines", "\"\"\"", "' # [x]", "\u{202e}turned"] {
        let text = after(DOUGH, &Gesture::Word(Part::Stage(FINAL), "title", words.to_owned())).expect(words);
        let formula = worked_out(&text);
        assert_eq!(formula.components[0].stages[1].title, words, "{text}");
    }
}

#[test]
fn what_is_not_there_is_refused() {
    for doing in [
        Gesture::Amount((3, 9), "salt".to_owned(), "5 g".to_owned()),
        Gesture::Amount(FINAL, "honey".to_owned(), "5 g".to_owned()),
        Gesture::Hold(FINAL, "flour-rye-dark".to_owned(), Holding::Share),
        Gesture::Add(FINAL, "floor".to_owned(), "5 g".to_owned()),
        Gesture::Add(FINAL, "honey".to_owned(), "some".to_owned()),
        Gesture::Add(FINAL, "salt".to_owned(), "5 g".to_owned()),
        Gesture::TakeOut((0, 7), "salt".to_owned()),
        Gesture::Word(Part::Step((0, 0), 4), "time", "5 min".to_owned()),
    ] {
        let refused = after(DOUGH, &doing);
        assert!(refused.is_err(), "{doing:?} gave {refused:?}");
    }
}
