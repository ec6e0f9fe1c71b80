//! Trials that nobody can have seen: nothing panics, nothing learnt is infinite, and what is not seen teaches nothing.

use bench::calibration::{Lessons, Logged, Parameter, learn};
use bench::forecast::Calibration;
use formula::read::Kitchen;
use formula::source::Source;
use formula::{Book, BookText};

const BREAD: &str = "title = \"Bread\"\n[[component]]\nname = \"bread\"\n[component.yield]\npieces = 6\nthickness = \"15 mm\"\n\
    [[component.stage]]\nname = \"dough\"\nkind = \"final-mix\"\n[component.stage.ingredients]\nflour-bread = \"500 g\"\nwater = { amount = \"320 g\", temperature = \"25 °C\" }\n\
    yeast-instant = \"5 g\"\n[[component.stage.step]]\naction = \"knead\"\ntext = \"Knead {flour-bread}, {water}, {yeast-instant}.\"\n\
    [[component.stage.step]]\naction = \"bulk\"\nattention = \"waiting\"\ntext = \"Leave it.\"\ntime = \"90 min\"\nuntil = \"doubled\"\n\
    [[component.stage.step]]\naction = \"griddle\"\ntext = \"Cook it.\"\ntime = \"14 min\"\nside-time = \"7 min\"\ntemperature = \"150 °C\"\n";

/// The lessons of trials given by their records.
fn lessons(trials: &[&str]) -> Lessons {
    let mut files = vec![("formulas/bread.toml".to_owned(), BREAD.to_owned())];
    for (number, records) in trials.iter().enumerate() {
        let text = format!("title = \"{number}\"\nformula = \"bread\"\ndate = 2026-11-02\n{records}\n");
        files.push((format!("trials/{number}.toml"), text));
    }
    let files = files.into_iter().map(|(file, text)| (file.clone(), Source { file: file.into(), text })).collect();
    let book = Book::open(BookText { files }).value;
    let formula = book.formula("bread").expect("the bread").value;
    let logged: Vec<Logged> =
        book.trials.iter().map(|trial| Logged { trial, formula: &formula, kitchen: Kitchen::assumed() }).collect();
    learn(&logged)
}

fn middle(lessons: &Lessons, parameter: &Parameter) -> f64 {
    parameter.of(&lessons.calibration).middle
}

#[test]
fn what_was_not_seen_teaches_nothing() {
    for records in [
        "",
        "[[mix]]\nstage = \"dough\"",
        "[[rise]]\nstage = \"dough\"\nroom = \"21 °C\"",
        "[[cook]]\nstage = \"dough\"\nsurface = \"150 °C\"",
    ] {
        let lessons = lessons(&[records]);
        assert!(lessons.lessons.is_empty() && lessons.calibration == Calibration::default(), "{records}");
    }
    assert_eq!(lessons(&[]).calibration, Calibration::default());
}

#[test]
fn impossible_trials_do_no_harm() {
    for records in [
        "[[rise]]\nstage = \"dough\"\ndoubled-after = \"0 min\"\nripe-after = \"0 min\"",
        "[[rise]]\nstage = \"dough\"\ndoubled-after = \"1 s\"",
        "[[rise]]\nstage = \"dough\"\ndoubled-after = \"5000 h\"\nripe-after = \"4000 h\"",
        "[[rise]]\nstage = \"dough\"\nroom = \"-200 °C\"\ndoubled-after = \"1 h\"",
        "[[rise]]\nstage = \"dough\"\nroom = \"900 °C\"\ndoubled-after = \"1 h\"",
        "[[rise]]\nstage = \"dough\"\nlasted = \"0 s\"\ndoubled-after = \"1 h\"",
        "[[rise]]\nstage = \"dough\"\nreading = [{ after = \"0 s\", height = \"0.001 mm\" }, { after = \"1 h\", height = \"100 m\", temperature = \"800 °C\" }]",
        "[[rise]]\nstage = \"dough\"\nreading = [{ after = \"0 s\", height = \"10 mm\" }, { after = \"0 s\", height = \"90 mm\" }, { after = \"1 s\", height = \"12 mm\" }]",
        "[[mix]]\nstage = \"dough\"\ntemperature = \"600 °C\"\ningredients = { yeast-instant = \"0 g\", flour-bread = \"0 g\" }",
        "[[mix]]\nstage = \"dough\"\ntemperature = \"-270 °C\"\n[[rise]]\nstage = \"dough\"\ndoubled-after = \"1 h\"",
        "[[cook]]\nstage = \"dough\"\nsurface = \"-50 °C\"\ncore = \"95 °C\"\ntime = \"0 s\"\nside-time = \"0 s\"",
        "[[cook]]\nstage = \"dough\"\nsurface = \"2000 °C\"\ncore = \"1 °C\"\nthickness = \"0 mm\"",
        "[[cook]]\nstage = \"dough\"\nthickness = \"2 m\"\ncore = \"95 °C\"",
    ] {
        for lesson in lessons(&[records]).lessons {
            let known = &lesson.after;
            assert!(known.middle.is_finite() && known.spread.is_finite() && known.scatter.is_finite(), "{records}: {lesson:?}");
            assert!(known.spread <= lesson.before.spread, "{records}: {lesson:?}");
        }
    }
}

/// Limits that need no source: a hotter core speaks for a better contact, a warmer bowl for more friction.
#[test]
fn more_seen_is_more_learnt() {
    let contact = |core: &str| {
        middle(
            &lessons(&[&format!(
                "[[cook]]\nstage = \"dough\"\nsurface = \"150 °C\"\ntime = \"8 min\"\nside-time = \"4 min\"\nthickness = \"24 mm\"\ncore = \"{core}\""
            )]),
            &Parameter::Contact,
        )
    };
    assert!(contact("97 °C") > contact("88 °C"));
    let friction =
        |bowl: &str| middle(&lessons(&[&format!("[[mix]]\nstage = \"dough\"\ntemperature = \"{bowl}\"")]), &Parameter::Friction);
    let (cool, warm) = (friction("25 °C"), friction("27 °C"));
    // The balance of heat is a straight line: of 2 K more, the prior's share is left out.
    let prior = Calibration::default().friction;
    let weight = prior.spread * prior.spread / (prior.spread * prior.spread + prior.scatter * prior.scatter + 0.7 * 0.7);
    assert!((warm - cool - 2.0 * weight).abs() < 0.02, "{cool} {warm} {weight}");
}
