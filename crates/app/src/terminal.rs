//! What people see in the terminal: faults under the author's own line, colour only where it shows.

use crate::failure::Failure;
use annotate_snippets::renderer::DecorStyle;
use annotate_snippets::{AnnotationKind, Group, Level, Patch, Renderer, Snippet};
use formula::{BookText, Diagnostic, Severity};
use std::borrow::Cow;
use std::collections::BTreeMap;
use std::io::{ErrorKind, IsTerminal, Write};

/// Writes to standard output; a reader that has gone away is no failure.
pub fn say(text: &str) -> Result<(), Failure> {
    show(&tamed(text))
}

/// Writes what was drawn here, colours included, to standard output.
pub fn show(text: &str) -> Result<(), Failure> {
    let mut out = anstream::stdout().lock();
    let end: &[u8] = if text.ends_with('\n') { b"" } else { b"\n" };
    unless_gone(out.write_all(text.as_bytes()).and_then(|()| out.write_all(end)).and_then(|()| out.flush()))
}

/// A text that cannot command the terminal: control characters that came in by titles or notes are shown as
/// their pictures.
fn tamed(text: &str) -> Cow<'_, str> {
    let is_tame = |c: char| !c.is_control() || matches!(c, '\n' | '\t' | '\r');
    if text.chars().all(is_tame) {
        return Cow::Borrowed(text);
    }
    let shown = |c: char| match c {
        c if is_tame(c) => c,
        c if u32::from(c) < 0x20 => char::from_u32(0x2400 + u32::from(c)).unwrap_or('\u{fffd}'),
        '\u{7f}' => '\u{2421}',
        _ => '\u{fffd}',
    };
    Cow::Owned(text.chars().map(shown).collect())
}

/// Prints help, the version, or what is wrong with a command line.
pub fn teach(error: &clap::Error) -> Result<(), Failure> {
    unless_gone(error.print().and_then(|()| std::io::stdout().flush()))
}

/// Writing that failed, unless it failed because the reader has gone away.
fn unless_gone(written: std::io::Result<()>) -> Result<(), Failure> {
    match written {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => Err(Failure::output(&error)),
        _ => Ok(()),
    }
}

/// Writes to standard output unless there is nothing to say.
pub fn say_if_any(text: &str) -> Result<(), Failure> {
    if text.is_empty() { Ok(()) } else { say(text) }
}

/// Writes to standard error.
pub fn remark(text: &str) {
    let _ = writeln!(anstream::stderr().lock(), "{}", tamed(text));
}

/// Says why a command could not run.
pub fn complain(failure: &Failure) {
    let red = anstyle::Style::new().bold().fg_color(Some(anstyle::AnsiColor::Red.into()));
    let _ = writeln!(anstream::stderr().lock(), "{red}cannot go on{red:#}: {}", tamed(&failure.to_string()));
}

/// The width of the terminal in columns, or a page's where there is none.
pub fn width() -> usize {
    let columns = std::env::var("COLUMNS").ok().and_then(|columns| columns.parse().ok());
    let seen = terminal_size::terminal_size().map(|(width, _)| usize::from(width.0));
    columns.or(seen).unwrap_or(100).clamp(40, 400)
}

/// Whether standard error is watched by a person, who wants to see progress.
pub fn is_watched() -> bool {
    std::io::stderr().is_terminal()
}

/// The texts that faults point into, by the names that faults use.
pub struct Texts<'t>(BTreeMap<&'t str, &'t str>);

impl<'t> Texts<'t> {
    /// The texts of a book.
    pub fn of(text: &'t BookText) -> Self {
        Self(text.files.values().map(|source| (source.file.as_ref(), source.text.as_str())).collect())
    }

    /// A file's text, if it was read.
    pub fn get(&self, file: &str) -> Option<&'t str> {
        self.0.get(file).copied()
    }
}

/// Draws a fault under the line it was found in.
pub fn draw(diagnostic: &Diagnostic, texts: &Texts) -> String {
    let level = match diagnostic.severity {
        Severity::Error => Level::ERROR.with_name("error"),
        Severity::Warning => Level::WARNING.with_name("warning"),
        Severity::Advice => Level::NOTE.with_name("advice"),
    };
    let (message, hint) = (tamed(&diagnostic.message), diagnostic.hint.as_deref().map(tamed));
    let title = level.primary_title(message.as_ref()).id(diagnostic.code);
    let file = diagnostic.place.file.as_ref();
    let mut main = match texts.get(file) {
        Some(text) => {
            let mark = AnnotationKind::Primary.span(diagnostic.place.span.clone());
            title.element(Snippet::source(text).path(file).annotation(mark))
        }
        None => title.element(Level::NOTE.with_name("in").message(file)),
    };
    if let Some(hint) = hint.as_deref().filter(|hint| !hint.is_empty()) {
        main = main.element(Level::HELP.message(hint));
    }
    let mut groups = vec![main];
    if let (Some(fix), Some(text)) = (&diagnostic.fix, texts.get(file)) {
        let patches = fix.edits.iter().map(|edit| Patch::new(edit.place.span.clone(), edit.text.as_str()));
        groups.push(
            Group::with_title(Level::HELP.secondary_title(&fix.title)).element(Snippet::source(text).path(file).patches(patches)),
        );
    }
    let renderer = Renderer::styled().decor_style(DecorStyle::Unicode).term_width(width());
    renderer.render(&groups).to_string()
}
