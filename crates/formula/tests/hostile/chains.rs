//! Stages, formulas and ingredients that lead to others: very far, very often, or back.

use crate::{Outcome, open, open_formula};
use std::fmt::Write;

fn chain(count: usize, link: impl Fn(usize) -> String) -> String {
    (0..count).fold(String::from("title = \"x\"\n[[component]]\nname = \"c\"\n"), |mut text, number| {
        let _ = writeln!(
            text,
            "[[component.stage]]\nname = \"s{number}\"\nkind = \"mixed\"\n[component.stage.ingredients]\n{}",
            link(number)
        );
        text
    })
}

#[track_caller]
fn made_of_last(outcome: &Outcome) -> f64 {
    let stage = outcome.formulas["x"].components[0].stages.last().expect("a stage");
    stage.made().as_grams()
}

#[test]
fn nine_hundred_stages_each_using_the_former() {
    let text =
        chain(900, |n| if n == 0 { "water = \"1 g\"".to_owned() } else { format!("s{} = \"all\"\nwater = \"1 g\"", n - 1) });
    assert_eq!(made_of_last(&open_formula(&text)), 900.0);
}

#[test]
fn nine_hundred_stages_each_using_the_next() {
    let text =
        chain(900, |n| if n == 899 { "water = \"1 g\"".to_owned() } else { format!("s{} = \"all\"\nwater = \"1 g\"", n + 1) });
    let outcome = open_formula(&text);
    assert_eq!(outcome.formulas["x"].components[0].stages[0].made().as_grams(), 900.0);
}

#[test]
fn five_thousand_stages_each_sized_by_its_use_in_the_next() {
    let text = chain(5000, |n| match n {
        0 => "flour-strong-white = \"100 %\"".to_owned(),
        4999 => "s4998 = \"10 g\"\nwater = \"1 g\"".to_owned(),
        n => format!("s{} = \"50 %\"\nflour-strong-white = \"100 %\"", n - 1),
    });
    open_formula(&text).said_briefly();
}

#[test]
fn one_stage_used_five_thousand_times() {
    let once = chain(5000, |n| if n == 0 { "water = \"5 kg\"".to_owned() } else { "s0 = \"1 g\"".to_owned() });
    open_formula(&once).said_briefly();
    let lines = (0..5000).fold(String::new(), |mut lines, n| {
        let _ = writeln!(lines, "l{n} = {{ stage = \"s0\", amount = \"1 g\" }}");
        lines
    });
    let together = chain(2, |n| if n == 0 { "water = \"5 kg\"".to_owned() } else { lines.clone() });
    assert!((made_of_last(&open_formula(&together)) - 5000.0).abs() < 1e-6);
}

#[test]
fn every_stage_uses_all_former_ones() {
    let text = chain(140, |n| {
        let lines: String = (0..n).fold(String::new(), |mut lines, k| {
            let _ = writeln!(lines, "s{k} = \"a fifth\"");
            lines
        });
        format!("{lines}water = \"1 g\"")
    });
    open_formula(&text).said_briefly();
}

#[test]
fn circles_of_stages() {
    open_formula(&chain(2, |n| format!("s{} = \"all\"", 1 - n))).refused_as("circular-stages");
    open_formula(&chain(900, |n| format!("s{} = \"all\"", (n + 1) % 900))).refused_as("circular-stages").said_briefly();
    let all_back_to_the_first = chain(1000, |n| match n {
        0 => "s1 = \"all\"".to_owned(),
        n => format!("s{} = \"all\"\ns0 = \"1 g\"", (n + 1) % 1000),
    });
    open_formula(&all_back_to_the_first).refused_as("circular-stages").said_briefly();
    open_formula(&chain(1, |_| "s = { stage = \"s0\", amount = \"all\" }".to_owned())).refused_as("unknown-stage");
}

fn formula_using(other: &str) -> Vec<u8> {
    let name = other.trim_start_matches("formulas/").trim_end_matches(".toml");
    format!(
        "title = \"x\"\n[[component]]\nname = \"c\"\n[[component.stage]]\nname = \"s\"\nkind = \"mixed\"\n[component.stage.ingredients]\nwater = \"1 g\"\n\
         other = {{ formula = \"{name}\", amount = \"1 g\" }}"
    )
    .into_bytes()
}

#[test]
fn circles_of_formulas() {
    open(&[("formulas/a.toml", formula_using("a"))]).refused_as("circular-formulas");
    open(&[("formulas/a.toml", formula_using("b")), ("formulas/b.toml", formula_using("a"))]).refused_as("circular-formulas");
    for (size, code) in [(30, "circular-formulas"), (300, "nested-too-deep")] {
        let names: Vec<String> = (0..size).map(|n| format!("formulas/f{n}.toml")).collect();
        let circle: Vec<(&str, Vec<u8>)> =
            (0..size).map(|n| (names[n].as_str(), formula_using(&names[(n + 1) % size]))).collect();
        open(&circle).refused_as(code).said_briefly();
    }
}

#[test]
fn a_formula_that_leads_to_a_circle_is_no_part_of_it() {
    let circle = [
        ("formulas/a.toml", formula_using("b")),
        ("formulas/b.toml", formula_using("c")),
        ("formulas/c.toml", formula_using("b")),
    ];
    let outcome = open(&circle);
    let messages: Vec<&str> =
        outcome.said.iter().filter(|found| found.code == "circular-formulas").map(|found| found.message.as_str()).collect();
    assert_eq!(messages.len(), 3, "{messages:?}");
    assert!(messages.iter().all(|message| message.ends_with("b → c → b")), "{messages:?}");
}

#[test]
fn a_thousand_formulas_each_using_the_next() {
    let names: Vec<String> = (0..1000).map(|n| format!("formulas/f{n:04}.toml")).collect();
    let line: Vec<(&str, Vec<u8>)> = (0..999).map(|n| (names[n].as_str(), formula_using(&names[n + 1]))).collect();
    open(&line).refused_as("nested-too-deep").said_briefly();
}

#[test]
fn the_longest_chain_of_formulas_does_not_depend_on_which_is_asked_for_first() {
    let water = b"title = \"x\"\n[[component]]\nname = \"c\"\n[[component.stage]]\nname = \"s\"\nkind = \"mixed\"\n[component.stage.ingredients]\nwater = \"1 g\"";
    for reversed in [0, 39] {
        let names: Vec<String> = (0..40_usize).map(|n| format!("formulas/f{:02}.toml", n.abs_diff(reversed))).collect();
        let uses = |n: usize| if n == 39 { water.to_vec() } else { formula_using(&names[n + 1]) };
        let files: Vec<(&str, Vec<u8>)> = (0..40).map(|n| (names[n].as_str(), uses(n))).collect();
        let outcome = open(&files);
        let too_deep = outcome.said.iter().filter(|found| found.code == "nested-too-deep").count();
        // Of 40 in a row, the last 32 have at most 32 formulas from them down.
        assert_eq!(too_deep, 8, "{:?}", outcome.codes());
    }
}

#[test]
fn circles_of_ingredients() {
    let files = [
        "[a]\nlike = \"b\"\n[b]\nlike = \"a\"",
        "[a]\nmade-of = { b = \"50 %\" }\n[b]\nmade-of = { a = \"50 %\" }",
        "[a]\nlike = \"b\"\n[b]\nmade-of = { a = \"50 %\" }",
        "[a]\nlike = \"a\"",
        "[a]\nmade-of = { a = \"100 %\" }",
    ];
    for text in files {
        let formula = b"[[component]]\nname = \"c\"\n[[component.stage]]\nname = \"s\"\nkind = \"mixed\"\n[component.stage.ingredients]\na = \"1 g\"";
        open(&[("ingredients/x.toml", text.as_bytes().to_vec()), ("formulas/x.toml", formula.to_vec())])
            .refused_as("circular-ingredients");
    }
}

fn ingredients(count: usize, row: impl Fn(usize) -> String) -> Vec<u8> {
    let rows = (0..count).fold(String::new(), |mut text, number| {
        let _ = writeln!(text, "{}", row(number));
        text
    });
    rows.into_bytes()
}

#[test]
fn thirty_thousand_ingredients_each_like_the_next() {
    open(&[("ingredients/x.toml", ingredients(30_000, |n| format!("[i{n}]\nlike=\"i{}\"", n + 1)))]).said_briefly();
}

#[test]
fn fifteen_thousand_ingredients_each_made_of_the_next() {
    let rows = ingredients(15_000, |n| format!("[i{n}]\nmade-of={{i{}=\"100 %\"}}", n + 1));
    let formula = b"[[component]]\nname = \"c\"\n[[component.stage]]\nname = \"s\"\nkind = \"mixed\"\n[component.stage.ingredients]\ni0 = \"1 g\"";
    open(&[("ingredients/x.toml", rows), ("formulas/x.toml", formula.to_vec())]).said_briefly();
}

#[test]
fn ingredients_that_double_at_every_level() {
    let rows = ingredients(60, |n| {
        let below = format!("made-of = {{ a{0} = \"50 %\", b{0} = \"50 %\" }}", n + 1);
        format!("[a{n}]\n{below}\n[b{n}]\n{below}")
    });
    let formula = b"[[component]]\nname = \"c\"\n[[component.stage]]\nname = \"s\"\nkind = \"mixed\"\n[component.stage.ingredients]\na0 = \"1 g\"";
    open(&[("ingredients/x.toml", rows), ("formulas/x.toml", formula.to_vec())]).said_briefly();
}
