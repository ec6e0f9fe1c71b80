//! The journal: what was asked for and how it went, a line each, in the terminal. Keys and what was typed stay out.

use super::answer::Why;
use super::door::{From, Visitor};
use crate::terminal;
use axum::extract::Request;
use axum::http::Method;
use axum::response::Response;
use std::time::Instant;

/// What is told of requests.
#[derive(Clone, Copy, Debug, Default)]
pub struct Journal {
    /// Everything, not only what changes something or fails.
    pub everything: bool,
}

/// A request that is being answered.
#[derive(Debug)]
pub struct Entry {
    begun: Instant,
    method: Method,
    path: String,
    from: String,
    by: String,
}

impl Entry {
    /// Begins with a request as it came in.
    pub fn begin(request: &Request) -> Self {
        let from = request.extensions().get::<From>().map(|from| from.peer.ip().to_canonical().to_string());
        Self {
            begun: Instant::now(),
            method: request.method().clone(),
            // What follows a question mark may hold a key.
            path: request.uri().path().chars().take(120).collect(),
            from: from.unwrap_or_default(),
            by: String::new(),
        }
    }

    /// Adds who it is.
    pub fn is_by(&mut self, visitor: &Visitor) {
        self.by = if visitor.name.is_empty() { String::new() } else { format!(" {} ({})", visitor.name, visitor.role.word()) };
    }

    /// A trial of what is being typed changes nothing.
    fn changes(&self) -> bool {
        !matches!(self.method, Method::GET | Method::HEAD) && !self.path.ends_with("/try")
    }
}

impl Journal {
    /// Tells of a request that was answered, if it is worth a line.
    pub fn tell(self, entry: Entry, response: &Response) {
        let status = response.status();
        let fails = status.is_client_error() || status.is_server_error();
        if !(self.everything || fails || entry.changes()) {
            return;
        }
        let clock = jiff::ZonedDateTime::now().strftime("%H:%M:%S").to_string();
        let (took, why) = (entry.begun.elapsed().as_millis(), response.extensions().get::<Why>());
        let why = why.map(|Why(why)| format!(": {}", why.replace('\n', " "))).unwrap_or_default();
        let (from, by, method, path) = (&entry.from, &entry.by, &entry.method, &entry.path);
        terminal::remark(&format!("{clock} {from}{by} {method} {path} {} {took} ms{why}", status.as_u16()));
    }
}
