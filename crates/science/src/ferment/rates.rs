//! How fast everything in a fermenting dough changes: the one model for both leavens.

use super::gas_rate::square_root_law;
use super::state::SIZE;
use super::{
    Gas, Growth, Organisms, Solutes, Stage, State, Uptake, acidity, acidity_growth, culture_growth, death, ethanol_share,
    gas_volume, lag_share, osmotic_share, osmotic_strength, own_heat, salt_on_bacteria, starch_release, uptake, yeast_growth,
};
use quantity::{Acidity, Amount, Fraction, Mass, Rate, Temperature};

/// A dough and its organisms with what does not change worked out once.
pub(super) struct Rates<'a> {
    stage: &'a Stage,
    organisms: &'a Organisms,
    gas_at_25: f64,
    gas_at_27: f64,
    gas_at_30: f64,
    bacteria_at_30: f64,
    salt: f64,
}

/// What a state lets its organisms do at a temperature.
struct Now {
    acidity: Acidity,
    uptake: Uptake,
    /// What solutes and ethanol leave of the yeast's rate.
    ease: f64,
    /// Gas against temperature, not yet divided by its value at 30 °C.
    warmth: f64,
}

/// What bacteria do in an hour.
#[derive(Default)]
struct Souring {
    growth: f64,
    lag: f64,
    acid: f64,
}

const AT: fn(f64) -> Temperature = Temperature::celsius;

impl<'a> Rates<'a> {
    pub(super) fn new(stage: &'a Stage, organisms: &'a Organisms) -> Self {
        Self {
            stage,
            organisms,
            gas_at_25: square_root_law(AT(25.0), &organisms.gas_law),
            gas_at_27: square_root_law(AT(27.0), &organisms.gas_law),
            gas_at_30: square_root_law(AT(30.0), &organisms.gas_law),
            bacteria_at_30: culture_growth(AT(30.0), &organisms.bacteria).as_per_hour(),
            salt: salt_on_bacteria(Fraction::ratio(stage.salt.as_kilograms()), organisms.salt_limit),
        }
    }

    /// The change of every state an hour, in the order of `State::numbers`; that of the temperature
    /// is what the dough warms itself.
    pub(super) fn slopes(&self, dough: Temperature, numbers: &[f64; SIZE]) -> [f64; SIZE] {
        let state = State::of(numbers);
        let organisms = self.organisms;
        let now = self.now(dough, &state);
        let vigour = organisms.vigour;

        let full = vigour * organisms.gas_at_30.as_moles() * (now.warmth / self.gas_at_30) * now.ease;
        let working = full * state.readiness * state.yeast.as_grams();
        let (from_hexose, from_maltose) = (working * now.uptake.hexose, working * now.uptake.maltose);

        let yeast_rate = vigour * self.growth(dough);
        let growth = yeast_rate * lag_share(state.yeast_lag) * now.ease * now.uptake.supply() * self.room(&state);
        let dying = death(dough, &organisms.heat).as_per_hour();
        let souring = self.souring(dough, &state, now.acidity);

        let lactic = organisms.acid.lactic_share * souring.acid / 1000.0;
        let made = from_hexose + from_maltose + lactic;
        let (hexose, maltose) = self.eaten(from_hexose, from_maltose, lactic, &state);
        let release = vigour * self.release(dough, now.acidity) * state.starch.as_moles().max(0.0);
        let warming = own_heat(Rate::per_hour(made), self.stage.water - self.stage.flour_water, &self.stage.own_heat);
        [
            -hexose,
            release - maltose,
            -release,
            growth - dying * state.yeast.as_grams(),
            souring.growth,
            -growth,
            self.wakening(&now, state.readiness),
            yeast_rate,
            souring.lag,
            souring.acid,
            made,
            self.lost(dough, &state, made, now.warmth),
            warming.as_per_hour(),
        ]
    }

    fn now(&self, dough: Temperature, state: &State) -> Now {
        let (hexose, maltose) = (state.hexose.max(Amount::ZERO), state.maltose.max(Amount::ZERO));
        let solutes = Solutes { salt: self.stage.salt, sugars: hexose + maltose * 0.5, other: self.stage.other_solutes };
        let strength = osmotic_strength(&solutes, self.stage.water);
        let ethanol = ethanol_share(state.gas_made, self.stage.water, self.organisms.ethanol_limit);
        Now {
            acidity: self.acidity(state),
            uptake: uptake(hexose, maltose, &self.organisms.sugars),
            ease: osmotic_share(strength, self.organisms.osmotic_limit) * ethanol,
            warmth: square_root_law(dough, &self.organisms.gas_law),
        }
    }

    pub(super) fn acidity(&self, state: &State) -> Acidity {
        if state.acid == Amount::ZERO { self.stage.buffer.start } else { acidity(state.acid, &self.stage.buffer) }
    }

    pub(super) fn gas(&self, dough: Temperature, state: &State) -> Gas {
        gas_volume(state.gas_held(), dough, self.stage)
    }

    fn growth(&self, dough: Temperature) -> f64 {
        match &self.organisms.growth {
            Growth::Cardinal(yeast) => yeast_growth(dough, yeast),
            Growth::Culture(yeast) => culture_growth(dough, yeast),
        }
        .as_per_hour()
    }

    /// The yeast that can still grow, each gram of it sensing how little room is left.
    fn room(&self, state: &State) -> f64 {
        let left = state.growth_left.max(Mass::ZERO);
        left / (self.organisms.half_room + left) * state.yeast.as_grams()
    }

    fn release(&self, dough: Temperature, acidity: Acidity) -> f64 {
        starch_release(dough, acidity, self.stage.release, self.stage.release_warming).as_per_hour()
    }

    /// Growth and acid of the bacteria; a dough without any is spared the trouble.
    fn souring(&self, dough: Temperature, state: &State, acidity: Acidity) -> Souring {
        if state.bacteria == Mass::ZERO {
            return Souring::default();
        }
        let organisms = self.organisms;
        let by_temperature = culture_growth(dough, &organisms.bacteria).as_per_hour();
        let sugar = (state.hexose + state.maltose).max(Amount::ZERO);
        let supply = sugar / (organisms.half_sugar + sugar);
        let bacteria = state.bacteria.as_grams();
        let rate = organisms.vigour * by_temperature * self.salt;
        let growth = rate * lag_share(state.bacteria_lag) * acidity_growth(acidity, &organisms.acidity) * supply * bacteria;
        let above = (acidity - self.stage.buffer.end).as_ph().max(0.0);
        let resting = organisms.vigour * (by_temperature / self.bacteria_at_30) * self.salt * bacteria * supply;
        let acid = &organisms.acid;
        let acid = acid.with_growth.as_millimoles() * growth
            + acid.at_rest.as_millimoles() * resting * (above / (above + acid.at_rest_half));
        Souring { growth, lag: rate, acid }
    }

    /// Hexose and maltose used by yeast and bacteria; these leave glucose of their maltose.
    fn eaten(&self, from_hexose: f64, from_maltose: f64, lactic: f64, state: &State) -> (f64, f64) {
        let (hexose, maltose) = (state.hexose.as_moles().max(0.0), state.maltose.as_moles().max(0.0));
        let share = maltose / (maltose + hexose + 1e-12);
        let (gas_yield, left) = (self.organisms.gas_yield, self.organisms.acid.glucose_left);
        let hexose = from_hexose / gas_yield + lactic * (1.0 - share) - left * lactic * share;
        (hexose, from_maltose / gas_yield + (1.0 + left) * lactic * share)
    }

    /// Yeast wakes where there is sugar and weakens where there is none.
    fn wakening(&self, now: &Now, readiness: f64) -> f64 {
        let (vigour, supply) = (self.organisms.vigour, now.uptake.supply());
        let waking = vigour * (now.warmth / self.gas_at_27) / self.organisms.wakening.as_hours();
        let starving = vigour * self.organisms.starving.as_per_hour() * (now.warmth / self.gas_at_30);
        (1.0 - readiness) * supply * waking - starving * readiness * (1.0 - supply)
    }

    /// Gas that leaves: ever more of what is made as the dough stretches, and a steady leak.
    ///
    /// ```text
    /// dX/dt = dC/dt·min(1, [V_g/(V_0·φ)]⁴) + θ·k_0·[g(T)/g(25 °C)]·n_g
    /// ```
    fn lost(&self, dough: Temperature, state: &State, made: f64, warmth: f64) -> f64 {
        let gas = self.gas(dough, state);
        let hold = &self.stage.hold;
        let mixed = self.stage.gas_free_volume.as_litres() / (1.0 - hold.void);
        let stretched = gas.volume.as_litres() / (mixed * hold.stretch);
        let square = stretched * stretched;
        let leak = self.organisms.vigour * hold.leak.as_per_hour() * (warmth / self.gas_at_25);
        made * (square * square).min(1.0) + leak * gas.in_bubbles.as_moles()
    }
}
