//! A day's timeline for the terminal.

use super::words::{about, action, between, day, heat, rests, served, time, time_seen_from, verb, what};
use super::{chances, wishes};
use crate::outlook::sure;
use crate::tongue::Tongue;
use crate::words::wrap;
use formula::read::Action;
use formula::{Known, Origin};
use jiff::ZonedDateTime;
use plan::day::{Entry, Job, Readies, Space, Station, Timeline, Told, Why, Workplace};
use quantity::{TimeSpan, Volume};

/// The timeline as text of that width.
#[must_use]
pub fn text(timeline: &Timeline, width: usize) -> String {
    let head = format!("{}, on the table at {}", timeline.served.strftime("%A %-d %B %Y"), time(&timeline.served));
    let mut out = format!("{head}\n{}\n", "═".repeat(head.chars().count()));
    for title in served(timeline) {
        out.push_str(&wrap(title, width));
    }
    out.push_str(&wrap(&place(timeline), width));
    let mut lines: Vec<(&ZonedDateTime, usize, String)> = Vec::new();
    for entry in &timeline.entries {
        lines.push((&entry.begin, 1, line(timeline, entry)));
    }
    for (from, to, why) in rests(timeline) {
        let word = if why == Why::Asleep { "asleep" } else { "out" };
        let after = if *from == timeline.served { 3 } else { 0 };
        lines.push((from, after, format!("{}  ☾ {word} until {}", time(from), time_seen_from(to, from))));
    }
    lines.push((&timeline.served, 2, format!("{}  ★ on the table", time(&timeline.served))));
    lines.sort_by(|a, b| (a.0, a.1).cmp(&(b.0, b.1)));
    let mut date = None;
    for (moment, _, line) in lines {
        if date != Some(moment.date()) {
            date = Some(moment.date());
            let heading = day(moment);
            out.push_str(&format!("\n{heading}\n{}\n", "─".repeat(heading.chars().count())));
        }
        out.push_str(&wrap(&line, width));
    }
    out.push_str("\n● hands all the while, ◐ hands to set it going, ○ by itself\n\n");
    for told in own_times(timeline) {
        out.push_str(&wrap(&told, width));
    }
    for told in wishes::learnt(timeline) {
        out.push_str(&wrap(&told, width));
    }
    for told in wishes::told(timeline) {
        out.push_str(&wrap(&told, width));
    }
    out.push_str(&wrap(&wishes::proof(timeline), width));
    out.push('\n');
    for told in chances::told(timeline) {
        out.push_str(&wrap(&told, width));
    }
    for told in cautions(timeline) {
        out.push_str(&wrap(told, width));
    }
    out
}

/// What stands by every plan, and what by one that keeps something warm.
pub fn cautions(timeline: &Timeline) -> Vec<&'static str> {
    let keeps_warm = timeline.entries.iter().any(|entry| is_kept_warm(timeline, &timeline.jobs[entry.job]));
    [Some(CAUTION), keeps_warm.then_some(KEPT_WARM)].into_iter().flatten().collect()
}

/// The leavens of which times were learnt in this kitchen's own trials.
pub fn own_times(timeline: &Timeline) -> Vec<String> {
    sure::of_the_day(timeline.dishes.iter().flat_map(|dish| dish.rises.iter().map(|rise| (&*dish.formula, rise))))
}

fn is_kept_warm(timeline: &Timeline, job: &Job) -> bool {
    matches!(action(timeline, job), Action::Hold | Action::Rewarm) && job.is_step()
}

const KEPT_WARM: &str = "Hot food is held at 57 °C (135 °F) or more, and what was cold is warmed through quickly, to 74 °C (165 °F) where it is held hot after that, once only (US Food Code 2022, 3-501.16 and 3-403.11; England holds at 63 °C): your local rules come first.";

const CAUTION: &str = "Times are planned, not measured: look at the dough, not at the clock. Never leave hot fat, and nothing on the heat when nobody is there.";

/// "In The estuary test kitchen: 1 pair of hands (assumed), 2 rings …".
pub fn place(timeline: &Timeline) -> String {
    place_in(timeline, Tongue::default())
}

/// The same in a language.
pub fn place_in(timeline: &Timeline, tongue: Tongue) -> String {
    let (place, print) = (&timeline.place, tongue.print);
    let known = |what: String, origin: &Origin| {
        if matches!(origin, Origin::Assumed { .. }) { tongue.day_assumed(what) } else { what }
    };
    type Counted = fn(Tongue, f64, String) -> String;
    let counted = |one: &Known<u32>, say: Counted| known(say(tongue, one.value.into(), one.value.to_string()), &one.origin);
    let stands = |space: Space| timeline.stays.iter().any(|stay| stay.space == space);
    let mut told = vec![counted(&place.hands, Tongue::day_hands), counted(&place.rings, Tongue::day_rings)];
    let stands_in = |station: Station| timeline.jobs.iter().any(|job| job.stations.contains(&station));
    if stands_in(Station::Oven) {
        told.push(counted(&place.decks, Tongue::day_decks));
    }
    if stands(Space::Bowls) {
        told.push(format!("{}{}", counted(&place.bowls, Tongue::day_bowls), sizes(place, tongue)));
    }
    if let Some(room) = place.proofer_room.filter(|_| stands_in(Station::Proofer)) {
        told.push(tongue.day_in_the_proofer(print.volume(room)));
    }
    if stands(Space::Fridge) {
        let room = tongue.day_in_the_fridge(print.volume(place.fridge_room.value));
        told.push(known(room, &place.fridge_room.origin));
    }
    if let Some(hours) = place.asleep.value {
        told.push(known(tongue.day_asleep(hours.to_string()), &place.asleep.origin));
    }
    told.extend(place.out.iter().map(|hours| tongue.day_out(hours.to_string())));
    tongue.day_in(&place.title, told.join(", "))
}

/// " (2 of 1.5 l, 1 of 5 l)".
fn sizes(place: &Workplace, tongue: Tongue) -> String {
    let one = |(holds, count): &(Volume, u32)| tongue.sheet_pieces_of(count.to_string(), tongue.print.volume(*holds));
    let sizes: Vec<String> = place.bowl_sizes.iter().map(one).collect();
    if sizes.is_empty() { String::new() } else { format!(" ({})", sizes.join(", ")) }
}

/// "06:25–07:55  ○ bulk · Potato muffins: potato dough, foreseen 1 h 20 min".
fn line(timeline: &Timeline, entry: &Entry) -> String {
    let mark = match hands(timeline, entry) {
        Hands::AllTheWhile => '●',
        Hands::ToSetItGoing => '◐',
        Hands::None => '○',
    };
    let (end, words) = (time_seen_from(&entry.end, &entry.begin), in_words(timeline, entry));
    format!("{}–{end}  {mark} {words}", time(&entry.begin))
}

/// Whether hands are needed.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Hands {
    /// All the while.
    AllTheWhile,
    /// To set it going.
    ToSetItGoing,
    /// It goes on by itself.
    None,
}

/// What hands an entry needs.
pub fn hands(timeline: &Timeline, entry: &Entry) -> Hands {
    match (timeline.jobs[entry.job].is_work, entry.is_set_going) {
        (true, _) => Hands::AllTheWhile,
        (false, true) => Hands::ToSetItGoing,
        (false, false) => Hands::None,
    }
}

/// What is done to what, and what is to be known of its time.
pub fn in_words(timeline: &Timeline, entry: &Entry) -> String {
    let job = &timeline.jobs[entry.job];
    let heat = heat(timeline, job).map(|heat| format!(" at {heat}")).unwrap_or_default();
    let mut line = format!("{}{heat} · {}", verb(timeline, job), what(timeline, job));
    if job.loads > 1 {
        line.push_str(&format!(", in {} loads", job.loads));
    }
    for fixed in wishes::fixed(timeline, entry.job) {
        line.push_str(&format!(", fixed {fixed}"));
    }
    line.push_str(&looking(timeline, job));
    if between(&entry.end, &entry.needed) >= TimeSpan::minutes(10.0) && job.readies != Some(Readies::Oven) {
        line.push_str(&format!("; then waits until {}", time_seen_from(&entry.needed, &entry.begin)));
    }
    line
}

/// When to look at what is only foreseen, and where that is not what the formula says.
fn looking(timeline: &Timeline, job: &Job) -> String {
    let span = &job.span;
    let component = &timeline.dishes[job.dish].formula.components[job.at.0];
    let stated = plan::lasts(component, &component.stages[job.at.1].steps[job.step]);
    match (span.from, stated) {
        (Told::Assumed, _) => ", time assumed".to_owned(),
        (Told::Stated, _) => String::new(),
        (Told::Foreseen, stated) => {
            let band = if span.late > span.early {
                format!(", may take {} to {}", about(span.early), about(span.late))
            } else {
                String::new()
            };
            match stated.filter(|stated| span.likely < stated.from || span.likely > stated.to) {
                Some(stated) => format!("{band}; the formula says {}", quantity::print::time(stated)),
                None => band,
            }
        }
    }
}
