//! A stage with two steps of a name: what was seen of the later one is not taken for the first.

use bench::calibration::{Logged, What, as_done, learn};
use bench::forecast::Surroundings;
use formula::read::Kitchen;
use formula::source::Source;
use formula::{Book, BookText};

const BREAD: &str = "title = \"Bread\"\n[[component]]\nname = \"bread\"\n[[component.stage]]\nname = \"dough\"\nkind = \"final-mix\"\n\
    [component.stage.ingredients]\nflour-bread = \"500 g\"\nwater = { amount = \"320 g\", temperature = \"25 °C\" }\nyeast-instant = \"5 g\"\n\
    [[component.stage.step]]\naction = \"mix\"\ntext = \"Mix {flour-bread}, {water}, {yeast-instant}.\"\n\
    [[component.stage.step]]\naction = \"rest\"\nattention = \"waiting\"\ntext = \"Leave it.\"\ntime = \"60 min\"\n\
    [[component.stage.step]]\naction = \"rest\"\nattention = \"waiting\"\ntext = \"Leave it again.\"\ntime = \"40 min\"\n\
    [[component.stage.step]]\naction = \"bake\"\ntext = \"Bake.\"\ntime = \"15 min\"\n\
    [[component.stage.step]]\naction = \"bake\"\ntext = \"Turn down.\"\ntime = \"50 min\"\n";

/// The minutes of each step as it was done in a trial of these records, and of which step of its name a warmth was read.
fn done(records: &str) -> (Vec<f64>, usize) {
    let trial = format!("title = \"x\"\nformula = \"bread\"\ndate = 2026-11-02\n{records}");
    let files = [("formulas/bread.toml", BREAD.to_owned()), ("trials/x.toml", trial)];
    let files = files.map(|(file, text)| (file.to_owned(), Source { file: file.into(), text }));
    let book = Book::open(BookText { files: files.into() }).value;
    let formula = book.formula("bread").expect("the bread").value;
    let logged = Logged { trial: &book.trials[0], formula: &formula, kitchen: Kitchen::assumed() };
    let steps = as_done(&formula, logged.trial, &Surroundings::of(&logged.kitchen)).stage((0, 0)).steps.clone();
    let seen = learn(std::slice::from_ref(&logged)).trials.remove(0).figures;
    let numbers = seen.iter().map(|one| &one.seen).filter(|one| one.what == What::Dough).map(|one| one.step.number).sum();
    (steps.iter().filter_map(|step| step.time).map(|time| time.from.as_minutes()).collect(), numbers)
}

#[test]
fn each_of_two_steps_lasts_as_long_as_it_was_seen_to() {
    let cook = |step: &str, minutes: u32| format!("[[cook]]\nstage = \"dough\"\nstep = \"{step}\"\ntime = \"{minutes} min\"\n");
    let rest = |step: &str| {
        format!(
            "[[rise]]\nstage = \"dough\"\nstep = \"{step}\"\nlasted = \"90 min\"\nreading = [{{ after = \"30 min\", temperature = \"24 °C\" }}]\n"
        )
    };
    assert_eq!(done("").0, [60.0, 40.0, 15.0, 50.0]);
    // A log without a number says what it always said: it is of the first of that name.
    assert_eq!(done(&cook("bake", 12)).0, [60.0, 40.0, 12.0, 50.0]);
    assert_eq!(done(&(cook("bake", 12) + &cook("bake-2", 55))).0, [60.0, 40.0, 12.0, 55.0]);
    assert_eq!(done(&rest("rest")), (vec![90.0, 40.0, 15.0, 50.0], 1));
    assert_eq!(done(&rest("rest-2")), (vec![60.0, 90.0, 15.0, 50.0], 2));
}
