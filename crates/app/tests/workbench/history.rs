//! What a formula said before: saved, told, held against what stands, taken up again; and formulas side by side.

use crate::browsed::Browsed;

const PAGE: &str = "/formula/cardamom-knots/history";
const FILE: &str = "formulas/cardamom-knots.toml";

/// A hidden field of a page.
fn field<'p>(page: &'p str, name: &str) -> &'p str {
    let begin = format!("name=\"{name}\" value=\"");
    page.split(&begin).nth(1).and_then(|rest| rest.split('"').next()).unwrap_or_else(|| panic!("no {name}"))
}

/// Writes the formula as the text view does.
fn write(served: &Browsed, text: &str, from: &str) -> u16 {
    served.post("/formula/cardamom-knots/text", &[("text", text), ("from", from)]).status
}

#[test]
fn a_revision_is_saved_told_and_taken_up_again() {
    let served = Browsed::demo();
    let first = served.read(FILE);
    let to = served.sent_on(&format!("{PAGE}/save"), &[("note", "as my <grandmother> had it")]);
    assert!(served.page(&to).contains("Saved as revision 1."));
    let text = served.page("/formula/cardamom-knots/text");
    let sweeter = first.replacen("title = \"Cardamom knots with almond butter\"", "title = \"Knots\"", 1);
    assert_ne!(sweeter, first);
    assert_eq!(write(&served, &sweeter, field(&text, "from")), 303);
    served.sent_on(&format!("{PAGE}/save"), &[("note", "")]);
    let page = served.page(PAGE);
    for told in ["“as my &lt;grandmother&gt; had it”", "Changed: its words", "text changed"] {
        assert!(page.contains(told), "{told}");
    }
    let difference = served.page(&format!("{PAGE}?at=revision-1"));
    assert!(difference.contains("title = &quot;Knots&quot;") && difference.contains("<ins>"), "line by line");
    let wish = [("at", "revision-1"), ("from", field(&difference, "from"))];
    served.sent_on(&format!("{PAGE}/take"), &wish);
    assert_eq!(served.read(FILE), first);
    assert!(served.page(PAGE).contains("revision 1 taken up again"));
    assert_eq!(served.post("/formula/cardamom-knots/back", &[]).status, 303);
    assert_eq!(served.read(FILE), sweeter, "taking up is a stroke as any other");
    for hostile in ["revision-99", "stroke-0", "aside-7", "nothing", "revision--1"] {
        let status = served.post(&format!("{PAGE}/take"), &[("at", hostile), ("from", "")]).status;
        assert_eq!(status, 404, "{hostile}");
    }
}

#[test]
fn what_was_kept_aside_after_a_conflict_is_taken_up_by_one_click() {
    let served = Browsed::demo();
    let first = served.read(FILE);
    let seen = served.page("/formula/cardamom-knots/text");
    let from = field(&seen, "from").to_owned();
    let (mine, theirs) = (format!("{first}# mine\n"), format!("{first}# theirs\n"));
    assert_eq!(write(&served, &theirs, &from), 303);
    assert_eq!(write(&served, &mine, &from), 409, "theirs is not overwritten");
    assert_eq!(served.read(FILE), theirs);
    // What is done afterwards does not lose it.
    let now = served.page("/formula/cardamom-knots/text");
    assert_eq!(write(&served, &format!("{theirs}# more\n"), field(&now, "from")), 303);
    let page = served.page(PAGE);
    assert!(page.contains("Kept aside") && page.contains("at=aside-1"));
    let difference = served.page(&format!("{PAGE}?at=aside-1"));
    assert!(difference.contains("# mine") && difference.contains("# theirs") && difference.contains("# more"));
    served.sent_on(&format!("{PAGE}/take"), &[("at", "aside-1"), ("from", field(&difference, "from"))]);
    assert_eq!(served.read(FILE), mine);
    assert!(!served.page(PAGE).contains("nothing was overwritten"), "it is aside no longer");
}

#[test]
fn revisions_and_formulas_stand_side_by_side() {
    let served = Browsed::demo();
    let compare = "/formula/potato-muffins/compare";
    assert!(served.page(compare).contains("Tick what it is held against."));
    served.sent_on("/formula/potato-muffins/history/save", &[("note", "first")]);
    let page = served.page(&format!("{compare}?with=revision-1&with=formula-cardamom-knots"));
    let knots = "<th class=\"number\" scope=\"col\">Cardamom knots</th>";
    for told in ["as it stands", "revision 1", knots, "hydration, true"] {
        assert!(page.contains(told), "{told}");
    }
    assert_eq!(served.get(&format!("{compare}?with=revision-9")).status, 404);
    assert_eq!(served.get(&format!("{compare}?with=formula-nothing")).status, 404);
    assert_eq!(served.get("/formula/nothing/compare").status, 404);
}
