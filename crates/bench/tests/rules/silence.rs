//! Rules silenced at a place, with a reason.

use bench::rules::{self, Judged};
use formula::source::Source;
use formula::{Book, BookText};
use std::collections::BTreeMap;

/// A loaf with too much salt, with text put in at five places.
fn loaf(head: &str, component: &str, stage: &str, salt: &str) -> Judged {
    let text = format!(
        r#"title = "Loaf"
intro = "A loaf."
storage = "Two days."
{head}

[[component]]
name = "loaf"
{component}

[[component.stage]]
name = "dough"
kind = "final-mix"
{stage}

[component.stage.ingredients]
flour-strong-white = "500 g"
water = "66 %"
salt = {salt}
yeast-instant = "6 g"

[[component.stage.step]]
action = "knead"
text = "Knead {{flour-strong-white}}, {{yeast-instant}}, {{water}} and {{salt}} together and bake."
time = "10 min"
temperature = "100 °C"

[[component]]
name = "second"

[[component.stage]]
name = "dough"
kind = "final-mix"

[component.stage.ingredients]
flour-strong-white = "500 g"
water = "66 %"
salt = "9 g"
yeast-instant = "6 g"

[[component.stage.step]]
action = "knead"
text = "Knead {{flour-strong-white}}, {{yeast-instant}}, {{water}} and {{salt}} together and bake."
time = "10 min"
temperature = "100 °C"
"#
    );
    let file = "formulas/loaf.toml";
    let files = BTreeMap::from([(file.to_owned(), Source { file: file.into(), text })]);
    let book = Book::open(BookText { files }).value;
    let formula = book.formula("loaf").expect("it is there");
    assert!(formula.diagnostics.is_empty(), "{:?}", formula.diagnostics);
    rules::judge(&formula.value, &book.kitchen(), &book.settings)
}

fn codes(judged: &Judged) -> (Vec<&str>, Vec<&str>) {
    let found = judged.found.iter().map(|found| found.code).collect();
    (found, judged.silenced.iter().map(|silenced| silenced.found.code).collect())
}

const QUIET: &str = r#"quiet = { salt-outside-custom = "a brined bread" }"#;
const MUCH: &str = r#""20 g""#;

#[test]
fn a_rule_is_silenced_for_the_formula_component_stage_or_line_that_says_so() {
    let line = r#"{ amount = "20 g", quiet = { salt-outside-custom = "a brined bread" } }"#;
    assert_eq!(codes(&loaf("", "", "", MUCH)), (vec!["salt-outside-custom"], vec![]));
    for (head, component, stage, salt) in
        [(QUIET, "", "", MUCH), ("", QUIET, "", MUCH), ("", "", QUIET, MUCH), ("", "", "", line)]
    {
        let judged = loaf(head, component, stage, salt);
        assert_eq!(codes(&judged), (vec![], vec!["salt-outside-custom"]));
        assert_eq!(judged.silenced[0].reason, "a brined bread");
    }
}

#[test]
fn silence_does_not_reach_beyond_its_table() {
    let second = loaf("", "", "", r#""9 g""#);
    assert_eq!(codes(&second), (vec![], vec![]));
    let other = loaf("", r#"quiet = { yeast-outside-custom = "another rule" }"#, "", MUCH);
    assert_eq!(codes(&other), (vec!["salt-outside-custom"], vec![]));
}

#[test]
fn without_a_reason_nothing_is_silenced() {
    let judged = loaf(r#"quiet = { salt-outside-custom = " " }"#, "", "", MUCH);
    let (mut found, silenced) = codes(&judged);
    found.sort_unstable();
    assert_eq!((found, silenced), (vec!["salt-outside-custom", "silenced-without-a-reason"], vec![]));
}
