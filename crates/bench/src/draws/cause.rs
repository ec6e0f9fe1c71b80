//! What kitchens vary in, how far, and one draw of it all.

use crate::forecast::{BAND, Learnt, Surroundings, UNCALIBRATED};
use formula::resolve::formula::StageAt;
use formula::{Formula, Line};
use quantity::{Fraction, Mass};
use science::sensory::blind_code::Chance;

/// One thing that varies.
#[derive(Clone, Debug, PartialEq)]
pub enum Cause {
    /// The room, over or under what it is said to be.
    Room,
    /// The fridge.
    Fridge,
    /// How warm a stage comes from the bowl.
    Bowl,
    /// How lively the leaven of that name is.
    Vigour(String),
    /// How fast a dough follows the air around it.
    Lag,
    /// The yeast that a scale shows for a stage.
    Yeast(StageAt),
    /// The salt that a scale shows for a stage.
    Salt(StageAt),
    /// How full a reader's spoons and cups are.
    Spoons,
    /// How hot the pan, the fat or the oven really is.
    Heat,
    /// How well heat passes into a piece.
    Contact,
    /// How far steam in the pores helps it on.
    Pores,
    /// How thick the pieces are.
    Thickness,
}

/// Common practice, no source: standard deviations of rooms and fridges over the day, doughs from the bowl, pans
/// and ovens, in kelvin, and of thickness as a share.
const ROOM: f64 = 1.0;
const FRIDGE: f64 = 1.0;
const BOWL: f64 = 1.0;
const HEAT: f64 = 7.0;
const THICKNESS: f64 = 0.06;
/// From reader to reader a levelled spoon scatters so much, as a share: common practice, no source.
const SPOONS: f64 = 0.12;

/// What varies for a formula in a kitchen, each with its standard deviation in its own unit.
#[derive(Debug)]
pub struct Causes(pub Vec<(Cause, f64)>);

impl Causes {
    /// Gathers what varies.
    pub fn of(formula: &Formula, around: &Surroundings) -> Self {
        let all = |learnt: &Learnt| libm::hypot(learnt.spread, learnt.scatter);
        let calibration = &around.calibration;
        let mut causes = vec![
            (Cause::Room, ROOM),
            (Cause::Fridge, FRIDGE),
            (Cause::Bowl, BOWL),
            (Cause::Lag, all(&calibration.lag)),
            (Cause::Heat, HEAT),
            (Cause::Contact, all(&calibration.contact)),
            (Cause::Pores, 1.0),
            (Cause::Thickness, THICKNESS),
        ];
        causes.extend(formula.lines().any(|(_, line)| is_spooned(line)).then_some((Cause::Spoons, SPOONS)));
        let mut leavens: Vec<String> = formula.lines().filter_map(|(_, line)| leaven(line)).collect();
        leavens.sort();
        leavens.dedup();
        causes.extend(leavens.into_iter().map(|name| {
            let learnt = calibration.vigour(&name);
            // Before any trial the times scatter as the model does against practice.
            let spread = if learnt.trials == 0 { UNCALIBRATED / BAND } else { all(learnt) };
            (Cause::Vigour(name), spread)
        }));
        for (at, stage) in formula.stages() {
            let weighed = |test: &dyn Fn(&Line) -> bool| -> Mass {
                stage.lines.iter().filter(|line| test(line)).map(|line| line.mass.value).sum()
            };
            let (yeast, salt) = (weighed(&is_yeast), weighed(&is_salt));
            causes.extend((yeast > Mass::ZERO).then(|| (Cause::Yeast(at), step(around) / yeast.as_grams())));
            causes.extend((salt > Mass::ZERO).then(|| (Cause::Salt(at), step(around) / salt.as_grams())));
        }
        Self(causes)
    }

    /// One kitchen's differences, in standard deviations, one for each cause.
    pub fn draw(&self, seed: u64, number: usize) -> Vec<f64> {
        let mut chance = Chance::seeded(seed ^ (number as u64).wrapping_mul(0xd134_2543_de82_ef95));
        self.0.iter().map(|_| normal(&mut chance)).collect()
    }

    /// The causes with their shares, those that nobody would notice left out.
    pub fn named(&self, shares: &[f64]) -> Vec<(Cause, Fraction)> {
        let all = self.0.iter().zip(shares).filter(|(_, share)| **share >= 0.01);
        let mut named: Vec<_> = all.map(|((cause, _), share)| (cause.clone(), Fraction::ratio(*share))).collect();
        named.sort_by(|a, b| b.1.as_ratio().total_cmp(&a.1.as_ratio()));
        named
    }
}

/// The standard deviation of a scale that rounds to its step, in gram: GUM, F.2.2.1.
fn step(around: &Surroundings) -> f64 {
    around.shows.value.as_grams() / libm::sqrt(12.0)
}

pub fn is_yeast(line: &Line) -> bool {
    line.ingredient().is_some_and(|one| one.yeast().is_some())
}

pub fn is_salt(line: &Line) -> bool {
    line.ingredient().is_some_and(|one| one.group == formula::read::Group::Salt)
}

/// Whether a line is measured by the spoon or cup.
pub fn is_spooned(line: &Line) -> bool {
    matches!(&line.written, formula::read::Amount::Measure(measure) if measure.unit.is_spoon())
}

fn leaven(line: &Line) -> Option<String> {
    line.ingredient().filter(|one| one.is_alive()).map(|one| one.name.clone())
}

/// A normal figure, two uniform ones at a time: Box and Muller (1958).
fn normal(chance: &mut Chance) -> f64 {
    let uniform = |chance: &mut Chance| ((chance.bits() >> 11) as f64 + 0.5) / (1_u64 << 53) as f64;
    let (radius, angle) = (uniform(chance), uniform(chance));
    libm::sqrt(-2.0 * libm::log(radius)) * libm::cos(std::f64::consts::TAU * angle)
}
