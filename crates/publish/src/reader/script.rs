//! The scripts of a page, joined to one module, and the rule that nothing else may run.

use crate::page::squeezed;
use crate::tongue::CARRIED;
use base64::Engine;
use base64::engine::general_purpose::STANDARD as BASE64;
use sha2::{Digest, Sha256};
use std::sync::LazyLock;

/// How controls, timers and the view from across the room look.
pub static STYLE: LazyLock<String> = LazyLock::new(|| squeezed(include_str!("reader.css")));

/// The modules in an order in which each comes after those it uses.
pub const MODULES: [&str; 13] = [
    include_str!("script/words.js"),
    include_str!("script/figures.js"),
    include_str!("script/spoons.js"),
    include_str!("script/amounts.js"),
    include_str!("script/rooms.js"),
    include_str!("script/course.js"),
    include_str!("script/settings.js"),
    include_str!("script/told.js"),
    include_str!("script/timers.js"),
    include_str!("script/ticks.js"),
    include_str!("script/across.js"),
    include_str!("script/controls.js"),
    include_str!("script/page.js"),
];

/// The script of a page.
pub static SCRIPT: LazyLock<String> = LazyLock::new(|| MODULES.into_iter().map(joined).collect());

/// What a formula's page may do.
pub static POLICY: LazyLock<String> = LazyLock::new(|| policy(&SCRIPT));

/// What a page may do: run its own script, show pictures, and ask nobody for anything.
pub fn policy(script: &str) -> String {
    let digest = BASE64.encode(Sha256::digest(script.as_bytes()));
    format!(
        "default-src 'none'; script-src 'sha256-{digest}'; style-src 'unsafe-inline'; img-src 'self' data: file:; \
         base-uri 'none'; form-action 'none'"
    )
}

/// A module as a part of one: what it takes from others is there already, and notes are for those who read the source.
fn joined(module: &str) -> String {
    let lines = module.lines().map(str::trim_start);
    let kept = lines.filter(|line| !line.is_empty() && !line.starts_with("//") && !line.starts_with("import "));
    let whole: String = kept.flat_map(|line| [line.strip_prefix("export ").unwrap_or(line), "\n"]).collect();
    // A message is said by its number, under which the page carries it.
    let numbered = CARRIED.iter().enumerate();
    numbered.fold(whole, |script, (n, (id, _))| script.replace(&format!("say('{id}'"), &format!("say({n}")))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The name that a line of a module declares for all of them.
    fn declared(line: &str) -> Option<&str> {
        let line = line.strip_prefix("export ").unwrap_or(line);
        let kinds = ["const ", "let ", "class ", "function ", "async function "];
        let rest = kinds.iter().find_map(|kind| line.strip_prefix(kind))?;
        rest.split(|letter: char| !letter.is_alphanumeric() && letter != '_').find(|name| !name.is_empty())
    }

    #[test]
    fn a_script_holds_nothing_that_would_end_or_split_it() {
        assert!(!SCRIPT.contains("</script") && !SCRIPT.contains("<!--"));
        assert!(!SCRIPT.contains("import ") && !SCRIPT.contains("export ") && !SCRIPT.contains("say('"));
        let mut names: Vec<&str> = MODULES.iter().flat_map(|module| module.lines()).filter_map(declared).collect();
        names.sort_unstable();
        let twice = names.windows(2).find(|pair| pair[0] == pair[1]);
        assert!(twice.is_none(), "two modules declare {twice:?}");
        // Lines are trimmed as they are joined, which would change what stands between backquotes over several.
        assert!(SCRIPT.lines().all(|line| line.matches('`').count() % 2 == 0));
    }
}
