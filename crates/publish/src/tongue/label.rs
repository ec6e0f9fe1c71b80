//! The messages of labels: in German, the words of the German text of Regulation (EU) No 1169/2011.

use super::message::messages;

messages!(LABEL {
    label_best_before;
    label_best_before_end;
    label_carbohydrate;
    label_check;
    label_day_and_month;
    label_days(count: f64, days: String);
    label_draft;
    label_energy;
    label_fat;
    label_fibre;
    label_from_packing(time: String);
    label_gap;
    label_in_all;
    label_ingredients;
    label_intake;
    label_month_and_year;
    label_nutrition;
    label_of_intake;
    label_per_100_g;
    label_per_portion(portion: String);
    label_protein;
    label_salt;
    label_saturates;
    label_sugars;
    label_use_by;
    label_year;
    labels_of(what: &str);
});
