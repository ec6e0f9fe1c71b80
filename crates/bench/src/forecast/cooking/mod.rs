//! What a griddle, hot fat or an oven does to a piece: how warm its middle gets, whether it has set and
//! browned, and whether that is enough.

mod fat;
mod griddle;
mod guesses;
mod oven;
mod piece;

pub use guesses::Ends;
use guesses::Seen;

use super::surroundings::Surroundings;
use super::{Rise, midway};
use formula::read::{Action, Condition};
use formula::resolve::formula::StageAt;
use formula::{Formula, Known, Place, Step};
use quantity::{Between, Fraction, Temperature, TimeSpan};
use science::heat::browning::{colour_difference, time_above};
use science::heat::course::Course;
use science::heat::starch_setting::set_share;
use science::keeping::history::Reading;
use science::keeping::salmonella::{ENOUGH, worst_reductions};

/// What is foreseen of a cooking. A model, not a measurement: it asks for one probe reading.
#[derive(Debug)]
pub struct Cooking {
    /// The component and stage.
    pub at: StageAt,
    /// Where its last sentence stands.
    pub place: Place,
    /// What is done.
    pub action: Action,
    /// How warm the middle is when it leaves the heat, by the usual contact; the band is what the guesses leave.
    pub core: Known<Temperature>,
    /// What the method wants of the middle.
    pub wanted: Option<Temperature>,
    /// When the middle is foreseen to reach that, by the usual contact.
    pub reached: Option<Known<TimeSpan>>,
    /// The time a side, on a griddle.
    pub side: Option<TimeSpan>,
    /// How far the starch of the middle has set, by the usual contact.
    pub set: Known<Fraction>,
    /// How brown it gets.
    pub browning: Known<Browning>,
    /// The decimal reductions of *Salmonella* at the place that had least, by the hardiest food studied: by the
    /// lower bound of the model, and as such pieces usually heat through.
    pub reductions: Known<Between<f64>>,
    /// What is lost by then.
    pub loss: Known<Fraction>,
    /// How many batches there are, and how long they take together.
    pub batches: (f64, TimeSpan),
    /// The middle and the hotter face by the usual contact, for a chart.
    pub points: Vec<Heated>,
    /// Whether the size of a piece is stated; else the middle is only a guess.
    pub is_size_stated: bool,
    /// What was taken for granted about piece and heat, in words.
    pub assumed: Vec<String>,
    /// What the kitchen adds: the mark of the knob, how far fat falls.
    pub remarks: Vec<String>,
}

/// How brown a face gets: a rough figure, fitted to dried crumb.
#[derive(Clone, Copy, Debug)]
pub struct Browning {
    /// The colour difference to the raw crumb, CIE 1976, from dried crumb to a sweet batter with milk.
    pub difference: Between<f64>,
    /// How long the hotter face was above 150 °C.
    pub above_150: TimeSpan,
}

/// A moment of a cooking.
#[derive(Clone, Copy, Debug)]
pub struct Heated {
    /// When.
    pub time: TimeSpan,
    /// The middle.
    pub core: Temperature,
    /// The hotter face.
    pub face: Temperature,
}

impl Cooking {
    /// The middle from the least to the most that the guesses leave.
    #[must_use]
    pub fn core_range(&self) -> Between<Temperature> {
        let (from, to) = self.core.band.unwrap_or((self.core.value, self.core.value));
        Between { from, to }
    }

    /// Whether the heat is enough by the criterion for flour and egg batters, at every place of the piece.
    #[must_use]
    pub fn surely(&self) -> Surely {
        if self.reductions.value.from >= ENOUGH {
            Surely::Enough
        } else if self.reductions.value.to >= ENOUGH {
            Surely::Usually
        } else {
            Surely::NotEnough
        }
    }

    /// Whether starch has set in the middle, by the usual contact.
    #[must_use]
    pub fn is_set(&self) -> bool {
        self.set.value >= SET
    }
}

/// How sure it is that the heat is enough.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Surely {
    /// Even by the lower bound of the model.
    Enough,
    /// As such pieces usually heat through, not by the lower bound.
    Usually,
    /// Not even as usual.
    NotEnough,
}

/// Starch counts as set from this share on: common practice, no source.
const SET: Fraction = Fraction::percent(95.0);

/// What a place of cooking foresees, before it is judged.
struct Heating {
    /// By the usual contact, and by conduction alone.
    seen: Seen,
    /// The middle when it leaves the heat, by the usual contact.
    core: Temperature,
    /// Where the guesses leave it, where that was asked.
    band: Option<(Temperature, Temperature)>,
    /// When it leaves the heat.
    off: TimeSpan,
    assumed: Vec<String>,
    remarks: Vec<String>,
}

/// Foresees every cooking of a formula, and says what is missing where it cannot.
pub fn cookings(formula: &Formula, around: &Surroundings, rises: &[Rise], ends: Ends) -> (Vec<Cooking>, Vec<String>) {
    let (mut cookings, mut missing) = (Vec::new(), Vec::new());
    for (at, steps) in cooked(formula) {
        match cooking((formula, at), &steps, around, rises, ends) {
            Ok(cooking) => cookings.push(cooking),
            Err(lacking) => missing.push(lacking),
        }
    }
    (cookings, missing)
}

/// How warm the middle of every cooked piece gets by the likeliest contact, without all the rest.
pub fn quick_cores(formula: &Formula, around: &Surroundings, rises: &[Rise]) -> Vec<(StageAt, Action, Temperature)> {
    let one = |(at, steps): (StageAt, Vec<&Step>)| {
        let first = *steps.first()?;
        if steps.iter().any(|step| step.temperature.is_none() || step.time.is_none()) {
            return None;
        }
        let risen = rises.iter().rev().find(|rise| rise.at.0 == at.0).and_then(|rise| rise.points.last());
        let made = piece::piece(formula, at.0, first.action, around, risen)?;
        let core = match first.action {
            Action::Griddle => griddle::expected_core(&made, first, around)?,
            Action::Fry => fat::expected_core(&made, first, around),
            _ => oven::expected_core(&made, &steps, around),
        };
        Some((at, first.action, moist(core, made.boils())))
    };
    cooked(formula).into_iter().filter_map(one).collect()
}

/// The steps that cook pieces; bakings that follow one another are one: the oven is only set to another heat.
fn cooked(formula: &Formula) -> Vec<(StageAt, Vec<&Step>)> {
    let mut all = Vec::new();
    for (at, stage) in formula.stages() {
        let mut rest = &stage.steps[..];
        while let Some(begin) = rest.iter().position(is_foreseen) {
            let follows = |step: &&Step| step.action == Action::Bake;
            let count = rest[begin..].iter().take_while(follows).count().max(1);
            all.push((at, rest[begin..begin + count].iter().collect()));
            rest = &rest[begin + count..];
        }
    }
    all
}

/// Whether a step is one that can be foreseen here.
const fn is_foreseen(step: &Step) -> bool {
    matches!(step.action, Action::Griddle | Action::Fry | Action::Bake)
}

fn cooking(
    (formula, at): (&Formula, StageAt),
    steps: &[&Step],
    around: &Surroundings,
    rises: &[Rise],
    ends: Ends,
) -> Result<Cooking, String> {
    let Some((first, last)) = steps.first().zip(steps.last()) else { return Err("nothing is cooked".to_owned()) };
    let what = format!("“{}” of {}", first.action.word(), formula.components[at.0].title);
    let lacking = |datum: &str| format!("how far {what} cooks through: it states no {datum}");
    if steps.iter().any(|step| step.temperature.is_none()) {
        return Err(lacking("temperature"));
    }
    if steps.iter().any(|step| step.time.is_none()) {
        return Err(lacking("time"));
    }
    let risen = rises.iter().rev().find(|rise| rise.at.0 == at.0).and_then(|rise| rise.points.last());
    let made =
        piece::piece(formula, at.0, first.action, around, risen).ok_or_else(|| lacking("thickness of a piece in its yield"))?;
    let mut heating = match first.action {
        Action::Griddle => griddle::heated(&made, first, around, ends),
        Action::Fry => fat::heated(&made, first, around, (formula.components[at.0].yields.scaling_weight, ends)),
        _ => oven::heated(&made, steps, around, ends),
    };
    let boils = made.boils();
    heating.assumed.splice(0..0, made.assumed);
    let wanted = match last.until {
        Some(Condition::Core(range)) => Some(midway(range)),
        _ => None,
    };
    let batches = first.batches(formula.components[at.0].yields.pieces);
    let takes: TimeSpan = steps.iter().filter_map(|step| step.time).map(super::middle).sum();
    let core = Known { band: heating.band, ..computed(heating.core) };
    let sides = |time: TimeSpan| first.side_time.map_or(time * 0.5, super::middle);
    Ok(Cooking {
        at,
        place: last.place.clone(),
        action: first.action,
        core: match first.action {
            Action::Griddle => around.calibration.core(core),
            _ => core,
        },
        wanted,
        reached: wanted.and_then(|wanted| reached(&heating, wanted)).map(computed),
        side: (first.action == Action::Griddle).then(|| sides(takes)),
        set: Known::computed(
            set_share(&core_course(&heating.seen.expected, heating.off)),
            "the setting of starch",
            science::heat::starch_setting::EQUATION.name,
        ),
        browning: Known::computed(browning(&heating), "the browning of a face", science::heat::browning::EQUATION.name),
        reductions: Known::computed(
            Between { from: least_reductions(&heating.seen.conduction_only), to: least_reductions(&heating.seen.expected) },
            "the fall of Salmonella, by the hardiest food studied",
            science::keeping::salmonella::EQUATION.name,
        ),
        loss: computed(heating.seen.expected.loss.last().copied().unwrap_or_default()),
        batches: (batches, takes * batches),
        points: points(&heating, boils),
        is_size_stated: made.is_size_stated,
        assumed: heating.assumed,
        remarks: heating.remarks,
    })
}

fn computed<T>(value: T) -> Known<T> {
    Known::computed(value, "heat, water and steam through the piece", science::heat::cook::EQUATION.name)
}

/// The likeliest temperature of the middle as it leaves the griddle; nothing where that cannot be foreseen, or off
/// any other heat.
pub fn expected_core(formula: &Formula, at: StageAt, step: &Step, around: &Surroundings, rises: &[Rise]) -> Option<Temperature> {
    let risen = rises.iter().rev().find(|rise| rise.at.0 == at.0).and_then(|rise| rise.points.last());
    let made = piece::piece(formula, at.0, step.action, around, risen).filter(|_| step.action == Action::Griddle)?;
    let is_told = step.temperature.is_some() && (step.time.is_some() || step.side_time.is_some());
    let core = griddle::expected_core(&made, step, around).filter(|_| is_told)?;
    Some(moist(core, made.boils()))
}

/// The course of the middle up to a time.
fn core_course(course: &Course, until: TimeSpan) -> Vec<(TimeSpan, Temperature)> {
    let times = course.times.iter().take_while(|time| **time <= until);
    times.filter_map(|time| Some((*time, course.core_at(*time)?))).collect()
}

/// A middle that still holds water stays at the boil: beyond it the model dries the crumb too fast.
fn moist(core: Temperature, boils: Temperature) -> Temperature {
    if core > boils { boils } else { core }
}

fn reached(heating: &Heating, wanted: Temperature) -> Option<TimeSpan> {
    let course = core_course(&heating.seen.expected, heating.off);
    course.iter().find(|(_, core)| *core >= wanted).map(|(time, _)| *time)
}

/// The hotter of the two faces, moment by moment.
fn hotter_face(heating: &Heating) -> Vec<(TimeSpan, Temperature)> {
    let [below, above] = heating.seen.expected.face_courses();
    let sum = |course: &[(TimeSpan, Temperature)]| course.iter().map(|(_, t)| t.as_celsius()).sum::<f64>();
    if sum(&below) > sum(&above) { below } else { above }
}

fn browning(heating: &Heating) -> Browning {
    let face = hotter_face(heating);
    let slow = colour_difference(&face, 1.0);
    let quick = colour_difference(&face, science::heat::browning::SWEET_BATTER);
    Browning { difference: Between { from: slow, to: quick }, above_150: time_above(&face, Temperature::celsius(150.0)) }
}

/// The reductions at the place of the piece that had least of them.
fn least_reductions(course: &Course) -> f64 {
    let histories: Vec<Vec<Reading>> = (0..course.cells.first().map_or(0, Vec::len)).map(|cell| readings(course, cell)).collect();
    let warmth = |history: &[Reading]| history.iter().map(|reading| reading.temperature.as_celsius()).sum::<f64>();
    let Some(coldest) = histories.iter().min_by(|a, b| warmth(a).total_cmp(&warmth(b))) else { return f64::INFINITY };
    // A place that is never colder than another has no fewer, and need not be reckoned.
    let is_warmer = |history: &[Reading]| history.iter().zip(coldest).all(|(here, there)| here.temperature >= there.temperature);
    let others = histories.iter().filter(|history| !is_warmer(history));
    others.map(|history| worst_reductions(history)).fold(worst_reductions(coldest), f64::min)
}

fn readings(course: &Course, cell: usize) -> Vec<Reading> {
    course.cell(cell).into_iter().map(|(at, temperature)| Reading { at, temperature }).collect()
}

fn points(heating: &Heating, boils: Temperature) -> Vec<Heated> {
    let count = 25;
    let face = hotter_face(heating);
    let core = core_course(&heating.seen.expected, heating.off);
    let at = |course: &[(TimeSpan, Temperature)], time: TimeSpan| {
        course.iter().rev().find(|(then, _)| *then <= time).or(course.first()).map(|(_, temperature)| *temperature)
    };
    (0..count)
        .map(|n| heating.off * (f64::from(n) / f64::from(count - 1)))
        .filter_map(|time| Some(Heated { time, core: moist(at(&core, time)?, boils), face: at(&face, time)? }))
        .collect()
}
