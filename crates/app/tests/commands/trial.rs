//! `trial`: begun with what is expected, noted in place, never altered in silence, remembered.

use crate::sandbox::Sandbox;
use std::io::Cursor;

const MUFFINS: &str = "saltmarsh/formulas/potato-muffins.toml";
const TRIAL: &str = "saltmarsh/trials/2026-11-21-potato-muffins.toml";

/// A text without its moments, "2026-11-21T18:20:00Z", and without the names of texts.
fn timeless(text: &str) -> String {
    let is_moment = |part: &str| part.ends_with('Z') && part.get(10..11) == Some("T") && part.starts_with("20");
    let word = |word: &str| {
        let core = word.trim_matches(|c: char| !c.is_ascii_alphanumeric());
        if core.len() == 64 {
            return word.replace(core, "[text]");
        }
        if is_moment(core) { word.replace(core, "[when]") } else { word.to_owned() }
    };
    text.split(' ').map(|words| words.split('\n').map(word).collect::<Vec<_>>().join("\n")).collect::<Vec<_>>().join(" ")
}

fn begun() -> Sandbox {
    let sandbox = Sandbox::with_demo();
    sandbox.fine(&["trial", "begin", MUFFINS, "--date", "2026-11-21"]);
    sandbox
}

#[test]
fn what_is_expected() {
    let sandbox = Sandbox::with_demo();
    insta::assert_snapshot!("trial_begun", sandbox.fine(&["trial", "begin", MUFFINS, "--date", "2026-11-21"]));
    let text = sandbox.read(TRIAL);
    assert!(text.contains("formula = \"potato-muffins\"") && text.contains("date = 2026-11-21"), "{text}");
    assert_eq!(sandbox.run(&["check", "saltmarsh"]).status, 0, "a trial of which nothing was seen yet is sound");
    let again = sandbox.run(&["trial", "begin", MUFFINS, "--date", "2026-11-21"]);
    assert!(again.status == 2 && again.err.contains("is there already"), "{}", again.err);
    sandbox.fine(&["trial", "begin", MUFFINS, "--date", "2026-11-21", "--name", "afternoon"]);
    let json = sandbox.fine(&["trial", "begin", MUFFINS, "--only-show", "--format", "json"]);
    let json: serde_json::Value = serde_json::from_str(&json).expect("JSON");
    assert_eq!(json["weights"][0]["name"], "sponge/flour-strong-white");
    assert_eq!(json["hours"][1]["learnt"], "(vigour of yeast-instant, learnt from 3 trials)");
    assert_eq!(json["trial"], serde_json::Value::Null);
}

/// The revision that is baked is told by its hash, and found again by its number.
#[test]
fn the_revision_that_is_baked() {
    let sandbox = Sandbox::with_demo();
    sandbox.fine(&["save", "saltmarsh"]);
    let first = sandbox.read(MUFFINS);
    sandbox.write(MUFFINS, first.replace("Griddled potato muffins", "Potato muffins from the griddle"));
    sandbox.fine(&["save", "saltmarsh"]);
    sandbox.fine(&["trial", "begin", MUFFINS, "--revision", "1", "--date", "2026-11-21"]);
    sandbox.fine(&["trial", "begin", MUFFINS, "--date", "2026-11-22"]);
    assert!(sandbox.fine(&["trial", "show", TRIAL]).contains("potato-muffins, revision 1, 2026-11-21"));
    let second = sandbox.fine(&["trial", "show", "saltmarsh/trials/2026-11-22-potato-muffins.toml"]);
    assert!(second.contains("potato-muffins, revision 2, 2026-11-22"), "{second}");
    assert_eq!(sandbox.run(&["trial", "begin", MUFFINS, "--revision", "9", "--date", "2026-11-23"]).status, 2);
}

#[test]
fn figures_are_noted_and_put_right() {
    let sandbox = begun();
    let noted = [
        "sponge/mix=24 °C",
        "sponge/flour-strong-white=81 g",
        "sponge/ferment=31 mm after 0 min",
        "sponge/ferment=46 mm after 1 h",
        "sponge/ferment=22.5 °C after 1 h",
        "sponge/ferment/room=21.5 °C",
        "dough/potato-cooked=22 °C",
        "sponge/ph=4.6",
        "griddling/pieces=12",
        "griddling/bake-loss=11 %",
        "griddling/griddle=96.5 °C",
        "griddling/griddle/time=15 min",
    ];
    let words: Vec<&str> = ["trial", "note", TRIAL, "--words", "Rain all day."].into_iter().chain(noted).collect();
    insta::assert_snapshot!("trial_noted", sandbox.fine(&words));
    insta::assert_snapshot!(
        "trial_put_right",
        sandbox.fine(&["trial", "note", TRIAL, "sponge/mix=23.5 °C", "griddling/pieces=", "--why", "wrong thermometer"])
    );
    assert_eq!(
        sandbox.fine(&["trial", "note", TRIAL, "sponge/mix=23.5 °C"]).trim(),
        "as noted before: sponge/mix/temperature 23.5 °C"
    );
    // And one is altered behind the tool's back.
    let text = sandbox.read(TRIAL);
    sandbox.write(TRIAL, text.replace("81 g", "82 g"));
    insta::assert_snapshot!("trial_text", timeless(&sandbox.read(TRIAL)));
    insta::assert_snapshot!("trial_shown", timeless(&sandbox.fine(&["trial", "show", TRIAL])));
    // What was altered by hand is kept apart even when the tool writes again.
    sandbox.fine(&["trial", "note", TRIAL, "sponge/ph=4.5"]);
    let shown = sandbox.fine(&["trial", "show", TRIAL]);
    assert!(shown.contains("sponge/flour-strong-white/amount: 81 g became 82 g") && shown.contains("was 4.6"), "{shown}");
    let json: serde_json::Value =
        serde_json::from_str(&sandbox.fine(&["trial", "show", TRIAL, "--format", "json"])).expect("JSON");
    assert_eq!(json["changed-in-the-file"][0]["was"], "81 g");
    assert_eq!(json["taken-out"][0]["was"], "12");
}

/// A correction that is taken out of the file by hand is missed.
#[test]
fn a_correction_cannot_go_in_silence() {
    let sandbox = begun();
    sandbox.fine(&["trial", "note", TRIAL, "sponge/mix=24 °C"]);
    sandbox.fine(&["trial", "note", TRIAL, "sponge/mix=23 °C"]);
    let text = sandbox.read(TRIAL);
    sandbox.write(TRIAL, &text[..text.find("[[correction]]").expect("a correction")]);
    let shown = sandbox.fine(&["trial", "show", TRIAL]);
    assert!(shown.contains("the correction of sponge/mix/temperature: 24 °C became nothing"), "{shown}");
}

#[test]
fn what_cannot_be_noted_is_refused_whole() {
    let sandbox = begun();
    let before = sandbox.read(TRIAL);
    for (figure, said) in [
        ("spong/mix=24 °C", "did you mean “sponge”?"),
        ("sponge/mixx=24 °C", "that names no figure"),
        ("sponge/height=46 mm", "when was the height read?"),
        ("sponge/mix=46", "does not tell what was measured"),
        ("sponge/mix=-300 °C", "below-absolute-zero"),
        ("griddling/core=hot", "not-an-amount"),
        ("griddling/pieces=0", "yield-impossible"),
        ("sponge/ph=17", "“17” is no pH"),
        ("sponge/ferment=0 mm after 1 h", "reading-of-nothing"),
        ("sponge/mix", "notes no figure"),
    ] {
        let ran = sandbox.run(&["trial", "note", TRIAL, "dough/mix=25 °C", figure]);
        assert!(ran.status > 0 && (ran.out + &ran.err).contains(said), "{figure}");
        assert_eq!(sandbox.read(TRIAL), before, "{figure}");
    }
    assert_eq!(sandbox.run(&["trial", "note", "saltmarsh/trials/none.toml", "dough/mix=25 °C"]).status, 2);
    assert_eq!(sandbox.run(&["trial", "note", MUFFINS, "dough/mix=25 °C"]).status, 2, "a formula is no trial");
}

/// A JPEG with what a camera notes of its owner, as EXIF (CIPA DC-008) puts it: an APP1 segment after the picture's start.
fn camera() -> Vec<u8> {
    let mut bytes = Vec::new();
    let picture = image::RgbImage::from_fn(2400, 1200, |x, y| image::Rgb([(x / 12) as u8, (y / 8) as u8, 90]));
    picture.write_to(&mut Cursor::new(&mut bytes), image::ImageFormat::Jpeg).expect("a picture");
    let noted = b"Exif\0\0II*\0\x08\0\0\0\0\0\0\0\0\0owner: A. Baker, Quay Lane";
    let mut whole = vec![0xff, 0xd8, 0xff, 0xe1, 0, (noted.len() + 2) as u8];
    whole.extend_from_slice(noted);
    whole.extend_from_slice(&bytes[2..]);
    whole
}

#[test]
fn a_photograph_is_freed_of_what_the_camera_noted() {
    let sandbox = begun();
    let camera = camera();
    let holds = |bytes: &[u8]| bytes.windows(9).any(|part| part == b"Quay Lane");
    assert!(holds(&camera));
    sandbox.write("crumb.jpg", &camera);
    sandbox.fine(&["trial", "note", TRIAL, "--photograph", "crumb.jpg", "--shows", "Crumb", "--across", "120 mm"]);
    let kept = std::fs::read(sandbox.path("saltmarsh/trials/2026-11-21-potato-muffins-crumb.jpg")).expect("it is kept");
    assert!(!holds(&kept));
    let size = image::load_from_memory(&kept).expect("a picture");
    assert_eq!((size.width(), size.height()), (1600, 800));
    // The same picture once more is no second one, another is.
    sandbox.fine(&["trial", "note", TRIAL, "--photograph", "crumb.jpg", "--shows", "Crumb", "--across", "120 mm"]);
    assert_eq!(sandbox.read(TRIAL).matches("[[photograph]]").count(), 1);
    assert_eq!(sandbox.run(&["check", "saltmarsh"]).status, 0);
    for (file, bytes) in [("cut.jpg", &camera[..camera.len() / 2]), ("words.jpg", b"no picture"), ("none.jpg", b"")] {
        sandbox.write(file, bytes);
        let ran = sandbox.run(&["trial", "note", TRIAL, "--photograph", file, "--shows", "Crumb"]);
        assert_eq!(ran.status, 2, "{file}: {}", ran.out);
    }
    let refused = sandbox.run(&["trial", "note", TRIAL, "--photograph", "crumb.jpg", "--shows", "Top", "--across", "120 g"]);
    assert_eq!(refused.status, 1);
    let pictures = sandbox.files("saltmarsh/trials").iter().filter(|name| name.ends_with("jpg")).count();
    assert_eq!(pictures, 1, "no picture is kept of what is refused");
}

/// Everything that was noted goes out and into an empty store, byte for byte.
#[test]
fn the_whole_history_goes_out_and_in() {
    let sandbox = begun();
    sandbox.fine(&["save", "saltmarsh"]);
    sandbox.fine(&["trial", "note", TRIAL, "sponge/mix=24 °C"]);
    sandbox.fine(&["trial", "note", TRIAL, "sponge/mix=23 °C", "--why", "misread"]);
    sandbox.fine(&["store", "saltmarsh", "export", "one.jsonl"]);
    let shown = sandbox.fine(&["trial", "show", TRIAL]);
    std::fs::remove_dir_all(sandbox.path("saltmarsh/.remembered")).expect("the memory goes");
    sandbox.fine(&["store", "saltmarsh", "import", "one.jsonl"]);
    sandbox.fine(&["store", "saltmarsh", "export", "other.jsonl"]);
    let records = sandbox.read("one.jsonl");
    assert_eq!(records, sandbox.read("other.jsonl"));
    assert!(records.lines().filter(|line| line.contains("2026-11-21-potato-muffins") && line.contains("trial")).count() >= 3);
    assert_eq!(sandbox.fine(&["trial", "show", TRIAL]), shown);
}

/// Two who note at once both find their figures in the trial.
#[test]
fn two_who_note_at_once() {
    let sandbox = begun();
    std::thread::scope(|scope| {
        for worker in 0..4 {
            let sandbox = &sandbox;
            scope.spawn(move || {
                for number in 0..3 {
                    let figure = format!("sponge/ferment={} mm after {} min", 30 + worker, worker * 10 + number);
                    sandbox.fine(&["trial", "note", TRIAL, &figure]);
                }
            });
        }
    });
    assert_eq!(sandbox.read(TRIAL).matches("height = ").count(), 12);
}

/// A series of one formula over weeks, and two trials with what differs between them.
#[test]
fn trials_side_by_side() {
    let sandbox = Sandbox::with_demo();
    insta::assert_snapshot!("trials_over_time", sandbox.fine(&["trial", "compare", "saltmarsh", "--formula", "caraway-rye-tin"]));
    let (one, other) = ("saltmarsh/trials/2026-11-03-muffins.toml", "saltmarsh/trials/2026-11-14-muffins.toml");
    let told = sandbox.fine(&["trial", "compare", other, one]);
    assert!(told.contains("how thick") && !told.contains("/cook/") && told.contains("as by chance"), "{told}");
    for words in [
        &["trial", "compare", one][..],
        &["trial", "compare", "saltmarsh"],
        &["trial", "compare", "saltmarsh", "--formula", "rye"],
    ] {
        assert_eq!(sandbox.run(words).status, 2, "{words:?}");
    }
}

/// Photographs of the same thing stand side by side, a millimetre as wide in each; what anybody wrote is escaped.
#[test]
fn photographs_at_the_same_scale() {
    let sandbox = Sandbox::with_demo();
    sandbox.write("crumb.jpg", camera());
    let (one, other) = ("saltmarsh/trials/2026-11-03-muffins.toml", "saltmarsh/trials/2026-11-14-muffins.toml");
    for (trial, across) in [(one, "120 mm"), (other, "6 cm")] {
        sandbox.fine(&["trial", "note", trial, "--photograph", "crumb.jpg", "--shows", "<b>crumb", "--across", across]);
    }
    sandbox.fine(&["trial", "compare", one, other, "--out", "muffins.html"]);
    let page = sandbox.read("muffins.html");
    assert_eq!(page.matches("data:image/jpeg;base64,").count(), 2);
    assert!(page.contains("width=\"360\"") && page.contains("width=\"180\""), "120 mm are twice as wide as 60 mm");
    assert!(page.contains("&lt;b&gt;crumb") && !page.contains("<b>crumb"));
}

/// Trials are held against the text that was baked, not against what the formula has become.
#[test]
fn a_changed_formula_leaves_its_trials_alone() {
    let sandbox = begun();
    let noted = ["dough/mix=25 °C", "dough/bulk/room=22 °C", "dough/bulk/doubled-after=1 h 15 min"];
    sandbox.fine(&[&["trial", "note", TRIAL][..], &noted].concat());
    let before = sandbox.fine(&["learn", "saltmarsh"]);
    let text = sandbox.read(MUFFINS);
    let weak = text.replace("yeast-instant = \"1 %\"", "yeast-instant = \"0.5 %\"");
    assert!(weak != text, "the dough has 1 % of yeast");
    // The book's other trials do not say which text was baked, so only this one is asked about.
    let own = |told: &str| {
        told.lines().skip_while(|line| !line.starts_with("2026-11-21, “Griddled")).take(4).collect::<Vec<_>>().join("\n")
    };
    sandbox.write(MUFFINS, weak);
    let after = sandbox.run(&["learn", "saltmarsh"]);
    let books = |told: &str| own(told).split('○').nth(1).map(|rest| rest.chars().take(12).collect::<String>());
    assert_eq!(books(&after.out), books(&before));
    std::fs::remove_dir_all(sandbox.path("saltmarsh/.remembered")).expect("the memory goes");
    let forgotten = sandbox.run(&["learn", "saltmarsh"]);
    assert!(forgotten.err.contains("the text that was baked is not remembered"), "{}", forgotten.err);
}

/// Asked of what is remembered: also of trials that are no longer there.
#[test]
fn figures_are_followed_from_trial_to_trial() {
    let sandbox = Sandbox::with_demo();
    assert_eq!(sandbox.run(&["trial", "follow", "saltmarsh"]).status, 2, "nothing was saved yet");
    sandbox.fine(&["save", "saltmarsh"]);
    let told = |words: &[&str]| {
        sandbox.fine(&[&["trial", "follow", "saltmarsh"], words].concat()).replace("\n  ", " ").replace('\u{a0}', " ")
    };
    let culture = told(&["--of", "rye-culture"]);
    assert!(
        culture
            .contains("• levain/ferment/lasted: 14 h (2026-10-17), 13 h (2026-10-31), 13 h (2026-11-15); least 13 h, most 14 h"),
        "{culture}"
    );
    assert!(!culture.contains("dough/mix"), "the dough holds the levain, not the culture: {culture}");
    std::fs::remove_file(sandbox.path("saltmarsh/trials/2026-10-17-rye.toml")).expect("gone");
    assert_eq!(told(&["--of", "rye-culture"]), culture);
    let json = sandbox.fine(&[
        "trial",
        "follow",
        "saltmarsh",
        "--formula",
        "potato-muffins",
        "--figure",
        "sponge/mix",
        "--format",
        "json",
    ]);
    let json: serde_json::Value = serde_json::from_str(&json).expect("JSON");
    assert_eq!(json[0]["noted"][0]["value"], "24 °C");
    let trial = sandbox.read("saltmarsh/trials/2026-11-15-rye.toml");
    sandbox.write("saltmarsh/trials/2026-11-15-rye.toml", trial.replace("lasted = \"13 h\"", "lasted = \"12 h\""));
    let changed = sandbox.run(&["trial", "follow", "saltmarsh", "--figure", "levain/ferment/lasted"]);
    assert!(changed.err.contains("1 of the book’s trials") || changed.err.contains("1 of the book's trials"), "{}", changed.err);
    for (words, said) in [(["--of", "saltt"], "did you mean “salt”?"), (["--figure", "no-such"], "nothing of that was measured")]
    {
        let refused = sandbox.run(&[&["trial", "follow", "saltmarsh"], &words[..]].concat());
        assert!(refused.status == 2 && refused.err.contains(said), "{words:?}: {}", refused.err);
    }
}
