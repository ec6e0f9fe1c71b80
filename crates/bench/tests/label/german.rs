//! German labels: Regulation (EU) No 1169/2011, Art. 21(1)(b), sets the allergen off in the list; the Commission's
//! Notice 2017/C 428/01, 3.2, takes the part of a compound word that names it ("Magermilchpulver") as enough.

use crate::{book, drafted};
use bench::label::{Entry, Label, Law, Sold, label};

const FLOURS: &str = "title = \"Fladen\"\n[[component]]\nname = \"fladen\"\n[[component.stage]]\nname = \"teig\"\nkind = \"final-mix\"\n\
    [component.stage.ingredients]\nflour-plain-soft = \"300 g\"\nflour-buckwheat = \"100 g\"\nmilk-powder-skim = \"40 g\"\n\
    butter = \"30 g\"\nei = 2\nsalt = \"6 g\"\nwater = \"280 g\"\n[[component.stage.step]]\naction = \"mix\"\n\
    text = \"{flour-plain-soft}, {flour-buckwheat}, {milk-powder-skim}, {butter}, {ei}, {salt} und {water} mischen.\"\n";

fn german(text: &str, law: Law) -> Label {
    let book = book(&[("book.toml", "title = \"Buch\"\nlanguage = \"de\"\n"), ("formulas/fladen.toml", text)]);
    let formula = book.formula("fladen").expect("the formula").value;
    label(&formula, &book.settings, law, &Sold::default()).expect("a label")
}

/// An entry as it is printed, what is set off in capitals.
fn printed(entry: &Entry) -> String {
    entry.runs.iter().map(|run| if run.is_strong { run.words.to_uppercase() } else { run.words.clone() }).collect()
}

#[test]
fn the_allergen_is_set_off_within_german_words() {
    let label = german(FLOURS, Law::Eu);
    let list: Vec<String> = label.list.entries.iter().map(printed).collect();
    assert!(label.is_german);
    for told in ["WEIZENmehl", "Buchweizenmehl", "MAGERMILCHpulver", "Butter (MILCH)", "EI", "Speisesalz", "Wasser"] {
        assert!(list.iter().any(|entry| entry == told), "{told} is not in {list:?}");
    }
}

#[test]
fn a_label_under_another_law_is_english() {
    assert!(!german(FLOURS, Law::Uk).is_german);
    assert!(
        !drafted(&FLOURS.replace("ei = 2", "egg-whole = 2").replace("{ei}", "{egg-whole}"), "", Law::Eu).is_german,
        "a book is English unless it says otherwise"
    );
}
