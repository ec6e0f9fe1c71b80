//! How fast everything in a fermenting dough changes: the one model for both leavens.

use super::gas_rate::square_root_law;
use super::gas_volume::GasRoom;
use super::starch_release::acidity_share;
use super::state::SIZE;
use super::warmth::{Warmth, Warmths};
use super::{
    AcidMaking, Organisms, Solutes, Stage, Uptake, acidity, acidity_growth, awake_share, culture_growth, ethanol,
    osmotic_strength, own_heat, salt_on_bacteria, uptake,
};
use quantity::{Acidity, Amount, Fraction, Mass, Rate, Temperature};

/// A dough and its organisms with all that does not change worked out once, in hours, moles, grams.
pub(super) struct Rates<'a> {
    stage: &'a Stage,
    organisms: &'a Organisms,
    room: GasRoom,
    full_gas: f64,
    wakening: f64,
    starving: f64,
    leak: f64,
    stretched: f64,
    resting_acid: f64,
    salt: f64,
    /// What is left of the yeast's rate beside salt, and what a mole of sugar or of gas takes.
    unsweetened: f64,
    by_sugar: f64,
    by_gas: f64,
    half_room: f64,
    half_sugar: f64,
    by_yield: f64,
    own_heat: f64,
    warming: Warmths<'a>,
}

/// What bacteria do in an hour.
#[derive(Default)]
struct Souring {
    growth: f64,
    waking: f64,
    acid: f64,
}

const AT: fn(f64) -> Temperature = Temperature::celsius;

impl<'a> Rates<'a> {
    /// Prepares for temperatures from one to another, in °C, where these are known.
    pub(super) fn new(stage: &'a Stage, organisms: &'a Organisms, range: Option<(f64, f64)>) -> Self {
        let vigour = organisms.vigour;
        let gas_at = |celsius| square_root_law(AT(celsius), &organisms.gas_law);
        let strength =
            |salt, sugars, other| osmotic_strength(&Solutes { salt, sugars, other }, stage.water) / organisms.osmotic_limit;
        let room = GasRoom::of(stage);
        let a_mole = Amount::moles(1.0);
        Self {
            stage,
            organisms,
            room,
            full_gas: vigour * organisms.gas_at_30.as_moles() / gas_at(30.0),
            wakening: vigour / gas_at(27.0) / organisms.wakening.as_hours(),
            starving: vigour * organisms.starving.as_per_hour() / gas_at(30.0),
            leak: vigour * stage.hold.leak.as_per_hour() / gas_at(25.0),
            stretched: 1.0 / (room.mixed * stage.hold.stretch),
            resting_acid: vigour * organisms.acid.at_rest.as_millimoles()
                / culture_growth(AT(30.0), &organisms.bacteria).as_per_hour(),
            salt: salt_on_bacteria(Fraction::ratio(stage.salt.as_kilograms()), organisms.salt_limit),
            unsweetened: 1.0 - strength(stage.salt, Amount::ZERO, stage.other_solutes),
            by_sugar: strength(Mass::ZERO, a_mole, Amount::ZERO),
            by_gas: ethanol(a_mole).as_grams() / (organisms.ethanol_limit * stage.water.as_kilograms()),
            half_room: organisms.half_room.as_grams(),
            half_sugar: organisms.half_sugar.as_moles(),
            by_yield: 1.0 / organisms.gas_yield,
            own_heat: own_heat(Rate::per_hour(1.0), stage.water - stage.flour_water, &stage.own_heat).as_per_hour(),
            warming: Warmths::new(stage, organisms, range),
        }
    }

    /// The change of every state an hour, in the order of `State::numbers`; that of the temperature
    /// is what the dough warms itself.
    #[inline]
    pub(super) fn slopes(&self, dough: Temperature, numbers: &[f64; SIZE]) -> [f64; SIZE] {
        let [hexose, maltose, starch, yeast, bacteria, left, readiness, yeast_sleep, bacteria_sleep, acid, made, lost, _] =
            *numbers;
        let (hexose, maltose, left) = (hexose.max(0.0), maltose.max(0.0), left.max(0.0));
        let (vigour, warmth) = (self.organisms.vigour, self.warming.at(dough));
        let acidity = self.acidity(acid);
        let sugars = uptake(Amount::moles(hexose), Amount::moles(maltose), &self.organisms.sugars);
        let ease = self.ease(hexose + 0.5 * maltose, made);

        let working = self.full_gas * warmth.gas * ease * readiness * yeast;
        let (from_hexose, from_maltose) = (working * sugars.hexose, working * sugars.maltose);
        let yeast_rate = vigour * warmth.yeast;
        let growth = yeast_rate * awake_share(yeast_sleep) * ease * sugars.supply() * (left / (self.half_room + left)) * yeast;
        let souring = self.souring(&warmth, acidity, [hexose + maltose, bacteria, bacteria_sleep]);

        let lactic = self.organisms.acid.lactic_share * souring.acid * 0.001;
        let gas = from_hexose + from_maltose + lactic;
        let (hexose_used, maltose_used) = self.eaten([from_hexose, from_maltose], lactic, [hexose, maltose]);
        let release = vigour * warmth.release * acidity_share(acidity) * starch.max(0.0);
        [
            -hexose_used,
            release - maltose_used,
            -release,
            growth - warmth.dying * yeast,
            souring.growth,
            -growth,
            self.wakening(&warmth, sugars, readiness),
            -yeast_rate * yeast_sleep,
            souring.waking,
            souring.acid,
            gas,
            self.lost(&warmth, made - lost, gas),
            self.own_heat * gas,
        ]
    }

    pub(super) fn acidity(&self, acid: f64) -> Acidity {
        if acid == 0.0 { self.stage.buffer.start } else { acidity(Amount::millimoles(acid), &self.stage.buffer) }
    }

    /// What solutes and ethanol leave of the yeast's rate: both fall in a line to nothing.
    fn ease(&self, sugars: f64, made: f64) -> f64 {
        (self.unsweetened - self.by_sugar * sugars).max(0.0) * (1.0 - self.by_gas * made).max(0.0)
    }

    /// Growth and acid of the bacteria; a dough without any is spared the trouble.
    fn souring(&self, warmth: &Warmth, acidity: Acidity, [sugar, bacteria, sleep]: [f64; 3]) -> Souring {
        if bacteria == 0.0 {
            return Souring::default();
        }
        let fed = sugar / (self.half_sugar + sugar) * bacteria;
        let rate = self.organisms.vigour * warmth.bacteria * self.salt;
        let growth = rate * awake_share(sleep) * acidity_growth(acidity, &self.organisms.acidity) * fed;
        let AcidMaking { with_growth, at_rest_half, .. } = &self.organisms.acid;
        let above = (acidity - self.stage.buffer.end).as_ph().max(0.0);
        let resting = self.resting_acid * warmth.bacteria * self.salt * fed;
        let acid = with_growth.as_millimoles() * growth + resting * (above / (above + at_rest_half));
        Souring { growth, waking: -rate * sleep, acid }
    }

    /// Hexose and maltose used by yeast and bacteria; these leave glucose of their maltose.
    fn eaten(&self, gas: [f64; 2], lactic: f64, [hexose, maltose]: [f64; 2]) -> (f64, f64) {
        let share = maltose / (maltose + hexose + 1e-12);
        let left = self.organisms.acid.glucose_left;
        let used = gas[0] * self.by_yield + lactic * (1.0 - share) - left * lactic * share;
        (used, gas[1] * self.by_yield + (1.0 + left) * lactic * share)
    }

    /// Yeast wakes where there is sugar and weakens where there is none.
    fn wakening(&self, warmth: &Warmth, sugars: Uptake, readiness: f64) -> f64 {
        let supply = sugars.supply();
        warmth.gas * ((1.0 - readiness) * supply * self.wakening - self.starving * readiness * (1.0 - supply))
    }

    /// Gas that leaves: ever more of what is made as the dough stretches, and a steady leak.
    ///
    /// ```text
    /// dX/dt = dC/dt·min(1, [V_g/(V_0·φ)]⁴) + θ·k_0·[g(T)/g(25 °C)]·n_g
    /// ```
    fn lost(&self, warmth: &Warmth, held: f64, made: f64) -> f64 {
        let (bubbles, volume) = self.room.share(held, warmth.molar, warmth.dissolved);
        let stretched = volume * self.stretched;
        let square = stretched * stretched;
        made * (square * square).min(1.0) + self.leak * warmth.gas * bubbles
    }
}
