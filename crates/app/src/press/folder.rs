//! The folder that readers see: an edition is written beside it, and moved into it once it is whole.
//!
//! Each move replaces one file at once. Pages come before the lists that lead to them, what is gone goes last, and
//! files that this program did not write are neither replaced nor removed.

use super::Files;
use super::inputs::{Hash, hash, stamp};
use super::record::{Left, OWN, Record};
use crate::failure::Failure;
use crate::files;
use std::collections::BTreeMap;
use std::fs::{self, File, TryLockError};
use std::path::{Path, PathBuf};
use std::sync::Mutex;

/// A folder of pages with the next edition in the making.
pub struct Folder {
    out: PathBuf,
    old: BTreeMap<String, Left>,
    staged: Mutex<BTreeMap<String, Hash>>,
    /// Held as long as the press runs.
    _lock: File,
}

impl Folder {
    /// Opens the folder and keeps others from publishing into it at the same time.
    pub fn open(out: &Path, record: &Record) -> Result<Self, Failure> {
        files::can_be_folder(out).map_err(|failure| failure.hint("name another folder with --out"))?;
        let own = out.join(OWN);
        let failed = |error: std::io::Error| Failure::file("write into the folder", out, &error);
        fs::create_dir_all(&own).map_err(failed)?;
        let lock = File::create(own.join("lock")).map_err(failed)?;
        match lock.try_lock() {
            Ok(()) => {}
            Err(TryLockError::WouldBlock) => {
                let message = format!("another wellproved is publishing into {}", out.display());
                return Err(Failure::new(message).hint("wait until it is done, or end its --watch"));
            }
            // Some file systems know no locks; moves are whole there all the same.
            Err(TryLockError::Error(_)) => {}
        }
        let next = own.join("next");
        // What an interrupted run had not yet moved.
        if next.exists() {
            fs::remove_dir_all(&next).map_err(failed)?;
        }
        Ok(Self { out: out.to_owned(), old: record.files.clone(), staged: Mutex::default(), _lock: lock })
    }

    /// Whether a file lies there as this program left it.
    pub fn is_as_left(&self, name: &str) -> bool {
        self.old.get(name).is_some_and(|left| is_as(&self.out.join(name), left))
    }

    /// Writes a file of the next edition beside the folder, unless it lies there already.
    pub fn stage(&self, name: &str, bytes: &[u8]) -> Result<(), Failure> {
        let hash = hash(bytes);
        if self.old.get(name).is_some_and(|left| left.bytes == hash) && self.is_as_left(name) {
            return Ok(());
        }
        let draft = self.draft(name);
        let failed = |error: std::io::Error| Failure::file("write", &draft, &error);
        if let Some(folder) = draft.parent() {
            fs::create_dir_all(folder).map_err(failed)?;
        }
        fs::write(&draft, bytes).map_err(failed)?;
        if let Ok(mut staged) = self.staged.lock() {
            staged.insert(name.to_owned(), hash);
        }
        Ok(())
    }

    fn draft(&self, name: &str) -> PathBuf {
        self.out.join(OWN).join("next").join(name)
    }

    /// Moves the next edition into its place and removes what is gone. `next` names every file of it.
    pub fn put_in_place(&mut self, mut next: Record) -> Result<Files, Failure> {
        let staged = self.staged.lock().map(|staged| staged.clone()).unwrap_or_default();
        let gone: Vec<String> = self.old.keys().filter(|name| !next.files.contains_key(*name)).cloned().collect();
        let written = staged.len();
        let unchanged = next.files.len() - written;
        for name in staged.keys() {
            self.may_replace(name)?;
        }
        if staged.is_empty() && gone.is_empty() {
            next.write_if_changed(&self.out)?;
            return Ok(Files { written, unchanged, removed: 0, left: Vec::new() });
        }
        self.claim(&staged)?;
        let mut order: Vec<(&String, &Hash)> = staged.iter().collect();
        order.sort_by_key(|(name, _)| (rank(name), *name));
        for (name, bytes) in order {
            let place = self.out.join(name);
            let failed = |error: std::io::Error| Failure::file("write", &place, &error);
            if let Some(folder) = place.parent() {
                fs::create_dir_all(folder).map_err(failed)?;
            }
            fs::rename(self.draft(name), &place).map_err(failed)?;
            next.files.insert(name.clone(), Left { bytes: *bytes, stamp: stamp(Some(&place)) });
        }
        let (mut removed, mut left) = (0, Vec::new());
        for name in gone {
            let place = self.out.join(&name);
            if self.is_as_left(&name) {
                fs::remove_file(&place).map_err(|error| Failure::file("remove", &place, &error))?;
                removed += 1;
            } else if place.exists() {
                left.push(name);
            }
        }
        // Only empty folders go.
        for folder in [super::pictures::FOLDER, super::papers::FOLDER] {
            let _ = fs::remove_dir(self.out.join(folder));
        }
        let _ = fs::remove_dir_all(self.out.join(OWN).join("next"));
        next.write(&self.out)?;
        Ok(Files { written, unchanged, removed, left })
    }

    /// Notes what is about to be moved, so that a run that is interrupted leaves nothing that the next one does not know.
    fn claim(&self, staged: &BTreeMap<String, Hash>) -> Result<(), Failure> {
        let mut claims = Record::read(&self.out);
        let claim = |(name, bytes): (&String, &Hash)| (name.clone(), Left { bytes: *bytes, stamp: String::new() });
        claims.files.extend(staged.iter().map(claim));
        claims.write(&self.out)
    }

    /// Refuses to write over a file that this program did not write.
    fn may_replace(&self, name: &str) -> Result<(), Failure> {
        let place = self.out.join(name);
        if place.is_dir() {
            return Err(Failure::new(format!("{} is a folder: no file can take its place", place.display()))
                .hint("move it away, or name another folder with --out"));
        }
        let is_known = self.old.contains_key(name) || !place.exists() || publish::is_own(&fs::read(&place).unwrap_or_default());
        if is_known || fs::read(self.draft(name)).ok() == fs::read(&place).ok() {
            return Ok(());
        }
        Err(Failure::new(format!("{} is there already and is no page of this program", place.display()))
            .hint("move it away, or name another folder with --out"))
    }
}

/// Whether a file is as it was left; where only its time has changed, its bytes tell.
fn is_as(file: &Path, left: &Left) -> bool {
    let now = stamp(Some(file));
    !now.is_empty() && (now == left.stamp || fs::read(file).is_ok_and(|bytes| hash(&bytes) == left.bytes))
}

/// What nothing leads to yet comes first: pictures, then pages, then lists, the index, and what goes abroad.
fn rank(name: &str) -> usize {
    match name {
        _ if name.contains('/') => 0,
        "tags.html" | "ingredients.html" => 2,
        "index.html" => 3,
        "feed.xml" | "sitemap.xml" => 4,
        _ => 1,
    }
}
