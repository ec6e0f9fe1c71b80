//! What cannot be exchanged is told, with what the formula has instead; nothing falls over.

use super::{around, book, made, wishes};
use bench::exchange::{ALL, Unfit, exchange};

const PLAIN: &str = "title = \"Plain\"\n[[component]]\nname = \"bread\"\n[[component.stage]]\nname = \"dough\"\nkind = \"final-mix\"\n\
    [component.stage.ingredients]\nflour-bread = \"500 g\"\nmilk-whole = \"300 g\"\nbutter-unsalted = \"50 g\"\nsugar-caster = \"60 g\"\nsalt = \"2 %\"\nyeast-instant = \"1 %\"\n\
    [[component.stage.step]]\naction = \"cream\"\ntext = \"Cream {butter-unsalted} and {sugar-caster}; add {flour-bread}, {milk-whole}, {salt}, {yeast-instant}.\"\ntime = \"5 min\"\n";

#[test]
fn what_cannot_be_is_told_why() {
    for (name, say, words, hint) in [
        ("leavening", vec![], "no exchange called", "leaven, preferment"),
        ("leaven", vec![], "no preferment", "dough"),
        ("straight", vec![], "no preferment", "dough"),
        ("preferment", vec![("into", "poolish")], "150", ""),
        ("preferment", vec![("into", "soaker")], "--into poolish", "soaker"),
        ("preferment", vec![("share", "130")], "--share", ""),
        ("yeast", vec![], "--into", "yeast-fresh"),
        ("yeast", vec![("into", "yeast-instant")], "already", ""),
        ("yeast", vec![("into", "yeast-frish")], "no ingredient is called", "yeast-fresh"),
        ("yeast", vec![("into", "salt")], "no baker's yeast", ""),
        ("egg-size", vec![("into", "L")], "no egg", "flour-bread"),
        ("egg-parts", vec![], "no egg", "flour-bread"),
        ("milk", vec![("into", "salt")], "no milk powder", ""),
        ("butter", vec![], "creamed", ""),
        ("honey", vec![("into", "salt")], "no honey", ""),
        ("flour", vec![], "--into, a flour", ""),
        ("flour", vec![("into", "salt")], "does not count as flour", ""),
        ("flour", vec![("into", "flour-bread")], "already", ""),
        ("tin", vec![("into", "2 l")], "--from", "does not state its tin"),
        ("tin", vec![("into", "a large one")], "a tin", "is none"),
        ("tin", vec![("from", "2 l"), ("into", "round 20 cm")], "give both alike", ""),
        ("altitude", vec![], "--altitude", ""),
        ("altitude", vec![("feet", "2000")], "begin at 3,000 feet", ""),
        ("altitude", vec![("feet", "33000")], "where people bake", ""),
    ] {
        let why = made(PLAIN, name, &say).expect_err(name);
        assert!(why.to_string().contains(words), "{name} {say:?}: {why}");
        assert!(why.hint().contains(hint), "{name} {say:?}: {}", why.hint());
    }
}

/// Nonsense is refused or made; it never falls over, and no text comes out that cannot be read.
#[test]
fn nonsense_never_falls_over() {
    let text = PLAIN.replace("\"cream\"", "\"mix\"");
    let book = book(&text);
    for one in ALL {
        for into in ["", "rye-culture", "yeast-fresh", "L", "0 l", "round 1e300 cm", "é{}\"\\"] {
            for number in ["-5", "0", "50", "1e9", "NaN"] {
                let said = [
                    ("into", into),
                    ("share", number),
                    ("hydration", number),
                    ("feet", number),
                    ("count", number),
                    ("from", "2 l"),
                    ("hours", number),
                ];
                match exchange(one.name, &book, "example", &around(), &wishes(&said)) {
                    Ok(made) => assert!(made.formula.lines().all(|(_, line)| line.mass.value.is_finite()), "{}", one.name),
                    Err(why) => assert!(!why.to_string().is_empty() && !matches!(why, Unfit::NoSuchExchange(_))),
                }
            }
        }
    }
}

#[test]
fn whatever_is_offered_is_of_the_right_kind() {
    let book = book(PLAIN);
    let plain = book.formula("example").expect("the example").value;
    let mut offered = Vec::new();
    for one in ALL {
        for into in (one.offers)(&plain, &book.pantry) {
            // It may be the very one, or be refused for what the formula does with it; never for what it is.
            if let Err(why) = made(PLAIN, one.name, &[("into", &into)]) {
                let why = why.to_string();
                let of_its_kind = ["is no ", "no ingredient", "does not count as flour"].iter().all(|words| !why.contains(words));
                assert!(of_its_kind, "{} --into {into}: {why}", one.name);
            }
            offered.push(format!("{} {into}", one.name));
        }
    }
    for wanted in ["yeast yeast-fresh", "milk milk-powder-skim", "butter oil-sunflower", "honey honey", "flour flour-rye-dark"] {
        assert!(offered.iter().any(|one| one == wanted), "{wanted} is not among {offered:?}");
    }
    assert!(offered.iter().all(|one| !one.starts_with("leaven") && !one.starts_with("tin")), "{offered:?}");
    let sponge = PLAIN.replace("kind = \"final-mix\"", "kind = \"sponge\"");
    let sponge = super::book(&sponge);
    let leavens = (ALL[0].offers)(&sponge.formula("example").expect("the example").value, &sponge.pantry);
    assert_eq!(leavens.first().map(String::as_str), Some("rye-culture"), "the book's own first");
}
