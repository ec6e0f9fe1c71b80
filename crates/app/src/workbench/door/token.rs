//! A request that changes something shows the token of its session, in a header or in its form.

use super::Visitor;
use crate::workbench::answer::Refusal;
use axum::body::{Body, Bytes};
use axum::extract::{FromRequest, Multipart, Request};
use axum::http::header;
use subtle::ConstantTimeEq;

/// The header in which scripts show the token.
const TOKEN: &str = "x-token";
/// A form holds at most so much.
pub const MOST_OF_A_FORM: usize = 2 << 20;
/// A form with pictures.
const MOST_WITH_PICTURES: usize = 33 << 20;

/// The request, read as far as the token stands in it.
pub async fn shown(request: Request, visitor: &Visitor) -> Result<Request, Refusal> {
    let is_right = |shown: &str| bool::from(shown.as_bytes().ct_eq(visitor.token.as_bytes()));
    let refused = || Refusal::forbidden("The page is from before the workbench was last opened: load it again.");
    let by_header = request.headers().get(TOKEN).and_then(|value| value.to_str().ok()).map(is_right);
    let kind = request.headers().get(header::CONTENT_TYPE).map(|kind| kind.as_bytes().to_ascii_lowercase()).unwrap_or_default();
    let has_pictures = kind.starts_with(b"multipart/form-data");
    let most = if has_pictures { MOST_WITH_PICTURES } else { MOST_OF_A_FORM };
    if said_length(&request).is_some_and(|length| length > most) {
        return Err(Refusal::too_large());
    }
    if by_header == Some(false) {
        return Err(refused());
    }
    let (parts, body) = request.into_parts();
    let bytes = axum::body::to_bytes(body, most)
        .await
        .map_err(|error| if is_length(&error) { Refusal::too_large() } else { Refusal::too_slow() })?;
    let again = || Request::from_parts(parts.clone(), Body::from(bytes.clone()));
    if by_header.is_none() {
        let token = if has_pictures {
            first_field(again()).await
        } else if kind.starts_with(b"application/x-www-form-urlencoded") {
            form_value(&bytes, "token")
        } else {
            None
        };
        if !token.as_deref().is_some_and(is_right) {
            return Err(refused());
        }
    }
    Ok(again())
}

fn said_length(request: &Request) -> Option<usize> {
    request.headers().get(header::CONTENT_LENGTH)?.to_str().ok()?.parse().ok()
}

/// Whether a body was given up because it is too long.
fn is_length(error: &axum::Error) -> bool {
    let mut cause: Option<&dyn std::error::Error> = Some(error);
    std::iter::from_fn(|| {
        let now = cause?;
        cause = now.source();
        Some(now.to_string())
    })
    .any(|words| words.contains("length limit"))
}

/// The first field of a form with pictures: browsers send fields in the order of the page.
async fn first_field(request: Request) -> Option<String> {
    let mut fields = Multipart::from_request(request, &()).await.ok()?;
    let field = fields.next_field().await.ok()??;
    if field.name() != Some("token") { None } else { field.text().await.ok() }
}

fn form_value(bytes: &Bytes, name: &str) -> Option<String> {
    let uri: axum::http::Uri = format!("/?{}", std::str::from_utf8(bytes).ok()?).parse().ok()?;
    let axum::extract::Query(pairs) = axum::extract::Query::<Vec<(String, String)>>::try_from_uri(&uri).ok()?;
    pairs.into_iter().find(|(key, _)| key == name).map(|(_, value)| value)
}
