//! The author's text: comments and order stay, and every way of writing a formula is followed.

use super::{made, same_but, weighed};

const TABLES: &str = "# Ours since the flood.\ntitle = \"Tin loaf\"\n\n[[component]]\nname = \"loaf\"\n\n# Begun the evening before.\n[[component.stage]]\nname = \"sponge\"\nkind = \"sponge\"\n\
    [component.stage.ingredients]\nflour-bread = \"100 g\" # the strong one\nwater = { amount = \"80 %\", temperature = \"20 °C\" }\nyeast-instant = \"0.3 g\"\n\n\
    [[component.stage.step]]\naction = \"mix\"\ntext = \"Stir {yeast-instant}, {water} and {flour-bread}.\"\ntime = \"5 min\"\n\n\
    # In the morning.\n[[component.stage]]\nname = \"dough\"\nkind = \"final-mix\"\n[component.stage.ingredients]\nsponge = \"all\"\nflour-bread = \"400 g\"\nwater = \"60 %\" # from the well\nsalt = \"2 %\"\nyeast-instant = \"1 %\"\n\n\
    [[component.stage.step]]\naction = \"mix\"\ntext = \"Mix {sponge}, {flour-bread}, {water}, {salt} and {yeast-instant}.\"\ntime = \"5 min\"\n";

/// The same written all on one line, and with dotted keys.
const IN_LINE: &str = "title = \"Tin loaf\"\n[[component]]\nname = \"loaf\"\n[[component.stage]]\nname = \"dough\"\nkind = \"final-mix\"\n\
    ingredients = { flour-bread = \"400 g\", water = \"60 %\", butter-unsalted = \"10 %\", salt = \"2 %\", yeast-instant = \"1 %\" }\n\
    step = [{ action = \"mix\", text = \"Mix {flour-bread}, {water}, {butter-unsalted}, {salt} and {yeast-instant}.\", time = \"5 min\" }]\n";
const DOTTED: &str = "title = \"Tin loaf\"\n[[component]]\nname = \"loaf\"\n[[component.stage]]\nname = \"dough\"\nkind = \"final-mix\"\n\
    ingredients.flour-bread = \"400 g\"\ningredients.water = \"60 %\"\ningredients.butter-unsalted = \"10 %\"\ningredients.salt = \"2 %\"\ningredients.yeast-instant = \"1 %\"\n\
    [[component.stage.step]]\naction = \"mix\"\ntext = \"Mix {flour-bread}, {water}, {butter-unsalted}, {salt} and {yeast-instant}.\"\ntime = \"5 min\"\n";

#[test]
fn comments_and_order_stay() {
    let comments = |text: &str| text.lines().filter_map(|line| Some(line.split_once('#')?.1.to_owned())).collect::<Vec<_>>();
    for (name, say) in [
        ("leaven", vec![("of", "sponge")]),
        ("yeast", vec![("into", "yeast-fresh")]),
        ("flour", vec![("into", "flour-wholewheat"), ("stage", "dough")]),
        ("tin", vec![("from", "1 l"), ("into", "2 l")]),
    ] {
        let (_, after) = made(TABLES, name, &say).unwrap_or_else(|why| panic!("{name}: {why}"));
        assert_eq!(comments(&after.text), comments(TABLES), "{name}\n{}", after.text);
    }
}

/// Only what is meant differs: of fifty lines, the yeast's two and the water that pays for theirs.
#[test]
fn nothing_else_is_touched() {
    let (_, after) = made(TABLES, "yeast", &[("into", "yeast-dry"), ("stage", "sponge")]).expect("there is yeast");
    let changed: Vec<&str> = after.text.lines().filter(|line| !TABLES.contains(line)).collect();
    assert!(changed.iter().all(|line| line.contains("yeast-dry") || line.starts_with("water")), "{changed:?}");
    assert_eq!(after.text.lines().count(), TABLES.lines().count());
}

#[test]
fn a_stage_that_goes_leaves_its_comments() {
    let (before, after) = made(TABLES, "straight", &[]).expect("there is a sponge");
    assert!(after.text.contains("# In the morning.") && after.text.contains("# Ours since the flood."), "{}", after.text);
    same_but(&before, &after.formula, &[]);
}

#[test]
fn lines_written_in_other_ways_are_followed() {
    for text in [IN_LINE, DOTTED] {
        let (before, after) = made(text, "butter", &[]).unwrap_or_else(|why| panic!("{why}\n{text}"));
        assert!(weighed(&after.formula).contains_key("oil-sunflower"), "{}", after.text);
        same_but(&before, &after.formula, &["butter-unsalted", "oil-sunflower", "water"]);
        let (_, after) =
            made(text, "flour", &[("into", "flour-all-purpose"), ("share", "20")]).unwrap_or_else(|why| panic!("{why}\n{text}"));
        assert!(weighed(&after.formula).contains_key("flour-all-purpose"), "{}", after.text);
    }
}

/// A weight stated of a stage's product follows when the stage becomes lighter, so that no flour is left behind.
#[test]
fn what_is_stated_of_a_stage_follows_it() {
    let text = TABLES
        .replace("yeast-instant = \"0.3 g\"\n", "yeast-instant = \"0.3 g\"\nbutter-unsalted = \"40 g\"\n")
        .replace("{water} and {flour-bread}.", "{water}, {butter-unsalted} and {flour-bread}.")
        .replace("sponge = \"all\"", "sponge = \"220.3 g\"");
    let (before, after) = made(&text, "butter", &[]).expect("there is butter");
    assert!(after.text.contains("sponge = \"219.92 g\""), "{}", after.text);
    same_but(&before, &after.formula, &["butter-unsalted", "oil-sunflower", "water"]);
}

/// What goes with a line is told, and what is only shared keeps it.
#[test]
fn a_note_that_goes_is_told() {
    let text = TABLES.replace("flour-bread = \"400 g\"", "flour-bread = { amount = \"400 g\", note = \"sifted\" }");
    let say = [("stage", "dough"), ("into", "flour-wholewheat")];
    let (_, all) = made(&text, "flour", &say).expect("there is flour");
    assert!(all.minded.iter().any(|words| words.contains("“sifted”")), "{:?}", all.minded);
    let (_, half) = made(&text, "flour", &[say[0], say[1], ("share", "50")]).expect("there is flour");
    assert!(half.text.contains("note = \"sifted\""), "{}", half.text);
}
