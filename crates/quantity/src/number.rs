//! Reading a number the way people type it: "1 1/2", "½", "0,3", "10 000".

use std::fmt;

/// Why a text is not a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NumberFault {
    /// There is no digit where a number should be.
    Missing,
    /// "1,000": a thousand to some, one to others.
    Ambiguous,
    /// Division by zero, or too large to hold.
    NotFinite,
}

impl fmt::Display for NumberFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Missing => "there is no number",
            Self::Ambiguous => {
                "a comma before three digits is a thousand to some and a decimal mark to others: write 1000 or 1.0"
            }
            Self::NotFinite => "the number is too large or divides by zero",
        })
    }
}

const VULGAR: [(char, f64); 15] = [
    ('½', 0.5),
    ('¼', 0.25),
    ('¾', 0.75),
    ('⅓', 1.0 / 3.0),
    ('⅔', 2.0 / 3.0),
    ('⅛', 0.125),
    ('⅜', 0.375),
    ('⅝', 0.625),
    ('⅞', 0.875),
    ('⅕', 0.2),
    ('⅖', 0.4),
    ('⅗', 0.6),
    ('⅘', 0.8),
    ('⅙', 1.0 / 6.0),
    ('⅚', 5.0 / 6.0),
];

/// Reads an unsigned number at the start of a text; gives it and what follows.
///
/// # Errors
/// [`NumberFault`] when the text does not start with a number that can be held.
pub fn read_number(text: &str) -> Result<(f64, &str), NumberFault> {
    let text = text.trim_start();
    if let Some((value, rest)) = vulgar(text) {
        return Ok((value, rest));
    }
    let (whole, rest) = decimal(text)?;
    let (value, rest) = after_whole(whole, rest)?;
    if value.is_finite() { Ok((value, rest)) } else { Err(NumberFault::NotFinite) }
}

/// "1½", "1 ½", "1/2", "1 1/2", or just the whole number.
fn after_whole(whole: f64, rest: &str) -> Result<(f64, &str), NumberFault> {
    if let Some((part, after)) = vulgar(rest.trim_start()) {
        return Ok((whole + part, after));
    }
    if let Some(after) = fraction_bar(rest) {
        return divide(whole, after);
    }
    if let Ok((numerator, after)) = decimal(rest.trim_start())
        && rest.starts_with(' ')
        && let Some(after) = fraction_bar(after)
    {
        let (part, after) = divide(numerator, after)?;
        return Ok((whole + part, after));
    }
    Ok((whole, rest))
}

fn fraction_bar(text: &str) -> Option<&str> {
    text.strip_prefix('/').or_else(|| text.strip_prefix('⁄'))
}

fn divide(numerator: f64, rest: &str) -> Result<(f64, &str), NumberFault> {
    let (denominator, rest) = decimal(rest)?;
    if denominator == 0.0 {
        return Err(NumberFault::NotFinite);
    }
    Ok((numerator / denominator, rest))
}

fn vulgar(text: &str) -> Option<(f64, &str)> {
    let first = text.chars().next()?;
    let (_, value) = VULGAR.iter().find(|(sign, _)| *sign == first)?;
    Some((*value, &text[first.len_utf8()..]))
}

/// Digits with an optional decimal point or comma; groups of three may stand apart by a space
/// that does not break.
fn decimal(text: &str) -> Result<(f64, &str), NumberFault> {
    let mut digits = String::new();
    let mut rest = text;
    loop {
        let run = leading_digits(rest);
        digits.push_str(&rest[..run]);
        rest = &rest[run..];
        match grouped(rest) {
            Some(after) if !digits.is_empty() => rest = after,
            _ => break,
        }
    }
    let mut mark = false;
    for (sign, next) in [('.', false), (',', true)] {
        let Some(after) = rest.strip_prefix(sign) else { continue };
        let run = leading_digits(after);
        if next && run == 3 && !digits.is_empty() && digits != "0" {
            return Err(NumberFault::Ambiguous);
        }
        if run > 0 {
            digits.push('.');
            digits.push_str(&after[..run]);
            rest = &after[run..];
            mark = true;
        }
        break;
    }
    if digits.is_empty() || (mark && digits.starts_with('.') && digits.len() == 1) {
        return Err(NumberFault::Missing);
    }
    let value: f64 = digits.parse().map_err(|_| NumberFault::Missing)?;
    if value.is_finite() { Ok((value, rest)) } else { Err(NumberFault::NotFinite) }
}

fn leading_digits(text: &str) -> usize {
    text.bytes().take_while(u8::is_ascii_digit).count()
}

/// What follows a no-break or thin space that stands before exactly three digits.
fn grouped(text: &str) -> Option<&str> {
    let after = ['\u{a0}', '\u{2009}', '\u{202f}'].iter().find_map(|space| text.strip_prefix(*space))?;
    (leading_digits(after) == 3).then_some(after)
}
