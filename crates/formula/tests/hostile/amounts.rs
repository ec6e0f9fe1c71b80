//! Figures that are no figures, or too large to add up.

use crate::{open, open_formula, with_lines};

/// What TOML and people write that is no amount a scale could show.
const NO_AMOUNTS: [&str; 20] = [
    "nan", "inf", "-inf", "+inf", "-nan", "\"nan g\"", "\"inf g\"", "\"1e999 g\"", "\"-1 g\"", "\"1/0 g\"", "\"1,000 g\"", "\"--1 g\"", "true",
    "1979-05-27", "[]", "\"\"", "\" \"", "\"g\"", "-1", "1e999",
];

#[test]
fn no_amount_is_refused() {
    for amount in NO_AMOUNTS {
        let outcome = open_formula(&with_lines(&format!("flour-strong-white = {amount}")));
        let refused = ["amount-missing", "amount-negative", "amount-not-finite", "not-an-amount", "unknown-unit", "not-toml"];
        assert!(refused.iter().any(|code| outcome.codes().contains(code)), "{amount} was taken: {:?}", outcome.codes());
        for key in ["flour", "weight", "boil-off", "loss", "kept-back"] {
            open_formula(&with_lines("water = 1").replace("[component.stage.ing", &format!("{key} = {amount}\n[component.stage.ing")));
        }
        for key in ["pieces", "scaling-weight", "total", "make-up-loss", "bake-loss", "serves", "tin", "tins"] {
            open_formula(&with_lines("water = 1").replacen("[[component.stage]]", &format!("yield = {{ {key} = {amount} }}\n[[component.stage]]"), 1));
        }
        for text in ["per-100-g = { water = A }", "density = { grams-per-ml = A }", "piece = { weighs = A }", "edible = A", "made-of = { water = A }"] {
            open(&[("ingredients/x.toml", format!("[a]\n{}", text.replace('A', amount)).into_bytes())]);
        }
        for key in ["room", "fridge", "altitude"] {
            open(&[("kitchens/x.toml", format!("title = \"x\"\n{key} = {amount}\n[[scale]]\nshows = {amount}\nup-to = {amount}").into_bytes())]);
        }
    }
}

#[test]
fn nothing_of_everything_is_worked_out() {
    for nothing in ["0", "-0", "-0.0", "\"0 g\"", "\"-0 g\"", "\"0 %\"", "\"0/1 g\"", "\"0,0 g\"", "\"0-0 g\""] {
        open_formula(&with_lines(&format!("flour-strong-white = {nothing}\nwater = \"60 %\"\negg-whole = {nothing}")));
        open_formula(&with_lines(&format!("flour-strong-white = \"100 %\"\nwater = {nothing}")).replace("name = \"s\"", "name = \"s\"\nweight = \"0 g\""));
    }
}

#[test]
fn amounts_too_large_to_add_up_are_refused() {
    let large = "9".repeat(308);
    for unit in ["g", "kg", "lb", "%", "cup", ""] {
        for lines in [
            format!("flour-strong-white = \"{large} {unit}\"\nwater = \"60 %\""),
            format!("flour-strong-white = \"500 g\"\nwater = \"{large} {unit}\"\nmilk-whole = \"{large} {unit}\""),
            format!("egg-whole = \"{large} {unit}\""),
        ] {
            let outcome = open_formula(&with_lines(&lines));
            assert!(!outcome.said.is_empty());
            let lines = outcome.formulas.values().flat_map(|f| &f.components).flat_map(|c| &c.stages).flat_map(|s| &s.lines);
            for line in lines {
                assert!(line.mass.value.is_finite(), "{} weighs {:?}", line.name, line.mass.value);
            }
        }
    }
}

#[test]
fn a_time_of_a_hundred_thousand_parts_is_refused() {
    let parts = "1h".repeat(100_000);
    let minutes = format!("1d1h{}", "1min".repeat(100_000));
    for time in [parts, minutes, "1 h 30 min ".repeat(50_000)] {
        let step = format!("water = \"1 g\"\n[[component.stage.step]]\ntext = \"{{water}}\"\ntime = \"{time}\"");
        open_formula(&with_lines(&step)).refused_as("unknown-unit");
        open_formula(&with_lines(&format!("water = \"{time}\"")));
        open_formula(&with_lines(&format!("water = \"1 g\"\n[[component.stage.step]]\ntext = \"{{{time}}}\"")));
    }
}

#[test]
fn losses_and_shares_over_the_whole_are_refused() {
    for share in ["\"100 %\"", "\"101 %\"", "\"1e9 %\"", "\"9999999999999999999999 %\""] {
        for key in ["boil-off", "loss"] {
            let text = with_lines("water = \"1 kg\"").replace("[component.stage.ing", &format!("{key} = {share}\n[component.stage.ing"));
            assert!(!open_formula(&text).said.is_empty());
        }
    }
    open_formula(&with_lines("water = { amount = \"1 kg\", taken-out = \"101 %\" }")).refused_as("loss-over-whole");
    open_formula(&with_lines("water = \"1 kg\"").replace("[component.stage.ing", "kept-back = \"2 kg\"\n[component.stage.ing"));
}
