//! `logger`: previewed, written beside the trial or the kitchen, refused with row and column.

use crate::sandbox::Sandbox;

const TRIAL: &str = "saltmarsh/trials/2026-11-03-muffins.toml";

/// A logger with semicolons, decimal commas and a serial number: a dough that cools towards its room.
fn probe() -> String {
    let row = |minute: u32| {
        let warm = 24.5 - 2.5 * (1.0 - libm::exp(-f64::from(minute) / 60.0));
        let (hour, minute) = ((500 + minute) / 60, (500 + minute) % 60);
        format!("04.11.2026 {hour:02}:{minute:02}:00;{};55,1\n", format!("{warm:.2}").replace('.', ","))
    };
    format!("Serial 0042\n\nDate Time;Temp [°C];Humidity [%]\n{}", (0..100).map(row).collect::<String>())
}

#[test]
fn a_course_beside_the_trial() {
    let sandbox = Sandbox::with_demo();
    sandbox.write("probe.csv", probe());
    let before = sandbox.read(TRIAL);
    let words = ["logger", "probe.csv", "--trial", TRIAL, "--step", "dough/bulk", "--begins", "08:20"];
    let ran = sandbox.run(&words);
    insta::assert_snapshot!("logger_preview", ran.out);
    assert!(ran.err.contains("nothing is written") && sandbox.read(TRIAL) == before, "{}", ran.err);
    let written = [&words[..], &["--in-place"]].concat();
    sandbox.fine(&written);
    assert!(sandbox.read(TRIAL).contains("course = \"2026-11-03-muffins-dough-bulk.csv\""));
    assert!(
        sandbox.read("saltmarsh/trials/2026-11-03-muffins-dough-bulk.csv").starts_with("time (min),temperature (°C)\n7,24.2\n")
    );
    assert_eq!(sandbox.run(&["check", "saltmarsh"]).status, 0);
    assert!(sandbox.fine(&["learn", "saltmarsh"]).contains("warmth after"));
    assert!(sandbox.run(&written).err.contains("as written before"));
    sandbox.write("probe.csv", probe().replace("24,50", "25,50"));
    let altered = sandbox.run(&written);
    assert!(altered.status == 2 && altered.err.contains("says something else"), "{}", altered.err);
}

/// A thermometer in the air gives the room, and what the room was before is kept.
#[test]
fn the_mean_of_the_air() {
    let sandbox = Sandbox::with_demo();
    sandbox.write("air.csv", probe());
    sandbox.fine(&["logger", "air.csv", "--trial", TRIAL, "--step", "dough/bulk", "--of-the-air", "--in-place"]);
    let text = sandbox.read(TRIAL);
    assert!(text.contains("room = \"23.3 °C\"") && text.contains("was = \"22 °C\""), "{text}");
}

#[test]
fn the_log_of_a_room() {
    let sandbox = Sandbox::with_demo();
    let kitchen = "saltmarsh/kitchens/estuary.toml";
    let rows: String = (0..96)
        .map(|n| {
            format!(
                "11/{:02}/2026 {}:{:02} {},{:.1}\n",
                14 + n / 48,
                [12, n % 24 / 2][usize::from(n % 24 >= 2)],
                n % 2 * 30,
                if n % 48 < 24 { "AM" } else { "PM" },
                64.4 + f64::from(n as u32 % 48) / 10.0
            )
        })
        .collect();
    sandbox.write("room.csv", format!("Time,Temperature (°F)\n{rows}"));
    let shown = sandbox.run(&["logger", "room.csv", "--kitchen", kitchen]);
    insta::assert_snapshot!("logger_room", shown.out);
    sandbox.fine(&["logger", "room.csv", "--kitchen", kitchen, "--in-place"]);
    assert!(sandbox.read(kitchen).contains("room-log = \"estuary-room.csv\""));
    assert!(sandbox.read("saltmarsh/kitchens/estuary-room.csv").starts_with("time,temperature\n2026-11-14 00:00,18\n"));
    assert_eq!(sandbox.run(&["check", "saltmarsh"]).status, 0);
    sandbox.write("started.csv", "time (min),temperature (°C)\n0,20\n30,21\n");
    let asked = sandbox.run(&["logger", "started.csv", "--kitchen", kitchen]);
    assert!(asked.status == 2 && asked.err.contains("when it was started"), "{}", asked.err);
    assert!(
        sandbox
            .fine(&["logger", "started.csv", "--kitchen", kitchen, "--begins", "2026-11-15 08:00"])
            .contains("2026-11-15 08:30,21")
    );
}

#[test]
fn what_cannot_be_read_is_refused_with_its_place() {
    let sandbox = Sandbox::with_demo();
    sandbox.write("probe.csv", probe().replace("24,30", "24,3O"));
    let ran = sandbox.run(&["logger", "probe.csv", "--trial", TRIAL, "--step", "dough/bulk", "--in-place"]);
    assert_eq!(ran.status, 1, "{}", ran.err);
    insta::assert_snapshot!("logger_refused", ran.out);
    sandbox.write("probe.csv", probe());
    for (words, said) in [
        (&["--step", "dough/mix"][..], "is no waiting step"),
        (&["--step", "dough/bulk", "--begins", "2026-11-05 10:00"], "the logger wrote nothing while that step went on"),
        (&["--step", "dough/bulk", "--begins", "noon"], "is no time of the day"),
    ] {
        let ran = sandbox.run(&[&["logger", "probe.csv", "--trial", TRIAL][..], words].concat());
        assert!(ran.status == 2 && ran.err.contains(said), "{words:?}: {}", ran.err);
    }
}
