//! What an author describes in a file of ingredients is taken for what it is, with and without `like`.

use crate::proof_read;
use bench::cautions::cautions;
use bench::rules;
use formula::fault::page::{EXAMPLE, Page};
use formula::source::Source;
use formula::{Book, BookText};
use std::collections::BTreeMap;

/// A book of one dough of these lines, with the author's own ingredients.
fn book(own: &str, lines: &str, head: &str) -> BookText {
    let formula = format!(
        "title = \"Example\"\n{head}\nstorage = \"Best on the day.\"\n[[component]]\nname = \"dough\"\n[[component.stage]]\n\
         name = \"dough\"\nkind = \"final-mix\"\n[component.stage.ingredients]\n{lines}\n"
    );
    files(&[(EXAMPLE, &formula), ("ingredients/own.toml", own)])
}

fn files(files: &[(&str, &str)]) -> BookText {
    let source = |(file, text): &(&str, &str)| ((*file).to_owned(), Source { file: (*file).into(), text: (*text).to_owned() });
    BookText { files: files.iter().map(source).collect::<BTreeMap<_, _>>() }
}

/// The cautions that a dough of these lines gets.
#[track_caller]
fn cautioned(own: &str, lines: &str) -> Vec<&'static str> {
    let opened = Book::open(book(own, lines, ""));
    assert!(opened.diagnostics.is_empty(), "{:?}", opened.diagnostics);
    let formula = opened.value.formula("example").expect("the example").value;
    cautions(&formula).into_iter().map(|caution| caution.name).collect()
}

#[test]
fn a_flour_of_ones_own_is_raw_flour() {
    for row in ["counts-as-flour = true", "group = \"flour\"", "counts-as-flour = true\nallergens = [\"wheat\"]"] {
        assert_eq!(cautioned(&format!("[mill-flour]\n{row}"), "mill-flour = \"100 g\""), ["raw-flour"], "{row}");
    }
    assert!(cautioned("[mill-flour]\ncounts-as-flour = true\nheat-treated = true", "mill-flour = \"100 g\"").is_empty());
}

#[test]
fn an_egg_of_ones_own_is_raw_egg() {
    for row in ["group = \"egg\"", "allergens = [\"eggs\"]", "group = \"egg\"\npiece = { weighs = \"40 g\" }"] {
        assert_eq!(cautioned(&format!("[bantam-egg]\n{row}"), "bantam-egg = \"100 g\""), ["raw-egg"], "{row}");
    }
    assert!(cautioned("[bantam-egg]\ngroup = \"egg\"\nheat-treated = true", "bantam-egg = \"100 g\"").is_empty());
}

#[test]
fn a_mix_of_ones_own_is_cautioned_for_what_is_in_it() {
    let own = "[batter-mix]\nmade-of = { flour-bread = \"70 %\", egg-whole = \"30 %\" }";
    assert_eq!(cautioned(own, "batter-mix = \"100 g\""), ["raw-flour", "raw-egg"]);
}

/// Whole nuts choke small children: UK National Health Service advice, as the caution says.
#[test]
fn brazil_nuts_are_whole_nuts() {
    assert_eq!(cautioned("", "brazil-nuts = \"100 g\""), ["whole-nuts"]);
}

#[test]
fn a_honey_by_another_name_is_honey() {
    let own = "[heather-honey]\nlike = \"honey\"";
    assert_eq!(cautioned(own, "heather-honey = \"100 g\""), ["honey"]);
    for (head, rule) in
        [("intro = \"Soft enough for babies.\"", "honey-for-infants"), ("intro = \"A vegan spread.\"", "vegan-with-animal-food")]
    {
        let found = proof_read(book(own, "heather-honey = \"100 g\"", head));
        assert!(found.iter().any(|found| found.code == rule), "{rule}: {found:?}");
    }
}

/// Sugar laid in at making-up does not slow the yeast of the dough, which is what the custom of sugars is about.
#[test]
fn sugar_of_the_making_up_is_not_the_doughs() {
    let page = Page::read(rules::named("sugars-outside-custom").expect("a rule").page);
    let good = &page.good[0].files[EXAMPLE];
    let (dough, steam) = good.split_once("[[component.stage.step]]\naction = \"boil\"").expect("the buns are steamed");
    let made_up = |kind: &str| {
        let text = format!(
            "{dough}[[component.stage]]\nname = \"rolled\"\nkind = \"{kind}\"\n\n[component.stage.ingredients]\ndough = \"all\"\n\
             sugar-demerara = \"200 g\"\n\n[[component.stage.step]]\naction = \"shape\"\n\
             text = \"Roll {{sugar-demerara}} up in {{dough}} and cut.\"\n\n[[component.stage.step]]\naction = \"boil\"{steam}"
        );
        proof_read(files(&[(EXAMPLE, &text)])).into_iter().map(|found| found.code).collect::<Vec<_>>()
    };
    assert_eq!(made_up("make-up"), [""; 0]);
    // The same sugar kneaded in as a stage of the mix is the dough's: the rule does look.
    assert_eq!(made_up("mixed"), ["sugars-outside-custom"]);
}
