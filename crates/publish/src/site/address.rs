//! Where pages stand: names of files, and addresses where the book states its own.

use formula::read::BookSettings;

/// The name of a formula's page.
#[must_use]
pub fn page_name(formula: &str) -> String {
    format!("{formula}.html")
}

/// The address of a file of the book, where the book states its own. Letters outside ASCII become percent signs
/// and figures, as RFC 3986 asks.
#[must_use]
pub fn page_address(settings: &BookSettings, file: &str) -> Option<String> {
    let base = settings.address.as_ref()?;
    // The index stands at the address of the folder itself.
    let file = if file == "index.html" { "" } else { file };
    Some(format!("{base}{}", encoded(file)))
}

fn encoded(file: &str) -> String {
    let is_plain = |byte: u8| byte.is_ascii_alphanumeric() || b"-._~/".contains(&byte);
    file.bytes().map(|byte| if is_plain(byte) { char::from(byte).to_string() } else { format!("%{byte:02X}") }).collect()
}
