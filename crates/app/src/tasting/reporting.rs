//! The report of a tasting, from the store or from a table of raw data: the same bytes either way.

use super::raw::Raw;
use super::{Held, bind, of_sitting};
use crate::book::Opened;
use crate::failure::Failure;
use crate::memory::told;
use bench::tasting::{Findings, Sheet, find};
use formula::read::Tasting;
use publish::tasting::Report;
use store::Store;

/// A tasting with its raw data and what they say.
pub struct Reported {
    /// The tasting.
    pub tasting: Tasting,
    /// Its answers.
    pub raw: Raw,
    /// What they say.
    pub findings: Findings,
    /// What each sample was made by.
    made: Vec<String>,
    /// The day it was closed.
    day: String,
}

impl Reported {
    /// A report of raw data.
    pub fn of(mut tasting: Tasting, raw: Raw, opened: &Opened) -> Self {
        bind(&mut tasting, opened);
        let findings = find(&tasting, &raw.sheets);
        let made = |(sample, revision): (&formula::read::Sample, &i64)| match (&sample.trial, &sample.formula) {
            (Some(trial), _) => format!("the trial {}, revision {revision}", trial.value),
            (None, Some(formula)) => format!("{}, revision {revision}", formula.value),
            (None, None) => String::new(),
        };
        let made = tasting.samples.iter().zip(&raw.revisions).map(made).collect();
        let day = raw.closed.split('T').next().unwrap_or_default().to_owned();
        Self { tasting, raw, findings, made, day }
    }

    /// As reports are made from.
    pub fn report(&self) -> Report<'_> {
        Report { tasting: &self.tasting, findings: &self.findings, closed: &self.day, made: &self.made }
    }
}

/// The report of the raw data that lie beside a tasting in its book, if there are any.
pub fn beside(opened: &Opened, name: &str) -> Option<Result<Reported, Failure>> {
    let tasting = opened.book.tastings.get(name)?;
    let table = opened.text.files.get(&format!("tastings/{name}.csv"))?;
    Some(super::raw::read(tasting, &table.text).map(|raw| Reported::of(tasting.clone(), raw, opened)))
}

/// The last sitting of a tasting that is closed and at which somebody answered everything: only such a one is evidence,
/// whatever was laid after it.
pub async fn counting(store: &Store, name: &str, opened: &Opened) -> Result<Option<(Held, Reported)>, Failure> {
    let sittings = store.sittings().await.map_err(told)?;
    for sitting in sittings.into_iter().rev().filter(|one| one.tasting == name && one.closed.is_some()) {
        let held = of_sitting(store, sitting).await?;
        let raw = raw(store, &held).await?;
        let reported = Reported::of(held.tasting.clone(), raw, opened);
        if reported.findings.whole > 0 {
            return Ok(Some((held, reported)));
        }
    }
    Ok(None)
}

/// What the last sitting says, or the last that counts where its table was cleared; while it is open, nothing.
pub async fn last(store: &Store, held: Held, opened: &Opened) -> Result<Reported, Failure> {
    let raw = raw(store, &held).await?;
    match counting(store, &held.sitting.tasting, opened).await? {
        Some((_, reported)) => Ok(reported),
        None => Ok(Reported::of(held.tasting, raw, opened)),
    }
}

/// The raw data of a sitting that is closed.
pub async fn raw(store: &Store, held: &Held) -> Result<Raw, Failure> {
    let answers = store.answers(held.sitting.number).await.map_err(told)?;
    let mut sheets: Vec<Sheet> =
        held.seats.iter().zip(1..).map(|(seat, number)| Sheet::empty(&held.tasting, number, seat)).collect();
    // Corrections come after what they correct, and stand in its place.
    for answer in &answers {
        let place = held.kept.iter().position(|seat| seat.number == answer.seat);
        let Some((sheet, seat)) = place.and_then(|place| Some((sheets.get_mut(place)?, held.seats.get(place)?))) else {
            continue;
        };
        sheet
            .take(&held.tasting, seat, &answer.item, &answer.value)
            .map_err(|wrong| Failure::new(format!("the answer “{}” of seat {} is none: {wrong}", answer.value, answer.seat)))?;
    }
    let revisions = held.sitting.samples.iter().map(|(_, _, number)| *number).collect();
    let closed = held.sitting.closed.map(|at| at.to_string()).unwrap_or_default();
    Ok(Raw { sheets, revisions, closed })
}
