//! Exchanges: what stays, held by properties over invented formulas; what is published, held to its source; what
//! cannot be, told.

mod balance;
mod published;
mod refusals;
mod text;

use bench::exchange::{Exchanged, Unfit, Wishes, exchange};
use bench::forecast::Surroundings;
use formula::arithmetic::{mixture, overall};
use formula::ingredient::Figure;
use formula::read::Kitchen;
use formula::source::Source;
use formula::{Book, BookText, Formula};
use quantity::{Fraction, Temperature};
use std::collections::BTreeMap;

/// An own culture of equal weights of dark rye and water, as the demo has it.
const CULTURE: &str = "[rye-culture]\ntitle = \"Ripe rye culture\"\nmade-of = { flour-rye-dark = \"50 %\", water = \"50 %\" }\nleaven = \"culture\"\nsource = \"invented\"\n";

fn book(text: &str) -> Book {
    let source = |file: &str, text: &str| (file.to_owned(), Source { file: file.into(), text: text.to_owned() });
    let files = [source("formulas/example.toml", text), source("ingredients/culture.toml", CULTURE)].into();
    Book::open(BookText { files }).value
}

fn around() -> Surroundings {
    let kitchen =
        Kitchen { room: Some(Temperature::celsius(22.0)), fridge: Some(Temperature::celsius(4.0)), ..Kitchen::assumed() };
    Surroundings::of(&kitchen)
}

/// An exchange in a formula's text; `say` is what a command line would.
fn made(text: &str, name: &str, say: &[(&str, &str)]) -> Result<(Formula, Exchanged), Unfit> {
    let book = book(text);
    let before = book.formula("example").expect("the example").value;
    exchange(name, &book, "example", &around(), &wishes(say)).map(|after| (before, after))
}

fn wishes(say: &[(&str, &str)]) -> Wishes {
    let of = |name: &str| say.iter().find(|(key, _)| *key == name).map(|(_, text)| (*text).to_owned());
    let number = |name: &str| of(name).map(|text| text.parse::<f64>().expect("a number"));
    Wishes {
        of: of("of"),
        stage: of("stage"),
        into: of("into"),
        from: of("from"),
        share: number("share").map(Fraction::percent),
        hydration: number("hydration").map(Fraction::percent),
        time: number("hours").map(quantity::TimeSpan::hours),
        altitude: number("feet").map(|feet| quantity::Length::metres(feet * 0.3048)),
        count: number("count"),
    }
}

/// What the overall formula of the main component holds, in gram by ingredient.
fn weighed(formula: &Formula) -> BTreeMap<String, f64> {
    let rows = overall(formula, 0).rows;
    let named = rows.iter().filter_map(|row| Some((row.kind.ingredient()?.name.clone(), row.mass.as_grams())));
    named.fold(BTreeMap::new(), |mut all, (name, grams)| {
        *all.entry(name).or_insert(0.0) += grams;
        all
    })
}

fn total(formula: &Formula) -> f64 {
    overall(formula, 0).total.as_grams()
}

/// How much of something the main component holds, plain water as water.
fn held(formula: &Formula, figure: Figure) -> f64 {
    mixture(formula, 0).total(figure).0
}

/// Within what is lost by writing a few figures with two decimals.
#[track_caller]
fn close(got: f64, wanted: f64, off: f64, what: &str) {
    assert!((got - wanted).abs() <= off, "{what}: {got} instead of {wanted}");
}

/// Every ingredient but these weighs what it did.
#[track_caller]
fn same_but(before: &Formula, after: &Formula, but: &[&str]) {
    let (before, after) = (weighed(before), weighed(after));
    for name in before.keys().chain(after.keys()).filter(|name| !but.contains(&name.as_str())) {
        let of = |all: &BTreeMap<String, f64>| all.get(name).copied().unwrap_or(0.0);
        close(of(&after), of(&before), 0.03, name);
    }
}
