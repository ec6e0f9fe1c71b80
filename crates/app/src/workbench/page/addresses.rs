//! Addresses of pages, whatever letters names are written in, and what they ask.

use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, utf8_percent_encode};

/// What may stand in an address as it is.
const PLAIN: &AsciiSet = &NON_ALPHANUMERIC.remove(b'-').remove(b'_').remove(b'.').remove(b'~');

/// A text as it stands in an address.
pub fn coded(text: &str) -> String {
    utf8_percent_encode(text, PLAIN).to_string()
}

/// A page of a formula: "" is its sheet, "/history" what it said before.
pub fn of_formula(name: &str, further: &str) -> String {
    format!("/formula/{}{further}", coded(name))
}

/// A page with what is asked of it; what is empty is left out.
pub fn asking<K: AsRef<str>, V: AsRef<str>>(page: &str, pairs: &[(K, V)]) -> String {
    let said = pairs.iter().filter(|(_, value)| !value.as_ref().is_empty());
    let said: Vec<String> = said.map(|(key, value)| format!("{}={}", coded(key.as_ref()), coded(value.as_ref()))).collect();
    if said.is_empty() { page.to_owned() } else { format!("{page}?{}", said.join("&")) }
}
