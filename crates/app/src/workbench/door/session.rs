//! Sessions: who came in by which key, in a cookie that is signed, for the server alone, and ends.

use super::Visitor;
use super::keys::{Key, Ring, secret};
use crate::failure::Failure;
use axum::http::HeaderMap;
use axum_extra::extract::SignedCookieJar;
use axum_extra::extract::cookie::Cookie;
use jiff::Timestamp;

/// A session lasts a fortnight; whoever has the key comes in again.
const LASTS: i64 = 14 * 24 * 3600;

/// The cookie's name is the book's own: cookies do not tell ports apart.
fn name(ring: &Ring) -> String {
    format!("wellproved-{}", &ring.word_for("cookie")[..8])
}

/// Lets somebody in by a key: the cookie they carry from then on.
pub fn begin(ring: &Ring, key: &Key, headers: &HeaderMap) -> Result<SignedCookieJar, Failure> {
    let until = Timestamp::now().as_second() + LASTS;
    let session = secret()?;
    let (name, number, session) = (name(ring), key.number(), &session[..32]);
    let written = format!("{name}={number}.{session}.{until}; Path=/; Max-Age={LASTS}; HttpOnly; SameSite=Strict");
    let cookie = Cookie::parse(written).map_err(|error| Failure::new(error.to_string()))?;
    Ok(SignedCookieJar::from_headers(headers, ring.signing()).add(cookie))
}

/// Who asks, by their cookie: signed here, not over, not left, and of a key that is still good.
pub fn visitor(ring: &Ring, headers: &HeaderMap) -> Option<Visitor> {
    let cookie = SignedCookieJar::from_headers(headers, ring.signing()).get(&name(ring))?;
    let (number, rest) = cookie.value().split_once('.')?;
    let (session, until) = rest.split_once('.')?;
    let until: i64 = until.parse().ok()?;
    let key = ring.numbered(number)?;
    let is_over = until <= Timestamp::now().as_second() || ring.has_left(session);
    (!is_over).then(|| Visitor {
        role: key.role,
        name: if key.name.is_empty() { format!("the {}", key.role.word()) } else { key.name.clone() },
        token: ring.word_for(session),
        session: session.to_owned(),
    })
}

/// Ends the session of a cookie: from now on it opens nothing, wherever it was copied to.
pub fn end(ring: &mut Ring, headers: &HeaderMap) -> Result<SignedCookieJar, Failure> {
    let jar = SignedCookieJar::from_headers(headers, ring.signing());
    let name = name(ring);
    let Some(cookie) = jar.get(&name) else { return Ok(jar) };
    if let Some((session, until)) = cookie.value().split_once('.').and_then(|(_, rest)| rest.split_once('.')) {
        ring.leave(session, until.parse().unwrap_or(i64::MAX))?;
    }
    Ok(jar.remove(Cookie::build((name, "")).path("/").build()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::workbench::door::Role;
    use axum::http::HeaderValue;
    use axum::response::IntoResponse;

    fn carried(jar: SignedCookieJar) -> HeaderMap {
        let response = jar.into_response();
        let cookie = response.headers()["set-cookie"].to_str().expect("a cookie").to_owned();
        assert!(cookie.contains("HttpOnly") && cookie.contains("SameSite=Strict") && cookie.contains("Max-Age="), "{cookie}");
        let pair = cookie.split(';').next().expect("a pair");
        HeaderMap::from_iter([("cookie".parse().expect("a name"), HeaderValue::from_str(pair).expect("a value"))])
    }

    #[test]
    fn a_session_begins_ends_and_is_of_its_book_alone() {
        let (book, other) = (tempfile::tempdir().expect("a folder"), tempfile::tempdir().expect("a folder"));
        let mut ring = Ring::of(book.path()).expect("keys");
        let shown = ring.make("Ada", Role::Helper, false).expect("a key");
        let key = ring.shown(&shown).expect("the key").clone();
        assert!(ring.shown(&shown[1..]).is_none());
        let cookie = carried(begin(&ring, &key, &HeaderMap::new()).expect("a session"));
        let came = visitor(&ring, &cookie).expect("a visitor");
        assert_eq!((came.role, came.name.as_str()), (Role::Helper, "Ada"));

        // It outlasts the workbench, but means nothing to another book.
        let again = Ring::of(book.path()).expect("keys");
        assert_eq!(visitor(&again, &cookie).expect("a visitor").token, came.token);
        assert!(visitor(&Ring::of(other.path()).expect("keys"), &cookie).is_none());
        let text = std::fs::read_to_string(book.path().join(".remembered/keys.json")).expect("a file");
        assert!(!text.contains(&shown), "the key itself is kept nowhere");

        drop(end(&mut ring, &cookie).expect("an end"));
        assert!(visitor(&ring, &cookie).is_none(), "a copied cookie opens nothing once it was left");
        let cookie = carried(begin(&ring, &key, &HeaderMap::new()).expect("a session"));
        assert!(ring.withdraw(key.number()).expect("withdrawn"));
        assert!(visitor(&ring, &cookie).is_none(), "nor does one of a key that is withdrawn");
    }

    #[test]
    fn two_workbenches_of_one_book_have_the_same_keys() {
        let book = tempfile::tempdir().expect("a folder");
        let (mut one, mut other) = (Ring::of(book.path()).expect("keys"), Ring::of(book.path()).expect("keys"));
        let shown = one.make("Ada", Role::Helper, false).expect("a key");
        let passing = other.make("", Role::Owner, true).expect("a key");
        other.look_again();
        let key = other.shown(&shown).expect("the key that was made in the other one").clone();
        let cookie = carried(begin(&other, &key, &HeaderMap::new()).expect("a session"));
        let second = other.make("Bo", Role::Helper, false).expect("a key");
        one.look_again();
        assert!(one.shown(&shown).is_some() && one.shown(&second).is_some(), "neither writes over the other's keys");
        assert!(visitor(&one, &cookie).is_some());

        assert!(one.withdraw(key.number()).expect("withdrawn"));
        other.look_again();
        assert!(other.shown(&shown).is_none() && visitor(&other, &cookie).is_none(), "withdrawn in one, it opens neither");
        assert!(other.shown(&second).is_some() && other.shown(&passing).is_some(), "the others do");

        std::fs::write(book.path().join(".remembered/keys.json"), "{").expect("written");
        other.look_again();
        assert!(other.shown(&second).is_none() && other.shown(&passing).is_some(), "what cannot be read opens nothing");
    }

    #[test]
    fn a_cookie_that_was_written_over_opens_nothing() {
        let book = tempfile::tempdir().expect("a folder");
        let mut ring = Ring::of(book.path()).expect("keys");
        let shown = ring.make("", Role::Helper, true).expect("a key");
        let key = ring.shown(&shown).expect("the key").clone();
        let cookie = carried(begin(&ring, &key, &HeaderMap::new()).expect("a session"));
        let text = cookie["cookie"].to_str().expect("text").to_owned();
        let start = text.find('=').expect("a pair") + 1;
        for at in start..text.len() {
            let mut bytes = text.clone().into_bytes();
            bytes[at] = if bytes[at] == b'x' { b'y' } else { b'x' };
            let value = HeaderValue::from_bytes(&bytes).expect("a value");
            let changed = HeaderMap::from_iter([("cookie".parse().expect("a name"), value)]);
            assert!(visitor(&ring, &changed).is_none(), "letter {at} changed");
        }
    }
}
