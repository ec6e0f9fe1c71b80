//! What proof-reading found, drawn for people and listed for other programs.

use crate::terminal::{self, Texts};
use formula::{BookText, Diagnostic, Severity};
use serde_json::{Value, json};

/// All faults drawn one after the other.
pub fn text(found: &[Diagnostic], text: &BookText) -> String {
    let texts = Texts::of(text);
    found.iter().map(|diagnostic| terminal::draw(diagnostic, &texts) + "\n\n").collect()
}

/// "2 errors and 1 advice in 5 formulas".
pub fn summary(found: &[Diagnostic], formulas: usize) -> String {
    let count = |severity| found.iter().filter(|d| d.severity == severity).count();
    let number = |count: usize, one: &str, more: &str| format!("{count} {}", if count == 1 { one } else { more });
    let checked = number(formulas, "formula", "formulas");
    let kinds = [
        (Severity::Error, "error", "errors"),
        (Severity::Warning, "warning", "warnings"),
        (Severity::Advice, "piece of advice", "pieces of advice"),
    ];
    let told: Vec<String> = kinds
        .into_iter()
        .map(|(severity, one, more)| (count(severity), one, more))
        .filter(|(n, ..)| *n > 0)
        .map(|(n, one, more)| number(n, one, more))
        .collect();
    match &told[..] {
        [] => format!("{checked} proof-read: nothing amiss"),
        told => format!("{checked} proof-read: {}", told.join(", ")),
    }
}

/// The faults for other programs; lines and columns count from one, columns in letters.
pub fn json(found: &[Diagnostic], text: &BookText) -> Value {
    let texts = Texts::of(text);
    let items: Vec<Value> = found.iter().map(|diagnostic| one_as_json(diagnostic, &texts)).collect();
    json!({ "diagnostics": items, "faults": found.iter().filter(|d| d.is_fault()).count() })
}

fn one_as_json(diagnostic: &Diagnostic, texts: &Texts) -> Value {
    let place = |place: &formula::Place| {
        let text = texts.get(&place.file).unwrap_or_default();
        let (line, column) = formula::source::line_and_column(text, place.span.start);
        let (end_line, end_column) = formula::source::line_and_column(text, place.span.end);
        json!({ "file": &*place.file, "line": line, "column": column, "end-line": end_line, "end-column": end_column })
    };
    let fix = diagnostic.fix.as_ref().map(|fix| {
        let edits: Vec<Value> = fix.edits.iter().map(|edit| json!({ "place": place(&edit.place), "text": edit.text })).collect();
        json!({ "title": fix.title, "edits": edits })
    });
    json!({
        "code": diagnostic.code,
        "severity": diagnostic.severity.name(),
        "place": place(&diagnostic.place),
        "message": diagnostic.message,
        "hint": diagnostic.hint,
        "fix": fix,
    })
}
