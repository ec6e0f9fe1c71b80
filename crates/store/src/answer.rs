//! Answers of tasters: each kept once however often it is sent, none read before the sitting is closed.

use crate::sitting::moment;
use crate::{Address, Store, StoreFault};
use jiff::Timestamp;
use sqlx::any::AnyRow;
use sqlx::{Any, Executor, Row, Transaction};

/// An answer that is to be kept.
#[derive(Clone, Copy, Debug)]
pub struct Answering<'a> {
    /// The sitting and the seat.
    pub seat: (i64, i64),
    /// What it answers.
    pub item: &'a str,
    /// What it says.
    pub value: &'a str,
    /// The name that whoever sends it gave it: sent again under the same name, it is the same answer.
    pub client: &'a str,
    /// When.
    pub at: Timestamp,
}

/// An answer that is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// The seat.
    pub seat: i64,
    /// What it answers.
    pub item: String,
    /// 1 for the first, and one more with each correction.
    pub number: i64,
    /// The name it was sent under.
    pub client: String,
    /// What it says.
    pub value: String,
    /// When.
    pub at: Timestamp,
}

/// What became of an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kept {
    /// It is kept.
    New,
    /// It is kept in the place of an earlier one, which stays.
    Corrected,
    /// It was there already.
    Already,
}

/// How far a sitting has come: all that may be known before it is closed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Progress {
    /// The seat.
    pub seat: i64,
    /// Whether its taster agreed.
    pub agreed: bool,
    /// How many items are answered.
    pub answered: i64,
}

/// The statement by which a taster agrees, once.
const AGREE: &str = "UPDATE seat SET agreed_at = $3 WHERE sitting = $1 AND number = $2 AND agreed_at = '' AND forgotten_at = ''";

/// Two who correct one answer at the same moment take their turns; this many times at most.
const TURNS: usize = 20;

impl Store {
    /// Notes that the taster at a seat was told what is in it and agreed; again does no harm.
    ///
    /// # Errors
    /// [`StoreFault::NotTaken`] where the sitting is closed, or the seat not there or given up.
    pub async fn agree(&self, seat: (i64, i64), at: Timestamp) -> Result<(), StoreFault> {
        takes_answers(&self.pool, seat, false).await?;
        sqlx::query(AGREE).bind(seat.0).bind(seat.1).bind(at.to_string()).execute(&self.pool).await?;
        Ok(())
    }

    /// The statement that adds an answer where it is none already and the seat takes it.
    fn adding(&self) -> String {
        let latest =
            "(SELECT MAX(other.number) FROM answer AS other WHERE other.sitting = $1 AND other.seat = $2 AND other.item = $3)";
        // On a server, whoever closes the sitting or gives the seat up waits for this answer, or this one for them.
        let lock = if matches!(self.address, Address::Server(_)) { "FOR SHARE" } else { "" };
        format!(
            "INSERT INTO answer (sitting, seat, item, number, client, value, answered_at)
             SELECT sitting.number, seat.number, $3, COALESCE({latest}, 0) + 1, $4, $5, $6
             FROM sitting JOIN seat ON seat.sitting = sitting.number
             WHERE sitting.number = $1 AND seat.number = $2
               AND sitting.closed_at = '' AND seat.agreed_at <> '' AND seat.forgotten_at = ''
               AND NOT EXISTS (SELECT 1 FROM answer AS same WHERE same.sitting = $1 AND same.seat = $2 AND same.item = $3
                               AND same.value = $5 AND same.number = {latest}) {lock}"
        )
    }

    /// Keeps answers whose tasters agreed on their ballots, all of them or none: what became of each, in their order.
    ///
    /// # Errors
    /// [`StoreFault::NotTaken`] where the sitting is closed, or a seat not there or given up.
    pub async fn answer_all(&self, all: &[Answering<'_>]) -> Result<Vec<Kept>, StoreFault> {
        for _ in 0..TURNS {
            if let Some(became) = self.try_all(all).await? {
                return Ok(became);
            }
        }
        Err(StoreFault::NotTaken("others are answering in its place at this moment"))
    }

    /// The same; nothing where somebody answered in the same place at the same moment, so that all of it goes once more.
    async fn try_all(&self, all: &[Answering<'_>]) -> Result<Option<Vec<Kept>>, StoreFault> {
        let mut writing = self.pool.begin().await?;
        for one in all {
            sqlx::query(AGREE).bind(one.seat.0).bind(one.seat.1).bind(one.at.to_string()).execute(&mut *writing).await?;
        }
        let words = self.adding();
        let mut became = Vec::new();
        for one in all {
            takes_answers(&mut *writing, one.seat, true).await?;
            let query = sqlx::query(sqlx::AssertSqlSafe(words.clone())).bind(one.seat.0).bind(one.seat.1).bind(one.item);
            let kept = match query.bind(one.client).bind(one.value).bind(one.at.to_string()).execute(&mut *writing).await {
                Err(sqlx::Error::Database(error)) if error.is_unique_violation() => return Ok(None),
                other => other?,
            };
            let asked = "SELECT COALESCE(MAX(number), 0) FROM answer WHERE sitting = $1 AND seat = $2 AND item = $3";
            let last = sqlx::query(asked).bind(one.seat.0).bind(one.seat.1).bind(one.item).fetch_one(&mut *writing).await?;
            became.push(match (kept.rows_affected(), last.try_get::<i64, _>(0)?) {
                (0, _) => Kept::Already,
                (_, 1) => Kept::New,
                _ => Kept::Corrected,
            });
        }
        writing.commit().await?;
        Ok(Some(became))
    }

    /// Keeps an answer, once.
    ///
    /// # Errors
    /// [`StoreFault::NotTaken`] where the sitting is closed, nobody agreed, or the answer's name was used for another.
    pub async fn answer(&self, one: &Answering<'_>) -> Result<Kept, StoreFault> {
        let words = self.adding();
        for _ in 0..TURNS {
            let query = sqlx::query(sqlx::AssertSqlSafe(words.clone())).bind(one.seat.0).bind(one.seat.1).bind(one.item);
            let kept = query.bind(one.client).bind(one.value).bind(one.at.to_string()).execute(&self.pool).await;
            match kept {
                Ok(kept) if kept.rows_affected() == 1 => {
                    let own = self.answers_at(one.seat).await?;
                    let is_first = own.iter().any(|own| own.client == one.client && own.number == 1);
                    return Ok(if is_first { Kept::New } else { Kept::Corrected });
                }
                Ok(_) => {
                    takes_answers(&self.pool, one.seat, true).await?;
                    return Ok(Kept::Already);
                }
                Err(sqlx::Error::Database(error)) if error.is_unique_violation() => {
                    let own = self.answers_at(one.seat).await?;
                    match own.iter().find(|own| own.client == one.client) {
                        Some(own) if own.item == one.item && own.value == one.value => return Ok(Kept::Already),
                        Some(_) => return Err(StoreFault::NotTaken("another answer was sent under the same name")),
                        // Somebody corrected the same answer at the same moment: it is this one's turn now.
                        None => {}
                    }
                }
                Err(other) => return Err(other.into()),
            }
        }
        Err(StoreFault::NotTaken("others are answering in its place at this moment"))
    }

    /// The answers of one seat, which its taster may see at any time, earlier ones before their corrections.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away.
    pub async fn answers_at(&self, (sitting, seat): (i64, i64)) -> Result<Vec<Answer>, StoreFault> {
        let asked = "SELECT seat, item, number, client, value, answered_at FROM answer WHERE sitting = $1 AND seat = $2";
        let rows = sqlx::query(asked).bind(sitting).bind(seat).fetch_all(&self.pool).await?;
        in_order(&rows)
    }

    /// The answers of a closed sitting.
    ///
    /// # Errors
    /// [`StoreFault::StillOpen`] until it is closed.
    pub async fn answers(&self, sitting: i64) -> Result<Vec<Answer>, StoreFault> {
        match self.sitting_of(sitting).await? {
            Some(one) if one.closed.is_none() => Err(StoreFault::StillOpen(one.tasting)),
            _ => self.all_answers(sitting).await,
        }
    }

    /// Every answer of a sitting, for the records alone.
    pub(crate) async fn all_answers(&self, sitting: i64) -> Result<Vec<Answer>, StoreFault> {
        let asked = "SELECT seat, item, number, client, value, answered_at FROM answer WHERE sitting = $1";
        in_order(&sqlx::query(asked).bind(sitting).fetch_all(&self.pool).await?)
    }

    /// How far each seat of a sitting has come.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away.
    pub async fn progress(&self, sitting: i64) -> Result<Vec<Progress>, StoreFault> {
        let asked = "SELECT seat.number, seat.agreed_at, COUNT(DISTINCT answer.item) FROM seat
                     LEFT JOIN answer ON answer.sitting = seat.sitting AND answer.seat = seat.number
                     WHERE seat.sitting = $1 GROUP BY seat.number, seat.agreed_at ORDER BY seat.number";
        let row = |row: &AnyRow| {
            let agreed: String = row.try_get(1)?;
            Ok(Progress { seat: row.try_get(0)?, agreed: !agreed.is_empty(), answered: row.try_get(2)? })
        };
        sqlx::query(asked).bind(sitting).fetch_all(&self.pool).await?.iter().map(row).collect()
    }

    /// Removes a taster's answers and agreement; how many answers there were. The seat stays empty.
    ///
    /// # Errors
    /// [`StoreFault::NotTaken`] where there is no such seat.
    pub async fn forget(&self, (sitting, seat): (i64, i64), at: Timestamp) -> Result<u64, StoreFault> {
        let mut writing = self.pool.begin().await?;
        let words = "UPDATE seat SET agreed_at = '', forgotten_at = $3 WHERE sitting = $1 AND number = $2";
        let given_up = sqlx::query(words).bind(sitting).bind(seat).bind(at.to_string()).execute(&mut *writing).await?;
        if given_up.rows_affected() == 0 {
            return Err(StoreFault::NotTaken("there is no such seat"));
        }
        let words = "DELETE FROM answer WHERE sitting = $1 AND seat = $2";
        let removed = sqlx::query(words).bind(sitting).bind(seat).execute(&mut *writing).await?;
        writing.commit().await?;
        // What was removed must not be read from the file or its log, either.
        let clean = if matches!(self.address, Address::Server(_)) { "VACUUM answer" } else { "PRAGMA wal_checkpoint(TRUNCATE)" };
        sqlx::query(clean).execute(&self.pool).await?;
        Ok(removed.rows_affected())
    }
}

/// Why a seat takes no answers, if it takes none.
async fn takes_answers<'e>(
    asking: impl Executor<'e, Database = Any>,
    (sitting, seat): (i64, i64),
    must_agree: bool,
) -> Result<(), StoreFault> {
    let asked = "SELECT sitting.closed_at, seat.agreed_at, seat.forgotten_at FROM sitting
                 JOIN seat ON seat.sitting = sitting.number WHERE sitting.number = $1 AND seat.number = $2";
    let row = sqlx::query(asked).bind(sitting).bind(seat).fetch_optional(asking).await?;
    let Some(row) = row else { return Err(StoreFault::NotTaken("there is no such seat")) };
    let (closed, agreed, forgotten): (String, String, String) = (row.try_get(0)?, row.try_get(1)?, row.try_get(2)?);
    match () {
        () if !closed.is_empty() => Err(StoreFault::NotTaken("the tasting is closed")),
        () if !forgotten.is_empty() => Err(StoreFault::NotTaken("this seat was given up, and its answers were removed")),
        () if must_agree && agreed.is_empty() => Err(StoreFault::NotTaken("the taster has not agreed yet")),
        () => Ok(()),
    }
}

/// Keeps an answer whose seat is kept.
pub async fn keep(writing: &mut Transaction<'_, Any>, sitting: i64, one: &Answer) -> Result<(), sqlx::Error> {
    let words =
        "INSERT INTO answer (sitting, seat, item, number, client, value, answered_at) VALUES ($1, $2, $3, $4, $5, $6, $7)";
    let query = sqlx::query(words).bind(sitting).bind(one.seat).bind(&one.item).bind(one.number).bind(&one.client);
    query.bind(&one.value).bind(one.at.to_string()).execute(&mut **writing).await.map(|_| ())
}

/// Databases sort texts by the customs of their language; this order is the same everywhere.
fn in_order(rows: &[AnyRow]) -> Result<Vec<Answer>, StoreFault> {
    let mut all = rows.iter().map(answer).collect::<Result<Vec<_>, _>>()?;
    all.sort_by(|a, b| (a.seat, &a.item, a.number).cmp(&(b.seat, &b.item, b.number)));
    Ok(all)
}

fn answer(row: &AnyRow) -> Result<Answer, StoreFault> {
    let at: String = row.try_get("answered_at")?;
    Ok(Answer {
        seat: row.try_get("seat")?,
        item: row.try_get("item")?,
        number: row.try_get("number")?,
        client: row.try_get("client")?,
        value: row.try_get("value")?,
        at: moment(&at)?,
    })
}
