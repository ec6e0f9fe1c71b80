//! Several figures at once: exact where one line alone answers, nearest where several could, and a quarrel named.

use super::{RICH, after, close, solved, work_out};
use bench::target::Amount;
use formula::arithmetic::{figures, overall};
use proptest::prelude::*;

/// One line alone brings salt: exact algebra, and no other line is touched.
#[test]
fn salt_alone() {
    let formula = after(RICH, "reformulate", &[("aim", "salt=2")]);
    for ((_, was), (_, now)) in work_out(RICH).lines().zip(formula.lines()) {
        let wanted = if was.name == "salt" { 10.0 } else { was.mass.value.as_grams() };
        close(now.mass.value.as_grams(), wanted, 1e-3, &was.name);
    }
}

/// Exact algebra: water to a nominal 26 % of 500 g, fat and sugars by butter and sugar together.
#[test]
fn several_at_once() {
    let say = [("aim", "hydration=26"), ("aim", "fat=11"), ("aim", "sugars=11"), ("aim", "salt=1.9"), ("within", "30")];
    let answer = solved(RICH, "reformulate", &say).expect("an answer");
    assert!(answer.unmet.is_empty(), "{:?}", answer.unmet);
    let sheet = figures(&overall(&answer.changed.expect("a change").formula, 0)).expect("flour");
    close(sheet.nominal_hydration.as_percent(), 26.0, 0.01, "hydration");
    close(sheet.fat.value.as_percent(), 11.0, 0.01, "fat");
    close(sheet.sugars.value.as_percent(), 11.0, 0.01, "sugars");
    close(sheet.salt.as_percent(), 1.9, 0.01, "salt");
}

/// Water is held by the bound of a tenth: 120 g reach 132 g, which is 26.4 %.
#[test]
fn out_of_reach_by_itself() {
    let answer = solved(RICH, "reformulate", &[("aim", "hydration=40"), ("within", "10")]).expect("an answer");
    let [unmet] = &answer.unmet[..] else { panic!("{:?}", answer.unmet) };
    let Amount::Share(reached) = unmet.reached else { panic!("{unmet:?}") };
    close(reached.as_percent(), 26.4, 1e-4, "the nearest");
    assert!(unmet.why.contains("by itself") && unmet.why.contains("water"), "{}", unmet.why);
}

/// All fat of egg, milk and butter cannot go down while egg goes up by all that is allowed, each alone can.
#[test]
fn a_quarrel_is_named() {
    let milk_alone = RICH
        .replace("\"76 g\"", "\"60 g\"")
        .replace("water = \"120 g\"\n", "")
        .replace("{water}, ", "")
        .replace("butter-unsalted = \"60 g\"\n", "")
        .replace("{butter-unsalted}, ", "");
    let say = [("aim", "egg=11.5"), ("aim", "fat=1.55"), ("aim", "salt=1.8"), ("within", "20")];
    let answer = solved(&milk_alone, "reformulate", &say).expect("an answer");
    assert_eq!(answer.unmet.len(), 1, "{:?}", answer.unmet);
    let unmet = &answer.unmet[0];
    let other = if unmet.aim == "fat" { "egg" } else { "fat" };
    assert!(unmet.why.contains(&format!("stands against {other}")) && !unmet.why.contains("salt"), "{}", unmet.why);
}

/// What is kept stays, and a spice is never moved.
#[test]
fn what_is_kept_stays() {
    let formula = after(RICH, "reformulate", &[("aim", "fat=13"), ("keep", "egg-whole"), ("keep", "milk-whole")]);
    for name in ["egg-whole", "milk-whole", "cinnamon", "yeast-instant"] {
        let mass =
            |formula: &formula::Formula| formula.lines().find(|(_, line)| line.name == name).expect(name).1.mass.value.as_grams();
        close(mass(&formula), mass(&work_out(RICH)), 1e-9, name);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]
    /// Whatever is asked: every line stays within its bound, but for rounding to a hundredth of a gram, all flour stays, and each figure is what is told.
    #[test]
    fn bounds_hold(salt in 1.4..2.4_f64, fat in 8.0..16.0_f64, water in 35.0..65.0_f64, within in 3.0..40.0_f64) {
        let (salt, fat, water) = (format!("salt={salt:.2}"), format!("fat={fat:.2}"), format!("true-hydration={water:.1}"));
        let answer = solved(RICH, "reformulate", &[("aim", &salt), ("aim", &fat), ("aim", &water), ("within", &format!("{within:.1}"))]).expect("an answer");
        let Some(changed) = answer.changed.as_ref() else { return Ok(()) };
        for ((_, was), (_, now)) in work_out(RICH).lines().zip(changed.formula.lines()) {
            let change = (now.mass.value / was.mass.value - 1.0).abs() * 100.0;
            prop_assert!(change <= (within * 10.0).round() / 10.0 + 0.6 / was.mass.value.as_grams(), "{} by {change} %", was.name);
        }
        let whole = overall(&changed.formula, 0);
        prop_assert!((whole.total_flour.as_grams() - 500.0).abs() < 0.02);
        let sheet = figures(&whole).expect("flour");
        for (name, got) in [("salt", sheet.salt), ("fat", sheet.fat.value), ("true-hydration", sheet.true_hydration.value)] {
            prop_assert!((super::figure(&answer, &format!("{name} then")) - got.as_percent()).abs() < 0.01, "{name}");
        }
    }
}
