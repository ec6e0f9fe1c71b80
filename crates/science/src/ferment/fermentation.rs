//! A dough, what makes it rise and the temperatures it meets, run through time.

use super::gas_volume::risen;
use super::rates::Rates;
use super::state::{GAS_LOST, GAS_MADE, SIZE, TEMPERATURE};
use super::temperature_path::{Stretch, StretchCourse};
use super::{Course, Dough, Leaven, Organisms, Stage, State, TemperaturePath};
use crate::numeric::dormand_prince::{Ending, Limits, Step, integrate_until};
use crate::{Equation, Outside, Standing, Valid};
use quantity::{Fraction, Mass, Temperature, TimeSpan};

/// Origin and limits.
pub const EQUATION: Equation = Equation {
    name: "ferment::fermentation",
    source: "ferment-model",
    place: "the equations of this room as one system; fitted constants are labelled in data/ferment/",
    standing: Standing::Fitted,
    valid: &[
        Valid { symbol: "T, coldest", unit: "°C", from: 4.0, to: 40.0 },
        Valid { symbol: "T, warmest", unit: "°C", from: 4.0, to: 40.0 },
        Valid { symbol: "living yeast", unit: "g dry/kg flour", from: 0.15, to: 30.0 },
        Valid { symbol: "water", unit: "kg/kg flour", from: 0.45, to: 1.4 },
        Valid { symbol: "salt", unit: "kg/kg flour", from: 0.0, to: 0.03 },
        Valid { symbol: "sugar added", unit: "mol hexose/kg flour", from: 0.0, to: 1.461 },
    ],
};

/// The share of flour that preferments and cultures may carry, where there are any.
pub static PREFERMENTED: Valid = Valid { symbol: "flour prefermented", unit: "of the flour", from: 0.03, to: 0.6 };

/// Sourdough is known in a narrower range of temperatures.
pub static SOURDOUGH_TEMPERATURES: [Valid; 2] = [
    Valid { symbol: "T of a sourdough, coldest", unit: "°C", from: 10.0, to: 32.0 },
    Valid { symbol: "T of a sourdough, warmest", unit: "°C", from: 10.0, to: 32.0 },
];

/// A dough, what makes it rise and the temperatures it meets.
#[derive(Clone, Debug, PartialEq)]
pub struct Fermentation {
    /// The dough.
    pub stage: Stage,
    /// What lives in it.
    pub organisms: Organisms,
    /// How it starts.
    pub start: State,
    /// The temperatures it meets.
    pub path: TemperaturePath,
    /// The share of its flour that preferments and cultures carried.
    pub prefermented: Fraction,
    /// How closely to follow: allowed error of each step.
    pub limits: Limits,
}

/// One part in a million a step, and a step limit no baker's dough comes near.
pub const LIMITS: Limits = Limits { relative: 1e-6, absolute: 1e-9, steps: 10_000 };

impl Fermentation {
    /// A dough mixed now.
    #[must_use]
    pub fn new(dough: &Dough, leaven: &Leaven, path: TemperaturePath) -> Self {
        let stage = dough.stage();
        let start = leaven.start(dough, &stage, path.first());
        let prefermented = Fraction::ratio(leaven.prefermented(dough));
        Self { stage, organisms: leaven.organisms, start, path, prefermented, limits: LIMITS }
    }

    /// Runs it for a time and gives its whole course. The states follow one system of equations
    /// for yeast and sourdough alike:
    ///
    /// ```text
    /// R_G = q·a·Y·f_G,  R_M = q·a·Y·f_M,  q = θ·q_30·g(T)·g_os·g_E
    /// Y' = θ·µ_Y(T)·s(p_Y)·g_os·g_E·S·N/(K_N + N)·Y − k_d(T)·Y
    /// L' = θ·µ_L(T)·g_s·s(p_L)·g_pH·f_S·L
    /// A' = α·L' + θ·β·[µ_L(T)/µ_L(30)]·g_s·L·f_S·d/(d + 0.3),  d = max(0, pH − pH_x)
    /// G' = −R_G/y − l·(1 − x_M) + φ·l·x_M,  l = 0.82·A'/1000,  x_M = M/(M + G)
    /// M' = θ·k·D − R_M/y − (1 + φ)·l·x_M,  D' = −θ·k·D,  N' = −(growth of Y)
    /// p_Y' = −θ·µ_Y·p_Y,  p_L' = −θ·µ_L·g_s·p_L
    /// a' = (1 − a)·S·θ·[g(T)/g(27)]/τ − θ·k_a·g(T)·a·(1 − S)
    /// C' = R_G + R_M + l
    /// X' = C'·min(1, [V_g/(V_0·φ_m)]⁴) + θ·k_0·[g(T)/g(25)]·n_g
    /// ```
    ///
    /// | symbol | meaning | unit, a kg flour |
    /// |--------|---------|------------------|
    /// | `G` `M` `D` | hexose; maltose; starch that can be released, all as hexose | mol |
    /// | `Y` `L` | living yeast; bacteria | g dry |
    /// | `N` | yeast that can still grow | g dry |
    /// | `a` | readiness to make gas | – |
    /// | `p_Y` `p_L` | sleep of yeast and bacteria while they lag | – |
    /// | `A` | lactic and acetic acid | mmol |
    /// | `C` `X` | carbon dioxide made; lost | mol |
    /// | `θ` | vigour, the one constant to calibrate | – |
    ///
    /// The other symbols are those of the equations beside this one. Valid for 4 to 40 °C
    /// (sourdough 10 to 32 °C), 0.03 to 3 % instant yeast, 45 to 140 % water, up to 3 % salt and
    /// 25 % sugar on flour, 3 to 60 % of the flour prefermented; outside, the course says what was left. Uncalibrated times hold within
    /// about a third. A figure that is no ordinary number gives an empty course that says so.
    ///
    /// ```
    /// # use quantity::{Fraction, Mass, Temperature, TimeSpan};
    /// # use science::ferment::{Dough, Fermentation, Leaven, Strain, TemperaturePath, Yeast, YeastForm};
    /// // A lean dough with 0.5 % instant yeast at 24 °C doubles in two hours.
    /// let dough = Dough { water: Mass::grams(650.0), salt: Mass::grams(20.0), ..Dough::default() };
    /// let leaven = Leaven::yeast(Strain::Bakers, Yeast { form: YeastForm::Instant, mass: Mass::grams(5.0) });
    /// let path = TemperaturePath::Constant(Temperature::celsius(24.0));
    /// let course = Fermentation::new(&dough, &leaven, path).run(TimeSpan::hours(8.0));
    /// assert_eq!(format!("{:.1} h", course.doubled().expect("it doubles").as_hours()), "2.0 h");
    /// ```
    #[must_use]
    pub fn run(&self, time: TimeSpan) -> Course {
        self.run_until(time, |_, _| false)
    }

    /// The same, and no further than something is seen: asked after each step when that is and how far the dough has
    /// risen by then.
    #[must_use]
    pub fn run_until(&self, time: TimeSpan, mut is_seen: impl FnMut(TimeSpan, f64) -> bool) -> Course {
        let until = time.as_hours();
        let mut course = Course::empty(self.stage, self.organisms, self.start);
        if !self.is_sound(until) {
            course.ending = Ending::NotFinite;
            return course;
        }
        let stretches = self.path.stretches(until);
        let rates = Rates::new(&self.stage, &self.organisms, range(&stretches));
        let mut state = self.start.numbers();
        for stretch in stretches {
            let slopes = |hour: f64, numbers: &[f64; SIZE]| slopes(&rates, &stretch, hour, numbers);
            let taken = course.steps.len();
            let limits = Limits { steps: self.limits.steps.saturating_sub(taken), ..self.limits };
            let is_seen = |step: &Step<SIZE>| {
                let [made, lost, own] = [GAS_MADE, GAS_LOST, TEMPERATURE].map(|state| step.ends(state).last);
                let dough = stretch.temperature(step.end()).unwrap_or(Temperature::celsius(own));
                is_seen(TimeSpan::hours(step.end()), risen(made - lost, dough, &self.stage))
            };
            let span = (stretch.from, stretch.to);
            let (last, ending) = integrate_until(slopes, span, state, &limits, (&mut course.steps, is_seen));
            course.stretches.push(stretch);
            state = last;
            course.ending = ending;
            if ending != Ending::Complete {
                break;
            }
        }
        course.last = state;
        course.outside = self.outside(&course);
        course
    }

    fn is_sound(&self, until: f64) -> bool {
        let stage = &self.stage;
        let figures = [
            until,
            stage.water.as_grams(),
            stage.gas_free_volume.as_litres(),
            stage.salt.as_grams(),
            stage.other_solutes.as_moles(),
            stage.buffer.scale.as_moles(),
            stage.hold.void,
            stage.hold.stretch,
            stage.hold.leak.as_per_hour(),
            self.organisms.vigour,
            self.organisms.wakening.as_hours(),
        ];
        figures.iter().chain(&self.start.numbers()).all(|figure| figure.is_finite()) && self.path.is_sound()
    }

    /// What lies outside the ranges in which the model was held to practice.
    fn outside(&self, course: &Course) -> Vec<Outside> {
        let (coldest, warmest) = course.temperatures();
        let (coldest, warmest) = (coldest.as_celsius(), warmest.as_celsius());
        let water = (self.stage.water - self.stage.flour_water).as_kilograms();
        let mut outside = EQUATION.outside(&[
            coldest,
            warmest,
            self.start.yeast.as_grams(),
            water,
            self.stage.salt.as_kilograms(),
            self.stage.added_hexose.as_moles(),
        ]);
        let prefermented = self.prefermented.as_ratio();
        if prefermented > 0.0 && !(PREFERMENTED.from..=PREFERMENTED.to).contains(&prefermented) {
            outside.push(Outside { valid: &PREFERMENTED, value: prefermented });
        }
        if self.start.bacteria > Mass::ZERO {
            let sour = SOURDOUGH_TEMPERATURES.iter().zip([coldest, warmest]);
            outside.extend(
                sour.filter(|(valid, value)| !(valid.from..=valid.to).contains(value))
                    .map(|(valid, value)| Outside { valid, value }),
            );
        }
        outside
    }
}

/// The coldest and warmest of stretches whose temperature does not depend on the dough.
fn range(stretches: &[Stretch]) -> Option<(f64, f64)> {
    let ends = stretches.iter().flat_map(|stretch| [stretch.temperature(stretch.from), stretch.temperature(stretch.to)]);
    ends.map(|end| end.map(Temperature::as_celsius))
        .try_fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), end| end.map(|end| (low.min(end), high.max(end))))
}

/// The slopes of a dough on a stretch of its path.
fn slopes(rates: &Rates, stretch: &Stretch, hour: f64, numbers: &[f64; SIZE]) -> [f64; SIZE] {
    let given = stretch.temperature(hour);
    let dough = given.unwrap_or(Temperature::celsius(numbers[TEMPERATURE]));
    let mut slopes = rates.slopes(dough, numbers);
    slopes[TEMPERATURE] = match stretch.course {
        StretchCourse::Own { air, rate } => slopes[TEMPERATURE] - rate * (numbers[TEMPERATURE] - air),
        _ => 0.0,
    };
    slopes
}
