//! The day: planned, what happened told at its tasks, its lists and its refusals.

use crate::browsed::Browsed;

const DAY: &str = "formula=potato-muffins&serve=2026-11-29T09:30&zone=Europe/Vienna";

fn ahead(page: &str) -> String {
    format!("{page}?{DAY}&now=2026-11-27+12:00")
}

#[test]
fn a_day_is_planned_and_listed() {
    let served = Browsed::demo();
    assert!(served.page("/day").contains("Tick what is served"));
    let page = served.page(&ahead("/day"));
    for told in ["on the table at 09:30", "What is in the way", "look at the dough", "ferment"] {
        assert!(page.contains(told), "{told}");
    }
    assert!(page.contains("href=\"#tell-"), "bars lead to their tasks");
    assert!(served.page(&ahead("/day/prep")).contains("0.7\u{a0}g instant yeast"));
    assert!(served.page(&ahead("/day/shopping")).contains("There already"));
    let calendar = served.get(&ahead("/day/calendar.ics"));
    assert!(calendar.head.contains("text/calendar") && calendar.body.starts_with("BEGIN:VCALENDAR"));
    let larger = served.page(&format!("{}&pieces-potato-muffins=24", ahead("/day/shopping")));
    assert!(larger.contains("960\u{a0}g"), "twice the flour of twelve");
    assert!(served.page(&format!("{}&ways=yes", ahead("/day"))).contains("Risen long and cold"));
    assert!(served.page(&format!("{}&way=cold", ahead("/day"))).contains("as it is written"));
}

#[test]
fn what_happened_is_told_at_a_task_with_its_date_and_taken_back() {
    let served = Browsed::demo();
    let morning = format!("{DAY}&now=2026-11-29+06:40");
    let step = "step=potato-muffins/dough/mix";
    let told = served.get(&format!("/day/told?{morning}&{step}&what=done&when=06:25"));
    assert_eq!(told.status, 303);
    let to = told.head.lines().find_map(|line| line.strip_prefix("location: ")).expect("where to").trim().to_owned();
    assert!(to.contains("done=potato-muffins%2Fdough%2Fmix%3D2026-11-29%2006%3A25"), "{to}");
    let page = served.page(&to);
    assert!(page.contains("Told so far") && page.contains("take back"));
    assert!(!page.contains("overnight sponge</b>"), "what came before is done");
    let again = served.get(&format!("/day/told?{}&{step}&what=begun&when=06:20", &to["/day?".len()..]));
    assert_eq!(again.head.matches("06%3A2").count(), 1, "what is told anew takes its place: {}", again.head);
    let risen = format!("/day/told?{}&step=potato-muffins/dough/bulk&what=risen&much=30&when=06:40", &to["/day?".len()..]);
    let risen = served.get(&risen);
    let to = risen.head.lines().find_map(|line| line.strip_prefix("location: ")).expect("where to").trim().to_owned();
    assert!(served.page(&to).contains("Seen: the potato dough risen by 30\u{a0}%"), "{to}");
}

#[test]
fn what_cannot_be_planned_says_why_and_keeps_the_form() {
    let served = Browsed::demo();
    for (asked, said) in [
        ("serve=2020-01-01T09:30", "is past"),
        ("serve=teatime", "is no moment"),
        ("serve=09:30&asleep=always", "are no hours"),
        ("serve=09:30&formula=nothing", "no formula called"),
        ("serve=09:30&pieces-potato-muffins=lots", "is no number of pieces"),
        ("serve=09:30&room=900", "is no temperature"),
        ("serve=09:30&done=nonsense", "names no step"),
        ("serve=09:30&zone=Nowhere/Land", "no time zone"),
    ] {
        let page = served.page(&format!("/day?formula=potato-muffins&{asked}"));
        assert!(page.contains("role=\"alert\"") && page.contains(said), "{asked}: {said}");
        assert!(page.contains("Plan it") && !page.contains("--"), "{asked}");
    }
    assert_eq!(served.get("/day/told?formula=potato-muffins&what=done").status, 422);
    assert_eq!(served.get("/day/told?step=a/b&what=flown").status, 422);
    assert_eq!(served.get("/day/prep").status, 422);
}
