//! Formulas that nobody bakes: chains that double at each step, losses of almost all, nothing at all.

use crate::{baked, drafted, worked_out};
use bench::label::{Law, Sold, finished, label};
use quantity::Mass;

/// A chain in which each stage takes the one before it twice: two to the sixtieth paths lead to the flour.
#[test]
fn stages_that_double_are_followed_once() {
    let mut text = "title = \"Chain\"\n[[component]]\nname = \"chain\"\n[[component.stage]]\nname = \"s0\"\nkind = \"mixed\"\n\
                    [component.stage.ingredients]\nflour-bread = \"100 g\"\n"
        .to_owned();
    for stage in 1..=60 {
        let before = stage - 1;
        text.push_str(&format!(
            "[[component.stage]]\nname = \"s{stage}\"\nkind = \"mixed\"\n[component.stage.ingredients]\n\
             one = {{ stage = \"s{before}\", share = \"50 %\" }}\ntwo = {{ stage = \"s{before}\", share = \"50 %\" }}\n"
        ));
    }
    let label = drafted(&text, "", Law::Eu);
    assert_eq!(label.list.entries.len(), 1);
    assert!((label.makes.as_grams() - 100.0).abs() < 1e-6);
}

/// The same with components, which stand in brackets: no deeper than two.
#[test]
fn components_that_double_stand_in_two_brackets() {
    let mut text = "title = \"Chain\"\n[[component]]\nname = \"c0\"\n[[component.stage]]\nname = \"c0\"\nkind = \"mixed\"\n\
                    [component.stage.ingredients]\nflour-bread = \"100 g\"\n"
        .to_owned();
    for component in 1..=60 {
        let before = component - 1;
        text.push_str(&format!(
            "[[component]]\nname = \"c{component}\"\n[[component.stage]]\nname = \"c{component}\"\nkind = \"mixed\"\n\
             [component.stage.ingredients]\none = {{ component = \"c{before}\", share = \"50 %\" }}\n\
             two = {{ component = \"c{before}\", share = \"50 %\" }}\nsalt = \"1 g\"\n"
        ));
    }
    let label = drafted(&text, "", Law::Uk);
    let inner = &label.list.entries[0].parts.entries[0];
    assert!(inner.parts.entries.iter().all(|entry| entry.parts.entries.is_empty()), "{:?}", inner.parts);
    assert!((label.makes.as_grams() - 160.0).abs() < 1e-6);
}

/// Nothing comes from nowhere: what went in less the steam is what the yield says, whatever is lost on the way.
#[test]
fn what_went_in_less_the_steam_is_what_comes_out() {
    for (boil, loss, make_up, bake) in [(0, 0, 0, 0), (30, 5, 3, 12), (60, 40, 9, 20), (0, 99, 99, 99), (99, 0, 0, 99)] {
        let text = format!(
            "title = \"Food\"\n[[component]]\nname = \"food\"\n[component.yield]\nmake-up-loss = \"{make_up} %\"\nbake-loss = \"{bake} %\"\n\
             [[component.stage]]\nname = \"brew\"\nkind = \"cooked\"\nboil-off = \"{boil} %\"\nloss = \"{loss} %\"\n\
             [component.stage.ingredients]\nquince = {{ amount = \"100 g\", taken-out = \"1 %\" }}\nwater = \"900 g\"\n\
             [[component.stage]]\nname = \"mix\"\nkind = \"final-mix\"\n[component.stage.ingredients]\nbrew = \"all\"\nflour-bread = \"500 g\"\n\
             syrup = {{ ingredient = \"sugar-caster\", amount = \"50 g\", after-scaling = true }}\n"
        );
        let (_, formula) = worked_out(&text, "");
        let food = finished(&formula, 0);
        let done = formula.components[0].yields.done();
        assert!((food.weighs() - done).abs() < Mass::grams(1e-6), "{boil} {loss} {make_up} {bake}: {food:?}, {done:?}");
    }
}

/// What weighs nothing has no label.
#[test]
fn nothing_has_no_label() {
    let (book, formula) = worked_out(&baked("Nothing", "flour-bread = \"0 g\"", 100.0, 90.0), "");
    assert!(label(&formula, &book.settings, Law::Eu, &Sold::default()).is_none());
    assert!(label(&formula, &book.settings, Law::Eu, &Sold { components: vec![7], eaten_as: None }).is_none());
}
