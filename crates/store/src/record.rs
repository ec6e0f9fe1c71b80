//! Everything a store holds as lines of JSON, out and in again: the same store gives the same bytes.

use crate::revision::{self, hash};
use crate::{
    Answer, Edition, Kind, Revision, Seat, Sitting, Store, StoreFault, Stroke, answer, edition, gathered, lines, sitting, stroke,
};
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// What the first line says of the rest.
const FORMAT: &str = "wellproved-store";
/// The form of the lines.
const VERSION: i64 = 1;

impl Store {
    /// Everything, a line each: first the form, then texts, revisions, strokes, editions, sittings and answers, each in
    /// a fixed order.
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
        let strokes = self.all_strokes().await?;
        for hash in strokes.iter().flat_map(|one| [&one.before, &one.after]) {
            if let (false, Some(body)) = (texts.contains_key(hash), self.kept(hash).await?) {
                texts.insert(hash.clone(), body);
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
        for one in strokes {
            line(json!({
                "stroke": one.number, "kind": one.kind.word(), "name": one.name, "before": one.before, "after": one.after,
                "what": one.what, "by": one.by, "at": one.at.to_string(), "undone": one.undone,
            }));
        }
        for one in self.editions().await? {
            let parts: Vec<Value> = one.parts.iter().map(|(kind, name, number)| json!([kind.word(), name, number])).collect();
            line(json!({ "edition": one.number, "note": one.note, "at": one.at.to_string(), "of": parts }));
        }
        self.tasted().await?.into_iter().for_each(line);
        Ok(out)
    }

    /// Reads records into an empty store: all of them, or none.
    ///
    /// # Errors
    /// [`StoreFault::NotARecord`] with the line that is none, [`StoreFault::NotEmpty`].
    pub async fn read_records(&self, records: &str) -> Result<(), StoreFault> {
        if !self.revisions().await?.is_empty() || !self.all_strokes().await?.is_empty() || !self.editions().await?.is_empty() {
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
                Some(Record::Stroke(one)) => stroke::keep(&mut writing, &one).await,
                Some(Record::Edition(one)) => edition::keep(&mut writing, &one).await,
                Some(Record::Sitting(one, seats)) => sitting::keep(&mut writing, &one, &seats).await,
                Some(Record::Answer(sitting, one)) => answer::keep(&mut writing, sitting, &one).await,
                None => return Err(wrong("it is neither a text nor anything else that a store holds")),
            };
            kept.map_err(|error| wrong(&error.to_string()))?;
        }
        gathered::all(&mut writing).await?;
        writing.commit().await?;
        Ok(())
    }
}

enum Record {
    Text(String, String),
    Revision(Revision),
    Stroke(Stroke),
    Edition(Edition),
    Sitting(Sitting, Vec<Seat>),
    Answer(i64, Answer),
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
    if let Some(number) = value["stroke"].as_i64() {
        let kind = Kind::of(value["kind"].as_str()?)?;
        let (name, before, after) = (text("name")?, text("before")?, text("after")?);
        let (what, by, undone) = (text("what")?, text("by")?, value["undone"].as_bool()?);
        return Some(Record::Stroke(Stroke { kind, name, number, before, after, what, by, at: at()?, undone }));
    }
    if value["answer"].is_string() {
        return lines::answer(value).map(|(sitting, one)| Record::Answer(sitting, one));
    }
    if value["seats"].is_array() {
        return lines::sitting(value).map(|(one, seats)| Record::Sitting(one, seats));
    }
    let part = |one: &Value| Some((Kind::of(one[0].as_str()?)?, one[1].as_str()?.to_owned(), one[2].as_i64()?));
    let parts = value["of"].as_array()?.iter().map(part).collect::<Option<Vec<_>>>()?;
    Some(Record::Edition(Edition { number: value["edition"].as_i64()?, note: text("note")?, at: at()?, parts }))
}
