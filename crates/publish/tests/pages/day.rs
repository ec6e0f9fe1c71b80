//! The day on a formula's page: there where a serving time is stated, and with the times of its plan.

use crate::demo::{book, formulas, visible};
use bench::forecast::Surroundings;
use plan::day::{Workplace, usual};
use publish::page::{Leaf, formula_page};

#[test]
fn a_page_tells_the_day_where_its_formula_states_when_it_is_served() {
    let book = book();
    let kitchen = book.kitchen();
    let around = Surroundings::of(&kitchen);
    for formula in formulas(&book) {
        let day = usual(&formula, Workplace::of(&kitchen), &around);
        assert_eq!(day.is_some(), formula.head.served_at.is_some(), "{}", formula.name);
        let leaf = Leaf { day: day.as_ref(), ..Leaf::alone(&book.settings) };
        let page = visible(&formula_page(&formula, &leaf));
        assert_eq!(page.contains("The day before"), day.is_some(), "{}", formula.name);
        let Some(day) = day else { continue };
        assert_eq!(day.served.strftime("%H:%M").to_string(), "09:30", "as it states");
        assert!(day.reached.iter().all(plan::engine::Reached::is_proved));
        for entry in &day.entries {
            assert!(page.contains(&entry.begin.strftime("%H:%M").to_string()), "{entry:?}");
        }
        // A day of no date names no day of the week.
        let told = page.split("On the table at 09:30. In").nth(1).expect("its section");
        let told = told.split("Planned for the formula as written").next().expect("its end");
        for name in ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"] {
            assert!(!told.contains(&format!("{name} ")) && !told.contains(&format!("{name}day")), "{name}: {told}");
        }
    }
}
