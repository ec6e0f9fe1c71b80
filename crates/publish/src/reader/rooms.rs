//! What ferments at each temperature of the reader's room: tables that the page reads in between. Where a step
//! stands somewhere else from some temperature on, a new table begins, because nothing may be read across.

use super::short;
use bench::forecast::{Foreseen, KnownTime, NEAR, Rise, Stand, Surroundings, Verdict, rises_for_a_table};
use formula::{Formula, Step};
use quantity::{Between, Temperature};
use serde_json::{Value, json};

/// The coldest room that a reader can ask for.
pub const COLDEST: f64 = 12.0;
/// The warmest room that a reader can ask for.
pub const WARMEST: f64 = 32.0;
/// How far apart the rooms of a table are looked at first, in kelvin; one between them is looked at too.
const APART: f64 = 7.0;
/// How close together they may come.
const CLOSEST: f64 = 0.5;
/// How far off what is read in between may be, as a share, before rooms are looked at closer together. Half as far
/// apart it is a quarter of that.
const OFF: f64 = 0.015;
/// A room just beside one at which a step moves.
const BESIDE: f64 = 1e-6;

/// The kitchen's own room, and what can be asked for.
pub fn usual(around: &Surroundings) -> Value {
    let own = (around.room.value.as_celsius() * 2.0).round() / 2.0;
    json!({ "usual": own.clamp(COLDEST, WARMEST), "from": COLDEST, "to": WARMEST })
}

/// The tables of a formula; nothing where nothing ferments.
pub fn tables(formula: &Formula, around: &Surroundings) -> Value {
    let usual = rises_for_a_table(formula, around);
    if !usual.iter().any(|rise| rise.steps.iter().any(|step| step.reached.is_some())) {
        return Value::Null;
    }
    let asked: Vec<&Step> =
        usual.iter().flat_map(|rise| &rise.steps).filter_map(|one| step_of(formula, one)).map(|(_, step)| step).collect();
    let parts = parts(&asked, around);
    let tables: Vec<Value> = parts.iter().map(|part| table(formula, around, part)).collect();
    json!({ "steps": steps(formula, &usual), "parts": tables })
}

/// The step that something is foreseen of, and its key.
fn step_of<'f>(formula: &'f Formula, one: &Foreseen) -> Option<(String, &'f Step)> {
    formula.stages().find_map(|((c, s), stage)| {
        let n = stage.steps.iter().position(|step| step.place == one.place)?;
        Some((format!("{c}.{s}.{n}"), &stage.steps[n]))
    })
}

/// What holds of each foreseen step in every room: its key, its stated minutes, whether it is a window, its band.
fn steps(formula: &Formula, rises: &[Rise]) -> Vec<Value> {
    let all = rises.iter().flat_map(|rise| &rise.steps);
    let told = all.filter_map(|one| {
        let (key, step) = step_of(formula, one)?;
        let reached = one.reached.as_ref();
        let band = reached.and_then(|reached| {
            let (low, high) = reached.from.band?;
            Some(json!([short(low / reached.from.value), short(high / reached.from.value)]))
        });
        let asked = reached.is_some() || one.verdict == Verdict::Never;
        let ripens = reached.is_some_and(|reached| reached.from != reached.to);
        let stated = step.time.map(|time| json!([short(time.from.as_minutes()), short(time.to.as_minutes())]));
        Some(json!({ "key": key, "stated": stated, "ripens": ripens, "band": band, "asked": asked }))
    });
    told.collect()
}

/// A stretch of rooms in which every step stands where it stands; whether its ends belong to it.
#[derive(Clone, Copy, Debug)]
struct Part {
    from: f64,
    to: f64,
    with_from: bool,
    with_to: bool,
}

fn stands(asked: &[&Step], around: &Surroundings, room: f64) -> Vec<Stand> {
    let around = around.clone().with_room(Temperature::celsius(room));
    asked.iter().map(|step| around.stand(step)).collect()
}

/// Parts the rooms where a step moves.
fn parts(asked: &[&Step], around: &Surroundings) -> Vec<Part> {
    let mut ends = vec![COLDEST, WARMEST];
    for range in asked.iter().filter_map(|step| step.temperature) {
        let (from, to) = (range.from.as_celsius(), range.to.as_celsius());
        let middle = f64::midpoint(from, to);
        ends.extend([from, to, middle - NEAR, middle + NEAR].into_iter().filter(|end| *end > COLDEST && *end < WARMEST));
    }
    ends.sort_by(f64::total_cmp);
    ends.dedup();
    let mut parts: Vec<Part> = Vec::new();
    for pair in ends.windows(2) {
        let [from, to] = [pair[0], pair[1]];
        let within = stands(asked, around, f64::midpoint(from, to));
        let is_same = |room: f64| stands(asked, around, room) == within;
        let (with_from, with_to) = (is_same(from), is_same(to));
        match parts.last_mut() {
            Some(last) if last.with_to && with_from && stands(asked, around, f64::midpoint(last.from, last.to)) == within => {
                (last.to, last.with_to) = (to, with_to);
            }
            _ => parts.push(Part { from, to, with_from, with_to }),
        }
    }
    parts
}

/// What is foreseen in a room.
struct Seen {
    room: f64,
    rises: Vec<Rise>,
    /// Of each foreseen step: from when to when, in minutes.
    reached: Vec<Option<(f64, f64)>>,
}

fn seen(formula: &Formula, around: &Surroundings, room: f64) -> Seen {
    let rises = rises_for_a_table(formula, &around.clone().with_room(Temperature::celsius(room)));
    let span = |reached: &Between<KnownTime>| (reached.from.value.as_minutes(), reached.to.value.as_minutes());
    let reached = all(&rises).map(|one| one.reached.as_ref().map(span)).collect();
    Seen { room, rises, reached }
}

/// The rooms of a part, closer together where what is read in between would be off.
fn rooms(formula: &Formula, around: &Surroundings, part: &Part) -> Vec<Seen> {
    let see = |room: f64| seen(formula, around, room);
    let from = if part.with_from { part.from } else { part.from + BESIDE };
    let to = if part.with_to { part.to } else { part.to - BESIDE };
    let count = ((to - from - 2.0 * BESIDE) / APART).ceil().max(1.0) as u32;
    let mut rooms = vec![see(from)];
    for n in 1..=count {
        let next = see(if n == count { to } else { part.from + (part.to - part.from) * f64::from(n) / f64::from(count) });
        let mut open = vec![next];
        // The last of the open ones is the next to be joined to what is there.
        while let (Some(before), Some(after)) = (rooms.last(), open.last()) {
            let width = after.room - before.room;
            let middle = (width > CLOSEST).then(|| see(f64::midpoint(before.room, after.room)));
            match middle {
                Some(middle) if !is_between(before, &middle, after) => open.push(middle),
                middle => {
                    rooms.extend(middle);
                    rooms.extend(open.pop());
                }
            }
        }
    }
    rooms
}

/// Whether a room is told well enough by its neighbours: a ferment's time falls nearly as a power of the degrees.
fn is_between(before: &Seen, middle: &Seen, after: &Seen) -> bool {
    let share = libm::log(middle.room / before.room) / libm::log(after.room / before.room);
    let near = |a: f64, is: f64, b: f64| (libm::log(is / a) - share * libm::log(b / a)).abs() < OFF;
    let ends = before.reached.iter().zip(&middle.reached).zip(&after.reached);
    ends.into_iter().all(|((a, is), b)| match (a, is, b) {
        (Some(a), Some(is), Some(b)) => near(a.0, is.0, b.0) && near(a.1, is.1, b.1),
        (None, None, None) => true,
        _ => false,
    })
}

/// The rises in the rooms of a part: of each foreseen step from when to when in minutes, of each mix its liquid.
fn table(formula: &Formula, around: &Surroundings, part: &Part) -> Value {
    let rooms = rooms(formula, around, part);
    let within = around.clone().with_room(Temperature::celsius(f64::midpoint(part.from, part.to)));
    let steps = rooms.first().map_or(0, |first| first.reached.len());
    let column = |n: usize, end: fn((f64, f64)) -> f64| -> Vec<Value> {
        rooms.iter().map(|one| one.reached[n].map_or(Value::Null, |reached| short(end(reached)))).collect()
    };
    let told = (0..steps).map(|n| {
        let place =
            rooms.first().and_then(|first| step_of(formula, all(&first.rises).nth(n)?)).and_then(|(_, step)| {
                match within.stand(step) {
                    Stand::Room => None,
                    Stand::Place(found) => Some(short(found.as_celsius())),
                }
            });
        let (from, to) = (column(n, |reached| reached.0), column(n, |reached| reached.1));
        if from == to { json!({ "at": from, "place": place }) } else { json!({ "at": from, "to": to, "place": place }) }
    });
    json!({
        "from": part.from, "to": part.to, "withFrom": part.with_from, "withTo": part.with_to,
        "steps": told.collect::<Vec<_>>(),
        "rooms": rooms.iter().map(|one| short(one.room)).collect::<Vec<_>>(),
        "liquids": liquids(&rooms),
    })
}

fn all(rises: &[Rise]) -> impl Iterator<Item = &Foreseen> {
    rises.iter().flat_map(|rise| &rise.steps)
}

/// For each mix that wants a temperature: how warm its liquid must be in each room.
fn liquids(rooms: &[Seen]) -> Vec<Value> {
    let Some(first) = rooms.first() else { return Vec::new() };
    let told = first.rises.iter().enumerate().filter_map(|(n, rise)| {
        let (title, _) = rise.mixed.as_ref()?.liquid.as_ref()?;
        let of = |one: &Seen| {
            let (_, at) = one.rises.get(n)?.mixed.as_ref()?.liquid.as_ref()?;
            Some(short(at.as_celsius()))
        };
        let at: Option<Vec<Value>> = rooms.iter().map(of).collect();
        Some(json!({ "stage": format!("{}.{}", rise.at.0, rise.at.1), "called": title, "at": at? }))
    });
    told.collect()
}
