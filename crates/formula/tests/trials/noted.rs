//! Figures noted into a trial's text: comments stay, corrections keep what was before, nothing is taken twice.

use formula::logging::{Entry, Figure, Noted, corrections, figures, note, receive};
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
