//! What a formula costs, by worked figures and exact shares.

use crate::book;
use bench::cost::{Cost, cost, there_already};
use bench::forecast::forecast;
use quantity::{Count, Mass};
use rust_decimal::Decimal;

const FORMULA: &str = "title = \"Flat bread\"\n[[component]]\nname = \"bread\"\n[component.yield]\npieces = 4\n[[component.stage]]\nname = \"dough\"\nkind = \"final-mix\"\n\
    [component.stage.ingredients]\nflour-bread = \"500 g\"\nwater = \"300 g\"\nsalt = \"10 g\"\negg-whole = 1\n\
    [[component.stage.step]]\naction = \"mix\"\ntext = \"Mix {flour-bread}, {water}, {salt}, {egg-whole}.\"\ntime = \"30 min\"\n";

fn costs(prices: &str) -> Cost {
    let book = book(&[("formulas/flat.toml", FORMULA), ("prices.toml", prices)]);
    let formula = book.formula("flat").expect("the bread").value;
    cost(&formula, &forecast(&formula, &book.kitchen()), &book.prices, &book.settings).expect("there are prices")
}

fn decimal(text: &str) -> Decimal {
    text.parse().expect("a decimal")
}

/// 500 g of 1.5 kg for 1.50 are 0.50; 10 g of 1 kg for 0.80 are 0.008; one egg of ten for 3.20 is 0.32.
#[test]
fn shares_of_packs_are_exact() {
    let price = |of: &str, pack: &str, costs: &str| format!("[[price]]\nof = \"{of}\"\npack = {pack}\ncosts = \"{costs} EUR\"\n");
    let prices =
        price("flour-bread", "\"1.5 kg\"", "1.50") + &price("salt", "\"1 kg\"", "0.80") + &price("egg-whole", "10", "3.20");
    let costs = costs(&prices);
    let of = |title: &str| costs.items.iter().find(|item| item.title.contains(title)).map(|item| item.costs.round_dp(4));
    assert_eq!(of("flour"), Some(decimal("0.5000")));
    assert_eq!(of("salt"), Some(decimal("0.0080")));
    assert!((of("egg").expect("the egg") - decimal("0.32")).abs() < decimal("0.03"), "{:?}", of("egg"));
    assert_eq!(costs.items[0].title, "bread flour");
    // Water is not missed; the work and nothing else is.
    assert_eq!(costs.missing, ["an hour of work"]);
}

/// Half an hour at 20.00 is 10.00; the later of two prices counts, wherever it stands.
#[test]
fn the_latest_price_counts_and_hands_are_paid() {
    let prices = "hour = \"20 EUR\"\n[[price]]\nof = \"flour-bread\"\npack = \"1 kg\"\ncosts = \"2.00 EUR\"\non = 2026-10-02\n\
        [[price]]\nof = \"flour-bread\"\npack = \"1 kg\"\ncosts = \"1.00 EUR\"\non = 2026-03-01\n";
    let costs = costs(prices);
    assert_eq!(costs.items[0].costs, decimal("1.00"));
    assert_eq!(costs.work.1, Some(decimal("10.00")));
    assert_eq!(costs.total(), decimal("11.00"));
    assert_eq!(costs.missing.len(), 2, "{:?}", costs.missing);
}

/// 120 g of 500 g of flour are there whatever the pack; three eggs of one are enough; a quarter of a litre of oil at
/// 0.92 g/ml is more than 200 g (density of sunflower oil at room temperature: 0.92, Codex Alimentarius standard 210).
#[test]
fn what_is_there_is_not_bought() {
    let larder =
        "on = 2026-11-25\n[holds]\nflour-bread = \"120 g\"\negg-whole = 3\noil-sunflower = \"250 ml\"\nquince = \"500 g\"\n";
    let book = book(&[("formulas/flat.toml", FORMULA), ("larder.toml", larder)]);
    let there = |name: &str, grams: f64, pieces: Option<f64>| {
        let ingredient = book.pantry.find(name).expect("an ingredient");
        there_already(ingredient, Mass::grams(grams), pieces.map(Count::pieces), &book.larder).as_grams()
    };
    assert!((there("flour-bread", 500.0, None) - 120.0).abs() < 1e-9);
    assert_eq!(there("egg-whole", 52.0, Some(1.0)), 52.0);
    assert!((there("egg-whole", 208.0, Some(4.0)) - 156.0).abs() < 1e-9, "three of four, whatever they weigh");
    assert_eq!(there("oil-sunflower", 200.0, None), 200.0);
    assert!(there("oil-sunflower", 250.0, None) < 240.0);
    assert!(there("quince", 600.0, None) < 500.0, "500 g of quince with its core");
    assert_eq!(there("salt", 10.0, None), 0.0);
}
