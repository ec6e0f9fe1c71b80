//! Editions: what was published, and from which revisions.

use crate::{Kind, Revision, Store, StoreFault};
use jiff::Timestamp;
use sqlx::any::AnyRow;
use sqlx::{Any, Row, Transaction};

/// What was published at a time.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Edition {
    /// Its number, from 1.
    pub number: i64,
    /// What was said of it.
    pub note: String,
    /// When.
    pub at: Timestamp,
    /// The revisions that it shows: kind, name and number.
    pub parts: Vec<(Kind, String, i64)>,
}

impl Store {
    /// Remembers that these revisions were published.
    ///
    /// # Errors
    /// [`StoreFault`] where one of them is not in the store, or somebody publishes at the same moment.
    pub async fn published(&self, of: &[Revision], note: &str, at: Timestamp) -> Result<Edition, StoreFault> {
        let mut writing = self.pool.begin().await?;
        let last = sqlx::query("SELECT COALESCE(MAX(number), 0) FROM edition").fetch_one(&mut *writing).await?;
        let parts = of.iter().map(|one| (one.kind, one.name.clone(), one.number)).collect();
        let edition = Edition { number: last.try_get::<i64, _>(0)? + 1, note: note.to_owned(), at, parts };
        keep(&mut writing, &edition).await?;
        writing.commit().await?;
        Ok(edition)
    }

    /// Every edition, the oldest first.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away.
    pub async fn editions(&self) -> Result<Vec<Edition>, StoreFault> {
        let rows = sqlx::query("SELECT number, note, published_at FROM edition ORDER BY number").fetch_all(&self.pool).await?;
        let mut editions = rows.iter().map(edition).collect::<Result<Vec<_>, _>>()?;
        let rows = sqlx::query("SELECT edition, kind, name, revision FROM edition_part").fetch_all(&self.pool).await?;
        for row in &rows {
            let (number, kind): (i64, String) = (row.try_get("edition")?, row.try_get("kind")?);
            let kind = Kind::of(&kind).ok_or(StoreFault::TooNew)?;
            if let Some(edition) = editions.iter_mut().find(|one| one.number == number) {
                edition.parts.push((kind, row.try_get("name")?, row.try_get("revision")?));
            }
        }
        editions.iter_mut().for_each(|edition| edition.parts.sort());
        Ok(editions)
    }
}

/// Keeps an edition whose revisions are kept.
pub async fn keep(writing: &mut Transaction<'_, Any>, edition: &Edition) -> Result<(), sqlx::Error> {
    let words = "INSERT INTO edition (number, note, published_at) VALUES ($1, $2, $3)";
    let query = sqlx::query(words).bind(edition.number).bind(&edition.note).bind(edition.at.to_string());
    query.execute(&mut **writing).await?;
    for (kind, name, revision) in &edition.parts {
        let words = "INSERT INTO edition_part (edition, kind, name, revision) VALUES ($1, $2, $3, $4)";
        let query = sqlx::query(words).bind(edition.number).bind(kind.word()).bind(name).bind(revision);
        query.execute(&mut **writing).await?;
    }
    Ok(())
}

fn edition(row: &AnyRow) -> Result<Edition, StoreFault> {
    let at: String = row.try_get("published_at")?;
    Ok(Edition {
        number: row.try_get("number")?,
        note: row.try_get("note")?,
        at: at.parse().map_err(|_| StoreFault::Damaged(format!("“{at}” is no time")))?,
        parts: Vec::new(),
    })
}
