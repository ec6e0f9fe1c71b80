//! Books and formulas on the disk: read into texts, written whole or not at all.

use crate::failure::Failure;
use crate::terminal;
use formula::source::{MOST_BYTES, MOST_FILES, Source, too_large};
use formula::{BookText, Diagnostic};
use std::fs;
use std::io::Write;
use std::path::{Component, Path, PathBuf};

/// The files at the head of a book's folder, and the folders in it.
const SETTINGS: [&str; 3] = ["book.toml", "prices.toml", "larder.toml"];
const PARTS: [&str; 5] = ["kitchens", "ingredients", "formulas", "trials", "tastings"];

/// A book as it was found on the disk.
pub struct Found {
    /// Its folder.
    pub folder: PathBuf,
    /// Its texts, file names relative to the folder.
    pub text: BookText,
    /// Files that are no text or too large.
    pub refused: Vec<Diagnostic>,
    /// The name of the one formula that was asked for, if it was a file.
    pub only: Option<String>,
}

/// Reads the book at a path: its folder, or one of its formula files.
pub fn find(path: &Path) -> Result<Found, Failure> {
    let found = find_if_any(path)?;
    if found.only.is_none() && !found.has_formulas() && found.refused.is_empty() {
        return Err(Failure::new(format!("{} holds no formulas", path.display()))
            .hint("a book has its formulas in formulas/*.toml; `wellproved new` writes a first one"));
    }
    Ok(found)
}

/// The same of a folder in which there may be no formula yet.
pub fn find_if_any(path: &Path) -> Result<Found, Failure> {
    let meta = fs::metadata(path).map_err(|error| {
        Failure::file("open", path, &error).hint("give the folder of a book, such as examples/saltmarsh, or one formula's file")
    })?;
    if meta.is_dir() {
        return read_book(path.to_owned(), None);
    }
    if !meta.is_file() {
        return Err(Failure::new(format!("{} is neither a folder nor a file of text", path.display())));
    }
    let file = fs::canonicalize(path).map_err(|error| Failure::file("open", path, &error))?;
    let only = file.file_stem().map(|stem| stem.to_string_lossy().into_owned());
    match book_above(&file) {
        Some(folder) => read_book(folder.to_owned(), only)?.with(&file),
        None => read_alone(&file, only),
    }
}

/// A formula file without a book around it.
fn read_alone(file: &Path, only: Option<String>) -> Result<Found, Failure> {
    let folder = file.parent().unwrap_or(Path::new(".")).to_owned();
    let mut found = Found { folder, text: BookText::default(), refused: Vec::new(), only };
    let name = file.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    found.read(file, format!("formulas/{name}"), &name)?;
    Ok(found)
}

fn read_book(folder: PathBuf, only: Option<String>) -> Result<Found, Failure> {
    let mut found = Found { folder: folder.clone(), text: BookText::default(), refused: Vec::new(), only };
    for name in SETTINGS {
        let file = folder.join(name);
        if file.is_file() {
            found.read(&file, name.to_owned(), name)?;
        }
    }
    for part in PARTS {
        found.read_folder(&folder.join(part), part)?;
    }
    // A bare folder of formulas is a book too.
    if !folder.join("formulas").is_dir() {
        found.read_folder_flat(&folder)?;
    }
    Ok(found)
}

impl Found {
    fn has_formulas(&self) -> bool {
        self.text.files.keys().any(|file| file.starts_with("formulas/"))
    }

    /// The book with a file that lies in its folder but not among its formulas: a revision kept elsewhere stands
    /// in the place of the formula of its name.
    fn with(mut self, file: &Path) -> Result<Self, Failure> {
        let Ok(inner) = file.strip_prefix(&self.folder) else { return Ok(self) };
        let is_of_the_book = PARTS.iter().chain(&SETTINGS).any(|part| inner.starts_with(part));
        if is_of_the_book {
            return Ok(self);
        }
        let name = file.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
        let shown = inner.to_string_lossy().replace('\\', "/");
        let is_same = |key: &str| key.starts_with("formulas/") && key.rsplit('/').next() == Some(&name);
        self.text.files.retain(|key, _| !is_same(key));
        self.read(file, format!("formulas/{name}"), &shown)?;
        Ok(self)
    }

    fn read_folder(&mut self, folder: &Path, part: &str) -> Result<(), Failure> {
        if let Some(reason) = left_out(folder) {
            remark_left_out(part, reason);
            return Ok(());
        }
        if !folder.is_dir() {
            return Ok(());
        }
        for path in listed(folder)? {
            let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
            let inner = format!("{part}/{name}");
            let is_text = path.extension().is_some_and(|end| end == "toml" || (end == "csv" && has_readings(part)));
            match left_out(&path) {
                Some(reason) if is_text || path.is_dir() => remark_left_out(&inner, reason),
                Some(_) => {}
                None if path.is_dir() => self.read_folder(&path, &inner)?,
                None if is_text => self.read(&path, inner.clone(), &inner)?,
                None => {}
            }
        }
        Ok(())
    }

    fn read_folder_flat(&mut self, folder: &Path) -> Result<(), Failure> {
        for path in listed(folder)? {
            let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
            if path.extension().is_none_or(|end| end != "toml") || SETTINGS.contains(&name.as_str()) || path.is_dir() {
                continue;
            }
            match left_out(&path) {
                Some(reason) => remark_left_out(&name, reason),
                None => self.read(&path, format!("formulas/{name}"), &name)?,
            }
        }
        Ok(())
    }

    /// Reads a file under its name in the book; `shown` is how faults call it.
    fn read(&mut self, path: &Path, key: String, shown: &str) -> Result<(), Failure> {
        if self.text.files.len() >= MOST_FILES {
            return Err(Failure::new(format!("the book has more than {MOST_FILES} files")).hint("split it into several books"));
        }
        let failed = |error: std::io::Error| Failure::file("read", path, &error);
        let size = fs::metadata(path).map_err(failed)?.len();
        if size > MOST_BYTES {
            self.refused.push(too_large(shown, size));
            return Ok(());
        }
        let checked = Source::from_bytes(shown, fs::read(path).map_err(failed)?);
        self.refused.extend(checked.diagnostics);
        if let Some(source) = checked.value {
            self.text.files.insert(key, source);
        }
        Ok(())
    }
}

/// Whether a folder's files may have readings beside them: a room's log, the course of a rise, the raw data of a tasting.
fn has_readings(part: &str) -> bool {
    matches!(part, "kitchens" | "trials" | "tastings") || part.starts_with("trials/")
}

/// Why an entry of a book's folder is not read: opening a pipe may wait for ever, and links to folders
/// may lead round in a circle. None for files and folders, and for what is not there at all.
fn left_out(path: &Path) -> Option<&'static str> {
    let own = fs::symlink_metadata(path).ok()?;
    match fs::metadata(path) {
        Ok(meta) if meta.is_dir() => own.is_symlink().then_some("it is a link to a folder, and these are not followed"),
        Ok(meta) if meta.is_file() => None,
        Ok(_) => Some("it is no ordinary file"),
        Err(_) if own.is_symlink() => Some("it is a link that leads nowhere"),
        Err(_) => None,
    }
}

fn remark_left_out(shown: &str, reason: &str) {
    terminal::remark(&format!("{shown} is left out: {reason}"));
}

/// The entries of a folder in the order of their names.
fn listed(folder: &Path) -> Result<Vec<PathBuf>, Failure> {
    let entries = fs::read_dir(folder).map_err(|error| Failure::file("list", folder, &error))?;
    let mut paths: Vec<PathBuf> = entries.flatten().map(|entry| entry.path()).collect();
    paths.retain(|path| !path.file_name().is_some_and(|name| name.to_string_lossy().starts_with('.')));
    paths.sort();
    Ok(paths)
}

/// Refuses what cannot become a folder because it, or what it would lie in, is a file.
pub fn can_be_folder(path: &Path) -> Result<(), Failure> {
    match path.ancestors().find(|part| part.exists()) {
        Some(part) if !part.is_dir() => Err(Failure::new(format!("{} is a file, not a folder", part.display()))),
        _ => Ok(()),
    }
}

/// The folder of the book that a path lies in, as far up as formulas are looked for.
pub fn book_around(path: &Path) -> Option<PathBuf> {
    let full = std::path::absolute(path).ok()?;
    let mut plain = PathBuf::new();
    for part in full.components() {
        match part {
            Component::ParentDir => {
                plain.pop();
            }
            part => plain.push(part),
        }
    }
    book_above(&plain).map(Path::to_owned)
}

fn book_above(file: &Path) -> Option<&Path> {
    file.ancestors().skip(1).take(3).find(|folder| folder.join("book.toml").is_file())
}

/// Writes a file whole or not at all, its folder made if need be; what is there is replaced.
pub fn write(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    let draft = drafted(path, bytes)?;
    draft.persist(path).map(drop).map_err(|error| Failure::file("write", path, &error.error))
}

/// The same, on the disk itself before it counts as written.
pub fn write_to_last(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    let failed = |error: std::io::Error| Failure::file("write", path, &error);
    let draft = drafted(path, bytes)?;
    draft.as_file().sync_all().map_err(failed)?;
    draft.persist(path).map(drop).map_err(|error| Failure::file("write", path, &error.error))
}

/// The same, for the eyes of the folder's owner alone.
pub fn write_secret(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    let failed = |error: std::io::Error| Failure::file("write", path, &error);
    // A draft is readable by nobody else, and stays so where nothing else is said.
    let mut draft = tempfile::NamedTempFile::new_in(path.parent().unwrap_or(Path::new("."))).map_err(failed)?;
    draft.write_all(bytes).and_then(|()| draft.as_file().sync_all()).map_err(failed)?;
    draft.persist(path).map(drop).map_err(|error| Failure::file("write", path, &error.error))
}

/// Writes a new file whole or not at all; one that is there already, or has come there meanwhile, stays.
pub fn write_new(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    let draft = drafted(path, bytes)?;
    draft.persist_noclobber(path).map(drop).map_err(|error| Failure::file("write", path, &error.error))
}

/// A file's content beside its place, ready to be moved there.
fn drafted(path: &Path, bytes: &[u8]) -> Result<tempfile::NamedTempFile, Failure> {
    let failed = |error: std::io::Error| Failure::file("write", path, &error);
    let folder = path.parent().unwrap_or(Path::new("."));
    let into = |error: std::io::Error| Failure::file("write into the folder", folder, &error);
    fs::create_dir_all(folder).map_err(into)?;
    let mut draft = tempfile::NamedTempFile::new_in(folder).map_err(into)?;
    draft.write_all(bytes).map_err(failed)?;
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        let readable = fs::Permissions::from_mode(0o644);
        draft.as_file().set_permissions(readable).map_err(failed)?;
    }
    Ok(draft)
}
