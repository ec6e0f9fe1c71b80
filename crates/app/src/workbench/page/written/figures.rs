//! What is typed as a figure, an amount of money or a day, as a value of the file.

use crate::book::Opened;
use quantity::Money;
use toml_edit::{Item, value};

/// A number as a number, everything else as a text.
pub fn figure(text: &str) -> Item {
    let number = text.replace(',', ".");
    match (text.parse::<i64>(), number.parse::<f64>()) {
        (Ok(whole), _) => value(whole),
        (_, Ok(number)) if number.is_finite() => value(number),
        _ => value(text),
    }
}

/// A day as a day, everything else as a text, which is refused where a day is meant.
pub fn day(text: &str) -> Item {
    text.parse::<toml_edit::Datetime>().map_or_else(|_| value(text), value)
}

/// Whether a key's figure is an amount of money, by the words that describe it.
pub fn is_money(words: &str) -> bool {
    words.starts_with("an amount of money")
}

/// An amount as the book writes it, where a sign stands for the currency or the book's own is meant: "2,60 €" is
/// 2.60 EUR. What cannot be understood stays as it is typed.
pub fn money(text: &str, opened: &Opened) -> String {
    let understood = |text: &str| text.parse::<Money>().is_ok();
    if understood(text) {
        return text.to_owned();
    }
    let own = currency(opened);
    let mut amount = text.to_uppercase();
    for (sign, letters) in [("€", "EUR"), ("£", "GBP"), ("$", own.filter(|own| own.ends_with('D')).unwrap_or("$"))] {
        amount = amount.replace(sign, &format!(" {letters} "));
    }
    if let Some(own) = own.filter(|_| !amount.contains(|c: char| c.is_alphabetic() || c == '$')) {
        amount = format!("{amount} {own}");
    }
    let amount = amount.split_whitespace().collect::<Vec<_>>().join(" ");
    match amount.parse::<Money>() {
        Ok(money) => format!("{} {}", money.amount, money.currency),
        Err(_) => text.to_owned(),
    }
}

/// The book's currency: as its settings say, or else of its first price.
fn currency(opened: &Opened) -> Option<&str> {
    let said = opened.book.settings.currency.as_deref();
    said.or_else(|| opened.book.prices.packs.first().map(|pack| pack.costs.currency.as_str()))
}
