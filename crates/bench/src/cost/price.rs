//! A price from a cost: the trade's food-cost percentage, rounded once, upwards.

use quantity::Fraction;
use rust_decimal::{Decimal, RoundingStrategy};

/// Returns the price of which the food's cost is a share: cost / share, rounded up to the currency's smallest coin.
///
/// None for a share of nothing. Gisslen, Professional Cooking, on food-cost percentage: 6.75 at 35 % of the
/// price would be 19.29.
#[must_use]
pub fn for_food_cost(cost: Decimal, share: Fraction, decimals: u32) -> Option<Decimal> {
    let share = super::decimal(share.as_ratio());
    let price = cost.checked_div(share)?;
    Some(price.round_dp_with_strategy(decimals, RoundingStrategy::AwayFromZero))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked examples of food-cost pricing: 1.60 at 40 % is 4.00 and 0.86945 at 25 % is 3.48 (shared
    /// sources: a copy of Gisslen, Professional Cooking; Holt.Blue MTH 81, chapter 11). Rounded up as here.
    #[test]
    fn prices_follow_the_trades_examples() {
        for (cost, percent, price) in [("1.60", 40.0, "4.00"), ("0.86945", 25.0, "3.48"), ("2.36", 35.0, "6.75")] {
            let cost: Decimal = cost.parse().expect("a decimal");
            let found = for_food_cost(cost, Fraction::percent(percent), 2).expect("a price");
            assert_eq!(found, price.parse::<Decimal>().expect("a decimal"), "{cost} at {percent} %");
        }
        assert_eq!(for_food_cost(Decimal::ONE, Fraction::ZERO, 2), None);
    }
}
