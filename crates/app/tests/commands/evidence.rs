//! What a page may claim of tastings, with its evidence beside it.

use crate::sandbox::Sandbox;
use crate::taste::{code, laid, reported};

const MUFFINS: &str = "saltmarsh/formulas/potato-muffins.toml";
const CITED: &str = "evidence = [\"softer-muffins\", \"potato-of-yesterday\"]";

/// A page claims what the memory holds closed, and otherwise says why not; its evidence lies beside it.
#[test]
fn a_page_claims_only_what_was_tasted() {
    let cite = |sandbox: &Sandbox, names: &str| {
        sandbox.write(MUFFINS, sandbox.read(MUFFINS).replacen(CITED, &format!("evidence = [{names}]"), 1));
    };
    let sandbox = Sandbox::with_demo();
    // The demo's raw data lie beside its tastings: without them there is nothing to show.
    for name in ["softer-muffins", "potato-of-yesterday"] {
        std::fs::remove_file(sandbox.path(&format!("saltmarsh/tastings/{name}.csv"))).expect("a file");
    }
    let silent = sandbox.run(&["publish", "saltmarsh"]);
    assert_eq!(silent.status, 0, "{}", silent.err);
    assert!(silent.out.contains("evidence-not-held") && silent.out.contains("its answers are not kept here"), "{}", silent.out);
    assert!(!sandbox.read("published/potato-muffins.html").contains("Tasted blind"));
    assert!(!sandbox.files("published").iter().any(|file| file.contains("evidence")));

    let (sandbox, key) = laid("preference", &["a", "b"], "", 12);
    cite(&sandbox, "\"one\"");
    assert!(sandbox.run(&["publish", "saltmarsh"]).out.contains("it is still open"));
    let ballots: Vec<String> = key.iter().map(|seat| code(seat, "a")).collect();
    reported(&sandbox, &ballots);
    let told = sandbox.run(&["publish", "saltmarsh"]);
    assert!(!told.out.contains("evidence-not-held"), "{}", told.out);
    let page = sandbox.read("published/potato-muffins.html");
    assert!(page.contains("“A” was preferred to “B”: 12 of 12 people tasting blind said so, p &lt; 0.001."), "{page}");
    assert!(page.contains("href=\"one.evidence.html\""));
    assert!(sandbox.read("published/one.evidence.html").contains("“A” was preferred to “B”: 12 of 12 said so"));
    let again = sandbox.run(&["publish", "saltmarsh"]);
    assert!(again.err.contains("0 files written"), "{}", again.err);
    // What comes of an exchange was never tasted.
    let made = sandbox.fine(&["exchange", MUFFINS, "milk", "--write", "saltmarsh/formulas/new.toml"]);
    assert!(made.contains("the evidence of tastings"), "{made}");
    assert!(!sandbox.read("saltmarsh/formulas/new.toml").contains("evidence"));
}

/// The demo's page claims what its tastings found, from the raw data beside them, and leads to the sheets.
#[test]
fn the_demo_s_page_claims_its_tastings() {
    let sandbox = Sandbox::with_demo();
    let told = sandbox.run(&["publish", "saltmarsh"]);
    assert!(!told.out.contains("evidence-not-held") && !told.out.contains("changed-since-tasted"), "{}", told.out);
    let page = sandbox.read("published/potato-muffins.html");
    for (name, words) in [
        ("softer-muffins", "In a blind ranking of 24 people “sponge of 16 hours” was softer than “sponge of 12 hours”, p = 0.0"),
        (
            "potato-of-yesterday",
            "In a blind triangle test of 30 people “potato of the day before” and “potato riced warm” were not told apart",
        ),
    ] {
        assert!(page.contains(words) && page.contains(&format!("href=\"{name}.evidence.html\"")), "{page}");
        assert!(sandbox.read(&format!("published/{name}.evidence.html")).contains("href=\"potato-muffins.html\""));
    }
    sandbox.write("saltmarsh/tastings/softer-muffins.csv", "tasting,closed\n");
    let told = sandbox.run(&["publish", "saltmarsh"]);
    assert!(told.out.contains("its raw data cannot be read"), "{}", told.out);
}

/// What was changed since it was tasted is told with its place, and on the page; a note or a larger batch is no change.
#[test]
fn a_claim_is_told_as_earlier_once_what_was_tasted_is_changed() {
    let (sandbox, key) = laid("preference", &["a", "b"], "", 12);
    sandbox.write(MUFFINS, sandbox.read(MUFFINS).replacen(CITED, "evidence = [\"one\"]", 1));
    let ballots: Vec<String> = key.iter().map(|seat| code(seat, "a")).collect();
    reported(&sandbox, &ballots);
    let change = |from: &str, to: &str| {
        let text = sandbox.read(MUFFINS);
        assert!(text.contains(from), "{from}");
        sandbox.write(MUFFINS, text.replacen(from, to, 1));
        sandbox.run(&["publish", "saltmarsh"])
    };
    let told = change("Soft as a pillow inside", "Softer than a pillow inside");
    assert!(!told.out.contains("changed-since-tasted"), "{}", told.out);
    let told = change("amount = \"20 g\", as-flour", "amount = \"40 g\", as-flour");
    assert!(told.out.contains("changed-since-tasted") && told.out.contains("formulas/potato-muffins.toml:"), "{}", told.out);
    let page = sandbox.read("published/potato-muffins.html");
    assert!(page.contains("Tasted was revision 1; changed since: ") && page.contains("emolina"), "{page}");
    assert!(sandbox.read("published/one.evidence.html").contains("Tasted was revision 1; changed since: "));
}

/// A tasting's file with its samples in another order.
fn turned(text: &str, by: usize) -> String {
    let mut parts = text.split("[[sample]]");
    let head = parts.next().unwrap_or_default().trim_end();
    let mut samples: Vec<&str> = parts.map(str::trim).collect();
    samples.rotate_left(by);
    format!("{head}\n\n{}\n", samples.iter().map(|one| format!("[[sample]]\n{one}")).collect::<Vec<_>>().join("\n\n"))
}

/// What a page claims is the same, in whatever order the samples stand in the file.
#[test]
fn a_claim_does_not_hang_on_the_order_of_the_samples() {
    let sandbox = Sandbox::with_demo();
    let file = |name: &str| format!("saltmarsh/tastings/{name}.toml");
    let texts = ["softer-muffins", "potato-of-yesterday"].map(|name| (file(name), sandbox.read(&file(name))));
    let claims = [0, 1].map(|by| {
        texts.iter().for_each(|(file, text)| sandbox.write(file, turned(text, by)));
        sandbox.run(&["publish", "saltmarsh"]);
        claims(&sandbox)
    });
    assert!(claims[0].contains("blind") && claims[0] == claims[1], "{claims:?}");
}

/// What the muffins' page says of tastings.
fn claims(sandbox: &Sandbox) -> String {
    let page = sandbox.read("published/potato-muffins.html");
    page.split("Tasted blind").nth(1).unwrap_or_default().split("</section>").next().unwrap_or_default().to_owned()
}

/// A table that is laid anew and cleared takes nothing away from what was found before.
#[test]
fn an_empty_table_replaces_no_evidence() {
    let sandbox = Sandbox::with_demo();
    sandbox.run(&["publish", "saltmarsh"]);
    let before = claims(&sandbox);
    for step in [&["lay", "saltmarsh", "softer-muffins", "--seats", "6"][..], &["clear", "saltmarsh", "softer-muffins"]] {
        sandbox.fine(&[&["taste"], step].concat());
        let told = sandbox.run(&["publish", "saltmarsh"]);
        assert!(!told.out.contains("evidence-not-held"), "{}", told.out);
        assert_eq!(claims(&sandbox), before);
    }
    std::fs::remove_file(sandbox.path("saltmarsh/tastings/softer-muffins.csv")).expect("a file");
    let told = sandbox.run(&["publish", "saltmarsh"]);
    assert!(told.out.contains("evidence-not-held") && told.out.contains("nobody has answered everything"), "{}", told.out);
}

/// Raw data that nobody can have answered are refused with their row, by the report and by publishing.
#[test]
fn raw_data_that_cannot_be_are_refused_with_their_row() {
    let sandbox = Sandbox::with_demo();
    let file = |name: &str| format!("saltmarsh/tastings/{name}.csv");
    let (ranked, odd) = (sandbox.read(&file("softer-muffins")), sandbox.read(&file("potato-of-yesterday")));
    let head = ranked.lines().next().expect("a head").to_owned();
    let row = |n: usize| ranked.lines().nth(n).expect("a row").to_owned();
    let with = |from: &str, to: &str| ranked.replacen(from, to, 1);
    let cut = |n: usize| ranked.lines().enumerate().filter(|(at, _)| *at != n).map(|(_, line)| format!("{line}\n")).collect();
    let end = |n: usize, answer: &str| with(&row(n), &format!("{}{answer}", &row(n)[..row(n).len() - 1]));
    let cases: [(&str, String, &str); 11] = [
        ("softer-muffins", end(1, "9"), "row 2 of the raw data: its rank, “9”, is no whole number from 1 to 3"),
        ("softer-muffins", end(1, "0"), "row 2 of the raw data: its rank, “0”"),
        ("softer-muffins", end(1, "2"), "rows 2 to 4 of the raw data: seat 1 has the ranks 2, 2, 1: no two may share one"),
        ("softer-muffins", end(1, ""), "rows 2 to 4 of the raw data: seat 1 has answered of some cups and not of others"),
        ("softer-muffins", cut(3), "rows 2 to 3 of the raw data: seat 1 has other cups"),
        ("softer-muffins", with(",412,", ",41,"), "row 2 of the raw data: its code is no three figures"),
        ("softer-muffins", with(",327,", ",412,"), "row 3 of the raw data: the code 412 stands at seat 1 already"),
        ("softer-muffins", with(&row(3), &format!("{}\n{}", row(3), row(3))), "row 5 of the raw data: the same was answered"),
        ("softer-muffins", with("2026-11-25T", "2026-11-24T"), "row 3 of the raw data: it was closed at another time"),
        ("softer-muffins", head, "the raw data have no row"),
        ("potato-of-yesterday", odd.replacen(",chosen,0", ",chosen,1", 1), "seat 1 chose 2 cups"),
    ];
    for (name, text, words) in cases {
        sandbox.write("raw.csv", &text);
        let ran = sandbox.run(&["taste", "report", "saltmarsh", name, "--from", "raw.csv"]);
        assert!(ran.status == 2 && ran.err.replace("\n  ", " ").contains(words), "{words}: {}", ran.err);
    }
    sandbox.write(&file("softer-muffins"), end(1, "9"));
    let told = sandbox.run(&["publish", "saltmarsh"]).out;
    assert!(told.contains("evidence-not-held") && told.contains("its raw data cannot be read"), "{told}");
    let told = sandbox.run(&["check", "saltmarsh"]).out;
    assert!(told.contains("evidence-not-held") && told.contains("row 2 of the raw data"), "{told}");
}
