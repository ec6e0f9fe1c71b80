//! What a label lacks, and what its author or the authority must still decide.

use super::figure::Shown;
use super::finished::{Food, What};
use super::law::Law;
use super::list::List;
use super::{DeclarationLine, Label, Part};
use formula::Formula;
use formula::ingredient::Figure;
use quantity::{Mass, print};

/// What is missing, each as a sentence without its stop.
pub fn gaps(label: &Label, food: &Food, is_kind_chosen: bool) -> Vec<String> {
    let mut gaps = Vec::new();
    for title in bought_mixed(food) {
        gaps.push(format!(
            "the pack of {title} lists what it is made of: state that as “declared” in a row of your own, its allergens too"
        ));
    }
    if let Some(declaration) = &label.declaration {
        for line in &declaration.lines {
            gaps.extend(untold(named(line), "100 g", line.unit, &line.in_100_g));
        }
    }
    if let Some(facts) = &label.facts {
        gaps.extend(untold("calories", "a serving", "", &facts.calories));
        for line in &facts.lines {
            gaps.extend(untold(&small(line.title), "a serving", line.unit, &line.amount));
        }
    }
    if gaps.iter().any(|gap| gap.contains("no source tells")) {
        gaps.push(
            "figures of a pack fill such gaps: a row of your own with “like” and what the pack states “per-100-g”".to_owned(),
        );
    }
    gaps.extend(strength(label, food));
    if label.law == Law::Us && !is_kind_chosen {
        let kinds = science::nutrition::serving::EATEN_AS.join(", ");
        gaps.push(format!("nutrition facts need a kind of food: state “eaten-as” under [label] or --eaten-as, one of {kinds}"));
    }
    if label.sold_by.is_none() {
        gaps.push("who answers for it: state name and address as “sold-by” in book.toml".to_owned());
    }
    if label.storage.is_none() {
        gaps.push("how it is kept: state “storage”".to_owned());
    }
    if label.keeps.is_none() {
        gaps.push(
            "how long it keeps once packed: state “keeps” under [label] when trials or a laboratory have shown it".to_owned(),
        );
    }
    gaps
}

/// From so much alcohol in 100 g on a drink may have to state its strength: 1.2 % vol of ethanol with 0.789 g to the
/// millilitre, in a drink as light as water.
const SLIGHT: Mass = Mass::grams(0.94);

/// What is nearly all water, sugar and alcohol may be a drink.
const LIQUID: f64 = 0.9;

/// A drink states its strength by what was measured: heat drives alcohol off and ferments make it.
fn strength(label: &Label, food: &Food) -> Option<String> {
    let alcohol = label.alcohol.as_ref().filter(|alcohol| alcohol.at_most > SLIGHT)?;
    let gram = |figure| super::contents::held(food, figure).told;
    let fluid = gram(Figure::Water) + gram(Figure::Sugars) + gram(Figure::Alcohol) - food.steam.as_grams();
    let law = match label.law {
        Law::Eu | Law::Uk => "a drink over 1.2 % vol states it (Regulation (EU) No 1169/2011, Art. 9(1)(k) and Annex XII)",
        Law::Us => "drinks with alcohol fall under rules of their own (27 CFR, from memory)",
    };
    (fluid >= LIQUID * food.weighs().as_grams()).then(|| {
        format!(
            "the strength in % vol, should it be sold as a drink, is left open: {law}; at most {} of alcohol in 100 g is reckoned, \
             heat drives it off and ferments make it: have it measured",
            print::mass(alcohol.at_most)
        )
    })
}

/// A title within a sentence.
fn small(title: &str) -> String {
    let mut letters = title.chars();
    letters.next().map(|first| first.to_lowercase().chain(letters).collect()).unwrap_or_default()
}

/// The name of a line that says which it is out of its place.
fn named(line: &DeclarationLine) -> &'static str {
    match (line.title, line.unit) {
        ("energy", "kJ") => "energy in kJ",
        ("energy", _) => "energy in kcal",
        (title, _) => title.trim_start_matches("of which "),
    }
}

/// A figure that is printed though a little is untold.
fn lacking(title: &str, of: &str, unit: &str, shown: &Shown) -> Option<String> {
    let Shown::Nearly { lacks, untold, .. } = shown else { return None };
    let lacks = print::number(*lacks, if *lacks < 10.0 { 2 } else { 0 });
    Some(format!("{title} as printed lacks at most {lacks}\u{a0}{unit} in {of}, which no source tells of {}", untold.join(", ")))
}

/// A figure that is not printed, with its bounds and for which ingredients no source tells it.
fn untold(title: &str, of: &str, unit: &str, shown: &Shown) -> Option<String> {
    let Shown::Gap { least, most, untold } = shown else { return None };
    let unit = if unit.is_empty() { String::new() } else { format!("\u{a0}{unit}") };
    let figure = |value: f64| print::number(value, if value < 100.0 { 1 } else { 0 });
    let bounds = match most {
        Some(most) => format!("it lies between {} and {}{unit} in {of}", figure(*least), figure(*most)),
        None => format!("it is at least {}{unit} in {of}", figure(*least)),
    };
    Some(format!("{title} is left open: no source tells it for {}; {bounds}", untold.join(", ")))
}

/// What is bought mixed of several things, and is listed by its name alone.
fn bought_mixed(food: &Food) -> Vec<String> {
    let mut titles: Vec<String> = food
        .singles()
        .into_iter()
        .filter(|(one, _)| one.compound && one.declared.is_none())
        .map(|(one, _)| one.called.clone())
        .collect();
    titles.sort_unstable();
    titles.dedup();
    titles
}

/// What must still be decided, each as a sentence without its stop.
pub fn open(label: &Label, food: &Food, formula: &Formula) -> Vec<String> {
    let mut open = Vec::new();
    if label.law == Law::Uk && any(food, |one| one.counts_as_flour && one.carries(&["wheat"])) {
        open.push(
            "most wheat flour milled in the UK, wholemeal apart, has calcium carbonate, iron, niacin and thiamin added, which are \
             then listed in brackets after it: read the bag and state “declared”"
                .to_owned(),
        );
    }
    if label.law == Law::Us && any(food, |one| one.counts_as_flour && one.carries(&["wheat"])) {
        open.push(
            "enriched flour lists what enriches it in brackets, malted barley flour too: read the bag and state “declared”"
                .to_owned(),
        );
    }
    if any(food, |one| one.carries(&["sulphites"])) {
        open.push(
            "sulphites are named from more than 10 mg/kg in the food as eaten: ask the maker of what brings them".to_owned(),
        );
    }
    if let Some(alcohol) = &label.alcohol {
        open.push(format!(
            "{} bring alcohol, at most {} in 100 g if heat drove none of it off; a solid food lists the ingredient, a drink over \
             1.2 % vol states its strength; wine and spirits are volatile and take their place by what is left of them",
            alcohol.from.join(", "),
            print::mass(alcohol.at_most)
        ));
    }
    if let Some(declaration) = &label.declaration {
        open.extend(declaration.lines.iter().filter_map(|line| lacking(named(line), "100 g", line.unit, &line.in_100_g)));
    }
    if let Some(facts) = &label.facts {
        open.extend(lacking("calories", "a serving", "kcal", &facts.calories));
        open.extend(facts.lines.iter().filter_map(|line| lacking(&small(line.title), "a serving", line.unit, &line.amount)));
    }
    let infused: Vec<&str> = nothing_left(&food.parts);
    if !infused.is_empty() {
        open.push(format!(
            "taken out again but listed last, for taste and allergens stay: {}; your authority may see it otherwise",
            infused.join(", ")
        ));
    }
    water(&label.list, &label.name, &mut open);
    if let Some(serving) = label.facts.as_ref().and_then(|facts| facts.serving.open.as_ref()) {
        open.push(serving.clone());
    }
    if label.components.len() > 1 {
        open.push(format!(
            "reckoned with all of what one batch makes of each: {}; sold apart, each needs a label of its own (--component)",
            label.components.join(", ")
        ));
    }
    let others = formula.lines().flat_map(|(_, line)| line.ingredients()).any(|one| one.notes.contains("trace"));
    open.push(format!(
        "what may come in by chance{} is not reckoned here: “may contain” is for a risk that was assessed and cannot be avoided",
        if others { " (the rows' own notes name some)" } else { "" }
    ));
    open
}

fn any(food: &Food, is: impl Fn(&formula::Ingredient) -> bool) -> bool {
    food.singles().into_iter().any(|(one, _)| is(one))
}

fn nothing_left(parts: &[Part]) -> Vec<&str> {
    let mut all = Vec::new();
    for part in parts {
        match &part.what {
            What::Ingredient(_) if part.mass <= quantity::Mass::ZERO => all.push(part.title.as_str()),
            What::Ingredient(_) => {}
            What::Compound(food) => all.extend(nothing_left(&food.parts)),
        }
    }
    all
}

/// Says where added water went that is not listed.
fn water(list: &List, of: &str, open: &mut Vec<String>) {
    if let Some(water) = list.water.filter(|water| !water.is_listed) {
        let how = if water.counted > quantity::Mass::ZERO {
            format!("is {} of the finished food, and up to 5 % may be left out", print::percent(water.share, 1))
        } else {
            "is driven off again by the heat".to_owned()
        };
        open.push(format!("the water added to “{of}” is not listed: it {how}"));
    }
    for entry in &list.entries {
        water(&entry.parts, &entry.title, open);
    }
}
