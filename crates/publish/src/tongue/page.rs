//! The messages of the reader's page and of the book's lists.

use super::Tongue;
use super::message::messages;

messages!(PAGE {
    across_cm;
    across_the_room;
    all_formulas;
    american_size(size: String);
    amounts;
    as_published;
    as_the_formula_says;
    as_the_method_says;
    as_written;
    batches(many: String, at_once: String);
    book;
    both_degrees;
    by_ingredient;
    by_tag;
    by_the_clock;
    by_volume;
    check_labels;
    contains;
    course_caption;
    cups_and_spoons;
    degrees;
    done;
    each;
    each_raw_grams;
    egg_share;
    fat;
    figures_after;
    find_by;
    fit_it;
    fit_to_your_kitchen;
    formula_of(component: &str);
    formulas;
    formulas_by_ingredient;
    formulas_by_tag;
    formulas_counted(count: f64, formulas: String);
    found(found: &str, all: &str);
    from;
    so_long_to_table(time: &str);
    goes_into;
    grams;
    guidance_only;
    high_cm;
    holds_ml;
    how_many(pieces: &str);
    how_many_tins;
    how_much;
    hydration_of_all;
    hydration_of_water;
    in_a_serving;
    in_other_languages;
    ingredient;
    keep_the_screen_on;
    keeping;
    language_name;
    learnt_of(count: f64, called: &str, trials: String);
    learnt_times(each: String);
    lists;
    long_cm;
    makes;
    measures;
    method;
    my_eggs;
    my_flour;
    my_room;
    my_tin;
    no_ingredient_yet;
    no_tag_yet;
    not_counted(ingredients: String);
    not_kept;
    notes;
    oblong;
    or_begun_at;
    percent_of_flour;
    prefermented_flour;
    protein_of_the_bag;
    raw;
    room_and_clock;
    round_tin;
    salt;
    served_at;
    serves;
    serving_from_tables;
    serving_size(servings: String, weight: String);
    shares_of_flour;
    size(size: &str);
    spoons_and_cups_of(first: &str, whose: &str, cup: &str, tablespoon: &str, teaspoon: &str);
    sugars;
    tasted_blind;
    the_evidence;
    the_formula;
    times_the_recipe;
    to_mind;
    to_mind_here;
    to_work_with;
    total;
    total_grams;
    weights_first;
    what_raises_it;
    what_you_need;
    whose_cups;
    wide_cm;
    yeast_as_instant;
});

impl Tongue {
    /// Whose cups and spoons are meant, and how many millilitres a cup, a tablespoon and a teaspoon hold.
    pub(crate) fn spoons_and_cups(self, first: &str, whose: &str, [cup, tablespoon, teaspoon]: [String; 3]) -> String {
        self.spoons_and_cups_of(first, whose, &cup, &tablespoon, &teaspoon)
    }
}
