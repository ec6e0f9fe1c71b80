//! An answer for the terminal.

use crate::exchanged;
use crate::outlook::known;
use crate::sheet::RULED;
use crate::words::Units;
use crate::words::wrap;
use bench::target::{Amount, Figure, Solved};
use comfy_table::{CellAlignment, ContentArrangement, Table};
use formula::Origin;
use quantity::{Between, TimeSpan, print};

/// An answer as text of that width.
#[must_use]
pub fn text(solved: &Solved, units: Units, width: usize) -> String {
    let title = format!("{}: {}", solved.title, solved.target);
    let mut out = format!("{title}\n{}\n", "═".repeat(title.chars().count()));
    if !solved.figures.is_empty() {
        out.push_str(&format!("\n{}\n", figures(&solved.figures, units, width)));
    }
    let unmet = solved.unmet.iter().map(|one| {
        let (wanted, reached) = (amount(&one.wanted, units), amount(&one.reached, units));
        format!("{} {wanted}: {reached} is the nearest; {}", one.aim, one.why)
    });
    list(&mut out, "What cannot be met", &unmet.collect::<Vec<_>>(), width);
    list(&mut out, "To mind", &solved.minded, width);
    list(&mut out, "Where the figures come from", &equations(solved), width);
    match &solved.changed {
        Some(changed) => out.push_str(&format!("\nThe formula then\n\n{}", exchanged::changes(changed, width))),
        None => out.push_str(&wrap(&format!("\nReckoned by: {}.", solved.grounds), width)),
    }
    out
}

/// What the figures rest on, those of the changed formula too, each once.
pub(super) fn equations(solved: &Solved) -> Vec<String> {
    let own = solved.figures.iter().map(|figure| &figure.known.origin);
    let changed = solved.changed.iter().flat_map(|changed| &changed.rests_on);
    let mut told: Vec<String> = Vec::new();
    for words in own.chain(changed).filter_map(known::ground) {
        if !told.contains(&words) {
            told.push(words);
        }
    }
    told
}

fn list(out: &mut String, title: &str, items: &[String], width: usize) {
    if items.is_empty() {
        return;
    }
    out.push_str(&format!("\n{title}\n"));
    for item in items {
        out.push_str(&wrap(&format!("- {item}"), width));
    }
}

fn figures(figures: &[Figure], units: Units, width: usize) -> String {
    let mut table = Table::new();
    table.load_style(RULED).set_content_arrangement(ContentArrangement::Dynamic).set_width(width.min(u16::MAX.into()) as u16);
    let has_bands = figures.iter().any(|figure| figure.known.band.is_some());
    let header = ["", "", "from … to", "grounds"];
    let shown = |row: [String; 4]| {
        row.into_iter().enumerate().filter(|(n, _)| has_bands || *n != 2).map(|(_, cell)| cell).collect::<Vec<_>>()
    };
    table.set_header(shown(header.map(str::to_owned)));
    for figure in figures {
        let band = figure.known.band.as_ref().map(|(low, high)| format!("{} … {}", amount(low, units), amount(high, units)));
        let value = amount(&figure.known.value, units);
        table.add_row(shown([figure.what.clone(), value, band.unwrap_or_default(), grounds(&figure.known.origin)]));
    }
    for column in if has_bands { 1..3 } else { 1..2 } {
        if let Some(column) = table.column_mut(column) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
    table.trim_fmt()
}

pub(super) fn grounds(origin: &Origin) -> String {
    match origin {
        Origin::Stated(_) => "as the formula states".to_owned(),
        Origin::Measured(by) => by.clone(),
        Origin::Asked => "as asked".to_owned(),
        Origin::Computed { by, .. } => (*by).to_owned(),
        Origin::Assumed { source } => format!("assumed: {source}"),
    }
}

pub(super) fn amount(amount: &Amount, units: Units) -> String {
    match *amount {
        Amount::Mass(mass) if mass.as_grams() >= 10.0 => format!("{}\u{a0}g", print::number(mass.as_grams(), 1)),
        Amount::Mass(mass) => format!("{}\u{a0}g", print::number(mass.as_grams(), 3)),
        Amount::Share(share) => print::percent(share, if share.as_percent().abs() < 1.0 { 3 } else { 2 }),
        Amount::Temperature(warm) => {
            units.temperature(Between::just(quantity::Temperature::celsius((warm.as_celsius() * 2.0).round() / 2.0)))
        }
        Amount::Time(time) => print::time(print::rounded_time(Between::just(time))),
        Amount::Clock(clock) => on_the_clock(clock),
        Amount::Volume(volume) => print::volume(volume),
        Amount::Count(count) => print::count(count),
        Amount::Factor(factor) => print::number(factor, 3),
        Amount::Viscosity(thick) => format!("{}\u{a0}Pa·s", print::number(thick.as_pascal_seconds(), 3)),
        Amount::Price(ref money) => format!("{}\u{a0}{}", money.amount.round_dp(3), money.currency),
        Amount::Warming(by) => format!("{}\u{a0}K", print::number(by.as_kelvins(), 1)),
    }
}

/// A time of the day to five minutes, with the day where it is another one.
pub fn on_the_clock(clock: TimeSpan) -> String {
    let minutes = (clock.as_minutes() / 5.0).round() * 5.0;
    let (day, of_day) = ((minutes / 1440.0).floor(), minutes.rem_euclid(1440.0));
    let time = format!("{:02}:{:02}", (of_day / 60.0).floor(), of_day % 60.0);
    match day as i64 {
        0 => time,
        -1 => format!("{time} the day before"),
        1 => format!("{time} the day after"),
        days if days < 0 => format!("{time}, {} days before", -days),
        days => format!("{time}, {days} days after"),
    }
}

#[cfg(test)]
mod tests {
    use super::on_the_clock;
    use quantity::TimeSpan;

    #[test]
    fn times_of_the_day() {
        for (hours, told) in [
            (7.5, "07:30"),
            (-2.25, "21:45 the day before"),
            (25.0, "01:00 the day after"),
            (-30.0, "18:00, 2 days before"),
            (23.99, "00:00 the day after"),
        ] {
            assert_eq!(on_the_clock(TimeSpan::hours(hours)), told);
        }
    }
}
