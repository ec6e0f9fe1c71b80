//! What a book said of prices whenever it was saved, from its memory, and what it says now.

use crate::failure::Failure;
use crate::memory::told;
use bench::cost::Said;
use formula::Book;
use formula::prices::currency;
use formula::read::{Pack, read_prices};
use formula::source::Source;
use jiff::Timestamp;
use jiff::tz::TimeZone;
use store::{PriceTold, Store};
use toml_edit::{Date, Value};

/// All of it, the first saying first; what is told in another currency than the book reckons in is left out.
pub async fn said(store: Option<&Store>, book: &Book) -> Result<Vec<Said>, Failure> {
    let rows = match store {
        Some(store) => store.prices().await.map_err(told)?,
        None => Vec::new(),
    };
    let own = currency(&book.prices, &book.settings);
    let said = rows.chunk_by(|a, b| a.revision == b.revision).map(|rows| {
        let packs = packs(rows).into_iter().filter(|pack| Some(&pack.costs.currency) == own.as_ref());
        Said { saved: day(rows[0].at), packs: packs.collect() }
    });
    let now = Said { saved: day(Timestamp::now()), packs: book.prices.packs.clone() };
    Ok(said.chain([now]).collect())
}

/// Rows read as the file's own lines are.
fn packs(rows: &[PriceTold]) -> Vec<Pack> {
    let mut text = String::new();
    for row in rows {
        text.push_str("[[price]]\n");
        let told =
            [("of", &row.ingredient), ("pack", &row.pack), ("costs", &row.costs), ("from", &row.from), ("edible", &row.edible)];
        for (key, value) in told.into_iter().filter(|(_, value)| !value.is_empty()) {
            text.push_str(&format!("{key} = {}\n", Value::from(value.as_str())));
        }
        if !row.on.is_empty() {
            text.push_str(&format!("on = {}\n", row.on));
        }
    }
    read_prices(&Source { file: "prices.toml".into(), text }).value.packs
}

/// The day of a moment, where the clock hangs.
fn day(at: Timestamp) -> Date {
    let local = at.to_zoned_datetime(TimeZone::try_system().unwrap_or(TimeZone::UTC));
    Date {
        year: u16::try_from(local.year()).unwrap_or_default(),
        month: u8::try_from(local.month()).unwrap_or(1),
        day: u8::try_from(local.day()).unwrap_or(1),
    }
}
