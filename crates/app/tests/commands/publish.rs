//! `publish`: pages written whole, or not at all.

use crate::sandbox::{Sandbox, small_formula};

#[test]
fn the_demo_book_becomes_pages() {
    let sandbox = Sandbox::with_demo();
    sandbox.fine(&["publish", "saltmarsh", "--out", "site"]);
    let mut names: Vec<String> = std::fs::read_dir(sandbox.path("site"))
        .expect("pages")
        .map(|entry| entry.expect("a page").file_name().to_string_lossy().into_owned())
        .collect();
    names.sort();
    insta::assert_snapshot!("pages_written", names.join("\n"));
    let index = sandbox.read("site/index.html");
    for name in names.iter().filter(|name| *name != "index.html") {
        assert!(index.contains(&format!("href=\"{name}\"")), "the index leads to {name}");
    }
}

/// No address outside, and no script but the page's own, which its head names: a page works from a memory stick.
#[test]
fn pages_need_no_network_and_run_no_script_but_their_own() {
    let sandbox = Sandbox::with_demo();
    sandbox.fine(&["publish", "saltmarsh", "--out", "site"]);
    for entry in std::fs::read_dir(sandbox.path("site")).expect("pages").flatten() {
        let page = std::fs::read_to_string(entry.path()).expect("text");
        let scripts = page.matches("<script").count();
        let kinds = ["application/ld+json", "application/json", "module"];
        let known = kinds.map(|kind| page.matches(&format!("<script type=\"{kind}\"")).count());
        assert_eq!(scripts, known.iter().sum::<usize>(), "{:?}", entry.path());
        assert_eq!(known[2], page.matches("default-src 'none'; script-src 'sha256-").count(), "{:?}", entry.path());
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
    assert!(
        !page.contains("<script>alert") && !page.contains("<img src=x") && !page.contains("<b></script"),
        "markup came through"
    );
    let data =
        page.split("application/ld+json\">").nth(1).and_then(|rest| rest.split("</script>").next()).expect("structured data");
    let data: serde_json::Value = serde_json::from_str(data).expect("JSON");
    assert_eq!(data["name"].as_str().expect("a name"), evil.replace("\\\"", "\""));
    let drawing = sandbox.fine(&["sheet", "flat.toml", "--format", "svg"]);
    assert!(!drawing.contains("<script>"), "{drawing}");
}

/// A dot of PNG, from the format's own minimal example: one transparent pixel.
const DOT: &[u8] = &[
    0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0x0d, 0x49, 0x48, 0x44, 0x52, 0, 0, 0, 1, 0, 0, 0, 1, 8, 6, 0, 0, 0,
    0x1f, 0x15, 0xc4, 0x89, 0, 0, 0, 0x0a, 0x49, 0x44, 0x41, 0x54, 0x78, 0x9c, 0x63, 0, 1, 0, 0, 5, 0, 1, 0x0d, 0x0a, 0x2d, 0xb4,
    0, 0, 0, 0, 0x49, 0x45, 0x4e, 0x44, 0xae, 0x42, 0x60, 0x82,
];

#[test]
fn a_photograph_is_laid_into_the_page() {
    let sandbox = Sandbox::empty();
    let formula = small_formula("flour-bread = \"500 g\"", "Mix {flour-bread}.");
    let with =
        |file: &str| formula.replacen("\n\n", &format!("\n\n[photograph]\nfile = \"{file}\"\nalt = \"A flat bread\"\n\n"), 1);
    sandbox.write("outside.png", DOT);
    sandbox.write("book/book.toml", "title = \"Breads\"\n");
    sandbox.write("book/photographs/flat.png", DOT);
    sandbox.write("book/formulas/flat.toml", with("photographs/flat.png"));
    sandbox.fine(&["publish", "book", "--out", "site"]);
    assert!(sandbox.read("site/flat.html").contains("<img src=\"data:image/png;base64,iVBOR"));
    for (file, reason) in
        [("photographs/none.png", "not in the book"), ("../outside.png", "not in the book"), ("book.toml", "no picture")]
    {
        sandbox.write("book/formulas/flat.toml", with(file));
        let ran = sandbox.run(&["publish", "book", "--out", "site"]);
        assert_eq!(ran.status, 1, "{file}");
        assert!(ran.out.contains("photograph-not-usable") && ran.out.contains(reason), "{file}: {}", ran.out);
        assert!(!sandbox.read("site/flat.html").contains("<img"));
    }
}

#[test]
fn a_folder_that_cannot_be() {
    let sandbox = Sandbox::with_demo();
    sandbox.write("site", "not a folder");
    for (out, reason) in [("site", "site is a file, not a folder"), ("site/inner", "site is a file, not a folder")] {
        let ran = sandbox.run(&["publish", "saltmarsh", "--out", out]);
        assert_eq!(ran.status, 2, "{out}");
        assert!(ran.err.contains(reason), "{out}: {}", ran.err);
    }
    assert_eq!(sandbox.read("site"), "not a folder");
}

/// The kernel's own folder takes no new ones, not even from the superuser.
#[cfg(target_os = "linux")]
#[test]
fn a_folder_that_cannot_be_written() {
    let ran = Sandbox::with_demo().run(&["publish", "saltmarsh", "--out", "/proc/site"]);
    assert_eq!(ran.status, 2);
    assert!(ran.err.contains("could not write into the folder /proc/site"), "{}", ran.err);
}

#[test]
fn no_formula_takes_the_place_of_the_index() {
    let sandbox = Sandbox::empty();
    sandbox.write("book/formulas/index.toml", small_formula("flour-bread = \"500 g\"", "Mix {flour-bread}."));
    let ran = sandbox.run(&["publish", "book", "--out", "site"]);
    assert_eq!(ran.status, 1, "{}", ran.err);
    assert!(ran.out.contains("name-not-plain") && ran.out.contains("the place of the index"), "{}", ran.out);
    assert!(!sandbox.path("site").exists());
}
