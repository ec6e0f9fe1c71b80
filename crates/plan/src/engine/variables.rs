//! A problem as the engine's variables and constraints.

use crate::problem::{Aim, Edge, Measure, Problem, Slot, Stay, Wish};
use pumpkin_core::Solver;
use pumpkin_core::constraints::Constraint;
use pumpkin_core::options::SolverOptions;
use pumpkin_core::predicates::Predicate;
use pumpkin_core::predicates::PredicateConstructor;
use pumpkin_core::variables::{AffineView, DomainId, TransformableVariable};
use pumpkin_propagators::disjunctive::ArgDisjunctiveTask;

/// The variables of a problem.
pub struct Variables {
    pub solver: Solver,
    /// When each task begins.
    pub begins: Vec<DomainId>,
    /// At least how far each wish gives way.
    pub gives_way: Vec<DomainId>,
    /// At least what each aim comes to.
    pub aims: Vec<DomainId>,
    /// Everything that is settled once all tasks have their beginnings.
    pub rest: Vec<DomainId>,
}

impl Variables {
    /// Sets a problem up; none if it can be seen at once that there is no plan.
    pub fn of(problem: &Problem) -> Option<Self> {
        let options = SolverOptions { memory_preallocated: 4, ..SolverOptions::default() };
        let mut solver = Solver::with_options(options);
        let mut begins = Vec::new();
        for task in &problem.tasks {
            let latest = task.latest.min(problem.end - task.lasts);
            if task.earliest > latest {
                return None;
            }
            begins.push(solver.new_bounded_integer(task.earliest, latest));
        }
        let mut variables = Self { solver, begins, gives_way: Vec::new(), aims: Vec::new(), rest: Vec::new() };
        variables.link(problem);
        variables.share(problem);
        for wish in &problem.wishes {
            let gives_way = variables.wish(problem, wish);
            variables.gives_way.push(gives_way);
        }
        variables.rest.extend(variables.gives_way.iter().copied());
        for aim in &problem.aims {
            let value = variables.aim(problem, aim)?;
            variables.aims.push(value);
            variables.rest.push(value);
        }
        (!variables.solver.is_inconsistent()).then_some(variables)
    }

    /// Adds a rule that always holds.
    fn rule<C: Constraint>(&mut self, make: impl FnOnce(pumpkin_core::proof::ConstraintTag) -> C) {
        let tag = self.solver.new_constraint_tag();
        self.solver.add_constraint(make(tag)).post();
    }

    /// The sum is at most that.
    fn at_most(&mut self, terms: Vec<AffineView<DomainId>>, most: i32) {
        self.rule(|tag| pumpkin_constraints::less_than_or_equals(terms, most, tag));
    }

    /// A fact that holds from now on.
    pub fn hold(&mut self, fact: Predicate) {
        let tag = self.solver.new_constraint_tag();
        self.solver.add_clause([fact], tag);
    }

    fn link(&mut self, problem: &Problem) {
        for link in &problem.links {
            let lasts = problem.tasks[link.before].lasts;
            let (before, after) = (self.begins[link.before], self.begins[link.after]);
            self.at_most(vec![before.scaled(1), after.scaled(-1)], -lasts - link.least);
            if let Some(most) = link.most {
                self.at_most(vec![after.scaled(1), before.scaled(-1)], lasts + most);
            }
        }
    }

    fn share(&mut self, problem: &Problem) {
        for resource in &problem.resources {
            let uses: Vec<(usize, i32)> =
                resource.uses.iter().copied().filter(|(task, amount)| *amount > 0 && problem.tasks[*task].lasts > 0).collect();
            let lasts = |task: usize| problem.tasks[task].lasts;
            let mut amounts: Vec<i32> = uses.iter().map(|(_, amount)| *amount).collect();
            amounts.sort_unstable();
            let is_single = amounts.len() > 1 && amounts[0] + amounts[1] > resource.capacity;
            if is_single {
                // Edge finding is what proves plans best on a single pair of hands.
                let one = |&(task, _): &(usize, i32)| ArgDisjunctiveTask {
                    start_time: self.begins[task].scaled(1),
                    processing_time: lasts(task),
                };
                let all: Vec<_> = uses.iter().map(one).collect();
                self.rule(|tag| pumpkin_constraints::disjunctive_strict(all, tag));
            }
            if amounts.iter().sum::<i32>() > resource.capacity {
                let starts: Vec<_> = uses.iter().map(|(task, _)| self.begins[*task]).collect();
                let times: Vec<_> = uses.iter().map(|(task, _)| lasts(*task)).collect();
                let amounts: Vec<_> = uses.iter().map(|(_, amount)| *amount).collect();
                self.rule(|tag| pumpkin_constraints::cumulative(starts, times, amounts, resource.capacity, tag));
            }
        }
    }

    fn wish(&mut self, problem: &Problem, wish: &Wish) -> DomainId {
        let lasts = |task: usize| problem.tasks[task].lasts;
        match wish {
            Wish::Soon { before, after, most } => {
                let gives_way = self.solver.new_bounded_integer(0, problem.end);
                let terms = vec![self.begins[*after].scaled(1), self.begins[*before].scaled(-1), gives_way.scaled(-1)];
                self.at_most(terms, lasts(*before) + most);
                gives_way
            }
            Wish::EndsBy { task, by } => {
                let gives_way = self.solver.new_bounded_integer(0, problem.end);
                self.at_most(vec![self.begins[*task].scaled(1), gives_way.scaled(-1)], by - lasts(*task));
                gives_way
            }
            Wish::Begins { task, from, to } => {
                let begin = self.begins[*task];
                let (first, last) = (self.solver.lower_bound(&begin), self.solver.upper_bound(&begin));
                let most = from.saturating_sub(first).max(last.saturating_sub(*to)).max(0);
                let gives_way = self.solver.new_bounded_integer(0, most);
                self.at_most(vec![begin.scaled(1), gives_way.scaled(-1)], *to);
                self.at_most(vec![begin.scaled(-1), gives_way.scaled(-1)], -from);
                gives_way
            }
            Wish::Room { capacity, stays } => self.room(problem, *capacity, stays),
            Wish::Undisturbed { tasks, from, to } => self.undisturbed(problem, tasks, *from, *to),
        }
    }

    /// The rest is one stretch: each task has ended before it or begins after it, or there is no rest at all.
    fn undisturbed(&mut self, problem: &Problem, tasks: &[usize], from: Slot, to: Slot) -> DomainId {
        let whole = (to - from).max(0);
        let gives_way = self.solver.new_bounded_integer(0, whole);
        if whole == 0 {
            return gives_way;
        }
        let rest_begins = self.solver.new_bounded_integer(from, to);
        let rest_ends = self.solver.new_bounded_integer(from, to);
        self.rest.extend([rest_begins, rest_ends]);
        self.at_most(vec![rest_begins.scaled(1), rest_ends.scaled(-1)], 0);
        self.at_most(vec![rest_begins.scaled(1), rest_ends.scaled(-1), gives_way.scaled(-1)], -whole);
        let given_up = gives_way.lower_bound_predicate(whole);
        for &task in tasks {
            let (begin, lasts) = (self.begins[task], problem.tasks[task].lasts);
            let never_meets = self.solver.upper_bound(&begin) + lasts <= from || self.solver.lower_bound(&begin) >= to;
            if never_meets || lasts == 0 {
                continue;
            }
            let before = self.when_true(&[(vec![begin.scaled(1), rest_begins.scaled(-1)], -lasts)]);
            let after = self.when_true(&[(vec![rest_ends.scaled(1), begin.scaled(-1)], 0)]);
            let tag = self.solver.new_constraint_tag();
            self.solver.add_clause([before, after, given_up], tag);
        }
        gives_way
    }

    /// Whenever a stay begins, it and all others that are there at that moment have room, but for what gives way.
    fn room(&mut self, problem: &Problem, capacity: i32, stays: &[Stay]) -> DomainId {
        let all: i32 = stays.iter().map(|stay| stay.amount).sum();
        let missing = self.solver.new_bounded_integer(0, (all - capacity).max(0));
        if all <= capacity {
            return missing;
        }
        for (at, stay) in stays.iter().enumerate().filter(|(_, stay)| problem.is_open(stay.from)) {
            let mut terms = vec![missing.scaled(-1)];
            let others = stays.iter().enumerate().filter(|(other, _)| *other != at);
            for (_, other) in others {
                let begin = self.begins[stay.from];
                let is_there = self.when_true(&[]);
                let gone = other.until.iter().map(|edge| {
                    let (task, lasts) = match *edge {
                        Edge::Begin(task) => (task, 0),
                        Edge::End(task) => (task, problem.tasks[task].lasts),
                    };
                    (vec![self.begins[task].scaled(1), begin.scaled(-1)], -lasts)
                });
                let gone: Vec<_> = gone.collect();
                let is_gone = self.when_true(&gone);
                let comes = self.when_true(&[(vec![begin.scaled(1), self.begins[other.from].scaled(-1)], -1)]);
                let tag = self.solver.new_constraint_tag();
                self.solver.add_clause([is_there, is_gone, comes], tag);
                terms.push(is_there.get_domain().scaled(other.amount));
            }
            self.at_most(terms, capacity - stay.amount);
        }
        missing
    }

    /// A fact that can be true only where each sum is at most its figure.
    fn when_true(&mut self, sums: &[(Vec<AffineView<DomainId>>, i32)]) -> Predicate {
        let literal = self.solver.new_literal();
        for (terms, most) in sums {
            let tag = self.solver.new_constraint_tag();
            let sum = pumpkin_constraints::less_than_or_equals(terms.clone(), *most, tag);
            self.solver.add_constraint(sum).implied_by(literal);
        }
        let fact = literal.get_true_predicate();
        self.rest.push(fact.get_domain());
        fact
    }

    /// A variable that is at least what an aim comes to; none if the figures are too large to count.
    fn aim(&mut self, problem: &Problem, aim: &Aim) -> Option<DomainId> {
        let mut terms = Vec::new();
        let (mut least, mut most) = (0_i64, 0_i64);
        for &(weight, measure) in aim {
            let one = self.measure(problem, measure);
            let ends =
                [self.solver.lower_bound(&one), self.solver.upper_bound(&one)].map(|end| i64::from(end) * i64::from(weight));
            least += ends[0].min(ends[1]);
            most += ends[0].max(ends[1]);
            terms.push(one.scaled(weight));
        }
        let countable = |value: i64| i32::try_from(value).ok().filter(|value| value.abs() < i32::MAX / 4);
        let value = self.solver.new_bounded_integer(countable(least)?, countable(most)?);
        terms.push(value.scaled(-1));
        self.at_most(terms, 0);
        Some(value)
    }

    fn measure(&mut self, problem: &Problem, measure: Measure) -> DomainId {
        match measure {
            Measure::Begin(task) => self.begins[task],
            Measure::GivesWay(wish) => self.gives_way[wish],
            Measure::Wait(before, after) => {
                let wait = self.solver.new_bounded_integer(0, problem.end);
                let terms = vec![self.begins[after].scaled(1), self.begins[before].scaled(-1), wait.scaled(-1)];
                self.at_most(terms, problem.tasks[before].lasts);
                self.rest.push(wait);
                wait
            }
            Measure::Beyond(task, border) => {
                let beyond = self.solver.new_bounded_integer(0, problem.end);
                self.at_most(vec![self.begins[task].scaled(1), beyond.scaled(-1)], border - problem.tasks[task].lasts);
                self.rest.push(beyond);
                beyond
            }
            Measure::Last => {
                let last = self.solver.new_bounded_integer(0, problem.end);
                for (begin, task) in self.begins.clone().into_iter().zip(&problem.tasks) {
                    self.at_most(vec![begin.scaled(1), last.scaled(-1)], -task.lasts);
                }
                self.rest.push(last);
                last
            }
        }
    }

    /// The assumption that a wish is granted.
    pub fn granted(&self, wish: usize) -> Predicate {
        self.gives_way[wish].upper_bound_predicate(0)
    }
}
