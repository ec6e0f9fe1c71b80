//! What a label says, in pieces that every form of it uses.

use crate::tongue::Tongue;
use bench::label::{DateForm, Entry, FactLine, LITTLE, Label, Law, Run, Serving, Shown};
use quantity::{Count, Fraction, Mass, TimeSpan, print};

/// What stands on every sheet.
pub const DRAFT: &str = "Draft, not advice: check it with your authority before anything is sold.";

/// The language that a label speaks: that of the law it follows.
pub fn tongue(label: &Label) -> Tongue {
    if label.is_german { Tongue::of("de") } else { Tongue::default() }
}

/// The heading of a label's sheet.
pub fn heading(label: &Label) -> String {
    format!("Draft label for {}", label.law.place())
}

/// The list of ingredients as runs of text, its heading first.
pub fn ingredients(label: &Label) -> Vec<Run> {
    let tongue = tongue(label);
    let mut runs = vec![plain(&format!("{} ", tongue.label_ingredients()))];
    let (much, little): (Vec<&Entry>, Vec<&Entry>) =
        label.list.entries.iter().partition(|entry| label.law != Law::Us || entry.share > LITTLE);
    run_through(&much, &mut runs, tongue);
    if !little.is_empty() {
        runs.push(plain(if much.is_empty() { "contains 2 % or less of " } else { "; contains 2 % or less of " }));
        run_through(&little, &mut runs, tongue);
    }
    runs.push(plain("."));
    joined(runs)
}

fn run_through(entries: &[&Entry], runs: &mut Vec<Run>, tongue: Tongue) {
    for (at, entry) in entries.iter().enumerate() {
        if at > 0 {
            runs.push(plain(", "));
        }
        runs.extend(entry.runs.iter().cloned());
        if entry.is_stated {
            runs.push(plain(&format!(" ({})", stated(entry.share, tongue))));
        }
        if !entry.parts.entries.is_empty() {
            runs.push(plain(" ("));
            run_through(&entry.parts.entries.iter().collect::<Vec<_>>(), runs, tongue);
            runs.push(plain(")"));
        }
    }
}

fn plain(words: &str) -> Run {
    Run { words: words.to_owned(), is_strong: false }
}

/// Neighbours of one kind as one run.
fn joined(runs: Vec<Run>) -> Vec<Run> {
    let mut all: Vec<Run> = Vec::new();
    for run in runs {
        match all.last_mut() {
            Some(last) if last.is_strong == run.is_strong => last.words.push_str(&run.words),
            _ => all.push(run),
        }
    }
    all
}

/// A stated quantity: whole percent from five on, tenths below; above the whole as gram in 100 g.
pub fn stated(share: Fraction, tongue: Tongue) -> String {
    let print = tongue.print;
    if share > Fraction::WHOLE {
        return format!("{}\u{a0}g {}", print.number(share.as_percent(), 0), tongue.label_per_100_g());
    }
    if share < Fraction::percent(0.05) {
        return format!("<{}\u{a0}%", print.number(0.1, 1));
    }
    print.percent(share, usize::from(share < Fraction::percent(5.0)))
}

/// Quantities of what stands in several places of the list, which only the sum tells.
pub fn sums(label: &Label) -> Option<String> {
    let several = label.quantities.iter().filter(|one| one.places > 1 && label.law.is_european());
    let told: Vec<String> = several.map(|one| format!("{} {}", one.title, stated(one.share, tongue(label)))).collect();
    (!told.is_empty()).then(|| format!("{} {}.", tongue(label).label_in_all(), told.join(", ")))
}

/// The line of allergens that American law allows at the end of the list.
pub fn contains(label: &Label) -> Option<String> {
    if label.law != Law::Us || label.allergens.is_empty() {
        return None;
    }
    let named = label.allergens.iter().map(|one| match one.american.as_deref() {
        Some("tree nuts") => one.title.clone(),
        Some(name) => name.to_owned(),
        None => one.title.clone(),
    });
    Some(format!("Contains: {}.", named.collect::<Vec<_>>().join(", ")))
}

/// What a pack holds, as it is written.
pub fn net(label: &Label) -> String {
    let weight = match label.law {
        Law::Us => format!("Net Wt {} ({})", print::ounces(label.pack.net), print::large_mass(whole(label.pack.net))),
        Law::Eu | Law::Uk => tongue(label).print.large_mass(whole(label.pack.net)),
    };
    match label.pack.pieces {
        Some((count, _)) if count > Count::pieces(1.0) => {
            format!("{weight}, {}\u{a0}{}", tongue(label).print.count(count), pieces(label, count))
        }
        _ => weight,
    }
}

/// The word for so many pieces.
pub fn pieces(label: &Label, count: Count) -> &str {
    if count == Count::pieces(1.0) { &label.pack.piece.0 } else { &label.pack.piece.1 }
}

/// A weight to the whole gram, downwards: a pack may not promise more than is in it.
pub fn whole(mass: Mass) -> Mass {
    Mass::grams((mass.as_grams() + 1e-6).floor())
}

/// The line for the date.
pub fn date(label: &Label) -> Option<String> {
    let (keeps, form, use_by) = label.keeps?;
    let tongue = tongue(label);
    let words = match form {
        _ if use_by => tongue.label_use_by(),
        DateForm::DayAndMonth => tongue.label_best_before(),
        DateForm::MonthAndYear | DateForm::Year => tongue.label_best_before_end(),
    };
    let form = match form {
        DateForm::DayAndMonth => tongue.label_day_and_month(),
        DateForm::MonthAndYear => tongue.label_month_and_year(),
        DateForm::Year => tongue.label_year(),
    };
    Some(format!("{words}: ____________ ({form}; {})", tongue.label_from_packing(days(keeps, tongue))))
}

fn days(keeps: TimeSpan, tongue: Tongue) -> String {
    let days = (keeps.as_hours() / 24.0 + 1e-9).floor();
    match days {
        days if days < 1.0 => format!("{}\u{a0}h", tongue.print.number(keeps.as_hours(), 0)),
        days => tongue.label_days(days, tongue.print.number(days, 0)),
    }
}

/// A figure with its unit; a gap is a dash, told of elsewhere.
pub fn figure(shown: &Shown, unit: &str, tongue: Tongue) -> String {
    let unit = if unit.is_empty() { String::new() } else { format!("\u{a0}{unit}") };
    match shown.printed() {
        Some(printed) => format!("{}{unit}", printed.to_string().replace('.', &tongue.print.point.to_string())),
        None => tongue.label_gap().to_owned(),
    }
}

/// “About 7 servings per container”.
pub fn servings(serving: &Serving) -> String {
    let about = if serving.in_pack.1 { "about " } else { "" };
    let word = if serving.in_pack.0 == 1.0 { "serving" } else { "servings" };
    format!("{about}{} {word} per container", print::number(serving.in_pack.0, 1))
}

/// What a line of the declaration is called.
pub fn nutrient(title: &'static str, tongue: Tongue) -> &'static str {
    match title {
        "energy" => tongue.label_energy(),
        "fat" => tongue.label_fat(),
        "of which saturates" => tongue.label_saturates(),
        "carbohydrate" => tongue.label_carbohydrate(),
        "of which sugars" => tongue.label_sugars(),
        "fibre" => tongue.label_fibre(),
        "protein" => tongue.label_protein(),
        "salt" => tongue.label_salt(),
        other => other,
    }
}

/// The sentence that must stand by percentages of daily values.
pub const DAILY: &str = "* The % Daily Value (DV) tells you how much a nutrient in a serving of food contributes to a daily diet. \
                         2,000 calories a day is used for general nutrition advice.";

/// A line of the American facts: what of it is set off, and the rest.
pub fn fact(line: &FactLine) -> (&'static str, String) {
    let amount = match line.amount.printed().map(|printed| printed.to_string()) {
        Some(text) if text.starts_with('<') => format!("less than {}{}", text.trim_start_matches('<'), line.unit),
        Some(text) => format!("{text}{}", line.unit),
        None => "gap".to_owned(),
    };
    match (line.title, line.depth) {
        ("Added Sugars", _) => ("", format!("Includes {amount} Added Sugars")),
        (title, 0) if !line.is_trace => (title, format!(" {amount}")),
        (title, _) => ("", format!("{title} {amount}")),
    }
}

/// How large the letters must be.
pub fn letters(label: &Label) -> String {
    match label.law {
        Law::Eu | Law::Uk => format!(
            "Letters at least 1.2 mm high by the x, 0.9 mm where the largest face is under 80 cm²; figures of the net quantity at \
             least {} mm high; no nutrition declaration is needed where the largest face is under 25 cm².",
            print::number(label.pack.figures_high, 0)
        ),
        Law::Us => "Letters at least 1/16 inch (1.6 mm) high by the o; the net quantity by the size of the face (21 CFR 101.7, \
                    from memory)."
            .to_owned(),
    }
}
