//! The doors: who may come in and what they may do there.

use super::answer::Refusal;
use super::desk::Desk;
use axum::body::Body;
use axum::extract::{FromRequestParts, Request, State};
use axum::http::request::Parts;
use axum::http::{HeaderValue, Method, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

/// What somebody may do, from little to everything.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Role {
    /// Only their own tasting sheet.
    Taster,
    /// Everything but publishing, keys and settings.
    Helper,
    /// Everything.
    Owner,
}

impl Role {
    /// The word for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Taster => "taster",
            Self::Helper => "helper",
            Self::Owner => "owner",
        }
    }
}

/// Who asks.
#[derive(Clone, Debug)]
pub struct Visitor {
    /// What they may do.
    pub role: Role,
    /// How others see them.
    pub name: String,
    /// What their forms must show.
    pub token: String,
}

impl<S: Send + Sync> FromRequestParts<S> for Visitor {
    type Rejection = Refusal;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Refusal> {
        parts.extensions.get::<Self>().cloned().ok_or_else(|| Refusal::forbidden("Who are you?"))
    }
}

/// The header in which scripts show the token.
const TOKEN: &str = "x-token";

/// Lets in whoever may come in, and sees to it that a page can only do what it is meant to.
pub async fn guard(State(desk): State<Desk>, mut request: Request, next: Next) -> Response {
    if !is_of_this_house(&request) {
        return (StatusCode::FORBIDDEN, "This address is not the workbench's.\n").into_response();
    }
    let visitor = Visitor { role: Role::Owner, name: String::new(), token: desk.token().to_owned() };
    if request.method() != Method::GET && request.method() != Method::HEAD {
        request = match shows_token(request, &visitor).await {
            Ok(request) => request,
            Err(refusal) => return refusal.into_response(),
        };
    }
    request.extensions_mut().insert(visitor);
    with_policy(next.run(request).await)
}

/// Whether the request was sent to this house and, where a page sent it, from a page of this house.
fn is_of_this_house(request: &Request<Body>) -> bool {
    let text = |name| request.headers().get(name).and_then(|value: &HeaderValue| value.to_str().ok());
    let Some(host) = text(header::HOST) else { return false };
    let name = host.rsplit_once(':').map_or(host, |(name, _)| name);
    let is_home = matches!(name, "localhost" | "127.0.0.1" | "[::1]");
    let from_here = text(header::ORIGIN).is_none_or(|origin| origin.strip_prefix("http://") == Some(host));
    is_home && from_here
}

/// A request that changes something shows the token, in a header or in its form.
async fn shows_token(request: Request, visitor: &Visitor) -> Result<Request, Refusal> {
    let is_right = |shown: &str| shown == visitor.token;
    if request.headers().get(TOKEN).and_then(|value| value.to_str().ok()).is_some_and(is_right) {
        return Ok(request);
    }
    let is_form = request
        .headers()
        .get(header::CONTENT_TYPE)
        .is_some_and(|kind| kind.as_bytes().starts_with(b"application/x-www-form-urlencoded"));
    if is_form {
        let (parts, body) = request.into_parts();
        let too_large = |_| Refusal::unfit("That is more than a form can hold.", "");
        let bytes = axum::body::to_bytes(body, MOST_OF_A_FORM).await.map_err(too_large)?;
        let shown = form_value(&bytes, "token");
        if shown.as_deref().is_some_and(is_right) {
            return Ok(Request::from_parts(parts, Body::from(bytes)));
        }
    }
    Err(Refusal::forbidden("The page is from before the workbench was last opened: load it again."))
}

/// A form holds at most so much.
const MOST_OF_A_FORM: usize = 2 << 20;

fn form_value(bytes: &[u8], name: &str) -> Option<String> {
    let uri: axum::http::Uri = format!("/?{}", std::str::from_utf8(bytes).ok()?).parse().ok()?;
    let axum::extract::Query(pairs) = axum::extract::Query::<Vec<(String, String)>>::try_from_uri(&uri).ok()?;
    pairs.into_iter().find(|(key, _)| key == name).map(|(_, value)| value)
}

/// Says to the browser that nothing but this house's own may run, load or frame a page.
fn with_policy(mut response: Response) -> Response {
    let policy = [
        (
            header::CONTENT_SECURITY_POLICY,
            "default-src 'self'; img-src 'self' data: blob:; object-src 'none'; base-uri 'none'; frame-ancestors 'none'; form-action 'self'",
        ),
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (header::X_FRAME_OPTIONS, "DENY"),
        (header::REFERRER_POLICY, "same-origin"),
    ];
    for (name, value) in policy {
        response.headers_mut().entry(name).or_insert(HeaderValue::from_static(value));
    }
    response.headers_mut().entry(header::CACHE_CONTROL).or_insert(HeaderValue::from_static("no-store"));
    response
}
