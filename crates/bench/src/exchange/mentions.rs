//! What the sentences of a method name in braces: renamed, joined, taken out.

use formula::read::is_german;

/// Stands for a mention that is to go until its sentence is mended around it.
const GONE: char = '\u{1}';

/// Rewrites the mentions in a sentence as it is written; `with` is told the name and the part of it, if one
/// is said, and gives what stands there instead, none for as before, nothing for gone.
pub fn rewrite(text: &str, mut with: impl FnMut(&str, Option<&str>) -> Option<String>) -> (String, Vec<String>) {
    let (mut out, mut rest) = (String::new(), text);
    while let Some(open) = rest.find('{') {
        out.push_str(&rest[..open]);
        rest = &rest[open..];
        let close = if rest.starts_with("{{") { None } else { rest.find('}') };
        let Some(close) = close else {
            let doubled = if rest.starts_with("{{") { 2 } else { 1 };
            out.push_str(&rest[..doubled]);
            rest = &rest[doubled..];
            continue;
        };
        let inner = &rest[1..close];
        let (name, part) = match inner.split_once(':') {
            Some((name, part)) => (name.trim(), Some(part.trim())),
            None => (inner.trim(), None),
        };
        match with(name, part) {
            None => out.push_str(&rest[..=close]),
            Some(text) if text.is_empty() => out.push(GONE),
            Some(text) => out.push_str(&text),
        }
        rest = &rest[close + 1..];
    }
    out.push_str(rest);
    mended(out)
}

/// A sentence without its mentions of a name, and the sentences that could not be mended and are left out.
pub fn without(text: &str, name: &str) -> (String, Vec<String>) {
    rewrite(text, |one, _| (one == name).then(String::new))
}

/// A mention of a name, of all of it or of a part.
pub fn mention(name: &str, part: Option<&str>) -> String {
    part.map_or_else(|| format!("{{{name}}}"), |part| format!("{{{name}: {part}}}"))
}

/// Several mentions one after the other, joined as the sentences of a book in that language join them.
pub fn joined(mentions: &[String], language: &str) -> String {
    mentions.join(if is_german(language) { " und " } else { " and " })
}

/// Whether a part is a share, so that what takes the line's place can be named by the same share.
pub fn is_share(part: &str) -> bool {
    part == "rest" || formula::read::part(part).is_some()
}

/// A sentence without what is gone from it, and the sentences that could not be mended and are left out.
fn mended(mut text: String) -> (String, Vec<String>) {
    let ways = [
        (", \u{1} and ", " and "),
        (", \u{1} und ", " und "),
        (" and \u{1}", ""),
        ("\u{1} and ", ""),
        (" und \u{1}", ""),
        ("\u{1} und ", ""),
        (", \u{1}", ""),
        ("\u{1}, ", ""),
        (" with \u{1}", ""),
        (" at \u{1}", ""),
        (" mit \u{1}", ""),
        (" bei \u{1}", ""),
    ];
    for (from, to) in ways {
        text = text.replace(from, to);
    }
    let mut left_out = Vec::new();
    while let Some(gone) = text.find(GONE) {
        let quotes = ['"', '\''];
        let first = text.len() - text.trim_start_matches(quotes).len();
        let begin = text[..gone].rfind(". ").map_or(first, |end| end + 2);
        let end = text[gone..].find(". ").map_or(text.trim_end_matches(quotes).len(), |end| gone + end + 2);
        left_out.push(text[begin..end].trim().replace(GONE, "…"));
        text.replace_range(begin..end, "");
    }
    if !left_out.is_empty() {
        text = text.replace(" \"", "\"");
    }
    (text, left_out)
}

#[cfg(test)]
mod tests {
    use super::rewrite;

    #[test]
    fn sentences_are_mended_around_what_is_gone() {
        for (before, after) in [
            ("Beat {a} and {b} in.", "Beat {a} in."),
            ("Beat {b}, {a} and {c} in.", "Beat {a} and {c} in."),
            ("Beat {a}, {b} and {c} in.", "Beat {a} and {c} in."),
            ("{a}, {b} und {c} mit {b} schlagen.", "{a} und {c} schlagen."),
            ("Keep {{b}} apart.", "Keep {{b}} apart."),
            ("Mix {a}. Put {b} away. Rest.", "Mix {a}. Rest."),
            ("Mix {a}. Put {b} away.", "Mix {a}. "),
        ] {
            let gone = |name: &str, _: Option<&str>| (name == "b").then(String::new);
            assert_eq!(rewrite(before, gone).0, after, "{before}");
        }
    }

    #[test]
    fn parts_are_told() {
        let (text, _) =
            rewrite("Warm {milk: half} to {55 °C}.", |name, part| (name == "milk").then(|| super::mention("water", part)));
        assert_eq!(text, "Warm {water: half} to {55 °C}.");
    }
}
