//! The real program on a copy of a book, and requests to it.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use tempfile::TempDir;

/// A workbench that is open.
pub struct Served {
    folder: TempDir,
    program: Child,
    address: String,
}

/// What was answered.
pub struct Answered {
    pub status: u16,
    pub head: String,
    pub body: String,
}

impl Served {
    /// The demo book on the workbench.
    pub fn demo() -> Self {
        Self::with(|folder| copy(&demo(), folder))
    }

    /// A folder on the workbench in which there is nothing.
    pub fn nothing() -> Self {
        Self::with(|_| {})
    }

    fn with(lay: impl Fn(&Path)) -> Self {
        let folder = tempfile::tempdir().expect("a temporary folder");
        let book = folder.path().join("book");
        std::fs::create_dir(&book).expect("a folder");
        lay(&book);
        let mut program = Command::new(env!("CARGO_BIN_EXE_wellproved"))
            .args(["serve", "book", "--no-open", "--port", "0"])
            .current_dir(folder.path())
            .env_clear()
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("the program runs");
        let mut said = String::new();
        let mut lines = BufReader::new(program.stdout.take().expect("its words"));
        lines.read_line(&mut said).expect("where it is open");
        let address = said.split("http://").nth(1).and_then(|rest| rest.split('/').next()).expect("an address").to_owned();
        Self { folder, program, address }
    }

    /// A file of the book.
    pub fn path(&self, file: &str) -> PathBuf {
        self.folder.path().join("book").join(file)
    }

    pub fn read(&self, file: &str) -> String {
        std::fs::read_to_string(self.path(file)).unwrap_or_else(|error| panic!("{file}: {error}"))
    }

    /// Asks for a page.
    pub fn get(&self, page: &str) -> Answered {
        self.ask(&format!("GET {page} HTTP/1.0\r\nHost: {}\r\n\r\n", self.address))
    }

    /// A page that is there.
    #[track_caller]
    pub fn page(&self, page: &str) -> String {
        let answered = self.get(page);
        assert_eq!(answered.status, 200, "{page}\n{}", answered.body);
        answered.body
    }

    /// Sends a form from a page of the workbench, with the token that stands there.
    pub fn post(&self, page: &str, fields: &[(&str, &str)]) -> Answered {
        let shown = self.page("/");
        let token = shown.split("name=\"token\" content=\"").nth(1).and_then(|rest| rest.split('"').next()).expect("a token");
        let fields: Vec<String> =
            fields.iter().chain([&("token", token)]).map(|(key, value)| format!("{}={}", coded(key), coded(value))).collect();
        let body = fields.join("&");
        let head = format!("Host: {}\r\nContent-Type: application/x-www-form-urlencoded", self.address);
        self.ask(&format!("POST {page} HTTP/1.0\r\n{head}\r\nContent-Length: {}\r\n\r\n{body}", body.len()))
    }

    /// Sends a form that is followed by another page: where that is.
    #[track_caller]
    pub fn sent_on(&self, page: &str, fields: &[(&str, &str)]) -> String {
        let answered = self.post(page, fields);
        assert_eq!(answered.status, 303, "{page}\n{}", answered.body);
        let line = answered.head.lines().find_map(|line| line.strip_prefix("location: ")).expect("where to");
        line.trim().to_owned()
    }

    fn ask(&self, request: &str) -> Answered {
        let mut stream = TcpStream::connect(&self.address).expect("an open door");
        stream.write_all(request.as_bytes()).expect("a request");
        let mut bytes = Vec::new();
        stream.read_to_end(&mut bytes).expect("an answer");
        let text = String::from_utf8_lossy(&bytes).into_owned();
        let (head, body) = text.split_once("\r\n\r\n").expect("a head and a body");
        let status = head.split(' ').nth(1).and_then(|code| code.parse().ok()).expect("a status");
        Answered { status, head: head.to_owned(), body: body.to_owned() }
    }
}

impl Drop for Served {
    fn drop(&mut self) {
        // It may have ended by itself.
        let _ = self.program.kill();
        let _ = self.program.wait();
    }
}

/// The demo book.
pub fn demo() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/saltmarsh")
}

fn coded(text: &str) -> String {
    text.bytes()
        .map(|byte| if byte.is_ascii_alphanumeric() { (byte as char).to_string() } else { format!("%{byte:02X}") })
        .collect()
}

fn copy(from: &Path, to: &Path) {
    std::fs::create_dir_all(to).expect("a folder");
    for entry in std::fs::read_dir(from).expect("a folder").flatten() {
        let name = entry.file_name();
        // What the demo book's own memory holds is not the demo.
        if name.to_string_lossy().starts_with('.') {
            continue;
        }
        if entry.path().is_dir() {
            copy(&entry.path(), &to.join(name));
        } else {
            std::fs::copy(entry.path(), to.join(name)).expect("a copy");
        }
    }
}
