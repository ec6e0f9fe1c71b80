//! What a formula costs, for other programs: amounts as decimal texts, unrounded.

use super::Costing;
use bench::cost::{By, Paid, Price, Sale, Then};
use quantity::{Count, Fraction};
use rust_decimal::Decimal;
use serde_json::{Value, json};

/// A costing as JSON.
#[must_use]
pub fn json(costing: &Costing) -> Value {
    let cost = &costing.cost;
    json!({
        "formula": costing.title,
        "currency": cost.currency,
        "ingredients": cost.items.iter().map(|item| json!({
            "ingredient": item.title,
            "bought-gram": item.bought.as_grams(),
            "pack": item.pack.0,
            "pack-costs": item.pack.1.amount.to_string(),
            "on": item.pack.2.map(|on| on.to_string()),
            "costs": text(item.costs),
        })).collect::<Vec<_>>(),
        "energy": cost.energy.iter().map(|(one, costs)| json!({
            "what": one.title,
            "kilowatt-hours": [one.kilowatt_hours.from, one.kilowatt_hours.to],
            "costs": costs.map(|costs| [text(costs.from), text(costs.to)]),
        })).collect::<Vec<_>>(),
        "hands-hours": cost.work.0.as_hours(),
        "hands-costs": cost.work.1.map(text),
        "packaging-costs": text(cost.of_packaging()),
        "total": text(cost.total()),
        "pieces": cost.makes.0.map(Count::as_pieces),
        "piece-costs": cost.a_piece(cost.total()).map(text),
        "done-gram": cost.makes.1.as_grams(),
        "in-100-gram": cost.in_100_g().map(text),
        "sale": costing.sale.as_ref().map(sale),
        "history": costing.history.iter().map(then).collect::<Vec<_>>(),
        "paid": costing.paid.iter().map(paid).collect::<Vec<_>>(),
        "without-price": cost.missing,
    })
}

fn text(amount: Decimal) -> String {
    amount.normalize().to_string()
}

fn sale(sale: &Sale) -> Value {
    json!({
        "by": if sale.by_piece { "piece" } else { "100 g" },
        "ingredients": text(sale.ingredients),
        "total": text(sale.total),
        "prices": sale.prices.iter().map(price).collect::<Vec<_>>(),
    })
}

fn price(price: &Price) -> Value {
    let (by, wanted): (&str, Option<Fraction>) = match price.by {
        By::FoodCost(share) => ("food-cost", Some(share)),
        By::Margin(left) => ("margin", Some(left)),
        By::Stated => ("stated", None),
    };
    json!({
        "by": by,
        "wanted-percent": wanted.map(Fraction::as_percent),
        "before-tax": text(price.before_tax),
        "with-tax": price.with_tax.map(text),
        "food-cost": price.food_cost.map(text),
        "margin": price.margin.map(text),
    })
}

fn paid(paid: &Paid) -> Value {
    let prices = paid.prices.iter().map(|one| {
        json!({
            "on": one.on.map(|on| on.to_string()), "pack": one.pack, "pack-costs": one.costs.amount.to_string(),
            "kilogram-costs": one.a_kilogram.map(text),
        })
    });
    json!({ "ingredient": paid.title, "prices": prices.collect::<Vec<_>>(), "moved": paid.moved().map(text) })
}

fn then(then: &Then) -> Value {
    let moved: Vec<Value> = then
        .moved
        .iter()
        .map(|one| json!({ "ingredient": one.title, "before": text(one.costs.0), "then": text(one.costs.1) }))
        .collect();
    json!({ "on": then.on.map(|on| on.to_string()), "ingredients": text(then.ingredients), "moved": moved })
}
