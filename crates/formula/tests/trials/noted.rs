//! Figures noted into a trial's text: comments stay, corrections keep what was before, nothing is taken twice.

use formula::logging::{Entry, Figure, Noted, corrections, doubt, figures, note, receive};
use formula::source::Source;
use formula::{Book, BookText, Formula};
use proptest::prelude::*;

const AT: &str = "2026-11-14T18:20:00Z";

fn dough() -> Formula {
    let text = format!(
        "{}[[component.stage.step]]\naction = \"mix\"\ntext = \"Mix.\"\n[[component.stage.step]]\naction = \"griddle\"\ntext = \"Bake.\"\ntime = \"9 min\"\n",
        crate::FORMULA
    );
    let source = Source { file: "formulas/dough.toml".into(), text };
    let files = [("formulas/dough.toml".to_owned(), source)].into();
    Book::open(BookText { files }).value.formula("dough").expect("the dough").value
}

fn noted(text: &str, name: &str, value: &str) -> (String, Noted) {
    let (figure, value) = Figure::read(name, value, &dough()).unwrap_or_else(|why| panic!("{name}: {why}"));
    note(text, &Entry::Figure(figure, value), AT, "").unwrap_or_else(|why| panic!("{name}: {why}"))
}

const HEAD: &str = "# The first morning.\ntitle = \"x\"\nformula = \"dough\"\ndate = 2026-11-02 # a Monday\n";

#[test]
fn each_figure_has_its_place() {
    for (name, value, expected) in [
        ("dough/mix", "24 °C", "[[mix]]\nstage = \"dough\"\ntemperature = \"24 °C\"\n"),
        ("dough/ph", "5.4", "[[mix]]\nstage = \"dough\"\nph = 5.4\n"),
        ("dough/water", "301 g", "[[mix]]\nstage = \"dough\"\ningredients = { water = \"301 g\" }\n"),
        ("dough/water", "19 °C", "[[mix]]\nstage = \"dough\"\ningredients = { water = { temperature = \"19 °C\" } }\n"),
        ("dough/bulk", "13 h", "[[rise]]\nstage = \"dough\"\nstep = \"bulk\"\nlasted = \"13 h\"\n"),
        ("dough/room", "21 °C", "[[rise]]\nstage = \"dough\"\nstep = \"bulk\"\nroom = \"21 °C\"\n"),
        (
            "dough/bulk",
            "46 mm after 1 h",
            "[[rise]]\nstage = \"dough\"\nstep = \"bulk\"\nreading = [\n  { after = \"1 h\", height = \"46 mm\" },\n]\n",
        ),
        ("dough/core", "96 °C", "[[cook]]\nstage = \"dough\"\nstep = \"griddle\"\ncore = \"96 °C\"\n"),
        ("dough/griddle/pieces", "12", "[[cook]]\nstage = \"dough\"\nstep = \"griddle\"\npieces = 12\n"),
        ("dough/bake-loss", "11 %", "[[cook]]\nstage = \"dough\"\nstep = \"griddle\"\nbake-loss = \"11 %\"\n"),
        ("dough/dough/mix", "24 °C", "[[mix]]\nstage = \"dough\"\ntemperature = \"24 °C\"\n"),
    ] {
        if name == "dough/dough/mix" {
            assert!(Figure::read(name, value, &dough()).is_err(), "no component is needed here, and “dough” is no step");
            continue;
        }
        let (text, came) = noted(HEAD, name, value);
        assert_eq!(text, format!("{HEAD}\n{expected}"), "{name}={value}");
        assert_eq!(came, Noted::New);
        assert_eq!(noted(&text, name, value), (text, Noted::Unchanged), "{name}={value} once more");
    }
}

#[test]
fn readings_stand_in_the_order_of_time() {
    let (text, _) = noted(HEAD, "dough/bulk", "80 mm after 90 min");
    let (text, _) = noted(&text, "dough/bulk", "50 mm after 0 min");
    let (text, _) = noted(&text, "dough/bulk/temperature", "23 °C after 1 h 30 min");
    let expected = "reading = [\n  { after = \"0 min\", height = \"50 mm\" },\n  { after = \"90 min\", height = \"80 mm\", temperature = \"23 °C\" },\n]\n";
    assert!(text.ends_with(expected), "{text}");
}

/// What authors write themselves is changed where it stands.
#[test]
fn the_authors_hand_is_kept() {
    let own = format!(
        "{HEAD}notes = \"Rain.\"\n\n[[rise]] # the jar by the window\nstage = \"dough\"\nlasted = \"2 h\" # by the kitchen clock\nreading = [ {{ after = \"0 min\", height = \"50 mm\" }} ]\n"
    );
    let (text, came) = noted(&own, "dough/bulk/lasted", "2 h 10 min");
    assert_eq!(came, Noted::Corrected("dough/bulk/lasted".to_owned(), "2 h".to_owned()));
    assert!(
        text.contains("lasted = \"2 h 10 min\" # by the kitchen clock\n") && text.contains("# the jar by the window"),
        "{text}"
    );
    let (text, came) = note(&text, &Entry::Note("Sun.".to_owned()), AT, "").expect("a note");
    assert_eq!(came, Noted::New);
    assert!(text.contains("notes = [\"Rain.\", \"Sun.\"]") && text.contains("date = 2026-11-02 # a Monday"), "{text}");
    assert_eq!(corrections(&text), [("dough/bulk/lasted".to_owned(), "2 h".to_owned())]);
}

#[test]
fn what_came_once_is_not_taken_twice() {
    let first = receive(HEAD, "k3-17").expect("a text").expect("it is new");
    assert_eq!(receive(&first, "k3-17"), Ok(None));
    assert!(receive(&first, "k3-18").expect("a text").is_some());
}

/// A stage with two steps of a name: the later one has a name of its own, and the plain name stays that of the first.
#[test]
fn two_steps_of_a_name_are_two() {
    let twice = "[[component.stage.step]]\naction = \"bulk\"\nattention = \"waiting\"\ntext = \"Leave it once more.\"\n\
        [[component.stage.step]]\naction = \"bake\"\ntext = \"Bake.\"\ntime = \"15 min\"\n\
        [[component.stage.step]]\naction = \"bake\"\ntext = \"Turn down.\"\ntime = \"50 min\"\n";
    let formula = format!("{}{twice}", crate::FORMULA);
    let log = |name: &str, value: &str, text: &str| {
        let files = [("formulas/twice.toml".to_owned(), Source { file: "formulas/twice.toml".into(), text: formula.clone() })];
        let book = Book::open(BookText { files: files.into() }).value;
        let formula = book.formula("twice").expect("the dough").value;
        let (figure, value) = Figure::read(name, value, &formula).map_err(|why| why.to_string())?;
        Ok::<_, String>(note(text, &Entry::Figure(figure, value), AT, "").unwrap_or_else(|why| panic!("{name}: {why}")))
    };
    let mut text = HEAD.to_owned();
    for (name, value) in [("dough/bake/time", "15 min"), ("dough/bake-2/time", "50 min"), ("dough/bulk-2/lasted", "30 min")] {
        let (new, came) = log(name, value, &text).expect("it is noted");
        assert_eq!(came, Noted::New, "{name}");
        text = new;
    }
    assert!(text.contains("step = \"bake-2\"\ntime = \"50 min\"") && !text.contains("[[correction]]"), "{text}");
    let told: Vec<String> = figures(&text).into_iter().map(|(name, _)| name).filter(|name| name.contains('/')).collect();
    assert_eq!(told, ["dough/bake/time", "dough/bake-2/time", "dough/bulk-2/lasted"]);
    for (name, hint) in [("dough/bake-3/time", "bulk, bulk-2, bake, bake-2"), ("dough/bake-1/time", "the steps")] {
        let why = log(name, "5 min", HEAD).expect_err("there is none");
        assert!(why.contains(hint), "{why}");
    }
    // In the book, a step that the formula does not have is told of.
    let opened = |step: &str| {
        let trial =
            format!("{HEAD}[[cook]]\nstage = \"dough\"\nstep = \"{step}\"\n").replace("= \"dough\"\ndate", "= \"twice\"\ndate");
        let files = [("trials/x.toml", trial), ("formulas/twice.toml", formula.clone())];
        let book = Book::open(BookText { files: files.map(|(f, text)| (f.to_owned(), Source { file: f.into(), text })).into() });
        let formula = book.value.formula("twice").expect("the dough").value;
        book.value.misplaced(&formula).count() + book.diagnostics.len()
    };
    assert_eq!([opened("bake"), opened("bake-2"), opened("bake-3")], [0, 0, 1]);
    assert!(opened("bake-1") > 0, "the first has no number");
}

/// What can hardly be meant is asked about; what may well be is not.
#[test]
fn impossible_figures_are_asked_about() {
    for (name, value, is_asked) in [
        ("dough/mix/temperature", "230 °C", true),
        ("dough/mix/temperature", "-6 °C", true),
        ("dough/mix/temperature", "24.5 °C", false),
        ("dough/bulk/lasted", "4 s", true),
        ("dough/bulk/lasted", "90 min", false),
        ("dough/bulk/lasted", "13 h", true),
        ("dough/griddle/core", "9.65 °C", true),
        ("dough/griddle/core", "270 °C", true),
        ("dough/griddle/core", "96.5 °C", false),
        ("dough/griddle/pieces", "12.5", true),
        ("dough/griddle/pieces", "12", false),
        ("dough/water", "301 g", false),
    ] {
        let (figure, value) = Figure::read(name, value, &dough()).unwrap_or_else(|why| panic!("{name}: {why}"));
        let told = doubt(&figure, &value, &dough());
        assert_eq!(told.is_some(), is_asked, "{name} {value}: {told:?}");
        assert!(told.is_none_or(|why| why.contains(&value)), "it says what was typed");
    }
}

proptest! {
    /// However often a figure is put right, every value it had is still told, in order.
    #[test]
    fn nothing_that_was_noted_is_lost(values in proptest::collection::vec(0..400_u32, 1..12)) {
        let mut text = HEAD.to_owned();
        let mut had: Vec<String> = Vec::new();
        for value in &values {
            let value = format!("{value} g");
            text = noted(&text, "dough/water", &value).0;
            if had.last() != Some(&value) {
                had.push(value);
            }
        }
        let now = figures(&text).into_iter().find(|(name, _)| name == "dough/water/amount").map(|(_, value)| value);
        let told: Vec<String> = corrections(&text).into_iter().map(|(_, was)| was).chain(now).collect();
        prop_assert_eq!(told, had);
    }

    /// Names and values that nobody would write are refused, and nothing breaks.
    #[test]
    fn any_name_is_taken_or_refused(name in "[a-z/°\\- ]{0,40}", value in "\\PC{0,20}") {
        if let Ok((figure, value)) = Figure::read(&name, &value, &dough()) {
            let (text, _) = note(HEAD, &Entry::Figure(figure, value), AT, "").expect("it is taken");
            prop_assert!(text.starts_with("# The first morning."));
        }
    }
}
