//! The figures of trials in words and as strips: where a forecast fell beside what was seen.

use crate::logged::called;
use bench::calibration::{Compared, Observation, Parameter, What};
use bench::forecast::Learnt;
use quantity::{Between, Temperature, TimeSpan, print};

/// Columns of a strip to either side of its middle.
const SIDE: i32 = 12;

/// A figure that was seen, or is foreseen, with its unit.
#[must_use]
pub fn figure(what: What, value: f64) -> String {
    match what {
        What::Risen => format!("{} times", print::number(value, 2)),
        What::Doubled | What::Ripe => print::time(Between::just(TimeSpan::minutes((value * 60.0).round()))),
        What::Dough | What::Bowl | What::Core => {
            print::celsius(Between::just(Temperature::celsius((value * 10.0).round() / 10.0)))
        }
    }
}

/// A figure as it was typed: with all its digits, as 9.65 °C is not 9.7 °C where it is asked what was meant.
pub fn typed(what: What, value: f64) -> String {
    match what {
        What::Dough | What::Bowl | What::Core => format!("{}\u{a0}°C", print::number(value, 2)),
        _ => figure(what, value),
    }
}

/// What was looked at, in words.
#[must_use]
pub fn label(seen: &Observation) -> String {
    let after = seen.after.map(|after| print::time(Between::just(after))).unwrap_or_default();
    let told = match seen.what {
        What::Risen => format!("volume after {after}"),
        What::Dough => format!("warmth after {after}"),
        What::Doubled => "doubled after".to_owned(),
        What::Ripe => "ripe after".to_owned(),
        What::Bowl => "from the bowl".to_owned(),
        What::Core => "middle, off the heat".to_owned(),
    };
    // Only a step that is not the first of its name needs to be told apart.
    if seen.step.number > 1 { format!("{}: {told}", called(seen.step)) } else { told }
}

/// How wide half a strip is: from half to double, or 10 K.
fn reach(what: What) -> f64 {
    if what.by_ratio() { std::f64::consts::LN_2 } else { 10.0 }
}

/// The middle is what was seen; ○ the books, ● what the trials taught. A forecast that lies beyond the strip stands at
/// its end.
pub fn strip(one: &Compared) -> String {
    let what = one.seen.what;
    let column = |foreseen: f64| {
        let part = what.off(foreseen, one.seen.seen) / reach(what);
        (part.clamp(-1.0, 1.0) * f64::from(SIDE)).round() as i32
    };
    let (before, after) = (one.before.map(column), one.after.map(column));
    let mark = |at: i32| match at {
        at if after == Some(at) => '●',
        at if before == Some(at) => '○',
        0 => '│',
        _ => '·',
    };
    (-SIDE..=SIDE).map(mark).collect()
}

/// A learnt figure, with its unit.
pub fn learnt(parameter: &Parameter, middle: f64) -> String {
    match parameter {
        Parameter::Friction => format!("{}\u{a0}K", print::number(middle, 1)),
        _ => print::number(libm::exp(middle), 2),
    }
}

/// A learnt figure with its 5 to 95 % band.
pub fn with_band(parameter: &Parameter, known: &Learnt) -> String {
    let (low, high) = (known.middle - known.own_band(), known.middle + known.own_band());
    let bare = |middle: f64| if parameter.is_factor() { learnt(parameter, middle) } else { print::number(middle, 1) };
    format!("{} ({} to {})", learnt(parameter, known.middle), bare(low), bare(high))
}

/// How far off, as a share or in kelvin.
pub fn error(what: What, off: f64) -> String {
    if what.by_ratio() {
        format!("{}\u{a0}%", print::number(100.0 * (libm::exp(off) - 1.0), 0))
    } else {
        format!("{}\u{a0}K", print::number(off, 1))
    }
}

/// The kinds of figures in the order in which errors are told.
pub const KINDS: [(What, &str); 6] = [
    (What::Doubled, "times to double"),
    (What::Ripe, "times to ripeness"),
    (What::Risen, "volumes"),
    (What::Dough, "temperatures of the dough"),
    (What::Bowl, "temperatures from the bowl"),
    (What::Core, "temperatures of the middle"),
];
