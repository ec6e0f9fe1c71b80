//! A draft of a label for the terminal: what is set off by type stands in capitals.

use super::words::{self, DRAFT};
use crate::sheet::{right_align, ruled};
use crate::tongue::Tongue;
use crate::words::wrap;
use bench::label::{Declaration, Facts, Label};
use quantity::print;

/// A label's draft, lines broken at the width.
#[must_use]
pub fn text(label: &Label, width: usize) -> String {
    let heading = format!("{} — {}", label.name, crate::words::small(&words::heading(label)));
    let mut out = format!("{heading}\n{}\n{DRAFT}\n\n", "═".repeat(heading.chars().count()));
    let mut say = |line: &str| out.push_str(&wrap(line, width));
    let runs = words::ingredients(label);
    let list: String = runs.iter().map(|run| if run.is_strong { run.words.to_uppercase() } else { run.words.clone() }).collect();
    say(&label.name);
    say(&list);
    words::contains(label).iter().chain(&words::sums(label)).for_each(|line| say(line));
    say(&format!("Net quantity: {} (reckoned; the balance decides).", words::net(label)));
    words::date(label).iter().for_each(|line| say(line));
    label.storage.iter().for_each(|storage| say(&format!("Storage: {storage}")));
    label.sold_by.iter().for_each(|by| say(by));
    if let Some(declaration) = &label.declaration {
        out.push_str(&format!("\n{}", declared(declaration, words::tongue(label), width)));
    }
    if let Some(facts) = &label.facts {
        out.push_str(&format!("\nNutrition Facts\n{}", stated(facts, width)));
    }
    chapter(&mut out, "What is missing", &label.gaps, width);
    chapter(&mut out, "Still to be decided", &label.open, width);
    let spared: Vec<String> = label.law.spared().iter().map(|line| line.trim_end_matches('.').to_owned()).collect();
    chapter(&mut out, "What small sellers may be spared; their authority decides", &spared, width);
    let rules: Vec<String> =
        label.law.rules().iter().map(|rule| format!("{}: {} ({})", rule.decides, rule.name, rule.date)).collect();
    chapter(&mut out, "Rules and their dates", &rules, width);
    out
}

fn chapter(out: &mut String, title: &str, lines: &[String], width: usize) {
    if lines.is_empty() {
        return;
    }
    out.push_str(&format!("\n{title}\n"));
    lines.iter().for_each(|line| out.push_str(&wrap(&format!("• {}.", print::capital(line)), width)));
}

fn declared(declaration: &Declaration, tongue: Tongue, width: usize) -> String {
    let mut table = ruled(width);
    let mut head = vec![tongue.label_nutrition().to_owned(), tongue.label_per_100_g().to_owned()];
    if let Some(portion) = declaration.portion {
        head.extend([
            tongue.label_per_portion(tongue.print.large_mass(words::whole(portion))),
            tongue.label_of_intake().to_owned(),
        ]);
    }
    table.set_header(head);
    for line in &declaration.lines {
        let indent = if line.is_part { "  " } else { "" };
        let title = if line.unit == "kcal" { "" } else { words::nutrient(line.title, tongue) };
        let mut cells = vec![format!("{indent}{title}"), words::figure(&line.in_100_g, line.unit, tongue)];
        cells.extend(line.in_portion.as_ref().map(|shown| words::figure(shown, line.unit, tongue)));
        if line.in_portion.is_some() {
            cells.push(line.intake.map(|share| tongue.print.percent(share, 0)).unwrap_or_default());
        }
        table.add_row(cells);
    }
    let columns = table.column_count();
    right_align(&mut table, 1..columns);
    let intake = if declaration.portion.is_some() { format!("* {}\n", tongue.label_intake()) } else { String::new() };
    format!("{}\n{intake}", table.trim_fmt())
}

fn stated(facts: &Facts, width: usize) -> String {
    let serving = &facts.serving;
    let mut out = format!(
        "{}; serving size {} ({}g)\n  (customary amount: {})\n",
        words::servings(serving),
        serving.measure,
        serving.gram,
        serving.customary
    );
    let mut table = ruled(width);
    table.set_header(["", "a serving", "% Daily Value"]);
    table.add_row(["Calories".to_owned(), words::figure(&facts.calories, "", Tongue::default()), String::new()]);
    for line in &facts.lines {
        let daily = line.daily.map(|daily| format!("{daily}\u{a0}%")).unwrap_or_default();
        table.add_row([
            format!("{}{}", "  ".repeat(line.depth), line.title),
            words::figure(&line.amount, line.unit, Tongue::default()),
            daily,
        ]);
    }
    let columns = table.column_count();
    right_align(&mut table, 1..columns);
    out.push_str(&format!("{}\n", table.trim_fmt()));
    out
}
