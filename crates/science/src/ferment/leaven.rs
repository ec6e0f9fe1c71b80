//! What makes a dough rise: yeast stirred in, and what preferments and cultures carry.

use super::parameters::value;
use super::{Dough, Growth, Organisms, Stage, State, Strain, culture_growth, dissolved_gas, lag_sleep, yeast_growth};
use crate::measure::yeast::{Form, figures};
use crate::{Equation, Standing};
use quantity::{Amount, Fraction, Mass, Rate, Temperature, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::living_yeast",
    source: "aacc-89-01",
    place: "solids of compressed, active dry and instant yeast; the living share of active dry from memory",
    standing: Standing::Published,
    valid: &[],
};

/// Yeast stirred in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Yeast {
    /// How it is sold.
    pub form: Form,
    /// How much, as weighed.
    pub mass: Mass,
}

/// A preferment or culture stirred in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Carried {
    /// The flour it carries.
    pub flour: Mass,
    /// All its water, its flour's own included, a kg of its flour.
    pub water: Mass,
    /// Its state, a kg of its flour.
    pub state: State,
    /// The share of its dissolved gas that stirring leaves: 0 when beaten in.
    pub gas_kept: f64,
}

/// All that makes a dough rise.
#[derive(Clone, Debug, PartialEq)]
pub struct Leaven {
    /// What its organisms can do; with any baker's yeast all yeast counts as that.
    pub organisms: Organisms,
    /// Yeasts stirred in.
    pub yeasts: Vec<Yeast>,
    /// Preferments and cultures stirred in.
    pub carried: Vec<Carried>,
}

impl Yeast {
    /// Its living dry mass.
    ///
    /// ```text
    /// Y = m·d·v
    /// ```
    ///
    /// | symbol | meaning        | fresh | active dry | instant | unit |
    /// |--------|----------------|-------|------------|---------|------|
    /// | `m`    | yeast weighed  |       |            |         | g    |
    /// | `d`    | dry matter     | 0.30  | 0.92       | 0.95    | –    |
    /// | `v`    | living of it   | 1     | 0.85       | 1       | –    |
    ///
    /// Valid for yeast within its date. AACC method 89-01 for the dry matter.
    ///
    /// ```
    /// # use quantity::Mass;
    /// # use science::ferment::{Yeast, YeastForm};
    /// let packet = Yeast { form: YeastForm::Instant, mass: Mass::grams(7.0) };
    /// assert_eq!(format!("{:.2} g", packet.living().as_grams()), "6.65 g");
    /// ```
    #[must_use]
    pub fn living(&self) -> Mass {
        let solids = figures(self.form).map_or(Fraction::ZERO, |figures| figures.solids);
        let living = if self.form == Form::ActiveDry { value("yeast.form.active-dry-living") } else { 1.0 };
        self.mass * (solids.as_ratio() * living)
    }

    fn wakening(&self) -> TimeSpan {
        TimeSpan::hours(match self.form {
            Form::Fresh => value("yeast.form.fresh-wakening"),
            Form::ActiveDry => value("yeast.form.active-dry-wakening"),
            Form::Instant => value("yeast.form.instant-wakening"),
        })
    }
}

impl Carried {
    /// A ripe sourdough culture of equal weights of flour and water that carries that much flour.
    #[must_use]
    pub fn ripe_culture(flour: Mass) -> Self {
        let value = |of: &str| value(&format!("culture.ripe.{of}"));
        Self {
            flour,
            water: Mass::kilograms(1.0 + super::parameters::value("dough.flour.water")),
            state: State {
                hexose: Amount::moles(value("hexose")),
                maltose: Amount::moles(value("maltose")),
                starch: Amount::moles(value("starch")),
                yeast: Mass::grams(value("yeast")),
                bacteria: Mass::grams(value("bacteria")),
                acid: Amount::millimoles(value("acid")),
                readiness: value("readiness"),
                ..State::default()
            },
            gas_kept: value("gas-kept"),
        }
    }
}

impl Leaven {
    /// Yeast alone, by the constants of its strain and form.
    #[must_use]
    pub fn yeast(strain: Strain, yeast: Yeast) -> Self {
        let organisms = Organisms { wakening: yeast.wakening(), ..Organisms::of(strain) };
        Self { organisms, yeasts: vec![yeast], carried: Vec::new() }
    }

    /// A preferment or culture alone.
    #[must_use]
    pub fn carried(strain: Strain, carried: Carried) -> Self {
        Self { organisms: Organisms::of(strain), yeasts: Vec::new(), carried: vec![carried] }
    }

    /// The share of the dough's flour that comes with preferments and cultures.
    #[must_use]
    pub fn prefermented(&self, dough: &Dough) -> f64 {
        self.carried.iter().map(|carried| carried.flour / dough.flour).sum()
    }

    /// The state of the dough when mixed at a temperature.
    #[must_use]
    pub fn start(&self, dough: &Dough, stage: &Stage, mixed_at: Temperature) -> State {
        let fresh = 1.0 - self.prefermented(dough);
        let [hexose, maltose, starch] = stage.flour_sugars.map(|sugar| sugar * fresh);
        let added: Mass = self.yeasts.iter().map(|yeast| Mass::kilograms(yeast.living() / dough.flour)).sum();
        let organisms = &self.organisms;
        let mut start = State {
            hexose: hexose + stage.added_hexose,
            maltose,
            starch,
            yeast: added,
            growth_left: organisms.growth_room * fresh,
            yeast_sleep: lag_sleep(growth_at_27(organisms), organisms.lag),
            bacteria_sleep: lag_sleep(culture_growth(AT_27, &organisms.bacteria), organisms.lag),
            temperature: mixed_at,
            ..State::default()
        };
        for carried in &self.carried {
            add(&mut start, carried, carried.flour / dough.flour, stage);
        }
        start
    }
}

/// Adds a share of a preferment; the yeasts' readiness mixes by their mass.
fn add(start: &mut State, carried: &Carried, share: f64, stage: &Stage) {
    let brought = &carried.state;
    let yeast = brought.yeast * share;
    let together = start.yeast + yeast;
    if together > Mass::ZERO {
        start.readiness = start.readiness * (start.yeast / together) + brought.readiness * (yeast / together);
    }
    start.yeast = together;
    start.hexose += brought.hexose * share;
    start.maltose += brought.maltose * share;
    start.starch += brought.starch * share;
    start.bacteria += brought.bacteria * share;
    start.growth_left += brought.growth_left * share;
    start.acid += brought.acid * share;
    let dissolved = dissolved_gas(start.temperature) * (carried.water.as_kilograms() * stage.dissolving);
    start.gas_made += dissolved * (share * carried.gas_kept);
}

const AT_27: Temperature = Temperature::celsius(27.0);

fn growth_at_27(organisms: &Organisms) -> Rate {
    match &organisms.growth {
        Growth::Cardinal(yeast) => yeast_growth(AT_27, yeast),
        Growth::Culture(yeast) => culture_growth(AT_27, yeast),
    }
}
