//! Money: a decimal amount in a named currency, never a float.

use rust_decimal::Decimal;
use std::fmt;
use std::str::FromStr;

/// An amount of money.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Money {
    /// The amount, exactly as stated.
    pub amount: Decimal,
    /// The currency's three letters of ISO 4217, such as EUR.
    pub currency: String,
}

/// Why a text is not an amount of money.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MoneyFault(String);

impl fmt::Display for MoneyFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl FromStr for Money {
    type Err = MoneyFault;

    /// Reads "1.20 EUR" or "EUR 1,20": an amount and the three letters of ISO 4217.
    fn from_str(text: &str) -> Result<Self, MoneyFault> {
        let fault = || MoneyFault(format!("“{text}” is not money: write an amount and its currency, such as \"1.20 EUR\""));
        let letters = |word: &str| word.len() == 3 && word.chars().all(|c| c.is_ascii_uppercase());
        let words: Vec<&str> = text.split_whitespace().collect();
        let (amount, currency) = match words[..] {
            [amount, currency] if letters(currency) => (amount, currency),
            [currency, amount] if letters(currency) => (amount, currency),
            _ => return Err(fault()),
        };
        // A comma before three digits is a thousand to some, a decimal mark to others.
        let ambiguous = amount.split_once(',').is_some_and(|(whole, part)| whole != "0" && part.len() == 3);
        if ambiguous {
            return Err(fault());
        }
        let amount = Decimal::from_str_exact(&amount.replace(',', ".")).map_err(|_| fault())?;
        Ok(Self { amount, currency: currency.to_owned() })
    }
}

impl fmt::Display for Money {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}\u{a0}{}", self.amount, self.currency)
    }
}
