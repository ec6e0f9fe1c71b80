//! How long formulas of the demo book take, by adding up their steps by hand.

use crate::demo::book;
use plan::hours;
use quantity::{Between, TimeSpan};

const fn minutes(from: f64, to: f64) -> Between<TimeSpan> {
    Between { from: TimeSpan::minutes(from), to: TimeSpan::minutes(to) }
}

#[test]
fn the_formulas_that_a_formula_uses_take_their_time() {
    let book = book();
    let hours = |name: &str| hours(&book.formula(name).expect("a formula").value);
    // Base syrup: 2 to 3 min at the boil, then 90 to 150 min cooling.
    let syrup = hours("base-syrup");
    assert_eq!((syrup.cooking, syrup.total), (minutes(2.0, 3.0), minutes(92.0, 153.0)));
    // Knots: 14 to 17 min in the oven, and the syrup's 2 to 3 min on the hob.
    let knots = hours("cardamom-knots");
    assert_eq!(knots.cooking, minutes(16.0, 20.0));
    // With hands: 4 + 10 to 12 + 12 to 15 + 15 to 20 for the knots, 4 to 5 + 2 for the filling, 5 for the glaze.
    assert_eq!(knots.preparing, minutes(52.0, 63.0));
}
