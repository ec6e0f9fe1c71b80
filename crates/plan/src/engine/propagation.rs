//! The engine in use: constraint propagation with learnt clauses, from a library.

use super::search::{AsLateAsCanBe, LatestFirst, Telling};
use super::variables::Variables;
use super::{Alone, Conflict, Engine, MOST_CONFLICTS, Outcome, Plan, Reached, Watch};
use crate::problem::{Aim, Measure, Problem, Slot};
use pumpkin_conflict_resolvers::resolvers::ResolutionResolver;
use pumpkin_core::branching::branchers::autonomous_search::AutonomousSearch;
use pumpkin_core::branching::branchers::independent_variable_value_brancher::IndependentVariableValueBrancher;
use pumpkin_core::predicates::{Predicate, PredicateConstructor};
use pumpkin_core::results::{ProblemSolution, SatisfactionResultUnderAssumptions};
use pumpkin_core::termination::TerminationCondition;
use pumpkin_core::variables::DomainId;
use std::cell::Cell;
use std::rc::Rc;

/// Plans by constraint propagation.
#[derive(Clone, Copy, Debug, Default)]
pub struct Propagation;

impl Engine for Propagation {
    fn solve(&self, problem: &Problem, watch: &mut dyn Watch) -> Outcome {
        let Some(variables) = Variables::of(problem) else { return Outcome::Impossible };
        let mut run = Run::new(problem, variables, watch);
        let all: Vec<usize> = (0..problem.wishes.len()).collect();
        match run.attempt(&run.granting(&all), usize::MAX) {
            Attempt::Found(begins) => {
                all.iter().for_each(|wish| run.variables.hold(run.variables.granted(*wish)));
                run.improve(begins, true)
            }
            Attempt::Stopped => Outcome::Stopped,
            Attempt::None => match run.attempt(&[], usize::MAX) {
                Attempt::Found(begins) => run.improve(begins, false),
                Attempt::None => Outcome::Impossible,
                Attempt::Stopped => Outcome::Stopped,
            },
        }
    }
}

type Brancher = Telling<AutonomousSearch<IndependentVariableValueBrancher<DomainId, LatestFirst, AsLateAsCanBe>>>;

/// The state of a run.
struct Run<'r> {
    problem: &'r Problem,
    variables: Variables,
    brancher: Brancher,
    resolver: ResolutionResolver,
    watch: &'r mut dyn Watch,
}

/// What came of looking for a plan under assumptions.
enum Attempt {
    Found(Vec<Slot>),
    None,
    Stopped,
}

/// So many questions are put to the search before a doubtful goal is given up for a nearer one.
const EFFORT: usize = 4000;

impl<'r> Run<'r> {
    fn new(problem: &'r Problem, variables: Variables, watch: &'r mut dyn Watch) -> Self {
        let (begins, rest) = (variables.begins.clone(), variables.rest.clone());
        let values = AsLateAsCanBe { begins: begins.iter().map(DomainId::id).collect() };
        let inner = AutonomousSearch::new(IndependentVariableValueBrancher::new(LatestFirst { begins, rest }, values));
        let brancher = Telling { inner, has_decided: Rc::new(Cell::new(false)) };
        Self { problem, variables, brancher, resolver: ResolutionResolver::default(), watch }
    }

    fn granting(&self, wishes: &[usize]) -> Vec<Predicate> {
        wishes.iter().map(|wish| self.variables.granted(*wish)).collect()
    }

    /// Looks for a plan under assumptions with so much effort.
    fn attempt(&mut self, assumptions: &[Predicate], effort: usize) -> Attempt {
        if self.variables.solver.is_inconsistent() {
            return Attempt::None;
        }
        if self.watch.wants_to_stop() {
            return Attempt::Stopped;
        }
        let has_decided = Rc::clone(&self.brancher.has_decided);
        has_decided.set(false);
        let mut patience = Patience { left: effort, watch: self.watch, has_decided };
        let begins = &self.variables.begins;
        let result =
            self.variables.solver.satisfy_under_assumptions(&mut self.brancher, &mut patience, &mut self.resolver, assumptions);
        match result {
            SatisfactionResultUnderAssumptions::Satisfiable(found) => {
                let solution = found.solution();
                Attempt::Found(begins.iter().map(|begin| solution.get_integer_value(*begin)).collect())
            }
            // The library's own core is not asked for: it takes the reasons apart without remembering which
            // it has seen, and may not come to an end.
            SatisfactionResultUnderAssumptions::UnsatisfiableUnderAssumptions(_)
            | SatisfactionResultUnderAssumptions::Unsatisfiable(_) => Attempt::None,
            SatisfactionResultUnderAssumptions::Unknown(_) => Attempt::Stopped,
        }
    }

    /// Why these wishes cannot all be granted. What would help against one conflict is told with what counts least in
    /// the others dropped: against those it need not help.
    fn conflicts(&mut self, all: Vec<usize>) -> Vec<Conflict> {
        let (mut found, mut wishes): (Vec<(Vec<usize>, usize)>, _) = (Vec::new(), all.clone());
        while found.len() < MOST_CONFLICTS {
            let kept = self.irreducible(wishes.clone());
            // What was not tried to the end is no answer to why.
            if self.watch.wants_to_stop() {
                break;
            }
            let Some(least) = kept.iter().copied().max_by_key(|wish| self.rank(*wish)) else { break };
            found.push((kept, least));
            wishes.retain(|wish| *wish != least);
            if !matches!(self.attempt(&self.granting(&wishes), EFFORT), Attempt::None) {
                break;
            }
        }
        let dropped: Vec<usize> = found.iter().map(|(_, least)| *least).collect();
        let told = found.into_iter().map(|(kept, least)| {
            let of = |wish: &usize| !dropped.contains(wish) || *wish == least || kept.contains(wish);
            let of: Vec<usize> = all.iter().copied().filter(of).collect();
            Conflict { wishes: kept.iter().map(|wish| (*wish, self.least_way(*wish, &of))).collect() }
        });
        told.collect()
    }

    /// The aim in which a wish counts; one that counts in none counts least.
    fn rank(&self, wish: usize) -> usize {
        let is_in = |aim: &Aim| aim.iter().any(|(_, measure)| *measure == Measure::GivesWay(wish));
        self.problem.aims.iter().position(is_in).unwrap_or(usize::MAX)
    }

    /// A conflict from which no wish can be left out: leaves out ever smaller pieces that are not needed.
    fn irreducible(&mut self, mut kept: Vec<usize>) -> Vec<usize> {
        let mut size = kept.len();
        while size > 0 {
            let mut at = 0;
            while at < kept.len() {
                let others: Vec<usize> = [&kept[..at], &kept[(at + size).min(kept.len())..]].concat();
                match self.attempt(&self.granting(&others), EFFORT) {
                    Attempt::None => kept = others,
                    Attempt::Found(_) | Attempt::Stopped => at += size,
                }
            }
            size /= 2;
        }
        kept
    }

    /// The least that a wish must give way when all others of these are granted.
    fn least_way(&mut self, wish: usize, of: &[usize]) -> Option<Alone> {
        let others: Vec<usize> = of.iter().copied().filter(|other| *other != wish).collect();
        let granted = self.granting(&others);
        let Attempt::Found(mut begins) = self.attempt(&granted, EFFORT) else { return None };
        let mut most = self.problem.gives_way(&self.problem.wishes[wish], &begins);
        let mut least = 0;
        while least < most {
            let goal = i32::midpoint(least, most);
            let mut assumptions = granted.clone();
            assumptions.push(self.variables.gives_way[wish].upper_bound_predicate(goal));
            match self.attempt(&assumptions, EFFORT) {
                Attempt::Found(nearer) => {
                    most = self.problem.gives_way(&self.problem.wishes[wish], &nearer).min(goal);
                    begins = nearer;
                }
                Attempt::None => least = goal + 1,
                Attempt::Stopped => return None,
            }
        }
        Some(Alone { by: most, begins })
    }

    /// Works on the aims, one after another; then, if time is left, asks why wishes must give way.
    fn improve(mut self, mut begins: Vec<Slot>, is_granted: bool) -> Outcome {
        let aims = &self.problem.aims;
        let mut reached = Vec::new();
        for at in 0..aims.len() {
            let one = self.lower(at, &mut begins);
            self.variables.hold(self.variables.aims[at].upper_bound_predicate(one.value));
            reached.push(one);
        }
        // A later aim may have bettered one that was not proved.
        for (one, aim) in reached.iter_mut().zip(aims) {
            one.value = self.problem.value(aim, &begins);
        }
        let is_asked = !is_granted && !self.problem.is_without_why;
        let conflicts = if is_asked { self.asked_why() } else { Vec::new() };
        let is_why_cut_short = is_asked && self.watch.wants_to_stop();
        Outcome::Found(Plan { begins, reached, conflicts, is_why_cut_short })
    }

    /// The conflicts of the problem as it was set up, before anything was held; what is wished for has no aims.
    fn asked_why(&mut self) -> Vec<Conflict> {
        let without_aims = Problem { aims: Vec::new(), ..self.problem.clone() };
        let Some(variables) = Variables::of(&without_aims) else { return Vec::new() };
        let all = (0..self.problem.wishes.len()).collect();
        Run::new(self.problem, variables, &mut *self.watch).conflicts(all)
    }

    /// Lowers an aim step by step, the steps growing while they succeed; what cannot be raises the bound.
    fn lower(&mut self, at: usize, begins: &mut Vec<Slot>) -> Reached {
        let aim = &self.problem.aims[at];
        let variable = self.variables.aims[at];
        let mut value = self.problem.value(aim, begins);
        let (mut step, mut effort) = (1, EFFORT);
        let mut bound = self.variables.solver.lower_bound(&variable);
        loop {
            bound = bound.min(value);
            if bound == value {
                return Reached { value, bound };
            }
            let goal = (value - step).max(bound);
            match self.attempt(&[variable.upper_bound_predicate(goal)], effort) {
                Attempt::Found(better) => {
                    value = self.problem.value(aim, &better).min(goal);
                    *begins = better;
                    self.watch.is_better(at, value);
                    step *= 2;
                }
                Attempt::None => {
                    bound = goal + 1;
                    self.variables.hold(variable.lower_bound_predicate(bound));
                    step = ((value - goal) / 2).max(1);
                }
                Attempt::Stopped if self.watch.wants_to_stop() => return Reached { value, bound },
                Attempt::Stopped if step > 1 => step = 1,
                Attempt::Stopped => effort = effort.saturating_mul(2),
            }
        }
    }
}

/// Stops the search when its effort is spent or the watch wants it.
struct Patience<'p> {
    left: usize,
    watch: &'p mut dyn Watch,
    has_decided: Rc<Cell<bool>>,
}

impl TerminationCondition for Patience<'_> {
    fn should_stop(&mut self) -> bool {
        self.left = self.left.saturating_sub(1);
        self.has_decided.get() && (self.left == 0 || self.watch.wants_to_stop())
    }
}
