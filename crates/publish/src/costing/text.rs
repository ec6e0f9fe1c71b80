//! What a formula costs, for the terminal.

use super::Costing;
use super::money::{money, percent, share};
use super::paid;
use crate::sheet::{right_align, ruled};
use crate::words::wrap;
use bench::cost::{By, Cost, Price, Sale, Then};
use quantity::{Between, TimeSpan, print};
use rust_decimal::Decimal;

/// A formula's costing as text of that width.
#[must_use]
pub fn text(costing: &Costing, width: usize) -> String {
    let cost = &costing.cost;
    let mut out = format!("{}\n{}\n", costing.title, "═".repeat(costing.title.chars().count()));
    out.push_str(&format!("\nIngredients\n{}\n", items(cost, width)));
    out.push_str(&format!("\nAll of it\n{}\n", sums(costing, width)));
    let mut say = |line: &str| out.push_str(&wrap(line, width));
    say("Every amount is rounded up by itself, once: columns may differ from their sums by a coin.");
    say(&kilowatt_hours(cost));
    if let Some(line) = drives(cost) {
        say(&line);
    }
    if let Some(sale) = &costing.sale {
        out.push_str(&asked(costing, sale, width));
    }
    if !costing.history.is_empty() {
        out.push_str(&course(&costing.history, cost, width));
    }
    out.push_str(&paid::text(&costing.paid, width));
    if !cost.missing.is_empty() {
        out.push_str(&wrap(&format!("\nWithout a price, so the true cost is higher: {}.", cost.missing.join(", ")), width));
    }
    out
}

fn items(cost: &Cost, width: usize) -> String {
    let mut table = ruled(width);
    table.set_header(["", "bought", "pack", "for", "on", "costs", "of them"]);
    for item in &cost.items {
        let (pack, paid, on) = &item.pack;
        table.add_row([
            item.title.clone(),
            print::mass(item.bought),
            pack.clone(),
            paid.to_string(),
            on.map(|on| on.to_string()).unwrap_or_default(),
            money(item.costs, &cost.currency),
            share(item.costs, cost.ingredients()),
        ]);
    }
    let columns = table.column_count();
    right_align(&mut table, 1..columns);
    table.trim_fmt()
}

fn sums(costing: &Costing, width: usize) -> String {
    let cost = &costing.cost;
    let mut table = ruled(width);
    let has_pieces = cost.a_piece(Decimal::ONE).is_some();
    let mut head = vec![String::new(), "batch".to_owned()];
    head.extend(has_pieces.then(|| format!("a {}", costing.piece)));
    head.extend(["100\u{a0}g".to_owned(), "of it".to_owned()]);
    table.set_header(head);
    let hands = format!("hands, {}", time(cost.work.0));
    let rows = [
        ("ingredients", cost.ingredients()),
        ("energy", cost.of_energy()),
        (hands.as_str(), cost.of_hands()),
        ("packaging", cost.of_packaging()),
        ("all", cost.total()),
    ];
    for (title, amount) in rows {
        let mut cells = vec![title.to_owned(), money(amount, &cost.currency)];
        cells.extend(cost.a_piece(amount).map(|one| money(one, &cost.currency)));
        cells.push(cost.of_100_g(amount).map(|one| money(one, &cost.currency)).unwrap_or_default());
        cells.push(share(amount, cost.total()));
        table.add_row(cells);
    }
    let columns = table.column_count();
    right_align(&mut table, 1..columns);
    table.trim_fmt()
}

/// What the heats take, as far as that is known.
fn kilowatt_hours(cost: &Cost) -> String {
    let told: Vec<String> = cost
        .energy
        .iter()
        .map(|(one, _)| {
            let hours = one.kilowatt_hours.map(|hours| print::number(hours, 1));
            format!("{} {} to {}\u{a0}kWh", one.title, hours.from, hours.to)
        })
        .collect();
    match told[..] {
        [] => "No heat is foreseen, so no energy is counted.".to_owned(),
        _ => format!("Energy by custom, no source, counted in the middle: {}.", told.join("; ")),
    }
}

fn drives(cost: &Cost) -> Option<String> {
    let first: Vec<String> =
        cost.items.iter().take(3).map(|item| format!("{} {}", item.title, share(item.costs, cost.ingredients()))).collect();
    let dearest = cost.items.first()?;
    let more = cost
        .a_piece(dearest.costs / Decimal::TEN)
        .map(|more| format!("; a tenth more for {} adds {} a piece", dearest.title, money(more, &cost.currency)));
    Some(format!("What drives the ingredients: {}{}.", first.join(", "), more.unwrap_or_default()))
}

fn asked(costing: &Costing, sale: &Sale, width: usize) -> String {
    let currency = &costing.cost.currency;
    let one = if sale.by_piece { format!("a {} that is sold", costing.piece) } else { "100\u{a0}g that are sold".to_owned() };
    let mut out = "\nWhat to ask\n".to_owned();
    let costs = if sale.by_piece { "costs" } else { "cost" };
    let costs = format!("{one} {costs} {}, {} of it ingredients", money(sale.total, currency), money(sale.ingredients, currency));
    out.push_str(&wrap(&format!("{}.", print::capital(&costs)), width));
    if sale.prices.is_empty() {
        let line = "Say what is wanted of a price: food-cost or margin in prices.toml, or --food-cost, --margin, --price here.";
        out.push_str(&wrap(line, width));
        return out;
    }
    let mut table = ruled(width);
    table.set_header(["", "before tax", "with tax", "ingredients of it", "left of it"]);
    for price in &sale.prices {
        table.add_row([
            by(price),
            money(price.before_tax, currency),
            price.with_tax.map_or_else(|| "no tax stated".to_owned(), |with| money(with, currency)),
            price.food_cost.map(percent).unwrap_or_default(),
            price.margin.map(percent).unwrap_or_default(),
        ]);
    }
    let columns = table.column_count();
    right_align(&mut table, 1..columns);
    out.push_str(&format!("{}\n", table.trim_fmt()));
    out.push_str(&wrap("Which tax holds for which food, your authority says.", width));
    out
}

fn by(price: &Price) -> String {
    match price.by {
        By::FoodCost(share) => format!("ingredients at most {}", print::percent(share, 0)),
        By::Margin(left) => format!("{} left", print::percent(left, 0)),
        By::Stated => "at the stated price".to_owned(),
    }
}

fn course(history: &[Then], cost: &Cost, width: usize) -> String {
    let mut out = "\nHow the ingredients moved\n".to_owned();
    let mut last = None;
    for then in history {
        let when = then.on.map_or_else(|| "at the first prices".to_owned(), |on| format!("from {on}"));
        let mut line = format!("• {when}: {}", money(then.ingredients, &cost.currency));
        if let Some(last) = last {
            line.push_str(&format!(" ({})", change(last, then.ingredients)));
        }
        let moved: Vec<String> =
            then.moved.iter().map(|one| format!("{} {}", one.title, change(one.costs.0, one.costs.1))).collect();
        if !moved.is_empty() {
            line.push_str(&format!("; {}", moved.join(", ")));
        }
        out.push_str(&wrap(&format!("{line}."), width));
        last = Some(then.ingredients);
    }
    out
}

/// “+5.4 %”.
pub fn change(was: Decimal, is: Decimal) -> String {
    let percent = (is - was).checked_div(was).unwrap_or_default() * Decimal::ONE_HUNDRED;
    let sign = if percent.is_sign_negative() { "−" } else { "+" };
    format!("{sign}{}\u{a0}%", percent.abs().round_dp(1).normalize())
}

fn time(span: TimeSpan) -> String {
    let whole = TimeSpan::minutes(span.as_minutes().round());
    print::time(Between { from: whole, to: whole })
}
