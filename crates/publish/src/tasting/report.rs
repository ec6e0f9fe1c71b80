//! The report of a tasting in words.

use super::table::tables;
use super::{Report, Table, method_name, told};
use crate::sheet::{right_align, ruled};
use crate::words::wrap;

/// How the tasting was held, in sentences: method, seats, what each sample was.
pub fn held(report: &Report) -> Vec<String> {
    let (tasting, findings) = (report.tasting, report.findings);
    let seats = if findings.seats == 1 { "seat" } else { "seats" };
    let mut people = format!("{} {seats}, {} of which answered everything", findings.seats, findings.whole);
    if findings.in_part > 0 {
        let are = if findings.in_part == 1 { "is" } else { "are" };
        people.push_str(&format!("; {} answered in part and {are} left out", findings.in_part));
    }
    let mut words = vec![format!(
        "Held blind as a {}, closed on {}: {people}. Asked was: “{}”",
        method_name(tasting.method),
        report.closed,
        tasting.question
    )];
    let sample = |(sample, made): (&formula::read::Sample, &String)| format!("“{}” was made by {made}", sample.title);
    let samples: Vec<String> = tasting.samples.iter().zip(report.made).map(sample).collect();
    words.extend((!samples.is_empty()).then(|| format!("{}.", samples.join("; "))));
    words
}

/// The report, lines broken at the width.
#[must_use]
pub fn text(report: &Report, width: usize) -> String {
    let title = &report.tasting.title;
    let mut out = format!("{title}\n{}\n\n", "═".repeat(title.chars().count()));
    let told = told(report);
    out.push_str(&wrap(&told.conclusion, width));
    out.push('\n');
    for words in held(report) {
        out.push_str(&wrap(&words, width));
    }
    for table in tables(report) {
        out.push_str(&format!("\n{}\n{}\n", table.caption, drawn(&table, width)));
    }
    for (head, lines) in [("Grounds", &told.grounds), ("Limits", &told.limits)] {
        if !lines.is_empty() {
            out.push_str(&format!("\n{head}\n"));
            lines.iter().for_each(|line| out.push_str(&wrap(&format!("- {line}"), width)));
        }
    }
    out
}

fn drawn(table: &Table, width: usize) -> String {
    let mut drawn = ruled(width);
    drawn.set_header(table.head.clone());
    for row in &table.rows {
        drawn.add_row(row.clone());
    }
    right_align(&mut drawn, 1..table.head.len());
    drawn.trim_fmt()
}
