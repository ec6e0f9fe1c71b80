//! What was done to a document, stroke by stroke: undone, and done again, also by the next who opens it.

use crate::revision::{hash, keep_text};
use crate::{Kind, Store, StoreFault};
use jiff::Timestamp;
use sqlx::any::AnyRow;
use sqlx::{Any, Row, Transaction};

/// One change of a document; an empty text stands for a document that is not there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stroke {
    /// What the document is.
    pub kind: Kind,
    /// Its name.
    pub name: String,
    /// The stroke's number in the document, from 1.
    pub number: i64,
    /// The SHA-256 of what it said before.
    pub before: String,
    /// The SHA-256 of what it says after.
    pub after: String,
    /// What was done, in a few words.
    pub what: String,
    /// Who did it.
    pub by: String,
    /// When.
    pub at: Timestamp,
    /// Whether it is undone.
    pub undone: bool,
}

/// A change that is about to be made.
#[derive(Clone, Copy, Debug)]
pub struct Making<'m> {
    /// What the document is.
    pub kind: Kind,
    /// Its name.
    pub name: &'m str,
    /// What it says before.
    pub before: &'m str,
    /// What it says after.
    pub after: &'m str,
    /// What is done, in a few words.
    pub what: &'m str,
    /// Who does it.
    pub by: &'m str,
    /// When.
    pub at: Timestamp,
}

const ALL: &str = "SELECT kind, name, number, before, after, what, made_by, made_at, undone FROM stroke";
const OF_ONE: &str = "SELECT kind, name, number, before, after, what, made_by, made_at, undone FROM stroke WHERE kind = $1 AND name = $2 ORDER BY number";

impl Store {
    /// Keeps a stroke with both its texts. What was undone before it can no longer be done again.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away or refuses; nothing is kept then.
    pub async fn stroke(&self, making: &Making<'_>) -> Result<Stroke, StoreFault> {
        let mut writing = self.pool.begin().await?;
        let forgotten = "DELETE FROM stroke WHERE kind = $1 AND name = $2 AND undone = 1";
        sqlx::query(forgotten).bind(making.kind.word()).bind(making.name).execute(&mut *writing).await?;
        let asked = "SELECT CAST(COALESCE(MAX(number), 0) AS BIGINT) FROM stroke WHERE kind = $1 AND name = $2";
        let last: i64 =
            sqlx::query(asked).bind(making.kind.word()).bind(making.name).fetch_one(&mut *writing).await?.try_get(0)?;
        for text in [making.before, making.after] {
            keep_text(&mut writing, &hash(text), text).await?;
        }
        let stroke = Stroke {
            kind: making.kind,
            name: making.name.to_owned(),
            number: last + 1,
            before: hash(making.before),
            after: hash(making.after),
            what: making.what.to_owned(),
            by: making.by.to_owned(),
            at: making.at,
            undone: false,
        };
        keep(&mut writing, &stroke).await?;
        writing.commit().await?;
        Ok(stroke)
    }

    /// The strokes of a document, the first one first.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away.
    pub async fn strokes(&self, kind: Kind, name: &str) -> Result<Vec<Stroke>, StoreFault> {
        let rows = sqlx::query(OF_ONE).bind(kind.word()).bind(name).fetch_all(&self.pool).await?;
        rows.iter().map(stroke).collect()
    }

    /// Marks a stroke as undone, or as done again.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away.
    pub async fn mark(&self, stroke: &Stroke, undone: bool) -> Result<(), StoreFault> {
        let words = "UPDATE stroke SET undone = $1 WHERE kind = $2 AND name = $3 AND number = $4";
        let query = sqlx::query(words).bind(i64::from(undone)).bind(stroke.kind.word());
        query.bind(&stroke.name).bind(stroke.number).execute(&self.pool).await?;
        Ok(())
    }

    /// A text by its SHA-256, if it was ever kept.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away.
    pub async fn kept(&self, hash: &str) -> Result<Option<String>, StoreFault> {
        let row = sqlx::query("SELECT body FROM text WHERE hash = $1").bind(hash).fetch_optional(&self.pool).await?;
        row.map(|row| row.try_get(0)).transpose().map_err(StoreFault::from)
    }

    /// Every stroke of everything, by kind, name and number.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away.
    pub async fn all_strokes(&self) -> Result<Vec<Stroke>, StoreFault> {
        let rows = sqlx::query(ALL).fetch_all(&self.pool).await?;
        let mut all = rows.iter().map(stroke).collect::<Result<Vec<_>, _>>()?;
        all.sort_by(|a, b| (a.kind, &a.name, a.number).cmp(&(b.kind, &b.name, b.number)));
        Ok(all)
    }
}

/// Keeps a stroke whose texts are kept.
pub async fn keep(writing: &mut Transaction<'_, Any>, one: &Stroke) -> Result<(), sqlx::Error> {
    let words = "INSERT INTO stroke (kind, name, number, before, after, what, made_by, made_at, undone) VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9)";
    let query = sqlx::query(words).bind(one.kind.word()).bind(&one.name).bind(one.number).bind(&one.before).bind(&one.after);
    let query = query.bind(&one.what).bind(&one.by).bind(one.at.to_string()).bind(i64::from(one.undone));
    query.execute(&mut **writing).await.map(|_| ())
}

fn stroke(row: &AnyRow) -> Result<Stroke, StoreFault> {
    let kind: String = row.try_get("kind")?;
    let at: String = row.try_get("made_at")?;
    Ok(Stroke {
        kind: Kind::of(&kind).ok_or(StoreFault::TooNew)?,
        name: row.try_get("name")?,
        number: row.try_get("number")?,
        before: row.try_get("before")?,
        after: row.try_get("after")?,
        what: row.try_get("what")?,
        by: row.try_get("made_by")?,
        at: at.parse().map_err(|_| StoreFault::Damaged(format!("“{at}” is no time")))?,
        undone: row.try_get::<i64, _>("undone")? == 1,
    })
}
