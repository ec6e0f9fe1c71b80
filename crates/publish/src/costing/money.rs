//! Money as it is told: rounded up to the smallest coin of its currency.

use rust_decimal::{Decimal, RoundingStrategy};

/// Rounded up to the currency's smallest coin, by ISO 4217's minor units; from memory for those that are not two. What
/// the last of many digits adds is no coin: a sum of exact cents stays what it is.
#[must_use]
pub fn up(amount: Decimal, currency: &str) -> Decimal {
    let decimals = match currency {
        "JPY" | "KRW" | "CLP" | "ISK" | "VND" => 0,
        "BHD" | "JOD" | "KWD" | "OMR" | "TND" => 3,
        _ => 2,
    };
    let mut rounded = amount.round_dp(9).round_dp_with_strategy(decimals, RoundingStrategy::AwayFromZero);
    rounded.rescale(decimals);
    rounded
}

/// An amount with its currency.
#[must_use]
pub fn money(amount: Decimal, currency: &str) -> String {
    format!("{}\u{a0}{currency}", up(amount, currency))
}

/// A share in whole percent.
#[must_use]
pub fn percent(share: Decimal) -> String {
    let minus = if share.is_sign_negative() && !share.is_zero() { "−" } else { "" };
    format!(
        "{minus}{}\u{a0}%",
        (share.abs() * Decimal::ONE_HUNDRED).round_dp_with_strategy(0, RoundingStrategy::MidpointAwayFromZero)
    )
}

/// A part of a whole in whole percent; nothing of nothing.
#[must_use]
pub fn share(part: Decimal, whole: Decimal) -> String {
    percent(part.checked_div(whole).unwrap_or_default())
}
