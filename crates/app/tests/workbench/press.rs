//! Publishing: proof-read, printed, looked at; labels, sheets and costs; nothing outside the published folder is given.

use crate::browsed::Browsed;

#[test]
fn the_book_is_published_and_its_pages_are_served_apart() {
    let served = Browsed::demo();
    let page = served.page("/publish");
    for told in ["6 formulas proof-read: nothing amiss", "Publish the book", "cost"] {
        assert!(page.to_lowercase().contains(&told.to_lowercase()), "{told}");
    }
    assert_eq!(served.get("/published/index.html").status, 404, "it is not published yet");
    let to = served.sent_on("/publish", &[("note", "the winter edition")]);
    let after = served.page(&to);
    assert!(after.contains("Published: ") && after.contains("“the winter edition”"), "told, and remembered");
    let index = served.get("/published/index.html");
    assert_eq!(index.status, 200);
    assert!(index.head.contains("sandbox allow-scripts") && !index.head.contains("allow-same-origin"), "{}", index.head);
    assert!(served.page("/published/potato-muffins.html").contains("Griddled potato muffins"));
    assert!(served.path("../published-saltmarsh/index.html").exists(), "beside the book's folder");
    let again = served.sent_on("/publish", &[("note", "")]);
    assert!(again.contains("0%20files%20written"), "only what changed is made anew: {again}");
}

#[test]
fn nothing_but_published_pages_is_given() {
    let served = Browsed::demo();
    served.sent_on("/publish", &[("note", "")]);
    for path in [
        "/published/../book/book.toml",
        "/published/..%2Fbook%2Fbook.toml",
        "/published/%2e%2e/book/book.toml",
        "/published/.edition/record.json",
        "/published//etc/passwd",
        "/published/%2Fetc%2Fpasswd",
        "/published/index.html%00.png",
        "/published/nothing.html",
    ] {
        let answered = served.get(path);
        assert_eq!(answered.status, 404, "{path}");
        assert!(!answered.body.contains("currency") && !answered.body.contains("root:"), "{path}");
    }
}

#[test]
fn with_errors_nothing_is_published_and_where_they_are_is_told() {
    let served = Browsed::demo();
    let text = served.read("formulas/cardamom-knots.toml").replacen("instant", "instnt", 1);
    let shown = served.page("/formula/cardamom-knots/text");
    let from = shown.split("name=\"from\" value=\"").nth(1).and_then(|rest| rest.split('"').next()).expect("what was seen");
    assert_eq!(served.post("/formula/cardamom-knots/text", &[("text", &text), ("from", from)]).status, 303);
    let page = served.page("/publish");
    assert!(page.contains("With errors nothing is published") && page.contains("href=\"/formula/cardamom-knots\""));
    assert_eq!(served.post("/publish", &[("note", "")]).status, 422);
    assert!(!served.path("../published").exists());
}

#[test]
fn each_formula_gives_its_label_sheet_and_cost() {
    let served = Browsed::demo();
    for (what, told) in [
        ("label-uk", "Ingredients"),
        ("label-us", "Nutrition Facts"),
        ("label", "draft"),
        ("sheet", "Potato dough"),
        ("cost", "Ingredients"),
    ] {
        let answered = served.get(&format!("/publish/potato-muffins/{what}"));
        assert_eq!(answered.status, 200, "{what}");
        assert!(answered.body.contains(told), "{what}: {told}");
    }
    assert_eq!(served.get("/publish/potato-muffins/nothing").status, 404);
    assert_eq!(served.get("/publish/nothing/cost").status, 404);
    let card = served.get("/publish/potato-muffins/card.pdf");
    assert!(if cfg!(feature = "pdf") { card.head.contains("application/pdf") } else { card.status == 422 });
}
