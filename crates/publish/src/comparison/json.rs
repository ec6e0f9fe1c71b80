//! A comparison for other programs: percent of flour, gram, hours, degrees Celsius, unrounded.

use bench::compare::{Comparison, Courses, Part, Row};
use bench::forecast::Point;
use serde_json::{Value, json};

/// The comparison as JSON.
#[must_use]
pub fn json(comparison: &Comparison) -> Value {
    json!({ "formulas": comparison.columns, "parts": comparison.parts.iter().map(part).collect::<Vec<_>>() })
}

fn part(part: &Part) -> Value {
    json!({ "component": part.component, "title": part.title, "rows": part.rows.iter().map(row).collect::<Vec<_>>(), "courses": part.courses.iter().map(courses).collect::<Vec<_>>() })
}

fn courses(courses: &Courses) -> Value {
    let point = |point: &Point| json!({ "hours": point.time.as_hours(), "risen": point.risen, "celsius": point.temperature.as_celsius() });
    let of: Vec<Vec<Value>> = courses.of.iter().map(|course| course.iter().map(point).collect()).collect();
    json!({ "of": courses.whose, "courses": of })
}

fn row(row: &Row) -> Value {
    let cells: Vec<Value> = row
        .cells
        .iter()
        .map(|cell| cell.as_ref().map_or(Value::Null, |cell| {
            json!({ "value": cell.value, "band": cell.band.map(|(from, to)| [from, to]), "origin": crate::outlook::known::origin(&cell.origin) })
        }))
        .collect();
    json!({ "title": row.title, "unit": row.unit.symbol(), "figures": cells, "apart": row.apart, "difference": row.difference.word() })
}
