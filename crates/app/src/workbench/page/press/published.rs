//! The published pages, to be looked at: read from their folder and nothing else, and kept apart from the workbench.

use super::apart;
use crate::workbench::answer::{Answer, Refusal};
use crate::workbench::desk::Desk;
use crate::workbench::door::{Role, Visitor};
use axum::extract::{Path as At, State};
use axum::http::header;
use axum::response::IntoResponse;
use std::path::{Component, Path, PathBuf};

/// What files are, by how their names end.
const KINDS: &[(&str, &str)] = &[
    ("html", "text/html; charset=utf-8"),
    ("css", "text/css; charset=utf-8"),
    ("js", "text/javascript; charset=utf-8"),
    ("json", "application/json"),
    ("xml", "application/xml"),
    ("txt", "text/plain; charset=utf-8"),
    ("svg", "image/svg+xml"),
    ("png", "image/png"),
    ("jpg", "image/jpeg"),
    ("jpeg", "image/jpeg"),
    ("webp", "image/webp"),
    ("avif", "image/avif"),
    ("pdf", "application/pdf"),
];

pub async fn file(State(desk): State<Desk>, visitor: Visitor, At(path): At<String>) -> Answer {
    if visitor.role < Role::Helper {
        return Err(Refusal::forbidden("That is not for tasters."));
    }
    let nothing = || Refusal::no_such("There is no published page of that address.");
    let file = within(desk.published(), &path).ok_or_else(nothing)?;
    let ending = file.extension().map(|end| end.to_string_lossy().to_lowercase()).unwrap_or_default();
    let (_, kind) = KINDS.iter().find(|(end, _)| *end == ending).ok_or_else(nothing)?;
    let bytes = std::fs::read(&file).map_err(|_| nothing())?;
    Ok(([(header::CONTENT_TYPE, axum::http::HeaderValue::from_static(kind)), (header::CONTENT_SECURITY_POLICY, apart())], bytes)
        .into_response())
}

/// A file of a folder that is really in it: no way up, nothing hidden, and no link that leads out.
fn within(folder: &Path, path: &str) -> Option<PathBuf> {
    let is_plain = |part: Component| matches!(part, Component::Normal(name) if !name.to_string_lossy().starts_with('.'));
    if path.contains(['\\', '\0']) || !Path::new(path).components().all(is_plain) {
        return None;
    }
    let folder = folder.canonicalize().ok()?;
    let file = folder.join(path).canonicalize().ok()?;
    (file.starts_with(&folder) && file.is_file()).then_some(file)
}

#[cfg(test)]
mod tests {
    use super::within;

    #[test]
    fn only_what_is_in_the_folder_is_given() {
        let place = tempfile::tempdir().expect("a folder");
        let out = place.path().join("out");
        std::fs::create_dir_all(out.join("pictures")).expect("a folder");
        std::fs::create_dir_all(out.join(".edition")).expect("a folder");
        for file in ["secret.html", "out/index.html", "out/pictures/a.png", "out/.edition/record.json"] {
            std::fs::write(place.path().join(file), "text").expect("a file");
        }
        for (path, is_given) in [
            ("index.html", true),
            ("pictures/a.png", true),
            ("pictures", false),
            ("../secret.html", false),
            ("pictures/../../secret.html", false),
            (".edition/record.json", false),
            ("/etc/passwd", false),
            ("..\\secret.html", false),
            ("", false),
            ("index.html/", false),
            ("in\0dex.html", false),
        ] {
            assert_eq!(within(&out, path).is_some(), is_given, "{path:?}");
        }
        #[cfg(unix)]
        {
            std::os::unix::fs::symlink(place.path().join("secret.html"), out.join("linked.html")).expect("a link");
            assert!(within(&out, "linked.html").is_none(), "a link that leads out");
        }
    }
}
