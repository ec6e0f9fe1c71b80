//! What follows what, and how soon it must.

use super::job::{Dish, Job, Readies};
use formula::read::{Action, Attention, StageKind};
use formula::resolve::formula::{Content, StageAt, Word};
use formula::{Stage, Step};
use quantity::TimeSpan;

/// One job after another, or after the last one the table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Follows {
    /// The first.
    pub before: usize,
    /// The second; none is serving.
    pub after: Option<usize>,
    /// The longest wait between them, if there is one.
    pub most: Option<TimeSpan>,
    /// Whether a longer wait cannot be at all: a dough rises as soon as it is mixed.
    pub is_strict: bool,
}

const AT_ONCE: TimeSpan = TimeSpan::ZERO;
// How long things keep between two jobs: common practice, no source.
const HOT_FOOD_WAITS: TimeSpan = TimeSpan::minutes(10.0);
const WARM_UNDER_A_CLOTH: TimeSpan = TimeSpan::minutes(30.0);
const BATTER_STANDS: TimeSpan = TimeSpan::minutes(10.0);
const WORK_PAUSES: TimeSpan = TimeSpan::minutes(15.0);
const COOLED_WAITS: TimeSpan = TimeSpan::hours(2.0);
const PREPARED_WAITS: TimeSpan = TimeSpan::hours(2.0);
const CUT_FRUIT_WAITS: TimeSpan = TimeSpan::hours(2.0);
const FRIED_IS_BEST: TimeSpan = TimeSpan::minutes(30.0);
const REWARMED_IS_BEST: TimeSpan = TimeSpan::minutes(30.0);
const BAKED_IS_BEST: TimeSpan = TimeSpan::hours(24.0);
const WHIPPED_KEEPS: TimeSpan = TimeSpan::hours(24.0);
const MIXED_KEEPS: TimeSpan = TimeSpan::hours(12.0);
const SOAKED_KEEPS: TimeSpan = TimeSpan::hours(24.0);
const COOKED_KEEPS: TimeSpan = TimeSpan::hours(72.0);
const BUTTER_STAYS_SOFT: TimeSpan = TimeSpan::hours(12.0);
const OVEN_STAYS_HOT: TimeSpan = TimeSpan::hours(1.0);

/// The order of all jobs.
pub struct Order<'o> {
    dishes: &'o [Dish],
    jobs: &'o [Job],
    follows: Vec<Follows>,
}

/// Finds what follows what.
#[must_use]
pub fn order(dishes: &[Dish], jobs: &[Job]) -> Vec<Follows> {
    let mut order = Order { dishes, jobs, follows: Vec::new() };
    for (d, dish) in dishes.iter().enumerate() {
        for at in &dish.stages {
            order.within(d, *at);
            order.uses(d, *at);
        }
        order.brushed_on(d);
        order.serve(d);
    }
    order.follows
}

impl Order<'_> {
    fn stage(&self, dish: usize, at: StageAt) -> &Stage {
        self.dishes[dish].formula.stage(at)
    }

    /// The job of a step.
    fn job(&self, dish: usize, at: StageAt, step: usize) -> Option<usize> {
        self.jobs.iter().position(|job| job.dish == dish && job.at == at && job.step == step && job.is_step())
    }

    fn push(&mut self, before: usize, after: Option<usize>, most: Option<TimeSpan>, is_strict: bool) {
        self.follows.push(Follows { before, after, most, is_strict });
    }

    /// The steps of a stage one after another, the oven hot before it is needed.
    fn within(&mut self, dish: usize, at: StageAt) {
        let stage = self.dishes[dish].formula.stage(at).clone();
        for (s, step) in stage.steps.iter().enumerate() {
            let Some(job) = self.job(dish, at, s) else { continue };
            // What makes ready for a step stands right before it.
            for ready in (0..job).rev().take_while(|ready| !self.jobs[*ready].is_step()) {
                let most = if self.jobs[ready].readies == Some(Readies::Oven) { OVEN_STAYS_HOT } else { BUTTER_STAYS_SOFT };
                self.push(ready, Some(job), Some(most), false);
            }
            let Some((b, before)) = (0..s).rev().find_map(|b| Some((b, self.job(dish, at, b)?))) else { continue };
            let leeway = self.jobs[before].span.leeway;
            let is_cooked = stage.steps[..s].iter().any(|step| step.action.cooks());
            let (most, is_strict) = match stage.steps[b].action {
                Action::Rest if stage.kind == StageKind::MakeUp && is_cooked => (WARM_UNDER_A_CLOTH, false),
                _ => between(&stage, &stage.steps[b], step, leeway),
            };
            self.push(before, Some(job), Some(most), is_strict);
        }
    }

    /// What a stage is made of is ready when the step that takes it begins.
    fn uses(&mut self, dish: usize, at: StageAt) {
        let stage = self.dishes[dish].formula.stage(at).clone();
        for (l, line) in stage.lines.iter().enumerate() {
            let made: Vec<(usize, StageAt)> = match &line.content {
                Content::Ingredient(_) => continue,
                Content::Stage(c, s) => vec![(dish, (*c, *s))],
                Content::Formula(blend) => {
                    let other = self.dishes.iter().position(|other| other.formula.name == blend.name);
                    let last = blend.formula.components.first().map_or(0, |main| main.stages.len().saturating_sub(1));
                    other.map(|other| (other, (0, last))).into_iter().collect()
                }
            };
            let Some(taker) = self.taker(dish, at, l) else { continue };
            for (other, from) in made {
                for last in self.finished_by(other, from) {
                    let keeps = self.keeps(other, last);
                    self.push(last, Some(taker), keeps, false);
                }
            }
        }
    }

    /// The step that first takes a line of a stage: in that stage, or later in its component.
    fn taker(&self, dish: usize, at: StageAt, line: usize) -> Option<usize> {
        let takes = |step: &Step| {
            step.words.iter().any(|word| matches!(word, Word::Line { stage, line: l, .. } if *stage == at.1 && *l == line))
        };
        let later = self.dishes[dish].stages.iter().filter(|(c, s)| *c == at.0 && *s >= at.1);
        let mut found = later.filter_map(|here| {
            let step = self.stage(dish, *here).steps.iter().position(takes)?;
            self.job(dish, *here, step)
        });
        found.next().or_else(|| self.job(dish, at, 0))
    }

    /// The last jobs of a stage; of one without steps, those of what goes into it.
    fn finished_by(&self, dish: usize, at: StageAt) -> Vec<usize> {
        let (mut way, mut seen, mut found) = (vec![at], Vec::new(), Vec::new());
        while let Some(here) = way.pop() {
            if seen.contains(&here) {
                continue;
            }
            seen.push(here);
            let stage = self.stage(dish, here);
            match (0..stage.steps.len()).rev().find_map(|step| self.job(dish, here, step)) {
                Some(job) => found.push(job),
                None => way.extend(stage.uses()),
            }
        }
        found
    }

    /// How long what a job makes keeps before it is used.
    fn keeps(&self, dish: usize, job: usize) -> Option<TimeSpan> {
        let Job { at, step, span, .. } = &self.jobs[job];
        let stage = self.stage(dish, *at);
        let step = &stage.steps[*step];
        match step.action {
            Action::Ferment | Action::Retard | Action::Bulk | Action::Proof => Some(span.leeway),
            Action::Store | Action::Hold => step.time.map(|_| span.leeway),
            _ => Some(kind_keeps(stage.kind)),
        }
    }

    /// A component that is brushed or dusted over the main one goes on it hot.
    fn brushed_on(&mut self, dish: usize) {
        let formula = &self.dishes[dish].formula;
        let cooks = |job: &Job| job.dish == dish && job.at.0 == 0 && formula.stage(job.at).steps[job.step].action.cooks();
        let Some(cooked) = self.jobs.iter().rposition(|job| cooks(job) && job.is_step()) else { return };
        let brushed: Vec<usize> = (1..formula.components.len())
            .filter_map(|c| {
                let last = formula.components[c].stages.len().checked_sub(1)?;
                let step =
                    formula.stage((c, last)).steps.iter().position(|step| matches!(step.action, Action::Glaze | Action::Dust))?;
                self.job(dish, (c, last), step).filter(|_| !self.is_used(dish, (c, last)))
            })
            .collect();
        for job in brushed {
            self.push(cooked, Some(job), Some(HOT_FOOD_WAITS), false);
        }
    }

    fn is_used(&self, dish: usize, at: StageAt) -> bool {
        let here = &self.dishes[dish];
        here.stages.iter().any(|other| self.stage(dish, *other).uses().any(|used| used == at))
    }

    /// What nothing else uses comes to the table.
    fn serve(&mut self, dish: usize) {
        let here = &self.dishes[dish];
        let ends: Vec<StageAt> = here.stages.iter().copied().filter(|at| here.is_served && !self.is_used(dish, *at)).collect();
        for at in ends {
            for last in self.finished_by(dish, at) {
                let most = self.best_for(dish, last);
                self.push(last, None, most, false);
            }
        }
    }

    /// How long a finished component is at its best.
    fn best_for(&self, dish: usize, job: usize) -> Option<TimeSpan> {
        let Job { at, step, .. } = &self.jobs[job];
        let component = &self.dishes[dish].formula.components[at.0];
        match component.stages[at.1].steps[*step].action {
            Action::Serve => return Some(WORK_PAUSES),
            Action::Hold | Action::Store => return self.keeps(dish, job),
            _ => {}
        }
        let own = self.jobs.iter().rev().filter(|job| job.dish == dish && job.at.0 == at.0 && job.is_step());
        let mut heated = own.map(|job| self.stage(dish, job.at).steps[job.step].action).filter(|action| heats(*action));
        match heated.next() {
            Some(Action::Fry) => Some(FRIED_IS_BEST),
            Some(Action::Rewarm) => Some(REWARMED_IS_BEST),
            Some(Action::Griddle | Action::Bake) => Some(BAKED_IS_BEST),
            _ => self.keeps(dish, job),
        }
    }
}

/// Whether food comes hot from it.
pub fn heats(action: Action) -> bool {
    action.cooks() || action == Action::Rewarm
}

/// The longest wait between two steps of a stage, and whether a longer one cannot be at all.
fn between(stage: &Stage, before: &Step, after: &Step, leeway: TimeSpan) -> (TimeSpan, bool) {
    let is_waiting = |step: &Step| step.attention == Attention::Waiting;
    match (before.action, is_waiting(before), is_waiting(after)) {
        (Action::Bake, ..) => (AT_ONCE, true),
        // Hot fat is not left standing.
        _ if after.action == Action::Fry => (AT_ONCE, true),
        (Action::Ferment | Action::Retard | Action::Bulk | Action::Proof, true, _) => (leeway, false),
        (action, ..) if action.cooks() && is_waiting(after) && !after.action.cooks() => (AT_ONCE, !is_waiting(before)),
        (Action::Hold | Action::Store, ..) => (leeway, false),
        (action, ..) if heats(action) => (HOT_FOOD_WAITS, false),
        (Action::Cool, ..) => (kind_keeps(stage.kind).max(COOLED_WAITS), false),
        (_, true, _) => (kind_keeps(stage.kind).max(HOT_FOOD_WAITS), false),
        (_, false, true) if after.action.cooks() => (HOT_FOOD_WAITS, false),
        (_, false, true) => (AT_ONCE, true),
        (Action::Weigh | Action::Prepare, ..) => (PREPARED_WAITS, false),
        _ => (WORK_PAUSES, false),
    }
}

/// How long what a stage makes keeps, by its kind.
const fn kind_keeps(kind: StageKind) -> TimeSpan {
    match kind {
        StageKind::Scald | StageKind::Soaker => SOAKED_KEEPS,
        StageKind::Inclusion => CUT_FRUIT_WAITS,
        StageKind::Cooked => COOKED_KEEPS,
        StageKind::Creamed => WHIPPED_KEEPS,
        StageKind::Mixed => MIXED_KEEPS,
        StageKind::MakeUp => BATTER_STANDS,
        _ => BATTER_STANDS,
    }
}
