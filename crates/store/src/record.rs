//! Everything a store holds as lines of JSON, out and in again: the same store gives the same bytes.

use crate::revision::{self, hash};
use crate::{Answer, Cup, Edition, Kind, Revision, Seat, Sitting, Store, StoreFault, answer, edition, sitting};
use jiff::Timestamp;
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// What the first line says of the rest.
const FORMAT: &str = "wellproved-store";
/// The form of the lines.
const VERSION: i64 = 1;

impl Store {
    /// Everything, a line each: first the form, then texts, revisions, editions, sittings and answers, each in a fixed
    /// order; those of a tasting that is still open as well.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away.
    pub async fn records(&self) -> Result<String, StoreFault> {
        let mut out = String::new();
        let mut line = |value: Value| {
            out.push_str(&value.to_string());
            out.push('\n');
        };
        line(json!({ "format": FORMAT, "version": VERSION }));
        let revisions = self.revisions().await?;
        let mut texts = BTreeMap::new();
        for one in &revisions {
            if !texts.contains_key(&one.hash) {
                texts.insert(one.hash.clone(), self.text(one.kind, &one.name, one.number).await?);
            }
        }
        for (hash, body) in texts {
            line(json!({ "text": hash, "body": body }));
        }
        for one in revisions {
            line(json!({
                "revision": one.number, "kind": one.kind.word(), "name": one.name, "text": one.hash,
                "note": one.note, "by": one.by, "at": one.at.to_string(),
            }));
        }
        for one in self.editions().await? {
            let parts: Vec<Value> = one.parts.iter().map(|(kind, name, number)| json!([kind.word(), name, number])).collect();
            line(json!({ "edition": one.number, "note": one.note, "at": one.at.to_string(), "of": parts }));
        }
        let sittings = self.sittings().await?;
        for one in &sittings {
            line(told(one, &self.seats(one.number).await?));
        }
        for one in &sittings {
            for answer in self.all_answers(one.number).await? {
                line(json!({
                    "answer": answer.value, "sitting": one.number, "seat": answer.seat, "item": answer.item,
                    "number": answer.number, "client": answer.client, "at": answer.at.to_string(),
                }));
            }
        }
        Ok(out)
    }

    /// Reads records into an empty store: all of them, or none.
    ///
    /// # Errors
    /// [`StoreFault::NotARecord`] with the line that is none, [`StoreFault::NotEmpty`].
    pub async fn read_records(&self, records: &str) -> Result<(), StoreFault> {
        if !self.revisions().await?.is_empty() || !self.editions().await?.is_empty() {
            return Err(StoreFault::NotEmpty);
        }
        let mut writing = self.pool.begin().await?;
        for (number, text) in records.lines().enumerate() {
            let line = number + 1;
            let wrong = |why: &str| StoreFault::NotARecord { line, why: why.to_owned() };
            let value: Value = serde_json::from_str(text).map_err(|why| wrong(&why.to_string()))?;
            if number == 0 {
                let is_ours = value["format"] == FORMAT && value["version"] == VERSION;
                is_ours.then_some(()).ok_or_else(|| wrong("the first line must tell the form"))?;
                continue;
            }
            let kept = match record(&value) {
                Some(Record::Text(named, body)) if named == hash(&body) => revision::keep_text(&mut writing, &named, &body).await,
                Some(Record::Text(..)) => return Err(wrong("the text is not what its hash says")),
                Some(Record::Revision(one)) => revision::keep(&mut writing, &one).await,
                Some(Record::Edition(one)) => edition::keep(&mut writing, &one).await,
                Some(Record::Sitting(one, seats)) => sitting::keep(&mut writing, &one, &seats).await,
                Some(Record::Answer(sitting, one)) => answer::keep(&mut writing, sitting, &one).await,
                None => return Err(wrong("it is neither a text nor a revision, an edition, a sitting nor an answer")),
            };
            kept.map_err(|error| wrong(&error.to_string()))?;
        }
        writing.commit().await?;
        Ok(())
    }
}

enum Record {
    Text(String, String),
    Revision(Revision),
    Edition(Edition),
    Sitting(Sitting, Vec<Seat>),
    Answer(i64, Answer),
}

/// A moment, or nothing.
fn perhaps(value: &Value) -> Option<Option<Timestamp>> {
    match value.as_str()? {
        "" => Some(None),
        at => Some(Some(at.parse().ok()?)),
    }
}

/// A sitting with its seats as a line.
fn told(one: &Sitting, seats: &[Seat]) -> Value {
    let moment = |at: Option<Timestamp>| at.map(|at| at.to_string()).unwrap_or_default();
    let seat = |seat: &Seat| {
        let cups: Vec<Value> = seat.cups.iter().map(|cup| json!([cup.place, cup.code, cup.sample])).collect();
        json!({
            "seat": seat.number, "link": seat.link, "agreed": moment(seat.agreed), "forgotten": moment(seat.forgotten),
            "cups": cups,
        })
    };
    let samples: Vec<Value> = one.samples.iter().map(|(kind, name, number)| json!([kind.word(), name, number])).collect();
    json!({
        "sitting": one.number, "tasting": one.tasting, "revision-of-it": one.revision, "seed": one.seed,
        "at": one.at.to_string(), "closed": moment(one.closed), "samples": samples,
        "seats": seats.iter().map(seat).collect::<Vec<_>>(),
    })
}

/// The sitting of a line, with its seats.
fn sitting(value: &Value) -> Option<(Sitting, Vec<Seat>)> {
    let text = |value: &Value| value.as_str().map(str::to_owned);
    let seat = |one: &Value| {
        let cup = |cup: &Value| Some(Cup { place: cup[0].as_i64()?, code: cup[1].as_i64()?, sample: cup[2].as_i64()? });
        Some(Seat {
            number: one["seat"].as_i64()?,
            link: text(&one["link"])?,
            agreed: perhaps(&one["agreed"])?,
            forgotten: perhaps(&one["forgotten"])?,
            cups: one["cups"].as_array()?.iter().map(cup).collect::<Option<_>>()?,
        })
    };
    let sitting = Sitting {
        number: value["sitting"].as_i64()?,
        tasting: text(&value["tasting"])?,
        revision: value["revision-of-it"].as_i64()?,
        seed: text(&value["seed"])?,
        at: value["at"].as_str()?.parse().ok()?,
        closed: perhaps(&value["closed"])?,
        samples: value["samples"].as_array()?.iter().map(part).collect::<Option<_>>()?,
    };
    Some((sitting, value["seats"].as_array()?.iter().map(seat).collect::<Option<_>>()?))
}

/// A revision as kind, name and number.
fn part(one: &Value) -> Option<(Kind, String, i64)> {
    Some((Kind::of(one[0].as_str()?)?, one[1].as_str()?.to_owned(), one[2].as_i64()?))
}

/// What a line tells.
fn record(value: &Value) -> Option<Record> {
    let text = |key: &str| value[key].as_str().map(str::to_owned);
    let at = || value["at"].as_str()?.parse().ok();
    if let Some(body) = text("body") {
        return Some(Record::Text(text("text")?, body));
    }
    if let Some(number) = value["revision"].as_i64() {
        let kind = Kind::of(value["kind"].as_str()?)?;
        let (name, hash, note, by) = (text("name")?, text("text")?, text("note")?, text("by")?);
        return Some(Record::Revision(Revision { kind, name, number, hash, note, by, at: at()? }));
    }
    if let Some(said) = text("answer") {
        let (seat, number) = (value["seat"].as_i64()?, value["number"].as_i64()?);
        let one = Answer { seat, number, item: text("item")?, client: text("client")?, value: said, at: at()? };
        return Some(Record::Answer(value["sitting"].as_i64()?, one));
    }
    if value["seats"].is_array() {
        let (one, seats) = sitting(value)?;
        return Some(Record::Sitting(one, seats));
    }
    let parts = value["of"].as_array()?.iter().map(part).collect::<Option<Vec<_>>>()?;
    Some(Record::Edition(Edition { number: value["edition"].as_i64()?, note: text("note")?, at: at()?, parts }))
}
