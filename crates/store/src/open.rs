//! Opening a store: where it is, how it is set up, and whether it is sound.

use crate::{StoreFault, tables};
use sqlx::any::AnyPoolOptions;
use sqlx::{AnyConnection, AnyPool, Connection, Executor, Row};
use std::path::{Path, PathBuf};
use std::time::Duration;

/// Where a store is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Address {
    /// A file of its own, made where there is none.
    File(PathBuf),
    /// A PostgreSQL server: "postgres://…".
    Server(String),
}

impl Address {
    /// Where it is, without a password.
    #[must_use]
    pub fn shown(&self) -> String {
        match self {
            Self::File(path) => path.display().to_string(),
            Self::Server(url) => match (url.split_once("://"), url.rsplit_once('@')) {
                (Some((scheme, _)), Some((_, place))) => format!("{scheme}://{place}"),
                _ => url.clone(),
            },
        }
    }

    fn url(&self) -> String {
        match self {
            // Signs that mean something in an address are written out.
            Self::File(path) => {
                let plain = |byte: &u8| byte.is_ascii_alphanumeric() || b"/._-~".contains(byte);
                let text = path.to_string_lossy();
                let escaped: String = text
                    .bytes()
                    .map(|byte| if plain(&byte) { char::from(byte).to_string() } else { format!("%{byte:02X}") })
                    .collect();
                format!("sqlite://{escaped}?mode=rwc")
            }
            Self::Server(url) => url.clone(),
        }
    }
}

/// A book's memory.
#[derive(Clone, Debug)]
pub struct Store {
    pub(crate) pool: AnyPool,
    pub(crate) address: Address,
}

/// How long a database may take to answer before it counts as away.
const PATIENCE: Duration = Duration::from_secs(5);
/// A few at once are enough for a team; SQLite lets one write at a time.
const CONNECTIONS: u32 = 8;

impl Store {
    /// Opens a store, makes its tables or brings them up to date, and checks that it is sound.
    ///
    /// # Errors
    /// [`StoreFault`] says whether it is away, damaged, too new, or refuses.
    pub async fn open(address: &Address) -> Result<Self, StoreFault> {
        sqlx::any::install_default_drivers();
        let is_file = matches!(address, Address::File(_));
        let options = AnyPoolOptions::new().max_connections(CONNECTIONS).acquire_timeout(PATIENCE).after_connect(move |connection, _| {
            Box::pin(async move {
                if is_file {
                    // What is acknowledged has reached the disk; a reader never waits for a writer.
                    connection
                        .execute("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON; PRAGMA secure_delete = ON; PRAGMA busy_timeout = 5000;")
                        .await?;
                }
                Ok(())
            })
        });
        reached(address).await.map_err(|error| away(address, &error))?;
        let pool = options.connect(&address.url()).await.map_err(|error| away(address, &error))?;
        let store = Self { pool, address: address.clone() };
        store.sound().await?;
        tables::build(&store.pool, !is_file, tables::STEPS).await?;
        store.gather_if_old().await?;
        Ok(store)
    }

    /// Asks the database whether it is sound.
    ///
    /// # Errors
    /// [`StoreFault::Damaged`] with what the database's own check says.
    pub async fn sound(&self) -> Result<(), StoreFault> {
        if matches!(self.address, Address::Server(_)) {
            self.pool.execute("SELECT 1").await.map_err(|error| away(&self.address, &error))?;
            return Ok(());
        }
        let rows = sqlx::query("PRAGMA quick_check(5)").fetch_all(&self.pool).await;
        let rows = rows.map_err(|error| StoreFault::Damaged(error.to_string()))?;
        let said: Vec<String> = rows.iter().filter_map(|row| row.try_get::<String, _>(0).ok()).collect();
        if said == ["ok"] { Ok(()) } else { Err(StoreFault::Damaged(said.join("; "))) }
    }

    /// Which database it is, and of which version.
    ///
    /// # Errors
    /// [`StoreFault`] where the store is away.
    pub async fn database(&self) -> Result<String, StoreFault> {
        let (name, asked) = match self.address {
            Address::File(_) => ("SQLite", "SELECT sqlite_version()"),
            Address::Server(_) => ("PostgreSQL", "SELECT CAST(current_setting('server_version') AS TEXT)"),
        };
        let version: String = sqlx::query(asked).fetch_one(&self.pool).await?.try_get(0)?;
        Ok(format!("{name} {version}"))
    }

    /// Copies a store that is in use, whole, into a new file.
    ///
    /// # Errors
    /// [`StoreFault`]; a server has its own ways to be backed up.
    pub async fn back_up(&self, into: &Path) -> Result<(), StoreFault> {
        if matches!(self.address, Address::Server(_)) {
            return Err(StoreFault::NotHere("back the server up with pg_dump, or export the store"));
        }
        sqlx::query("VACUUM INTO $1").bind(into.to_string_lossy().into_owned()).execute(&self.pool).await?;
        Ok(())
    }

    /// Waits until everything is written, and closes.
    pub async fn close(self) {
        self.pool.close().await;
    }
}

/// Whether it answers at all, asked once: a pool would ask again and again.
async fn reached(address: &Address) -> Result<(), sqlx::Error> {
    let mut one = AnyConnection::connect(&address.url()).await?;
    if matches!(address, Address::File(_)) {
        one.execute("PRAGMA schema_version").await?;
    }
    one.close().await
}

fn away(address: &Address, error: &sqlx::Error) -> StoreFault {
    let why = error.to_string();
    // A file that is no database answers, but not with sense.
    if why.contains("not a database") || why.contains("malformed") {
        return StoreFault::Damaged(why);
    }
    StoreFault::Away { place: address.shown(), why }
}
