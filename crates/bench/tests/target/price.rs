//! What a piece may cost, held to sums that can be done on paper; prices are invented.

use super::{RICH, asked, close, figure};
use bench::exchange::Unfit;
use bench::forecast::Surroundings;
use bench::target::{Amount, Solved, solve};
use formula::arithmetic::{figures, overall};
use formula::read::Kitchen;
use formula::source::Source;
use formula::{Book, BookText};

/// A kilogram of flour at 2, of butter at 10, of sugar at 4; ten eggs at 5; nothing else has a price but an hour.
const PRICES: &str = "hour = \"12 EUR\"\n\
    [[price]]\nof = \"flour-bread\"\npack = \"1 kg\"\ncosts = \"2 EUR\"\n[[price]]\nof = \"flour-cake\"\npack = \"1 kg\"\ncosts = \"2 EUR\"\n\
    [[price]]\nof = \"butter-unsalted\"\npack = \"500 g\"\ncosts = \"5 EUR\"\n[[price]]\nof = \"sugar-caster\"\npack = \"2 kg\"\ncosts = \"8 EUR\"\n";

fn book(text: &str) -> Book {
    let file = |name: &str, text: &str| (name.to_owned(), Source { file: name.into(), text: text.to_owned() });
    Book::open(BookText { files: [file("formulas/example.toml", text), file("prices.toml", PRICES)].into() }).value
}

fn solved(target: &str, say: &[(&str, &str)]) -> Result<Solved, Unfit> {
    solve(target, &book(RICH), "example", &Surroundings::of(&Kitchen::assumed()), &asked(say))
}

/// On paper: 500 g of flour 1.00, 60 g of butter 0.60, 50 g of sugar 0.20: 1.80; ten minutes of hands 2.00; 3.80 in
/// all for twelve pieces.
const ALL: f64 = 3.80;

#[test]
fn what_a_piece_costs() {
    let answer = solved("price", &[("to", "0.30 EUR")]).expect("an answer");
    close(figure(&answer, "a piece before"), ALL / 12.0, 1e-6, "before");
    close(figure(&answer, "ingredients"), 1.80 / 12.0, 1e-6, "ingredients");
    close(figure(&answer, "hands"), 2.00 / 12.0, 1e-6, "hands");
}

/// 3.80 pays thirteen pieces of 0.2923, not twelve at 0.30.
#[test]
fn lighter_pieces() {
    let answer = solved("price", &[("to", "0.30 EUR")]).expect("an answer");
    close(figure(&answer, "pieces then"), 13.0, 1e-9, "pieces");
    close(figure(&answer, "a piece then"), ALL / 13.0, 1e-6, "a piece");
    let formula = answer.changed.expect("a change").formula;
    let yields = &formula.components[0].yields;
    assert_eq!(yields.pieces.map(quantity::Count::as_pieces), Some(13.0));
    let weighs = yields.scaling_weight.expect("a weight").as_grams();
    assert!(weighs * 13.0 <= yields.raw().as_grams() && (weighs + 0.1) * 13.0 > yields.raw().as_grams(), "{weighs}");
}

/// Hands are shared: 0.15 of ingredients and 2.00 among 20 is 0.25.
#[test]
fn a_larger_batch() {
    let answer = solved("price", &[("to", "0.2501 EUR"), ("of", "batch")]).expect("an answer");
    close(figure(&answer, "pieces then"), 20.0, 1e-9, "pieces");
    assert!(answer.changed.is_none());
}

/// 12 × 0.30 = 3.60: 0.20 less, which is 20 g of butter at 10 a kilogram.
#[test]
fn one_line() {
    let answer = solved("price", &[("to", "0.30 EUR"), ("of", "butter-unsalted")]).expect("an answer");
    close(figure(&answer, "butter then"), 40.0, 0.011, "butter");
    close(figure(&answer, "a piece then"), 0.30, 1e-4, "a piece");
    let formula = answer.changed.expect("a change").formula;
    let butter = formula.lines().find(|(_, line)| line.name == "butter-unsalted").expect("butter");
    close(butter.1.mass.value.as_grams(), 40.0, 0.011, "in the text");
}

/// Fat and price at once: butter and sugar alone are dear, so that both answers are exact.
#[test]
fn a_price_among_other_aims() {
    let say = [("aim", "price=0.31 EUR"), ("aim", "fat=11.6"), ("within", "40")];
    let answer = solved("reformulate", &say).expect("an answer");
    assert!(answer.unmet.is_empty(), "{:?}", answer.unmet);
    let formula = answer.changed.expect("a change").formula;
    let grams = |name: &str| formula.lines().find(|(_, line)| line.name == name).expect(name).1.mass.value.as_grams();
    let costs = 1.00 + grams("butter-unsalted") * 0.010 + grams("sugar-caster") * 0.004 + 2.00;
    close(costs / 12.0, 0.31, 1e-4, "price");
    close(figures(&overall(&formula, 0)).expect("flour").fat.value.as_percent(), 11.6, 0.01, "fat");
}

/// Butter and sugar may go down by a tenth, 0.08 in all: 3.72 among twelve is 0.31.
#[test]
fn a_price_out_of_reach() {
    let answer = solved("reformulate", &[("aim", "price=0.20 EUR"), ("within", "10")]).expect("an answer");
    let [unmet] = &answer.unmet[..] else { panic!("{:?}", answer.unmet) };
    let Amount::Price(reached) = &unmet.reached else { panic!("{unmet:?}") };
    assert_eq!(reached.amount.round_dp(6).normalize().to_string(), "0.31");
    assert!(unmet.why.contains("butter") && unmet.why.contains("sugar"), "{}", unmet.why);
}

#[test]
fn what_cannot_be_is_told_why() {
    for (target, say, words, hint) in [
        ("price", vec![], "--to, what a piece may cost", "0.60 EUR"),
        ("price", vec![("to", "0.30")], "--to", "not money"),
        ("price", vec![("to", "0.30 USD")], "the book's currency", "0.30 EUR"),
        ("price", vec![("to", "-1 EUR")], "nothing is made for nothing", ""),
        ("price", vec![("to", "0.01 EUR")], "would weigh less than 25", ""),
        ("price", vec![("to", "0.10 EUR"), ("of", "batch")], "ingredients 0.15", ""),
        ("price", vec![("to", "0.30 EUR"), ("of", "salt")], "has no price", ""),
        ("price", vec![("to", "0.30 EUR"), ("of", "saffron")], "no line with a price", "butter-unsalted"),
        ("price", vec![("to", "0.10 EUR"), ("of", "butter-unsalted")], "by that line alone", ""),
        ("reformulate", vec![("aim", "price=2")], "--aim in the book's money", "EUR"),
        ("reformulate", vec![("aim", "price=2 USD")], "--aim in the book's money", "EUR"),
        ("reformulate", vec![("aim", "salt=2 EUR")], "a share of all flour", "salt"),
    ] {
        let why = solved(target, &say).expect_err(target);
        assert!(why.to_string().contains(words), "{target} {say:?}: {why}");
        assert!(why.hint().contains(hint), "{target} {say:?}: {}", why.hint());
    }
}
