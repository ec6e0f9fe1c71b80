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

#[cfg(not(feature = "pdf"))]
#[test]
fn without_pdf_it_is_told_how_to_get_it() {
    let sandbox = Sandbox::with_demo();
    let ran = sandbox.run(&["card", MUFFINS, "out.pdf"]);
    assert_eq!(ran.status, 2);
    assert!(ran.err.contains("--features pdf"), "{}", ran.err);
    assert!(!sandbox.path("out.pdf").exists());
}

#[test]
fn a_pdf_shows_one_formula() {
    let ran = Sandbox::with_demo().run(&["sheet", "saltmarsh", "--pdf", "out.pdf"]);
    assert_eq!(ran.status, 2);
    assert!(ran.err.contains("one formula") && ran.err.contains("potato-muffins"), "{}", ran.err);
}
