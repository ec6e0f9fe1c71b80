//! Nutrition panels end to end: the European whole panel, the American specimen of 2016, gaps.

use crate::{baked, drafted};
use bench::label::{Label, Law, Shown};

/// A food of one ingredient with these figures in 100 g.
fn of_one(figures: &str, head: &str, law: Law) -> Label {
    let own = format!("[paste]\nper-100-g = {{ {figures} }}\n");
    let food = baked("Paste", "paste = \"440 g\"", 440.0, 440.0);
    let text = food.replacen("[[component]]", &format!("{head}\n[[component]]"), 1);
    drafted(&text, &own, law)
}

fn declared(label: &Label, portion: bool) -> Vec<String> {
    let lines = &label.declaration.as_ref().expect("a declaration").lines;
    let shown = lines.iter().map(|line| if portion { line.in_portion.as_ref().expect("a portion") } else { &line.in_100_g });
    shown.map(|one| one.printed().map_or_else(|| "gap".to_owned(), |printed| printed.to_string())).collect()
}

const CAKE: &str = "fat = 9.2, saturates = 4.37, available-carbohydrate = 28.4, sugars = 6.02, fibre = 1.1, protein-nx625 = 6.3, \
                    sodium-mg = 248, alcohol = 0";

/// Regulation (EU) No 1169/2011, Annexes XIV and XV, rounded by the guidance of 2012: the whole panel of a griddle cake.
#[test]
fn the_whole_european_panel() {
    let label = of_one(CAKE, "", Law::Eu);
    assert_eq!(declared(&label, false), ["939", "224", "9.2", "4.4", "28", "6.0", "1.1", "6.3", "0.62"]);
    assert!(!label.gaps.iter().any(|gap| gap.contains("no source")), "{:?}", label.gaps);
}

/// A portion is reckoned from unrounded figures; reference intakes of Annex XIII: 939 kJ of 8400 are 11 %, fat 13 %.
#[test]
fn a_portion_of_100_g_and_its_reference_intakes() {
    let label = of_one(CAKE, "[label]\nportion = \"100 g\"", Law::Eu);
    assert_eq!(declared(&label, true), declared(&label, false));
    let lines = &label.declaration.as_ref().expect("a declaration").lines;
    let intake = |title: &str| lines.iter().find(|line| line.title == title).and_then(|line| line.intake);
    assert_eq!(intake("energy").map(|share| share.as_percent().round()), Some(11.0));
    assert_eq!(intake("fat").map(|share| share.as_percent().round()), Some(13.0));
    assert_eq!(intake("fibre"), None);
}

/// Alcohol counts 29 kJ and 7 kcal a gram: spirit cake, 1363.5 kJ and 325.5 kcal, half-way cases away from zero.
#[test]
fn alcohol_has_its_energy() {
    let figures = "fat = 14, saturates = 2, available-carbohydrate = 40, sugars = 20, fibre = 1, protein-nx625 = 5, sodium-mg = 100, \
                   alcohol = 2.5";
    assert_eq!(declared(&of_one(figures, "", Law::Eu), false)[..2], ["1364", "326"]);
}

/// The official specimen label of 2016: 55 g a serving, eight in a pack.
#[test]
fn the_american_specimen() {
    let per_100 = |value: f64| value * 100.0 / 55.0;
    let figures = format!(
        "fat = {}, saturates = {}, trans = 0, cholesterol-mg = 0, sodium-mg = {}, carbohydrate = {}, fibre = {}, sugars = {}, \
         protein = {}, alcohol = 0, vitamin-d-ug = {}, calcium-mg = {}, iron-mg = {}, potassium-mg = {}",
        per_100(8.0),
        per_100(1.0),
        per_100(160.0),
        per_100(37.0),
        per_100(4.0),
        per_100(12.0),
        per_100(3.0),
        per_100(2.0),
        per_100(260.0),
        per_100(8.0),
        per_100(235.0),
    );
    let label = of_one(&figures, "[label]\neaten-as = \"scones\"", Law::Us);
    let facts = label.facts.as_ref().expect("facts");
    assert_eq!((facts.serving.gram.to_string().as_str(), facts.serving.in_pack), ("55", (8.0, false)));
    let calories = facts.calories.printed().map(|printed| printed.to_string());
    assert_eq!(calories.as_deref(), Some("230"));
    let expected = [
        ("Total Fat", "8", Some("10")),
        ("Saturated Fat", "1", Some("5")),
        ("Trans Fat", "0", None),
        ("Cholesterol", "0", Some("0")),
        ("Sodium", "160", Some("7")),
        ("Total Carbohydrate", "37", Some("13")),
        ("Dietary Fiber", "4", Some("14")),
        ("Total Sugars", "12", None),
        ("Added Sugars", "0", Some("0")),
        ("Protein", "3", None),
        ("Vitamin D", "2", Some("10")),
        ("Calcium", "260", Some("20")),
        ("Iron", "8", Some("45")),
        // The specimen prints 235, later 240, and 6 % both times.
        ("Potassium", "240", Some("6")),
    ];
    for (line, (title, amount, daily)) in facts.lines.iter().zip(expected) {
        assert_eq!(line.title, title);
        assert_eq!(line.amount.printed().map(|printed| printed.to_string()).as_deref(), Some(amount), "{title}");
        assert_eq!(line.daily.map(|daily| daily.to_string()).as_deref(), daily, "{title}");
    }
}

/// 10 g of added sugars are 20 % of the daily value of 50 g: the specimen's other line.
#[test]
fn added_sugars_are_counted_apart() {
    let own = "[paste]\nper-100-g = { carbohydrate = 100, sugars = 100 }\nadded-sugar = true\n";
    let text = baked("Paste", "paste = \"80 g\"", 80.0, 80.0).replacen(
        "[[component]]",
        "[label]\neaten-as = \"syrup\"\n[[component]]",
        1,
    );
    let label = drafted(&text, own, Law::Us);
    let facts = label.facts.as_ref().expect("facts");
    let added = facts.lines.iter().find(|line| line.title == "Added Sugars").expect("added sugars");
    let share = facts.serving.weighs.as_grams() / 50.0 * 100.0;
    assert!((added.daily.expect("a percentage").value() - share.round()).abs() < 1e-9);
}

/// An American panel counts fibre as carbohydrate and charges it 4 kcal; the European does neither.
#[test]
fn both_panels_of_one_food_differ() {
    let figures = "fat = 0, saturates = 0, trans = 0, carbohydrate = 50, fibre = 10, sugars = 0, protein = 10, protein-nx625 = 10, \
                   sodium-mg = 0, alcohol = 0";
    let european = of_one(figures, "", Law::Eu);
    assert_eq!(declared(&european, false)[1], "220");
    let american = of_one(figures, "[label]\neaten-as = \"muffins\"", Law::Us);
    let facts = american.facts.as_ref().expect("facts");
    // 110 g: 60.5 g of carbohydrate with fibre, 66 × 4 = 264 kcal.
    assert_eq!(facts.calories.printed().map(|printed| printed.to_string()).as_deref(), Some("260"));
}

/// A missing figure is a gap with its bounds, never a zero; what is bounded within the rounding is no gap.
#[test]
fn a_missing_figure_is_a_gap() {
    let figures = "fat = 10, available-carbohydrate = 50, sugars = 20, fibre = 1, protein-nx625 = 8, sodium-mg = 100";
    let label = of_one(figures, "", Law::Eu);
    assert_eq!(declared(&label, false)[3], "gap");
    let gap = label.gaps.iter().find(|gap| gap.starts_with("saturates")).expect("a gap");
    assert!(gap.contains("paste") && gap.contains("between 0 and 10"), "{gap}");
    let lines = &label.declaration.as_ref().expect("a declaration").lines;
    assert!(matches!(&lines[3].in_100_g, Shown::Gap { least, most: Some(most), .. } if *least == 0.0 && *most == 10.0));
    // There are no saturates where there is no fat.
    let lean = of_one(&figures.replace("fat = 10", "fat = 0"), "", Law::Eu);
    assert_eq!(declared(&lean, false)[3], "<0.1");
}

/// Losing water in the oven raises every figure per 100 g alike.
#[test]
fn baking_concentrates() {
    let own = format!("[paste]\nper-100-g = {{ {CAKE} }}\n");
    let label = drafted(&baked("Paste", "paste = \"500 g\"", 500.0, 400.0), &own, Law::Eu);
    // 9.2 / 0.8 = 11.5, printed in whole gram from ten on; 0.62 / 0.8 = 0.775.
    assert_eq!(declared(&label, false)[2], "12");
    assert_eq!(declared(&label, false)[8], "0.78");
}

/// Regulation (EU) No 1169/2011, Art. 9(1)(k): a drink over 1.2 % vol states its strength. What is reckoned is a bound, no
/// figure to print; what is no drink, or too weak, is not asked for it.
#[test]
fn a_drink_with_alcohol_lacks_its_strength() {
    let row = "[spirit]\ntitle = \"Spirit\"\ncalled = \"spirit\"\ngroup = \"spirit\"\nsource = \"pack\"\n\
               per-100-g = { water = 67, alcohol = 33 }\n";
    let asked = |lines: &str, law: Law| {
        let label = drafted(&baked("Cup", lines, 100.0, 100.0), row, law);
        label.gaps.iter().any(|gap| gap.contains("% vol, should it be sold as a drink"))
    };
    let cup = |gram: f64| format!("spirit = \"{gram} g\"\nwater = \"{} g\"", 100.0 - gram);
    for law in Law::ALL {
        assert!(asked(&cup(10.0), law) && !asked(&cup(2.0), law), "{law:?}");
        assert!(!asked("spirit = \"10 g\"\nflour-bread = \"90 g\"", law), "{law:?}");
    }
}
