//! The two ways of writing English: what pages say of themselves is written the British way, and spelt anew for books
//! whose language is American. Authors' own words are never touched.

use std::borrow::Cow;

/// British spellings that pages use, with the American ones; small letters, the first may stand as a capital.
const SPELLINGS: [(&str, &str); 7] = [
    ("fibre", "fiber"),
    ("levelled", "leveled"),
    ("judgement", "judgment"),
    ("pasteurised", "pasteurized"),
    ("sulphites", "sulfites"),
    ("sulphur", "sulfur"),
    ("molluscs", "mollusks"),
];

/// Whether a language, as BCP 47 writes it, is the English of the United States.
#[must_use]
pub fn is_american(language: &str) -> bool {
    language.eq_ignore_ascii_case("en-US")
}

/// Words of a page as its language spells them.
#[must_use]
pub fn spelt<'w>(words: &'w str, language: &str) -> Cow<'w, str> {
    if !is_american(language) {
        return Cow::Borrowed(words);
    }
    let capital = quantity::print::capital;
    let both =
        SPELLINGS.iter().flat_map(|(here, there)| [((*here).to_owned(), (*there).to_owned()), (capital(here), capital(there))]);
    Cow::Owned(both.fold(words.to_owned(), |words, (here, there)| words.replace(&here, &there)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// From memory: as the dictionaries of the two countries have it.
    #[test]
    fn words_are_spelt_as_their_country_does() {
        let told = "Fibre, levelled, pasteurised: your own judgement; sulphites and molluscs";
        assert_eq!(spelt(told, "en-GB"), told);
        assert_eq!(spelt(told, "en-US"), "Fiber, leveled, pasteurized: your own judgment; sulfites and mollusks");
    }
}
