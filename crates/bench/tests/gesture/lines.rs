//! Lines come in, go out and change places; comments go with the line that they stand at.

use super::{DOUGH, FINAL, after, worked_out};
use bench::gesture::{Gesture, Neighbour};

fn order(text: &str) -> Vec<String> {
    worked_out(text).components[0].stages[1].lines.iter().map(|line| line.name.clone()).collect()
}

#[test]
fn an_ingredient_comes_in_by_any_of_its_names() {
    for typed in ["honey", "Honey", " honey "] {
        let text = after(DOUGH, &Gesture::Add(FINAL, typed.to_owned(), "3 %".to_owned())).expect(typed);
        assert!(text.contains("salt = { amount = \"2 %\", note = \"fine\" }\nhoney = \"3 %\"\n"), "{text}");
    }
}

#[test]
fn a_line_goes_out_with_what_the_method_says_of_it() {
    let text = after(DOUGH, &Gesture::TakeOut(FINAL, "egg-whole".to_owned())).expect("taken out");
    assert!(!text.contains("egg-whole"), "{text}");
    worked_out(&text);
    let text = after(DOUGH, &Gesture::TakeOut(FINAL, "flour-rye-dark".to_owned())).expect("taken out");
    assert!(text.contains("\n# coarse\n") && !text.contains("flour-rye-dark"), "{text}");
}

#[test]
fn a_line_moves_with_its_comments_and_back() {
    let down = after(DOUGH, &Gesture::Move(FINAL, "flour-strong-white".to_owned(), Neighbour::Below)).expect("moved");
    assert!(
        down.contains("flour-rye-dark = \"100 g\" # coarse\n# The mill's own flour.\nflour-strong-white = \"300 g\"\n"),
        "{down}"
    );
    assert_eq!(order(&down)[1..3], ["flour-rye-dark", "flour-strong-white"]);
    let up = after(&down, &Gesture::Move(FINAL, "flour-strong-white".to_owned(), Neighbour::Above)).expect("moved back");
    assert_eq!(up, DOUGH);
}

#[test]
fn a_line_at_the_end_stays_there() {
    assert_eq!(after(DOUGH, &Gesture::Move(FINAL, "salt".to_owned(), Neighbour::Below)).expect("left"), DOUGH);
    assert_eq!(after(DOUGH, &Gesture::Move(FINAL, "sponge".to_owned(), Neighbour::Above)).expect("left"), DOUGH);
}

/// A list written on one line is a list too.
#[test]
fn lines_of_a_list_on_one_line_change_places() {
    let begin = DOUGH.find("[component.stage.ingredients]\nsponge").expect("the list");
    let end = DOUGH[begin..].find("[[component.stage.step]]").expect("the step");
    let list = "ingredients = { sponge = \"all\", flour-strong-white = \"300 g\", flour-rye-dark = \"100 g\", water = \"55 %\", egg-whole = \"1 M\", sugar-caster = \"1 tbsp\", salt = \"2 %\" }\n\n";
    let text = format!("{}{list}{}", &DOUGH[..begin], &DOUGH[begin..][end..]);
    let moved = after(&text, &Gesture::Move(FINAL, "water".to_owned(), Neighbour::Above)).expect("moved");
    assert_eq!(order(&moved)[2..4], ["water", "flour-rye-dark"]);
    let added = after(&moved, &Gesture::Add(FINAL, "honey".to_owned(), "10 g".to_owned())).expect("added");
    assert_eq!(order(&added).last().map(String::as_str), Some("honey"));
}
