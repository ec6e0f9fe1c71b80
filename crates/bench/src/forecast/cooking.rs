//! What a griddle or hot fat does to a piece: how warm its middle gets, and whether that is enough.

use super::{Surroundings, middle, midway};
use formula::arithmetic::{Mixture, mixture};
use formula::ingredient::Figure;
use formula::read::{Action, Condition};
use formula::{Formula, Known, Step};
use quantity::{Between, Density, Fraction, HeatTransfer, Length, Temperature, TimeSpan};
use science::heat::Composition;
use science::heat::cook::{Cook, Piece, cook, course};
use science::heat::griddle::{Griddle, immersed, kitchen};
use science::keeping::history::Reading;
use science::keeping::salmonella::{ENOUGH, worst_reductions};

/// What is foreseen of a cooking step. A model, not a measurement: it asks for one probe reading.
#[derive(Debug)]
pub struct Cooking {
    /// The component and stage.
    pub at: (usize, usize),
    /// What is done.
    pub action: Action,
    /// How warm the middle is when it leaves the heat, from the poorest to the best contact.
    pub core: Known<Between<Temperature>>,
    /// What the method wants of the middle.
    pub wanted: Option<Temperature>,
    /// The decimal reductions of *Salmonella* at the place that had least, by the hardiest food studied.
    pub reductions: f64,
    /// What is lost by then.
    pub loss: Fraction,
    /// How many batches there are, and how long they take together.
    pub batches: (f64, TimeSpan),
}

impl Cooking {
    /// Whether the heat is enough by the criterion for flour and egg batters, at every place of the piece.
    #[must_use]
    pub fn is_enough(&self) -> bool {
        self.reductions >= ENOUGH
    }
}

/// The share of its raw density that a risen piece has when nothing is foreseen of its rise.
const RISEN: f64 = 1.6;
/// What a batter or dough without gas weighs, in gram per millilitre: common practice, no source.
const GAS_FREE: f64 = 1.1;

/// Foresees a griddling or frying step; says what is missing where it cannot.
pub fn cooking(
    formula: &Formula,
    at: (usize, usize),
    step: &Step,
    around: &Surroundings,
    risen: Option<f64>,
) -> Result<Cooking, String> {
    let Laid { piece, heat, time } = laid(formula, at, step, around, risen)?;
    let (seen, core) = match step.action {
        Action::Griddle => on_griddle(&piece, &griddle(step, heat, time, around), around.calibration.pores()),
        _ => in_fat(&piece, heat, time),
    };
    let core = Known::computed(core, "heat, water and steam through the piece", science::heat::cook::EQUATION.source);
    let wanted = match step.until {
        Some(Condition::Core(range)) => Some(midway(range)),
        _ => None,
    };
    let batches = step.batches(formula.components[at.0].yields.pieces);
    Ok(Cooking {
        at,
        action: step.action,
        core: match step.action {
            Action::Griddle => around.calibration.core(core),
            _ => core,
        },
        wanted,
        reductions: least_reductions(&seen),
        loss: seen.expected.loss.last().copied().unwrap_or_default(),
        batches: (batches, time * batches),
    })
}

/// Whether a step is one that can be foreseen here: thin pieces, heated through their faces.
pub const fn is_foreseen(step: &Step) -> bool {
    matches!(step.action, Action::Griddle | Action::Fry)
}

/// A piece as it meets the heat, how hot that is, and for how long.
struct Laid {
    piece: Piece,
    heat: Temperature,
    time: TimeSpan,
}

fn laid(formula: &Formula, at: (usize, usize), step: &Step, around: &Surroundings, risen: Option<f64>) -> Result<Laid, String> {
    let component = &formula.components[at.0];
    let what = format!("“{}” of {}", step.action.word(), component.title);
    let lacking = |datum: &str| format!("how far {what} cooks through: it states no {datum}");
    let thickness = component.yields.thickness.filter(|thickness| *thickness > Length::ZERO);
    let thickness = thickness.ok_or_else(|| lacking("thickness of a piece in its yield"))?;
    let heat = midway(step.temperature.ok_or_else(|| lacking("temperature"))?);
    let time = middle(step.time.ok_or_else(|| lacking("time"))?);
    let density = Density::grams_per_millilitre(GAS_FREE / risen.unwrap_or(RISEN).clamp(1.0, 3.0));
    let piece = Piece::new(thickness, composition(&mixture(formula, at.0)), density, around.room.value);
    Ok(Laid { piece, heat, time })
}

fn griddle(step: &Step, surface: Temperature, time: TimeSpan, around: &Surroundings) -> Griddle {
    let side = step.side_time.map_or(time * 0.5, middle);
    Griddle {
        surface,
        transfer: around.calibration.griddle(),
        sides: vec![side, side],
        rest: TimeSpan::minutes(2.0),
        air: kitchen(around.room.value),
    }
}

/// The likeliest temperature of the middle as it leaves the griddle, between the poorest and the best contact;
/// nothing where that cannot be foreseen, or in fat.
#[must_use]
pub fn expected_core(
    formula: &Formula,
    at: (usize, usize),
    step: &Step,
    around: &Surroundings,
    risen: Option<f64>,
) -> Option<Temperature> {
    let Laid { piece, heat, time } = laid(formula, at, step, around, risen).ok().filter(|_| step.action == Action::Griddle)?;
    let griddle = griddle(step, heat, time, around);
    let off: TimeSpan = griddle.sides.iter().copied().sum();
    course(&piece, &griddle.stages(griddle.transfer.usual)).core_at(off)
}

/// A cook on a griddle, and the middle from the poorest contact and driest pores to the best and moistest.
fn on_griddle(piece: &Piece, griddle: &Griddle, pores: Between<Fraction>) -> (Cook, Between<Temperature>) {
    let off: TimeSpan = griddle.sides.iter().copied().sum();
    let core = |saturation: Fraction, transfer: HeatTransfer| {
        course(&Piece { saturation, ..*piece }, &griddle.stages(transfer)).core_at(off).unwrap_or(piece.start)
    };
    let range = griddle.transfer.range;
    let core = Between { from: core(pores.from, range.from), to: core(pores.to, range.to) };
    (cook(piece, &griddle.stages(griddle.transfer.usual)), core)
}

fn in_fat(piece: &Piece, fat: Temperature, time: TimeSpan) -> (Cook, Between<Temperature>) {
    let seen = cook(piece, &immersed(fat, time));
    let core = Between { from: seen.conduction_only.core(), to: seen.expected.core() };
    (seen, Between { from: lower(core), to: higher(core) })
}

fn lower(range: Between<Temperature>) -> Temperature {
    if range.from < range.to { range.from } else { range.to }
}

fn higher(range: Between<Temperature>) -> Temperature {
    if range.from < range.to { range.to } else { range.from }
}

/// The reductions at the place of the piece that had least of them, by the lower bound of the model.
fn least_reductions(seen: &Cook) -> f64 {
    let course = &seen.conduction_only;
    let cells = course.cells.first().map_or(0, Vec::len);
    let readings = |cell: usize| -> Vec<Reading> {
        course.cell(cell).into_iter().map(|(at, temperature)| Reading { at, temperature }).collect()
    };
    (0..cells).map(|cell| worst_reductions(&readings(cell))).fold(f64::INFINITY, f64::min)
}

/// The shares of what conducts and stores heat; what no source tells counts as carbohydrate.
fn composition(mix: &Mixture) -> Composition {
    let share = |figure| Fraction::ratio((mix.total(figure).0 / mix.ingoing.as_grams()).clamp(0.0, 1.0));
    let (water, protein, fat) = (share(Figure::Water), share(Figure::Protein), share(Figure::Fat));
    let (fibre, ash) = (share(Figure::Fibre), share(Figure::Ash));
    let rest = Fraction::WHOLE - water - protein - fat - fibre - ash;
    Composition { water, protein, fat, fibre, ash, carbohydrate: rest.max(Fraction::ZERO), ice: Fraction::ZERO }
}
