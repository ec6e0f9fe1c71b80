//! Blind tastings: tables laid evenly, answers read, published examples analysed, power against simulation.

mod answers;
mod laid;
mod power;
mod published;
mod since;

use bench::tasting::{Findings, Seat, Sheet, find, items, lay};
use formula::read::{Tasting, read_tasting};
use formula::source::Source;

/// A tasting of so many samples.
fn tasting(method: &str, samples: usize, more: &str) -> Tasting {
    let mut text = format!("title = \"A tasting\"\nmethod = \"{method}\"\nquestion = \"Which?\"\n{more}\n");
    for sample in 0..samples {
        text.push_str(&format!("[[sample]]\nname = \"s{sample}\"\nformula = \"bread\"\n"));
    }
    if method == "description" {
        text.push_str("[[attribute]]\nname = \"softness\"\nlow = \"firm\"\nhigh = \"soft\"\n");
    }
    let read = read_tasting(&Source { file: "tastings/x.toml".into(), text });
    assert!(read.diagnostics.is_empty(), "{:?}", read.diagnostics);
    read.value.expect("a tasting")
}

/// The sheets of a table whose seats answer as told: seat number and seat to the value of each item.
fn answered(tasting: &Tasting, seats: &[Seat], answer: impl Fn(usize, &Seat, &str) -> String) -> Vec<Sheet> {
    let sheet = |(number, seat): (usize, &Seat)| {
        let mut sheet = Sheet::empty(tasting, number as u32 + 1, seat);
        for (item, _) in items(tasting, seat) {
            sheet.take(tasting, seat, &item, &answer(number, seat, &item)).expect("an answer");
        }
        sheet
    };
    seats.iter().enumerate().map(sheet).collect()
}

/// The code of a sample at a seat.
fn code(seat: &Seat, sample: usize) -> String {
    seat.cups.iter().find(|cup| cup.sample == sample).expect("it stands there").code.to_string()
}

/// What is found where seats answer as told.
fn found(tasting: &Tasting, seats: usize, answer: impl Fn(usize, &Seat, &str) -> String) -> Findings {
    let table = lay(tasting.method, tasting.samples.len(), seats, 7);
    find(tasting, &answered(tasting, &table, answer))
}

/// Ranks, one row a taster, put in order of codes: what a taster with these ranks would say.
fn in_order(seat: &Seat, ranks: &[usize]) -> String {
    let mut samples: Vec<usize> = (0..ranks.len()).collect();
    samples.sort_by_key(|sample| ranks[*sample]);
    let mut said = String::new();
    for (at, sample) in samples.iter().enumerate() {
        if at > 0 {
            said.push(if ranks[samples[at - 1]] == ranks[*sample] { '=' } else { ' ' });
        }
        said.push_str(&code(seat, *sample));
    }
    said
}

/// The code of the odd cup, or of one of the two that are alike.
fn odd(seat: &Seat, is_right: bool) -> String {
    let alone = |sample: usize| seat.cups.iter().filter(|cup| cup.sample == sample).count() == 1;
    let cup = seat.cups.iter().find(|cup| alone(cup.sample) == is_right).expect("three cups");
    cup.code.to_string()
}
