//! What a page may do in the browser: this house's own, and nothing else.

use axum::http::{HeaderValue, header};
use axum::response::Response;
use base64::Engine;
use base64::engine::general_purpose::STANDARD as BASE64;
use sha2::{Digest, Sha256};
use std::sync::LazyLock;

/// Scripts and looks come from files of this house; drawings bring their own look, each allowed by its hash.
static POLICY: LazyLock<HeaderValue> = LazyLock::new(|| {
    let hashes = publish::chart::LOOKS.map(|look| format!(" 'sha256-{}'", BASE64.encode(Sha256::digest(look))));
    let policy = format!(
        "default-src 'self'; style-src 'self'{}; img-src 'self' data: blob:; object-src 'none'; base-uri 'none'; \
         frame-ancestors 'none'; form-action 'self'",
        hashes.concat()
    );
    HeaderValue::from_str(&policy).unwrap_or(HeaderValue::from_static("default-src 'none'"))
});

/// Says so to the browser; a page that has a stricter policy of its own keeps it.
pub fn with_policy(mut response: Response) -> Response {
    let headers = response.headers_mut();
    headers.entry(header::CONTENT_SECURITY_POLICY).or_insert_with(|| POLICY.clone());
    for (name, value) in [
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (header::X_FRAME_OPTIONS, "DENY"),
        (header::REFERRER_POLICY, "same-origin"),
        (header::HeaderName::from_static("cross-origin-opener-policy"), "same-origin"),
        (header::HeaderName::from_static("cross-origin-resource-policy"), "same-origin"),
    ] {
        headers.entry(name).or_insert(HeaderValue::from_static(value));
    }
    headers.entry(header::CACHE_CONTROL).or_insert(HeaderValue::from_static("no-store"));
    response
}
