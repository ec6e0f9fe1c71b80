//! What dissolves: molar masses and Norrish constants.

use crate::entry::{self, Origin};
use quantity::Mass;
use std::sync::LazyLock;

/// The entries of `data/solutes.toml`, as text.
pub const DATA: &str = include_str!("../../../data/solutes.toml");

/// A dissolved stuff without charge: a sugar, glycerol or a polyol.
#[derive(Clone, Debug, PartialEq)]
pub struct Solute {
    /// Its name.
    pub name: String,
    /// Molar mass in g/mol.
    pub molar_mass: f64,
    /// The constant `K` of Norrish's equation.
    pub norrish: f64,
    /// Its square root, which mixtures add.
    pub norrish_root: f64,
    /// Where the constant comes from.
    pub origin: Origin,
}

/// A mass of something dissolved.
#[derive(Clone, Copy, Debug)]
pub struct Dissolved<'a> {
    /// What it is.
    pub solute: &'a Solute,
    /// How much of it.
    pub mass: Mass,
}

static SOLUTES: LazyLock<Vec<Solute>> = LazyLock::new(|| {
    entry::read(DATA, "solute", |row| {
        let norrish = row.number("norrish")?;
        Some(Solute {
            name: row.word("name")?,
            molar_mass: row.number("molar_mass")?,
            norrish,
            norrish_root: libm::sqrt(norrish),
            origin: row.origin()?,
        })
    })
});

/// Every solute.
#[must_use]
pub fn all() -> &'static [Solute] {
    &SOLUTES
}

/// The solute of that name.
#[must_use]
pub fn named(name: &str) -> Option<&'static Solute> {
    SOLUTES.iter().find(|solute| solute.name == name)
}
