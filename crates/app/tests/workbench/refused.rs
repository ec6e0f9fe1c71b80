//! What a form of a book's file cannot mean is refused beside what was typed; what somebody else was before is kept.

use crate::browsed::Browsed;
use crate::files::{form, send};

const PRICES: &str = "/settings/prices";

/// The page that comes again where a form is refused.
fn refused(served: &Browsed, at: &str, typed: &[(&str, &str)]) -> String {
    let page = served.page(at);
    let fields = form(&page, typed);
    let fields: Vec<(&str, &str)> = fields.iter().map(|(key, value)| (key.as_str(), value.as_str())).collect();
    let answer = served.post(at, &fields);
    assert_eq!(answer.status, 422, "{at} {typed:?}");
    answer.body
}

/// A value typed in the fields, which must stand there again.
fn stands(page: &str, name: &str, value: &str) -> bool {
    page.split("<input").any(|tag| tag.contains(&format!("name=\"{name}\"")) && tag.contains(&format!("value=\"{value}\"")))
}

#[test]
fn a_refused_form_comes_again_as_it_was_typed() {
    let served = Browsed::demo();
    let quince = served.read("prices.toml").split("[[price]]").skip(1).position(|row| row.contains("quince")).expect("a price");
    let (costs, from) = (format!("price.{quince}.costs"), format!("price.{quince}.from"));
    let page = refused(&served, PRICES, &[(&costs, "dear"), (&from, "the market"), ("hour", "21 EUR")]);
    assert!(page.contains("Price (quince), costs: “dear” is not money"), "{page}");
    assert!(page.contains(&format!("data-field=\"{costs}\"")));
    for (name, value) in [(costs.as_str(), "dear"), (&from, "the market"), ("hour", "21 EUR")] {
        assert!(stands(&page, name, value), "{name}");
    }
    let page = refused(&served, "/settings/book", &[("title", ""), ("author", "Ada")]);
    assert!(page.contains("Title: nothing is said there, and it is needed") && stands(&page, "author", "Ada"), "{page}");
    let page = refused(&served, "/kitchens/estuary", &[("pan.0.across", "wide"), ("room", "19 °C")]);
    assert!(page.contains("Pan 1 (") && page.contains(", across: ") && stands(&page, "room", "19 °C"), "{page}");
    let page = refused(&served, "/settings/larder", &[("holds", "flour-strong-white 320 g")]);
    assert!(page.contains("line 1") && page.contains("write flour-strong-white = 320 g"), "{page}");
    let page = refused(&served, "/settings/larder", &[("holds", "butter-unsalted = 200")]);
    assert!(page.contains("200 of what?") && page.contains("butter-unsalted = 200 g"), "{page}");
    for page in ["/settings/book", PRICES, "/kitchens/estuary"] {
        assert!(!served.page(page).contains("wellproved check"), "{page}: no command stands in a page");
    }
    let kitchens = served.post("/kitchens", &[("title", "Estuary")]);
    assert!(kitchens.status == 422 && stands(&kitchens.body, "title", "Estuary"));
    let wish = [("title", "Barley malt"), ("like", "moonstone"), ("source", "the bag")];
    let wish = served.post("/ingredients", &wish);
    assert!(wish.status == 422 && stands(&wish.body, "like", "moonstone") && wish.body.contains("Like: "), "{}", wish.body);
}

#[test]
fn money_is_understood_as_it_is_said_and_a_new_price_has_its_day() {
    let served = Browsed::demo();
    let typed = [
        ("price.new.of", "milk-whole"),
        ("price.new.pack", "1 l"),
        ("price.new.costs", "2,60 €"),
        ("price.new.on", ""),
        ("hour", "0,33"),
    ];
    assert_eq!(send(&served, PRICES, &form(&served.page(PRICES), &typed)), 303);
    let after = served.read("prices.toml");
    let today = jiff::ZonedDateTime::now().date();
    let row = after.rsplit("[[price]]").next().expect("a row");
    assert!(row.contains("costs = \"2.60 EUR\"") && row.contains(&format!("on = {today}\n")), "{row}");
    assert!(after.contains("hour = \"0.33 EUR\""));
    let page = served.page("/settings/prices?written=yes");
    assert!(page.contains("Written: prices changed: hour 0.33 EUR; milk-whole pack 1 l, 2.60 EUR."), "{page}");
    assert_eq!(send(&served, PRICES, &form(&served.page(PRICES), &[])), 303, "the day alone that is offered is no row");
    assert_eq!(served.read("prices.toml"), after);
}

#[test]
fn what_came_too_late_is_kept_shown_and_taken_up() {
    let served = Browsed::demo();
    let (file, at) = ("kitchens/estuary.toml", "/kitchens/estuary");
    let late = form(&served.page(at), &[("room", "17 °C")]);
    assert_eq!(send(&served, at, &form(&served.page(at), &[("room", "20 °C")])), 303);
    let fields: Vec<(&str, &str)> = late.iter().map(|(key, value)| (key.as_str(), value.as_str())).collect();
    let answer = served.post(at, &fields);
    assert!(answer.status == 409 && answer.body.contains("/changes#aside"), "{}", answer.body);
    let page = served.page("/changes");
    for said in ["Kept aside", "room = &quot;17 °C&quot;", "Take it up", "kitchen changed: room 17 °C"] {
        assert!(page.contains(said), "{said}\n{page}");
    }
    let now = store::hash(&served.read(file));
    assert_eq!(served.post("/changes/take", &[("file", file), ("number", "7"), ("from", &now)]).status, 404);
    assert_eq!(served.sent_on("/changes/take", &[("file", file), ("number", "1"), ("from", &now)]), "/changes");
    assert!(served.read(file).contains("room = \"17 °C\""));
    assert!(!served.page("/changes").contains("Take it up"), "it is no longer aside");
    served.sent_on("/changes/back", &[("file", file), ("to", at)]);
    assert!(served.read(file).contains("room = \"20 °C\""), "taken up is undone like anything else");
    assert_eq!(served.post(at, &fields).status, 409);
    assert_eq!(served.sent_on("/changes/leave", &[("file", file), ("number", "1")]), "/changes");
    assert!(!served.page("/changes").contains("Take it up"));
}
