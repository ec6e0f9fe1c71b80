//! Prices and figures in rows: those of the texts, whichever way the texts came in, and made anew from them.

use crate::{at, on_each};
use sqlx::Executor;
use store::{Address, Kind, PriceTold, Saving, Store};

const FIRST: &str = "[[price]]\nof = \"rye\"\npack = \"5 kg\"\ncosts = \"8.90 EUR\"\non = 2026-08-20\nfrom = \"the mill\"\n\n\
    [[price]]\nof = \"egg-whole\"\npack = 10\ncosts = \"2 EUR\"\nedible = \"88.5 %\"\n";
const SECOND: &str = "[[price]]\nof = \"rye\"\npack = \"5 kg\"\ncosts = \"9.40 EUR\"\non = 2026-10-14\n\n[[price]]\nof = \"salt\"\ncosts = \"broken\"\n";
const TRIAL: &str = "title = \"Rye\"\nformula = \"rye-tin\"\ndate = 2026-10-17\nnotes = [\"Good.\"]\n\n[[mix]]\nstage = \"levain\"\ntemperature = \"26.5 °C\"\n\n\
    [[rise]]\nstage = \"levain\"\nstep = \"ferment\"\nreading = [{ after = \"13 h\", ph = 3.9 }]\nlasted = \"13 h\"\n";

fn prices<'s>(text: &'s str, second: i64) -> Saving<'s> {
    Saving { kind: Kind::Prices, name: "prices", text, note: "", by: "", at: at(second), from: None }
}

fn trial<'s>(name: &'s str, text: &'s str) -> Saving<'s> {
    Saving { kind: Kind::Trial, name, text, note: "", by: "", at: at(0), from: None }
}

async fn filled(store: &Store) {
    store.save(&prices(FIRST, 0)).await.expect("saved");
    store.save(&prices(SECOND, 60)).await.expect("saved");
    store.save(&trial("one", TRIAL)).await.expect("saved");
    store.save(&trial("nought", "formula = \"rye-tin\"\n[[mix]]\nstage = \"a\\u0000b\"\nph = 4.1\n")).await.expect("saved");
}

async fn rows(store: &Store) -> (Vec<PriceTold>, Vec<(String, String, String)>) {
    let figures = store.figures("rye-tin").await.expect("figures");
    let figures = figures.into_iter().map(|one| (format!("{} {}", one.trial, one.on), one.figure, one.value));
    (store.prices().await.expect("prices"), figures.collect())
}

#[test]
fn every_price_that_was_saved_is_told_and_the_latest_figures_of_each_trial() {
    on_each("gathered", |store, _| async move {
        filled(&store).await;
        let (prices, figures) = rows(&store).await;
        let told: Vec<_> =
            prices.iter().map(|one| (one.revision, one.ingredient.as_str(), one.costs.as_str(), one.on.as_str())).collect();
        assert_eq!(
            told,
            [(1, "rye", "8.90 EUR", "2026-08-20"), (1, "egg-whole", "2 EUR", ""), (2, "rye", "9.40 EUR", "2026-10-14")]
        );
        assert_eq!((prices[0].from.as_str(), prices[1].edible.as_str(), prices[2].at), ("the mill", "88.5 %", at(60)));
        let expected = [
            ("nought ", "a b/mix/ph", "4.1"),
            ("one 2026-10-17", "levain/mix/temperature", "26.5 °C"),
            ("one 2026-10-17", "levain/ferment/ph after 13 h", "3.9"),
            ("one 2026-10-17", "levain/ferment/lasted", "13 h"),
        ];
        assert_eq!(figures, expected.map(|(one, two, three)| (one.to_owned(), two.to_owned(), three.to_owned())));
        store.save(&trial("one", "formula = \"rye-tin\"\n[[mix]]\nstage = \"levain\"\nph = 4.4\n")).await.expect("saved");
        assert_eq!(rows(&store).await.1.iter().filter(|(one, ..)| one.starts_with("one")).count(), 1, "the latest counts");
        assert_eq!(store.figures("wheat").await.expect("figures"), []);
    });
}

#[test]
fn rows_are_made_anew_from_the_texts_and_go_along_with_them() {
    on_each("anew", |store, address| async move {
        filled(&store).await;
        let (before, records) = (rows(&store).await, store.records().await.expect("records"));
        assert_eq!(store.gather().await.expect("gathered"), (3, 4));
        assert_eq!(rows(&store).await, before);
        assert_eq!(store.records().await.expect("records"), records, "they are no part of what goes out");
        // Lost, or made by another reading: the next who opens it makes them anew.
        let pool = pool(&address).await;
        pool.execute("DELETE FROM price").await.expect("gone");
        pool.execute("UPDATE gathered SET reading = 0").await.expect("old");
        pool.close().await;
        let again = Store::open(&address).await.expect("a store");
        assert_eq!(rows(&again).await, before);
        let places = crate::Places::new();
        for into in places.all("copy").await {
            let into = Store::open(&into).await.expect("a store");
            into.read_records(&records).await.expect("read");
            assert_eq!(rows(&into).await, before);
            assert_eq!(into.records().await.expect("records"), records);
        }
    });
}

/// From every earlier form of the tables, filled as its program filled them.
#[test]
fn an_earlier_store_is_brought_up_to_date() {
    crate::wait(async {
        for known in 0..=3 {
            for address in crate::Places::new().all(&format!("earlier{known}")).await {
                let is_server = matches!(address, Address::Server(_));
                earlier(&address, is_server, known).await;
                let store = Store::open(&address).await.unwrap_or_else(|why| panic!("{known}, {}: {why}", address.shown()));
                if known > 0 {
                    assert_eq!(store.text(Kind::Prices, "prices", 1).await.expect("the text"), FIRST);
                    assert_eq!(rows(&store).await.0.len(), 2, "{known}, {}", address.shown());
                }
                store.save(&prices(SECOND, 60)).await.expect("saved");
                store.save(&trial("one", TRIAL)).await.expect("saved");
                assert_eq!(rows(&store).await.1.len(), 3);
                Store::open(&address).await.expect("once more");
            }
        }
    });
}

async fn pool(address: &Address) -> sqlx::AnyPool {
    sqlx::any::install_default_drivers();
    let url = match address {
        Address::File(path) => format!("sqlite://{}?mode=rwc", path.display()),
        Address::Server(url) => url.clone(),
    };
    sqlx::AnyPool::connect(&url).await.expect("a pool")
}

/// A store with the first steps alone, and prices saved in it.
async fn earlier(address: &Address, is_server: bool, known: usize) {
    let steps = [
        (include_str!("../../src/tables/sqlite/1.sql"), include_str!("../../src/tables/postgres/1.sql")),
        (include_str!("../../src/tables/sqlite/2.sql"), include_str!("../../src/tables/postgres/2.sql")),
        (include_str!("../../src/tables/sqlite/3.sql"), include_str!("../../src/tables/postgres/3.sql")),
    ];
    let pool = pool(address).await;
    let step = |(at, (sqlite, postgres)): (usize, &(&'static str, &'static str))| {
        let text = if is_server { *postgres } else { *sqlite };
        let kind = sqlx::migrate::MigrationType::Simple;
        sqlx::migrate::Migration::new(at as i64 + 1, "earlier".into(), kind, sqlx::SqlSafeStr::into_sql_str(text), false)
    };
    let steps = steps[..known].iter().enumerate().map(step).collect();
    sqlx::migrate::Migrator::with_migrations(steps).run(&pool).await.expect("the steps");
    if known > 0 {
        let hash = store::hash(FIRST);
        sqlx::query("INSERT INTO text (hash, body) VALUES ($1, $2)")
            .bind(&hash)
            .bind(FIRST)
            .execute(&pool)
            .await
            .expect("a text");
        let revision = "INSERT INTO revision (kind, name, number, hash, note, saved_by, saved_at) VALUES ('prices', 'prices', 1, $1, '', '', $2)";
        sqlx::query(revision).bind(&hash).bind(at(0).to_string()).execute(&pool).await.expect("a revision");
    }
    pool.close().await;
}
