//! What holds of every gesture: a percentage typed is the percentage shown, a weight typed the weight, nothing else
//! of the stage moves but what follows, and no text, however odd, makes it panic.

use super::{DOUGH, FINAL, after, grams, worked_out};
use bench::exchange::Part;
use bench::gesture::{Gesture, KEYS};
use proptest::prelude::*;
use quantity::Mass;

const LINES: [&str; 5] = ["flour-strong-white", "flour-rye-dark", "water", "sugar-caster", "salt"];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn a_weight_typed_is_the_weight(line in prop::sample::select(&LINES[..]), weight in 1_u32..20_000) {
        let weight = f64::from(weight) / 10.0;
        let text = after(DOUGH, &Gesture::Amount(FINAL, line.to_owned(), format!("{weight} g"))).expect("written");
        prop_assert!((grams(&worked_out(&text), 1, line) - weight).abs() < 1e-9);
    }

    #[test]
    fn a_percentage_typed_is_the_share_of_the_stages_flour(line in prop::sample::select(&LINES[1..]), percent in 1_u32..990) {
        let percent = f64::from(percent) / 10.0;
        let text = after(DOUGH, &Gesture::Amount(FINAL, line.to_owned(), format!("{percent} %"))).expect("written");
        let formula = worked_out(&text);
        let flour = grams(&formula, 1, "flour-strong-white") + grams(&formula, 1, "flour-rye-dark");
        prop_assert!((flour - 400.0).abs() < 0.02, "{}", flour);
        prop_assert!((grams(&formula, 1, line) / flour * 100.0 - percent).abs() < 0.01);
    }

    #[test]
    fn a_total_typed_is_the_total(total in 400_u32..9_000) {
        let text = after(DOUGH, &Gesture::Total(FINAL, Mass::grams(f64::from(total)), Vec::new())).expect("brought");
        let mixed = worked_out(&text).components[0].stages[1].mixed().as_grams();
        prop_assert!((mixed - f64::from(total)).abs() < 0.1, "{}", mixed);
    }

    #[test]
    fn nothing_typed_makes_it_panic(words in "\\PC{0,40}", at in (0_usize..3, 0_usize..3), key in prop::sample::select(&KEYS[..])) {
        for doing in [
            Gesture::Amount(at, "water".to_owned(), words.clone()),
            Gesture::Amount(at, words.clone(), "1 g".to_owned()),
            Gesture::Add(at, words.clone(), "1 g".to_owned()),
            Gesture::Add(at, "honey".to_owned(), words.clone()),
            Gesture::TakeOut(at, words.clone()),
            Gesture::Word(Part::Step(at, 0), key, words.clone()),
            Gesture::Word(Part::Yield(at.0), key, words.clone()),
        ] {
            let _ = after(DOUGH, &doing);
        }
    }

    /// Whatever was typed for a text, the document can still be read as TOML afterwards.
    #[test]
    fn a_word_leaves_the_rest_of_the_document_as_it_was(words in "\\PC{0,40}") {
        if let Ok(text) = after(DOUGH, &Gesture::Word(Part::Stage(FINAL), "title", words)) {
            let lines: Vec<&str> = DOUGH.lines().filter(|line| !line.starts_with("title = \"Dough\"")).collect();
            prop_assert!(lines.iter().all(|line| text.contains(line)), "{}", text);
            prop_assert!(toml::de::DeTable::parse(&text).is_ok(), "{}", text);
        }
    }
}
