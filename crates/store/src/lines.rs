//! Sittings and answers as lines of a record.

use crate::{Answer, Cup, Kind, Seat, Sitting, Store, StoreFault};
use jiff::Timestamp;
use serde_json::{Value, json};

impl Store {
    /// Every sitting with its key to the codes, and then every answer, corrections after what they correct; those of a
    /// tasting that is still open as well.
    pub(crate) async fn tasted(&self) -> Result<Vec<Value>, StoreFault> {
        let sittings = self.sittings().await?;
        let mut lines = Vec::new();
        for one in &sittings {
            lines.push(of_sitting(one, &self.seats(one.number).await?));
        }
        for one in &sittings {
            for answer in self.all_answers(one.number).await? {
                lines.push(json!({
                    "answer": answer.value, "sitting": one.number, "seat": answer.seat, "item": answer.item,
                    "number": answer.number, "client": answer.client, "at": answer.at.to_string(),
                }));
            }
        }
        Ok(lines)
    }
}

fn of_sitting(one: &Sitting, seats: &[Seat]) -> Value {
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
pub fn sitting(value: &Value) -> Option<(Sitting, Vec<Seat>)> {
    let cup = |cup: &Value| Some(Cup { place: cup[0].as_i64()?, code: cup[1].as_i64()?, sample: cup[2].as_i64()? });
    let seat = |one: &Value| {
        Some(Seat {
            number: one["seat"].as_i64()?,
            link: one["link"].as_str()?.to_owned(),
            agreed: perhaps(&one["agreed"])?,
            forgotten: perhaps(&one["forgotten"])?,
            cups: one["cups"].as_array()?.iter().map(cup).collect::<Option<_>>()?,
        })
    };
    let part = |one: &Value| Some((Kind::of(one[0].as_str()?)?, one[1].as_str()?.to_owned(), one[2].as_i64()?));
    let sitting = Sitting {
        number: value["sitting"].as_i64()?,
        tasting: value["tasting"].as_str()?.to_owned(),
        revision: value["revision-of-it"].as_i64()?,
        seed: value["seed"].as_str()?.to_owned(),
        at: value["at"].as_str()?.parse().ok()?,
        closed: perhaps(&value["closed"])?,
        samples: value["samples"].as_array()?.iter().map(part).collect::<Option<_>>()?,
    };
    Some((sitting, value["seats"].as_array()?.iter().map(seat).collect::<Option<_>>()?))
}

/// The answer of a line, with its sitting.
pub fn answer(value: &Value) -> Option<(i64, Answer)> {
    let text = |key: &str| value[key].as_str().map(str::to_owned);
    let one = Answer {
        seat: value["seat"].as_i64()?,
        item: text("item")?,
        number: value["number"].as_i64()?,
        client: text("client")?,
        value: text("answer")?,
        at: value["at"].as_str()?.parse().ok()?,
    };
    Some((value["sitting"].as_i64()?, one))
}

/// A moment, or nothing.
fn perhaps(value: &Value) -> Option<Option<Timestamp>> {
    match value.as_str()? {
        "" => Some(None),
        at => Some(Some(at.parse().ok()?)),
    }
}
