//! Ready by the clock: the dose for a begun preferment, and the beginning for a stated dose.

use super::{POOLISH, RICH, around, asked, book, close, figure};
use bench::forecast::{RoomCourse, Surroundings};
use bench::target::{Asked, Ready, Solved, When, solve};
use quantity::{Temperature, TimeSpan};

fn ask(text: &str, target: &str, ready: Ready, begun: Option<f64>, around: &Surroundings) -> Solved {
    let asked = Asked { ready: Some(ready), begun: begun.map(TimeSpan::hours), ..asked(&[]) };
    solve(target, &book(text), "example", around, &asked).expect("an answer")
}

/// From nine in the evening to half past seven is ten and a half hours, and midnight is no matter.
#[test]
fn by_the_clock_is_after_so_long() {
    let clock = ask(POOLISH, "yeast", Ready::RipeAt(TimeSpan::hours(7.5)), Some(21.0), &around(21.0));
    let after = ask(POOLISH, "yeast", Ready::After(When::Ripe(TimeSpan::hours(10.5))), None, &around(21.0));
    close(figure(&clock, "of the stage's flour"), figure(&after, "of the stage's flour"), 1e-9, "dose");
    let text = &clock.changed.expect("a change").text;
    assert!(text.contains("time = \"10.5 h\""), "the method says so:\n{text}");
}

/// The dose that is found for a beginning asks for that beginning.
#[test]
fn dose_and_beginning_agree() {
    let dosed = ask(POOLISH, "yeast", Ready::RipeAt(TimeSpan::hours(7.5)), Some(21.0), &around(21.0));
    let text = dosed.changed.expect("a change").text;
    let begin = ask(&text, "begin", Ready::RipeAt(TimeSpan::hours(7.5)), None, &around(21.0));
    close(figure(&begin, "begin at"), -3.0, 0.1, "nine the evening before");
    let risen = ask(RICH, "begin", Ready::RisenAt(TimeSpan::hours(12.0)), None, &around(21.0));
    close(figure(&risen, "risen"), 12.0, 0.02, "risen at noon");
}

/// Begun at the earliest hour that is told, it is still ripe when it is wanted; an hour earlier it is not surely.
#[test]
fn the_earliest_beginning_is_still_ripe() {
    let wanted = Ready::RipeAt(TimeSpan::hours(7.5));
    let begin = ask(POOLISH, "begin", wanted, None, &around(21.0));
    let (latest, earliest) = (figure(&begin, "begin at"), figure(&begin, "at the earliest"));
    let open = figure(&begin, "ripe until") - figure(&begin, "ripe from");
    assert!(earliest < latest && latest - earliest < open, "{earliest} to {latest}, open for {open} h");
    // A steady room: the window moves with the beginning, its quick end a band before the usual one.
    let closes = figure(&begin, "ripe until") - latest;
    close(7.5 - earliest, closes * (1.0 - bench::forecast::UNCALIBRATED), 0.05 * closes, "the quick end of its band");
}

/// A room that is cold at night asks for more yeast at night than over the day.
#[test]
fn the_hour_counts_where_the_room_changes() {
    let (day, night) = (Temperature::celsius(26.0), Temperature::celsius(14.0));
    let mut changing = around(20.0);
    changing.course = RoomCourse::DayAndNight { day, night };
    let text = POOLISH.replace("temperature = \"21 °C\"\nuntil", "until");
    let dose = |ready: f64, begun: f64| {
        let solved = ask(&text, "yeast", Ready::RipeAt(TimeSpan::hours(ready)), Some(begun), &changing);
        figure(&solved, "of the stage's flour")
    };
    assert!(dose(6.0, 22.0) > 1.2 * dose(19.0, 11.0));
}
