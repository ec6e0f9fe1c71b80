//! Keys, cookies and tokens: who comes in, as what, and until when.

use crate::served::{Asked, Served};

const SHARED: [&str; 3] = ["--share=127.0.0.1", "--port", "0"];
const KNOTS: &str = "/formula/cardamom-knots";

#[test]
fn nobody_comes_in_without_a_key() {
    let served = Served::demo(&SHARED);
    for (method, path) in [
        ("GET", "/"),
        ("GET", KNOTS),
        ("GET", "/live"),
        ("POST", "/formula/cardamom-knots/do"),
        ("GET", "/nothing"),
        ("DELETE", "/"),
    ] {
        let answer = served.ask(&Asked { method, path, ..Default::default() });
        assert_eq!(answer.status, 401, "{method} {path}");
        assert!(!answer.body.contains("Cardamom") && answer.body.contains("name=\"key\""), "{path}: {}", answer.body);
    }
    for key in ["", "wrong", &"0".repeat(64)] {
        let answer = served.get(&format!("/enter?key={key}"), "");
        assert!(answer.cookie().is_none() && answer.status == if key.is_empty() { 200 } else { 401 });
    }
}

#[test]
fn a_key_leads_in_and_leaves_the_address() {
    let served = Served::demo(&SHARED);
    let way = served.helper.clone().expect("a way for others");
    let answer = served.get(&way, "");
    let cookie = answer.header("set-cookie").expect("a cookie");
    for word in ["HttpOnly", "SameSite=Strict", "Path=/", "Max-Age="] {
        assert!(cookie.contains(word), "{cookie}");
    }
    assert_eq!(answer.header("refresh"), Some("0; url=/"));
    let key = way.split_once('=').expect("a key").1;
    assert!(!answer.body.contains(key) && !answer.head.contains(key) && !served.journal().contains(key));
    let page = served.get("/", &answer.cookie().expect("a cookie"));
    assert_eq!(page.status, 200);
    assert!(page.body.contains("You are here as helper") && !page.body.contains("/people"));
    // No way leads out of the house.
    for to in ["//evil.example", "https://evil.example", "/%0d%0aset-cookie:x", "javascript:x", "/\\evil"] {
        let answer = served.get(&format!("{way}&to={}", crate::served::escaped(to)), "");
        assert!(!answer.head.contains("evil") && !answer.body.contains("javascript"), "{}", answer.head);
    }
}

#[test]
fn owners_make_keys_and_withdraw_them() {
    let served = Served::demo(&SHARED);
    let owner = served.come_in(&served.owner);
    let token = served.get("/people", &owner).token();
    let made = served.post("/people", &owner, &token, &[("name", "Ada <b>"), ("role", "helper")]);
    assert!(made.body.contains("<svg") && made.body.contains("Ada &lt;b&gt;"), "{}", made.body);
    let key = made.between("/enter?key=", "<");
    let kept = served.sandbox.read("saltmarsh/.remembered/keys.json");
    assert!(!kept.contains(&key), "the key itself is kept nowhere");
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        let mode = std::fs::metadata(served.book().join(".remembered/keys.json")).expect("a file").permissions().mode();
        assert_eq!(mode & 0o777, 0o600);
    }
    let ada = served.come_in(&format!("/enter?key={key}"));
    assert_eq!(served.get(KNOTS, &ada).status, 200);
    assert_eq!(served.get("/people", &ada).status, 403);
    // Her token is of her session: the owner's is none of hers.
    let said = [("gesture", "amount")];
    assert_eq!(served.post(&format!("{KNOTS}/do"), &ada, &token, &said).status, 403);
    let people = served.get("/people", &owner);
    let number = people.between("/people/", "/withdraw");
    assert_eq!(served.post(&format!("/people/{number}/withdraw"), &owner, &token, &[]).status, 303);
    assert_eq!(served.get(KNOTS, &ada).status, 401, "out at once");
    assert_eq!(served.get(&format!("/enter?key={key}"), "").status, 401);
}

#[test]
fn a_cookie_is_worth_nothing_once_left_changed_or_elsewhere() {
    let mut served = Served::demo(&SHARED);
    let owner = served.come_in(&served.owner);
    let token = served.get("/", &owner).token();
    let key = served.post("/people", &owner, &token, &[("name", "Ben"), ("role", "helper")]).between("/enter?key=", "<");
    let ben = served.come_in(&format!("/enter?key={key}"));
    let left = served.come_in(&format!("/enter?key={key}"));
    let last = served.get("/", &left).token();
    let gone = served.post("/leave", &left, &last, &[]);
    assert!(gone.header("set-cookie").is_some_and(|cookie| cookie.contains("Max-Age=0")), "{}", gone.head);
    assert_eq!(served.get("/", &left).status, 401, "a copy of it opens nothing");

    let (name, value) = ben.split_once('=').expect("a pair");
    // A signature of 32 bytes comes first, in 43 letters and a sign that is written out.
    let (signature, rest) = value.split_at(46);
    let as_owner = owner.split_once('=').expect("a pair").1.split_at(46).1;
    for forged in [
        format!("{name}={rest}"),
        format!("{name}={signature}{as_owner}"),
        format!("{name}={}{rest}", "A".repeat(44)),
        format!("{name}={signature}{}", rest.replacen('1', "9", 1)),
        format!("{name}={signature}{rest}0"),
        format!("other={value}"),
        format!("{name}="),
        name.to_owned(),
    ] {
        assert_eq!(served.get("/", &forged).status, 401, "{forged}");
    }
    let other = Served::demo(&SHARED);
    assert_eq!(other.get("/", &ben).status, 401, "another book knows nobody of this one");

    // It outlasts the workbench; what was good only until it closed does not.
    served.kill();
    served.again(&SHARED, &[]);
    assert_eq!(served.get("/", &ben).status, 200);
    assert_eq!(served.get("/", &left).status, 401);
    assert_eq!(served.get("/", &owner).status, 401);
}

#[test]
fn guessing_is_slowed_down() {
    let served = Served::demo(&SHARED);
    let from = |last| Some([127, 0, 0, last].into());
    let tried =
        |last| served.ask(&Asked { method: "GET", path: "/enter?key=guess", from: from(last), ..Default::default() }).status;
    let answers: Vec<u16> = (0..12).map(|_| tried(7)).collect();
    assert_eq!(answers[..10], [401; 10]);
    assert_eq!(answers[10..], [429; 2]);
    assert_eq!(tried(8), 401, "another address is another's");
}

#[test]
fn asking_without_end_is_slowed_down() {
    let served = Served::demo(&["--port", "0"]);
    let from = Some([127, 0, 0, 9].into());
    let asked = Asked { method: "GET", path: "/asset/x/none", from, ..Default::default() };
    let answers: Vec<u16> = (0..3000).map(|_| served.ask(&asked).status).collect();
    assert!(answers.contains(&429), "it was never too much");
    assert_eq!(served.get("/asset/x/none", "").status, 404, "another address is another's");
}

#[test]
fn the_others_are_seen() {
    let served = Served::demo(&SHARED);
    let owner = served.come_in(&served.owner);
    let helper = served.come_in(served.helper.as_deref().expect("a way"));
    let looking = |cookie: &str| {
        use std::io::Write;
        let mut stream = served.connect(None);
        let host = served.port;
        write!(stream, "GET /live?at=cardamom-knots HTTP/1.1\r\nHost: 127.0.0.1:{host}\r\nCookie: {cookie}\r\n\r\n")
            .expect("asked");
        stream
    };
    let first = looking(&owner);
    let second = looking(&helper);
    let mut lines = std::io::BufRead::lines(std::io::BufReader::new(first)).map_while(Result::ok);
    assert!(lines.any(|line| line.contains("{\"here\":[\"the helper\"]}")));
    drop(second);
    assert!(lines.any(|line| line.contains("{\"here\":[]}")), "and seen to go");
}
