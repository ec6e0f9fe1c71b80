//! Synthetic kitchens: a hidden vigour, and trials with the noise of a real kitchen, seeded.
//!
//! The noise, as standard deviations unless said otherwise: the room is within ±1 °C of what the trial says (evenly),
//! the yeast within 3 %, the dough within 0.5 °C of what was read, this bake's liveliness within 6 % of the leaven's
//! own, a jar of 50 mm is read to 1.5 mm and the clock to 3 min. The kitchen's way of following the room is hidden too.

use bench::calibration::{Lessons, Logged, learn};
use bench::forecast::{Calibration, Learnt, Rise, Surroundings, rises};
use formula::read::Kitchen;
use formula::source::Source;
use formula::{Book, BookText, Formula};
use quantity::TimeSpan;
use science::sensory::blind_code::Chance;

/// A kitchen whose leaven is so lively.
pub struct Synthetic {
    pub vigour: f64,
    pub approach: f64,
    chance: Chance,
    noise: f64,
}

impl Synthetic {
    /// Hidden vigours lie evenly between 0.6 and 1.67 on a scale of ratios, the approach within a third.
    pub fn seeded(seed: u64) -> Self {
        let mut chance = Chance::seeded(seed);
        let vigour = libm::exp(1.02 * (uniform(&mut chance) - 0.5));
        let approach = 0.66 * (uniform(&mut chance) - 0.5);
        Self { vigour, approach, chance, noise: 1.0 }
    }

    /// The same kitchen where every reading is exact.
    pub fn without_noise(seed: u64) -> Self {
        Self { noise: 0.0, ..Self::seeded(seed) }
    }

    fn normal(&mut self, spread: f64) -> f64 {
        // The sum of twelve even numbers is normal enough.
        self.noise * spread * ((0..12).map(|_| uniform(&mut self.chance)).sum::<f64>() - 6.0)
    }

    /// What truly happens in a bake of which the baker writes down `room` and `mixed`.
    fn bake(&mut self, room: f64, mixed: f64) -> Vec<Rise> {
        let true_room = room + self.noise * (2.0 * uniform(&mut self.chance) - 1.0);
        let true_mixed = mixed + self.normal(0.5);
        let yeast = 5.0 * (1.0 + self.normal(0.03));
        let vigour = libm::log(self.vigour) + self.normal(0.06);
        truth(&dough(yeast, true_room, true_mixed), vigour, self.approach)
    }

    /// The text of a trial.
    fn logged(&mut self, number: usize) -> String {
        let (room, mixed) = (18.0 + 8.0 * uniform(&mut self.chance), 22.0 + 5.0 * uniform(&mut self.chance));
        let (room, mixed) = ((room * 2.0).round() / 2.0, (mixed * 2.0).round() / 2.0);
        let rises = self.bake(room, mixed);
        let course = &rises[0].course;
        let doubled = course.doubled().expect("it doubles").as_hours() * 60.0;
        let mut readings = String::from("  { after = \"0 min\", height = \"50 mm\" },\n");
        for part in [0.4, 0.6, 0.8, 1.0] {
            let minutes = (doubled * part).round();
            let moment = course.at(TimeSpan::minutes(minutes)).expect("it was followed so far");
            let height = 50.0 * moment.risen + self.normal(1.5);
            let warm = moment.temperature.as_celsius() + self.normal(0.3);
            readings.push_str(&format!(
                "  {{ after = \"{minutes} min\", height = \"{height:.0} mm\", temperature = \"{warm:.1} °C\" }},\n"
            ));
        }
        let seen = doubled + self.normal(3.0);
        format!(
            "title = \"Trial {number}\"\nformula = \"dough\"\ndate = 2026-11-{:02}\n[[mix]]\nstage = \"dough\"\ntemperature = \"{mixed} °C\"\n\
             [[rise]]\nstage = \"dough\"\nroom = \"{room} °C\"\ndoubled-after = \"{seen:.0} min\"\nreading = [\n{readings}]\n",
            number + 1
        )
    }

    /// A book with so many trials.
    pub fn book(&mut self, trials: usize) -> Book {
        let mut files = vec![("formulas/dough.toml".to_owned(), text(5.0, 22.0, 24.0))];
        files.extend((0..trials).map(|number| (format!("trials/{number}.toml"), self.logged(number))));
        let files = files.into_iter().map(|(file, text)| (file.clone(), Source { file: file.into(), text })).collect();
        let opened = Book::open(BookText { files });
        assert!(opened.diagnostics.is_empty(), "{:?}", opened.diagnostics);
        opened.value
    }

    /// A bake that is not learnt from.
    pub fn held_out(&mut self) -> HeldOut {
        let (room, mixed) = (18.0 + 8.0 * uniform(&mut self.chance), 22.0 + 5.0 * uniform(&mut self.chance));
        let doubled = doubled(&self.bake(room, mixed));
        HeldOut { room, mixed, doubled }
    }
}

/// A bake that was not learnt from: what its baker wrote down, and when it had truly doubled, in hours.
pub struct HeldOut {
    room: f64,
    mixed: f64,
    doubled: f64,
}

impl HeldOut {
    /// How far off it is foreseen: the logarithm of the ratio of the doubling times.
    pub fn off(&self, calibration: &Calibration) -> f64 {
        let around = Surroundings::of(&Kitchen::assumed()).as_measured().taught(calibration.clone());
        libm::log(doubled(&rises(&dough(5.0, self.room, self.mixed), &around)) / self.doubled)
    }
}

pub fn lessons(book: &Book) -> Lessons {
    let formula = book.formula("dough").expect("the dough").value;
    let logged = |trial| Logged { trial, formula: &formula, kitchen: Kitchen::assumed() };
    learn(&book.trials.iter().map(logged).collect::<Vec<_>>())
}

fn uniform(chance: &mut Chance) -> f64 {
    (chance.bits() >> 11) as f64 / (1_u64 << 53) as f64
}

fn doubled(rises: &[Rise]) -> f64 {
    let course = &rises[0].course;
    course.doubled().unwrap_or_else(|| course.end()).as_hours()
}

/// The course of a dough with that vigour and approach, by the forecast's own equations.
fn truth(formula: &Formula, vigour: f64, approach: f64) -> Vec<Rise> {
    let exactly = |middle: f64| Learnt { middle, spread: 0.0, scatter: 0.0, trials: 0 };
    let calibration = Calibration {
        leavens: [("yeast-instant".to_owned(), exactly(vigour))].into(),
        lag: exactly(approach),
        ..Calibration::default()
    };
    rises(formula, &Surroundings::of(&Kitchen::assumed()).as_measured().taught(calibration))
}

fn dough(yeast: f64, room: f64, mixed: f64) -> Formula {
    let file = "formulas/dough.toml";
    let source = Source { file: file.into(), text: text(yeast, room, mixed) };
    Book::open(BookText { files: [(file.to_owned(), source)].into() }).value.formula("dough").expect("the dough").value
}

/// A lean dough with half a per cent of instant yeast.
fn text(yeast: f64, room: f64, mixed: f64) -> String {
    format!(
        "title = \"Dough\"\n[[component]]\nname = \"dough\"\n[[component.stage]]\nname = \"dough\"\nkind = \"final-mix\"\n\
         [component.stage.ingredients]\nflour-bread = \"1000 g\"\nwater = \"650 g\"\nsalt = \"20 g\"\nyeast-instant = \"{yeast} g\"\n\
         [[component.stage.step]]\naction = \"mix\"\ntext = \"Mix {{flour-bread}}, {{water}}, {{salt}} and {{yeast-instant}}.\"\ntemperature = \"{mixed} °C\"\n\
         [[component.stage.step]]\naction = \"bulk\"\nattention = \"waiting\"\ntext = \"Leave it.\"\ntime = \"3 h\"\ntemperature = \"{room} °C\"\nuntil = \"doubled\"\n"
    )
}
