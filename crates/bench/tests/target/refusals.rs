//! What cannot be solved for is told, with what the formula has instead; nothing falls over.

use super::{POOLISH, RICH, SYRUP, around, asked, book, solved};
use bench::target::{ALL, Asked, Ready, When, solve};
use quantity::TimeSpan;

#[test]
fn what_cannot_be_is_told_why() {
    for (text, target, say, words, hint) in [
        (RICH, "leavening", vec![], "no target called", "yeast, begin"),
        (RICH, "yeast", vec![], "a time", "--ripe-after"),
        (RICH, "yeast", vec![("stage", "sponge")], "ferments by yeast", "dough"),
        (RICH, "begin", vec![], "--ripe-at", "07:30"),
        (SYRUP, "begin", vec![], "--ripe-at", ""),
        (SYRUP, "water", vec![], "flour that is mixed", "syrup"),
        (RICH, "water", vec![("to", "warm")], "--to", "“warm”"),
        (RICH, "water", vec![("to", "95 °C")], "from 5 °C to 45 °C", ""),
        (RICH, "flour", vec![], "--to, the protein", "10.5 %"),
        (RICH, "flour", vec![("to", "10.5 %")], "which flour?", "flour-bread"),
        (RICH, "flour", vec![("to", "10.5 %"), ("of", "flour-bread")], "--with", "flour-cake"),
        (RICH, "flour", vec![("to", "10.5 %"), ("of", "flour-bread"), ("with", "salt")], "count as flour", ""),
        (RICH, "flour", vec![("to", "10.5 %"), ("of", "flour-bread"), ("with", "flour-bread")], "another flour", ""),
        (RICH, "flour", vec![("to", "20 %"), ("of", "flour-bread"), ("with", "flour-cake")], "the two flours reach", ""),
        (RICH, "hydration", vec![], "--to, the true hydration", "62 %"),
        (RICH, "hydration", vec![("to", "lots")], "--to", "no percentage"),
        (RICH, "hydration", vec![("to", "900 %")], "out of all custom", ""),
        (RICH, "hydration", vec![("to", "10 %")], "would have to be taken", ""),
        (SYRUP, "hydration", vec![("to", "62 %")], "stage with flour", "syrup"),
        (RICH, "syrup", vec![("to", "65 Brix")], "cooked stage with sugar", "dough"),
        (SYRUP, "syrup", vec![], "--to, the strength", "65 Brix"),
        (SYRUP, "syrup", vec![("to", "sticky")], "--to", "“sticky”"),
        (SYRUP, "syrup", vec![("to", "99 Brix")], "10 to 85 Brix", ""),
        (SYRUP, "syrup", vec![("to", "65 Brix"), ("of", "honey")], "sugar called “honey”", "sugar-granulated"),
        (SYRUP, "syrup", vec![("to", "65 Brix"), ("of", "water")], "no weight of water", ""),
        (RICH, "batch", vec![], "--to, the bowl", "4 l"),
        (RICH, "batch", vec![("to", "a large one")], "--to", "is neither"),
        (RICH, "batch", vec![("to", "40 ml")], "not even one", ""),
        (RICH, "batch", vec![("to", "90000 l")], "no kitchen", ""),
        (SYRUP, "batch", vec![("to", "4 l")], "dough in its main component", ""),
        (RICH, "reformulate", vec![], "--aim", "hydration, true-hydration"),
        (RICH, "reformulate", vec![("aim", "taste=90")], "--aim", "“taste”"),
        (RICH, "reformulate", vec![("aim", "salt=2"), ("aim", "salt=1")], "aimed at twice", ""),
        (RICH, "reformulate", vec![("aim", "salt=2"), ("within", "0")], "--within", "20 %"),
        (RICH, "reformulate", vec![("aim", "salt=2"), ("keep", "saffron")], "saffron", "salt"),
        (SYRUP, "reformulate", vec![("aim", "salt=2")], "no flour", ""),
        (RICH, "price", vec![("to", "0.60 EUR")], "no prices", ""),
    ] {
        let why = solved(text, target, &say).expect_err(target);
        assert!(why.to_string().contains(words), "{target} {say:?}: {why}");
        assert!(why.hint().contains(hint), "{target} {say:?}: {}", why.hint());
    }
}

/// Nonsense is refused or answered; it never falls over, and no weight comes out that is no number.
#[test]
fn nonsense_never_falls_over() {
    let readies = [
        Ready::After(When::Ripe(TimeSpan::hours(f64::NAN))),
        Ready::After(When::Risen(TimeSpan::hours(1e9))),
        Ready::RipeAt(TimeSpan::hours(7.5)),
        Ready::RisenAt(TimeSpan::ZERO),
    ];
    for text in [RICH, POOLISH, SYRUP] {
        let book = book(text);
        for one in ALL {
            for (number, to) in ["", "-5 %", "0 Brix", "1e300 l", "NaN °C", "é{}\"\\"].into_iter().enumerate() {
                let said = asked(&[
                    ("to", to),
                    ("with", "flour-cake"),
                    ("count", "1e9"),
                    ("within", "50"),
                    ("aim", "salt=0"),
                    ("aim", "fat=399"),
                ]);
                let asked = Asked { ready: readies.get(number % 4).copied(), begun: Some(TimeSpan::hours(21.0)), ..said };
                match solve(one.name, &book, "example", &around(21.0), &asked) {
                    Ok(solved) => assert!(
                        solved.changed.iter().flat_map(|one| one.formula.lines()).all(|(_, line)| line.mass.value.is_finite()),
                        "{}",
                        one.name
                    ),
                    Err(why) => assert!(!why.to_string().is_empty()),
                }
            }
        }
    }
}
