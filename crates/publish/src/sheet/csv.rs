//! The sheet as RFC 4180 rows for a spreadsheet: one row a line of a stage.

use super::{LineSheet, Sheet};

/// Sheets as comma-separated rows under one heading.
#[must_use]
pub fn csv(sheets: &[Sheet]) -> String {
    let mut writer = ::csv::Writer::from_writer(Vec::new());
    let heading = [
        "formula", "component", "stage", "kind", "ingredient", "percent of stage flour", "grams", "scale shows grams",
        "relative uncertainty percent", "note",
    ];
    // Writing into memory does not fail.
    let _ = writer.write_record(heading);
    for sheet in sheets {
        for component in &sheet.components {
            for stage in &component.stages {
                for line in &stage.lines {
                    let _ = writer.write_record(row([&sheet.title, &component.title, &stage.title], stage.kind.word(), line));
                }
            }
        }
    }
    let bytes = writer.into_inner().unwrap_or_default();
    String::from_utf8(bytes).unwrap_or_default()
}

fn row(titles: [&String; 3], kind: &str, line: &LineSheet) -> Vec<String> {
    let weighable = line.weighable.as_ref();
    let number = |value: Option<f64>| value.map(|v| format!("{v:.4}")).unwrap_or_default();
    let mut cells: Vec<String> = titles.iter().map(|title| harmless(title)).collect();
    cells.extend([
        kind.to_owned(),
        harmless(&line.title),
        number(line.percent.map(|p| p.as_percent())),
        number(Some(line.mass.as_grams())),
        number(weighable.map(|one| one.shown.as_grams())),
        number(weighable.map(|one| one.uncertainty.as_percent())),
        harmless(line.note.as_deref().unwrap_or_default()),
    ]);
    cells
}

/// A text that no spreadsheet takes for a command: those that begin like one get an apostrophe before them.
fn harmless(text: &str) -> String {
    if text.starts_with(['=', '+', '-', '@', '\t', '\r']) { format!("'{text}") } else { text.to_owned() }
}
