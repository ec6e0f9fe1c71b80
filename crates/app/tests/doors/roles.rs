//! Who may do what: every door of the workbench, asked by nobody, a helper and the owner; a taster has a sheet's
//! address, and is nobody elsewhere.
//!
//! The doors are read off the source, so that a new one without a line here fails.

use crate::served::{Asked, Served, form};
use std::collections::BTreeSet;
use std::path::Path;

/// A door, an address that leads to it, and the answers to nobody, helper and owner. What is sent is empty
/// but for the token, so that nothing is changed: 422 and 400 say that they may, had they said what.
type Door = (&'static str, &'static str, &'static str, [u16; 3]);

pub const DOORS: &[Door] = &[
    ("GET", "/", "/", [401, 200, 200]),
    ("GET", "/asset/{mark}/{name}", "/asset/any/workbench.css", [200, 200, 200]),
    ("GET", "/favicon.ico", "/favicon.ico", [204, 204, 204]),
    ("GET", "/enter", "/enter", [200, 200, 200]),
    ("POST", "/enter", "/enter", [401, 401, 401]),
    ("GET", "/formula/{name}", "/formula/cardamom-knots", [401, 200, 200]),
    ("GET", "/formula/{name}/bands", "/formula/cardamom-knots/bands", [401, 200, 200]),
    ("GET", "/formula/{name}/day", "/formula/cardamom-knots/day", [401, 200, 200]),
    ("GET", "/formula/{name}/page", "/formula/cardamom-knots/page", [401, 200, 200]),
    ("GET", "/formula/{name}/parts", "/formula/cardamom-knots/parts", [401, 200, 200]),
    ("GET", "/formula/{name}/story", "/formula/cardamom-knots/story", [401, 200, 200]),
    ("GET", "/formula/{name}/text", "/formula/cardamom-knots/text", [401, 200, 200]),
    ("GET", "/live", "/live", [401, 200, 200]),
    ("GET", "/people", "/people", [401, 403, 200]),
    ("GET", "/trial/{name}", "/trial/2026-10-17-rye", [401, 200, 200]),
    ("GET", "/trials", "/trials", [401, 200, 200]),
    ("GET", "/trials/compare", "/trials/compare?formula=potato-muffins", [401, 200, 200]),
    ("GET", "/trials/learnt", "/trials/learnt", [401, 200, 200]),
    ("GET", "/trials/plan", "/trials/plan", [401, 200, 200]),
    ("POST", "/trials/plan", "/trials/plan", [401, 422, 422]),
    ("GET", "/trials/plan/sheet", "/trials/plan/sheet?factors=a%3D1%2C2", [401, 200, 200]),
    ("GET", "/why/{code}", "/why/unknown-ingredient", [401, 200, 200]),
    ("POST", "/formula/{name}/back", "/formula/cardamom-knots/back", [401, 422, 422]),
    ("POST", "/formula/{name}/do", "/formula/cardamom-knots/do", [401, 422, 422]),
    ("POST", "/formula/{name}/forth", "/formula/cardamom-knots/forth", [401, 422, 422]),
    ("POST", "/formula/{name}/text", "/formula/cardamom-knots/text", [401, 422, 422]),
    ("POST", "/formula/{name}/text/try", "/formula/cardamom-knots/text/try", [401, 422, 422]),
    ("POST", "/formula/{name}/try", "/formula/cardamom-knots/try", [401, 422, 422]),
    ("POST", "/people", "/people", [401, 403, 422]),
    ("POST", "/people/{number}/withdraw", "/people/none/withdraw", [401, 403, 404]),
    ("GET", "/day", "/day", [401, 200, 200]),
    ("GET", "/day/fixed", "/day/fixed", [401, 422, 422]),
    ("GET", "/day/told", "/day/told", [401, 422, 422]),
    ("GET", "/day/prep", "/day/prep", [401, 422, 422]),
    ("GET", "/day/shopping", "/day/shopping", [401, 422, 422]),
    ("GET", "/day/calendar.ics", "/day/calendar.ics", [401, 422, 422]),
    ("GET", "/day/prep.pdf", "/day/prep.pdf", [401, 422, 422]),
    ("GET", "/formula/{name}/exchange", "/formula/cardamom-knots/exchange", [401, 200, 200]),
    ("GET", "/formula/{name}/compare", "/formula/cardamom-knots/compare", [401, 200, 200]),
    ("GET", "/formula/{name}/history", "/formula/cardamom-knots/history", [401, 200, 200]),
    ("GET", "/ingredients", "/ingredients", [401, 200, 200]),
    ("GET", "/ingredients/{name}", "/ingredients/salt", [401, 200, 200]),
    ("GET", "/kitchens", "/kitchens", [401, 200, 200]),
    ("GET", "/kitchens/{name}", "/kitchens/estuary", [401, 200, 200]),
    ("GET", "/settings/{what}", "/settings/prices", [401, 403, 200]),
    ("GET", "/settings/{what}", "/settings/book", [401, 403, 200]),
    ("GET", "/settings/{what}", "/settings/larder", [401, 200, 200]),
    ("GET", "/publish", "/publish", [401, 403, 200]),
    ("GET", "/publish/{name}/{what}", "/publish/cardamom-knots/cost", [401, 403, 200]),
    ("GET", "/published/{*path}", "/published/index.html", [401, 404, 404]),
    ("GET", "/changes", "/changes", [401, 200, 200]),
    ("POST", "/changes/back", "/changes/back", [401, 422, 422]),
    ("POST", "/changes/forth", "/changes/forth", [401, 422, 422]),
    ("GET", "/tour", "/tour", [401, 200, 200]),
    ("POST", "/demo", "/demo", [401, 403, 422]),
    ("POST", "/demo/away", "/demo/away", [401, 403, 422]),
    ("POST", "/demo/back", "/demo/back", [401, 403, 422]),
    ("POST", "/changes/take", "/changes/take", [401, 422, 422]),
    ("POST", "/changes/leave", "/changes/leave", [401, 422, 422]),
    ("POST", "/new", "/new", [401, 422, 422]),
    ("POST", "/formula/{name}/exchange", "/formula/cardamom-knots/exchange", [401, 422, 422]),
    ("POST", "/formula/{name}/history/save", "/formula/cardamom-knots/history/save", [401, 422, 422]),
    ("POST", "/formula/{name}/history/take", "/formula/cardamom-knots/history/take", [401, 404, 404]),
    ("POST", "/ingredients", "/ingredients", [401, 422, 422]),
    ("POST", "/ingredients/{name}", "/ingredients/salt", [401, 404, 404]),
    ("POST", "/kitchens", "/kitchens", [401, 422, 422]),
    ("POST", "/kitchens/{name}", "/kitchens/nowhere", [401, 404, 404]),
    ("POST", "/settings/{what}", "/settings/book", [401, 403, 422]),
    ("POST", "/settings/{what}", "/settings/prices", [401, 403, 422]),
    ("POST", "/settings/{what}", "/settings/larder", [401, 422, 422]),
    ("POST", "/publish", "/publish", [401, 403, 422]),
    ("POST", "/trial/{name}/note", "/trial/2026-10-17-rye/note", [401, 422, 422]),
    ("POST", "/trial/{name}/photograph", "/trial/2026-10-17-rye/photograph", [401, 422, 422]),
    ("POST", "/trial/{name}/logger", "/trial/2026-10-17-rye/logger", [401, 422, 422]),
    ("POST", "/trial/{name}/logger/keep", "/trial/2026-10-17-rye/logger/keep", [401, 422, 422]),
    ("POST", "/trials/begin", "/trials/begin", [401, 422, 422]),
    ("GET", "/taste/{word}", "/taste/none", [404, 404, 404]),
    ("POST", "/taste/{word}/agree", "/taste/none/agree", [404, 404, 404]),
    ("POST", "/taste/{word}/answer", "/taste/none/answer", [404, 404, 404]),
    ("GET", "/tastings", "/tastings", [401, 200, 200]),
    ("POST", "/tastings", "/tastings", [401, 422, 422]),
    ("GET", "/tastings/{name}", "/tastings/softer-muffins", [401, 200, 200]),
    ("POST", "/tastings/{name}", "/tastings/nowhere", [401, 404, 404]),
    ("POST", "/tastings/{name}/lay", "/tastings/softer-muffins/lay", [401, 200, 409]),
    ("GET", "/tastings/{name}/count", "/tastings/softer-muffins/count", [401, 200, 200]),
    ("GET", "/tastings/{name}/close", "/tastings/softer-muffins/close", [401, 200, 200]),
    ("POST", "/tastings/{name}/close", "/tastings/softer-muffins/close", [401, 409, 409]),
    ("GET", "/tastings/{name}/key", "/tastings/softer-muffins/key", [401, 200, 200]),
    ("GET", "/tastings/{name}/ballots", "/tastings/softer-muffins/ballots", [401, 200, 200]),
    ("GET", "/tastings/{name}/paper", "/tastings/softer-muffins/paper", [401, 200, 200]),
    ("POST", "/tastings/{name}/paper", "/tastings/softer-muffins/paper", [401, 303, 303]),
    ("POST", "/tastings/{name}/clear", "/tastings/softer-muffins/clear", [401, 303, 409]),
    ("GET", "/tastings/{name}/evidence", "/tastings/softer-muffins/evidence", [401, 200, 200]),
    ("GET", "/tastings/{name}/raw.csv", "/tastings/softer-muffins/raw.csv", [401, 200, 200]),
    ("POST", "/tastings/{name}/forget", "/tastings/softer-muffins/forget", [401, 422, 422]),
    // Last, since whoever leaves is gone.
    ("POST", "/leave", "/leave", [401, 200, 200]),
];

/// The doors that stand in the source: methods and addresses of every `.route(…)`.
fn in_the_source(folder: &Path, found: &mut BTreeSet<(String, String)>) {
    for entry in std::fs::read_dir(folder).expect("a folder").flatten() {
        let path = entry.path();
        if path.is_dir() {
            in_the_source(&path, found);
        } else if path.extension().is_some_and(|end| end == "rs") {
            let text = std::fs::read_to_string(&path).expect("text");
            for part in text.split(".route(").skip(1) {
                let address = part.split('"').nth(1).unwrap_or_else(|| panic!("{} routes without a text", path.display()));
                let handlers = balanced(part);
                for (word, method) in [
                    ("get(", "GET"),
                    ("post(", "POST"),
                    ("put(", "PUT"),
                    ("delete(", "DELETE"),
                    ("any(", "ANY"),
                    ("patch(", "PATCH"),
                ] {
                    let is_word = |at: usize| !handlers[..at].ends_with(|c: char| c.is_alphanumeric() || c == '_');
                    if handlers.match_indices(word).any(|(at, _)| is_word(at)) {
                        found.insert((method.to_owned(), address.to_owned()));
                    }
                }
            }
        }
    }
}

/// A text up to where the parenthesis that was open before it closes.
fn balanced(text: &str) -> &str {
    let mut depth = 1;
    for (at, letter) in text.char_indices() {
        depth += i32::from(letter == '(') - i32::from(letter == ')');
        if depth == 0 {
            return &text[..at];
        }
    }
    text
}

#[test]
fn every_door_stands_in_the_table() {
    let mut found = BTreeSet::new();
    in_the_source(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src/workbench"), &mut found);
    let table: BTreeSet<_> = DOORS.iter().map(|(method, door, ..)| ((*method).to_owned(), (*door).to_owned())).collect();
    let missing: Vec<_> = found.difference(&table).collect();
    let gone: Vec<_> = table.difference(&found).collect();
    assert!(missing.is_empty() && gone.is_empty(), "without a line in DOORS: {missing:?}; in DOORS, but no door: {gone:?}");
}

#[test]
fn each_role_comes_through_its_doors_and_no_others() {
    let served = Served::demo(&["--share=127.0.0.1", "--port", "0"]);
    let owner = served.come_in(&served.owner);
    let token = served.get("/people", &owner).token();
    let key = |role: &str| served.post("/people", &owner, &token, &[("name", role), ("role", role)]).between("/enter?key=", "<");
    let helper = served.come_in(&format!("/enter?key={}", key("helper")));
    let before = served.files();
    let cookies = [String::new(), helper, owner];
    let tokens = cookies.each_ref().map(|cookie| served.get("/enter", cookie).token());
    let mut wrong = Vec::new();
    for (method, _, path, expected) in DOORS {
        for (who, status) in expected.iter().enumerate() {
            let body = form(&[("token", &tokens[who])]);
            let is_post = *method == "POST";
            let from = Some([127, 0, 3, 1 + u8::try_from(who).expect("few")].into());
            let headers = vec![("Cookie", cookies[who].as_str()), ("Content-Type", "application/x-www-form-urlencoded")];
            let asked = Asked { method, path, headers, body: if is_post { body.as_bytes() } else { b"" }, from };
            let answered = served.status(&asked);
            if answered != *status {
                wrong.push(format!("{method} {path} as {who}: {answered}, not {status}"));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    assert_eq!(served.files(), before, "nothing was written");
}
