//! `cost`: what a formula costs, and what to ask for it.

use super::{Ended, Format, Outcome};
use crate::asked::{Formulas, InKitchen, percent};
use crate::book::Opened;
use crate::failure::Failure;
use crate::memory::{Memory, wait};
use crate::paid::said;
use crate::terminal;
use bench::cost::{self, Said, gathered, paid, prices};
use bench::forecast::{Surroundings, foresee};
use formula::Formula;
use formula::prices::currency;
use formula::read::{Prices, Wanted};
use publish::costing::{self, Costing};
use quantity::{Fraction, Money};
use rust_decimal::Decimal;

/// Tells what a formula costs by the batch, the piece and 100 g, and what to ask for it.
///
/// Ingredients by their packs with peel and losses, energy, hands, packaging; what drives it,
/// how it moved, prices by food cost or by margin, tax apart.
///
///   wellproved cost potato-muffins.toml
///   wellproved cost potato-muffins.toml --food-cost "30 %" --tax "7 %"
///   wellproved cost saltmarsh --formula cardamom-knots --margin "20 %" --price "3.50 EUR"
///   wellproved cost saltmarsh --formula cardamom-knots --history
///
/// Prices stand in prices.toml. Amounts are decimal, rounded once where they are told, and upwards.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Cost {
    #[command(flatten)]
    asked: Formulas,
    /// The share of the price before tax that ingredients may take: "30 %".
    #[arg(long, value_name = "SHARE")]
    food_cost: Option<String>,
    /// The share of the price before tax that is to be left when all is paid: "20 %".
    #[arg(long, value_name = "SHARE")]
    margin: Option<String>,
    /// A price that customers pay for one, to see what it leaves: "3.50 EUR".
    #[arg(long, value_name = "PRICE")]
    price: Option<String>,
    /// The tax on top of the price: "7 %".
    #[arg(long, value_name = "SHARE")]
    tax: Option<String>,
    /// Tells what was paid for each ingredient, and what the formula cost, at all prices that were ever saved.
    #[arg(long)]
    history: bool,
    #[command(flatten)]
    memory: Memory,
    #[command(flatten)]
    kitchen: InKitchen,
    /// The form of the costing.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

impl Cost {
    pub fn run(self) -> Ended {
        let (opened, formulas) = self.asked.open()?;
        let around = self.kitchen.of(&opened)?;
        let book = &opened.book;
        let wanted = self.wanted(book.prices.wanted)?;
        let price = self.price(currency(&book.prices, &book.settings).as_deref())?;
        let past = if self.history { Some(wait(self.past(&opened))??) } else { None };
        let costing = |formula| costing(book, formula, &around, (&wanted, price), past.as_deref());
        let costings = formulas.iter().map(costing).collect::<Result<Vec<_>, _>>()?;
        let text = |one| costing::text(one, terminal::width());
        terminal::say(&match self.format {
            Format::Text => costings.iter().map(text).collect::<Vec<_>>().join("\n\n"),
            Format::Json => format!("{:#}", serde_json::Value::Array(costings.iter().map(costing::json).collect())),
        })?;
        Ok(Outcome::Fine)
    }

    /// What was ever said of prices, and what is said now; this alone where nothing was saved.
    async fn past(&self, opened: &Opened) -> Result<Vec<Said>, Failure> {
        let store = self.memory.open_if_there(&opened.folder).await?;
        if store.is_none() {
            terminal::remark(
                "nothing of this book was saved yet: prices are those of prices.toml; `wellproved save` remembers them",
            );
        }
        let past = said(store.as_ref(), &opened.book).await;
        if let Some(store) = store {
            store.close().await;
        }
        past
    }

    /// What the book wants of a price, and what the command line says instead.
    fn wanted(&self, book: Wanted) -> Result<Wanted, Failure> {
        let share = |text: &Option<String>, name: &str| text.as_deref().map(|text| below_all(text, name)).transpose();
        let food_cost = share(&self.food_cost, "food-cost")?;
        if food_cost.is_some_and(|share| share <= Fraction::ZERO) {
            return Err(Failure::new("a price of which ingredients take nothing has no end").hint("write --food-cost \"30 %\""));
        }
        let wanted = Wanted {
            food_cost: food_cost.or(book.food_cost),
            margin: share(&self.margin, "margin")?.or(book.margin),
            tax: share(&self.tax, "tax")?.or(book.tax),
            ..book
        };
        if wanted.margin.is_some_and(|margin| margin + wanted.fees >= Fraction::WHOLE) {
            return Err(Failure::new("margin and fees together leave nothing to pay the costs from"));
        }
        Ok(wanted)
    }

    fn price(&self, currency: Option<&str>) -> Result<Option<Decimal>, Failure> {
        let Some(text) = &self.price else { return Ok(None) };
        let money: Money = text.parse().map_err(|why: quantity::MoneyFault| Failure::new(why.to_string()))?;
        if money.amount <= Decimal::ZERO {
            return Err(Failure::new("nobody pays nothing").hint("write --price \"3.50 EUR\""));
        }
        match currency {
            Some(own) if own != money.currency => {
                Err(Failure::new(format!("the book reckons in {own}, not in {}", money.currency)))
            }
            _ => Ok(Some(money.amount)),
        }
    }
}

/// All that is told of a formula's cost; over time where it is told what was said of prices.
pub fn costing<'f>(
    book: &formula::Book,
    formula: &'f Formula,
    around: &Surroundings,
    (wanted, price): (&Wanted, Option<Decimal>),
    past: Option<&[Said]>,
) -> Result<Costing<'f>, Failure> {
    let costs = cost::cost(formula, &foresee(formula, around), &book.prices, &book.settings);
    let costs = costs.ok_or_else(|| {
        Failure::new("the book states no prices")
            .hint("write them into prices.toml, or bring them in: wellproved import prices FILE.csv --book BOOK")
    })?;
    let costs = costs.with_hands(plan::hands(formula), &book.prices);
    let in_pieces = formula.components.iter().find(|component| component.yields.pieces.is_some());
    let sale = prices(&costs, wanted, price);
    let past = past.map(|past| Prices { packs: gathered(past), ..book.prices.clone() });
    let history = cost::history(formula, past.as_ref().unwrap_or(&book.prices));
    let paid = past.map(|past| paid(formula, &past)).unwrap_or_default();
    let piece = in_pieces.map_or("piece", |component| component.yields.piece.0.as_str());
    Ok(Costing { title: &formula.head.title, piece, cost: costs, sale, history, paid })
}

/// A share below the whole.
fn below_all(text: &str, name: &str) -> Result<Fraction, Failure> {
    let share = percent(text)?;
    if share < Fraction::WHOLE {
        return Ok(share);
    }
    Err(Failure::new(format!("“{text}” is all of it or more")).hint(format!("write --{name} \"30 %\"")))
}
