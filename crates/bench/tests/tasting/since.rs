//! What counts as changed since a formula was tasted, and what does not.

use bench::tasting::{Since, since};
use formula::source::Source;
use formula::{Book, BookText};

const PLAIN: &str = "title = \"Flat bread\"\nintro = \"Plain.\"\nnotes = [\"Old.\"]\n\n[[component]]\nname = \"bread\"\n\n[component.yield]\nscaling-weight = \"80 g\"\n\n[[component.stage]]\nname = \"dough\"\nkind = \"final-mix\"\n\n[component.stage.ingredients]\nflour-bread = \"500 g\"\nwater = \"65 %\"\nsalt = \"10 g\"\n\n[[component.stage.step]]\naction = \"mix\"\ntext = \"Mix {flour-bread}, {water} and {salt}.\"\n\n[[component.stage.step]]\naction = \"bake\"\ntemperature = \"230 °C\"\ntime = \"20 min\"\ntext = \"Bake at {temperature} for {time}.\"\n";

#[test]
fn what_reaches_the_mouth_counts() {
    let made = |text: &str| {
        let source = Source { file: "formulas/flat.toml".into(), text: text.to_owned() };
        let text = BookText { files: [("formulas/flat.toml".to_owned(), source)].into() };
        Book::open(text).value.formula("flat").expect("a formula").value
    };
    let tasted = made(PLAIN);
    let steps = || Since::Steps("Dough".to_owned());
    for (from, to, wanted) in [
        ("Old.", "New.", vec![]),
        ("Plain.", "Plainer.", vec![]),
        ("Bake at", "Set into the oven at", vec![]),
        ("\"500 g\"", "\"1000 g\"", vec![Since::Ingredient("fine salt".to_owned())]),
        ("\"10 g\"", "\"2 %\"", vec![]),
        ("\"10 g\"", "\"11 g\"", vec![Since::Ingredient("fine salt".to_owned())]),
        ("230 °C", "240 °C", vec![steps()]),
        ("20 min", "25 min", vec![steps()]),
        ("action = \"bake\"", "action = \"fry\"", vec![steps()]),
        ("80 g", "90 g", vec![Since::Piece("Bread".to_owned())]),
    ] {
        assert!(PLAIN.contains(from), "{from}");
        assert_eq!(since(&tasted, &made(&PLAIN.replacen(from, to, 1))), wanted, "{from} to {to}");
    }
    // Twice as much of everything is the same bread.
    let twice = PLAIN.replacen("500 g", "1 kg", 1).replacen("\"10 g\"", "\"20 g\"", 1);
    assert_eq!(since(&tasted, &made(&twice)), []);
}
