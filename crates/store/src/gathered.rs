//! What texts tell of prices and trials, in rows that can be asked: worked out of the texts that are kept, and made anew
//! from them at any time.

use crate::{Kind, Store, StoreFault};
use formula::logging::figures;
use formula::read::read_prices;
use formula::source::Source;
use jiff::Timestamp;
use sqlx::any::AnyRow;
use sqlx::{Any, Row, Transaction};

/// What a pack cost, as a revision of the prices tells it; what it does not tell is empty.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PriceTold {
    /// When that revision was saved.
    pub at: Timestamp,
    /// The revision's number.
    pub revision: i64,
    /// The ingredient.
    pub ingredient: String,
    /// How much is in the pack.
    pub pack: String,
    /// What it costs, with its currency.
    pub costs: String,
    /// On which day.
    pub on: String,
    /// Where it was bought.
    pub from: String,
    /// The part of it that is left after peel and trimming.
    pub edible: String,
}

/// A figure of a trial.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FigureTold {
    /// The trial.
    pub trial: String,
    /// The formula that was baked.
    pub formula: String,
    /// The day on which it was begun; empty where that is not told.
    pub on: String,
    /// The figure: "levain/ferment/ph after 13 h".
    pub figure: String,
    /// What was noted of it.
    pub value: String,
}

/// The reading by which rows are made. It is counted up where another would make other rows of the same texts.
const READING: i64 = 1;

impl Store {
    /// Makes all rows anew from the texts; gives how many prices and figures there are.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away or refuses; the rows then stay as they were.
    pub async fn gather(&self) -> Result<(usize, usize), StoreFault> {
        let mut writing = self.pool.begin().await?;
        let counts = all(&mut writing).await?;
        writing.commit().await?;
        Ok(counts)
    }

    /// Makes the rows where they were never made, or by another reading.
    pub(crate) async fn gather_if_old(&self) -> Result<(), StoreFault> {
        let row = sqlx::query("SELECT reading FROM gathered").fetch_optional(&self.pool).await?;
        let reading: Option<i64> = row.map(|row| row.try_get(0)).transpose()?;
        if reading == Some(READING) {
            return Ok(());
        }
        match self.gather().await {
            // Somebody else opened it at the same moment and made them.
            Err(StoreFault::Refused(_)) if self.is_gathered().await? => Ok(()),
            other => other.map(drop),
        }
    }

    async fn is_gathered(&self) -> Result<bool, StoreFault> {
        let row = sqlx::query("SELECT reading FROM gathered").fetch_optional(&self.pool).await?;
        Ok(row.is_some_and(|row| row.try_get::<i64, _>(0).is_ok_and(|reading| reading == READING)))
    }

    /// Every price that was ever saved, revision by revision, each in the order in which it stood there.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away.
    pub async fn prices(&self) -> Result<Vec<PriceTold>, StoreFault> {
        let asked = "SELECT revision.saved_at, price.revision, ingredient, pack, costs, paid_on, bought_from, edible FROM price \
            JOIN revision ON revision.kind = price.kind AND revision.name = price.name AND revision.number = price.revision \
            ORDER BY price.revision, place";
        sqlx::query(asked).fetch_all(&self.pool).await?.iter().map(price_told).collect()
    }

    /// Every figure of the trials of a formula, by the day, then by the trial, each in the order in which it stood there.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away.
    pub async fn figures(&self, formula: &str) -> Result<Vec<FigureTold>, StoreFault> {
        let asked = "SELECT trial, formula, begun_on, figure, value FROM figure WHERE formula = $1 ORDER BY place";
        let rows = sqlx::query(asked).bind(formula).fetch_all(&self.pool).await?;
        let mut all = rows.iter().map(figure_told).collect::<Result<Vec<_>, _>>()?;
        // Databases sort texts by the customs of their language; this order is the same everywhere.
        all.sort_by(|a, b| (&a.on, &a.trial).cmp(&(&b.on, &b.trial)));
        Ok(all)
    }
}

/// Everything anew.
pub async fn all(writing: &mut Transaction<'_, Any>) -> Result<(usize, usize), sqlx::Error> {
    for words in ["DELETE FROM price", "DELETE FROM figure", "DELETE FROM gathered"] {
        sqlx::query(words).execute(&mut **writing).await?;
    }
    let asked = "SELECT kind, name, number, body FROM revision JOIN text ON text.hash = revision.hash \
        WHERE kind IN ('prices', 'trial') ORDER BY number";
    let rows = sqlx::query(asked).fetch_all(&mut **writing).await?;
    for row in &rows {
        let (kind, name): (String, String) = (row.try_get("kind")?, row.try_get("name")?);
        let Some(kind) = Kind::of(&kind) else { continue };
        let body: String = row.try_get("body")?;
        add(writing, (kind, &name, row.try_get("number")?), &body).await?;
    }
    sqlx::query("INSERT INTO gathered (reading) VALUES ($1)").bind(READING).execute(&mut **writing).await?;
    let mut counts = [0, 0];
    for (count, asked) in counts.iter_mut().zip(["SELECT COUNT(*) FROM price", "SELECT COUNT(*) FROM figure"]) {
        *count = sqlx::query(asked).fetch_one(&mut **writing).await?.try_get::<i64, _>(0)?;
    }
    Ok((counts[0] as usize, counts[1] as usize))
}

/// What a revision that was just kept tells. A text with faults tells what can be read of it.
pub async fn add(
    writing: &mut Transaction<'_, Any>,
    (kind, name, number): (Kind, &str, i64),
    text: &str,
) -> Result<(), sqlx::Error> {
    match kind {
        Kind::Prices => prices(writing, name, number, text).await,
        Kind::Trial => trial(writing, name, number, text).await,
        _ => Ok(()),
    }
}

async fn prices(writing: &mut Transaction<'_, Any>, name: &str, number: i64, text: &str) -> Result<(), sqlx::Error> {
    let told = read_prices(&Source { file: "prices.toml".into(), text: text.to_owned() }).value;
    let words = "INSERT INTO price (kind, name, revision, place, ingredient, pack, costs, paid_on, bought_from, edible) \
        VALUES ('prices', $1, $2, $3, $4, $5, $6, $7, $8, $9)";
    for (place, pack) in (0_i64..).zip(&told.packs) {
        let on = pack.on.map(|on| on.to_string()).unwrap_or_default();
        let edible = pack.edible.map(|share| format!("{} %", share.as_percent())).unwrap_or_default();
        let query = sqlx::query(words).bind(name).bind(number).bind(place).bind(kept(&pack.of.value));
        let query = query.bind(kept(&pack.pack.value.to_string())).bind(kept(&pack.costs.to_string())).bind(on);
        query.bind(kept(pack.from.as_deref().unwrap_or_default())).bind(edible).execute(&mut **writing).await?;
    }
    Ok(())
}

async fn trial(writing: &mut Transaction<'_, Any>, name: &str, number: i64, text: &str) -> Result<(), sqlx::Error> {
    sqlx::query("DELETE FROM figure WHERE trial = $1").bind(name).execute(&mut **writing).await?;
    let told = figures(text);
    let head = |key: &str| told.iter().find(|(name, _)| name == key).map(|(_, value)| kept(value)).unwrap_or_default();
    let (formula, on) = (head("formula"), head("date"));
    let words = "INSERT INTO figure (kind, trial, revision, place, formula, begun_on, figure, value) \
        VALUES ('trial', $1, $2, $3, $4, $5, $6, $7)";
    // What is seen of a stage is called by stage, step or line, and key.
    let seen = told.iter().filter(|(figure, _)| figure.matches('/').count() >= 2);
    for (place, (figure, value)) in (0_i64..).zip(seen) {
        let query = sqlx::query(words).bind(name).bind(number).bind(place).bind(&formula).bind(&on);
        query.bind(kept(figure)).bind(kept(value)).execute(&mut **writing).await?;
    }
    Ok(())
}

/// A text as both databases keep it, one of which has no nought among its letters, and as people type it.
fn kept(text: &str) -> String {
    text.replace(['\0', '\u{a0}'], " ")
}

fn price_told(row: &AnyRow) -> Result<PriceTold, StoreFault> {
    let at: String = row.try_get("saved_at")?;
    Ok(PriceTold {
        at: at.parse().map_err(|_| StoreFault::Damaged(format!("“{at}” is no time")))?,
        revision: row.try_get("revision")?,
        ingredient: row.try_get("ingredient")?,
        pack: row.try_get("pack")?,
        costs: row.try_get("costs")?,
        on: row.try_get("paid_on")?,
        from: row.try_get("bought_from")?,
        edible: row.try_get("edible")?,
    })
}

fn figure_told(row: &AnyRow) -> Result<FigureTold, StoreFault> {
    Ok(FigureTold {
        trial: row.try_get("trial")?,
        formula: row.try_get("formula")?,
        on: row.try_get("begun_on")?,
        figure: row.try_get("figure")?,
        value: row.try_get("value")?,
    })
}
