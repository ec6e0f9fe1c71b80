//! What was paid for ingredients over time, in words.

use super::text::change;
use crate::words::wrap;
use bench::cost::{Paid, Paying};

/// A line an ingredient that was ever dearer or cheaper, then those of one price; nothing where nothing was asked.
pub fn text(paid: &[Paid], width: usize) -> String {
    if paid.is_empty() {
        return String::new();
    }
    let mut out = "\nWhat was paid\n".to_owned();
    let (moved, still): (Vec<&Paid>, Vec<&Paid>) = paid.iter().partition(|one| one.prices.len() > 1);
    for one in moved {
        out.push_str(&wrap(&format!("• {}: {}{}.", one.title, prices(&one.prices), in_all(one)), width));
    }
    if !still.is_empty() {
        let still: Vec<String> = still.iter().map(|one| format!("{} {}", one.title, prices(&one.prices))).collect();
        out.push_str(&wrap(&format!("• At one price: {}.", still.join("; ")), width));
    }
    out
}

/// "10 kg for 14.80 EUR from 2026-08-20, 10 kg for 15.60 EUR from 2026-10-14 (+5.4 %)".
fn prices(prices: &[Paying]) -> String {
    let before = std::iter::once(None).chain(prices.iter().map(|one| one.a_kilogram));
    let one = |(one, before): (&Paying, Option<rust_decimal::Decimal>)| {
        let from = one.on.map(|on| format!(" from {on}")).unwrap_or_default();
        let moved = before.zip(one.a_kilogram).map(|(was, is)| format!(" ({})", change(was, is))).unwrap_or_default();
        format!("{} for {}{from}{moved}", one.pack, one.costs)
    };
    prices.iter().zip(before).map(one).collect::<Vec<_>>().join(", ")
}

/// "; in all +14 % since 2026-03-01", where there were more than two prices.
fn in_all(one: &Paid) -> String {
    let (Some(first), Some(last), true) = (one.prices.first(), one.prices.last(), one.prices.len() > 2) else {
        return String::new();
    };
    let (Some(was), Some(is)) = (first.a_kilogram, last.a_kilogram) else { return String::new() };
    let since = first.on.map_or_else(|| "the first price".to_owned(), |on| on.to_string());
    format!("; in all {} since {since}", change(was, is))
}
