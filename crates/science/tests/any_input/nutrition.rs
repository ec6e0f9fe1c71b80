//! Nutrition with any input.

use crate::any_number;
use proptest::prelude::*;
use quantity::{Fraction, Mass};
use science::nutrition::european_rounding::{Line, Trace};
use science::nutrition::*;

const LINES: [Line; 7] = [Line::Fat, Line::FattyAcids, Line::Carbohydrate, Line::Fibre, Line::Protein, Line::Salt, Line::Sodium];

proptest! {
    #[test]
    fn labels_of_anything(a in any_number(), b in any_number()) {
        for line in LINES {
            prop_assert!(!european_rounding::print(line, Mass::grams(a)).to_string().is_empty());
            let _ = tolerance::either_way(line, Mass::grams(a));
        }
        prop_assert!(!european_rounding::print_trace(Trace::Coarse, a).to_string().is_empty());
        prop_assert!(!european_rounding::print_energy(a).to_string().is_empty());
        use american_rounding::{DailyValue, Line};
        for line in [Line::Calories, Line::Fat, Line::Cholesterol, Line::Sodium, Line::Carbohydrate] {
            prop_assert!(!american_rounding::print(line, a).to_string().is_empty());
        }
        let _ = american_rounding::print_daily_value(DailyValue::VitaminOrMineral, Fraction::ratio(a));
        for group in [american_tolerance::Group::Added, american_tolerance::Group::ByNature, american_tolerance::Group::ToLimit] {
            prop_assert!(!a.is_nan() || !american_tolerance::true_to_label(group, Fraction::ratio(a)));
        }
        let contents = european_energy::Contents { fat: Mass::grams(a), alcohol: Mass::grams(b), ..Default::default() };
        let _ = european_energy::energy(&contents);
        let _ = cooking::share_of_finished(Mass::grams(a), Mass::grams(b));
        let _ = cooking::raw_for(Mass::grams(a), Fraction::ratio(b));
        let _ = front_of_pack::band(front_of_pack::Nutrient::Salt, Mass::grams(a));
        let _ = added_water::to_list(Mass::grams(a), Mass::grams(b));
        let _ = serving::pieces(Mass::grams(a), Mass::grams(b));
        prop_assert!(!serving::metric(serving::in_pack(a)).to_string().is_empty());
        for amount in reference_amounts::all() {
            let _ = american_rounding::print_trace(amount, a);
            let _ = reference_amounts::share(a, amount);
        }
    }

    /// What is printed lies within one step of what is inside.
    #[test]
    fn a_label_stays_near_the_truth(grams in 0.6..90.0_f64) {
        for line in [Line::Fat, Line::Carbohydrate, Line::Fibre, Line::Protein] {
            let printed = european_rounding::print(line, Mass::grams(grams)).value();
let step: f64 = if grams >= 9.95 { 1.0 } else { 0.1 };
            prop_assert!((printed - grams).abs() <= step / 2.0 + 1e-9);
        }
    }
}
