//! No equation panics, whatever numbers it is given, and each gives the same bits again.

mod keeping;
mod kitchen;
mod nutrition;
mod sensory;
mod sugar;

/// Any number at all: infinities, the smallest, and what is no number.
fn any_number() -> proptest::num::f64::Any {
    proptest::num::f64::ANY
}

#[test]
fn every_equation_says_where_it_holds() {
    for equation in science::equations() {
        for valid in equation.valid {
            assert!(valid.from <= valid.to, "{}: {} runs backwards", equation.name, valid.symbol);
        }
        let unknown = vec![f64::NAN; equation.valid.len()];
        assert_eq!(equation.outside(&unknown).len(), equation.valid.len());
    }
}

#[test]
fn an_input_outside_is_named_and_still_answered() {
    use quantity::{Fraction, Temperature};
    use science::sugar::viscosity::{EQUATION, viscosity};
    let outside = EQUATION.outside(&[90.0, 20.0]);
    assert_eq!(outside.iter().map(|outside| outside.valid.symbol).collect::<Vec<_>>(), ["B"]);
    assert!(viscosity(Fraction::percent(90.0), Temperature::celsius(20.0)).is_finite());
}
