//! `learn`: what the demo's trials taught, what the forecast makes of it, and trials with faults.

use crate::sandbox::Sandbox;

const KNOTS: &str = "saltmarsh/formulas/cardamom-knots.toml";

#[test]
fn what_did_my_three_trials_teach() {
    insta::assert_snapshot!("learnt_as_text", Sandbox::with_demo().fine(&["learn", "saltmarsh"]));
}

#[test]
fn lessons_as_data() {
    let out = Sandbox::with_demo().fine(&["learn", "saltmarsh", "--format", "json"]);
    let value: serde_json::Value = serde_json::from_str(&out).expect("JSON");
    let learnt = value["learnt"].as_array().expect("a list");
    let vigour = learnt.iter().find(|one| one["figure"] == "the vigour of instant yeast").expect("the yeast's vigour");
    let number = |value: &serde_json::Value| value.as_f64().expect("a number");
    let band = |known: &serde_json::Value| number(&known["band"][1]) - number(&known["band"][0]);
    assert_eq!(vigour["after"]["trials"], 3);
    assert!(band(&vigour["after"]) < 0.5 * band(&vigour["before"]));
    let doubled = &value["errors"]["times to double"];
    assert!(number(&doubled["from-the-others-alone"]) < number(&doubled["by-the-books"]));
}

/// The forecast says what it learnt, with a narrower band; without the trials it is that of the books.
#[test]
fn the_forecast_uses_what_was_learnt() {
    let sandbox = Sandbox::with_demo();
    let bulk = |more: &[&str]| {
        let out = sandbox.fine(&[&["forecast", KNOTS, "--format", "json"][..], more].concat());
        let value: serde_json::Value = serde_json::from_str(&out).expect("JSON");
        let reached = value[0]["rises"][0]["steps"][0]["reached"]["from"].clone();
        let hours = |at: usize| reached["band"][at].as_f64().expect("a band") / reached["value"].as_f64().expect("hours");
        (hours(1) - hours(0), reached["origin"].clone())
    };
    let (learnt, from_trials) = bulk(&[]);
    let (books, from_books) = bulk(&["--without-trials"]);
    assert!((books - 0.66).abs() < 1e-9 && learnt < 0.5, "{books} {learnt}");
    assert_eq!(from_trials["measured"], "vigour of yeast-instant, learnt from 3 trials");
    assert_eq!(from_books["computed"], "the course of the ferment");
    let elsewhere = sandbox.fine(&["forecast", KNOTS, "--kitchen", "boathouse"]);
    assert!(elsewhere.contains("those of the books"), "the boathouse has logged nothing: {elsewhere}");
    assert!(sandbox.fine(&["forecast", KNOTS]).contains("learnt from 3 trials"));
}

/// A trial far from the others is asked about and still counts; its author may leave it out, with the reason shown.
#[test]
fn a_strange_trial_is_asked_about() {
    let sandbox = Sandbox::with_demo();
    let strange = |left_out: &str| {
        format!(
            "title = \"The cold morning\"\nformula = \"cardamom-knots\"\ndate = \"2026-11-20\"\n{left_out}[[mix]]\nstage = \"dough\"\ntemperature = \"25 °C\"\n\
             [[rise]]\nstage = \"dough\"\nroom = \"22 °C\"\ndoubled-after = \"6 h\"\n"
        )
    };
    sandbox.write("saltmarsh/trials/strange.toml", strange(""));
    let asked = sandbox.fine(&["learn", "saltmarsh"]);
    assert!(asked.contains("7 trials.") && asked.contains("Out of line?") && asked.contains("The cold morning"), "{asked}");
    sandbox.write("saltmarsh/trials/strange.toml", strange("left-out = \"the heater failed\"\n"));
    let told = sandbox.fine(&["learn", "saltmarsh"]);
    assert!(told.contains("1 left out") && told.contains("the heater failed") && !told.contains("Out of line?"), "{told}");
}

#[test]
fn faults_in_trials_have_their_place() {
    for (line, code) in [
        ("[[rise]]\nstage = \"spounge\"", "unknown-stage"),
        ("[[rise]]\nstage = \"dough\"\nstep = \"retard\"", "unknown-stage"),
        ("[[rise]]\nstage = \"dough\"\ncomponent = \"muffin\"", "unknown-component"),
        ("[[cook]]\nstage = \"dough\"\ncore = \"90 °C\"", "unknown-stage"),
        ("[[mix]]\nstage = \"dough\"\ningredients = { buter = \"20 g\" }", "unknown-ingredient"),
        ("[[mix]]\nstage = \"dough\"\ntemperature = \"25 g\"", "wrong-quantity"),
        ("[[rise]]\nstage = \"dough\"\nroom = \"-300 °C\"", "below-absolute-zero"),
        ("kitchen = \"estury\"", "unknown-kitchen"),
        ("[[rise]]\nstage = \"dough\"\ncourse = \"../../../etc/passwd\"", "course-missing"),
    ] {
        let sandbox = Sandbox::with_demo();
        let head = "title = \"x\"\nformula = \"potato-muffins\"\ndate = 2026-11-02\n";
        sandbox.write("saltmarsh/trials/x.toml", format!("{head}{line}\n"));
        let ran = sandbox.run(&["check", "saltmarsh"]);
        assert_eq!(ran.status, 1, "{line}: {}", ran.out);
        assert!(ran.out.contains(code) && ran.out.contains("trials/x.toml:"), "{line}: {}", ran.out);
        assert_eq!(sandbox.run(&["learn", "saltmarsh"]).status, 1, "{line}");
    }
}

#[test]
fn a_book_without_trials_says_so() {
    let sandbox = Sandbox::empty();
    sandbox.fine(&["new", "book"]);
    assert!(sandbox.fine(&["learn", "book"]).contains("No trial of this kitchen"));
    assert_eq!(sandbox.run(&["learn", "book", "--kitchen", "cellar"]).status, 2);
}

/// A time twelve hours off is asked about with the time that was meant, and the liveliness over the weeks is drawn.
#[test]
fn slips_and_drift() {
    let sandbox = Sandbox::with_demo();
    let slip = "title = \"The late morning\"\nformula = \"cardamom-knots\"\ndate = \"2026-11-20\"\n[[mix]]\nstage = \"dough\"\ntemperature = \"25 °C\"\n\
                [[rise]]\nstage = \"dough\"\nroom = \"22 °C\"\ndoubled-after = \"13 h 40 min\"\n";
    sandbox.write("saltmarsh/trials/slip.toml", slip);
    let asked = sandbox.fine(&["learn", "saltmarsh", "--drift", "drift.svg"]).replace("\n  ", " ").replace('\u{a0}', " ");
    assert!(asked.contains("is this 13 h 40 min, or 1 h 40 min?"), "{asked}");
    let drawing = sandbox.read("drift.svg");
    assert!(
        drawing.starts_with("<svg")
            && drawing.contains("The vigour of ripe rye culture")
            && drawing.matches("<circle").count() >= 6
    );
    let json: serde_json::Value = serde_json::from_str(&sandbox.fine(&["learn", "saltmarsh", "--format", "json"])).expect("JSON");
    assert!(json["asked"][0]["instead"].as_f64().is_some_and(|hours| (hours - 5.0 / 3.0).abs() < 0.01), "{}", json["asked"]);
}

/// Whoever tells a time that trials taught says so: the forecast, the day, the page.
#[test]
fn every_time_says_that_it_is_measured() {
    let sandbox = Sandbox::with_demo();
    assert!(sandbox.fine(&["forecast", KNOTS]).contains("learnt from 3 trials"));
    let day = |more: &[&str]| {
        sandbox.fine(&[&["day", KNOTS, "--serve", "2026-12-06 10:30", "--now", "2026-12-04 08:00"][..], more].concat())
    };
    assert!(day(&[]).contains("Times of instant yeast are learnt from 3 trials in this kitchen."));
    assert!(!day(&["--without-trials"]).contains("learnt from"));
    let json: serde_json::Value = serde_json::from_str(&day(&["--format", "json"])).expect("JSON");
    assert_eq!(json["measured"][0], "Times of instant yeast are learnt from 3 trials in this kitchen.");
    sandbox.fine(&["publish", "saltmarsh", "--out", "published"]);
    let page = sandbox.read("published/cardamom-knots.html");
    assert!(page.contains("Times of instant yeast from 3 trials in the author’s own kitchen."));
}
