//! Whether a request is meant for this house, and comes from a page of this house.
//!
//! A page of another site may send a browser here under a name of its own that leads to this machine's address; its
//! name then stands in the request, and is none of ours.

use super::From;
use axum::extract::Request;
use axum::http::{Method, header};
use std::net::IpAddr;

/// The names under which the workbench may be asked for.
#[derive(Debug, Default)]
pub struct Names {
    /// Names besides its addresses; a proxy's, or one that the network knows.
    pub known_as: Vec<String>,
}

impl Names {
    /// Whether a request belongs here.
    pub fn are_meant_by(&self, request: &Request) -> bool {
        let text = |name: &str| request.headers().get(name).and_then(|value| value.to_str().ok());
        let Some(host) = text(header::HOST.as_str()) else { return false };
        if request.headers().get_all(header::HOST).iter().count() != 1 || !self.has(host, request.extensions().get::<From>()) {
            return false;
        }
        let from_here = |origin: &str| {
            let place = origin.strip_prefix("http://").or_else(|| origin.strip_prefix("https://"));
            place.is_some_and(|place| place.eq_ignore_ascii_case(host))
        };
        let changes = !matches!(*request.method(), Method::GET | Method::HEAD);
        // Browsers that say no origin say whether it is the same site.
        let is_stranger = changes && text("sec-fetch-site").is_some_and(|site| !matches!(site, "same-origin" | "none"));
        text(header::ORIGIN.as_str()).is_none_or(from_here) && !is_stranger
    }

    fn has(&self, host: &str, from: Option<&From>) -> bool {
        let (name, port) = parted(host);
        if port.is_some_and(|port| port.parse::<u16>().is_err()) {
            return false;
        }
        let name = name.to_ascii_lowercase();
        if name == "localhost" || self.known_as.iter().any(|one| one.eq_ignore_ascii_case(&name)) {
            return true;
        }
        let bare = name.strip_prefix('[').and_then(|inner| inner.strip_suffix(']')).unwrap_or(&name);
        // An address is right where the request arrived at that very address.
        bare.parse::<IpAddr>().is_ok_and(|address| from.is_some_and(|from| from.arrived_at.ip().to_canonical() == address))
    }
}

/// A name and its port; the colons of an address in brackets are its own.
fn parted(host: &str) -> (&str, Option<&str>) {
    match host.rsplit_once(':') {
        Some((name, port)) if !port.ends_with(']') => (name, Some(port)),
        _ => (host, None),
    }
}
