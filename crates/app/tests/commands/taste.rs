//! `taste`: published examples entered as ballots and read in the report; what is refused; what a page may claim.

use crate::sandbox::Sandbox;
use std::collections::BTreeMap;

/// A tasting of the demo's muffins, under a name of its own.
pub fn tasting(method: &str, samples: &[&str], more: &str) -> String {
    let mut text = format!("title = \"A tasting\"\nmethod = \"{method}\"\nquestion = \"Which?\"\n{more}\n");
    for name in samples {
        text.push_str(&format!("[[sample]]\nname = \"{name}\"\nformula = \"potato-muffins\"\n"));
    }
    text
}

/// A book with a tasting that is laid, and what stands at each seat: code to sample.
pub fn laid(method: &str, samples: &[&str], more: &str, seats: usize) -> (Sandbox, Vec<BTreeMap<String, String>>) {
    let sandbox = Sandbox::with_demo();
    sandbox.write("saltmarsh/tastings/one.toml", tasting(method, samples, more));
    let sheet = sandbox.fine(&["taste", "lay", "saltmarsh", "one", "--seats", &seats.to_string(), "--seed", "7"]);
    let sheet = sheet.replace("\n  ", " ");
    let rows = sheet.lines().filter(|line| line.split_once(". ").is_some_and(|(number, _)| number.parse::<u32>().is_ok()));
    let key = rows.map(|row| {
        let cups = row.split_once(". ").map_or("", |(_, cups)| cups).split("; ").last().unwrap_or_default();
        let cup = |cup: &str| {
            let (code, title) = cup.split_once(' ').expect("a code and a title");
            let title = title.trim_matches(['“', '”']).to_lowercase().replace(' ', "-");
            (code.to_owned(), title)
        };
        cups.split(", ").map(cup).collect()
    });
    (sandbox, key.collect())
}

/// Enters ballots, closes, and gives the report as data.
pub fn reported(sandbox: &Sandbox, ballots: &[String]) -> serde_json::Value {
    let rows: String = ballots.iter().zip(1..).map(|(answers, seat)| format!("{seat},{answers}\n")).collect();
    sandbox.write("ballots.csv", format!("seat,answers\n{rows}"));
    sandbox.fine(&["taste", "answer", "saltmarsh", "one", "--from", "ballots.csv"]);
    sandbox.fine(&["taste", "close", "saltmarsh", "one"]);
    let out = sandbox.fine(&["taste", "report", "saltmarsh", "one", "--format", "json"]);
    serde_json::from_str(&out).expect("JSON")
}

/// The code of a sample at a seat.
pub fn code(seat: &BTreeMap<String, String>, sample: &str) -> String {
    seat.iter().find(|(_, title)| *title == sample).expect("it stands there").0.clone()
}

/// A ballot that ranks the samples as told.
pub fn ranks(seat: &BTreeMap<String, String>, names: &[&str], ranks: &[u32]) -> String {
    let mut order: Vec<(u32, String)> = names.iter().zip(ranks).map(|(name, rank)| (*rank, code(seat, name))).collect();
    order.sort();
    order.into_iter().map(|(_, code)| code).collect::<Vec<_>>().join(" ")
}

fn number(value: &serde_json::Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("{value} is no number"))
}

/// The FAO's table (V7180E, Appendix A), exact p and discriminators as computed with scipy 1.17.1, ISO 4120 Annex B.
#[test]
fn triangles_through_the_whole_path() {
    for (of, right, needed, p, share) in [
        (12, 8, 8, 0.018_758, 0.5),
        (12, 7, 8, 0.066_448, 0.375),
        (30, 14, 15, 0.089_771, 0.2),
        (30, 15, 15, 0.043_482, 0.25),
        (42, 21, 20 - 1, 0.018_673, 0.25),
    ] {
        let (sandbox, key) = laid("triangle", &["a", "b"], "", of);
        let alone = |seat: &BTreeMap<String, String>, is_right: bool| {
            let times = |title: &str| seat.values().filter(|other| *other == title).count();
            seat.iter().find(|(_, title)| (times(title) == 1) == is_right).expect("three cups").0.clone()
        };
        let ballots: Vec<String> = key.iter().enumerate().map(|(n, seat)| alone(seat, n < right)).collect();
        let report = reported(&sandbox, &ballots);
        let finding = &report["finding"];
        assert_eq!((&finding["right"], &finding["of"]), (&right.into(), &of.into()));
        assert!((number(&finding["p"]) - p).abs() < 5e-7, "{finding}");
        assert!((number(&finding["discriminators"]["share"]) - share).abs() < 1e-12, "{finding}");
        if of < 42 {
            assert_eq!(finding["needed"], needed);
        } else {
            // ISO 4120, Annex B, 21 of 42: SE 0.1157, limits 0.0596 to 0.4404; Clopper and Pearson 0.0468 to 0.4532.
            let limits = |kind: &str, at: usize| number(&finding["discriminators"][kind][at]);
            for (seen, wanted) in [
                (number(&finding["discriminators"]["standard-error"]), 0.1157),
                (limits("normal-limits", 0), 0.0596),
                (limits("normal-limits", 1), 0.4404),
                (limits("exact-limits", 0), 0.0468),
                (limits("exact-limits", 1), 0.4532),
            ] {
                assert!((seen - wanted).abs() < 5e-5, "{finding}");
            }
        }
        assert_eq!(report["balanced"], of % 6 == 0);
    }
}

/// A ranking that is printed with its results, and its rows.
fn printed(name: &str) -> (toml_edit::Table, Vec<Vec<u32>>) {
    let all: toml_edit::DocumentMut = include_str!("../../../bench/tests/tasting/rankings.toml").parse().expect("tables");
    let one = all[name].as_table().expect("a ranking").clone();
    let row =
        |row: &toml_edit::Value| row.as_str().expect("a row").split(' ').map(|rank| rank.parse().expect("a rank")).collect();
    let rows = one["rows"].as_array().expect("rows").iter().map(row).collect();
    (one, rows)
}

/// Worked rankings, entered as ballots: F, the least difference, the pairs that differ by it.
#[test]
fn rankings_through_the_whole_path() {
    for name in ["iso-8587", "eleven", "seven"] {
        let (printed, rows) = printed(name);
        let names = &["a", "b", "c", "d", "e", "f"][..rows[0].len()];
        let (sandbox, key) = laid("ranking", names, "", rows.len());
        let ballots: Vec<String> = key.iter().zip(&rows).map(|(seat, row)| ranks(seat, names, row)).collect();
        let finding = reported(&sandbox, &ballots)["finding"].clone();
        let word = |key: &str| printed[key].as_str().expect("a figure").to_owned();
        let shown = [number(&finding["F"]), number(&finding["least-difference"])].map(|figure| format!("{figure:.2}"));
        assert_eq!(shown, [word("statistic"), word("least")], "{finding}");
        let apart = finding["pairs"].as_array().expect("pairs").iter().filter(|pair| pair["differ-if-chosen-beforehand"] == true);
        let mut apart: Vec<String> = apart.map(|pair| format!("{}{}", pair["more"], pair["less"]).replace('"', "")).collect();
        let mut wanted: Vec<&str> = printed["apart"].as_array().expect("pairs").iter().filter_map(|one| one.as_str()).collect();
        apart.sort_unstable();
        wanted.sort_unstable();
        assert_eq!(apart, wanted, "{name}");
        let text = sandbox.fine(&["taste", "report", "saltmarsh", "one"]);
        assert!(text.contains(&format!("Friedman’s F = {} of {} samples", word("statistic"), names.len())), "{text}");
    }
}

/// Page's L of Craig's data (Siegel & Castellan 1988, p. 186): 342, exact p 0.000566.
#[test]
fn an_expected_order_through_the_whole_path() {
    let names = ["a", "b", "c", "d", "e", "f"];
    let (sandbox, key) = laid("ranking", &names, "expected = [\"a\", \"b\", \"c\", \"d\", \"e\", \"f\"]", 4);
    let (_, rows) = printed("craig");
    let ballots: Vec<String> = key.iter().zip(&rows).map(|(seat, row)| ranks(seat, &names, row)).collect();
    let finding = reported(&sandbox, &ballots)["finding"].clone();
    assert_eq!((number(&finding["expected"]["L"]), &finding["expected"]["exact"]), (342.0, &true.into()));
    assert!((number(&finding["expected"]["p"]) - 0.000_566).abs() < 5e-7, "{finding}");
}

/// Duo-trio one-sided and preference two-sided, exact binomial: 20 and 21 of 30.
#[test]
fn pairs_through_the_whole_path() {
    for (method, needed) in [("duo-trio", 20), ("preference", 21), ("paired", 20)] {
        let more = if method == "paired" { "expected = \"a\"" } else { "" };
        let (sandbox, key) = laid(method, &["a", "b"], more, 30);
        let sheet = sandbox.fine(&["taste", "key", "saltmarsh", "one"]);
        let references: Vec<&str> =
            sheet.lines().filter_map(|line| line.split("reference “").nth(1)).map(|rest| &rest[..1]).collect();
        let ballot = |(n, seat): (usize, &BTreeMap<String, String>)| {
            let right = references.get(n).map_or("a".to_owned(), |reference| reference.to_lowercase());
            code(
                seat,
                if n < needed {
                    &right
                } else if right == "a" {
                    "b"
                } else {
                    "a"
                },
            )
        };
        let ballots: Vec<String> = key.iter().enumerate().map(ballot).collect();
        let finding = reported(&sandbox, &ballots)["finding"].clone();
        assert_eq!((&finding["right"], &finding["needed"]), (&needed.into(), &needed.into()), "{method}: {finding}");
    }
}

#[test]
fn points_through_the_whole_path() {
    let (sandbox, key) = laid("liking", &["a", "b"], "", 12);
    let ballot = |(n, seat): (usize, &BTreeMap<String, String>)| {
        format!("{}={} {}={}", code(seat, "a"), 6 + n % 3, code(seat, "b"), 5 + n % 2)
    };
    let ballots: Vec<String> = key.iter().enumerate().map(ballot).collect();
    let report = reported(&sandbox, &ballots);
    assert_eq!(report["finding"][0]["means"], serde_json::json!([7.0, 5.5]));
    insta::assert_snapshot!(
        "points_as_text",
        sandbox.fine(&["taste", "report", "saltmarsh", "one"]).replace(&today(&report), "DAY")
    );
}

fn today(report: &serde_json::Value) -> String {
    report["closed"].as_str().expect("a day").to_owned()
}

/// Raw data out, and the report from them: the same bytes in every form.
#[test]
fn the_report_is_worked_out_anew_from_the_raw_data() {
    let (sandbox, key) = laid("ranking", &["a", "b", "c"], "ties = true", 6);
    let mut ballots: Vec<String> = key.iter().map(|seat| ranks(seat, &["a", "b", "c"], &[1, 2, 3])).collect();
    ballots[1] = ballots[1].replacen(' ', "=", 1);
    ballots.pop();
    reported(&sandbox, &ballots);
    sandbox.write("raw.csv", sandbox.fine(&["taste", "export", "saltmarsh", "one"]));
    for format in ["text", "html", "json"] {
        let own = sandbox.fine(&["taste", "report", "saltmarsh", "one", "--format", format]);
        let anew = sandbox.fine(&["taste", "report", "saltmarsh", "one", "--from", "raw.csv", "--format", format]);
        assert_eq!(own, anew);
    }
    let raw = sandbox.read("raw.csv");
    for (broken, words) in [
        (raw.replacen("tasting,", "tastings,", 1), "first row"),
        (raw.replacen("one,", "other,", 1), "row 2"),
        (raw.replacen(",a,", ",z,", 1), "no such sample"),
        (raw.lines().next().unwrap_or_default().to_owned(), "no row"),
    ] {
        sandbox.write("broken.csv", broken);
        let ran = sandbox.run(&["taste", "report", "saltmarsh", "one", "--from", "broken.csv"]);
        assert!(ran.status == 2 && ran.err.contains(words), "{words}: {}", ran.err);
    }
}

#[test]
fn nothing_is_told_before_closing_and_nothing_taken_after() {
    let (sandbox, key) = laid("triangle", &["a", "b"], "", 6);
    let cup = key[0].keys().next().expect("a cup").clone();
    let run = |words: &[&str]| sandbox.run(&[&["taste"][..], words].concat());
    let early = run(&["report", "saltmarsh", "one"]);
    assert!(early.status == 2 && early.err.contains("still open"), "{}", early.err);
    assert!(run(&["export", "saltmarsh", "one"]).err.contains("still open"));
    assert!(run(&["lay", "saltmarsh", "one"]).err.contains("still open"));
    assert!(run(&["answer", "saltmarsh", "one", "1", "999"]).err.contains("no cup 999 stands at seat 1; there stand "));
    assert!(run(&["answer", "saltmarsh", "one", "1", "111", "222"]).err.contains("one cup is to be chosen"));
    // All or nothing: neither the good line is kept, nor did anybody agree.
    sandbox.write("half.csv", format!("1,{cup}\n2,999\n9,{cup}\n3,\n"));
    let half = run(&["answer", "saltmarsh", "one", "--from", "half.csv"]).err;
    for words in ["no cup 999 stands at seat 2", "there is no seat 9", "seat 3: one cup is", "Nothing was kept"] {
        assert!(half.contains(words), "{half}");
    }
    let none = "0 of 6 seats have answered everything, 0 in part; 0 agreed to taste.";
    assert_eq!(run(&["count", "saltmarsh", "one"]).out.trim(), none);
    assert!(run(&["answer", "saltmarsh", "one", "9", &cup]).err.contains("there is no seat 9"));
    assert_eq!(run(&["answer", "saltmarsh", "one", "1", &cup]).out.trim(), "1 answer kept.");
    assert_eq!(run(&["answer", "saltmarsh", "one", "1", &cup]).out.trim(), "0 answers kept, 1 there already.");
    let other = key[0].keys().nth(1).expect("another").clone();
    assert!(run(&["answer", "saltmarsh", "one", "1", &other]).out.contains("1 corrected"));
    let count = run(&["count", "saltmarsh", "one"]).out;
    assert_eq!(count.trim(), "1 of 6 seats has answered everything, 0 in part; 1 agreed to taste.");
    assert!(run(&["forget", "saltmarsh", "one", "1"]).out.contains("Removed for good: 2 answers of seat 1"));
    assert!(run(&["answer", "saltmarsh", "one", "1", &cup]).err.contains("given up"));
    let nobody = run(&["close", "saltmarsh", "one"]);
    assert!(
        nobody.status == 2 && nobody.err.contains("nobody has answered everything yet") && nobody.err.contains("taste clear")
    );
    assert!(run(&["clear", "saltmarsh", "one"]).out.starts_with("The table is cleared."));
    assert!(run(&["answer", "saltmarsh", "one", "2", &cup]).err.contains("closed"));
    assert!(run(&["report", "saltmarsh", "one"]).out.contains("Nobody answered everything"));
    let unknown = run(&["count", "saltmarsh", "two"]);
    assert!(unknown.err.contains("never laid"), "{}", unknown.err);
    assert!(run(&["advise", "saltmarsh", "softer-mufins"]).err.contains("did you mean “softer-muffins”"));
}

/// The demo's two invented tastings: their evidence comes anew from the raw data beside them.
#[test]
fn the_demo_s_evidence() {
    let sandbox = Sandbox::with_demo();
    for name in ["softer-muffins", "potato-of-yesterday"] {
        let raw = format!("saltmarsh/tastings/{name}.csv");
        insta::assert_snapshot!(
            format!("evidence_of_{}", name.replace('-', "_")),
            sandbox.fine(&["taste", "report", "saltmarsh", name, "--from", &raw])
        );
    }
}

#[test]
fn ballots_are_printed_with_the_notice_and_without_the_key() {
    let (sandbox, _) = laid("triangle", &["soft", "hard"], "notice = \"Peppered.\"", 6);
    sandbox.fine(&["taste", "key", "saltmarsh", "one", "--ballots", "ballots.html"]);
    let page = sandbox.read("ballots.html");
    for words in
        ["contains wheat, eggs and milk", "Peppered.", "I have read this and agree to taste", "Seat 6", "even by a guess"]
    {
        assert!(page.contains(words), "{words}");
    }
    assert!(!page.to_lowercase().contains("hard"));
}
