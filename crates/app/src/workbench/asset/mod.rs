//! What a browser needs besides pages: the look and the scripts, under addresses that change with what they say.

use crate::workbench::answer::Refusal;
use crate::workbench::desk::Desk;
use axum::Router;
use axum::extract::Path;
use axum::http::header;
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use std::sync::LazyLock;

const SCRIPT: &str = "text/javascript; charset=utf-8";

/// Every asset: its name, what it is, and what it says.
const ALL: &[(&str, &str, &str)] = &[
    ("workbench.css", "text/css; charset=utf-8", include_str!("workbench.css")),
    ("pages.css", "text/css; charset=utf-8", include_str!("pages.css")),
    ("print.css", "text/css; charset=utf-8", include_str!("print.css")),
    ("workbench.js", SCRIPT, include_str!("workbench.js")),
    ("parts.js", SCRIPT, include_str!("parts.js")),
    ("foot.js", SCRIPT, include_str!("foot.js")),
    ("sending.js", SCRIPT, include_str!("sending.js")),
    ("taste.css", "text/css; charset=utf-8", include_str!("taste.css")),
    ("taste.js", SCRIPT, include_str!("taste.js")),
    ("count.js", SCRIPT, include_str!("count.js")),
    ("logging.css", "text/css; charset=utf-8", include_str!("logging.css")),
    ("logging.js", SCRIPT, include_str!("logging.js")),
    ("queue.js", SCRIPT, include_str!("queue.js")),
    ("day.js", SCRIPT, include_str!("day.js")),
    ("forms.js", SCRIPT, include_str!("forms.js")),
    ("live.js", SCRIPT, include_str!("live.js")),
];

/// A mark of all of them together: scripts find each other in the folder of the same mark.
static MARK: LazyLock<String> = LazyLock::new(|| {
    let all: String = ALL.iter().map(|(.., body)| *body).collect();
    store::hash(&all)[..12].to_owned()
});

/// Where an asset is.
pub fn address(name: &str) -> String {
    format!("/asset/{}/{name}", *MARK)
}

pub fn routes() -> Router<Desk> {
    Router::new().route("/asset/{mark}/{name}", get(asset)).route("/favicon.ico", get(no_picture))
}

/// Browsers ask for a small picture of every page, also for published ones, which are looked at apart from the rest.
async fn no_picture() -> Response {
    let from_anywhere = [(header::HeaderName::from_static("cross-origin-resource-policy"), "cross-origin")];
    (axum::http::StatusCode::NO_CONTENT, from_anywhere).into_response()
}

async fn asset(Path((_, name)): Path<(String, String)>) -> Response {
    let Some((_, kind, body)) = ALL.iter().find(|(own, ..)| *own == name) else {
        return Refusal::no_such("There is no such file.").into_response();
    };
    let kept = "public, max-age=31536000, immutable";
    ([(header::CONTENT_TYPE, *kind), (header::CACHE_CONTROL, kept)], *body).into_response()
}
