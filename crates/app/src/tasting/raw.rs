//! The raw data of a closed tasting as a table, out and in again: a row for each thing asked of each cup.

use super::judged::{Asked, judge};
use crate::failure::Failure;
use bench::tasting::{Sheet, Tasted, asked};
use csv::{ReaderBuilder, StringRecord, Writer};
use formula::read::{Method, Tasting};
use std::collections::BTreeSet;

/// The headings of the table.
const HEAD: [&str; 9] = ["tasting", "closed", "seat", "place", "code", "sample", "revision", "asked", "answer"];
/// More rows than the largest table asks for are no tasting.
const MOST_ROWS: usize = 200_000;

/// What a report is made of: sheets, the revision of each sample, and when the tasting was closed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Raw {
    /// The seats with their answers.
    pub sheets: Vec<Sheet>,
    /// The revision of each sample.
    pub revisions: Vec<i64>,
    /// When it was closed, as RFC 3339 writes it.
    pub closed: String,
}

/// The table.
pub fn write(tasting: &Tasting, raw: &Raw) -> String {
    let mut writer = Writer::from_writer(Vec::new());
    // Writing into memory does not fail.
    let _ = writer.write_record(HEAD);
    let scales = asked(tasting);
    for sheet in &raw.sheets {
        let seat = sheet.seat.to_string();
        let mut row = |place: usize, code: &str, sample: usize, scale: &str, answer: Option<u32>| {
            let name = tasting.samples.get(sample).map_or("", |sample| sample.name.value.as_str());
            let revision = raw.revisions.get(sample).map(i64::to_string).unwrap_or_default();
            let (place, answer) = (place.to_string(), answer.map(|answer| answer.to_string()).unwrap_or_default());
            let cells = [&tasting.name, &raw.closed, &seat, &place, code, name, &revision, scale, &answer];
            let _ = writer.write_record(cells.map(|cell: &str| cell));
        };
        if let Some(sample) = sheet.reference {
            row(0, "R", sample, "", None);
        }
        for (cup, place) in sheet.cups.iter().zip(1..) {
            for (scale, answer) in scales.iter().zip(&cup.answers) {
                row(place, &cup.code.to_string(), cup.sample, scale, *answer);
            }
        }
    }
    String::from_utf8(writer.into_inner().unwrap_or_default()).unwrap_or_default()
}

/// Reads a table that was written; what is not of this tasting, or no whole answer of it, is refused with its row.
pub fn read(tasting: &Tasting, text: &str) -> Result<Raw, Failure> {
    let mut reader = ReaderBuilder::new().from_reader(text.as_bytes());
    let head = reader.headers().map_err(|why| Failure::new(format!("that is no table of raw data: {why}")))?;
    if head.iter().ne(HEAD) {
        return Err(Failure::new("that is no table of raw data").hint(format!("its first row must be: {}", HEAD.join(","))));
    }
    let raw = Raw { sheets: Vec::new(), revisions: vec![0; tasting.samples.len()], closed: String::new() };
    let mut reading = Reading { raw, given: BTreeSet::new(), rows: Vec::new() };
    for (record, number) in reader.records().zip(2_usize..) {
        let wrong = |why: &str| Failure::new(format!("row {number} of the raw data: {why}"));
        if number > MOST_ROWS {
            return Err(wrong("there are more rows than any tasting has"));
        }
        let record = record.map_err(|why| wrong(&why.to_string()))?;
        take(tasting, &mut reading, &record, number).map_err(|why| wrong(&why))?;
    }
    if reading.raw.sheets.is_empty() {
        return Err(Failure::new("the raw data have no row"));
    }
    for (sheet, (first, last)) in reading.raw.sheets.iter().zip(&reading.rows) {
        judge(tasting, sheet, &reading.given).map_err(|why| {
            let rows = if first == last { format!("row {first}") } else { format!("rows {first} to {last}") };
            Failure::new(format!("{rows} of the raw data: {why}"))
        })?;
    }
    Ok(reading.raw)
}

/// What was read so far.
struct Reading {
    raw: Raw,
    /// What there is a row of: the seat, the cup's place from 0, and the scale.
    given: BTreeSet<Asked>,
    /// The first and the last row of each seat.
    rows: Vec<(usize, usize)>,
}

/// Takes a row down.
fn take(tasting: &Tasting, reading: &mut Reading, record: &StringRecord, number: usize) -> Result<(), String> {
    let raw = &mut reading.raw;
    let cell = |name: &str| HEAD.iter().position(|head| *head == name).and_then(|at| record.get(at)).unwrap_or_default();
    if cell("tasting") != tasting.name {
        return Err("it is of another tasting".to_owned());
    }
    let sample = tasting.samples.iter().position(|sample| sample.name.value == cell("sample"));
    let sample = sample.ok_or("the tasting has no such sample")?;
    let seat: u32 = cell("seat").parse().ok().filter(|seat| *seat > 0).ok_or("its seat is no number")?;
    let place: usize = cell("place").parse().map_err(|_| "its place is no number")?;
    raw.revisions[sample] = cell("revision").parse().map_err(|_| "its revision is no number")?;
    if !reading.rows.is_empty() && raw.closed != cell("closed") {
        return Err("it was closed at another time than the rows before".to_owned());
    }
    cell("closed").clone_into(&mut raw.closed);
    if raw.sheets.last().is_none_or(|sheet| sheet.seat != seat) {
        if raw.sheets.iter().any(|sheet| sheet.seat == seat) {
            return Err("its seat came before already".to_owned());
        }
        raw.sheets.push(Sheet { seat, reference: None, cups: Vec::new() });
        reading.rows.push((number, number));
    }
    let (Some(sheet), Some((_, last))) = (raw.sheets.last_mut(), reading.rows.last_mut()) else {
        return Err("it has no seat".to_owned());
    };
    *last = number;
    if place == 0 {
        sheet.reference = Some(sample);
        return Ok(());
    }
    let scales = asked(tasting);
    let code = code(cell("code")).ok_or("its code is no three figures")?;
    if place == sheet.cups.len() + 1 && place <= 9 {
        if sheet.cups.iter().any(|cup| cup.code == code) {
            return Err(format!("the code {code} stands at seat {seat} already"));
        }
        sheet.cups.push(Tasted { code, sample, answers: vec![None; scales.len()] });
    }
    let cup = sheet.cups.get_mut(place - 1).filter(|cup| cup.sample == sample).ok_or("its place is out of order")?;
    if cup.code != code {
        return Err(format!("the cup at place {place} of seat {seat} has the code {}, not {code}", cup.code));
    }
    let scale = scales.iter().position(|scale| *scale == cell("asked")).ok_or("the tasting does not ask that")?;
    if !reading.given.insert((seat, place - 1, scale)) {
        return Err("the same was answered in a row before".to_owned());
    }
    cup.answers[scale] = answer(tasting, cell("answer"))?;
    Ok(())
}

/// Three figures that do not begin with nought.
fn code(text: &str) -> Option<u16> {
    text.parse().ok().filter(|code| (100..=999).contains(code))
}

/// An answer that there can be in this tasting; nothing where it is missing.
fn answer(tasting: &Tasting, text: &str) -> Result<Option<u32>, String> {
    if text.is_empty() {
        return Ok(None);
    }
    let (least, most, what) = match tasting.method {
        Method::Ranking => (1, tasting.samples.len() as u32, "its rank"),
        Method::Liking | Method::Description => (1, 9, "its points"),
        Method::Triangle | Method::DuoTrio | Method::Paired | Method::Preference => (0, 1, "its answer"),
    };
    let is_one = |answer: &u32| (least..=most).contains(answer);
    let told = || format!("{what}, “{text}”, is no whole number from {least} to {most}; leave it empty where it is missing");
    text.parse().ok().filter(is_one).map(Some).ok_or_else(told)
}
