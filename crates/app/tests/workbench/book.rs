//! The book's page: finding, what is to be said of formulas, new ones, and a book without any.

use crate::browsed::{Browsed, demo};

#[test]
fn formulas_are_found_by_title_tag_ingredient_and_remarks() {
    let served = Browsed::demo();
    let all = served.page("/");
    for title in ["Griddled potato muffins", "Cardamom knots", "Nothing amiss"] {
        assert!(all.contains(title), "{title}");
    }
    let found = |asked: &str| served.page(&format!("/?{asked}")).matches("<li><h2>").count();
    assert_eq!(found("words=CARDAMOM"), 1);
    assert_eq!(found("words=cardamom+nothing"), 0);
    assert_eq!(found("with=mill-buckwheat"), 1);
    assert_eq!(found("tag=griddle&from=abc"), served.page("/?tag=griddle").matches("<li><h2>").count());
    assert_eq!(found("remarks=with") + found("remarks=without"), found(""));
}

#[test]
fn a_new_formula_is_begun_once_and_can_be_undone() {
    let served = Browsed::demo();
    let wish = [("title", "Évening  rolls <b>"), ("like", "starter:straight")];
    assert_eq!(served.sent_on("/new", &wish), "/formula/%C3%A9vening-rolls-b");
    let text = served.read("formulas/évening-rolls-b.toml");
    assert!(text.contains("title = \"Évening  rolls <b>\"") && text.contains("# a share of this stage's flour"));
    assert!(served.page("/").contains("Évening  rolls &lt;b&gt;"));
    assert_eq!(served.post("/new", &wish).status, 422, "the name is taken");
    assert_eq!(served.post("/new", &[("title", " ../ "), ("like", "starter:straight")]).status, 422);
    assert_eq!(served.post("/new", &[("title", "New"), ("like", "formula:../book")]).status, 404);
    served.sent_on("/new", &[("title", "Knots again"), ("like", "formula:cardamom-knots")]);
    // What another formula cites was tasted of that one.
    served.sent_on("/new", &[("title", "Muffins again"), ("like", "formula:potato-muffins")]);
    let kept = served.read("formulas/cardamom-knots.toml").lines().count();
    assert_eq!(served.read("formulas/knots-again.toml").lines().count(), kept, "a copy is whole");
    assert_eq!(served.sent_on("/formula/knots-again/back", &[]), "/changes");
    assert!(!served.path("formulas/knots-again.toml").exists(), "what was begun is undone");
    let again = [("file", "formulas/knots-again.toml"), ("to", "/formula/knots-again")];
    assert_eq!(served.sent_on("/changes/forth", &again), "/formula/knots-again");
    assert_eq!(served.read("formulas/knots-again.toml").lines().count(), kept, "and done again");
}

#[test]
fn an_empty_folder_offers_the_demo_book() {
    let served = Browsed::nothing();
    assert!(served.page("/").contains("Lay the demo book here"));
    assert!(served.page("/tour").contains("no formula yet"));
    assert_eq!(served.sent_on("/demo", &[]), "/tour");
    let mut told: Vec<String> = Vec::new();
    for folder in ["", "formulas", "ingredients", "kitchens", "tastings", "trials"] {
        for entry in std::fs::read_dir(demo().join(folder)).expect("a folder").flatten().filter(|one| one.path().is_file()) {
            let name = format!("{folder}/{}", entry.file_name().to_string_lossy());
            let name = name.trim_start_matches('/').to_owned();
            let (here, there) = (std::fs::read(served.path(&name)).ok(), std::fs::read(entry.path()).ok());
            assert!(here == there, "{name} is not as in the demo book");
            told.push(name);
        }
    }
    assert!(told.len() > 15, "the demo book was looked at");
    assert_eq!(served.post("/demo", &[]).status, 422, "it is laid once");
    assert!(served.page("/tour").contains("/formula/potato-muffins/exchange"));
}

#[test]
fn the_demo_book_goes_as_it_came_and_comes_back_file_by_file() {
    let served = Browsed::nothing();
    served.sent_on("/demo", &[]);
    assert!(served.page("/changes").contains("Take the demo book away"));
    let changed = format!("{}# by another hand\n", served.read("formulas/potato-muffins.toml"));
    std::fs::write(served.path("formulas/potato-muffins.toml"), &changed).expect("a file of one's own");
    assert_eq!(served.sent_on("/demo/away", &[]), "/changes");
    let left: Vec<_> =
        ["formulas", "ingredients", "trials"].iter().flat_map(|one| std::fs::read_dir(served.path(one))).flatten().collect();
    assert!(left.is_empty() && !served.path("book.toml").exists(), "something stays: {left:?}");
    assert!(!served.path("trials").exists(), "empty folders go too");
    assert!(served.page("/").contains("Lay the demo book here"));
    let page = served.page("/changes");
    assert!(page.contains("The demo book was taken away: 26 files") && page.contains("came and went with it"), "{page}");
    served.sent_on("/changes/back", &[("file", "formulas/potato-muffins.toml")]);
    assert_eq!(served.read("formulas/potato-muffins.toml"), changed, "with what was changed in it");
    served.sent_on("/changes/back", &[("file", "kitchens/boathouse-week.csv")]);
    assert!(served.read("kitchens/boathouse-week.csv").contains('\n'));
    assert!(served.page("/changes").contains("Bring the demo book back"));
    assert_eq!(served.sent_on("/demo/back", &[]), "/");
    assert_eq!(served.read("formulas/potato-muffins.toml"), changed);
    assert_eq!(served.read("prices.toml"), std::fs::read_to_string(demo().join("prices.toml")).expect("prices"));
    let page = served.page("/changes");
    assert!(!page.contains("was taken away:") && page.contains("came with it and are as they came"), "{page}");
    assert_eq!(served.post("/demo/back", &[]).status, 422, "all of it is there");
}

#[test]
fn the_first_step_is_done_by_changing_and_names_what_is_in_the_formula() {
    let served = Browsed::nothing();
    served.sent_on("/new", &[("title", "Rolls"), ("like", "starter:sponge")]);
    let tour = served.page("/tour");
    assert!(!tour.contains("· done") && tour.contains("another weight for the water"), "{tour}");
}

#[test]
fn a_word_finds_no_formula_by_a_tag_that_says_the_opposite() {
    let served = Browsed::demo();
    let file = "formulas/caraway-rye-tin.toml";
    assert!(served.read(file).contains("no-milk"));
    assert!(!served.page("/?words=milk").contains("/formula/caraway-rye-tin\""));
    assert!(served.page("/?words=no-milk").contains("/formula/caraway-rye-tin\""));
}

#[test]
fn what_was_not_laid_by_the_workbench_is_not_its_to_take_away() {
    let served = Browsed::demo();
    assert!(!served.page("/changes").contains("Take the demo book away"));
    assert_eq!(served.post("/demo/away", &[]).status, 422);
    assert!(served.path("book.toml").exists());
}

#[test]
fn a_first_formula_makes_an_empty_folder_a_book() {
    let served = Browsed::nothing();
    served.sent_on("/new", &[("title", "Rolls"), ("like", "starter:sponge")]);
    assert!(served.read("formulas/rolls.toml").contains("title = \"Rolls\""));
    assert!(served.page("/formula/rolls").contains("Rolls"));
}
