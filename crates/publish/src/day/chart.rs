//! A day as a drawing: a row for each component and each station, work solid, heat striped, waiting open.

use super::words::{served, time, verb_in, what_in};
use crate::tongue::Tongue;
use crate::words::small_in;
use jiff::{Timestamp, ZonedDateTime};
use maud::{Markup, PreEscaped, html};
use plan::day::{Entry, Fix, Job, Space, Station, Timeline};
use std::collections::BTreeMap;

const LABEL: f64 = 210.0;
const ROW: f64 = 30.0;
const TOP: f64 = 96.0;
const MINUTE: f64 = 2.1;
/// How wide hours are drawn in which nobody does anything.
const QUIET: f64 = 60.0;
/// Hands that rest longer than that, in minutes, leave a gap in the drawing.
const PAUSE: i64 = 75;

/// How moments are told in a drawing.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Days {
    /// With the days of the calendar.
    Dated,
    /// By the clock alone, for a day like any other.
    Undated,
}

/// The chart as a self-contained SVG in a language.
#[must_use]
pub fn chart(timeline: &Timeline, tongue: Tongue) -> String {
    drawn(timeline, Days::Dated, tongue, Some(STYLE), &|_| None).into_string()
}

/// The chart as a part of a page.
pub fn drawing(timeline: &Timeline, days: Days, tongue: Tongue) -> Markup {
    // Within a page it follows the page: light, dark and on paper.
    let style = STYLE.replace("#2a2520", "var(--ink)").replace("#fbf8f2", "var(--paper)");
    drawn(timeline, days, tongue, Some(&style), &|_| None)
}

/// The chart for a page that has its own look for it; each bar may lead to what is told of its job.
#[must_use]
pub fn leading(timeline: &Timeline, lead: &dyn Fn(usize) -> Option<String>) -> Markup {
    drawn(timeline, Days::Dated, Tongue::default(), None, lead)
}

type Lead<'l> = &'l dyn Fn(usize) -> Option<String>;

fn drawn(timeline: &Timeline, days: Days, tongue: Tongue, style: Option<&str>, lead: Lead) -> Markup {
    let scale = Scale::of(timeline);
    let (rows, components) = rows(timeline, tongue);
    let zone = timeline.served.time_zone().iana_name().filter(|_| style.is_none());
    let width = LABEL + scale.width() + 72.0;
    let height = TOP + ROW * rows.len() as f64 + 30.0;
    let on_the_table = tongue.day_on_the_table(time(&timeline.served));
    let title = match days {
        Days::Dated => format!("{}, {}", tongue.day(&timeline.served), small_in(&on_the_table, tongue)),
        Days::Undated => on_the_table,
    };
    let description = tongue.day_what_is_done(served(timeline).join(", "));
    // Where no day is named, the page tells the hour above it.
    let above = if days == Days::Dated { 0.0 } else { 34.0 };
    // A picture with links in it is no single picture for those who hear it.
    let role = if style.is_some() { "img" } else { "group" };
    html! {
        svg xmlns="http://www.w3.org/2000/svg" class="day" viewBox=(format!("0 {above:.0} {width:.0} {:.0}", height - above)) width=[zone.map(|_| format!("{width:.0}"))] role=(role) aria-labelledby="day-title day-words" data-zone=[zone] data-hours=[zone.map(|_| scale.knots())] {
            title id="day-title" { (title) }
            desc id="day-words" { (description) }
            @if let Some(style) = style { style { (PreEscaped(style)) } }
            defs {
                pattern id="heat" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)" {
                    rect.ground width="6" height="6" {}
                    line.stripe x1="0" y1="0" x2="0" y2="6" {}
                }
            }
            rect.paper x="0" y="0" width=(format!("{width:.0}")) height=(format!("{height:.0}")) {}
            @if days == Days::Dated { text.head x="16" y="28" { (title) } }
            text.small x="16" y="48" { (tongue.day_legend()) @if timeline.fixed.iter().any(|one| !one.has_happened) { " · " (tongue.day_legend_fixed()) } }
            (scale.ruled(timeline, days, height - 24.0))
            @for (n, (name, entries)) in rows.iter().enumerate() {
                (row(&Drawn { timeline, tongue, scale: &scale, lead }, (name, entries, n < components), TOP + ROW * n as f64))
            }
        }
    }
}

/// How the drawing looks; it goes along in the drawing itself.
pub const STYLE: &str = ".day text{font:13px Georgia,'DejaVu Serif',serif;fill:#2a2520}.day .head{font-size:17px;font-weight:600}\
.day .small{font-size:11px}.day .paper{fill:#fbf8f2}.day .work{fill:#2a2520;stroke:#fbf8f2}.day .wait{fill:#fbf8f2;stroke:#2a2520}\
.day .hot{fill:url(#heat);stroke:#2a2520}.day .ground{fill:#fbf8f2}.day .stripe{stroke:#2a2520;stroke-width:1.6}\
.day .rule{stroke:#2a2520;stroke-width:.5;opacity:.45}.day .gap{stroke:#2a2520;stroke-dasharray:1 4}\
.day .on{fill:#fbf8f2;font-size:11px}.day .under{font-size:11px}.day .fixed{fill:#2a2520;stroke:#fbf8f2}";

type Row<'t> = (String, Vec<&'t Entry>);

/// Components in their order, then the stations that are used, and the fridge; and how many of them are components.
fn rows(timeline: &Timeline, tongue: Tongue) -> (Vec<Row<'_>>, usize) {
    let mut components: BTreeMap<(usize, usize), Row> = BTreeMap::new();
    for entry in &timeline.entries {
        let job = &timeline.jobs[entry.job];
        let title = || timeline.dishes[job.dish].formula.components[job.at.0].title.clone();
        components.entry((job.dish, job.at.0)).or_insert_with(|| (title(), Vec::new())).1.push(entry);
    }
    let stations = Station::ALL.into_iter().map(|one| {
        let uses = |job: &Job| if one == Station::Hands { job.is_work } else { job.stations.contains(&one) };
        (tongue.station(one).to_owned(), timeline.entries.iter().filter(|entry| uses(&timeline.jobs[entry.job])).collect())
    });
    let is_cold = |job: usize| timeline.stays.iter().any(|stay| stay.space == Space::Fridge && stay.from == job);
    let fridge = (tongue.day_fridge().to_owned(), timeline.entries.iter().filter(|entry| is_cold(entry.job)).collect());
    let stations = stations.chain([fridge]);
    let count = components.len();
    (components.into_values().chain(stations.filter(|(_, entries): &Row| !entries.is_empty())).collect(), count)
}

/// What every row is drawn from.
struct Drawn<'d> {
    timeline: &'d Timeline,
    tongue: Tongue,
    scale: &'d Scale,
    lead: Lead<'d>,
}

fn row(drawn: &Drawn, (name, entries, is_component): (&str, &[&Entry], bool), y: f64) -> Markup {
    let Drawn { timeline, tongue, scale, lead } = *drawn;
    html! {
        text x="16" y=(place(y + 17.0)) { (short(name, 26)) }
        line.rule x1=(LABEL) x2=(place(LABEL + scale.width())) y1=(place(y + ROW - 3.0)) y2=(place(y + ROW - 3.0)) {}
        @for entry in entries {
            @if let Some(leads) = lead(entry.job) {
                @let job = &timeline.jobs[entry.job];
                @let name = format!("{}, {}", verb_in(timeline, job, tongue), what_in(timeline, job, tongue));
                @let id = is_component.then(|| format!("bar-{}", entry.job));
                a href=(leads) id=[id] aria-label={ (time(&entry.begin)) " " (name) } data-job=(entry.job) data-name=(name) data-begin=(clock(entry.begin.timestamp())) data-moves[!entry.is_going] { (bar(drawn, entry, y)) }
            } @else { (bar(drawn, entry, y)) }
        }
    }
}

/// How a job is fixed.
fn fixes(timeline: &Timeline, job: usize) -> impl Iterator<Item = &Fix> {
    timeline.fixed.iter().filter(move |one| one.job == job && !one.has_happened).map(|one| &one.fix)
}

fn bar(Drawn { timeline, tongue, scale, .. }: &Drawn, entry: &Entry, y: f64) -> Markup {
    let job = &timeline.jobs[entry.job];
    let (from, to) = (scale.at(entry.begin.timestamp()), scale.at(entry.end.timestamp()));
    let width = (to - from).max(2.0);
    let is_hot = job.stations.iter().any(|station| station.is_hot());
    let (kind, words) = match (is_hot, job.is_work) {
        (true, _) => ("hot", "under"),
        (false, true) => ("work", "on"),
        (false, false) => ("wait", "under"),
    };
    let verb = verb_in(timeline, job, *tongue);
    let letters = (width / 6.4) as usize;
    html! {
        g {
            title { (time(&entry.begin)) "–" (time(&entry.end)) " " (verb) @for fix in fixes(timeline, entry.job) { ", " (tongue.fixed(fix.begins, time(&fix.when))) } }
            rect class=(kind) x=(place(from)) y=(place(y + 3.0)) width=(place(width)) height="20" {}
            @if fixes(timeline, entry.job).next().is_some() {
                path.fixed d=(format!("M{:.1} {:.1}h12l-6 9z", from - 6.0, y - 3.0)) {}
            }
            @if letters > verb.chars().count() {
                @if kind == "hot" {
                    rect.ground x=(place(from + 1.0)) y=(place(y + 6.0)) width=(format!("{:.1}", verb.chars().count() as f64 * 6.2 + 4.0)) height="14" {}
                }
                text class=(words) x=(place(from + 3.0)) y=(place(y + 17.0)) { (verb) }
            }
        }
    }
}

/// A place on the paper to a tenth.
fn place(at: f64) -> String {
    let told = format!("{at:.1}");
    told.strip_suffix(".0").map_or(told.clone(), str::to_owned)
}

fn short(text: &str, most: usize) -> String {
    if text.chars().count() <= most { text.to_owned() } else { format!("{}…", text.chars().take(most - 1).collect::<String>()) }
}

/// Minutes on the paper, with the hours left out in which hands rest.
struct Scale {
    /// Stretches that are drawn in full, and where each begins on the paper.
    busy: Vec<(Timestamp, Timestamp, f64)>,
}

impl Scale {
    fn of(timeline: &Timeline) -> Self {
        let is_handled = |entry: &&Entry| timeline.jobs[entry.job].is_work || entry.is_set_going;
        let handled = timeline.entries.iter().filter(is_handled);
        let work = handled.map(|entry| {
            let begin = entry.begin.timestamp();
            let end = if timeline.jobs[entry.job].is_work { entry.end.timestamp() } else { begin };
            (begin, end)
        });
        let served = timeline.served.timestamp();
        let mut merged: Vec<(Timestamp, Timestamp)> = Vec::new();
        for (begin, end) in work.chain([(served, served)]) {
            match merged.last_mut() {
                Some((_, until)) if begin.duration_since(*until).as_mins() <= PAUSE => *until = (*until).max(end),
                _ => merged.push((begin, end)),
            }
        }
        let mut x = LABEL;
        let mut busy = Vec::new();
        for (from, to) in merged {
            busy.push((from, to, x));
            x += minutes(from, to) * MINUTE + QUIET;
        }
        Self { busy }
    }

    fn width(&self) -> f64 {
        self.busy.last().map_or(0.0, |(from, to, x)| x + minutes(*from, *to) * MINUTE - LABEL)
    }

    /// Where a moment lies on the paper.
    fn at(&self, moment: Timestamp) -> f64 {
        let mut before = LABEL;
        let mut quiet_from: Option<Timestamp> = None;
        for (from, to, x) in &self.busy {
            if moment < *from {
                let share = quiet_from.map_or(0.0, |quiet| minutes(quiet, moment) / minutes(quiet, *from).max(1.0));
                return before + (x - before) * share;
            }
            if moment <= *to {
                return x + minutes(*from, moment) * MINUTE;
            }
            (before, quiet_from) = (x + minutes(*from, *to) * MINUTE, Some(*to));
        }
        before
    }

    /// Where moments lie, for a script that goes back from the paper to the clock: "x,minutes" in order.
    fn knots(&self) -> String {
        let ends = |(from, to, x): &(Timestamp, Timestamp, f64)| {
            format!("{x:.1},{} {:.1},{}", clock(*from), x + minutes(*from, *to) * MINUTE, clock(*to))
        };
        self.busy.iter().map(ends).collect::<Vec<_>>().join(" ")
    }

    /// The hours over the rows, and where hours are left out.
    fn ruled(&self, timeline: &Timeline, days: Days, bottom: f64) -> Markup {
        let zone = timeline.served.time_zone();
        let hours = self.busy.iter().flat_map(|(from, to, _)| {
            let first = from.as_second().div_euclid(3600);
            (first..=to.as_second().div_euclid(3600))
                .filter_map(|hour| Timestamp::from_second(hour * 3600).ok())
                .filter(|hour| hour >= from && hour <= to)
        });
        let marks: Vec<(f64, ZonedDateTime)> = hours.map(|hour| (self.at(hour), hour.to_zoned_datetime(zone.clone()))).collect();
        html! {
            @for (x, moment) in &marks {
                line.rule x1=(place(*x)) x2=(place(*x)) y1=(place(TOP - 8.0)) y2=(place(bottom)) {}
                text.small x=(place(x - 13.0)) y=(place(TOP - 12.0)) { (time(moment)) }
            }
            @for (from, _, x) in &self.busy {
                @let from = from.to_zoned_datetime(zone.clone());
                text.small x=(place(*x)) y=(place(TOP - 24.0)) { (if days == Days::Dated { from.strftime("%a %H:%M").to_string() } else { time(&from) }) }
            }
            @for pair in self.busy.windows(2) {
                @let x = pair[1].2 - QUIET / 2.0;
                line.gap x1=(place(x)) x2=(place(x)) y1=(place(TOP - 20.0)) y2=(place(bottom)) {}
            }
        }
    }
}

/// Minutes of the clock of all clocks: since 1970.
fn clock(moment: Timestamp) -> i64 {
    moment.as_second().div_euclid(60)
}

fn minutes(from: Timestamp, to: Timestamp) -> f64 {
    to.duration_since(from).as_secs_f64() / 60.0
}
