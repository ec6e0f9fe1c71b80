//! `publish`: pages written whole, or not at all.

use crate::sandbox::{Sandbox, small_formula};

#[test]
fn the_demo_book_becomes_pages() {
    let sandbox = Sandbox::with_demo();
    sandbox.fine(&["publish", "saltmarsh", "--out", "site"]);
    let names = sandbox.files("site");
    insta::assert_snapshot!("pages_written", names.join("\n"));
    let index = sandbox.read("site/index.html");
    let is_of_a_formula = |name: &&String| name.ends_with(".html") && !name.ends_with(".evidence.html") && *name != "index.html";
    for name in names.iter().filter(is_of_a_formula) {
        assert!(index.contains(&format!("href=\"{name}\"")), "the index leads to {name}");
    }
}

/// A page that is to be read on a phone weighs less than 150 kB before its photographs.
#[test]
fn pages_are_light() {
    let sandbox = Sandbox::with_demo();
    sandbox.fine(&["publish", "saltmarsh", "--out", "site"]);
    for name in sandbox.files("site").iter().filter(|name| name.ends_with(".html")) {
        let weighs = sandbox.read(&format!("site/{name}")).len();
        assert!(weighs < 150_000, "{name} weighs {weighs} bytes");
    }
}

/// Two formulas, and what each page says of the other; `address` is where the book stands, if anywhere.
fn in_two_languages(address: &str, german: &str) -> Sandbox {
    let sandbox = Sandbox::empty();
    sandbox.write("book/book.toml", format!("title = \"Breads\"\n{address}"));
    let flat = small_formula("flour-rye-medium = \"500 g\"\nquark = \"100 g\"", "Mix {flour-rye-medium} and {quark}.");
    sandbox.write("book/formulas/flat-bread.toml", flat);
    let fladen = small_formula("roggenmehl = \"500 g\"\nquark = \"100 g\"", "{roggenmehl} und {quark} mischen.");
    let head = format!("title = \"Fladen\"\n{german}\ntranslations = [\"flat-bread\"]");
    sandbox.write("book/formulas/fladen.toml", fladen.replace("title = \"Flat bread\"", &head));
    sandbox
}

/// The languages and pages that a page says it stands in.
fn alternates(page: &str) -> Vec<(String, String)> {
    let part = |link: &str, name: &str| {
        let value = link.split(&format!("{name}=\"")).nth(1).and_then(|rest| rest.split('"').next());
        value.unwrap_or_default().to_owned()
    };
    let links = page.split("<link ").skip(1).filter(|link| link.starts_with("rel=\"alternate\" hreflang"));
    links.map(|link| (part(link, "hreflang"), part(link, "href"))).collect()
}

/// HTML 4.8.6 and BCP 47: a page names its language, and every language in which it stands, itself among them, so that
/// each leads to each though only one of them says so.
#[test]
fn a_formula_in_two_languages_leads_from_one_to_the_other() {
    let sandbox = in_two_languages("address = \"https://example.org/\"\n", "language = \"de\"");
    sandbox.fine(&["publish", "book", "--out", "site"]);
    let [english, german] = ["flat-bread", "fladen"].map(|name| sandbox.read(&format!("site/{name}.html")));
    assert!(english.contains("<html lang=\"en-GB\">") && german.contains("<html lang=\"de\">"));
    let page = |name: &str| format!("https://example.org/{name}.html");
    let both = [("de".to_owned(), page("fladen")), ("en-GB".to_owned(), page("flat-bread"))];
    for page in [&english, &german] {
        let mut told = alternates(page);
        told.sort();
        assert_eq!(told, both);
    }
    assert!(english.contains("<a href=\"fladen.html\" lang=\"de\" hreflang=\"de\" rel=\"alternate\">Deutsch: Fladen</a>"));
    assert!(german.contains("hreflang=\"en-GB\" rel=\"alternate\">English: Flat bread</a>"));
    assert!(german.contains(">Magerquark</a>") && english.contains(">low-fat quark</a>"), "each names its ingredients");
    assert!(german.contains("<a href=\"index.html\" lang=\"en-GB\">Breads</a>"), "the book's title is English");
    assert!(sandbox.read("site/index.html").contains("<h2 lang=\"de\"><a href=\"fladen.html\">Fladen</a></h2>"));
    assert!(sandbox.read("site/feed.xml").contains("<entry xml:lang=\"de\">"));
    // A new title is on the other's page at once.
    let fladen = sandbox.read("book/formulas/fladen.toml");
    sandbox.write("book/formulas/fladen.toml", fladen.replace("title = \"Fladen\"", "title = \"Roggenfladen\""));
    sandbox.fine(&["publish", "book", "--out", "site"]);
    assert!(sandbox.read("site/flat-bread.html").contains(">Deutsch: Roggenfladen</a>"));
}

#[test]
fn a_book_without_an_address_still_leads_to_its_translations() {
    let sandbox = in_two_languages("", "language = \"de-AT\"");
    sandbox.fine(&["publish", "book", "--out", "site"]);
    let german = sandbox.read("site/fladen.html");
    let both = [("de-AT", "fladen.html"), ("en-GB", "flat-bread.html")].map(|(a, b)| (a.to_owned(), b.to_owned()));
    assert_eq!(alternates(&german), both);
    assert!(german.contains(">Magertopfen</a>"), "Austria's own word");
}

#[test]
fn a_translation_is_of_another_language() {
    let ran = in_two_languages("", "").run(&["check", "book"]);
    assert_eq!(ran.status, 1, "{}", ran.out);
    assert!(ran.out.contains("translation-in-one-language"), "{}", ran.out);
    let ran = in_two_languages("", "language = \"Deutsch\"").run(&["check", "book"]);
    assert!(ran.out.contains("not-a-language"), "{}", ran.out);
    let sandbox = in_two_languages("", "language = \"de\"");
    let fladen = sandbox.read("book/formulas/fladen.toml");
    sandbox.write("book/formulas/fladen.toml", fladen.replace("[\"flat-bread\"]", "[\"flat-bred\"]"));
    let ran = sandbox.run(&["check", "book"]);
    assert!(ran.out.contains("unknown-formula") && ran.out.contains("flat-bread"), "{}", ran.out);
}

/// Nothing is fetched: a page works from a memory stick. Addresses outside are told, never loaded.
#[test]
fn pages_need_no_network() {
    let sandbox = Sandbox::with_demo();
    sandbox.fine(&["publish", "saltmarsh", "--out", "site"]);
    for name in sandbox.files("site").iter().filter(|name| name.ends_with(".html")) {
        let page = sandbox.read(&format!("site/{name}"));
        assert!(!page.contains("<script src") && !page.contains("@import") && !page.contains("url(http"), "{name}");
        assert!(!page.contains("src=\"http") && !page.contains("<a href=\"http"), "{name}");
        // No script but the page's own, which its head names.
        let known = ["application/ld+json", "application/json", "module"]
            .map(|kind| page.matches(&format!("<script type=\"{kind}\"")).count());
        assert_eq!(page.matches("<script").count(), known.iter().sum::<usize>(), "{name}");
        assert_eq!(known[2], page.matches("default-src 'none'; script-src 'sha256-").count(), "{name}");
        for link in page.split("<link ").skip(1) {
            assert!(link.starts_with("rel=\"canonical\"") || link.starts_with("rel=\"alternate\""), "{name}: {link:.80}");
        }
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
fn no_formula_takes_the_place_of_a_list() {
    let sandbox = Sandbox::empty();
    for name in ["index", "tags", "ingredients"] {
        let file = format!("book/formulas/{name}.toml");
        sandbox.write(&file, small_formula("flour-bread = \"500 g\"", "Mix {flour-bread}."));
        let ran = sandbox.run(&["publish", "book", "--out", "site"]);
        assert_eq!(ran.status, 1, "{}", ran.err);
        assert!(ran.out.contains("name-not-plain") && ran.out.contains("the place of the"), "{}", ran.out);
        assert!(!sandbox.path("site").exists());
        std::fs::remove_file(sandbox.path(&file)).expect("it is there");
    }
}
