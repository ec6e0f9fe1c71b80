//! Kitchens with a hidden liveliness of their yeast, whose trials are logged and learnt from by the program alone.
//!
//! What truly happens comes of the forecast's own equations with the hidden figures, and with the noise of a real kitchen
//! as in the calibration's own tests: the room within ±1 °C, the yeast within 3 %, the dough within 0.5 °C of what is
//! written down, this bake's liveliness within 6 % of the leaven's own, a jar read to 1.5 mm, a clock to 3 min.

use crate::sandbox::Sandbox;
use bench::forecast::{Calibration, Learnt, Rise, Surroundings, rises};
use formula::read::Kitchen;
use formula::source::Source;
use formula::{Book, BookText};
use quantity::TimeSpan;

/// Numbers from a seed: splitmix64 (Steele, Lea, Flood 2014, from memory).
struct Chance(u64);

impl Chance {
    fn even(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut bits = self.0;
        bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((bits ^ (bits >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn normal(&mut self, spread: f64) -> f64 {
        spread * ((0..12).map(|_| self.even()).sum::<f64>() - 6.0)
    }

    fn between(&mut self, from: f64, to: f64) -> f64 {
        from + (to - from) * self.even()
    }
}

/// A lean dough with half a per cent of instant yeast, that stands in a room.
fn dough(yeast: f64, room: f64, mixed: f64) -> String {
    format!(
        "title = \"Dough\"\nintro = \"A plain dough.\"\nstorage = \"Best at once.\"\n[[component]]\nname = \"dough\"\n[[component.stage]]\nname = \"dough\"\nkind = \"final-mix\"\n\
         [component.stage.ingredients]\nflour-bread = \"1000 g\"\nwater = \"650 g\"\nsalt = \"20 g\"\nyeast-instant = \"{yeast} g\"\n\
         [[component.stage.step]]\naction = \"mix\"\ntext = \"Mix {{flour-bread}}, {{water}}, {{salt}} and {{yeast-instant}}.\"\ntemperature = \"{mixed} °C\"\n\
         [[component.stage.step]]\naction = \"bulk\"\nattention = \"waiting\"\ntext = \"Leave it.\"\ntime = \"3 h\"\ntemperature = \"{room} °C\"\nuntil = \"doubled\"\n\
         [[component.stage.step]]\naction = \"boil\"\ntext = \"Steam until it is done.\"\ntime = \"30 min\"\n"
    )
}

struct Hidden {
    chance: Chance,
    vigour: f64,
    lag: f64,
}

/// A bake: what is written down of room and bowl, and what truly rose.
struct Bake {
    room: f64,
    mixed: f64,
    rises: Vec<Rise>,
}

impl Hidden {
    fn seeded(seed: u64) -> Self {
        let mut chance = Chance(seed);
        let (vigour, lag) = (chance.between(-0.51, 0.51), chance.between(-0.33, 0.33));
        Self { chance, vigour, lag }
    }

    fn bake(&mut self) -> Bake {
        let half = |value: f64| (value * 2.0).round() / 2.0;
        let (room, mixed) = (half(self.chance.between(18.0, 26.0)), half(self.chance.between(22.0, 27.0)));
        let (true_room, true_mixed) = (room + self.chance.between(-1.0, 1.0), mixed + self.chance.normal(0.5));
        let yeast = 5.0 * (1.0 + self.chance.normal(0.03));
        let exactly = |middle: f64| Learnt { middle, spread: 0.0, scatter: 0.0, trials: 0 };
        let vigour = exactly(self.vigour + self.chance.normal(0.06));
        let leavens = [("yeast-instant".to_owned(), vigour)].into();
        let calibration = Calibration { leavens, lag: exactly(self.lag), ..Calibration::default() };
        let file = "formulas/dough.toml";
        let source = Source { file: file.into(), text: dough(yeast, true_room, true_mixed) };
        let book = Book::open(BookText { files: [(file.to_owned(), source)].into() }).value;
        let formula = book.formula("dough").expect("the dough").value;
        let around = Surroundings::of(&Kitchen::assumed()).as_measured().taught(calibration);
        Bake { room, mixed, rises: rises(&formula, &around) }
    }

    /// Logs a bake with the program's own commands.
    fn log(&mut self, sandbox: &Sandbox, number: usize) {
        let bake = self.bake();
        let day = format!("2026-11-{:02}", number + 1);
        sandbox.fine(&["trial", "begin", "book", "--formula", "dough", "--date", &day]);
        let course = &bake.rises[0].course;
        let doubled = bake.doubled() * 60.0;
        let mut noted = vec![
            format!("dough/mix={} °C", bake.mixed),
            format!("dough/bulk/room={} °C", bake.room),
            "dough/bulk=50 mm after 0 min".to_owned(),
        ];
        for part in [0.4, 0.6, 0.8, 1.0] {
            let minutes = (doubled * part).round();
            let moment = course.at(TimeSpan::minutes(minutes)).expect("it was followed so far");
            let (height, warm) =
                (50.0 * moment.risen + self.chance.normal(1.5), moment.temperature.as_celsius() + self.chance.normal(0.3));
            noted.push(format!("dough/bulk={height:.0} mm after {minutes} min"));
            noted.push(format!("dough/bulk={warm:.1} °C after {minutes} min"));
        }
        noted.push(format!("dough/bulk/doubled-after={:.0} min", doubled + self.chance.normal(3.0)));
        let trial = format!("book/trials/{day}-dough.toml");
        let words: Vec<&str> = ["trial", "note", &trial].into_iter().chain(noted.iter().map(String::as_str)).collect();
        sandbox.fine(&words);
    }
}

impl Bake {
    fn doubled(&self) -> f64 {
        let course = &self.rises[0].course;
        course.doubled().unwrap_or_else(|| course.end()).as_hours()
    }
}

/// The hours in which the program foresees that each formula of a book doubles.
fn foreseen(sandbox: &Sandbox, more: &[&str]) -> Vec<(String, f64)> {
    let out = sandbox.fine(&[&["forecast", "book", "--format", "json"][..], more].concat());
    let all: serde_json::Value = serde_json::from_str(&out).expect("JSON");
    let one = |formula: &serde_json::Value| {
        let steps = formula["rises"][0]["steps"].as_array().expect("steps");
        let reached = steps.iter().find_map(|step| step["reached"]["from"]["value"].as_f64()).expect("it is foreseen");
        (formula["name"].as_str().unwrap_or_default().to_owned(), reached)
    };
    all.as_array().expect("a list").iter().map(one).collect()
}

/// Three trials, logged and learnt from through the program, leave at most half the error of bakes that were held out.
#[test]
fn three_logged_trials_halve_the_error_of_what_was_held_out() {
    let (mut before, mut after, mut count) = (0.0, 0.0, 0.0);
    for seed in 0..5 {
        let sandbox = Sandbox::empty();
        let mut kitchen = Hidden::seeded(seed);
        sandbox.write("book/book.toml", "title = \"A hidden kitchen\"\n");
        sandbox.write("book/formulas/dough.toml", dough(5.0, 22.0, 24.0));
        (0..3).for_each(|number| kitchen.log(&sandbox, number));
        let told = sandbox.fine(&["learn", "book"]);
        assert!(told.contains("learnt from 3 trials"), "{told}");
        let held_out: Vec<Bake> = (0..4).map(|_| kitchen.bake()).collect();
        for (number, bake) in held_out.iter().enumerate() {
            sandbox.write(&format!("book/formulas/held-{number}.toml"), dough(5.0, bake.room, bake.mixed));
        }
        let (by_the_books, as_learnt) = (foreseen(&sandbox, &["--without-trials"]), foreseen(&sandbox, &[]));
        assert_eq!(by_the_books.len(), 5);
        // The first formula in the order of names is the one of the trials.
        for (number, bake) in held_out.iter().enumerate() {
            let off = |foreseen: &[(String, f64)]| libm::pow(libm::log(foreseen[number + 1].1 / bake.doubled()), 2.0);
            before += off(&by_the_books);
            after += off(&as_learnt);
            count += 1.0;
        }
    }
    let (before, after) = ((before / count).sqrt(), (after / count).sqrt());
    assert!(after <= 0.5 * before, "{count} bakes: off by {before:.3} by the books, {after:.3} as learnt");
}
