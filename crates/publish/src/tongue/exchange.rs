//! The messages of the other ways to raise a formula, found by what the exchanges say.

use super::Tongue;
use super::message::messages;
use bench::exchange::remarks;
use quantity::Measure;

messages!(EXCHANGE {
    way_acid_comes;
    way_acid_goes;
    way_allergen(allergens: String);
    way_culture(culture: String, stage: &str);
    way_culture_alone;
    way_culture_unbuilt;
    way_culture_unfed;
    way_flour_of_culture(weight: String, flour: &str);
    way_hours_gone;
    way_nothing_kept;
    way_straight(stage: &str);
    way_yeast(stage: &str);
    way_yeast_stays;
    way_yeast_unbuilt;
});

impl Tongue {
    /// What an exchange says, in this language.
    pub(crate) fn of_exchange(self, sentence: &str) -> String {
        let told = match sentence {
            remarks::ACID_COMES => self.way_acid_comes(),
            remarks::ACID_GOES => self.way_acid_goes(),
            remarks::YEAST_STAYS => self.way_yeast_stays(),
            remarks::CULTURE_ALONE => self.way_culture_alone(),
            remarks::CULTURE_UNFED => self.way_culture_unfed(),
            remarks::HOURS_GONE => self.way_hours_gone(),
            remarks::CULTURE_UNBUILT => self.way_culture_unbuilt(),
            remarks::YEAST_UNBUILT => self.way_yeast_unbuilt(),
            remarks::NOTHING_KEPT => self.way_nothing_kept(),
            other => match other.split_once(remarks::FLOUR_OF_CULTURE) {
                Some((weight, flour)) => return self.way_flour_of_culture(self.weight(weight), flour),
                None => other,
            },
        };
        told.to_owned()
    }

    /// A weight that was written in English.
    fn weight(self, written: &str) -> String {
        let mass = written.parse::<Measure>().ok().and_then(|measure| measure.mass(Default::default()));
        mass.map_or_else(|| written.to_owned(), |range| self.print.mass(range.from))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn english_says_what_the_exchanges_say() {
        let english = Tongue::default();
        let all = [
            remarks::ACID_COMES,
            remarks::ACID_GOES,
            remarks::YEAST_STAYS,
            remarks::CULTURE_ALONE,
            remarks::CULTURE_UNFED,
            remarks::HOURS_GONE,
            remarks::CULTURE_UNBUILT,
            remarks::YEAST_UNBUILT,
            remarks::NOTHING_KEPT,
            "14\u{a0}g of the flour is now the culture's own: dark rye flour",
        ];
        for sentence in all {
            assert_eq!(english.of_exchange(sentence), sentence);
            assert_ne!(Tongue::of("de").of_exchange(sentence), sentence);
        }
        let german = Tongue::of("de").of_exchange("7.5\u{a0}g of the flour is now the culture's own: Roggenmehl");
        assert_eq!(german, "7,5\u{a0}g des Mehls kommen nun aus der Kultur: Roggenmehl");
    }
}
