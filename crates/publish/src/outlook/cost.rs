//! What a formula costs.

use super::known::{self, time};
use super::story::Story;
use crate::costing::money::{money as in_money, share};
use bench::cost::Cost;
use bench::grounds::by;
use quantity::print;
use rust_decimal::Decimal;
use serde_json::{Value, json};

/// Tells what a formula costs; amounts are rounded up, once, where they are told.
pub fn tell(story: &mut Story, cost: &Cost) {
    story.heading("Cost");
    let money = |amount: Decimal| in_money(amount, &cost.currency);
    for item in &cost.items {
        let share = share(item.costs, cost.ingredients());
        story.draw(&format!(
            "  {:<28}{:>10}{:>14}{share:>7}\n",
            cut(&item.title, 27),
            print::mass(item.bought),
            money(item.costs)
        ));
    }
    let (ingredients, energy, work) = (money(cost.ingredients()), money(cost.of_energy()), cost.work);
    let kilowatt_hours: (f64, f64) =
        cost.energy.iter().fold((0.0, 0.0), |sum, (one, _)| (sum.0 + one.kilowatt_hours.from, sum.1 + one.kilowatt_hours.to));
    let mut words = format!("Ingredients {ingredients}");
    if kilowatt_hours.1 > 0.0 {
        let (from, to) = (print::number(kilowatt_hours.0, 1), print::number(kilowatt_hours.1, 1));
        words.push_str(&format!("; energy about {energy} ({from} to {to} kWh, common practice, no source)"));
    }
    if let Some(paid) = work.1 {
        words.push_str(&format!("; {} of hands {}", time(work.0), money(paid)));
    }
    if !cost.packaging.is_zero() {
        words.push_str(&format!("; packaging {}", money(cost.of_packaging())));
    }
    story.say(&format!("{words}."));
    let mut per = vec![format!("{} in all", money(cost.total()))];
    if let (Some(all), Some(food)) = (cost.a_piece(cost.total()), cost.a_piece(cost.ingredients())) {
        per.push(format!("{} a piece with all that goes with it ({} of it ingredients)", money(all), money(food)));
    }
    per.extend(cost.in_100_g().map(|costs| format!("{} for 100 g", money(costs))));
    story.say(&format!("{}.", per.join("; ")));
    if let Some(dearest) = cost.items.first() {
        let share = share(dearest.costs, cost.ingredients());
        story.say(&format!("What drives it: {}, {share} of the ingredients.", dearest.title));
    }
    if !cost.missing.is_empty() {
        story.say(&format!("Without a price in prices.toml, so the true cost is higher: {}.", cost.missing.join(", ")));
    }
}

fn cut(title: &str, width: usize) -> String {
    title.chars().take(width).collect()
}

/// What a formula costs, for other programs: amounts as decimal texts, unrounded.
pub fn json(cost: &Cost) -> Value {
    let items: Vec<Value> = cost
        .items
        .iter()
        .map(|item| json!({ "ingredient": item.title, "bought": known::by(by::YIELD, item.bought.as_grams(), "gram"), "costs": item.costs.to_string() }))
        .collect();
    let energy: Vec<Value> = cost
        .energy
        .iter()
        .map(|(one, costs)| {
            let drawn = known::range(&by::ENERGY.known(one.kilowatt_hours), "kilowatt-hours", |hours| hours);
            json!({ "what": one.title, "draws": drawn, "costs": costs.map(|c| [c.from.to_string(), c.to.to_string()]) })
        })
        .collect();
    json!({
        "currency": cost.currency,
        "ingredients": items,
        "energy": energy,
        "work": known::by(by::HANDS, cost.work.0.as_hours(), "hours"),
        "work-costs": cost.work.1.map(|costs| costs.to_string()),
        "total": cost.total().to_string(),
        "pieces": cost.makes.0.map(|pieces| known::by(by::YIELD, pieces.as_pieces(), "pieces")),
        "done": known::by(by::YIELD, cost.makes.1.as_grams(), "gram"),
        "origin": known::origin(&by::PRICES.known(()).origin),
        "without-price": cost.missing,
    })
}
