//! How pages look, as small as a page carries it.

use std::sync::LazyLock;

/// The style of every page.
pub static STYLE: LazyLock<String> = LazyLock::new(|| squeezed(concat!(include_str!("style.css"), include_str!("book.css"))));

/// The style of the book's lists beside it.
pub static LISTS: LazyLock<String> = LazyLock::new(|| squeezed(include_str!("lists.css")));

/// A style sheet without what only its authors need: notes, line ends, and spaces beside marks.
#[must_use]
pub fn squeezed(css: &str) -> String {
    let mut out = String::with_capacity(css.len());
    let mut rest = css;
    while let Some(letter) = rest.chars().next() {
        if let Some(note) = rest.strip_prefix("/*") {
            rest = note.split_once("*/").map_or("", |(_, after)| after);
        } else if letter == '"' {
            let end = rest[1..].find('"').map_or(rest.len(), |at| at + 2);
            out.push_str(&rest[..end]);
            rest = &rest[end..];
        } else if letter.is_whitespace() {
            rest = rest.trim_start();
            let beside_a_mark =
                out.ends_with(['{', '}', ';', ':', ',']) || rest.starts_with(['{', '}']) || rest.starts_with("/*");
            if !beside_a_mark && !out.is_empty() {
                out.push(' ');
            }
        } else {
            if letter == '}' && out.ends_with(';') {
                out.pop();
            }
            out.push(letter);
            rest = &rest[letter.len_utf8()..];
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_a_browser_does_not_need_is_left_out() {
        let css = "/* Calm. */\na:hover, b > :first-child {\n  margin: 0 auto; font: 1rem \"A, B;  C\";\n}\n\n@media print { p { x: calc(1px + 2px); } }\n";
        let small = "a:hover,b > :first-child{margin:0 auto;font:1rem \"A, B;  C\"}@media print{p{x:calc(1px + 2px)}}";
        assert_eq!(squeezed(css), small);
    }
}
