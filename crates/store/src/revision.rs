//! Revisions: saved, listed, read again.

use crate::{Kind, Saving, Store, StoreFault, gathered};
use jiff::Timestamp;
use sha2::{Digest, Sha256};
use sqlx::any::AnyRow;
use sqlx::{Any, Row, Transaction};

/// What a document said at a time.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Revision {
    /// What it is.
    pub kind: Kind,
    /// Its name.
    pub name: String,
    /// Its number, from 1.
    pub number: i64,
    /// The SHA-256 of its text, in hexadecimal.
    pub hash: String,
    /// Why it was changed.
    pub note: String,
    /// Who saved it.
    pub by: String,
    /// When.
    pub at: Timestamp,
}

/// What became of what was to be saved.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Saved {
    /// It is a new revision.
    New(Revision),
    /// It says what the latest revision says.
    Unchanged(Revision),
}

/// The name of a text: its SHA-256.
#[must_use]
pub fn hash(text: &str) -> String {
    Sha256::digest(text.as_bytes()).iter().map(|byte| format!("{byte:02x}")).collect()
}

impl Store {
    /// Saves a document as a new revision, unless it says what the latest says.
    ///
    /// # Errors
    /// [`StoreFault::SavedMeanwhile`] where a later revision is there than the one it was made from.
    pub async fn save(&self, saving: &Saving<'_>) -> Result<Saved, StoreFault> {
        let latest = self.latest(saving.kind, saving.name).await?;
        let meanwhile = |latest: i64| StoreFault::SavedMeanwhile { kind: saving.kind, name: saving.name.to_owned(), latest };
        let number = latest.as_ref().map_or(0, |one| one.number);
        let hash = hash(saving.text);
        match latest {
            Some(one) if one.hash == hash => return Ok(Saved::Unchanged(one)),
            _ if saving.from.is_some_and(|from| from != number) => return Err(meanwhile(number)),
            _ => {}
        }
        let revision = Revision {
            kind: saving.kind,
            name: saving.name.to_owned(),
            number: number + 1,
            hash,
            note: saving.note.to_owned(),
            by: saving.by.to_owned(),
            at: saving.at,
        };
        let mut writing = self.pool.begin().await?;
        keep_text(&mut writing, &revision.hash, saving.text).await?;
        match keep(&mut writing, &revision).await {
            // Two who saved at once: the key lets the first in.
            Err(sqlx::Error::Database(error)) if error.is_unique_violation() => return Err(meanwhile(number + 1)),
            other => other?,
        }
        gathered::add(&mut writing, (revision.kind, &revision.name, revision.number), saving.text).await?;
        writing.commit().await?;
        Ok(Saved::New(revision))
    }

    /// The latest revision of a document, if it was ever saved.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away.
    pub async fn latest(&self, kind: Kind, name: &str) -> Result<Option<Revision>, StoreFault> {
        Ok(self.history(kind, name).await?.pop())
    }

    /// Every revision of a document, the oldest first.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away.
    pub async fn history(&self, kind: Kind, name: &str) -> Result<Vec<Revision>, StoreFault> {
        let asked = "SELECT kind, name, number, hash, note, saved_by, saved_at FROM revision WHERE kind = $1 AND name = $2 ORDER BY number";
        let rows = sqlx::query(asked).bind(kind.word()).bind(name).fetch_all(&self.pool).await?;
        rows.iter().map(revision).collect()
    }

    /// What a revision said.
    ///
    /// # Errors
    /// [`StoreFault::NoSuch`] where there is none of that number.
    pub async fn text(&self, kind: Kind, name: &str, number: i64) -> Result<String, StoreFault> {
        let asked =
            "SELECT text.body FROM revision JOIN text ON text.hash = revision.hash WHERE kind = $1 AND name = $2 AND number = $3";
        let row = sqlx::query(asked).bind(kind.word()).bind(name).bind(number).fetch_optional(&self.pool).await?;
        match row {
            Some(row) => Ok(row.try_get(0)?),
            None => Err(StoreFault::NoSuch { kind, name: name.to_owned(), number }),
        }
    }

    /// Every revision of everything, by kind, name and number.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away.
    pub async fn revisions(&self) -> Result<Vec<Revision>, StoreFault> {
        let asked = "SELECT kind, name, number, hash, note, saved_by, saved_at FROM revision";
        let rows = sqlx::query(asked).fetch_all(&self.pool).await?;
        let mut all = rows.iter().map(revision).collect::<Result<Vec<_>, _>>()?;
        // Databases sort texts by the customs of their language; this order is the same everywhere.
        all.sort_by(|a, b| (a.kind, &a.name, a.number).cmp(&(b.kind, &b.name, b.number)));
        Ok(all)
    }
}

/// Keeps a text, once.
pub async fn keep_text(writing: &mut Transaction<'_, Any>, hash: &str, body: &str) -> Result<(), sqlx::Error> {
    let words = "INSERT INTO text (hash, body) VALUES ($1, $2) ON CONFLICT (hash) DO NOTHING";
    sqlx::query(words).bind(hash).bind(body).execute(&mut **writing).await.map(|_| ())
}

/// Keeps a revision whose text is kept.
pub async fn keep(writing: &mut Transaction<'_, Any>, one: &Revision) -> Result<(), sqlx::Error> {
    let words = "INSERT INTO revision (kind, name, number, hash, note, saved_by, saved_at) VALUES ($1, $2, $3, $4, $5, $6, $7)";
    let query = sqlx::query(words).bind(one.kind.word()).bind(&one.name).bind(one.number).bind(&one.hash);
    query.bind(&one.note).bind(&one.by).bind(one.at.to_string()).execute(&mut **writing).await.map(|_| ())
}

fn revision(row: &AnyRow) -> Result<Revision, StoreFault> {
    let kind: String = row.try_get("kind")?;
    let at: String = row.try_get("saved_at")?;
    Ok(Revision {
        kind: Kind::of(&kind).ok_or(StoreFault::TooNew)?,
        name: row.try_get("name")?,
        number: row.try_get("number")?,
        hash: row.try_get("hash")?,
        note: row.try_get("note")?,
        by: row.try_get("saved_by")?,
        at: at.parse().map_err(|_| StoreFault::Damaged(format!("“{at}” is no time")))?,
    })
}
