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
