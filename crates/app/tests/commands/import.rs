//! `import`: the preview, what is written, what is refused with line and column.

use crate::sandbox::Sandbox;

const PRICES: &str = "of,pack,costs,on,from\nflour-strong-white,1.5 kg,1.55 EUR,2026-11-20,\nbutter-unsalted,250 g,2.75 EUR,2026-11-05,\n\
                      milk-whole,1 l,1.25,2026-11-05,\nbay-leaf,10 g,0.90,2026-11-20,\"the greengrocer, upstairs\"\n";

#[test]
fn a_preview_writes_nothing() {
    let sandbox = Sandbox::with_demo();
    let before = sandbox.read("saltmarsh/prices.toml");
    sandbox.write("autumn.csv", PRICES);
    let ran = sandbox.run(&["import", "prices", "autumn.csv", "saltmarsh"]);
    insta::assert_snapshot!("import_prices", ran.out);
    assert_eq!(ran.status, 0);
    assert!(ran.err.contains("nothing is written"), "{}", ran.err);
    assert_eq!(sandbox.read("saltmarsh/prices.toml"), before);
}

/// What is there stays, comments and order too; brought in once more, nothing changes.
#[test]
fn prices_are_laid_into_the_file() {
    let sandbox = Sandbox::with_demo();
    let before = sandbox.read("saltmarsh/prices.toml");
    sandbox.write("autumn.csv", PRICES);
    sandbox.fine(&["import", "prices", "autumn.csv", "saltmarsh", "--in-place"]);
    let after = sandbox.read("saltmarsh/prices.toml");
    let expected = before.replace("costs = \"2.60 EUR\"", "costs = \"2.75 EUR\"");
    assert!(after.starts_with(&expected), "{after}");
    assert!(after.ends_with(
        "[[price]]\nof = \"bay-leaf\"\npack = \"10 g\"\ncosts = \"0.90 EUR\"\non = 2026-11-20\nfrom = \"the greengrocer, upstairs\"\n"
    ));
    assert_eq!(sandbox.run(&["check", "saltmarsh"]).status, 0);
    let again = sandbox.run(&["import", "prices", "autumn.csv", "saltmarsh", "--in-place"]);
    assert!(again.out.contains("0 new, 0 changed, 4 as in the book"), "{}", again.out);
    assert_eq!(sandbox.read("saltmarsh/prices.toml"), after);
}

/// A book without prices gets its file.
#[test]
fn the_first_prices() {
    let sandbox = Sandbox::with_demo();
    std::fs::remove_file(sandbox.path("saltmarsh/prices.toml")).expect("the file goes");
    sandbox.write("autumn.csv", "of;pack;costs\nsalt;1 kg;0,62\n");
    sandbox.fine(&["import", "prices", "autumn.csv", "saltmarsh", "--in-place"]);
    assert_eq!(sandbox.read("saltmarsh/prices.toml").trim(), "[[price]]\nof = \"salt\"\npack = \"1 kg\"\ncosts = \"0,62 EUR\"");
    assert_eq!(sandbox.run(&["check", "saltmarsh"]).status, 0);
}

/// Every wrong cell is told with its line and column, and nothing is taken.
#[test]
fn a_wrong_table_is_refused_whole() {
    let sandbox = Sandbox::with_demo();
    let before = sandbox.read("saltmarsh/prices.toml");
    sandbox.write(
        "bad.csv",
        "of,pack,costs,on,colour\nflour-strong-whte,1.5 kg,1.55 EUR,2026-11-20,red\nbutter-unsalted,250 furlongs,\"2,75 GBP\",20.11.2026,\n\
         ,0 g,=1+1,,\nsalt,1 kg,0.60 EUR,2026-11-20,,extra\nsalt,1 kg,0.62 EUR,2026-11-20,\n",
    );
    let ran = sandbox.run(&["import", "prices", "bad.csv", "saltmarsh", "--in-place"]);
    assert_eq!(ran.status, 1);
    insta::assert_snapshot!("import_refused", ran.out);
    assert_eq!(sandbox.read("saltmarsh/prices.toml"), before);
}

#[test]
fn a_table_without_its_columns_is_refused() {
    let sandbox = Sandbox::with_demo();
    for (table, told) in [
        ("", "no column “of”"),
        ("of,pack\nsalt,1 kg\n", "no column “costs”"),
        ("of,pack,costs,costs\n", "two columns are called “costs”"),
    ] {
        sandbox.write("bad.csv", table);
        let ran = sandbox.run(&["import", "prices", "bad.csv", "saltmarsh"]);
        assert_eq!(ran.status, 1, "{table}");
        assert!(ran.out.contains(told), "{table}\n{}", ran.out);
    }
    sandbox.write("bad.csv", b"of,pack,costs\nsa\xfflt,1 kg,1 EUR\n");
    assert!(sandbox.run(&["import", "prices", "bad.csv", "saltmarsh"]).out.contains("not-text"));
    assert_eq!(sandbox.run(&["import", "prices", "nowhere.csv", "saltmarsh"]).status, 2);
}

/// Own ingredients: a row changes what its cells say and no more; a new one goes into the file that is named; one of a
/// built-in name starts from the table.
#[test]
fn ingredients_are_laid_in() {
    let sandbox = Sandbox::with_demo();
    let before = sandbox.read("saltmarsh/ingredients/mill.toml");
    sandbox.write(
        "mill.csv",
        "name;title;called;like;protein;salt;allergens\nmill-strong-white;;;;12,9;;\nmill-spelt;Spelt flour, tide mill;spelt flour;flour-spelt;13,1;0,01;wheat\n\
         butter-salted;;;;0,7;1,5;milk\n",
    );
    let words = ["import", "ingredients", "mill.csv", "saltmarsh", "--into", "ingredients/mill.toml"];
    insta::assert_snapshot!("import_ingredients", sandbox.fine(&words));
    let mut written = words.to_vec();
    written.push("--in-place");
    sandbox.fine(&written);
    let after = sandbox.read("saltmarsh/ingredients/mill.toml");
    assert!(after.starts_with(&before.replace("protein = 12.4", "protein = 12.9")), "{after}");
    assert!(after.contains("[butter-salted]\nlike = \"butter-salted\""), "{after}");
    assert_eq!(sandbox.run(&["check", "saltmarsh"]).status, 0);
    let butter = sandbox.fine(&["ingredients", "butter-salted", "--book", "saltmarsh", "--format", "json"]);
    assert!(butter.contains("\"fat\": 81"), "what the table knows is kept: {butter}");
    assert!(sandbox.fine(&words).contains("0 new, 0 changed, 3 as in the book"));
}

#[test]
fn wrong_ingredients_are_refused() {
    let sandbox = Sandbox::with_demo();
    sandbox.write("bad.csv", "name,protein,like,counts-as-flour\nBad Name!,12,,\nx,minus,flour-bred,\nx,-3,,perhaps\n");
    let ran = sandbox.run(&["import", "ingredients", "bad.csv", "saltmarsh"]);
    assert_eq!(ran.status, 1);
    for told in ["name-not-plain", "bad.csv:3:3", "did you mean “flour-bread”?", "name-twice", "amount-negative", "wrong-kind"]
    {
        assert!(ran.out.contains(told), "{told}\n{}", ran.out);
    }
    for into in ["../elsewhere.toml", "ingredients/../../x.toml", "formulas/x.toml", "ingredients/x.csv"] {
        let ran = sandbox.run(&["import", "ingredients", "bad.csv", "saltmarsh", "--into", into]);
        assert_eq!(ran.status, 2, "{into}");
    }
}

/// A chain of own ingredients that would go in a circle is refused before anything is written.
#[test]
fn a_book_that_would_have_an_error_is_refused() {
    let sandbox = Sandbox::with_demo();
    sandbox.write("bad.csv", "name,like\na,b\nb,a\n");
    let ran = sandbox.run(&["import", "ingredients", "bad.csv", "saltmarsh", "--in-place"]);
    assert_eq!(ran.status, 1, "{}", ran.out);
    assert!(!sandbox.path("saltmarsh/ingredients/imported.toml").exists());
}
