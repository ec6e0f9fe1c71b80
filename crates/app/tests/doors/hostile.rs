//! Requests that no browser of ours sends: other hosts and origins, slow and endless ones, ways out of the book.

use crate::roles::DOORS;
use crate::served::{Asked, Served, escaped, everything, form, read_answer};
use std::io::{Read, Write};

const HOME: [&str; 2] = ["--port", "0"];
const TEXT: &str = "/formula/cardamom-knots/text";

/// Ways out of a folder, as they are tried.
pub const WAYS_OUT: &[&str] = &[
    "../../../../etc/passwd",
    "..%2f..%2f..%2f..%2fetc%2fpasswd",
    "%2e%2e/%2e%2e/%2e%2e/etc/passwd",
    "..\\..\\..\\etc\\passwd",
    "....//....//etc/passwd",
    "/etc/passwd",
    "//etc/passwd",
    "%252e%252e%252fetc%252fpasswd",
    "..%c0%af..%c0%afetc%c0%afpasswd",
    "cardamom-knots/../../book",
    "cardamom-knots%00.toml",
    "cardamom-knots.toml",
    "../book",
    ".remembered/keys.json",
    "../.remembered/keys",
    "file:///etc/passwd",
    "C:\\Windows\\win.ini",
    "~root/.ssh/id_rsa",
    "",
];

/// An answer that keeps its countenance: it is no 500, and tells nothing of the machine.
#[track_caller]
pub fn is_discreet(served: &Served, asked: &str, status: u16, said: &str) {
    assert!(status != 500, "{asked}: {said}");
    let folder = served.book().canonicalize().expect("a folder");
    for secret in [folder.to_str().expect("text"), "root:x:", "/home/", "/root/", "panicked", ".rs:", "\"signing\""] {
        assert!(!said.contains(secret), "{asked} tells {secret}: {said}");
    }
}

#[test]
fn other_hosts_and_origins_are_turned_away() {
    let served = Served::demo(&HOME);
    let port = served.port.to_string();
    let token = served.get("/", "").token();
    let body = form(&[("token", &token), ("gesture", "none")]);
    let kind = ("Content-Type", "application/x-www-form-urlencoded");
    let ask = |headers: Vec<(&str, &str)>| {
        let headers = headers.into_iter().chain([kind]).collect();
        served
            .ask(&Asked { method: "POST", path: "/formula/cardamom-knots/do", headers, body: body.as_bytes(), from: None })
            .status
    };
    let here = format!("127.0.0.1:{port}");
    for host in [
        "evil.example",
        "evil.example:80",
        "192.0.2.7",
        "0.0.0.0",
        "127.0.0.1.evil.example",
        "localhost.evil.example",
        "127.0.0.1:x",
        "[::1]",
        "127.0.0.2",
        "2130706433",
        "@127.0.0.1",
    ] {
        assert_eq!(ask(vec![("Host", host)]), 403, "{host}");
    }
    assert_eq!(ask(vec![("Host", &here), ("host", "evil.example")]), 403, "two hosts");
    for origin in [
        "http://evil.example",
        "null",
        "http://127.0.0.1",
        "http://localhost:1",
        "file://",
        &format!("http://{here}.evil.example"),
        &format!("http://{here}/"),
        &format!("ftp://{here}"),
    ] {
        assert_eq!(ask(vec![("Origin", origin)]), 403, "{origin}");
    }
    for site in ["cross-site", "same-site"] {
        assert_eq!(ask(vec![("Sec-Fetch-Site", site)]), 403, "{site}");
    }
    assert_eq!(ask(vec![("Origin", &format!("http://{here}")), ("Sec-Fetch-Site", "same-origin")]), 422, "its own page");
    assert_eq!(ask(vec![("Host", &format!("localhost:{port}"))]), 422);
    let shared = Served::demo(&["--share", "--port", "0", "--known-as", "bench.example"]);
    let status = |host: &str| shared.get_from(host);
    assert_eq!(status("bench.example"), 401, "a name of its own");
    assert_eq!(status("evil.example"), 403);
    assert_eq!(status("192.0.2.77:7380"), 403, "an address of another machine");
}

#[test]
fn what_changes_something_shows_the_token_of_its_page() {
    let served = Served::demo(&HOME);
    let token = served.get("/", "").token();
    let other = Served::demo(&HOME).get("/", "").token();
    let before = served.files();
    let text = "title = \"Stolen\"\n";
    // At the door and at a taster's sheet the word that is shown stands for it.
    let has_word = |path: &str| path == "/enter" || path.starts_with("/taste/");
    for (_, _, path, _) in DOORS.iter().filter(|(method, _, path, _)| *method == "POST" && !has_word(path)) {
        for (token, kind) in [
            ("", "application/x-www-form-urlencoded"),
            (&*other, "application/x-www-form-urlencoded"),
            ("", "text/plain"),
            (&token[1..], "application/x-www-form-urlencoded"),
            ("", "multipart/form-data; boundary=x"),
            ("", ""),
        ] {
            let body = form(&[("text", text), ("token", token)]);
            let answer = served.ask(&Asked {
                method: "POST",
                path,
                headers: vec![("Content-Type", kind)],
                body: body.as_bytes(),
                from: None,
            });
            assert_eq!(answer.status, 403, "{path} with “{token}” as {kind}");
        }
    }
    assert_eq!(served.files(), before);
}

#[test]
fn no_parameter_leads_out_of_the_book() {
    let served = Served::demo(&HOME);
    let token = served.get("/", "").token();
    let (before, around) = (served.files(), everything(&served.sandbox.path("")));
    for way in WAYS_OUT {
        for (method, door, path, _) in DOORS.iter().filter(|(_, _, path, _)| *path != "/live" && *path != "/leave") {
            let plain = format!("{path}?at={0}&key={0}&to={0}&kitchen={0}&room={0}&fridge={0}&serve={0}&file={0}", escaped(way));
            let mut addresses = vec![plain];
            if let Some((begin, end)) = door.split_once('{').and_then(|(begin, rest)| Some((begin, rest.split_once('}')?.1))) {
                let end = end.replace("{name}", "x");
                addresses.extend([format!("{begin}{way}{end}"), format!("{begin}{}{end}", escaped(way))]);
            }
            for address in addresses.iter().filter(|address| !address.contains([' ', '\\'])) {
                let fields = ["gesture", "at", "line", "amount", "key", "step", "stays", "name", "role", "file", "from"];
                let body = form(&fields.map(|field| (field, *way)));
                let headers = vec![("Content-Type", "application/x-www-form-urlencoded"), ("x-token", token.as_str())];
                let body = if *method == "POST" { body.as_bytes() } else { b"" };
                let answer = served.ask(&Asked { method, path: address, headers, body, from: None });
                is_discreet(&served, address, answer.status, &answer.body);
            }
        }
    }
    assert_eq!(served.files(), before);
    let memory = |path: &String| path.contains(".remembered");
    let strip = |all: Vec<String>| all.into_iter().filter(|path| !memory(path)).collect::<Vec<_>>();
    assert_eq!(strip(everything(&served.sandbox.path(""))), strip(around));
}

#[test]
fn what_is_too_large_is_not_read() {
    let served = Served::demo(&HOME);
    let token = served.get("/", "").token();
    let before = served.files();
    let large = form(&[("text", &"flour ".repeat(600_000)), ("from", "")]);
    let kind = ("Content-Type", "application/x-www-form-urlencoded");
    for headers in
        [vec![kind, ("x-token", token.as_str())], vec![kind, ("x-token", token.as_str()), ("Content-Length", "99999999999")]]
    {
        let answer = served.ask(&Asked { method: "POST", path: TEXT, headers, body: large.as_bytes(), from: None });
        assert_eq!(answer.status, 413);
    }
    // The same in pieces whose number nobody was told.
    let mut stream = served.connect(None);
    write!(stream, "POST {TEXT} HTTP/1.1\r\nHost: 127.0.0.1:{}\r\nConnection: close\r\nTransfer-Encoding: chunked\r\nContent-Type: {}\r\nx-token: {token}\r\n\r\n", served.port, kind.1).expect("a head");
    let piece = format!("10000\r\n{}\r\n", "x".repeat(0x10000));
    while stream.write_all(piece.as_bytes()).is_ok() {}
    let answer = read_answer(stream);
    assert!(answer.is_none_or(|answer| answer.status == 413));
    // Heads have an end, too.
    for head in
        ["x: ".to_owned() + &"y".repeat(200_000), "a: b\r\n".repeat(500), format!("GET /{} HTTP/1.1", "z".repeat(100_000))]
    {
        let mut stream = served.connect(None);
        let first = if head.starts_with("GET") { String::new() } else { "GET / HTTP/1.1\r\n".to_owned() };
        let _ = write!(stream, "{first}Host: 127.0.0.1:{}\r\n{head}\r\n\r\n", served.port);
        assert!(read_answer(stream).is_none_or(|answer| (400..500).contains(&answer.status)), "{}", &head[..20]);
    }
    assert_eq!(served.files(), before);
    assert_eq!(served.get("/", "").status, 200, "it goes on");
}

#[test]
fn whoever_dawdles_is_given_up() {
    let served = Served::demo(&HOME);
    let token = served.get("/", "").token();
    let host = served.port;
    // A head that never ends, a body that never comes, one that comes too slowly to be waited for: all at once.
    let ways = [
        format!("GET / HTTP/1.1\r\nHost: 127.0.0.1:{host}\r\nx-slow"),
        format!(
            "POST {TEXT} HTTP/1.1\r\nHost: 127.0.0.1:{host}\r\nx-token: {token}\r\nContent-Length: 1000\r\nContent-Type: application/x-www-form-urlencoded\r\n\r\ntext="
        ),
        String::new(),
    ];
    let streams = ways.map(|way| {
        let mut stream = served.connect(None);
        stream.write_all(way.as_bytes()).expect("a beginning");
        stream
    });
    for mut stream in streams {
        let mut said = String::new();
        stream.read_to_string(&mut said).expect("it is closed");
        assert!(said.is_empty() || said.contains(" 408 "), "{said}");
    }
    let before = served.files();
    assert_eq!(served.get("/", "").status, 200);
    assert_eq!(served.files(), before);
}

#[test]
fn pages_say_what_they_may_do() {
    let served = Served::demo(&HOME);
    for path in
        ["/", "/formula/cardamom-knots", "/formula/cardamom-knots/text", "/formula/cardamom-knots/day", "/nothing", "/people"]
    {
        let answer = served.get(path, "");
        let policy = answer.header("content-security-policy").unwrap_or_else(|| panic!("{path}: {}", answer.head));
        assert!(policy.contains("default-src 'self'") && !policy.contains("unsafe"), "{policy}");
        assert_eq!(answer.header("x-content-type-options"), Some("nosniff"));
        assert_eq!(answer.header("cache-control"), Some("no-store"));
        for inline in ["<script>", " style=\"", " onclick", "javascript:"] {
            assert!(!answer.body.contains(inline), "{path} has {inline}");
        }
    }
}

impl Served {
    fn get_from(&self, host: &str) -> u16 {
        self.ask(&Asked { method: "GET", path: "/", headers: vec![("Host", host)], ..Default::default() }).status
    }
}
