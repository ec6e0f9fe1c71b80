//! Targets: what is found, put back, gives what was asked; published doses and exact algebra; what cannot be, told.

mod clock;
mod dose;
mod price;
mod put_back;
mod reformulate;
mod refusals;

use bench::exchange::Unfit;
use bench::forecast::Surroundings;
use bench::target::{Amount, Asked, Solved, solve};
use formula::read::Kitchen;
use formula::source::Source;
use formula::{Book, BookText, Formula};
use quantity::{Fraction, Money, Temperature};
use rust_decimal::prelude::ToPrimitive;

/// A straight dough with two flours, milk, egg, butter and sugar.
const RICH: &str = "title = \"Rich\"\n[[component]]\nname = \"buns\"\n[component.yield]\npieces = 12\nscaling-weight = \"76 g\"\n[[component.stage]]\nname = \"dough\"\nkind = \"final-mix\"\n\
    [component.stage.ingredients]\nflour-bread = \"400 g\"\nflour-cake = \"100 g\"\nwater = \"120 g\"\nmilk-whole = \"120 g\"\negg-whole = \"50 g\"\nbutter-unsalted = \"60 g\"\nsugar-caster = \"50 g\"\nsalt = \"9 g\"\nyeast-instant = \"5 g\"\ncinnamon = \"1 g\"\n\
    [[component.stage.step]]\naction = \"knead\"\ntext = \"Knead {flour-bread}, {flour-cake}, {water}, {milk-whole}, {egg-whole}, {butter-unsalted}, {sugar-caster}, {salt}, {yeast-instant}, {cinnamon}.\"\ntime = \"10 min\"\ntemperature = \"25 °C\"\n\
    [[component.stage.step]]\naction = \"bulk\"\nattention = \"waiting\"\ntext = \"Leave for {time}, {until}.\"\ntime = \"90 min\"\nuntil = \"doubled\"\n";

/// A poolish of equal weights.
const POOLISH: &str = "title = \"Poolish\"\n[[component]]\nname = \"poolish\"\n[[component.stage]]\nname = \"poolish\"\nkind = \"poolish\"\n\
    [component.stage.ingredients]\nflour-bread = \"500 g\"\nwater = { amount = \"100 %\", temperature = \"21 °C\" }\nyeast-instant = \"0.5 %\"\n\
    [[component.stage.step]]\naction = \"mix\"\ntext = \"Mix {flour-bread}, {water} and {yeast-instant}.\"\ntime = \"5 min\"\n\
    [[component.stage.step]]\naction = \"ferment\"\nattention = \"waiting\"\ntext = \"Leave for {time}, {until}.\"\ntime = \"5 h\"\ntemperature = \"21 °C\"\nuntil = \"ripe\"\n";

/// 400 g of sugar in 600 g of water, boiled down.
const SYRUP: &str = "title = \"Syrup\"\n[[component]]\nname = \"syrup\"\n[[component.stage]]\nname = \"syrup\"\nkind = \"cooked\"\nboil-off = \"20 %\"\n\
    [component.stage.ingredients]\nwater = \"600 g\"\nsugar-granulated = \"400 g\"\n\
    [[component.stage.step]]\naction = \"reduce\"\ntext = \"Boil {water} and {sugar-granulated} for {time}, {until}.\"\ntime = \"15 min\"\nuntil = \"50 Brix\"\n\
    [[component.stage.step]]\naction = \"cool\"\nattention = \"waiting\"\ntext = \"Leave for {time}, {until}.\"\ntime = \"60 min\"\nuntil = \"40 °C\"\n";

fn book(text: &str) -> Book {
    let files =
        [("formulas/example.toml".to_owned(), Source { file: "formulas/example.toml".into(), text: text.to_owned() })].into();
    Book::open(BookText { files }).value
}

fn work_out(text: &str) -> Formula {
    let checked = book(text).formula("example").expect("the example");
    let errors: Vec<_> = checked.diagnostics.iter().filter(|d| d.severity == formula::Severity::Error).collect();
    assert!(errors.is_empty(), "{errors:?}");
    checked.value
}

fn around(room: f64) -> Surroundings {
    let kitchen =
        Kitchen { room: Some(Temperature::celsius(room)), fridge: Some(Temperature::celsius(4.0)), ..Kitchen::assumed() };
    Surroundings::of(&kitchen)
}

/// What is asked, as a command line would say it.
fn asked(say: &[(&str, &str)]) -> Asked {
    let of = |name: &str| say.iter().find(|(key, _)| *key == name).map(|(_, text)| (*text).to_owned());
    let all = |name: &str| say.iter().filter(|(key, _)| *key == name).map(|(_, text)| (*text).to_owned()).collect::<Vec<_>>();
    let percent = |text: &str| Fraction::percent(text.parse().expect("a number"));
    let figure = |text: &str| text.parse::<Money>().map_or_else(|_| Amount::Share(percent(text)), Amount::Price);
    let aim = |text: String| text.split_once('=').map(|(name, text)| (name.to_owned(), figure(text))).expect("an aim");
    Asked {
        of: of("of"),
        stage: of("stage"),
        to: of("to"),
        with: of("with"),
        count: of("count").map(|text| text.parse().expect("a count")),
        within: of("within").map(|text| percent(&text)),
        aims: all("aim").into_iter().map(aim).collect(),
        keep: all("keep"),
        ..Asked::default()
    }
}

fn solved(text: &str, target: &str, say: &[(&str, &str)]) -> Result<Solved, Unfit> {
    solve(target, &book(text), "example", &around(22.0), &asked(say))
}

/// The formula that an answer leaves.
#[track_caller]
fn after(text: &str, target: &str, say: &[(&str, &str)]) -> Formula {
    solved(text, target, say).expect("an answer").changed.expect("a change").formula
}

/// A figure of an answer in its own unit.
#[track_caller]
fn figure(solved: &Solved, what: &str) -> f64 {
    let figure =
        solved.figures.iter().find(|one| one.what.contains(what)).unwrap_or_else(|| panic!("{what}: {:?}", solved.figures));
    match &figure.known.value {
        Amount::Mass(mass) => mass.as_grams(),
        Amount::Share(share) => share.as_percent(),
        Amount::Temperature(warm) => warm.as_celsius(),
        Amount::Time(time) | Amount::Clock(time) => time.as_hours(),
        Amount::Volume(volume) => volume.as_millilitres(),
        Amount::Count(count) => count.as_pieces(),
        Amount::Factor(factor) => *factor,
        Amount::Viscosity(thick) => thick.as_pascal_seconds(),
        Amount::Warming(by) => by.as_kelvins(),
        Amount::Price(money) => money.amount.to_f64().expect("an amount"),
    }
}

#[track_caller]
fn close(got: f64, wanted: f64, off: f64, what: &str) {
    assert!((got - wanted).abs() <= off, "{what}: {got} instead of {wanted}");
}
