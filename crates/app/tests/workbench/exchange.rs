//! Exchanges and targets: chosen, held against the formula, kept.

use crate::browsed::Browsed;

const PAGE: &str = "/formula/potato-muffins/exchange";

/// The hidden field that tells which text was seen.
fn seen(page: &str) -> &str {
    page.split("name=\"seen\" value=\"").nth(1).and_then(|rest| rest.split('"').next()).expect("what was seen")
}

#[test]
fn every_exchange_and_target_can_be_chosen_and_asked_with_nothing_said() {
    let served = Browsed::demo();
    let choices = served.page(PAGE);
    let links: Vec<&str> = choices
        .split("href=\"")
        .skip(1)
        .filter_map(|rest| rest.split('"').next())
        .filter(|link| link.contains("exchange?"))
        .map(|link| link.trim_end_matches("#asked"))
        .collect();
    assert_eq!(links.len(), bench::exchange::ALL.len() + bench::target::ALL.len());
    for link in links {
        let page = served.page(&format!("{link}&ask=yes"));
        assert!(page.contains("Before and after") || page.contains("role=\"alert\""), "{link}");
        assert!(!page.contains("--"), "{link} speaks as the command line does");
    }
    assert_eq!(served.get(&format!("{PAGE}?exchange=nothing")).status, 404);
}

#[test]
fn an_exchange_is_seen_then_written_then_undone() {
    let served = Browsed::demo();
    let before = served.read("formulas/potato-muffins.toml");
    let asked = "exchange=leaven&ask=yes&of=sponge&into=rye-culture&share=15";
    let page = served.page(&format!("{PAGE}?{asked}"));
    for words in ["Before and after", "What cannot be kept", "New times in the method", "ripe rye culture"] {
        assert!(page.to_lowercase().contains(&words.to_lowercase()), "{words}");
    }
    assert_eq!(served.read("formulas/potato-muffins.toml"), before, "nothing is written before it is asked for");
    let wish = [("exchange", "leaven"), ("of", "sponge"), ("into", "rye-culture"), ("share", "15"), ("seen", seen(&page))];
    assert_eq!(served.sent_on(PAGE, &wish), "/formula/potato-muffins");
    let after = served.read("formulas/potato-muffins.toml");
    assert!(after.contains("rye-culture") && after != before);
    assert_eq!(served.post(PAGE, &wish).status, 409, "it is another text by now");
    assert!(served.page("/").contains("exchange: leaven"), "the book tells of it");
    assert_eq!(served.post("/formula/potato-muffins/back", &[]).status, 303);
    assert_eq!(served.read("formulas/potato-muffins.toml"), before, "undone to the letter");
}

#[test]
fn an_answer_is_kept_as_a_formula_beside() {
    let served = Browsed::demo();
    let before = served.read("formulas/potato-muffins.toml");
    let page = served.page(&format!("{PAGE}?target=hydration&ask=yes&stage=dough&to=95+%25"));
    let wish = |title| {
        [
            ("target", "hydration"),
            ("stage", "dough"),
            ("to", "95 %"),
            ("seen", seen(&page)),
            ("keep-as", "beside"),
            ("title", title),
        ]
    };
    assert_eq!(served.sent_on(PAGE, &wish("Muffins, wetter")), "/formula/muffins-wetter");
    assert!(served.read("formulas/muffins-wetter.toml").contains("title = \"Muffins, wetter\""));
    assert_eq!(served.read("formulas/potato-muffins.toml"), before);
    assert_eq!(served.post(PAGE, &wish("Muffins: wetter")).status, 422, "the name is taken");
    assert_eq!(served.post(PAGE, &wish("../..")).status, 422);
    let refused = served.page(&format!("{PAGE}?target=reformulate&ask=yes&aim-salt=lots"));
    assert!(refused.contains("role=\"alert\"") && refused.contains("“salt=lots” is no aim"));
}
