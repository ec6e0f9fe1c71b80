//! Mass is neither made nor lost: through stages, losses and scaling.

use crate::invented::dough;
use crate::{near, rows, same, sound};
use formula::arithmetic::{Target, factor, overall, scaled, weighed};
use proptest::prelude::*;
use quantity::Mass;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn what_is_weighed_into_the_stages_is_what_the_last_one_makes(dough in dough()) {
        for text in [dough.in_one_stage(), dough.in_two_stages(), dough.in_three_stages()] {
            let formula = sound(&text);
            let made = formula.components[0].stages.last().expect("a stage").made().as_grams();
            let whole = overall(&formula, 0);
            let sum: f64 = rows(&whole).values().map(|(grams, _)| grams).sum();
            prop_assert!(near(made, dough.total()), "{} g made of {} g", made, dough.total());
            prop_assert!(near(sum, made), "the rows sum up to {} of {} g", sum, made);
            prop_assert!(near(whole.total.as_grams(), made));
            prop_assert!(near(whole.total_flour.as_grams(), dough.flour()));
        }
    }

    #[test]
    fn every_row_is_the_sum_of_its_stages(dough in dough()) {
        let formula = sound(&dough.in_three_stages());
        for row in overall(&formula, 0).rows {
            let sum: Mass = row.by_stage.iter().copied().sum();
            prop_assert!(near(sum.as_grams(), row.mass.as_grams()), "{:?}", row);
        }
    }

    #[test]
    fn losses_take_their_share_and_no_more(dough in dough(), boiled in 0_u32..60, lost in 0_u32..60) {
        let losses = format!("boil-off = \"{boiled} %\"\nloss = \"{lost} %\"\n[component.stage.ingredients]");
        let text = dough.in_one_stage().replacen("[component.stage.ingredients]", &losses, 1);
        let made = sound(&text).components[0].stages[0].made().as_grams();
        let left = (1.0 - f64::from(boiled) / 100.0) * (1.0 - f64::from(lost) / 100.0);
        prop_assert!(near(made, dough.total() * left), "{} g of {} g with {} % and {} % lost", made, dough.total(), boiled, lost);
    }

    #[test]
    fn a_stage_used_in_part_gives_that_part_of_each_ingredient(dough in dough(), percent in 1_u32..=100) {
        let part = f64::from(percent) / 100.0;
        let share = format!("sponge = {{ stage = \"sponge\", share = \"{percent} %\" }}\n");
        let formula = sound(&dough.in_two_stages().replace("sponge = \"all\"\n", &share));
        let sponge = formula.components[0].stages[0].made().as_grams();
        let sum: f64 = weighed(&formula, 0).iter().filter(|part| part.stage == (0, 0)).map(|part| part.mass.as_grams()).sum();
        prop_assert!(near(sum, sponge * part), "{} g of {} g at {} %", sum, sponge, percent);
    }

    #[test]
    fn scaling_there_and_back_changes_nothing(dough in dough(), by in 0.01..100.0_f64) {
        for text in [dough.in_one_stage(), dough.in_two_stages(), dough.by_percentage_of_weighed_flour()] {
            let formula = sound(&text);
            let large = scaled(&formula, by, None);
            let back = scaled(&large, 1.0 / by, None);
            same(&formula, &back);
            let (was, is) = (overall(&formula, 0), overall(&large, 0));
            prop_assert!(near(is.total.as_grams(), was.total.as_grams() * by));
            for (name, (_, share)) in rows(&was) {
                prop_assert!(near(rows(&is)[&name].1, share), "the percentage of {} changed", name);
            }
        }
    }

    #[test]
    fn scaling_by_two_factors_is_scaling_by_their_product(dough in dough(), one in 0.1..10.0_f64, other in 0.1..10.0_f64) {
        let formula = sound(&dough.in_three_stages());
        same(&scaled(&scaled(&formula, one, None), other, None), &scaled(&formula, one * other, None));
    }

    #[test]
    fn a_target_is_reached(dough in dough(), grams in 10.0..1e5_f64) {
        let formula = sound(&dough.in_two_stages());
        let mass = Mass::grams(grams);
        let to = |target: Target| scaled(&formula, factor(&formula, &target).expect("a factor"), None);
        prop_assert!(near(overall(&to(Target::Total(mass)), 0).total.as_grams(), grams));
        prop_assert!(near(overall(&to(Target::Flour(mass)), 0).total_flour.as_grams(), grams));
        let at_hand = rows(&overall(&to(Target::AtHand("water".to_owned(), mass)), 0));
        prop_assert!(near(at_hand["water"].0, grams));
    }
}
