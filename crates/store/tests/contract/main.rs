//! The contract of a store, held by SQLite and by PostgreSQL alike; the latter where `TEST_DATABASE_URL` names a
//! server on which schemas may be made.
#![allow(clippy::disallowed_methods, clippy::disallowed_types)] // Tests open files as the world does.

mod damage;
mod editions;
mod gathered;
mod killed;
mod records;
mod revisions;
mod strokes;
mod tastings;

use jiff::Timestamp;
use std::future::Future;
use std::sync::atomic::{AtomicU32, Ordering};
use store::{Address, Kind, Saving, Store};
use tempfile::TempDir;

/// Runs a test's waiting.
fn wait<T>(future: impl Future<Output = T>) -> T {
    tokio::runtime::Builder::new_current_thread().enable_all().build().expect("a runtime").block_on(future)
}

/// Where stores of a test may be; the folder goes when it is dropped.
struct Places {
    folder: TempDir,
    server: Option<String>,
}

impl Places {
    fn new() -> Self {
        Self { folder: tempfile::tempdir().expect("a folder"), server: std::env::var("TEST_DATABASE_URL").ok() }
    }

    fn file(&self, name: &str) -> Address {
        Address::File(self.folder.path().join(name))
    }

    /// An empty place on every database there is.
    async fn all(&self, name: &str) -> Vec<Address> {
        let mut all = vec![self.file(&format!("{name}.sqlite"))];
        if let Some(server) = &self.server {
            all.push(Address::Server(schema(server, name).await));
        }
        all
    }
}

/// An empty schema of its own on the server.
async fn schema(server: &str, name: &str) -> String {
    static NEXT: AtomicU32 = AtomicU32::new(0);
    let name = format!("test_{}_{}_{name}", std::process::id(), NEXT.fetch_add(1, Ordering::Relaxed));
    sqlx::any::install_default_drivers();
    let pool = sqlx::AnyPool::connect(server).await.expect("the server");
    sqlx::query(sqlx::AssertSqlSafe(format!("CREATE SCHEMA {name}"))).execute(&pool).await.expect("a schema");
    pool.close().await;
    format!("{server}?options=-csearch_path%3D{name}")
}

/// Runs a test on an empty store of every database there is.
fn on_each<F: Future<Output = ()>>(name: &str, test: impl Fn(Store, Address) -> F) {
    wait(async {
        let places = Places::new();
        for address in places.all(name).await {
            let store = Store::open(&address).await.unwrap_or_else(|why| panic!("{}: {why}", address.shown()));
            test(store, address).await;
        }
    });
}

/// A formula that is to be saved.
fn formula<'s>(name: &'s str, text: &'s str) -> Saving<'s> {
    Saving { kind: Kind::Formula, name, text, note: "", by: "", at: at(0), from: None }
}

/// So many seconds after a fixed moment.
fn at(second: i64) -> Timestamp {
    Timestamp::from_second(1_795_600_000 + second).expect("a time")
}
