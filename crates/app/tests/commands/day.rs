//! `day`: the timeline, its other forms, the refusals.

use crate::sandbox::Sandbox;

const MUFFINS: &str = "saltmarsh/formulas/potato-muffins.toml";

/// The words of a run that is the same on every machine and every day.
fn words<'w>(more: &[&'w str]) -> Vec<&'w str> {
    let mut words = vec!["day", MUFFINS, "--now", "2026-11-26 12:00", "--zone", "Europe/Vienna", "--patience", "300"];
    words.extend(more);
    words
}

fn brunch<'w>(more: &[&'w str]) -> Vec<&'w str> {
    let mut words = words(&["--serve", "2026-11-29 09:30"]);
    words.extend(more);
    words
}

#[test]
fn the_brunch_by_the_clock() {
    insta::assert_snapshot!("day_as_text", Sandbox::with_demo().fine(&brunch(&[])));
}

#[test]
fn the_brunch_as_a_list_to_work_from() {
    insta::assert_snapshot!("day_as_prep", Sandbox::with_demo().fine(&brunch(&["--format", "prep"])));
}

#[test]
fn a_german_list_to_work_from() {
    let words = ["day", "halligofen", "--formula", "kardamomknoten", "--serve", "2026-11-29 09:30", "--format", "prep"];
    let when = ["--now", "2026-11-26 12:00", "--zone", "Europe/Vienna", "--patience", "300"];
    insta::assert_snapshot!("day_as_german_prep", Sandbox::with_german().fine(&[&words[..], &when].concat()));
}

#[test]
fn what_to_buy() {
    insta::assert_snapshot!("day_as_shopping", Sandbox::with_demo().fine(&brunch(&["--format", "shopping"])));
}

#[test]
fn packs_are_whole() {
    let sandbox = Sandbox::with_demo();
    sandbox.write("saltmarsh/larder.toml", "on = 2026-11-25\n[holds]\n");
    let prices = "[[price]]\nof = \"flour-strong-white\"\npack = \"200 g\"\ncosts = \"1 EUR\"\n\
        [[price]]\nof = \"egg-whole\"\npack = 6\ncosts = \"2 EUR\"\n[[price]]\nof = \"milk-whole\"\npack = \"1 l\"\ncosts = \"1 EUR\"\n";
    sandbox.write("saltmarsh/prices.toml", prices);
    let out = sandbox.fine(&brunch(&["--format", "shopping"]));
    // 480 g of flour, one egg, 180 g of milk.
    for told in ["480\u{a0}g: 3 packs of 200\u{a0}g", ": 1 pack of 6\n", ": 1 pack of 1\u{a0}l\n"] {
        assert!(out.contains(told), "{told}: {out}");
    }
    assert_eq!(out.matches("pack").count(), 3, "what has no price has no pack: {out}");
}

#[test]
fn what_the_larder_holds_is_not_bought() {
    let sandbox = Sandbox::with_demo();
    let larder = "on = 2026-11-25\n[holds]\nflour-strong-white = \"320 g\"\negg-whole = 3\nsalt = \"1 g\"\n";
    sandbox.write("saltmarsh/larder.toml", larder);
    let out = sandbox.fine(&brunch(&["--format", "shopping"]));
    let (buy, there) = out.split_once("There already").expect("something is there");
    // 480 g of flour, one egg and 9.6 g of salt are needed.
    assert!(buy.contains("160\u{a0}g of 480\u{a0}g, the rest is there"), "{out}");
    assert!(buy.contains("fine salt, 8.6\u{a0}g of 9.6\u{a0}g"), "{out}");
    assert!(there.contains("egg, 1") && !buy.contains("egg"), "{out}");
    assert!(there.contains("counted on 2026-11-25"), "{out}");
}

#[test]
fn the_same_day_for_other_programs() {
    let out = Sandbox::with_demo().fine(&brunch(&["--format", "json"]));
    let day: serde_json::Value = serde_json::from_str(&out).expect("JSON");
    assert_eq!(day["served"], "2026-11-29T09:30:00+01:00[Europe/Vienna]");
    assert_eq!(day["jobs"].as_array().map(Vec::len), Some(16));
    assert!(day["aims"].as_array().expect("aims").iter().all(|aim| aim["value"] == aim["bound"]));
}

#[test]
fn a_step_is_fixed_and_the_rest_is_planned_around_it() {
    let sandbox = Sandbox::with_demo();
    let fixed = sandbox.fine(&brunch(&["--at", "griddling/griddle=09:00", "--not-after", "sponge/mix=17:00"]));
    let fixed = fixed.replace("\n  ", " ");
    for told in [
        "making-up and griddling, fixed at 09:00",
        "mix · Potato muffins: overnight sponge, fixed not after Sat 17:00",
        "- served 15\u{a0}min later than wished, at 09:45",
        "“griddle” of the potato muffins at 09:00; serving at 09:30",
    ] {
        assert!(fixed.contains(told), "{told}: {fixed}");
    }
    let both = sandbox.fine(&brunch(&["--not-before", "dough/mix=07:00", "--not-after", "dough/mix=06:00", "--format", "json"]));
    let day: serde_json::Value = serde_json::from_str(&both).expect("JSON");
    assert_eq!(day["fixed"][1]["not-after"], "2026-11-29T06:00:00+01:00[Europe/Vienna]");
    let wishes: Vec<&serde_json::Value> = day["conflicts"][0].as_array().expect("a conflict").iter().collect();
    assert!(wishes.iter().all(|one| one["wish"]["job"] == day["fixed"][0]["job"]), "{wishes:?}");
    for (wrong, said) in [
        ("cellar/mix=06:00", "is no step of that day"),
        ("dough=06:00", "names no step with its time"),
        ("dough/mix=teatime", "is no moment"),
        ("dough/mix=2027-11-29 06:00", "more than a fortnight from serving"),
    ] {
        let refused = sandbox.run(&brunch(&["--not-before", wrong]));
        assert_eq!(refused.status, 2, "{wrong}");
        assert!(refused.err.contains(said), "{wrong}: {}", refused.err);
    }
}

#[test]
fn the_drawing_stands_alone() {
    let out = Sandbox::with_demo().fine(&brunch(&["--format", "chart"]));
    assert!(out.starts_with("<svg xmlns") && out.contains("<title") && out.contains("<desc"), "{out}");
    assert!(!out.contains("href="), "nothing is fetched");
}

#[test]
fn a_kitchen_with_more_hands_says_so() {
    let sandbox = Sandbox::with_demo();
    let kitchen = sandbox.read("saltmarsh/kitchens/estuary.toml");
    sandbox.write(
        "saltmarsh/kitchens/estuary.toml",
        kitchen.replace("altitude", "hands = 2\nrings = 4\nasleep = \"21:00-05:00\"\naltitude"),
    );
    let out = sandbox.fine(&brunch(&[]));
    assert!(out.contains("2 pairs of hands, 4 rings, 6 bowls (") && out.contains("21:00–05:00."), "{out}");
    assert!(out.contains("Every wish is granted."), "up at five there is time enough: {out}");
}

#[test]
fn out_of_the_kitchen() {
    let out = Sandbox::with_demo().fine(&brunch(&["--out", "17:00-20:30"]));
    assert!(out.contains("out until 20:30"), "{out}");
}

#[test]
fn what_cannot_be_planned_is_told_so() {
    let sandbox = Sandbox::with_demo();
    for (more, reason) in [
        (&["--serve", "2026-11-20 09:30"][..], "is past"),
        (&["--serve", "2026-11-26 12:00"], "is past"),
        (&["--serve", "2027-03-28 02:30"], "the clocks are changed"),
        (&["--serve", "2027-10-31 02:30"], "the clocks are changed"),
        (&["--serve", "2027-02-29 09:30"], "is no moment"),
        (&["--serve", "2026-11-29"], "is no moment"),
        (&["--serve", "half past nine"], "is no moment"),
        (&["--serve", ""], "is no moment"),
        (&["--serve", "9999-12-31 23:59", "--zone", "Nowhere/Town"], "cannot be used multiple times"),
        (&["--serve", "2026-11-29 09:30", "--there", "cake"], "no formula called “cake”"),
        (&["--serve", "2026-11-29 09:30", "--there", "potato-muffins"], "nothing has to be done"),
        (&["--serve", "2026-11-29 09:30", "--asleep", "late"], "two times of a clock"),
        (&["--serve", "2026-11-29 09:30", "--kitchen", "cellar"], "no kitchen called “cellar”"),
    ] {
        let ran = sandbox.run(&words(more));
        assert_eq!(ran.status, 2, "{more:?}: {}", ran.out);
        assert!(ran.err.contains(reason), "{more:?}: {}", ran.err);
    }
}

#[test]
fn steps_that_take_weeks_are_refused() {
    let sandbox = Sandbox::with_demo();
    let text = sandbox.read(MUFFINS);
    for time in ["40 d", "100000 h", "999999 d"] {
        sandbox.write(MUFFINS, text.replace("time = \"30 min\"", &format!("time = \"{time}\"")));
        let ran = sandbox.run(&brunch(&[]));
        assert!(ran.status == 2 && ran.err.contains("longer than a fortnight"), "{time}: {} {}", ran.out, ran.err);
    }
}

#[test]
fn steps_without_a_time_and_of_no_time_are_planned() {
    let sandbox = Sandbox::empty();
    let steps = [
        ("mix", "active", "time = \"0 min\""),
        ("bake", "waiting", "time = \"0 s\""),
        ("rest", "waiting", ""),
        ("serve", "active", ""),
    ];
    let step = |(action, attention, time): (&str, &str, &str)| {
        format!(
            "[[component.stage.step]]\naction = \"{action}\"\nattention = \"{attention}\"\ntext = \"Go on with {{water}}.\"\n{time}\n"
        )
    };
    let head = "title = \"Odd\"\nintro = \"x\"\nstorage = \"y\"\n[[component]]\nname = \"a\"\n[[component.stage]]\nname = \"b\"\n\
        kind = \"mixed\"\n[component.stage.ingredients]\nwater = \"500 g\"\n";
    sandbox.write("odd.toml", format!("{head}{}", steps.map(step).concat()));
    let out = sandbox.fine(&["day", "odd.toml", "--serve", "2026-11-29 09:30", "--now", "2026-11-28 12:00", "--zone", "UTC"]);
    assert!(out.contains("09:25–09:30  ● serve") && out.contains("time assumed"), "{out}");
}

#[test]
fn thousands_of_steps_are_refused() {
    let sandbox = Sandbox::with_demo();
    let text = sandbox.read("saltmarsh/formulas/base-syrup.toml");
    let step = "\n[[component.stage.step]]\naction = \"mix\"\ntext = \"Stir.\"\ntime = \"1 min\"\n";
    sandbox.write("saltmarsh/formulas/base-syrup.toml", format!("{text}{}", step.repeat(1200)));
    let ran = sandbox.run(&["day", "saltmarsh/formulas/base-syrup.toml", "--serve", "09:30"]);
    assert!(ran.status == 2 && ran.err.contains("up to 1000 are planned"), "{}", ran.err);
}

#[test]
fn a_day_is_planned_again_from_what_has_happened() {
    let sandbox = Sandbox::with_demo();
    let now = [
        "day",
        MUFFINS,
        "--serve",
        "2026-11-29 10:00",
        "--now",
        "2026-11-29 06:40",
        "--zone",
        "Europe/Vienna",
        "--patience",
        "300",
    ];
    let more = ["--done", "sponge/ferment=06:00", "--begun", "dough/mix=06:35", "--done", "potato-muffins/syrup/2=23:50"];
    let out = sandbox.fine(&[&now[..], &more[..]].concat());
    assert!(out.contains("06:35–06:45  ● mix · Potato muffins: potato dough") && !out.contains("sponge"), "{out}");
    assert!(out.contains("Every wish is granted."), "{out}");
    for (told, reason) in [
        ("sponge=06:00", "names no step with its time"),
        ("sponge/ferment", "names no step with its time"),
        ("sponge/bake=06:00", "no step of that day"),
        ("cake/sponge/ferment=06:00", "no step of that day"),
        ("sponge/ferment=2026-11-29 09:00", "still to come"),
        ("sponge/ferment=soon", "is no moment"),
    ] {
        let ran = sandbox.run(&[&now[..], &["--done", told]].concat());
        assert!(ran.status == 2 && ran.err.contains(reason), "{told}: {} {}", ran.out, ran.err);
    }
}

#[test]
fn far_off_days_are_planned_or_refused() {
    let sandbox = Sandbox::with_demo();
    for serve in ["9999-12-30 09:30", "2400-02-29 10:00"] {
        let ran = sandbox.run(&words(&["--serve", serve]));
        assert_ne!(ran.status, 101, "{serve}: {}", ran.err);
    }
}

#[test]
fn the_muffins_in_other_ways() {
    let sandbox = Sandbox::with_demo();
    insta::assert_snapshot!("day_alternatives", sandbox.fine(&brunch(&["--alternatives"])));
    let out = sandbox.fine(&brunch(&["--alternatives", "--format", "json"]));
    let ways: serde_json::Value = serde_json::from_str(&out).expect("JSON");
    assert_eq!(ways.as_array().map(Vec::len), Some(3));
    assert!(sandbox.fine(&brunch(&["--way", "cold"])).contains("retard · Potato muffins: potato dough"));
}

#[test]
fn ways_that_cannot_be_are_told_so() {
    let sandbox = Sandbox::with_demo();
    let day = ["day", "saltmarsh", "--serve", "2026-11-29 09:30", "--now", "2026-11-26 12:00", "--zone", "Europe/Vienna"];
    for (more, reason) in [
        (&["--alternatives"][..], "these are 6"),
        (&["--way", "cold", "--formula", "caraway-rye-tin"], "a culture keeps its own time"),
        (&["--way", "overnight", "--formula", "cardamom-knots"], "plain water"),
        (&["--way", "quick"], "same-day, overnight, cold"),
        (&["--alternatives", "--formula", "cardamom-knots", "--format", "chart"], "as text or as JSON"),
        (&["--alternatives", "--way", "cold"], "cannot be used with"),
    ] {
        let ran = sandbox.run(&[&day[..], more].concat());
        assert!(ran.status == 2 && ran.err.contains(reason), "{more:?}: {} {}", ran.out, ran.err);
    }
}

#[test]
fn what_is_seen_moves_the_rest() {
    let seen = |more: &[&str]| {
        let words = ["--serve", "2026-11-29 11:00", "--begun", "dough/bulk=06:25", "--done", "syrup/cool=06:00"];
        let mut all = vec!["day", MUFFINS, "--now", "2026-11-29 07:10", "--zone", "Europe/Vienna", "--patience", "300"];
        all.extend(words);
        all.extend(more);
        Sandbox::with_demo().run(&all)
    };
    let lags = seen(&["--seen", "dough/bulk=07:10 risen by 15 %"]);
    assert_eq!(lags.status, 0, "{}", lags.err);
    assert!(
        lags.out.contains("Seen: the potato dough risen by 15\u{a0}% at 07:10; “bulk” is now foreseen to be done at 08:"),
        "{}",
        lags.out
    );
    let cold = seen(&["--seen", "dough/mix=19 °C"]);
    assert!(cold.out.contains("Seen: the potato dough at 19\u{a0}°C"), "{}", cold.out);
    for (told, reason) in [
        ("dough/bulk=half way", "tells nothing that was seen"),
        ("dough/bulk", "tells nothing that was seen"),
        ("bulk=doubled", "tells nothing that was seen"),
        ("dough/bulk=25:00 doubled", "is no moment"),
        ("griddling/proof=doubled", "not told since when that goes on"),
        ("dough/bulk=06:00 doubled", "before it began"),
        ("cellar/bulk=doubled", "is no step of that day"),
    ] {
        let ran = seen(&["--seen", told]);
        assert!(ran.status == 2 && ran.err.contains(reason), "{told}: {} {}", ran.status, ran.err);
    }
}

#[test]
fn more_pieces_are_made_batch_after_batch() {
    let out = Sandbox::with_demo().fine(&brunch(&["--pieces", "36", "--format", "prep"]));
    assert!(out.contains("240\u{a0}g strong white flour"), "three times the sponge: {out}");
    // Twelve muffins take two batches of a quarter of an hour on the griddle, thirty-six six.
    let day = Sandbox::with_demo().fine(&brunch(&["--pieces", "potato-muffins=36"]));
    assert!(day.contains("07:45–09:15  ● griddle"), "{day}");
    for (pieces, reason) in [("many", "no number of pieces"), ("0", "no number of pieces"), ("knots=16", "no formula called")] {
        let ran = Sandbox::with_demo().run(&brunch(&["--pieces", pieces]));
        assert!(ran.status == 2 && ran.err.contains(reason), "{pieces}: {}", ran.err);
    }
}
