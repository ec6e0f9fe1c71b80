//! Kitchens and ingredients: searched, begun, changed in their files with comments kept, refused where they would be wrong.

use crate::browsed::Browsed;

/// Every field of the page's form for keys, as it stands there, with some of them typed anew.
pub fn form<'p>(page: &'p str, typed: &[(&'p str, &'p str)]) -> Vec<(String, String)> {
    let form = page.split("class=\"keys-form\"").nth(1).expect("a form");
    let plain = |text: &str| text.replace("&quot;", "\"").replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&");
    let mut fields = Vec::new();
    for control in
        form.split('<').filter(|tag| tag.starts_with("input ") || tag.starts_with("textarea ") || tag.starts_with("select "))
    {
        let attribute = |name: &str| control.split(&format!(" {name}=\"")).nth(1).and_then(|rest| rest.split('"').next());
        let Some(name) = attribute("name").filter(|name| *name != "token") else { continue };
        let value = if control.starts_with("input") {
            attribute("value").unwrap_or_default().to_owned()
        } else if control.starts_with("textarea") {
            control.split_once('>').map_or("", |(_, text)| text.trim_start_matches('\n')).to_owned()
        } else {
            let own = form
                .split(&format!("<select name=\"{name}\""))
                .nth(1)
                .and_then(|rest| rest.split("</select>").next())
                .unwrap_or_default();
            let chosen = own.split("<option ").find(|option| option.contains(" selected"));
            chosen.and_then(|option| option.split("value=\"").nth(1)?.split('"').next()).unwrap_or_default().to_owned()
        };
        let anew = typed.iter().find(|(key, _)| *key == name).map(|(_, value)| (*value).to_owned());
        fields.push((name.to_owned(), anew.unwrap_or_else(|| plain(&value))));
    }
    fields
}

pub fn send(served: &Browsed, page: &str, fields: &[(String, String)]) -> u16 {
    let fields: Vec<(&str, &str)> = fields.iter().map(|(key, value)| (key.as_str(), value.as_str())).collect();
    served.post(page, &fields).status
}

#[test]
fn what_is_sent_back_as_it_stands_stays_to_the_letter() {
    let served = Browsed::demo();
    for (file, at) in [
        ("kitchens/estuary.toml", "/kitchens/estuary"),
        ("kitchens/boathouse.toml", "/kitchens/boathouse"),
        ("book.toml", "/settings/book"),
        ("prices.toml", "/settings/prices"),
        ("larder.toml", "/settings/larder"),
    ] {
        let before = served.read(file);
        assert_eq!(send(&served, at, &form(&served.page(at), &[])), 303, "{at}");
        assert_eq!(served.read(file), before);
    }
}

#[test]
fn a_kitchen_is_changed_where_it_says_so_and_nowhere_else() {
    let served = Browsed::demo();
    let (file, at) = ("kitchens/estuary.toml", "/kitchens/estuary");
    let before = served.read(file);
    let typed = [
        ("room", "19 °C"),
        ("bowls", "3 l = 3\n5 l = 2"),
        ("pan.0.across", "28 cm"),
        ("pan.new.title", "milk pan"),
        ("pan.new.across", "16 cm"),
        ("oven.real", "190 °C = 184 °C\n220 °C = 214 °C"),
        ("vessel.1.title", ""),
        ("vessel.1.holds", ""),
        ("vessel.1.weighs", ""),
        ("vessel.1.material", ""),
    ];
    assert_eq!(send(&served, at, &form(&served.page(at), &typed)), 303);
    let after = served.read(file);
    for kept in before.lines().filter(|line| line.starts_with('#')) {
        assert!(after.contains(kept), "{kept}");
    }
    for said in [
        "room = \"19 °C\"",
        "bowls = { \"3 l\" = 3, \"5 l\" = 2 }",
        "across = \"28 cm\"",
        "title = \"milk pan\"",
        "\"220 °C\" = \"214 °C\"",
    ] {
        assert!(after.contains(said), "{said}\n{after}");
    }
    assert!(!after.contains("240 °C") && !after.contains("lidded tub"), "{after}");
    let same = before.lines().filter(|line| after.lines().any(|other| other == *line)).count();
    assert!(before.lines().count() - same <= 12, "only what was typed is other: {after}");
    assert!(served.page("/kitchens").contains("room 19\u{a0}°C"));
    assert_eq!(served.sent_on("/changes/back", &[("file", file), ("to", at)]), at);
    assert_eq!(served.read(file), before, "undone to the letter");
    assert_eq!(served.sent_on("/changes/forth", &[("file", file), ("to", "//elsewhere.example")]), "/changes");
    assert_eq!(served.read(file), after, "and done again");
    served.sent_on("/changes/back", &[("file", file), ("to", at)]);
    for (field, wrong) in [("room", "very warm"), ("room", "900 °C"), ("title", ""), ("asleep", "at night")] {
        let refused = form(&served.page(at), &[(field, wrong)]);
        assert_eq!(send(&served, at, &refused), 422, "{field} = {wrong}");
        assert_eq!(served.read(file), before);
    }
    let mut stale = form(&served.page(at), &[("room", "20 °C")]);
    stale.iter_mut().filter(|(key, _)| key == "from").for_each(|(_, value)| value.clear());
    assert_eq!(send(&served, at, &stale), 409, "somebody else was there first");
    assert_eq!(served.get("/kitchens/..%2Fbook").status, 404);
}

#[test]
fn a_kitchen_is_begun() {
    let served = Browsed::demo();
    assert_eq!(served.sent_on("/kitchens", &[("title", "The summer kitchen")]), "/kitchens/the-summer-kitchen");
    assert!(served.page("/kitchens/the-summer-kitchen").contains("The summer kitchen"));
    assert_eq!(served.post("/kitchens", &[("title", "Estuary")]).status, 422, "the name is taken");
    let file = "kitchens/the-summer-kitchen.toml";
    let undone = [("file", file), ("to", "/kitchens/the-summer-kitchen")];
    assert_eq!(served.sent_on("/changes/back", &undone), "/changes", "its own page is gone with it");
    assert!(!served.path(file).exists());
    let page = served.page("/changes");
    assert!(page.contains(file) && page.contains("not there now") && page.contains("begun"), "{page}");
    assert_eq!(served.sent_on("/changes/forth", &undone), "/kitchens/the-summer-kitchen");
    assert!(served.read(file).contains("The summer kitchen"));
    assert_eq!(served.post("/changes/back", &[("file", file)]).status, 303);
    assert_eq!(served.post("/changes/back", &[("file", file)]).status, 422, "nothing is left to undo");
    for other in ["book.toml", "kitchens/../../secret.toml", "", "kitchens/estuary.toml"] {
        assert_eq!(served.post("/changes/back", &[("file", other)]).status, 404, "{other}: nothing was changed there");
    }
}

#[test]
fn prices_and_the_larder_are_written_by_hand_and_taken_back() {
    let served = Browsed::demo();
    let (file, at) = ("prices.toml", "/settings/prices");
    let before = served.read(file);
    let typed = [
        ("hour", "21 EUR"),
        ("price.new.of", "milk-whole"),
        ("price.new.pack", "1 l"),
        ("price.new.costs", "1.39 EUR"),
        ("price.new.on", "2026-11-20"),
        ("price.0.on", "2026-10-03"),
    ];
    assert_eq!(send(&served, at, &form(&served.page(at), &typed)), 303);
    let after = served.read(file);
    for said in ["hour = \"21 EUR\"", "costs = \"1.39 EUR\"", "on = 2026-10-03\n"] {
        assert!(after.contains(said), "{said}\n{after}");
    }
    assert_eq!(served.sent_on("/changes/back", &[("file", file), ("to", at)]), at);
    assert_eq!(served.read(file), before, "undone to the letter");
    for (field, wrong) in [("price.0.costs", "dear"), ("price.0.of", "moonstone"), ("tax", "a lot")] {
        assert_eq!(send(&served, at, &form(&served.page(at), &[(field, wrong)])), 422, "{field} = {wrong}");
    }
    let at = "/settings/larder";
    let typed = [("on", "2026-11-26"), ("holds", "milk-whole = 2 l\negg-whole = 6")];
    assert_eq!(send(&served, at, &form(&served.page(at), &typed)), 303);
    let larder = served.read("larder.toml");
    assert!(larder.contains("on = 2026-11-26\n") && larder.contains("egg-whole = 6") && !larder.contains("bay-leaf"), "{larder}");
    assert_eq!(send(&served, at, &form(&served.page(at), &[("on", "yesterday")])), 422);
    assert_eq!(served.get("/settings/keys").status, 404);
    assert_eq!(served.get("/settings/..%2Fbook").status, 404);
}

#[test]
fn the_larder_of_a_book_without_one_is_begun() {
    let served = Browsed::demo();
    std::fs::remove_file(served.path("larder.toml")).expect("a larder");
    served.sent_on("/kitchens", &[("title", "Anywhere")]);
    let typed = [("on", "2026-11-26"), ("holds", "salt = 700 g")];
    let at = "/settings/larder";
    assert_eq!(send(&served, at, &form(&served.page(at), &typed)), 303);
    assert!(served.read("larder.toml").contains("salt = \"700 g\""));
}

#[test]
fn ingredients_are_found_with_their_sources() {
    let served = Browsed::demo();
    let found = served.page("/ingredients?words=rye");
    assert!(
        found.contains("flour-rye-dark")
            && found.contains("the bag, lot of September")
            && !found.contains("/ingredients/sugar-caster")
    );
    assert!(served.page("/ingredients?own=yes").matches("our own").count() > 4);
    let milk = served.page("/ingredients/milk-whole");
    for told in ["In 100 g, edible portion", "allergens", "milk", "Used in", "Griddled potato muffins"] {
        assert!(milk.contains(told), "{told}");
    }
    let own = served.page("/ingredients/mill-strong-white");
    let row = |figure: &str| {
        own.split(&format!("<th scope=\"row\">{figure}</th>"))
            .nth(1)
            .and_then(|rest| rest.split("</tr>").next())
            .unwrap_or_default()
            .to_owned()
    };
    assert!(row("protein").contains("the bag, lot of October"), "what the bag says");
    assert!(!row("fat").contains("the bag"), "the bag says nothing of fat: {}", row("fat"));
    assert!(!milk.contains("keys-form"), "the table's own is not changed");
    assert_eq!(served.get("/ingredients/mlk").status, 404);
    assert!(served.page("/ingredients?words=milkk").contains("Did you mean"));
}

#[test]
fn an_own_ingredient_is_added_changed_and_taken_back() {
    let served = Browsed::demo();
    let wish = [
        ("title", "Spelt flour, from the bag"),
        ("like", "flour-strong-white"),
        ("group", ""),
        ("source", "the bag, lot of November"),
    ];
    served.sent_on("/ingredients", &wish);
    let at = "/ingredients/spelt-flour-from-the-bag";
    let before = served.read("ingredients/own.toml");
    assert!(before.contains("[spelt-flour-from-the-bag]") && before.contains("source = \"the bag, lot of November\""));
    let typed = [("per-100-g", "protein = 13.4\nsalt = 0.02"), ("also", "bag spelt, stone spelt")];
    assert_eq!(send(&served, at, &form(&served.page(at), &typed)), 303);
    let after = served.read("ingredients/own.toml");
    assert!(after.contains("protein = 13.4") && after.contains("\"bag spelt\", \"stone spelt\""), "{after}");
    assert!(served.page(at).contains("13.4\u{a0}g"));
    let wrong = form(&served.page(at), &[("per-100-g", "protein = plenty")]);
    assert_eq!(send(&served, at, &wrong), 422);
    assert_eq!(served.sent_on("/changes/back", &[("file", "ingredients/own.toml"), ("to", at)]), at);
    assert_eq!(served.read("ingredients/own.toml"), before);
    assert_eq!(served.post("/ingredients", &wish).status, 422, "the name is taken");
    assert_eq!(served.post("/ingredients", &[("title", "Nothing known"), ("source", "a rumour")]).status, 422);
}
