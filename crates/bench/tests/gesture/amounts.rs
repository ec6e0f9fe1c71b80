//! Amounts: as typed, held by weight or by percentage, and brought to a total.

use super::{DOUGH, FINAL, after, changed, grams, worked_out};
use bench::gesture::{Gesture, Holding};
use quantity::Mass;

fn amount(line: &str, typed: &str) -> Gesture {
    Gesture::Amount(FINAL, line.to_owned(), typed.to_owned())
}

fn check(doing: &Gesture, expected: &[(&str, &str)]) {
    let text = after(DOUGH, doing).unwrap_or_else(|why| panic!("{doing:?}: {why}"));
    assert_eq!(changed(DOUGH, &text), expected, "{doing:?}");
    worked_out(&text);
}

/// What is typed is what the text says; the comment beside it stays.
#[test]
fn an_amount_is_written_as_it_is_typed() {
    check(&amount("water", "240 g"), &[("water = \"55 %\"", "water = \"240 g\"")]);
    check(&amount("water", "62.5 %"), &[("water = \"55 %\"", "water = \"62.5 %\"")]);
    check(&amount("egg-whole", "2 L"), &[("egg-whole = \"1 M\"", "egg-whole = \"2 L\"")]);
    check(&amount("flour-rye-dark", "150 g"), &[("flour-rye-dark = \"100 g\" # coarse", "flour-rye-dark = \"150 g\" # coarse")]);
    check(
        &amount("salt", "9 g"),
        &[("salt = { amount = \"2 %\", note = \"fine\" }", "salt = { amount = \"9 g\", note = \"fine\" }")],
    );
}

/// Baker's percentages: the flour is 100 %, so one flour's share is taken from the others.
#[test]
fn a_share_of_one_flour_is_made_room_for_by_the_others() {
    let text = after(DOUGH, &amount("flour-rye-dark", "50 %")).expect("written");
    let formula = worked_out(&text);
    assert_eq!((grams(&formula, 1, "flour-rye-dark"), grams(&formula, 1, "flour-strong-white")), (200.0, 200.0));
    assert!((grams(&formula, 1, "water") - 220.0).abs() < 1e-9);
    for refused in ["100 %", "120 %"] {
        assert!(after(DOUGH, &amount("flour-rye-dark", refused)).is_err(), "{refused}");
    }
    let only = Gesture::Amount((0, 0), "flour-strong-white".to_owned(), "90 %".to_owned());
    assert!(after(DOUGH, &only).is_err());
}

/// Percentages follow the flour, weights stay: that is what holding means.
#[test]
fn what_a_line_holds_decides_what_moves_when_the_flour_changes() {
    let more_flour = amount("flour-strong-white", "400 g");
    let formula = worked_out(&after(DOUGH, &more_flour).expect("written"));
    assert_eq!(grams(&formula, 1, "water"), 275.0);
    let held = after(DOUGH, &Gesture::Hold(FINAL, "water".to_owned(), Holding::Weight)).expect("held");
    assert_eq!(changed(DOUGH, &held), [("water = \"55 %\"", "water = \"220 g\"")]);
    let formula = worked_out(&after(&held, &more_flour).expect("written"));
    assert_eq!(grams(&formula, 1, "water"), 220.0);
    let back = after(&held, &Gesture::Hold(FINAL, "water".to_owned(), Holding::Share)).expect("held");
    assert_eq!(back, DOUGH);
}

#[test]
fn a_total_moves_all_but_what_stays() {
    let stays = vec!["egg-whole".to_owned(), "sugar-caster".to_owned()];
    let before = worked_out(DOUGH);
    let doing = Gesture::Total(FINAL, Mass::grams(1500.0), stays);
    let after = worked_out(&after(DOUGH, &doing).expect("brought"));
    let stage = &after.components[0].stages[1];
    assert!((stage.mixed().as_grams() - 1500.0).abs() < 0.05, "{}", stage.mixed().as_grams());
    for still in ["egg-whole", "sugar-caster", "sponge"] {
        assert_eq!(grams(&after, 1, still), grams(&before, 1, still), "{still}");
    }
    let by = grams(&after, 1, "salt") / grams(&before, 1, "salt");
    for moved in ["flour-strong-white", "flour-rye-dark", "water"] {
        let ratio = grams(&after, 1, moved) / grams(&before, 1, moved);
        assert!((ratio - by).abs() < 0.002, "{moved}: {ratio} beside {by}");
    }
}

#[test]
fn no_total_is_lighter_than_what_stays() {
    let refused = after(DOUGH, &Gesture::Total(FINAL, Mass::grams(150.0), Vec::new()));
    assert!(refused.is_err_and(|why| why.to_string().contains("200")));
}

/// A batch too small for the pieces that it is to make is refused with the reason.
#[test]
fn a_total_that_the_yield_contradicts_is_refused() {
    let refused = after(DOUGH, &Gesture::Total(FINAL, Mass::grams(250.0), Vec::new()));
    assert!(refused.is_err_and(|why| why.to_string().contains("the yield asks for 300")));
}

#[test]
fn an_amount_that_cannot_be_read_is_refused_in_words() {
    for (line, typed) in [("water", "plenty"), ("water", ""), ("water", "-3 g"), ("salt", "2 °C"), ("water", "\"\n[x]")] {
        let refused = after(DOUGH, &amount(line, typed));
        assert!(refused.is_err(), "{typed:?} gave {refused:?}");
    }
}
