//! Loggers' tables as they come: separators, commas, dates, scales, and what is refused. The forms are common practice of
//! loggers sold today; no source.

use formula::import::{Asked, Clock, Log, Scale, clock, read_logger};
use formula::source::Source;
use proptest::prelude::*;

fn read(text: &str, asked: &Asked) -> Result<Log, Vec<(String, String)>> {
    let source = Source { file: "probe.csv".into(), text: text.to_owned() };
    let checked = read_logger(&source, asked);
    for found in &checked.diagnostics {
        assert!(text.get(found.place.span.clone()).is_some(), "{} lies outside: {:?}", found.message, found.place);
    }
    let told = |found: formula::Diagnostic| (found.message, found.place.span.start.to_string());
    checked.value.ok_or_else(|| checked.diagnostics.into_iter().map(told).collect())
}

#[track_caller]
fn check(text: &str, expected: &[(&str, f64)]) {
    let log = read(text, &Asked::default()).unwrap_or_else(|why| panic!("{text}: {why:?}"));
    let found: Vec<(String, f64)> = log
        .readings
        .iter()
        .map(|one| {
            let when = if log.clock == Clock::Started { format!("{} s", one.seconds) } else { clock(one.seconds, log.clock) };
            (when, (one.celsius * 100.0).round() / 100.0)
        })
        .collect();
    let expected: Vec<(String, f64)> = expected.iter().map(|(when, warm)| ((*when).to_owned(), *warm)).collect();
    assert_eq!(found, expected, "{text}\n{:?}", log.guessed);
}

#[test]
fn tables_as_loggers_write_them() {
    let two = [("2026-11-14 18:20", 21.5), ("2026-11-14 18:35", 22.0)];
    check("Time,Temperature (°C)\n2026-11-14 18:20:00,21.5\n2026-11-14 18:35:00,22.0\n", &two);
    check("\u{feff}Zeit;Temperatur [°C];Feuchte [%]\r\n14.11.2026 18:20;21,5;48,2\r\n14.11.2026 18:35;22,0;48,1\r\n", &two);
    check("#,Date,Time,Celsius(°C),Humidity(%rh)\n1,14/11/2026,18:20,21.5,48\n2,14/11/2026,18:35,22.0,48\n", &two);
    check("\"No.\",\"Date Time\",\"Temp, °F\"\n1,\"11/14/26 06:20:00 PM\",70.7\n2,\"11/14/26 06:35:00 PM\",71.6\n", &two);
    check(
        "Serial number: 00421\nInterval: 15 min\n\ntime\ttemp\n2026-11-14T18:20:00Z\t21.5 °C\n2026-11-14T18:35:00Z\t71.6 °F\n",
        &two,
    );
    check("unix,temperature\n1794680400,21.5\n1794681300,22\n", &two);
    check("1794680400000;21,5\n1794681300000;22,0\n", &two);
    check("time (min),temperature (°C)\n0,24\n30,23.5\n", &[("0 s", 24.0), ("1800 s", 23.5)]);
    check("Elapsed (h),Probe 1 (C)\n0.5,24\n1,23.5\n", &[("1800 s", 24.0), ("3600 s", 23.5)]);
    check("clock,temp\n23:50,18\n00:10,17.5\n", &[("23:50", 18.0), ("00:10", 17.5)]);
    // Readings that are missing are left out, whatever the logger writes for them.
    check("time,temp\n18:20,21.5\n18:25,\n18:30,---\n18:35,22\n", &[("18:20", 21.5), ("18:35", 22.0)]);
    // In autumn the clock shows an hour twice.
    check("time,temp\n2026-10-25 02:40,18\n2026-10-25 02:10,17\n", &[("2026-10-25 02:40", 18.0), ("2026-10-25 03:10", 17.0)]);
}

#[test]
fn what_is_guessed_is_told() {
    let log = read("Zeit;Wert\n3.11.2026 06:00;68,0\n3.11.2026 07:00;69,8\n", &Asked::default()).expect("a log");
    assert_eq!(log.guessed[0], "time: column “Zeit”, date and time of the day, day before month");
    assert_eq!(log.guessed[1], "temperature: column “Wert”, °F by the size of its figures, as no unit is named, decimal commas");
    assert!((log.readings[0].celsius - 20.0).abs() < 1e-9);
    let said = Asked { scale: Some(Scale::Celsius), ..Asked::default() };
    let log = read("Zeit;Wert\n3.11.2026 06:00;68,0\n3.11.2026 07:00;69,8\n", &said).expect("a log");
    assert!((log.readings[0].celsius - 68.0).abs() < 1e-9);
    let log = read("t,C\n3/4/2026 06:00,20\n3/4/2026 07:00,20\n", &Asked::default()).expect("a log");
    assert!(log.guessed[0].contains("could be the other way round"), "{:?}", log.guessed);
    let log = read("t,C\n3/4/2026 06:00,20\n", &Asked { month_first: true, ..Asked::default() }).expect("a log");
    assert_eq!(clock(log.readings[0].seconds, log.clock), "2026-03-04 06:00");
}

#[test]
fn what_is_refused_has_its_row_and_column() {
    for (text, message) in [
        ("", "no row holds a time and a number"),
        ("hello\nworld\n", "no row holds a time and a number"),
        ("time,temp\n18:20,21.5\n18:25,21.5.3\n18:30,22\n", "row 3, column “temp”: “21.5.3” is no temperature"),
        ("time,temp\n18:20,21.5\nnoon,22\n18:30,22\n", "row 3, column “time”: “noon” is no time like the others"),
        ("time,temp\n18:20,21.5\n18:25,900\n", "row 3, column “temp”: “900” is no temperature"),
        ("t,temp\n2026-11-14 18:20,21\n2026-11-14 10:20,22\n", "row 3 is earlier than the row before it"),
        ("time,probe A (°C),probe B (°C)\n18:20,21,22\n18:25,21,22\n", "2 columns could be the temperature"),
        ("time,temp\n2026-02-30 18:20,21\n", "row 2, column “time”: “2026-02-30 18:20” is no time like the others"),
    ] {
        let why = read(text, &Asked::default()).expect_err(text);
        assert_eq!(why[0].0, message, "{text}");
    }
    let asked = Asked { column: Some("probe B (°C)".to_owned()), ..Asked::default() };
    let log = read("time,probe A (°C),probe B (°C)\n18:20,21,22\n18:25,21,22\n", &asked).expect("a log");
    assert!((log.readings[0].celsius - 22.0).abs() < 1e-9);
    let asked = Asked { column: Some("probe C".to_owned()), ..Asked::default() };
    assert!(read("time,probe A (°C)\n18:20,21\n", &asked).expect_err("no such column")[0].0.contains("no column “probe C”"));
}

proptest! {
    /// Nothing that a logger, or anybody else, writes makes the reader stumble.
    #[test]
    fn any_table_is_read_or_refused(text in "[0-9:;,./ \\-\\t\n\"aC°F%T]{0,120}") {
        let _ = read(&text, &Asked::default());
    }

    /// What was written is read again, in every dress.
    #[test]
    fn a_course_keeps_its_readings(
        temperatures in proptest::collection::vec(-200..=1500_i32, 3..40), sign in prop_oneof![Just(','), Just(';'), Just('\t')], comma: bool
    ) {
        let comma = comma && sign != ',';
        let figure = |tenths: i32| {
            let text = format!("{:.1}", f64::from(tenths) / 10.0);
            if comma { text.replace('.', ",") } else { text }
        };
        let rows: String = temperatures.iter().enumerate().map(|(n, t)| format!("2026-11-14 {:02}:{:02}{sign}{}\n", n / 60, n % 60, figure(*t))).collect();
        let log = read(&format!("time{sign}temperature (°C)\n{rows}"), &Asked::default()).expect("a log");
        let found: Vec<i32> = log.readings.iter().map(|one| (one.celsius * 10.0).round() as i32).collect();
        prop_assert_eq!(found, temperatures);
    }
}
