//! Any bytes as a file of a book: read, bound, worked out, scaled, judged, foreseen, laid out; nothing may panic or hang.

#![no_main]

use bench::calibration::{Logged, learn};
use bench::forecast::{Surroundings, foresee};
use bench::label::{Law, Sold, label};
use bench::rules::judge;
use formula::arithmetic::{Target, blend, factor, figures, mixture, overall, scaled, weighed};
use formula::source::Source;
use formula::{Book, BookText, Checked, Diagnostic, Formula, Severity};
use libfuzzer_sys::fuzz_target;
use publish::page::{Leaf, formula_page, index_page, ingredients_page, tags_page};
use publish::site::Card;
use quantity::{Count, Mass};
use std::collections::BTreeMap;

/// Calls an ingredient and a formula that may be under test.
const SIMPLE: &str = include_str!("simple.toml");
/// Calls a row of readings under test.
const TRIAL: &str =
    "title = \"x\"\nformula = \"x\"\ndate = 2026-11-02\n[[rise]]\nstage = \"dough\"\nstep = \"bulk\"\ncourse = \"x.csv\"\n";

/// The files of a book, of which the first byte chooses one; tools/fuzz.sh says the same of its seeds.
const FILES: [&str; 10] = [
    "book.toml",
    "ingredients/x.toml",
    "kitchens/x.toml",
    "trials/x.toml",
    "trials/x.csv",
    "kitchens/x.csv",
    "formulas/x.toml",
    "prices.toml",
    "larder.toml",
    "tastings/x.toml",
];

fuzz_target!(|bytes: &[u8]| {
    let Some((first, rest)) = bytes.split_first() else { return };
    let file = FILES[usize::from(*first) % FILES.len()];
    let read = Source::from_bytes(file, rest.to_vec());
    assert!(read.value.is_some() || !read.diagnostics.is_empty(), "a file was refused without a word");
    let Some(source) = read.value else { return };
    let mut files = around(file);
    files.insert(file.to_owned(), source);
    let texts = files.clone();
    let book = Book::open(BookText { files });
    check_places(&texts, &book);
    let mut formulas = BTreeMap::new();
    for name in book.value.formulas.keys() {
        let Some(made) = book.value.formula(name) else { continue };
        check_places(&texts, &made);
        let misplaced = book.value.misplaced(&made.value).collect();
        check_places(&texts, &Checked { value: (), diagnostics: misplaced });
        work_out(&made.value);
        if made.diagnostics.iter().all(|found| found.severity < Severity::Error) {
            formulas.insert(name.clone(), made.value);
        }
    }
    // Following a ferment and an oven takes longer than all the rest: only what the file under test can change.
    let changed = match book.value.trials.iter().find(|trial| formulas.contains_key(&trial.formula.value)) {
        Some(trial) => &trial.formula.value,
        None if file.starts_with("ingredients/") => "simple",
        None => "x",
    };
    in_the_kitchen(&texts, &book.value, changed, &formulas);
});

/// What stands around the file under test, without faults of its own: what it may call, and what calls it.
fn around(file: &str) -> BTreeMap<String, Source> {
    let logged = [
        ("trials/y.toml", TRIAL),
        ("formulas/potato-muffins.toml", include_str!("../../examples/saltmarsh/formulas/potato-muffins.toml")),
        ("ingredients/mill.toml", include_str!("../../examples/saltmarsh/ingredients/mill.toml")),
        ("kitchens/estuary.toml", include_str!("../../examples/saltmarsh/kitchens/estuary.toml")),
    ];
    let always = [
        ("formulas/simple.toml", SIMPLE),
        ("formulas/x.toml", include_str!("plain.toml")),
        ("ingredients/x.toml", "[x]\nlike = \"water\"\n"),
        ("kitchens/x.toml", "title = \"x\"\nroom-log = \"x.csv\"\n"),
        ("kitchens/x.csv", "time,temperature\n2026-11-03 00:00,12.8\n2026-11-03 12:00,19\n2026-11-04 00:00,14\n"),
    ];
    let logged = logged.into_iter().filter(|(other, _)| match *other {
        "trials/y.toml" => file == "trials/x.csv",
        _ => file.starts_with("trials/"),
    });
    let put = |(file, text): (&str, &str)| (file.to_owned(), Source { file: file.into(), text: text.to_owned() });
    always.into_iter().chain(logged).map(put).collect()
}

/// What bench and publish make of formulas without errors, as the commands ask for it.
fn in_the_kitchen(texts: &BTreeMap<String, Source>, book: &Book, changed: &str, formulas: &BTreeMap<String, Formula>) {
    let kitchen = book.kitchen();
    let units = publish::Units::of(&book.settings);
    let logged = book.trials.iter().filter_map(|trial| {
        Some(Logged { trial, formula: formulas.get(&trial.formula.value)?, kitchen: book.kitchen_of(trial) })
    });
    let logged: Vec<Logged> = logged.collect();
    let surroundings = Surroundings::of(&kitchen).taught(learn(&logged).calibration);
    if let Some(formula) = formulas.get(changed) {
        let judged = judge(formula, &kitchen, &book.settings);
        check_places(texts, &Checked { value: (), diagnostics: judged.found });
        let foreseen = foresee(formula, &surroundings);
        let _ = publish::outlook::text(formula, &foreseen, units, 80);
        let _ = publish::outlook::json(formula, &foreseen);
        for law in Law::ALL {
            if let Some(label) = label(formula, &book.settings, law, &Sold::default()) {
                let _ = publish::label::text(&label, 80);
                let _ = publish::label::json(&label);
                let _ = publish::label::html(&[label], &book.settings);
            }
        }
        if let Some(cost) = bench::cost::cost(formula, &foreseen, &book.prices, &book.settings) {
            let sale = bench::cost::prices(&cost, &book.prices.wanted, None);
            let history = bench::cost::history(formula, &book.prices);
            let costing = publish::costing::Costing { title: &formula.head.title, piece: "piece", cost, sale, history, paid: Vec::new() };
            let _ = publish::costing::text(&costing, 80);
            let _ = publish::costing::json(&costing);
        }
        let sheet = publish::sheet::sheet(formula, &kitchen, &book.settings);
        let _ = publish::sheet::text(&sheet, 80);
        let _ = publish::sheet::json(&sheet);
    }
    let all: Vec<Formula> = formulas.values().cloned().collect();
    let leaf = Leaf::alone(&book.settings);
    for formula in &all {
        let _ = formula_page(formula, &leaf);
    }
    let cards: Vec<Card> = all.iter().map(|one| Card::of(one, &book.settings)).collect();
    let cards: Vec<&Card> = cards.iter().collect();
    let _ = (index_page(&cards, &book.settings), tags_page(&cards, &book.settings), ingredients_page(&cards, &book.settings));
}

/// Every fault must lie in a file that was given, and begin and end between letters.
fn check_places<T>(texts: &BTreeMap<String, Source>, checked: &Checked<T>) {
    let whole = |place: &formula::Place| {
        let text = &texts[&*place.file].text;
        text.get(place.span.clone()).is_some()
    };
    for found in &checked.diagnostics {
        assert!(whole(&found.place), "{} lies outside its file: {:?}", found.code, found.place);
        assert!(edits(found).all(|edit| whole(&edit.place)), "{} mends outside its file: {:?}", found.code, found.fix);
    }
}

fn edits(found: &Diagnostic) -> impl Iterator<Item = &formula::Edit> {
    found.fix.iter().flat_map(|fix| &fix.edits)
}

fn work_out(formula: &Formula) {
    for component in 0..formula.components.len() {
        let whole = overall(formula, component);
        let _ = figures(&whole);
        let _ = mixture(formula, component);
        let _ = weighed(formula, component);
    }
    let _ = blend(formula);
    let targets = [
        Target::Pieces(Count::pieces(7.0), Some(Mass::grams(80.0))),
        Target::Total(Mass::kilograms(3.0)),
        Target::Done(Mass::kilograms(3.0)),
        Target::Flour(Mass::grams(736.0)),
        Target::AtHand("egg-whole".to_owned(), Mass::grams(150.0)),
        Target::Factor(2.4),
    ];
    for target in &targets {
        if let Ok(factor) = factor(formula, target) {
            let large = scaled(formula, factor, Some(Mass::grams(90.0)));
            for component in 0..large.components.len() {
                let _ = figures(&overall(&large, component));
            }
        }
    }
}
