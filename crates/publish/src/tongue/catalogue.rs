//! A catalogue of messages, read once and kept as long as the program runs.

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentError, FluentResource, FluentValue};
use std::collections::HashMap;

/// Messages of a language: those without figures as they are, the others to be filled.
pub struct Catalogue {
    /// The language, as BCP 47 writes it.
    pub language: &'static str,
    bundle: FluentBundle<FluentResource>,
    fixed: HashMap<String, String>,
}

impl Catalogue {
    /// Reads the texts of a catalogue, a later one over an earlier one.
    pub fn of(language: &'static str, texts: &[&str]) -> Self {
        let mut bundle = FluentBundle::new_concurrent(language.parse().into_iter().collect());
        // The pages set off what runs the other way themselves, and plain text has no use for marks of direction.
        bundle.set_use_isolating(false);
        let mut fixed = HashMap::new();
        for text in texts {
            // What can be read of a faulty catalogue is kept; a test holds that none is faulty.
            let resource = FluentResource::try_new((*text).to_owned()).unwrap_or_else(|(read, _)| read);
            bundle.add_resource_overriding(resource);
        }
        for id in texts.iter().flat_map(|text| text.lines()).filter_map(|line| line.split_once(" =").map(|(id, _)| id)) {
            let mut wrong = Vec::new();
            let pattern = bundle.get_message(id).and_then(|message| message.value());
            let said = pattern.map(|pattern| bundle.format_pattern(pattern, None, &mut wrong).into_owned());
            if let Some(said) = said.filter(|_| wrong.is_empty()) {
                fixed.insert(id.to_owned(), said);
            }
        }
        Self { language, bundle, fixed }
    }

    /// A message without figures; its own name where there is none, which a test excludes.
    pub fn fixed<'c>(&'c self, id: &'c str) -> &'c str {
        self.fixed.get(id).map_or(id, String::as_str)
    }

    /// The message of a list for one of its words; nothing where the list lacks it, which a test excludes.
    pub fn fixed_in(&self, list: &str, word: &str) -> &str {
        self.fixed.get(&format!("{list}{}", word.replace('-', "_"))).map(String::as_str).unwrap_or_default()
    }

    /// A message with its figures.
    pub fn filled(&self, id: &str, with: &[(&'static str, FluentValue<'_>)]) -> String {
        self.told(id, with).unwrap_or_else(|_| id.to_owned())
    }

    /// The same, or what stands in its way.
    pub fn told(&self, id: &str, with: &[(&'static str, FluentValue<'_>)]) -> Result<String, Vec<FluentError>> {
        let Some(pattern) = self.bundle.get_message(id).and_then(|message| message.value()) else { return Err(Vec::new()) };
        let args: FluentArgs = with.iter().map(|(name, value)| (*name, value.clone())).collect();
        let mut wrong = Vec::new();
        let said = self.bundle.format_pattern(pattern, Some(&args), &mut wrong).into_owned();
        if wrong.is_empty() { Ok(said) } else { Err(wrong) }
    }
}
