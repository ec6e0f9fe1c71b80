//! Formulas side by side, held to what can be worked out by hand.

use bench::compare::{Comparison, Difference, Row, Unit, compare};
use bench::forecast::Surroundings;
use formula::read::Kitchen;
use formula::source::Source;
use formula::{Book, BookText, Formula};
use quantity::Temperature;

fn bread(water: &str, salt: &str, yeast: &str) -> Formula {
    let text = format!(
        "title = \"Bread\"\n[[component]]\nname = \"bread\"\n[[component.stage]]\nname = \"dough\"\nkind = \"final-mix\"\n[component.stage.ingredients]\n\
         flour-bread = \"500 g\"\nwater = \"{water}\"\nsalt = \"{salt}\"\nyeast-instant = \"{yeast}\"\n\
         [[component.stage.step]]\naction = \"mix\"\ntext = \"Mix {{flour-bread}}, {{water}}, {{salt}} and {{yeast-instant}}.\"\ntime = \"5 min\"\n\
         [[component.stage.step]]\naction = \"bulk\"\nattention = \"waiting\"\ntext = \"Leave.\"\ntime = \"60-180 min\"\ntemperature = \"24 °C\"\nuntil = \"doubled\"\n"
    );
    let files = [("formulas/bread.toml".to_owned(), Source { file: "formulas/bread.toml".into(), text })].into();
    Book::open(BookText { files }).value.formula("bread").expect("a formula").value
}

fn side_by_side(formulas: &[&Formula]) -> Comparison {
    let kitchen = Kitchen { room: Some(Temperature::celsius(22.0)), ..Kitchen::assumed() };
    let columns: Vec<String> = (1..=formulas.len()).map(|n| n.to_string()).collect();
    compare(formulas, &Surroundings::of(&kitchen), &columns)
}

#[track_caller]
fn row<'c>(comparison: &'c Comparison, title: &str) -> &'c Row {
    let mut rows = comparison.parts.iter().flat_map(|part| &part.rows);
    rows.find(|row| row.title == title).unwrap_or_else(|| panic!("no row “{title}”"))
}

fn values(row: &Row) -> Vec<Option<f64>> {
    row.cells.iter().map(|cell| cell.as_ref().map(|cell| (cell.value * 1000.0).round() / 1000.0)).collect()
}

/// 65 % and 70 % of 500 g: five points, more than two steps of two; 2 % and 2.1 % salt are not noticed.
#[test]
fn percentages_are_of_all_flour() {
    let (a, b) = (bread("65 %", "10 g", "1 %"), bread("350 g", "10.5 g", "1 %"));
    let comparison = side_by_side(&[&a, &b]);
    assert_eq!(values(row(&comparison, "water")), [Some(65.0), Some(70.0)]);
    assert_eq!(row(&comparison, "water").difference, Difference::Clear);
    assert!((row(&comparison, "water").apart - 5.0).abs() < 1e-9);
    assert_eq!(values(row(&comparison, "salt")), [Some(2.0), Some(2.1)]);
    assert_eq!(row(&comparison, "salt").difference, Difference::Slight);
    assert_eq!(row(&comparison, "bread flour").difference, Difference::None);
}

/// What nobody can see in the figures as they are told is not marked, whatever lies behind their rounding.
#[test]
fn nothing_that_is_told_alike_is_marked() {
    let salted = |salt: &str| bread("65 %", salt, "1 %");
    for (a, b) in [("2 g", "2.02 g"), ("10 g", "10.2 g"), ("2 g", "2.2 g"), ("10 g", "11 g")] {
        let comparison = side_by_side(&[&salted(a), &salted(b)]);
        for row in comparison.parts.iter().flat_map(|part| &part.rows) {
            let told: Vec<f64> = row.cells.iter().flatten().map(|cell| row.unit.rounded(cell.value)).collect();
            let is_alike = told.len() == 2 && (told[0] == told[1] || row.unit.rounded(row.apart) == 0.0);
            assert!(!is_alike || row.difference == Difference::None, "{a} and {b}: {row:?}");
        }
    }
    let rounds = |unit: Unit, value: f64| unit.rounded(value);
    assert_eq!((rounds(Unit::Celsius, 0.49), rounds(Unit::Grams, 0.04), rounds(Unit::Hours, 0.008)), (0.0, 0.0, 0.0));
    assert_eq!((rounds(Unit::Celsius, 0.51), rounds(Unit::Grams, 0.06), rounds(Unit::Hours, 0.009)), (1.0, 0.1, 1.0 / 60.0));
}

/// A formula is the same as itself in every row, however often it stands there.
#[test]
fn a_formula_is_the_same_as_itself() {
    let a = bread("65 %", "2 %", "1 %");
    for part in side_by_side(&[&a, &a, &a]).parts {
        for row in part.rows {
            assert_eq!((row.difference, row.apart), (Difference::None, 0.0), "{}", row.title);
        }
    }
}

/// Less yeast rises later: forecasts stand beside each other, each with its band.
#[test]
fn forecasts_stand_beside_each_other() {
    let (quick, slow) = (bread("65 %", "2 %", "1.5 %"), bread("65 %", "2 %", "0.3 %"));
    let comparison = side_by_side(&[&quick, &slow]);
    let rise = row(&comparison, "dough, bulk: risen as asked after");
    let hours: Vec<f64> = rise.cells.iter().flatten().map(|cell| cell.value).collect();
    assert!(hours[1] > hours[0] && rise.difference >= Difference::Clear, "{hours:?}");
    assert!(rise.cells.iter().flatten().all(|cell| cell.band.is_some_and(|(low, high)| low < cell.value && cell.value < high)));
}

/// Courses stand beside each other from the same beginning, each formula's in its own place.
#[test]
fn rises_are_laid_over_each_other() {
    let (quick, slow) = (bread("65 %", "2 %", "1.5 %"), bread("65 %", "2 %", "0.3 %"));
    let comparison = side_by_side(&[&quick, &slow]);
    let courses = comparison.parts.iter().find_map(|part| part.courses.first()).expect("the dough rises");
    let at_end = |n: usize| courses.of[n].last().expect("a course").risen;
    assert_eq!((courses.whose, courses.of.len()), ("dough", 2));
    assert!(courses.of.iter().all(|course| course[0].time == quantity::TimeSpan::ZERO && (course[0].risen - 1.0).abs() < 1e-6));
    assert!(at_end(0) > at_end(1), "{} and {}", at_end(0), at_end(1));
}

/// The difference of two is signed, the second less the first, and turns with them.
#[test]
fn the_difference_turns_with_the_formulas() {
    let (a, b) = (bread("60 %", "2 %", "1 %"), bread("75 %", "2 %", "0.5 %"));
    let (one, other) = (side_by_side(&[&a, &b]), side_by_side(&[&b, &a]));
    for (row, turned) in one.parts.iter().flat_map(|part| &part.rows).zip(other.parts.iter().flat_map(|part| &part.rows)) {
        assert!((row.apart + turned.apart).abs() < 1e-9 && row.difference == turned.difference, "{}", row.title);
    }
}

/// What has no flour is compared by weight.
#[test]
fn without_flour_by_weight() {
    let text = |sugar: &str| {
        let text = format!(
            "title = \"Syrup\"\n[[component]]\nname = \"syrup\"\n[[component.stage]]\nname = \"syrup\"\nkind = \"cooked\"\n[component.stage.ingredients]\nsugar-caster = \"{sugar}\"\nwater = \"200 g\"\n\
             [[component.stage.step]]\naction = \"simmer\"\ntext = \"Boil {{sugar-caster}} and {{water}}.\"\ntime = \"5 min\"\n"
        );
        let files = [("formulas/syrup.toml".to_owned(), Source { file: "formulas/syrup.toml".into(), text })].into();
        Book::open(BookText { files }).value.formula("syrup").expect("a formula").value
    };
    let (a, b) = (text("200 g"), text("300 g"));
    let comparison = side_by_side(&[&a, &b]);
    assert_eq!(values(row(&comparison, "caster sugar")), [Some(200.0), Some(300.0)]);
    assert_eq!(row(&comparison, "caster sugar").unit.symbol(), "g");
}
