//! Ten thousand requests that chance made, the same in each run, over every door.

use crate::hostile::{WAYS_OUT, is_discreet};
use crate::roles::DOORS;
use crate::served::{Asked, Served, escaped, everything, form, next};

const REQUESTS: u64 = 10_000;
const SLOW: [&str; 2] = ["/day", "/bands"];
const METHODS: [&str; 8] = ["GET", "POST", "HEAD", "PUT", "DELETE", "OPTIONS", "PATCH", "BREW"];
const NAMES: [&str; 4] = ["potato-muffins", "cardamom-knots", "none", "Potato-Muffins"];
const FIELDS: [&str; 14] =
    ["gesture", "at", "line", "amount", "key", "step", "stays", "text", "from", "name", "role", "kitchen", "room", "serve"];
const VALUES: [&str; 26] = [
    "amount",
    "add",
    "take-out",
    "up",
    "total",
    "word",
    "mend",
    "hold-share",
    "0.0",
    "0.99",
    "-1.-1",
    "99999999999999999999",
    "flour-strong-white",
    "water",
    "120 g",
    "-5 g",
    "1e308 kg",
    "NaN",
    "100 %",
    "½",
    "25:99",
    "09:30",
    "-300 °C",
    "\u{0}",
    "🍞\u{202e}\u{feff}",
    "title = \"x\"\n[[component]]\n",
];
const KINDS: [&str; 6] = [
    "application/x-www-form-urlencoded",
    "application/x-www-form-urlencoded; charset=utf-16",
    "multipart/form-data; boundary=x",
    "multipart/form-data",
    "application/json",
    "",
];

/// What chance chooses.
struct Chance(u64);

impl Chance {
    fn up_to(&mut self, most: usize) -> usize {
        usize::try_from(next(&mut self.0) % most as u64).expect("a small number")
    }

    fn of<'a>(&mut self, all: &[&'a str]) -> &'a str {
        all[self.up_to(all.len())]
    }

    fn value(&mut self) -> String {
        match self.up_to(8) {
            0 => self.of(WAYS_OUT).to_owned(),
            1 => "y".repeat(1 << self.up_to(14)),
            2 => (0..self.up_to(24)).map(|_| char::from_u32(next(&mut self.0) as u32 % 0xd800).unwrap_or('?')).collect(),
            _ => self.of(&VALUES).to_owned(),
        }
    }

    fn path(&mut self, door: &str) -> String {
        let mut path = String::new();
        for (n, part) in door.split('{').enumerate() {
            let rest = if n == 0 { part } else { part.split_once('}').expect("an end").1 };
            if n > 0 {
                path += &if self.up_to(3) == 0 { escaped(&self.value()) } else { self.of(&NAMES).to_owned() };
            }
            path += rest;
        }
        for n in 0..self.up_to(3) {
            path += if n == 0 { "?" } else { "&" };
            path += &format!("{}={}", self.of(&FIELDS), escaped(&self.value()));
        }
        path
    }

    fn body(&mut self, kind: &str) -> Vec<u8> {
        if kind.starts_with("multipart") {
            let mut body = String::new();
            for _ in 0..self.up_to(4) {
                let (field, value) = (self.of(&FIELDS), self.value());
                body +=
                    &format!("--x\r\nContent-Disposition: form-data; name=\"{field}\"; filename=\"{value}\"\r\n\r\n{value}\r\n");
            }
            body += self.of(&["--x--\r\n", "--x", "", "--x\r\n\r\n", "\r\n--x--"]);
            return body.into_bytes();
        }
        if self.up_to(6) == 0 {
            return (0..self.up_to(200)).map(|_| next(&mut self.0) as u8).collect();
        }
        let fields: Vec<(&str, String)> = (0..self.up_to(8)).map(|_| (self.of(&FIELDS), self.value())).collect();
        form(&fields.iter().map(|(name, value)| (*name, value.as_str())).collect::<Vec<_>>()).into_bytes()
    }
}

#[test]
fn ten_thousand_requests() {
    let served = Served::demo(&["--share=127.0.0.1", "--port", "0"]);
    let owner = served.come_in(&served.owner);
    let helper = served.come_in(served.helper.as_deref().expect("a way"));
    let visitors = [
        (owner.as_str(), served.get("/", &owner).token()),
        (helper.as_str(), served.get("/", &helper).token()),
        ("", String::new()),
    ];
    let before = outside_of_the_texts(&served);
    let (mut chance, mut seen) = (Chance(20_261_125), std::collections::BTreeMap::<u16, u32>::new());
    let mut n = 0;
    while n < REQUESTS {
        let (method, door, ..) = DOORS[chance.up_to(DOORS.len())];
        // Whoever leaves or is kept waiting is looked at elsewhere, and what takes long is asked less often.
        if matches!(door, "/leave" | "/live") || (SLOW.iter().any(|end| door.ends_with(end)) && chance.up_to(10) > 0) {
            continue;
        }
        n += 1;
        let method = if chance.up_to(5) == 0 { chance.of(&METHODS) } else { method };
        let (cookie, token) = &visitors[chance.up_to(3)];
        let token = if chance.up_to(10) == 0 { "stale" } else { token };
        let (path, kind) = (chance.path(door), chance.of(&KINDS));
        let body = if method == "POST" || chance.up_to(10) == 0 { chance.body(kind) } else { Vec::new() };
        let from = Some([127, 0, 1, 1 + u8::try_from(n % 200).expect("small")].into());
        let headers = vec![("Cookie", *cookie), ("x-token", token), ("Content-Type", kind)];
        let asked = Asked { method, path: &path, headers, body: &body, from };
        if let Some(answer) = served.try_ask(&asked) {
            is_discreet(
                &served,
                &format!("{n}: {method} {path} {}", String::from_utf8_lossy(&body)),
                answer.status,
                &answer.body,
            );
            *seen.entry(answer.status).or_default() += 1;
        }
    }
    assert_eq!(outside_of_the_texts(&served), before, "nothing was written but into the formulas");
    for status in [200, 400, 401, 403, 404, 405, 422] {
        assert!(seen.contains_key(&status), "chance never came to {status}: {seen:?}");
    }
    assert_eq!(served.get("/", &owner).status, 200, "it goes on: {seen:?}");
}

/// What lies around the book's texts, which may well have been changed by those who may.
fn outside_of_the_texts(served: &Served) -> Vec<(String, Vec<u8>)> {
    let all = everything(&served.sandbox.path(""));
    let mut kept = Vec::new();
    for path in all.into_iter().filter(|path| !path.contains("/.remembered/") && !path.ends_with("/journal")) {
        let text = if path.contains("/saltmarsh/formulas/") { Vec::new() } else { std::fs::read(&path).expect("a file") };
        kept.push((path, text));
    }
    kept
}
