//! `publish`: pages written whole, or not at all.

use crate::sandbox::{small_formula, Sandbox};

#[test]
fn the_demo_book_becomes_pages() {
    let sandbox = Sandbox::with_demo();
    sandbox.fine(&["publish", "saltmarsh", "--out", "site"]);
    let mut names: Vec<String> =
        std::fs::read_dir(sandbox.path("site")).expect("pages").map(|entry| entry.expect("a page").file_name().to_string_lossy().into_owned()).collect();
    names.sort();
    insta::assert_snapshot!("pages_written", names.join("\n"));
    let index = sandbox.read("site/index.html");
    for name in names.iter().filter(|name| *name != "index.html") {
        assert!(index.contains(&format!("href=\"{name}\"")), "the index leads to {name}");
    }
}

/// No address outside, no script: a page works from a memory stick.
#[test]
fn pages_need_no_network_and_no_script() {
    let sandbox = Sandbox::with_demo();
    sandbox.fine(&["publish", "saltmarsh", "--out", "site"]);
    for entry in std::fs::read_dir(sandbox.path("site")).expect("pages").flatten() {
        let page = std::fs::read_to_string(entry.path()).expect("text");
        let scripts = page.matches("<script").count();
        assert_eq!(scripts, page.matches("<script type=\"application/ld+json\"").count(), "{:?}", entry.path());
        assert!(!page.contains("<link") && !page.contains("@import") && !page.contains("url(http"), "{:?}", entry.path());
        assert!(!page.contains("src=\"http") && !page.contains("href=\"http"), "{:?}", entry.path());
    }
}

#[test]
fn publishing_twice_gives_the_same_bytes() {
    let sandbox = Sandbox::with_demo();
    sandbox.fine(&["publish", "saltmarsh", "--out", "one"]);
    sandbox.fine(&["publish", "saltmarsh", "--out", "two"]);
    assert_eq!(sandbox.read("one/potato-muffins.html"), sandbox.read("two/potato-muffins.html"));
}

#[test]
fn errors_stop_the_press() {
    let sandbox = Sandbox::empty();
    sandbox.write("flat.toml", small_formula("flour-bred = \"500 g\"", "Mix."));
    let ran = sandbox.run(&["publish", "flat.toml", "--out", "site"]);
    assert_eq!(ran.status, 1);
    assert!(ran.err.contains("nothing was written"), "{}", ran.err);
    assert!(!sandbox.path("site").exists());
}

#[test]
fn the_book_itself_is_not_written_over() {
    let sandbox = Sandbox::with_demo();
    let ran = sandbox.run(&["publish", "saltmarsh", "--out", "saltmarsh/formulas"]);
    assert_eq!(ran.status, 2);
    assert!(ran.err.contains("is the book itself"), "{}", ran.err);
}

#[test]
fn markup_in_an_authors_text_stays_text() {
    let sandbox = Sandbox::empty();
    let evil = "</script><script>alert(1)</script>\u{202e}🥐 & \\\"quotes\\\"";
    let formula = small_formula(
        &format!("flour-bread = {{ amount = \"500 g\", title = \"{evil}\", note = \"<b>{evil}\" }}"),
        "Mix {flour-bread} <img src=x onerror=alert(1)>.",
    );
    sandbox.write("flat.toml", formula.replace("Flat bread", evil));
    sandbox.fine(&["publish", "flat.toml", "--out", "site"]);
    let page = sandbox.read("site/flat.html");
    assert!(!page.contains("<script>alert") && !page.contains("<img src=x") && !page.contains("<b></script"), "markup came through");
    let data = page.split("application/ld+json\">").nth(1).and_then(|rest| rest.split("</script>").next()).expect("structured data");
    let data: serde_json::Value = serde_json::from_str(data).expect("JSON");
    assert_eq!(data["name"].as_str().expect("a name"), evil.replace("\\\"", "\""));
    let drawing = sandbox.fine(&["sheet", "flat.toml", "--format", "svg"]);
    assert!(!drawing.contains("<script>"), "{drawing}");
}
