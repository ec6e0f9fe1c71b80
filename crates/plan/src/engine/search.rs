//! In which order the engine tries things: tasks first, then what follows from them, as small as can be.

use pumpkin_core::branching::value_selection::ValueSelector;
use pumpkin_core::branching::variable_selection::VariableSelector;
use pumpkin_core::branching::{Brancher, BrancherEvent, SelectionContext};
use pumpkin_core::predicates::{Predicate, PredicateConstructor};
use pumpkin_core::results::SolutionReference;
use pumpkin_core::variables::DomainId;
use std::cell::Cell;
use std::collections::BTreeSet;
use std::rc::Rc;

/// A brancher that tells whether the last thing that happened was a decision. Only then may a search be stopped: the
/// library cannot be asked again once it was stopped with no decision made.
#[derive(Debug)]
pub struct Telling<B> {
    pub inner: B,
    pub has_decided: Rc<Cell<bool>>,
}

impl<B: Brancher> Brancher for Telling<B> {
    fn next_decision(&mut self, context: &mut SelectionContext) -> Option<Predicate> {
        let decision = self.inner.next_decision(context);
        self.has_decided.set(decision.is_some());
        decision
    }

    fn on_conflict(&mut self) {
        self.has_decided.set(false);
        self.inner.on_conflict();
    }

    fn on_backtrack(&mut self) {
        self.inner.on_backtrack();
    }

    fn on_solution(&mut self, solution: SolutionReference) {
        self.inner.on_solution(solution);
    }

    fn on_unassign_integer(&mut self, variable: DomainId, value: i32) {
        self.inner.on_unassign_integer(variable, value);
    }

    fn on_appearance_in_conflict_predicate(&mut self, predicate: Predicate) {
        self.inner.on_appearance_in_conflict_predicate(predicate);
    }

    fn on_restart(&mut self) {
        self.inner.on_restart();
    }

    fn synchronise(&mut self, context: &mut SelectionContext) {
        self.inner.synchronise(context);
    }

    fn is_restart_pointless(&mut self) -> bool {
        self.inner.is_restart_pointless()
    }

    fn subscribe_to_events(&self) -> Vec<BrancherEvent> {
        self.inner.subscribe_to_events()
    }
}

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
