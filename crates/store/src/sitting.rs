//! Sittings: a tasting as it is held, its seats, and the key to the codes.

use crate::revision::hash;
use crate::{Kind, Store, StoreFault};
use jiff::Timestamp;
use sqlx::any::AnyRow;
use sqlx::{Any, Row, Transaction};

/// A tasting as it is held.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sitting {
    /// Its number, from 1.
    pub number: i64,
    /// The tasting's name.
    pub tasting: String,
    /// The revision of the tasting that is held.
    pub revision: i64,
    /// The seed that codes and orders were drawn with.
    pub seed: String,
    /// When it was laid.
    pub at: Timestamp,
    /// When it was closed; none while it is open.
    pub closed: Option<Timestamp>,
    /// The revision that each sample was made from.
    pub samples: Vec<(Kind, String, i64)>,
}

/// A seat of a sitting.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Seat {
    /// Its number, from 1.
    pub number: i64,
    /// The hash of its link.
    pub link: String,
    /// When whoever sits there agreed to taste.
    pub agreed: Option<Timestamp>,
    /// When its answers were removed at the taster's wish.
    pub forgotten: Option<Timestamp>,
    /// What stands there, in the order of tasting; a reference stands first, at place 0.
    pub cups: Vec<Cup>,
}

/// A cup before a seat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cup {
    /// Its place, from 1; 0 for a reference.
    pub place: i64,
    /// Its three figures; 0 for a reference.
    pub code: i64,
    /// What is in it: the sample's place, from 0.
    pub sample: i64,
}

/// A sitting that is to be laid.
#[derive(Clone, Debug)]
pub struct Laying<'l> {
    /// The tasting and its revision.
    pub tasting: (&'l str, i64),
    /// The seed that codes and orders were drawn with.
    pub seed: &'l str,
    /// When.
    pub at: Timestamp,
    /// The revision that each sample was made from.
    pub samples: Vec<(Kind, String, i64)>,
    /// The secret word of each seat's link, and what stands there.
    pub seats: Vec<(String, Vec<Cup>)>,
}

impl Store {
    /// Lays a sitting.
    ///
    /// # Errors
    /// [`StoreFault::StillOpen`] where one of this tasting is open already.
    pub async fn lay(&self, laying: &Laying<'_>) -> Result<Sitting, StoreFault> {
        let seat = |((word, cups), number): (&(String, Vec<Cup>), i64)| Seat {
            number,
            link: hash(word),
            agreed: None,
            forgotten: None,
            cups: cups.clone(),
        };
        let seats: Vec<Seat> = laying.seats.iter().zip(1..).map(seat).collect();
        let last = sqlx::query("SELECT COALESCE(MAX(number), 0) FROM sitting").fetch_one(&self.pool).await?;
        let sitting = Sitting {
            number: last.try_get::<i64, _>(0)? + 1,
            tasting: laying.tasting.0.to_owned(),
            revision: laying.tasting.1,
            seed: laying.seed.to_owned(),
            at: laying.at,
            closed: None,
            samples: laying.samples.clone(),
        };
        let mut writing = self.pool.begin().await?;
        match keep(&mut writing, &sitting, &seats).await {
            Err(sqlx::Error::Database(error)) if error.is_unique_violation() => {
                return Err(StoreFault::StillOpen(sitting.tasting));
            }
            other => other?,
        }
        writing.commit().await?;
        Ok(sitting)
    }

    /// The last sitting of a tasting, if it was ever laid.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away.
    pub async fn sitting(&self, tasting: &str) -> Result<Option<Sitting>, StoreFault> {
        let asked = "SELECT COALESCE(MAX(number), 0) FROM sitting WHERE tasting = $1";
        let last = sqlx::query(asked).bind(tasting).fetch_one(&self.pool).await?;
        self.sitting_of(last.try_get(0)?).await
    }

    /// Every sitting, the oldest first.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away.
    pub async fn sittings(&self) -> Result<Vec<Sitting>, StoreFault> {
        let asked = "SELECT number, tasting, revision, seed, laid_at, closed_at FROM sitting ORDER BY number";
        let rows = sqlx::query(asked).fetch_all(&self.pool).await?;
        let mut sittings = rows.iter().map(sitting).collect::<Result<Vec<_>, _>>()?;
        let asked = "SELECT sitting, kind, name, revision FROM sitting_sample ORDER BY sitting, place";
        for row in &sqlx::query(asked).fetch_all(&self.pool).await? {
            let number: i64 = row.try_get("sitting")?;
            if let Ok(at) = sittings.binary_search_by_key(&number, |one| one.number) {
                sittings[at].samples.push(sample(row)?);
            }
        }
        Ok(sittings)
    }

    /// The sitting of that number, if there is one.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away.
    pub async fn sitting_of(&self, number: i64) -> Result<Option<Sitting>, StoreFault> {
        let asked = "SELECT number, tasting, revision, seed, laid_at, closed_at FROM sitting WHERE number = $1";
        let Some(row) = sqlx::query(asked).bind(number).fetch_optional(&self.pool).await? else { return Ok(None) };
        let mut one = sitting(&row)?;
        let asked = "SELECT kind, name, revision FROM sitting_sample WHERE sitting = $1 ORDER BY place";
        let rows = sqlx::query(asked).bind(number).fetch_all(&self.pool).await?;
        one.samples = rows.iter().map(sample).collect::<Result<_, _>>()?;
        Ok(Some(one))
    }

    /// The seats of a sitting, with what stands there: the key to the codes.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away.
    pub async fn seats(&self, sitting: i64) -> Result<Vec<Seat>, StoreFault> {
        let asked = "SELECT number, link, agreed_at, forgotten_at FROM seat WHERE sitting = $1 ORDER BY number";
        let rows = sqlx::query(asked).bind(sitting).fetch_all(&self.pool).await?;
        let mut seats = rows.iter().map(seat).collect::<Result<Vec<_>, _>>()?;
        let asked = "SELECT seat, place, code, sample FROM cup WHERE sitting = $1 ORDER BY seat, place";
        for row in &sqlx::query(asked).bind(sitting).fetch_all(&self.pool).await? {
            let number: i64 = row.try_get("seat")?;
            if let Ok(at) = seats.binary_search_by_key(&number, |seat| seat.number) {
                let (place, code, sample) = (row.try_get("place")?, row.try_get("code")?, row.try_get("sample")?);
                seats[at].cups.push(Cup { place, code, sample });
            }
        }
        Ok(seats)
    }

    /// The seat that a link's secret word leads to.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away.
    pub async fn seat_of(&self, word: &str) -> Result<Option<(Sitting, Seat)>, StoreFault> {
        let asked = "SELECT sitting, number FROM seat WHERE link = $1";
        let Some(row) = sqlx::query(asked).bind(hash(word)).fetch_optional(&self.pool).await? else { return Ok(None) };
        let (in_sitting, number): (i64, i64) = (row.try_get("sitting")?, row.try_get("number")?);
        let sitting = self.sitting_of(in_sitting).await?;
        let seat = self.seats(in_sitting).await?.into_iter().find(|one| one.number == number);
        Ok(sitting.zip(seat))
    }

    /// Closes a sitting; whether it was open. From then on its answers can be read, and none is taken.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away.
    pub async fn close_sitting(&self, sitting: i64, at: Timestamp) -> Result<bool, StoreFault> {
        let words = "UPDATE sitting SET closed_at = $2 WHERE number = $1 AND closed_at = ''";
        let closed = sqlx::query(words).bind(sitting).bind(at.to_string()).execute(&self.pool).await?;
        Ok(closed.rows_affected() == 1)
    }
}

/// Keeps a sitting whose revisions are kept, with its seats.
pub async fn keep(writing: &mut Transaction<'_, Any>, one: &Sitting, seats: &[Seat]) -> Result<(), sqlx::Error> {
    let words =
        "INSERT INTO sitting (number, kind, tasting, revision, seed, laid_at, closed_at) VALUES ($1, $2, $3, $4, $5, $6, $7)";
    let query = sqlx::query(words).bind(one.number).bind(Kind::Tasting.word()).bind(&one.tasting).bind(one.revision);
    query.bind(&one.seed).bind(one.at.to_string()).bind(told(one.closed)).execute(&mut **writing).await?;
    for ((kind, name, revision), place) in one.samples.iter().zip(0_i64..) {
        let words = "INSERT INTO sitting_sample (sitting, place, kind, name, revision) VALUES ($1, $2, $3, $4, $5)";
        let query = sqlx::query(words).bind(one.number).bind(place).bind(kind.word()).bind(name).bind(revision);
        query.execute(&mut **writing).await?;
    }
    for seat in seats {
        let words = "INSERT INTO seat (sitting, number, link, agreed_at, forgotten_at) VALUES ($1, $2, $3, $4, $5)";
        let query = sqlx::query(words).bind(one.number).bind(seat.number).bind(&seat.link);
        query.bind(told(seat.agreed)).bind(told(seat.forgotten)).execute(&mut **writing).await?;
        for cup in &seat.cups {
            let words = "INSERT INTO cup (sitting, seat, place, code, sample) VALUES ($1, $2, $3, $4, $5)";
            let query = sqlx::query(words).bind(one.number).bind(seat.number).bind(cup.place).bind(cup.code).bind(cup.sample);
            query.execute(&mut **writing).await?;
        }
    }
    Ok(())
}

/// A moment, or nothing, as the database holds it.
fn told(moment: Option<Timestamp>) -> String {
    moment.map(|at| at.to_string()).unwrap_or_default()
}

/// A moment that the database holds.
pub fn moment(text: &str) -> Result<Timestamp, StoreFault> {
    text.parse().map_err(|_| StoreFault::Damaged(format!("“{text}” is no time")))
}

fn perhaps(text: &str) -> Result<Option<Timestamp>, StoreFault> {
    if text.is_empty() { Ok(None) } else { moment(text).map(Some) }
}

fn sitting(row: &AnyRow) -> Result<Sitting, StoreFault> {
    let (at, closed): (String, String) = (row.try_get("laid_at")?, row.try_get("closed_at")?);
    Ok(Sitting {
        number: row.try_get("number")?,
        tasting: row.try_get("tasting")?,
        revision: row.try_get("revision")?,
        seed: row.try_get("seed")?,
        at: moment(&at)?,
        closed: perhaps(&closed)?,
        samples: Vec::new(),
    })
}

fn sample(row: &AnyRow) -> Result<(Kind, String, i64), StoreFault> {
    let kind: String = row.try_get("kind")?;
    Ok((Kind::of(&kind).ok_or(StoreFault::TooNew)?, row.try_get("name")?, row.try_get("revision")?))
}

fn seat(row: &AnyRow) -> Result<Seat, StoreFault> {
    let (agreed, forgotten): (String, String) = (row.try_get("agreed_at")?, row.try_get("forgotten_at")?);
    Ok(Seat {
        number: row.try_get("number")?,
        link: row.try_get("link")?,
        agreed: perhaps(&agreed)?,
        forgotten: perhaps(&forgotten)?,
        cups: Vec::new(),
    })
}
