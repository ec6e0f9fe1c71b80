//! Where rules speak and where they keep silent: words that look alike, and dishes that are meant.

use crate::proof_read;
use bench::rules;
use formula::fault::page::{EXAMPLE, Page};
use formula::source::Source;
use formula::{BookText, Diagnostic};
use std::collections::BTreeMap;

/// What is found in the good example of a rule's page once some of its text is another.
#[track_caller]
fn found(page: &str, changes: &[(&str, &str)]) -> Vec<&'static str> {
    all_found(page, changes).into_iter().map(|found| found.code).collect()
}

#[track_caller]
fn all_found(page: &str, changes: &[(&str, &str)]) -> Vec<Diagnostic> {
    let page = Page::read(rules::named(page).expect("a rule").page);
    let mut text = page.good[0].files[EXAMPLE].clone();
    for (old, new) in changes {
        assert!(text.contains(old), "{old} is not in\n{text}");
        text = text.replacen(old, new, 1);
    }
    let files = BTreeMap::from([(EXAMPLE.to_owned(), Source { file: EXAMPLE.into(), text })]);
    proof_read(BookText { files })
}

const NOTHING: [&str; 0] = [];
const BREAD: &str = "salt-outside-custom";
const BUNS: &str = "sugars-outside-custom";
const CREAM: &str = "filling-without-cold-storage";
const INTRO: &str = "intro = \"A plain white loaf for every day.\"";

#[test]
fn words_that_only_look_like_a_claim() {
    for intro in [
        "It is not gluten-free.",
        "A gluten-free loaf can be made of other flours, but not this one.",
        "To make it vegan, there is nothing to do.",
        "For a nuttier loaf toast the flour.",
        "We never call it gluten-free.",
    ] {
        assert_eq!(found(BREAD, &[(INTRO, &format!("intro = \"{intro}\""))]), NOTHING, "{intro}");
    }
}

#[test]
fn claims_that_are_kept() {
    let intro = "intro = \"A vegan, dairy-free, egg-free, nut-free loaf without alcohol: alcohol-free.\"";
    assert_eq!(found(BREAD, &[(INTRO, intro)]), NOTHING);
}

#[test]
fn each_claim_is_told_once_where_it_stands() {
    let title = ("title = \"Harbour loaf\"", "title = \"Gluten-free harbour loaf\"");
    let tags = (INTRO, "intro = \"A loaf.\"\ntags = [\"bread\", \"no-gluten\"]");
    assert_eq!(found(BREAD, &[title, tags]), ["gluten-free-with-gluten"; 2]);
}

#[test]
fn young_vegetables_are_no_babies() {
    let changes =
        [("sugar-icing = \"30 g\"", "honey = \"30 g\""), ("{sugar-icing}", "{honey}"), ("for fruit", "for baby carrots")];
    assert_eq!(found(CREAM, &changes), NOTHING);
}

#[test]
fn a_wash_brushed_on_before_baking_is_cooked() {
    let wash = |text: &str| {
        let component = format!(
            "\n\n[[component]]\nname = \"wash\"\n\n[[component.stage]]\nname = \"wash\"\nkind = \"mixed\"\n\n\
             [component.stage.ingredients]\negg-whole = \"1 M\"\n\n[[component.stage.step]]\naction = \"glaze\"\n\
             text = \"{text}\"\ntime = \"2 min\"\n"
        );
        found(BREAD, &[("until = \"96 °C core\"", &format!("until = \"96 °C core\"{component}"))])
    };
    assert_eq!(wash("Brush the loaves with {egg-whole} before they are baked."), NOTHING);
    assert_eq!(wash("Brush the baked loaves with {egg-whole}."), ["raw-egg-never-cooked"]);
}

#[test]
fn cooked_first_and_raw_afterwards_is_raw() {
    let simmered = "[[component.stage.step]]\naction = \"simmer\"\ntext = \"Simmer {sugar-icing} with a little water.\"\ntime = \"4 min\"\n\n\
                    [[component.stage.step]]\naction = \"whip\"\ntext = \"Whip {quark}, {cream-35} and {egg-white} with it.\"";
    let changes = [
        ("sugar-icing = \"30 g\"", "sugar-icing = \"30 g\"\negg-white = \"60 g\""),
        (
            "[[component.stage.step]]\naction = \"whip\"\ntext = \"Whip {quark}, {cream-35} and {sugar-icing} to a soft peak.\"",
            simmered,
        ),
    ];
    assert_eq!(found(CREAM, &changes), ["raw-egg-never-cooked"]);
}

#[test]
fn a_fridge_stops_the_clock_of_egg_and_milk() {
    let steps = |cold: &str| {
        let night = format!(
            "[[component.stage.step]]\naction = \"bulk\"\nattention = \"waiting\"\ntext = \"Leave at {{temperature}} for {{time}}.\"\n\
             time = \"10-12 h\"\ntemperature = \"{cold}\"\n\n[[component.stage.step]]\naction = \"proof\""
        );
        found(BUNS, &[("[[component.stage.step]]\naction = \"proof\"", &night)])
    };
    assert_eq!(steps("5 °C"), NOTHING);
    assert_eq!(steps("16 °C"), ["egg-or-milk-long-warm"]);
}

#[test]
fn onions_fried_for_a_loaf_do_not_make_it_a_fried_dough() {
    let onions = "\n\n[[component.stage]]\nname = \"topping\"\nkind = \"inclusion\"\n\n[component.stage.ingredients]\ncarrot = \"100 g\"\n\n\
                  [[component.stage.step]]\naction = \"fry\"\ntext = \"Fry {carrot} in a little oil at {temperature}, {until}.\"\n\
                  time = \"6 min\"\ntemperature = \"160 °C\"\nuntil = \"soft\"\n\n[[component.stage]]\nname = \"making-up\"\nkind = \"make-up\"\n\n\
                  [component.stage.ingredients]\ndough = \"all\"\ntopping = \"all\"\n\n[[component.stage.step]]\naction = \"bake\"";
    let changes = [
        ("\n\n[[component.stage.step]]\naction = \"bake\"", onions),
        ("Divide into {pieces}", "Divide {dough} into {pieces}, strew with {topping}"),
        ("scaling-weight = \"410 g\"", "scaling-weight = \"460 g\""),
        ("salt = \"10 g\"", "salt = \"30 g\""),
    ];
    let found = all_found(BREAD, &changes);
    assert_eq!(found.iter().map(|found| found.code).collect::<Vec<_>>(), ["salt-outside-custom"]);
    assert!(found[0].message.contains("for lean bread"), "{}", found[0].message);
}

#[test]
fn buckwheat_is_not_wheat() {
    let changes = [("storage = \"Best", "notes = [\"Contains buckwheat, milk and egg.\"]\nstorage = \"Best")];
    assert_eq!(found(BUNS, &changes), ["allergen-left-out"]);
}

#[test]
fn a_culture_raises_and_a_hot_scald_in_its_own_step_does_no_harm() {
    let changes = [("water = \"66 %\"", "water = { amount = \"66 %\", temperature = \"49 °C\" }")];
    assert_eq!(found(BREAD, &changes), NOTHING);
    let changes = [("water = \"66 %\"", "water = { amount = \"66 %\", temperature = \"51 °C\" }")];
    assert_eq!(found(BREAD, &changes), ["liquid-too-hot-for-yeast"]);
}

#[test]
fn cider_raises_and_spirits_do_not() {
    let with = |drink: &str| {
        let note = ("storage = \"Best", "notes = [\"Usually carries sulphites.\"]\nstorage = \"Best");
        let line = ("egg-whole = \"1 M\"", format!("egg-whole = \"1 M\"\n{drink}"));
        let name = drink.split(' ').next().expect("a name");
        let text = ("{egg-whole} and", format!("{{egg-whole}}, {{{name}}} and"));
        let less = ("milk-whole = \"50 %\"", "milk-whole = \"25 %\"");
        found(BUNS, &[note, (line.0, &line.1), (text.0, &text.1), less])
    };
    assert_eq!(with("cider-dry = \"100 g\""), NOTHING);
    assert_eq!(with("brandy = \"100 g\""), ["alcohol-in-yeasted-dough"]);
}
