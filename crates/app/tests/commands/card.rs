//! `card`, and `--pdf` of other commands: printed where the program was built for it, and told where it was not.

use crate::sandbox::Sandbox;

const MUFFINS: &str = "saltmarsh/formulas/potato-muffins.toml";

#[cfg(feature = "pdf")]
#[test]
fn a_card_and_a_sheet_are_printed() {
    let sandbox = Sandbox::with_demo();
    for words in [
        vec!["card", MUFFINS, "out.pdf", "--paper", "index"],
        vec!["sheet", MUFFINS, "--pdf", "out.pdf"],
        vec!["day", MUFFINS, "--serve", "2026-11-29 09:30", "--now", "2026-11-27 12:00", "--zone", "UTC", "--pdf", "out.pdf"],
    ] {
        assert_eq!(sandbox.fine(&words), "");
        let bytes = std::fs::read(sandbox.path("out.pdf")).expect("a PDF");
        assert!(bytes.starts_with(b"%PDF-1.7"), "{words:?}");
        std::fs::remove_file(sandbox.path("out.pdf")).expect("it was there");
    }
}

/// A sheet that has no room is not written on: a larger one is taken where that may be, and said.
#[cfg(feature = "pdf")]
#[test]
fn labels_take_the_sheet_that_has_room() {
    let sandbox = Sandbox::with_demo();
    let rye = "saltmarsh/formulas/caraway-rye-tin.toml";
    let printed = |words: &[&str]| sandbox.run(&[&["label", rye, "--pdf", "labels.pdf"], words].concat());
    let ran = printed(&["--sheet", "70x36"]);
    assert!(ran.status == 0 && ran.err.contains("no room") && ran.err.contains("labels of 105x74"), "{}", ran.err);
    let bytes = std::fs::read(sandbox.path("labels.pdf")).expect("a PDF");
    assert!(bytes.starts_with(b"%PDF-1.7"));
    let ran = printed(&["--sheet", "70x36", "--from", "2"]);
    assert!(ran.status == 2 && ran.err.contains("without --from"), "{}", ran.err);
    let ran = printed(&["--sheet", "105x74", "--from", "9"]);
    assert!(ran.status == 2 && ran.err.contains("8 places, not 9"), "{}", ran.err);
}

/// Only a label that lacks nothing goes without the word.
#[cfg(feature = "pdf")]
#[test]
fn a_label_with_gaps_stays_a_draft() {
    let ran = Sandbox::with_demo().run(&["label", MUFFINS, "--pdf", "labels.pdf", "--checked"]);
    assert!(ran.status == 2 && ran.err.contains("lacks:") && ran.err.contains("without --checked"), "{}", ran.err);
}

/// Papers come and go with the pages that lead to them, and are printed anew only where something changed.
#[cfg(feature = "pdf")]
#[test]
fn papers_lie_beside_the_pages() {
    let sandbox = Sandbox::empty();
    let line = crate::sandbox::small_formula(
        "flour-bread = \"500 g\"\nwater = \"300 g\"\nsalt = \"10 g\"",
        "Mix {flour-bread}, {water}, {salt}.",
    );
    sandbox.write("book/formulas/flat.toml", line);
    let publish = |words: &[&str]| sandbox.run(&[&["publish", "book", "--out", "out"], words].concat()).err;
    publish(&["--with", "card,labels"]);
    let page = sandbox.read("out/flat.html");
    assert!(page.contains("href=\"paper/flat-card.pdf\"") && page.contains("href=\"paper/flat-labels.pdf\""), "{page}");
    assert!(sandbox.path("out/paper/flat-card.pdf").exists() && sandbox.path("out/paper/flat-labels.pdf").exists());
    let again = publish(&["--with", "labels", "--with", "card"]);
    assert!(again.contains("0 files written"), "{again}");
    publish(&[]);
    assert!(!sandbox.path("out/paper").exists() && !sandbox.read("out/flat.html").contains("paper/"));
}

#[cfg(not(feature = "pdf"))]
#[test]
fn without_pdf_it_is_told_how_to_get_it() {
    let sandbox = Sandbox::with_demo();
    let ran = sandbox.run(&["card", MUFFINS, "out.pdf"]);
    assert_eq!(ran.status, 2);
    assert!(ran.err.contains("--features pdf"), "{}", ran.err);
    assert!(!sandbox.path("out.pdf").exists());
    let ran = sandbox.run(&["publish", "saltmarsh", "--out", "out", "--with", "card"]);
    assert!(ran.status == 2 && ran.err.contains("--features pdf") && !sandbox.path("out").exists(), "{}", ran.err);
}

#[test]
fn a_pdf_shows_one_formula() {
    let ran = Sandbox::with_demo().run(&["sheet", "saltmarsh", "--pdf", "out.pdf"]);
    assert_eq!(ran.status, 2);
    assert!(ran.err.contains("one formula") && ran.err.contains("potato-muffins"), "{}", ran.err);
}
