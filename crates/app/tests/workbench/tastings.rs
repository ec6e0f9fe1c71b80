//! Tastings led on pages: begun, changed, laid, typed in, closed.

use crate::browsed::Browsed;

const ONE: [(&str, &str); 8] = [
    ("title", "Über Nacht or straight"),
    ("method", "triangle"),
    ("question", "Which is the odd one?"),
    ("sample-0", "overnight"),
    ("formula-0", "potato-muffins"),
    ("sample-1", "straight"),
    ("formula-1", "potato-muffins"),
    ("panel", "6"),
];
const HERE: &str = "/tastings/%C3%BCber-nacht-or-straight";
const FILE: &str = "tastings/über-nacht-or-straight.toml";

/// What is sent of the one, something of it changed.
fn but<'s>(key: &'s str, value: &'s str) -> Vec<(&'s str, &'s str)> {
    let others = ONE.iter().copied().filter(|(name, _)| *name != key);
    others.chain([(key, value)]).collect()
}

/// The hidden field that says of which text a form was made.
fn from(page: &str) -> String {
    let end = page.split("name=\"from\" value=\"").nth(1).expect("a form");
    end.split('"').next().unwrap_or_default().to_owned()
}

/// A ballot of every seat, each with the first cup, by the key.
fn ballots(served: &Browsed, seats: usize) -> String {
    let key = served.page(&format!("{HERE}/key"));
    let rows = key.split("<tr><th scope=\"row\">").skip(1).take(seats);
    let code = |row: &str| row.split("data-code=\"").nth(1).expect("a cup")[..3].to_owned();
    rows.zip(1..).map(|(row, number)| format!("{number},{}\n", code(row))).collect()
}

#[test]
fn a_tasting_is_begun_changed_and_undone() {
    let served = Browsed::demo();
    for (key, value, words) in [
        ("title", " ", "A tasting needs a name"),
        ("method", "guessing", "How is it asked"),
        ("question", " ", "What are tasters asked"),
        ("sample-1", "overnight", "Sample 2 needs a name of its own"),
        ("formula-1", "nothing", "By which formula"),
        ("method", "ranking", "has 3 to 8 samples, and here are 2"),
        ("method", "description", "What is described"),
        ("date", "soon", "That is no day"),
        ("panel", "many", "Seats are a whole number"),
        ("panel", "0", "nothing was written"),
    ] {
        let refused = served.post("/tastings", &but(key, value));
        assert!(refused.status == 422 && refused.body.contains(words), "{key} {value}: {}", refused.body);
    }
    assert_eq!(served.sent_on("/tastings", &ONE), HERE);
    let text = served.read(FILE);
    for line in ["title = \"Über Nacht or straight\"", "method = \"triangle\"", "name = \"straight\"", "panel = 6"] {
        assert!(text.contains(line), "{text}");
    }
    assert_eq!(served.post("/tastings", &ONE).status, 422, "the name is taken");
    let page = served.page(HERE);
    assert!(page.contains("Telephones do not reach this workbench"), "{page}");
    let change = [("from", from(&page)), ("rinse", "a sip of water".to_owned()), ("title", "Over night".to_owned())];
    let change: Vec<(&str, &str)> = change.iter().map(|(name, value)| (*name, value.as_str())).collect();
    assert_eq!(served.sent_on(HERE, &change), HERE);
    assert!(served.read(FILE).contains("rinse = \"a sip of water\""));
    assert_eq!(served.sent_on("/changes/back", &[("file", FILE), ("to", HERE)]), HERE);
    assert_eq!(served.read(FILE), text);
    assert!(served.page("/changes").contains(FILE));
}

#[test]
fn a_table_is_cleared_or_closed_and_asked_about_first() {
    let served = Browsed::demo();
    served.sent_on("/tastings", &ONE);
    let laid = served.post(&format!("{HERE}/lay"), &[("seats", "3")]);
    assert!(laid.body.contains("No telephone reaches these links") && !laid.body.contains("<svg"), "{}", laid.body);
    assert_eq!(served.post(&format!("{HERE}/lay"), &[("seats", "some")]).status, 422);
    assert_eq!(served.post(HERE, &[("from", "x"), ("title", "Else")]).status, 409, "what is asked stays");
    assert!(served.page(HERE).contains("0 of 3 have answered everything"));
    // Nobody has answered: nothing is closed, and the page says what to do.
    let asked = served.page(&format!("{HERE}/close"));
    assert!(asked.contains("Nobody has answered everything yet") && asked.contains("Clear the table"), "{asked}");
    let refused = served.post(&format!("{HERE}/close"), &[]);
    assert!(refused.status == 409 && refused.body.contains("go on tasting, or clear the table"), "{}", refused.body);
    // A list with one line that is none keeps nothing, and nobody has agreed.
    let good = ballots(&served, 3);
    let half = served.post(&format!("{HERE}/paper"), &[("ballots", &format!("{good}3,999\n"))]);
    assert!(half.status == 422 && half.body.contains("no cup 999 stands at seat 3; there stand "), "{}", half.body);
    assert!(half.body.contains("Nothing was kept") && half.body.contains(good.trim()), "{}", half.body);
    assert!(!served.page(HERE).contains("begun"));
    assert_eq!(served.sent_on(&format!("{HERE}/clear"), &[]), format!("{HERE}?told=The%20table%20is%20cleared."));
    assert!(served.page(HERE).contains("The table was cleared on "));
    assert_eq!(served.post(&format!("{HERE}/clear"), &[]).status, 409);
    // Once more, with two ballots.
    served.post(&format!("{HERE}/lay"), &[("seats", "3")]);
    served.post(&format!("{HERE}/paper"), &[("ballots", &ballots(&served, 2))]);
    let asked = served.page(&format!("{HERE}/close"));
    assert!(asked.contains("2 of 3 have answered everything. After closing nobody can answer any more."), "{asked}");
    assert_eq!(served.post(&format!("{HERE}/clear"), &[]).status, 409, "answers are not cleared away");
    served.sent_on(&format!("{HERE}/close"), &[]);
    let page = served.page(HERE);
    assert!(page.contains("Closed on ") && page.contains(": 2 of 3 have answered everything."), "{page}");
    assert!(served.page(&format!("{HERE}/evidence")).contains("2 of which answered everything"));
    // A table that is laid anew and cleared takes nothing away.
    served.post(&format!("{HERE}/lay"), &[("seats", "3")]);
    served.sent_on(&format!("{HERE}/clear"), &[]);
    assert!(served.page(HERE).contains("From before: "));
    assert!(served.page(&format!("{HERE}/evidence")).contains("2 of which answered everything"));
}
