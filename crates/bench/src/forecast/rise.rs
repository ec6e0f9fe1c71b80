//! Stretches in which something ferments: from the bowl, or from shaping, to the next handling or the heat.

use super::bowl::{Bowls, yeasts};
use super::care::{BEYOND, Care};
use super::mixing::{Mixed, mixed};
use super::surroundings::{Clock, Stand};
use super::verdict::{Foreseen, foresee};
use super::watch::Watch;
use super::{Surroundings, middle};
use formula::read::{Action, Attention, Leaven as Raises};
use formula::resolve::formula::{Content, StageAt};
use formula::{Formula, Stage, Step};
use quantity::{Mass, Rate, Temperature, TimeSpan};
use science::ferment::{Carried, Course, Dough, Fermentation, Leaven, PREFERMENTED, Room, Strain, TemperaturePath, Warming};
use std::collections::BTreeMap;

/// A stretch in which a dough or preferment rises undisturbed.
#[derive(Debug)]
pub struct Rise {
    /// The component and stage it begins in.
    pub at: (usize, usize),
    /// What readers see: the stage's title, "after shaping" where it is shaped.
    pub title: String,
    /// How warm it comes from the bowl; none after shaping.
    pub mixed: Option<Mixed>,
    /// Its course for a chart: when, how far risen, how warm.
    pub points: Vec<Point>,
    /// What each of its steps wants, and what is foreseen.
    pub steps: Vec<Foreseen>,
    /// The yeast or culture that raises it, by its ingredient's name.
    pub leaven: String,
    /// Its whole course, beyond its steps.
    pub course: Course,
    /// What lies outside the range in which the model was held to practice.
    pub outside: Vec<String>,
}

/// A point of a course.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// When, from the beginning of the stretch.
    pub time: TimeSpan,
    /// Volume against that at the beginning.
    pub risen: f64,
    /// How warm.
    pub temperature: Temperature,
}

/// Something alive on its way through the stages.
struct Living {
    dough: Dough,
    carried: Carried,
    temperature: Temperature,
    strain: Strain,
    named: String,
}

/// The state of foreseeing a formula.
pub struct Foreseeing<'f> {
    formula: &'f Formula,
    around: &'f Surroundings,
    clock: Clock,
    care: Care,
    bowls: Bowls,
    living: BTreeMap<StageAt, Living>,
    rises: Vec<Rise>,
    missing: Vec<String>,
}

/// The gas that dividing and shaping leave in a dough: common practice, no source.
const KEPT_IN_SHAPING: f64 = 0.3;
/// No ferment of the trade is followed for longer than this.
const LONGEST: TimeSpan = TimeSpan::days(10.0);

impl<'f> Foreseeing<'f> {
    pub fn new(formula: &'f Formula, around: &'f Surroundings, care: Care) -> Self {
        let clock = Clock::back_from(formula, around.served_at.value);
        Self {
            formula,
            around,
            clock,
            care,
            bowls: Bowls::default(),
            living: BTreeMap::new(),
            rises: Vec::new(),
            missing: Vec::new(),
        }
    }

    pub fn done(self) -> (Vec<Rise>, Vec<String>) {
        (self.rises, self.missing)
    }

    /// Goes through a component's stages in working order.
    pub fn component(&mut self, c: usize) {
        if let Some(last) = self.formula.components[c].stages.len().checked_sub(1) {
            self.stages(c, last);
        }
    }

    /// Goes through them up to one of them.
    pub fn stages(&mut self, c: usize, last: usize) {
        for s in 0..=last {
            let stage = &self.formula.components[c].stages[s];
            match self.continued(stage) {
                Some(before) => self.go_on((c, s), before),
                None => self.mix((c, s)),
            }
        }
    }

    /// The living stage that this one only handles further: nearly all of it, and no new flour.
    fn continued(&self, stage: &Stage) -> Option<(usize, usize)> {
        let no_flour = stage.lines.iter().all(|line| !line.is_flour);
        let mixed = stage.mixed();
        stage.lines.iter().find_map(|line| match line.content {
            Content::Stage(c, s) if no_flour && line.mass.value > mixed * 0.5 && self.living.contains_key(&(c, s)) => {
                Some((c, s))
            }
            _ => None,
        })
    }

    /// A stage that is mixed anew.
    fn mix(&mut self, at: (usize, usize)) {
        let stage = &self.formula.components[at.0].stages[at.1];
        let yeasts = yeasts(stage);
        let brought: Vec<Carried> = stage.lines.iter().filter_map(|line| self.brought(line)).collect();
        let bowl = self.bowls.of(self.formula, at);
        let has_culture = stage
            .lines
            .iter()
            .any(|line| matches!(&line.content, Content::Ingredient(one) if one.leaven == Some(Raises::Culture)));
        if (yeasts.is_empty() && brought.is_empty() && !has_culture) || bowl.flour <= Mass::ZERO {
            return;
        }
        let wild = stage.lines.iter().all(|line| match line.content {
            Content::Stage(c, s) => self.living.get(&(c, s)).is_none_or(|living| living.strain == Strain::Sourdough),
            _ => true,
        });
        let strain = if yeasts.is_empty() && wild { Strain::Sourdough } else { Strain::Bakers };
        let dough = bowl.dough(stage.kind, strain == Strain::Sourdough);
        let mut leaven = match yeasts.split_first() {
            Some((first, rest)) => {
                let mut leaven = Leaven::yeast(Strain::Bakers, *first);
                leaven.yeasts.extend(rest);
                leaven
            }
            None => Leaven { organisms: science::ferment::Organisms::of(strain), yeasts: Vec::new(), carried: Vec::new() },
        };
        leaven.carried.extend(brought);
        let named = self.raised_by(stage);
        if bowl.culture_flour > Mass::ZERO {
            leaven.carried.push(Carried { gas_kept: 0.0, ..Carried::ripe_culture(bowl.culture_flour) });
        }
        let temperature_of = |c: usize, s: usize| self.living.get(&(c, s)).map(|living| living.temperature);
        let mixed = mixed((stage, at.1), self.around, &temperature_of);
        let steps: Vec<&Step> = stage.steps.iter().collect();
        self.follow(
            at,
            stage.title.clone(),
            Start {
                dough,
                leaven,
                strain,
                named,
                temperature: mixed.start(self.around.was_seen()) + self.around.off.bowl,
                mixed: Some(mixed),
                clock: self.clock.begins(at),
            },
            &steps,
        );
    }

    /// What a line brings that is alive already.
    fn brought(&self, line: &formula::Line) -> Option<Carried> {
        let Content::Stage(c, s) = line.content else { return None };
        let living = self.living.get(&(c, s))?;
        let made = self.formula.components[c].stages[s].made();
        let share = if made > Mass::ZERO { line.mass.value / made } else { 0.0 };
        Some(Carried { flour: living.dough.flour * share, gas_kept: 0.0, ..living.carried })
    }

    /// The name of what raises a stage: yeast weighed into it, its culture, or what raised what it brings.
    fn raised_by(&self, stage: &Stage) -> String {
        let ingredients = || stage.lines.iter().filter_map(|line| line.ingredient());
        let own = ingredients().find(|one| one.yeast().is_some());
        let own = own.or_else(|| ingredients().find(|one| one.leaven == Some(Raises::Culture)));
        let brought = || stage.uses().find_map(|at| self.living.get(&at)).map(|living| living.named.clone());
        own.map(|one| one.name.clone()).or_else(brought).unwrap_or_default()
    }

    /// A stage that handles a dough further: make-up.
    fn go_on(&mut self, at: (usize, usize), before: (usize, usize)) {
        let stage = &self.formula.components[at.0].stages[at.1];
        let Some(living) = self.living.get(&before) else { return };
        let leaven = Leaven { carried: vec![living.carried], ..Leaven::carried(living.strain, living.carried) };
        let dough = Dough { sucrose: Mass::ZERO, hexose: Mass::ZERO, ..living.dough };
        let (strain, temperature, named) = (living.strain, living.temperature, living.named.clone());
        let steps: Vec<&Step> = stage.steps.iter().collect();
        self.follow(
            at,
            stage.title.clone(),
            Start { dough, leaven, strain, named, temperature, mixed: None, clock: self.clock.begins(at) },
            &steps,
        );
    }

    /// Follows a start through steps; shaping begins a stretch of its own, the heat ends it.
    fn follow(&mut self, at: (usize, usize), title: String, mut start: Start, steps: &[&Step]) {
        let mut title = title;
        let mut rest = steps;
        loop {
            let end = rest.iter().position(|step| step.action.cooks()).unwrap_or(rest.len());
            let shaping =
                rest[..end].iter().skip(1).position(|step| matches!(step.action, Action::Divide | Action::Shape)).map(|n| n + 1);
            let now = &rest[..shaping.unwrap_or(end)];
            let pieces = start.mixed.is_none().then(|| self.formula.components[at.0].yields.scaling_weight).flatten();
            let Some(after) = self.stretch(at, &title, &mut start, now, pieces) else { return };
            self.living.insert(at, after);
            let Some(shaping) = shaping else { return };
            let Some(living) = self.living.get(&at) else { return };
            let carried = Carried { gas_kept: KEPT_IN_SHAPING, ..living.carried };
            start = Start {
                dough: Dough { sucrose: Mass::ZERO, hexose: Mass::ZERO, ..living.dough },
                leaven: Leaven::carried(living.strain, carried),
                strain: living.strain,
                named: living.named.clone(),
                temperature: living.temperature,
                mixed: None,
                clock: start.clock + now.iter().map(|step| lasts(step)).sum(),
            };
            title = format!("{}, after shaping", self.formula.components[at.0].stages[at.1].title);
            rest = &rest[shaping..];
        }
    }

    /// One undisturbed stretch; gives what lives on after it.
    fn stretch(
        &mut self,
        at: (usize, usize),
        title: &str,
        start: &mut Start,
        steps: &[&Step],
        piece: Option<Mass>,
    ) -> Option<Living> {
        let weight = piece.unwrap_or_else(|| self.formula.components[at.0].stages[at.1].mixed());
        let (rooms, ends) = rooms(steps, self.around, weight, start.clock);
        let path = TemperaturePath::Rooms { start: start.temperature, rooms, own_heat: Warming::Ignored };
        let lasts = ends.last().copied().unwrap_or(TimeSpan::ZERO);
        if lasts > LONGEST {
            self.missing.push(format!("what “{title}” does: it stands for more than {} days", LONGEST.as_days()));
            return None;
        }
        let mut fermentation = Fermentation::new(&start.dough, &start.leaven, path);
        fermentation.organisms.vigour = self.around.calibration.vigour(&start.named).factor();
        fermentation.limits = self.care.limits();
        let mut watch = Watch::over(steps, &ends);
        let course = fermentation
            .run_until(lasts + self.care.beyond(steps), |now, risen| self.care.ends_early() && watch.has_seen_all(now, risen));
        let points = points(&course, lasts, self.care);
        let is_sound = points.iter().all(|point| point.risen.is_finite() && point.temperature.is_finite());
        let Some(last) = course.at(lasts).filter(|_| is_sound) else {
            self.missing.push(format!(
                "the course of “{title}” cannot be followed: a figure of its formula or kitchen is no ordinary number"
            ));
            return None;
        };
        if steps.iter().any(|step| step.attention == Attention::Waiting && step.time.is_none()) {
            self.missing.push(format!("“{title}” has a waiting step without a time"));
        }
        let carried = course.carried(lasts, start.dough.flour)?;
        if lasts > TimeSpan::ZERO && steps.iter().any(|step| step.attention == Attention::Waiting) {
            // A dough that is only handled further carries all its flour over: that is no preferment.
            let is_mixed = start.mixed.is_some();
            self.rises.push(Rise {
                at,
                title: title.to_owned(),
                mixed: start.mixed.take(),
                points,
                steps: foresee(&course, steps, &ends, self.around, &start.named),
                leaven: start.named.clone(),
                outside: if self.care == Care::Full { outside(&course, is_mixed) } else { Vec::new() },
                course,
            });
        }
        let named = std::mem::take(&mut start.named);
        Some(Living { dough: start.dough, carried, temperature: last.temperature, strain: start.strain, named })
    }
}

/// What lies outside the ranges in which the model was held to practice, in words.
fn outside(course: &Course, is_mixed: bool) -> Vec<String> {
    let told = course.outside().iter().filter(|one| is_mixed || one.valid.symbol != PREFERMENTED.symbol);
    let words = told.map(|one| {
        let (valid, value) = (one.valid, quantity::print::number(one.value, 3));
        format!("{} is {value}, known from {} to {} {}", valid.symbol, valid.from, valid.to, valid.unit)
    });
    words.collect()
}

/// How a stretch begins.
struct Start {
    dough: Dough,
    leaven: Leaven,
    strain: Strain,
    named: String,
    temperature: Temperature,
    mixed: Option<Mixed>,
    /// When it begins by the clock.
    clock: TimeSpan,
}

/// The air each step stands in, and when each step ends, from the beginning of the stretch.
fn rooms(steps: &[&Step], around: &Surroundings, weight: Mass, clock: TimeSpan) -> (Vec<Room>, Vec<TimeSpan>) {
    // Common practice, no source: 0.5 an hour for a kilogram in a bowl, 1.1 for 300 g; small pieces are quicker.
    let approach = Rate::per_hour(0.5 * libm::pow(weight.as_kilograms().max(0.05), -0.65) * around.calibration.lag.factor());
    let (mut rooms, mut ends, mut now) = (Vec::new(), Vec::new(), TimeSpan::ZERO);
    for (number, step) in steps.iter().enumerate() {
        let is_last = number + 1 == steps.len();
        match around.stand(step) {
            Stand::Place(air) => rooms.push(Room { from: now, air, approach }),
            Stand::Room => {
                let followed = if is_last { lasts(step) + BEYOND } else { lasts(step) };
                let course = around.course.from(clock + now, followed);
                rooms.extend(course.into_iter().map(|(after, air)| Room { from: now + after, air, approach }));
            }
        }
        now += lasts(step);
        ends.push(now);
    }
    if rooms.is_empty() {
        rooms.push(Room { from: TimeSpan::ZERO, air: around.room.value, approach });
    }
    (rooms, ends)
}

/// How long a step is taken to last.
fn lasts(step: &Step) -> TimeSpan {
    step.time.map_or(TimeSpan::ZERO, middle)
}

/// The course to its planned end for a chart.
fn points(course: &Course, lasts: TimeSpan, care: Care) -> Vec<Point> {
    let count = if care == Care::Full { 25 } else { 2 };
    (0..count)
        .filter_map(|n| course.at(lasts * (f64::from(n) / f64::from(count - 1))))
        .map(|moment| Point { time: moment.time, risen: moment.risen, temperature: moment.temperature })
        .collect()
}
