//! Trials as they are read: what loggers write, what is missing, and what nobody can have meant.

mod logger;
mod noted;

use formula::read::{Reading, RiseSeen, Trial};
use formula::source::{MOST_LINES, Source};
use formula::{Book, BookText, Checked};
use proptest::prelude::*;
use quantity::{Length, Temperature, TimeSpan, Volume};
use std::collections::BTreeMap;

const FORMULA: &str = "title = \"Dough\"\n[[component]]\nname = \"dough\"\n[[component.stage]]\nname = \"dough\"\nkind = \"final-mix\"\n\
    [component.stage.ingredients]\nflour-bread = \"500 g\"\nwater = \"300 g\"\nyeast-instant = \"5 g\"\n\
    [[component.stage.step]]\naction = \"bulk\"\nattention = \"waiting\"\ntext = \"Leave {flour-bread}, {water}, {yeast-instant}.\"\ntime = \"1 h\"\n";

fn open(files: &[(&str, &str)]) -> Checked<Book> {
    let all = files.iter().chain(&[("formulas/dough.toml", FORMULA)]);
    let files: BTreeMap<String, Source> =
        all.map(|(file, text)| ((*file).to_owned(), Source { file: (*file).into(), text: (*text).to_owned() })).collect();
    let opened = Book::open(BookText { files: files.clone() });
    for found in &opened.diagnostics {
        let text = &files[&*found.place.file].text;
        assert!(text.get(found.place.span.clone()).is_some(), "{} lies outside its file: {:?}", found.code, found.place);
    }
    opened
}

/// The trial and the codes of all that is wrong, with a rise that has a course of this text.
fn with_course(csv: &str) -> (RiseSeen, Vec<&'static str>) {
    let trial = "title = \"x\"\nformula = \"dough\"\ndate = 2026-11-02\n[[rise]]\nstage = \"dough\"\ncourse = \"x.csv\"\n";
    let opened = open(&[("trials/x.toml", trial), ("trials/x.csv", csv)]);
    let codes = opened.diagnostics.iter().map(|found| found.code).collect();
    (opened.value.trials[0].rises[0].clone(), codes)
}

fn minutes(minutes: f64) -> TimeSpan {
    TimeSpan::minutes(minutes)
}

#[test]
fn courses_as_loggers_write_them() {
    let plain = Reading { after: minutes(30.0), temperature: Some(Temperature::celsius(24.5)), ..Reading::default() };
    for (csv, expected) in [
        ("time (min),temperature (°C)\n30,24.5\n", plain),
        ("\u{feff}Time [min];Temperature [°C]\r\n30;24.5\r\n", plain),
        ("temperature,time\n24.5 °C,30 min\n", plain),
        ("temperature (°F),time (h)\n76.1,0.5\n", plain),
        ("\"time (min)\",\"temperature (°C)\"\n\"30\",\"24.5\"\n\n", plain),
        (
            "time (min),height (cm)\n30,6.5\n",
            Reading { after: minutes(30.0), height: Some(Length::millimetres(65.0)), ..Reading::default() },
        ),
        (
            "time (min),volume (l)\n30,0.42\n",
            Reading { after: minutes(30.0), volume: Some(Volume::millilitres(420.0)), ..Reading::default() },
        ),
    ] {
        let (rise, codes) = with_course(csv);
        let is_measured = expected.temperature.is_none();
        assert_eq!(codes, if is_measured { vec!["rise-without-beginning"] } else { vec![] }, "{csv}");
        let close = |found: Option<Temperature>| match (found, expected.temperature) {
            (Some(found), Some(expected)) => (found - expected).as_kelvins().abs() < 1e-9,
            (found, expected) => found == expected,
        };
        let found = rise.readings[0];
        assert!(rise.readings.len() == 1 && close(found.temperature), "{csv}: {rise:?}");
        assert_eq!((found.after, found.height, found.volume), (expected.after, expected.height, expected.volume), "{csv}");
    }
}

#[test]
fn what_is_wrong_in_a_course_is_told() {
    for (csv, expected) in [
        ("", "course-unreadable"),
        ("\n", "course-unreadable"),
        ("30,24.5\n", "course-unreadable"),
        ("time (min),hight (mm)\n0,4\n", "course-unreadable"),
        ("height (mm)\n4\n", "course-unreadable"),
        ("time,temperature (°C)\n30,24\n", "wrong-quantity"),
        ("time (min),temperature (°C)\nnoon,24\n", "not-an-amount"),
        ("time (min),temperature (°C)\n1,-400\n", "below-absolute-zero"),
        ("time (fortnights),temperature (°C)\n1,24\n", "unknown-unit"),
        ("time (min),height (mm)\n0,0\n", "reading-of-nothing"),
        ("time (min),height (mm)\n-5,40\n", "amount-negative"),
    ] {
        let (_, codes) = with_course(csv);
        assert!(codes.contains(&expected), "{csv:?}: {codes:?}");
    }
}

#[test]
fn rises_are_told_against_their_beginning() {
    let (rise, codes) = with_course("time (min),height (mm)\n60,90\n0,40\n30,\n90,100\n");
    assert!(codes.is_empty(), "{codes:?}");
    assert_eq!(rise.risen(), [(minutes(0.0), 1.0), (minutes(60.0), 2.25), (minutes(90.0), 2.5)]);
}

#[test]
fn more_readings_than_anybody_takes_are_refused() {
    let csv = format!("time (min),temperature (°C)\n{}", "1,24\n".repeat(MOST_LINES + 1));
    let (rise, codes) = with_course(&csv);
    assert!(rise.readings.is_empty() && codes == ["too-many-lines"], "{codes:?}");
}

#[test]
fn days_are_days() {
    let trial = |date: &str| {
        let text = format!("title = \"x\"\nformula = \"dough\"\ndate = {date}\n");
        let opened = open(&[("trials/x.toml", &text)]);
        (
            opened.value.trials[0].date.map(|date| date.to_string()),
            opened.diagnostics.iter().map(|found| found.code).collect::<Vec<_>>(),
        )
    };
    for date in ["2026-11-02", "\"2026-11-02\"", "2026-11-02T06:30:00", "2028-02-29"] {
        assert!(trial(date).0.is_some() && trial(date).1.is_empty(), "{date}: {:?}", trial(date));
    }
    for date in ["\"2026-02-30\"", "\"yesterday\"", "20261102", "06:30:00", "\"\""] {
        assert_eq!(trial(date), (None, vec!["not-a-date"]), "{date}");
    }
}

/// Trials stand in the order of their days, whatever their files are called.
#[test]
fn trials_in_the_order_of_days() {
    let text = |day: u8| format!("title = \"{day}\"\nformula = \"dough\"\ndate = 2026-11-{day:02}\n");
    let opened = open(&[("trials/a.toml", &text(9)), ("trials/b.toml", &text(2)), ("trials/more/c.toml", &text(5))]);
    let titles: Vec<&str> = opened.value.trials.iter().map(|trial: &Trial| trial.title.as_str()).collect();
    assert_eq!(titles, ["2", "5", "9"]);
}

proptest! {
    /// Any letters as a course, and as a trial: read or refused, with places in the file.
    #[test]
    fn any_letters(csv in "\\PC{0,80}|(time|height|\\(min\\)|[,;\"\n0-9.°C-]){0,40}", toml in "(\\[\\[rise\\]\\]|stage|reading|=|\\[|\\{|\\}|\"|\n|after|1 h|date){0,40}") {
        let _ = with_course(&csv);
        let opened = open(&[("trials/x.toml", &toml)]);
        let formula = opened.value.formula("dough").expect("the dough").value;
        prop_assert!(opened.value.misplaced(&formula).count() <= toml.len());
    }
}
