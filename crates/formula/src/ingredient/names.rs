//! Names as people type them: how they are compared, and which known one was meant.

/// A name in the form in which names are compared: small letters, hyphens for spaces.
#[must_use]
pub fn plain_name(typed: &str) -> String {
    let mut plain = String::with_capacity(typed.len());
    for letter in typed.trim().chars() {
        match letter {
            ' ' | '_' | '-' if plain.ends_with('-') || plain.is_empty() => {}
            ' ' | '_' => plain.push('-'),
            letter => plain.extend(letter.to_lowercase()),
        }
    }
    plain
}

/// How alike two names must be for one to have been meant by the other.
const ALIKE: f64 = 0.72;

/// The known name nearest to a typed one, if one is near enough to have been meant.
pub fn nearest<'n>(typed: &str, known: impl IntoIterator<Item = &'n str>) -> Option<&'n str> {
    let typed = plain_name(typed);
    // Comparing a novel with every name would take long and help nobody.
    let length = typed.chars().count();
    if length > 60 {
        return None;
    }
    // Names that differ in length by so much cannot be alike enough: most are passed over without comparing.
    let near_in_length = |name: &&str| {
        let other = name.chars().count();
        length.abs_diff(other) as f64 <= (1.0 - ALIKE) * length.max(other) as f64
    };
    known
        .into_iter()
        .filter(near_in_length)
        .map(|name| (likeness(&typed, name), name))
        .filter(|(likeness, _)| *likeness > ALIKE)
        .max_by(|a, b| a.0.total_cmp(&b.0).then_with(|| b.1.cmp(a.1)))
        .map(|(_, name)| name)
}

/// The hint that asks whether the nearest name was meant.
#[must_use]
pub fn did_you_mean(near: &str) -> String {
    format!("did you mean “{near}”?")
}

/// How alike two names are, from 0 to 1; the same words in another order are nearly the same.
fn likeness(typed: &str, name: &str) -> f64 {
    let sorted = |text: &str| {
        let mut words: Vec<&str> = text.split('-').collect();
        words.sort_unstable();
        words.join("-")
    };
    let straight = strsim::normalized_damerau_levenshtein(typed, name);
    if !typed.contains('-') {
        return straight;
    }
    straight.max(0.98 * strsim::normalized_damerau_levenshtein(&sorted(typed), &sorted(name)))
}
