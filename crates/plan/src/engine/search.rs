//! In which order the engine tries things: tasks first, then what follows from them, as small as can be.

use pumpkin_core::branching::value_selection::ValueSelector;
use pumpkin_core::branching::variable_selection::VariableSelector;
use pumpkin_core::branching::{BrancherEvent, SelectionContext};
use pumpkin_core::predicates::{Predicate, PredicateConstructor};
use pumpkin_core::variables::DomainId;
use std::collections::BTreeSet;

/// Chooses the task that can end up latest, and when all have their beginnings the rest in order.
#[derive(Debug)]
pub struct LatestFirst {
    pub begins: Vec<DomainId>,
    pub rest: Vec<DomainId>,
}

impl VariableSelector<DomainId> for LatestFirst {
    fn select_variable(&mut self, context: &mut SelectionContext) -> Option<DomainId> {
        let open = |one: &&DomainId| !context.is_integer_fixed(**one);
        let task = self.begins.iter().filter(open).max_by_key(|one| context.upper_bound(**one));
        task.or_else(|| self.rest.iter().find(open)).copied()
    }

    fn subscribe_to_events(&self) -> Vec<BrancherEvent> {
        Vec::new()
    }
}

/// Puts a task as late as it can be, and everything else as low.
#[derive(Debug)]
pub struct AsLateAsCanBe {
    pub begins: BTreeSet<u32>,
}

impl ValueSelector<DomainId> for AsLateAsCanBe {
    fn select_value(&mut self, context: &mut SelectionContext, one: DomainId) -> Predicate {
        if self.begins.contains(&one.id()) {
            let latest = context.upper_bound(one);
            one.lower_bound_predicate(latest)
        } else {
            let lowest = context.lower_bound(one);
            one.upper_bound_predicate(lowest)
        }
    }

    fn subscribe_to_events(&self) -> Vec<BrancherEvent> {
        Vec::new()
    }
}
