//! `label`: drafts in every form, for three laws, and hostile titles.

use crate::sandbox::{Sandbox, small_formula};

const MUFFINS: &str = "saltmarsh/formulas/potato-muffins.toml";
const RYE: &str = "saltmarsh/formulas/caraway-rye-tin.toml";

#[test]
fn for_the_united_kingdom() {
    insta::assert_snapshot!("label_as_text", Sandbox::with_demo().fine(&["label", MUFFINS]));
}

#[test]
fn for_the_united_states() {
    insta::assert_snapshot!("label_for_us", Sandbox::with_demo().fine(&["label", RYE, "--for", "us"]));
}

#[test]
fn one_component_apart() {
    let words = ["label", MUFFINS, "--component", "syrup", "--for", "eu", "--format", "json"];
    insta::assert_snapshot!("label_as_json", Sandbox::with_demo().fine(&words));
}

#[test]
fn a_component_that_is_not_there() {
    let ran = Sandbox::with_demo().run(&["label", MUFFINS, "--component", "sirup"]);
    assert_eq!(ran.status, 2);
    assert!(ran.err.contains("did you mean “syrup”?"), "{}", ran.err);
}

/// “Draft” and whose decision it is stand on every sheet in every form; gaps are told.
#[test]
fn every_sheet_is_a_draft() {
    let sandbox = Sandbox::with_demo();
    for law in ["eu", "uk", "us"] {
        for format in ["text", "json", "html"] {
            let out = sandbox.fine(&["label", "saltmarsh", "--for", law, "--format", format]);
            let sheets = out.matches("Draft, not advice: check it with your authority").count();
            assert_eq!(sheets, 6, "{law} {format}");
        }
    }
}

/// Titles and names full of markup come out as text, and allergens are bold without colour.
#[test]
fn the_sheet_takes_nothing_for_markup() {
    let sandbox = Sandbox::empty();
    let title = "title = \"</script><script>alert(1)</script> & \\\"x\\\" \u{202e}🥐\"";
    let formula =
        small_formula("flour-bread = \"500 g\"\nwater = \"300 g\"\nsalt = \"10 g\"", "Mix {flour-bread}, {water}, {salt}.");
    sandbox.write("flat.toml", formula.replace("title = \"Flat bread\"", title));
    let html = sandbox.fine(&["label", "flat.toml", "--format", "html"]);
    assert!(!html.contains("<script"), "{html}");
    assert!(html.contains("&lt;/script&gt;"));
    assert!(html.contains("<b>wheat</b> flour"));
}

/// What a label calls by a name that is not there is a fault with its place.
#[test]
fn a_label_of_nothing_is_a_fault() {
    let sandbox = Sandbox::with_demo();
    let text = sandbox.read(MUFFINS).replace("[label]\n", "[label]\nof = [\"muffin\"]\nstressed = [\"quinces\"]\n");
    sandbox.write(MUFFINS, text.replace("eaten-as = \"scones\"", "eaten-as = \"scone\""));
    let ran = sandbox.run(&["check", "saltmarsh"]);
    for code in ["unknown-component", "reference-to-nothing", "unknown-word"] {
        assert!(ran.out.contains(code), "{code}\n{}", ran.out);
    }
    assert!(ran.out.contains("did you mean “muffins”?") && ran.out.contains("did you mean “quince”?"), "{}", ran.out);
}
