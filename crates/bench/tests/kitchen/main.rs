//! What a kitchen changes in a forecast, what many kitchens show, and what things cost: held to limits, exact
//! balances and worked figures.

mod cost;
mod draws;
mod heat;
mod pots;
mod rooms;

use formula::read::Kitchen;
use formula::source::Source;
use formula::{Book, BookText, Formula};
use quantity::{Length, Temperature};

/// A book of these files; none may have an error.
fn book(files: &[(&str, &str)]) -> Book {
    let source = |(file, text): &(&str, &str)| ((*file).to_owned(), Source { file: (*file).into(), text: (*text).to_owned() });
    let opened = Book::open(BookText { files: files.iter().map(source).collect() });
    let errors: Vec<_> = opened.diagnostics.iter().filter(|d| d.severity == formula::Severity::Error).collect();
    assert!(errors.is_empty(), "{errors:?}");
    opened.value
}

/// The formula of a text.
fn work_out(text: &str) -> Formula {
    let checked = book(&[("formulas/example.toml", text)]).formula("example").expect("the example");
    let errors: Vec<_> = checked.diagnostics.iter().filter(|d| d.severity == formula::Severity::Error).collect();
    assert!(errors.is_empty(), "{errors:?}");
    checked.value
}

fn kitchen(room: f64) -> Kitchen {
    Kitchen { room: Some(Temperature::celsius(room)), fridge: Some(Temperature::celsius(4.0)), ..Kitchen::assumed() }
}

fn high(metres: f64) -> Kitchen {
    Kitchen { altitude: Some(Length::metres(metres)), ..kitchen(21.0) }
}

/// A dough that rises at no stated temperature and is baked.
const LOAF: &str = "title = \"Loaf\"\n[[component]]\nname = \"loaf\"\n[component.yield]\npieces = 2\nscaling-weight = \"400 g\"\nthickness = \"60 mm\"\n\
    [[component.stage]]\nname = \"dough\"\nkind = \"final-mix\"\n[component.stage.ingredients]\nflour-bread = \"500 g\"\nwater = { amount = \"320 g\", temperature = \"24 °C\" }\n\
    yeast-instant = \"5 g\"\nsalt = \"10 g\"\n[[component.stage.step]]\naction = \"mix\"\ntext = \"Mix {flour-bread}, {water}, {yeast-instant}, {salt}.\"\ntime = \"10 min\"\ntemperature = \"24 °C\"\n\
    [[component.stage.step]]\naction = \"bulk\"\nattention = \"waiting\"\ntext = \"Leave it.\"\ntime = \"90 min\"\nuntil = \"doubled\"\n\
    [[component.stage.step]]\naction = \"bake\"\ntext = \"Bake it.\"\ntime = \"35 min\"\ntemperature = \"220 °C\"\nuntil = \"96 °C core\"\n";
