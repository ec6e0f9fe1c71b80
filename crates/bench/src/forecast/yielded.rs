//! What comes of a component: mass at each end, and the pieces it makes.

use formula::Formula;
use quantity::{Count, Mass};

/// What comes of a component.
#[derive(Clone, Debug)]
pub struct Yielded {
    /// The component.
    pub component: usize,
    /// What its last stage makes.
    pub made: Mass,
    /// What is left after make-up.
    pub raw: Mass,
    /// What is left when it is done.
    pub done: Mass,
    /// The pieces of the stated weight that come of it, and how many are stated.
    pub pieces: Option<(f64, Count)>,
    /// What a piece weighs when it is done.
    pub piece: Option<Mass>,
}

/// Works out what comes of every component.
#[must_use]
pub fn yielded(formula: &Formula) -> Vec<Yielded> {
    let one = |(component, of): (usize, &formula::Component)| {
        let yields = &of.yields;
        let stated = yields.pieces.filter(|pieces| *pieces > Count::ZERO);
        let weight = yields.scaling_weight.filter(|weight| *weight > Mass::ZERO);
        Yielded {
            component,
            made: yields.made,
            raw: yields.raw(),
            done: yields.done(),
            pieces: stated.zip(weight).map(|(stated, weight)| (yields.raw() / weight, stated)),
            piece: stated.map(|stated| yields.done() / stated.as_pieces()),
        }
    };
    formula.components.iter().enumerate().map(one).collect()
}
