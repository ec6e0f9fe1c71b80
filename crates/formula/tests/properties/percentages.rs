//! Percentages and weights say the same; how a dough is parted into stages does not change what it is.

use crate::invented::dough;
use crate::{near, rows, same, sound};
use formula::arithmetic::{figures, overall};
use proptest::prelude::*;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn the_overall_formula_does_not_depend_on_the_stages(dough in dough()) {
        let straight = sound(&dough.in_one_stage());
        same(&straight, &sound(&dough.in_two_stages()));
        same(&straight, &sound(&dough.in_three_stages()));
    }

    #[test]
    fn the_figures_do_not_depend_on_the_stages(dough in dough()) {
        let of = |text: &str| figures(&overall(&sound(text), 0)).expect("figures of a dough with flour");
        let (one, three) = (of(&dough.in_one_stage()), of(&dough.in_three_stages()));
        prop_assert!(near(one.nominal_hydration.as_ratio(), three.nominal_hydration.as_ratio()));
        prop_assert!(near(one.true_hydration.value.as_ratio(), three.true_hydration.value.as_ratio()));
        prop_assert!(near(one.salt.as_ratio(), three.salt.as_ratio()));
        prop_assert!(near(one.fat.value.as_ratio(), three.fat.value.as_ratio()));
        prop_assert!(near(one.flour_protein.value.as_ratio(), three.flour_protein.value.as_ratio()));
        // Tap water itself is 99.9 g of water in 100 g: USDA SR 28, entry 14411.
        prop_assert!(one.true_hydration.value >= one.nominal_hydration * 0.999, "milk, egg and butter hold water besides");
    }

    #[test]
    fn weights_read_off_as_percentages_give_the_weights_again(dough in dough()) {
        let by_weight = sound(&dough.in_one_stage());
        for (name, grams) in dough.flours.iter().chain(&dough.others) {
            let share = rows(&overall(&by_weight, 0))[*name].1;
            prop_assert!(near(share * dough.flour(), *grams), "{} at {}", name, share);
        }
        same(&by_weight, &sound(&dough.by_percentage_of_weighed_flour()));
        same(&by_weight, &sound(&dough.by_percentage(&format!("flour = \"{} g\"", dough.flour()))));
        same(&by_weight, &sound(&dough.by_percentage(&format!("weight = \"{} g\"", dough.total()))));
    }

    #[test]
    fn a_yield_sizes_a_dough_of_percentages_as_its_weight_does(dough in dough(), pieces in 1_u32..40, lost in 0_u32..20) {
        let raw = dough.total() * (1.0 - f64::from(lost) / 100.0);
        let yields = format!(
            "yield = {{ pieces = {pieces}, scaling-weight = \"{} g\", make-up-loss = \"{lost} %\" }}\n[[component.stage]]",
            raw / f64::from(pieces)
        );
        let text = dough.by_percentage("").replacen("[[component.stage]]", &yields, 1);
        same(&sound(&dough.in_one_stage()), &sound(&text));
    }

    #[test]
    fn the_prefermented_flour_is_a_share_of_the_flour(dough in dough()) {
        let straight = overall(&sound(&dough.in_one_stage()), 0).prefermented.as_ratio();
        prop_assert!(straight == 0.0, "a straight dough has no prefermented flour, not {}", straight);
        let fermented: f64 = dough.flours.iter().zip(&dough.first).map(|((_, grams), share)| grams * share).sum();
        for text in [dough.in_two_stages(), dough.in_three_stages()] {
            let share = overall(&sound(&text), 0).prefermented.as_ratio();
            prop_assert!((0.0..=1.0 + 1e-12).contains(&share), "{}", share);
            prop_assert!(near(share, fermented / dough.flour()), "{} against {}", share, fermented / dough.flour());
        }
    }
}
