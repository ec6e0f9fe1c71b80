//! The messages of a formula's sheet, on the terminal, as a page and on paper.

use super::message::messages;

messages!(SHEET {
    percent_of_its_flour;
    sheet_as_weighed(shifts: String);
    sheet_at;
    sheet_do;
    sheet_flour(flour: String, prefermented: String, protein: String);
    sheet_goes_on(mixed: String, made: String);
    sheet_hydration(nominal: String, all: String);
    sheet_little(ingredient: &str, mass: String, step: String, uncertainty: String);
    sheet_losses(mixed: String, raw: String, make_up: String, done: String, bake: String);
    sheet_makes(what: String);
    sheet_note;
    sheet_overall;
    sheet_overall_of(what: &str);
    sheet_pieces_of(pieces: String, mass: String);
    sheet_process;
    sheet_scale_shows;
    sheet_shares(salt: String, sugars: String, fat: String, egg: String, milk_solids: String);
    sheet_shift(ingredient: &str, weighed: String, wanted: String);
    sheet_silenced(rule: String, reason: &str);
    sheet_spoon(measure: String, off: String, spread: String);
    sheet_stage;
    sheet_stir(weigh: String, water: String, take: String, batches: String);
    sheet_time;
    sheet_uncertainty;
    sheet_until;
    sheet_weighed_for(kitchen: &str);
    sheet_weighs_well(batches: String);
    sheet_yeast(percent: String, range: String);
    sheet_yeast_range(from: String, to: String);
});
