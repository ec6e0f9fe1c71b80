//! Two texts line by line: what goes and what comes, each with a sign and never by colour alone.

use maud::{Markup, html};
use similar::{ChangeTag, TextDiff};
use std::time::Duration;

/// So many lines around a change are shown.
const AROUND: usize = 2;
/// Longer no difference is looked for; a coarser one is as right.
const PATIENCE: Duration = Duration::from_millis(500);

/// What must change for the first text to say what the second says.
pub fn markup(now: &str, then: &str) -> Markup {
    let difference = TextDiff::configure().timeout(PATIENCE).diff_lines(now, then);
    html! {
        p.fine { "− stands now and would go, + would come." }
        div.difference tabindex="0" role="group" aria-label="The difference, line by line" {
            @for hunk in difference.grouped_ops(AROUND) {
                div.hunk {
                    @if let Some(first) = hunk.first() { p.fine { "From line " (first.old_range().start + 1) } }
                    @for change in hunk.iter().flat_map(|operation| difference.iter_changes(operation)) {
                        @let line = change.value().trim_end_matches(['\n', '\r']);
                        @match change.tag() {
                            ChangeTag::Delete => p { del { span aria-hidden="true" { "− " } (line) } },
                            ChangeTag::Insert => p { ins { span aria-hidden="true" { "+ " } (line) } },
                            ChangeTag::Equal => p { span aria-hidden="true" { "\u{2007} " } (line) },
                        }
                    }
                }
            }
        }
    }
}
