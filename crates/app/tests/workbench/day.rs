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
fn a_step_is_fixed_let_go_and_a_tap_tells_what_happens() {
    let served = Browsed::demo();
    let moved = |answer: crate::served::Answer| {
        assert_eq!(answer.status, 303, "{}", answer.head);
        answer.head.lines().find_map(|line| line.strip_prefix("location: ")).expect("where to").trim().to_owned()
    };
    let step = "step=potato-muffins/dough/2";
    let fixed =
        |of: &str, begins: &str, when: &str| moved(served.get(&format!("/day/fixed?{of}&{step}&begins={begins}&when={when}")));
    let asked = ahead("").trim_start_matches('?').to_owned();
    let to = fixed(&asked, "not-before", "06:45");
    assert!(
        to.contains("not-before=potato-muffins%2Fdough%2F2%3D2026-11-29%2006%3A45"),
        "the last such time before serving: {to}"
    );
    let page = served.page(&to);
    assert!(page.contains("fixed not before 06:45") && page.contains("let go") && page.contains("class=\"fixed\""));
    let both = fixed(&to["/day?".len()..], "not-after", "2026-11-29T07:00");
    assert!(both.contains("not-before=") && both.contains("not-after="), "both can be said: {both}");
    let at = fixed(&both["/day?".len()..], "at", "2026-11-29T06:50");
    assert!(!at.contains("not-before=") && at.contains("&at=potato"), "a time takes the place of both: {at}");
    assert!(served.page(&format!("{}&ways=yes", ahead("/day"))).contains("Risen long and cold"));
    let now = format!("{DAY}&now=2026-11-29+06:40");
    let tapped = moved(served.get(&format!("/day/told?{now}&{step}&just=done&what=risen&when=")));
    assert!(tapped.contains("done=potato-muffins%2Fdough%2F2%3D2026-11-29%2006%3A40"), "{tapped}");
    for (wrong, said) in [
        ("step=potato-muffins/dough/2&begins=at&when=soon", "is no moment"),
        ("step=potato-muffins/dough/2&begins=never&when=06:00", "not before or not after"),
        ("step=potato-muffins/dough/2&begins=at", "When?"),
        ("begins=at&when=06:00", "Which step?"),
    ] {
        let answer = served.get(&format!("/day/fixed?{asked}&{wrong}"));
        assert!(answer.status == 422 && answer.body.contains(said), "{wrong}: {}", answer.body);
    }
    for (asked, said) in [
        ("at=cellar/mix=06:00", "is no step of that day"),
        ("not-after=nonsense", "names no step"),
        ("at=potato-muffins/dough/2=2036-11-29+06:00", "more than a fortnight"),
    ] {
        assert!(served.page(&format!("{}&{asked}", ahead("/day"))).contains(said), "{asked}");
    }
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

#[test]
fn a_time_of_the_clock_alone_is_the_next_day_on_which_it_can_be() {
    let served = Browsed::demo();
    let early = "formula=potato-muffins&zone=Europe/Vienna&now=2026-11-29+03:00";
    let page = served.page(&format!("/day?{early}&serve=09:30"));
    assert!(page.contains("Monday 30 November, on the table at 09:30"), "the sponge alone takes the night");
    assert!(page.contains("value=\"2026-11-30T09:30\""), "and the form means that day from then on");
    let page = served.page(&format!("/day?{early}&serve=2026-11-29T09:30"));
    assert!(page.contains("It cannot be on the table at 09:30."), "a day that is named is meant");
}
