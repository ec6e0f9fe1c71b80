//! Tastings between book and store: laid, answered seat by seat, closed, reported. The command and the pages for
//! tasters' telephones both come through here.

pub mod evidence;
mod judged;
mod laying;
pub mod progress;
pub mod raw;
pub mod reporting;
pub mod seat;
pub mod typed;

pub use laying::{lay, word};

use crate::book::Opened;
use crate::failure::Failure;
use crate::memory::told;
use bench::tasting::{Cup, Notice, Seat, notice};
use formula::Formula;
use formula::ingredient::{did_you_mean, nearest};
use formula::read::{At, Tasting, read_tasting};
use formula::source::Source;
use jiff::Timestamp;
use store::{Kind, Sitting, Store};

/// The moment on the wall clock, to the second.
pub fn now() -> Timestamp {
    let now = Timestamp::now();
    Timestamp::from_second(now.as_second()).unwrap_or(now)
}

/// What became of a taster's answers that were removed, and where they may still be.
pub fn removed(answers: u64, seat: u32) -> String {
    let what = if answers == 1 { "answer" } else { "answers" };
    format!(
        "Removed for good: {answers} {what} of seat {seat}. Exports, backups and raw data written before are yours to delete, and pages that claim it to be published again."
    )
}

/// A tasting as it is held: the text it was laid by, and its table.
pub struct Held {
    /// The sitting.
    pub sitting: Sitting,
    /// The tasting, as it stood when it was laid.
    pub tasting: Tasting,
    /// Its seats as they are kept.
    pub kept: Vec<store::Seat>,
    /// The same as a table.
    pub seats: Vec<Seat>,
}

/// The last sitting of a tasting.
pub async fn held(store: &Store, name: &str) -> Result<Held, Failure> {
    let Some(sitting) = store.sitting(name).await.map_err(told)? else {
        let failure = Failure::new(format!("the tasting “{name}” was never laid"));
        return Err(failure.hint(format!("`wellproved taste lay BOOK {name}` does")));
    };
    of_sitting(store, sitting).await
}

/// A sitting with the tasting and the table that belong to it.
pub async fn of_sitting(store: &Store, sitting: Sitting) -> Result<Held, Failure> {
    let text = store.text(Kind::Tasting, &sitting.tasting, sitting.revision).await.map_err(told)?;
    let read = read_tasting(&Source { file: format!("tastings/{}.toml", sitting.tasting).into(), text });
    let tasting = read.value.ok_or_else(|| Failure::new(format!("what was kept of “{}” is no tasting", sitting.tasting)))?;
    let kept = store.seats(sitting.number).await.map_err(told)?;
    let seats = kept.iter().map(table).collect();
    Ok(Held { sitting, tasting, kept, seats })
}

/// What stands at a seat that is kept.
fn table(seat: &store::Seat) -> Seat {
    let sample = |cup: &store::Cup| usize::try_from(cup.sample).unwrap_or_default();
    let reference = seat.cups.iter().find(|cup| cup.place == 0).map(sample);
    let cups = seat.cups.iter().filter(|cup| cup.place > 0);
    let cups = cups.map(|cup| Cup { code: u16::try_from(cup.code).unwrap_or_default(), sample: sample(cup) });
    Seat { reference, cups: cups.collect() }
}

impl Held {
    /// The number of a seat in the store, if there is such a seat.
    pub fn seat(&self, number: u32) -> Result<(i64, i64), Failure> {
        let number = i64::from(number);
        if self.kept.iter().any(|seat| seat.number == number) {
            return Ok((self.sitting.number, number));
        }
        Err(Failure::new(format!("there is no seat {number}")).hint(format!("seats are numbered 1 to {}", self.kept.len())))
    }

    /// What is in the samples, from the revisions that they were made by.
    pub async fn notice(&self, store: &Store, opened: &Opened) -> Result<Notice, Failure> {
        let mut formulas: Vec<Formula> = Vec::new();
        for (kind, name, number) in &self.sitting.samples {
            match kind {
                Kind::Formula => {
                    let text = store.text(*kind, name, *number).await.map_err(told)?;
                    let source = Source { file: format!("formulas/{name}.toml").into(), text };
                    formulas.push(opened.book.revised(&source).value);
                }
                // A trial was baked by the formula that it names.
                _ => formulas.extend(formula_of_trial(opened, name)),
            }
        }
        Ok(notice(&formulas))
    }
}

fn formula_of_trial(opened: &Opened, name: &str) -> Option<Formula> {
    let trial = opened.book.trials.iter().find(|trial| trial.name == name)?;
    opened.book.formula(&trial.formula.value).map(|checked| checked.value)
}

/// The tasting of that name in a book.
pub fn in_book<'b>(opened: &'b Opened, name: &str) -> Result<&'b Tasting, Failure> {
    opened.book.tastings.get(name).ok_or_else(|| {
        let known = opened.book.tastings.keys().map(String::as_str);
        let failure = Failure::new(format!("there is no tasting called “{name}”"));
        match nearest(name, known.clone()) {
            Some(near) => failure.hint(did_you_mean(near)),
            None if opened.book.tastings.is_empty() => {
                failure.hint("the book has none yet: write tastings/NAME.toml, see docs/tasting.md")
            }
            None => failure.hint(format!("the book has: {}", known.collect::<Vec<_>>().join(", "))),
        }
    })
}

/// Binds the samples that were taken from trials to the formulas of these, as the book tells them.
pub fn bind(tasting: &mut Tasting, opened: &Opened) {
    for sample in &mut tasting.samples {
        let Some(name) = &sample.trial else { continue };
        let trial = opened.book.trials.iter().find(|trial| trial.name == name.value);
        if let Some(trial) = trial {
            sample.formula = Some(At::new(trial.formula.value.clone(), name.span.clone()));
        }
    }
}
