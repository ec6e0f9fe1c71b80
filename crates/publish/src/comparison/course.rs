//! Rises laid over each other: a row of bars a formula, all on one scale of time and of height.

use crate::outlook::chart::bars;
use bench::compare::{Courses, Part};
use bench::forecast::Point;
use quantity::{Between, TimeSpan, print};

/// The most bars of a row.
const MOST: usize = 48;

/// The rises of a part, each with what its rows reach.
#[must_use]
pub fn courses(columns: &[String], part: &Part, width: usize) -> String {
    part.courses.iter().map(|one| laid_over(columns, one, width)).collect()
}

fn laid_over(columns: &[String], courses: &Courses, width: usize) -> String {
    let all = || courses.of.iter().flatten();
    let longest = all().map(|point| point.time.as_hours()).fold(0.0_f64, f64::max);
    let highest = all().map(|point| point.risen).fold(1.0_f64, f64::max);
    let label = columns.iter().map(|name| name.chars().count()).max().unwrap_or(0);
    let room = width.saturating_sub(label + 32).clamp(8, MOST);
    if longest <= 0.0 {
        return String::new();
    }
    let mut out = format!("\nHow the {} rises, on one scale\n", courses.whose);
    for (name, course) in columns.iter().zip(&courses.of) {
        let Some(last) = course.last() else { continue };
        let count = ((last.time.as_hours() / longest * room as f64).round() as usize).max(1);
        let moments = (0..count).map(|n| risen_at(course, longest * (n as f64 + 0.5) / room as f64));
        let top = course.iter().map(|point| point.risen).fold(1.0_f64, f64::max);
        let time = print::time(print::rounded_time(Between::just(TimeSpan::hours(last.time.as_hours()))));
        let row = bars(moments, 1.0, highest);
        let (times, gap) = (print::number(top, 1), " ".repeat(label - name.chars().count()));
        out.push_str(&format!("  {name}{gap}  {row} {times} times in {time}\n"));
    }
    out
}

/// How far it has risen after so many hours, between the points of its course.
fn risen_at(course: &[Point], hours: f64) -> f64 {
    let after = course.iter().position(|point| point.time.as_hours() >= hours);
    match after {
        Some(0) => course[0].risen,
        Some(next) => {
            let (a, b) = (course[next - 1], course[next]);
            let span = b.time.as_hours() - a.time.as_hours();
            let part = if span > 0.0 { (hours - a.time.as_hours()) / span } else { 1.0 };
            a.risen + (b.risen - a.risen) * part
        }
        None => course.last().map_or(1.0, |point| point.risen),
    }
}
