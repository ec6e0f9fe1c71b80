//! A book's prices bound to its ingredients and its currency.

use crate::read::{BookSettings, Prices};
use crate::{Diagnostic, Pantry, Place, fault};
use quantity::Money;
use std::sync::Arc;

/// The file of prices.
pub const PRICES: &str = "prices.toml";

/// What is wrong with prices in a book: ingredients that nobody knows, and currencies that cannot be added up.
pub fn misplaced(prices: &Prices, pantry: &Pantry, settings: &BookSettings) -> Vec<Diagnostic> {
    let mut found = Vec::new();
    for pack in &prices.packs {
        if pantry.find(&pack.of.value).is_none() {
            let message = format!("there is no ingredient called “{}”", pack.of.value);
            let one = fault::UNKNOWN_INGREDIENT.at(pack.of.place(&prices.file), message);
            found.push(match pantry.nearest(&pack.of.value) {
                Some(near) => one.hint(format!("did you mean “{near}”?")),
                None => one.hint("`wellproved ingredients WORD` searches the names"),
            });
        }
    }
    let Some(currency) = currency(prices, settings) else { return found };
    let all = prices
        .packs
        .iter()
        .map(|pack| &pack.costs)
        .chain(&prices.electricity)
        .chain(&prices.gas)
        .chain(&prices.hour)
        .chain(&prices.packaging);
    if let Some(other) = all.into_iter().find(|money| money.currency != currency) {
        let message = format!("“{other}” cannot be added to prices in {currency}");
        let place = Place { file: Arc::clone(&prices.file), span: 0..0 };
        found.push(fault::TWO_CURRENCIES.at(place, message).hint("state every price in the book's currency"));
    }
    found
}

/// The currency of a book: as its settings say, or else of its first price.
#[must_use]
pub fn currency(prices: &Prices, settings: &BookSettings) -> Option<String> {
    let first =
        || prices.packs.first().map(|pack| &pack.costs).or(prices.hour.as_ref()).map(|money: &Money| money.currency.clone());
    settings.currency.clone().or_else(first)
}
