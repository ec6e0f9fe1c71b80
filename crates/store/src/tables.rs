//! The tables, step by step: each version of the program adds a step and alters none.

use crate::StoreFault;
use sqlx::AnyPool;
use sqlx::migrate::{MigrateError, Migration, MigrationType, Migrator};

/// A step: its number, what it brings, and its statements for SQLite and for PostgreSQL.
type Step = (i64, &'static str, &'static str, &'static str);

/// Every step, in order.
pub const STEPS: &[Step] = &[
    (1, "revisions and editions", include_str!("tables/sqlite/1.sql"), include_str!("tables/postgres/1.sql")),
    (2, "sittings and answers", include_str!("tables/sqlite/2.sql"), include_str!("tables/postgres/2.sql")),
    (3, "strokes", include_str!("tables/sqlite/3.sql"), include_str!("tables/postgres/3.sql")),
    (4, "prices and figures", include_str!("tables/sqlite/4.sql"), include_str!("tables/postgres/4.sql")),
];

/// Brings the tables of a database up to the last step.
pub async fn build(pool: &AnyPool, is_postgres: bool, steps: &[Step]) -> Result<(), StoreFault> {
    let migration = |(number, what, sqlite, postgres): &Step| {
        let text = if is_postgres { *postgres } else { *sqlite };
        Migration::new(*number, (*what).into(), MigrationType::Simple, sqlx::SqlSafeStr::into_sql_str(text), false)
    };
    match Migrator::with_migrations(steps.iter().map(migration).collect()).run(pool).await {
        Ok(()) => Ok(()),
        Err(MigrateError::VersionMissing(_) | MigrateError::VersionMismatch(_)) => Err(StoreFault::TooNew),
        Err(MigrateError::Execute(error) | MigrateError::ExecuteMigration(error, _)) => Err(error.into()),
        Err(other) => Err(StoreFault::Refused(other.to_string())),
    }
}
