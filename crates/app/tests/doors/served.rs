//! A workbench that runs, and a client of our own: what a browser would never send can be sent too.

use crate::sandbox::Sandbox;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::{Ipv4Addr, SocketAddr, TcpStream};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::Duration;

/// A workbench of a copy of the demo book; it is gone when it is dropped.
pub struct Served {
    pub sandbox: Sandbox,
    pub child: Child,
    pub port: u16,
    /// The way in that was told to the owner, from the first slash on.
    pub owner: String,
    /// What was told to others, if it is shared.
    pub helper: Option<String>,
}

/// What was answered.
pub struct Answer {
    pub status: u16,
    pub head: String,
    pub body: String,
}

impl Answer {
    /// A header's value; the names of headers are in small letters.
    pub fn header(&self, name: &str) -> Option<&str> {
        self.head
            .lines()
            .find_map(|line| line.split_once(": ").filter(|(own, _)| own.eq_ignore_ascii_case(name)).map(|(_, value)| value))
    }

    /// The token of a page.
    pub fn token(&self) -> String {
        self.between("name=\"token\" content=\"", "\"")
    }

    /// What stands between two pieces of the body.
    #[track_caller]
    pub fn between(&self, before: &str, after: &str) -> String {
        let rest = self.body.split_once(before).unwrap_or_else(|| panic!("no {before} in {}", self.body)).1;
        rest.split_once(after).expect("an end").0.to_owned()
    }

    /// The cookie that is to be carried from now on.
    pub fn cookie(&self) -> Option<String> {
        self.header("set-cookie").map(|cookie| cookie.split(';').next().unwrap_or_default().to_owned())
    }
}

/// What is to be asked.
#[derive(Clone, Default)]
pub struct Asked<'a> {
    pub method: &'a str,
    pub path: &'a str,
    pub headers: Vec<(&'a str, &'a str)>,
    pub body: &'a [u8],
    /// From which of this machine's own addresses; the usual one if none is said.
    pub from: Option<Ipv4Addr>,
}

impl Served {
    /// Serves a copy of the demo book.
    pub fn demo(words: &[&str]) -> Self {
        Self::of(Sandbox::with_demo(), words, &[])
    }

    /// Serves the book of a sandbox.
    pub fn of(sandbox: Sandbox, words: &[&str], environment: &[(&str, &str)]) -> Self {
        let (child, lines) = start(&sandbox, words, environment);
        let (port, owner, helper) = told(lines, words.iter().any(|word| word.starts_with("--share")));
        Self { sandbox, child, port, owner, helper }
    }

    /// The book's folder.
    pub fn book(&self) -> std::path::PathBuf {
        self.sandbox.path("saltmarsh")
    }

    /// Kills it, with no time for a word.
    pub fn kill(&mut self) {
        self.child.kill().expect("killed");
        self.child.wait().expect("gone");
    }

    /// Starts it again in the same place.
    pub fn again(&mut self, words: &[&str], environment: &[(&str, &str)]) {
        let (child, lines) = start(&self.sandbox, words, environment);
        self.child = child;
        (self.port, self.owner, self.helper) = told(lines, words.iter().any(|word| word.starts_with("--share")));
    }

    /// The journal, so far.
    pub fn journal(&self) -> String {
        self.sandbox.read("journal")
    }

    /// A connection from an address of this machine.
    pub fn connect(&self, from: Option<Ipv4Addr>) -> TcpStream {
        self.try_connect(from).expect("a connection")
    }

    fn try_connect(&self, from: Option<Ipv4Addr>) -> Option<TcpStream> {
        let to = SocketAddr::from(([127, 0, 0, 1], self.port));
        let Some(from) = from else { return TcpStream::connect(to).ok() };
        let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().expect("a runtime");
        let stream = runtime.block_on(async {
            let socket = tokio::net::TcpSocket::new_v4().expect("a socket");
            socket.bind((from, 0).into()).expect("an address of this machine");
            socket.connect(to).await.ok()?.into_std().ok()
        })?;
        stream.set_nonblocking(false).expect("a stream that waits");
        Some(stream)
    }

    /// Asks, and reads the whole answer; none where the connection was closed without a word.
    pub fn try_ask(&self, asked: &Asked<'_>) -> Option<Answer> {
        read_answer(self.send(self.try_connect(asked.from)?, asked))
    }

    /// Asks, and reads no more than the status: some answers never end.
    pub fn status(&self, asked: &Asked<'_>) -> u16 {
        let mut line = String::new();
        BufReader::new(self.send(self.connect(asked.from), asked)).read_line(&mut line).expect("a line");
        line.split(' ').nth(1).and_then(|status| status.parse().ok()).unwrap_or_default()
    }

    fn send(&self, mut stream: TcpStream, asked: &Asked<'_>) -> TcpStream {
        stream.set_read_timeout(Some(Duration::from_secs(300))).expect("a patience");
        let is_said = |name: &str| asked.headers.iter().any(|(own, _)| own.eq_ignore_ascii_case(name));
        let mut head = format!("{} {} HTTP/1.1\r\nConnection: close\r\n", asked.method, asked.path);
        if !is_said("host") {
            head += &format!("Host: 127.0.0.1:{}\r\n", self.port);
        }
        if !asked.body.is_empty() && !is_said("content-length") {
            head += &format!("Content-Length: {}\r\n", asked.body.len());
        }
        for (name, value) in asked.headers.iter().filter(|(_, value)| !value.is_empty()) {
            head += &format!("{name}: {value}\r\n");
        }
        let mut bytes = head.into_bytes();
        bytes.extend(b"\r\n");
        bytes.extend(asked.body);
        // One who is refused need not be listened to.
        let _ = stream.write_all(&bytes);
        stream
    }

    /// The same where an answer is sure.
    #[track_caller]
    pub fn ask(&self, asked: &Asked<'_>) -> Answer {
        self.try_ask(asked).unwrap_or_else(|| panic!("no answer to {} {}", asked.method, asked.path))
    }

    /// A page.
    #[track_caller]
    pub fn get(&self, path: &str, cookie: &str) -> Answer {
        self.ask(&Asked { method: "GET", path, headers: vec![("Cookie", cookie)], ..Default::default() })
    }

    /// A form that is sent.
    #[track_caller]
    pub fn post(&self, path: &str, cookie: &str, token: &str, fields: &[(&str, &str)]) -> Answer {
        let body = form(fields);
        let kind = ("Content-Type", "application/x-www-form-urlencoded");
        let headers = vec![("Cookie", cookie), ("x-token", token), kind];
        self.ask(&Asked { method: "POST", path, headers, body: body.as_bytes(), ..Default::default() })
    }

    /// Comes in by a key and gives the cookie.
    #[track_caller]
    pub fn come_in(&self, way: &str) -> String {
        let answer = self.get(way, "");
        answer.cookie().unwrap_or_else(|| panic!("no cookie: {} {}", answer.status, answer.body))
    }

    /// Every file of the book with what it says, the memory left out.
    pub fn files(&self) -> Vec<(String, Vec<u8>)> {
        self.sandbox
            .files("saltmarsh")
            .into_iter()
            .map(|name| (name.clone(), std::fs::read(self.book().join(name)).expect("a file")))
            .collect()
    }
}

impl Drop for Served {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

fn start(sandbox: &Sandbox, words: &[&str], environment: &[(&str, &str)]) -> (Child, impl Iterator<Item = String> + use<>) {
    let journal = std::fs::OpenOptions::new().create(true).append(true).open(sandbox.path("journal")).expect("a journal");
    let mut child = Command::new(env!("CARGO_BIN_EXE_wellproved"))
        .args(["serve", "saltmarsh", "--no-open"])
        .args(words)
        .current_dir(sandbox.path(""))
        .env_clear()
        .envs(environment.iter().copied())
        .stdout(Stdio::piped())
        .stderr(journal)
        .spawn()
        .expect("the program runs");
    let lines = BufReader::new(child.stdout.take().expect("its words")).lines().map_while(Result::ok);
    (child, lines)
}

/// The port and the ways in, read off what it says when it is open.
fn told(lines: impl Iterator<Item = String>, shared: bool) -> (u16, String, Option<String>) {
    let (mut owner, mut helper) = (None, None);
    for line in lines {
        if let Some((_, way)) = line.split_once(" is open at http://") {
            owner = Some(way.to_owned());
        } else if let Some(way) = line.strip_prefix("http://") {
            helper = Some(way.split_once('/').map(|(_, path)| format!("/{path}")).expect("a path"));
        }
        if owner.is_some() && helper.is_some() == shared {
            break;
        }
    }
    let owner = owner.expect("it opens");
    let (place, path) = owner.split_once('/').expect("a path");
    let port = place.rsplit_once(':').expect("a port").1.parse().expect("a port");
    (port, format!("/{path}"), helper)
}

/// Reads an answer until the connection closes.
pub fn read_answer(mut stream: TcpStream) -> Option<Answer> {
    let mut bytes = Vec::new();
    // A connection that is reset may have answered before.
    let _ = stream.read_to_end(&mut bytes);
    let text = String::from_utf8_lossy(&bytes);
    let (head, body) = text.split_once("\r\n\r\n")?;
    let status = head.split(' ').nth(1)?.parse().ok()?;
    Some(Answer { status, head: head.to_owned(), body: body.to_owned() })
}

/// Fields as forms send them.
pub fn form(fields: &[(&str, &str)]) -> String {
    let pairs: Vec<String> = fields.iter().map(|(name, value)| format!("{name}={}", escaped(value))).collect();
    pairs.join("&")
}

/// A text as addresses write it.
pub fn escaped(text: &str) -> String {
    let plain = |byte: u8| byte.is_ascii_alphanumeric() || b"-_.~".contains(&byte);
    text.bytes().map(|byte| if plain(byte) { char::from(byte).to_string() } else { format!("%{byte:02X}") }).collect()
}

/// A small generator with a fixed seed: Knuth's MMIX constants.
pub fn next(seed: &mut u64) -> u64 {
    *seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
    *seed >> 33
}

/// Everything that lies in a folder, hidden or not, in the order of its names.
pub fn everything(folder: &Path) -> Vec<String> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).expect("a folder").flatten() {
        if entry.path().is_dir() {
            found.extend(everything(&entry.path()));
        } else {
            found.push(entry.path().display().to_string());
        }
    }
    found.sort();
    found
}
