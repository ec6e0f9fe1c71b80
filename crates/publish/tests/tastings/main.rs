//! What reports and pages say of tastings, from the answers of invented panels.

mod claims;
mod small;

use bench::tasting::{Findings, Seat, Sheet, find, items, lay};
use formula::read::{Tasting, read_tasting};
use formula::source::Source;
use publish::tasting::Report;

/// A sample by its name and formula.
type Named<'n> = (&'n str, &'n str);

/// A tasting of these samples.
fn tasting(method: &str, samples: &[Named], more: &str) -> Tasting {
    let mut text = format!("title = \"A tasting\"\nmethod = \"{method}\"\nquestion = \"Which?\"\n{more}\n");
    for (name, formula) in samples {
        text.push_str(&format!("[[sample]]\nname = \"{name}\"\nformula = \"{formula}\"\n"));
    }
    if method == "description" {
        text.push_str("[[attribute]]\nname = \"crumb\"\nlow = \"firm\"\nhigh = \"soft\"\n");
    }
    let read = read_tasting(&Source { file: "tastings/x.toml".into(), text });
    assert!(read.diagnostics.is_empty(), "{:?}", read.diagnostics);
    read.value.expect("a tasting")
}

/// What so many people found of whom all tell the samples apart and put them in the order of their names, or the other
/// way round.
fn found(tasting: &Tasting, people: usize, first_is_most: bool) -> Findings {
    let table = lay(tasting.method, tasting.samples.len(), people, 7);
    let sheet = |(number, seat): (usize, &Seat)| {
        let mut sheet = Sheet::empty(tasting, number as u32 + 1, seat);
        for (item, _) in items(tasting, seat) {
            sheet.take(tasting, seat, &item, &answer(tasting, seat, &item, first_is_most)).expect("an answer");
        }
        sheet
    };
    find(tasting, &table.iter().enumerate().map(sheet).collect::<Vec<_>>())
}

fn answer(tasting: &Tasting, seat: &Seat, item: &str, first_is_most: bool) -> String {
    let name = |sample: usize| tasting.samples[sample].name.value.as_str();
    let mut cups: Vec<(&str, u16)> = seat.cups.iter().map(|cup| (name(cup.sample), cup.code)).collect();
    cups.sort_unstable();
    if !first_is_most {
        cups.reverse();
    }
    let alone = |cup: &(&str, u16)| cups.iter().filter(|other| other.0 == cup.0).count() == 1;
    match item {
        "chosen" if seat.cups.len() == 3 => cups.iter().find(|cup| alone(cup)).expect("an odd one").1.to_string(),
        "chosen" => match seat.reference {
            Some(reference) => cups.iter().find(|cup| cup.0 == name(reference)).expect("it stands there").1.to_string(),
            None => cups[0].1.to_string(),
        },
        "rank" => cups.iter().map(|cup| cup.1.to_string()).collect::<Vec<_>>().join(" "),
        code => {
            let place = cups.iter().position(|cup| code.starts_with(&cup.1.to_string())).expect("a cup");
            (8 - place).to_string()
        }
    }
}

/// A report of what was found.
fn report<'r>(tasting: &'r Tasting, findings: &'r Findings) -> Report<'r> {
    Report { tasting, findings, closed: "2026-11-26", made: &[] }
}
