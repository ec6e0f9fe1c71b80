//! A trial logged without scripts: begun, noted in, each note undone and done again.

use crate::browsed::Browsed;

#[test]
fn a_trial_and_each_note_in_it_is_undone_and_done_again() {
    let served = Browsed::demo();
    let at = served.sent_on("/trials/begin", &[("formula", "caraway-rye-tin"), ("title", "A wetter rye")]);
    let file = format!("trials/{}.toml", at.trim_start_matches("/trial/"));
    let begun = served.read(&file);
    assert!(begun.contains("A wetter rye"));
    let meant = [("file", file.as_str()), ("to", at.as_str())];

    let note = |words: &str, number: &str| served.sent_on(&format!("{at}/note"), &[("words", words), ("number", number)]);
    note("It smelt of apples.", "1");
    let once = served.read(&file);
    note("Stirred twice.", "2");
    let twice = served.read(&file);
    assert!(once.contains("apples") && twice.contains("Stirred twice."));
    assert_eq!(served.sent_on("/changes/back", &meant), at);
    assert_eq!(served.read(&file), once);
    assert!(served.page(&at).contains("apples"), "the page shows what stands");
    served.sent_on("/changes/back", &meant);
    assert_eq!(served.read(&file), begun);
    served.sent_on("/changes/forth", &meant);
    served.sent_on("/changes/forth", &meant);
    assert_eq!(served.read(&file), twice, "done again to the letter");

    for _ in 0..3 {
        served.sent_on("/changes/back", &meant);
    }
    assert!(!served.path(&file).exists(), "a trial that was begun by mistake is gone");
    assert_eq!(served.sent_on("/changes/forth", &meant), at);
    assert_eq!(served.read(&file), begun);
}

/// The rye tin is baked twice, hot and then turned down: each of the two has its own figures.
#[test]
fn two_bakes_of_a_tin_are_noted_apart() {
    let served = Browsed::demo();
    let at = served.sent_on("/trials/begin", &[("formula", "caraway-rye-tin"), ("title", "A longer bake")]);
    for (figure, minutes) in [("tin/bake/time", "15"), ("tin/bake-2/time", "50")] {
        assert!(served.page(&at).contains(&format!("data-figure=\"{figure}\"")), "{figure} has a field");
        served.sent_on(&format!("{at}/note"), &[("figure", figure), ("amount", minutes), ("unit", "min")]);
    }
    let text = served.read(&format!("trials/{}.toml", at.trim_start_matches("/trial/")));
    assert!(
        text.contains("step = \"bake\"\ntime = \"15 min\"") && text.contains("step = \"bake-2\"\ntime = \"50 min\""),
        "{text}"
    );
    assert!(!text.contains("[[correction]]"), "{text}");
    assert!(served.page(&at).contains("second bake"));
}

/// What only the command line could tell: what trials taught, and trials side by side.
#[test]
fn what_trials_taught_and_trials_side_by_side_are_pages() {
    let served = Browsed::demo();
    let learnt = served.page("/trials/learnt");
    for told in
        ["your kitchen runs", "From week to week", "Foreseen and seen", "by the books", "<svg", "/trial/2026-11-14-muffins"]
    {
        assert!(learnt.contains(told), "{told}");
    }
    assert_eq!(served.get("/trials/learnt?kitchen=nowhere").status, 404);
    let boathouse = served.page("/trials/learnt?kitchen=boathouse");
    assert!(boathouse.contains("No trial of this kitchen tells anything yet"));
    let beside = served.page("/trials/compare?trial=2026-11-03-muffins&trial=2026-11-14-muffins");
    assert!(
        beside.contains("Overnight sponge, rise: took in all") || beside.contains("Overnight sponge, ferment: took in all"),
        "{beside}"
    );
    assert!(beside.contains("as by chance") && !beside.contains("sponge/rise"));
    assert!(served.page("/trials/compare?trial=2026-11-03-muffins").contains("Tick two trials or more."));
    assert_eq!(served.get("/trials/compare?trial=none").status, 404);
    for page in ["/trials", "/trial/2026-11-14-muffins", "/kitchens/estuary"] {
        assert!(served.page(page).contains("/trials/learnt"), "{page}");
    }
    // Begun and left, a trial tells nothing, and no empty heading stands for it.
    served.sent_on("/trials/begin", &[("formula", "potato-muffins"), ("title", "Left in the tin")]);
    assert!(!served.page("/trials/learnt").contains("Left in the tin"));
}

/// A thermometer's table is shown before it is written; a second one leaves the first where it lies, as a correction.
#[test]
fn a_loggers_table_is_shown_then_kept() {
    let served = Browsed::demo();
    let at = served.sent_on("/trials/begin", &[("formula", "potato-muffins"), ("title", "With a probe")]);
    let file = format!("trials/{}.toml", at.trim_start_matches("/trial/"));
    let begun = served.read(&file);
    let (logger, keep) = (format!("{at}/logger"), format!("{at}/logger/keep"));
    let table = "time (min),temperature (°C)\n0,24.0\n30,23.5\n60,23.0\n90,22.5\n";
    let fields = [("step", "dough/bulk"), ("text", table)];
    let shown = served.post(&logger, &fields);
    assert_eq!(shown.status, 200, "{}", shown.body);
    assert!(
        shown.body.contains("4 readings") && shown.body.contains("Keep it") && shown.body.contains("dough-bulk.csv"),
        "{}",
        shown.body
    );
    assert_eq!(served.read(&file), begun, "nothing is written before it is kept");
    assert_eq!(served.sent_on(&keep, &fields), at);
    let once = served.read(&file);
    let course = format!("{}-dough-bulk.csv", at.trim_start_matches("/trial/"));
    assert!(
        once.contains(&format!("course = \"{course}\"")) && served.read(&format!("trials/{course}")).contains("22.5"),
        "{once}"
    );
    served.sent_on(&keep, &fields);
    assert_eq!(served.read(&file), once, "sent twice, it is kept once");
    served.sent_on(&keep, &[("step", "dough/bulk"), ("text", &table.replace("22.5", "22.0"))]);
    let twice = served.read(&file);
    assert!(twice.contains("-dough-bulk-2.csv") && twice.contains(&format!("was = \"{course}\"")), "{twice}");
    assert!(served.path(&format!("trials/{course}")).exists());
    served.sent_on(&keep, &[("step", "dough/bulk"), ("text", table), ("air", "yes")]);
    assert!(served.read(&file).contains("room = \"23.3 °C\""), "{}", served.read(&file));
    for (fields, told) in [
        (vec![("step", "dough/bulk"), ("text", "")], "No table came"),
        (vec![("step", "griddling/griddle"), ("text", table)], "no waiting step"),
        (vec![("step", "dough/bulk"), ("text", "time (min),temperature\n5,warm\n")], "Line 1 of the table: no row holds"),
    ] {
        let refused = served.post(&keep, &fields);
        assert!(refused.status == 422 && refused.body.contains(told), "{told}: {} {}", refused.status, refused.body);
    }
}

#[test]
fn a_trial_is_begun_from_a_saved_revision() {
    let served = Browsed::demo();
    served.sent_on("/formula/potato-muffins/history/save", &[("note", "as we bake them")]);
    let list = served.page("/trials");
    assert!(list.contains("potato-muffins@1") && list.contains("revision 1 of") && list.contains("as it stands"), "{list}");
    let before = served.read("formulas/potato-muffins.toml");
    let changed = before.replacen("title = \"", "title = \"Other ", 1);
    std::fs::write(served.path("formulas/potato-muffins.toml"), &changed).expect("written");
    let revision = |at: &str| {
        let text = served.read(&format!("trials/{}.toml", at.trim_start_matches("/trial/")));
        text.split("revision = \"").nth(1).expect("a revision").split('"').next().expect("its end").to_owned()
    };
    let old = served.sent_on("/trials/begin", &[("formula", "potato-muffins@1")]);
    let new = served.sent_on("/trials/begin", &[("formula", "potato-muffins")]);
    assert_ne!(revision(&old), revision(&new));
    assert_eq!(served.get(&old).status, 200);
    for none in ["potato-muffins@99", "potato-muffins@x", "nothing@1"] {
        assert_eq!(served.post("/trials/begin", &[("formula", none)]).status, 404, "{none}");
    }
}

/// The bowl of a plan says what it gets itself; what was planned counts once somebody says that it was baked.
#[test]
fn a_planned_bowl_gets_what_it_says_and_counts_when_it_was_baked() {
    let served = Browsed::demo();
    let plan = [
        ("factors", "salt = 8 g, 11 g"),
        ("a_day", "2"),
        ("formula", "potato-muffins"),
        ("begin", "2026-12-01"),
        ("seed", "7"),
        ("test", "triangle"),
        ("tell", "40 %"),
        ("days", "1"),
    ];
    assert_eq!(served.sent_on("/trials/plan", &plan), "/trials");
    let list = served.page("/trials");
    let at = |number: &str| list.find(&format!("/trial/2026-12-01-bowl-{number}-")).expect("a bowl");
    assert!(at("01") < at("02"), "bowls stand in the order in which they are baked");
    let bowl = list[at("01")..].split('"').next().expect("its address").to_owned();
    let page = served.page(&bowl);
    assert!(
        page.contains("as this bowl says") && (page.contains(">8\u{a0}g</button>") || page.contains(">11\u{a0}g</button>")),
        "{page}"
    );
    assert!(page.contains("It was baked: count it"));
    let file = format!("trials/{}.toml", bowl.trim_start_matches("/trial/"));
    let draft = served.read(&file);
    served.sent_on(&format!("{bowl}/note"), &[("count", "yes")]);
    let counted = served.read(&file);
    assert!(!counted.contains("\nleft-out =") && counted.contains("was = \"not baked yet\""), "{counted}");
    assert!(!served.page(&bowl).contains("count it"));
    served.sent_on("/changes/back", &[("file", &file), ("to", &bowl)]);
    assert_eq!(served.read(&file), draft, "it can be undone");
}
