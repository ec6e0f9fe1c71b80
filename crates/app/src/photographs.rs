//! Photographs on the disk: inside the book, of a kind that pages show, whole, and not too large.

use crate::failure::Failure;
use crate::files;
use formula::read::Photograph;
use formula::{Diagnostic, fault};
use publish::picture::{Developed, Print, develop};
use std::fs;
use std::path::{Path, PathBuf};

/// The largest file that is read as a picture.
const MOST_BYTES: u64 = 32 * 1_048_576;

/// What keeps a photograph from being shown, if anything does.
pub fn judge(book: &Path, photograph: &Photograph) -> Option<Diagnostic> {
    let (message, hint) = developed(book, photograph).err()?;
    Some(fault::PHOTOGRAPH_NOT_USABLE.at(photograph.place.clone(), message).hint(hint))
}

/// A photograph read whole, if it can be shown.
pub fn read(book: &Path, photograph: &Photograph) -> Option<Developed> {
    developed(book, photograph).ok()
}

fn developed(book: &Path, photograph: &Photograph) -> Result<Developed, (String, &'static str)> {
    let path = usable(book, photograph)?;
    let file = &photograph.file;
    let bytes = fs::read(path).map_err(|_| missing(file))?;
    develop(&bytes).map_err(|reason| (format!("the picture “{file}” {reason}"), "save it once more as JPEG, 2000 dots across"))
}

fn missing(file: &str) -> (String, &'static str) {
    (format!("the picture “{file}” is not in the book's folder"), "put it there, or write its path within the book")
}

/// The file of a photograph, or why it cannot be used and what to do.
fn usable(book: &Path, photograph: &Photograph) -> Result<PathBuf, (String, &'static str)> {
    let file = &photograph.file;
    let book = fs::canonicalize(book).map_err(|_| missing(file))?;
    let path = fs::canonicalize(book.join(file)).map_err(|_| missing(file))?;
    if !path.starts_with(&book) || !path.is_file() {
        return Err(missing(file));
    }
    let size = fs::metadata(&path).map_err(|_| missing(file))?.len();
    if size > MOST_BYTES {
        let megabytes = size as f64 / 1_048_576.0;
        let most = MOST_BYTES / 1_048_576;
        return Err((
            format!("the picture “{file}” is {megabytes:.1} MB large; at most {most} MB are read"),
            "save it smaller: 2000 dots across are plenty",
        ));
    }
    Ok(path)
}

/// A trial's photograph is kept this wide: enough to count the holes of a crumb.
const WIDTH_OF_TRIAL: [u32; 1] = [1600];

/// A photograph for a trial, made smaller and freed of what the camera noted.
pub fn of_trial(file: &Path) -> Result<Print, Failure> {
    let failed = |error: std::io::Error| Failure::file("read", file, &error);
    let meta = fs::metadata(file).map_err(failed)?;
    if !meta.is_file() || meta.len() > MOST_BYTES {
        let failure = Failure::new(format!("{} is no picture of at most {} MB", file.display(), MOST_BYTES / 1_048_576));
        return Err(failure.hint("save it smaller: 2000 dots across are plenty"));
    }
    print_of_trial(&fs::read(file).map_err(failed)?, &file.display().to_string())
}

/// The same of a picture's bytes, `called` so in messages.
pub fn print_of_trial(bytes: &[u8], called: &str) -> Result<Print, Failure> {
    let hint = "save it once more as JPEG, 2000 dots across";
    let developed = develop(bytes).map_err(|why| Failure::new(format!("the picture “{called}” {why}")).hint(hint))?;
    let print = developed.prints(&WIDTH_OF_TRIAL).into_iter().next();
    print.ok_or_else(|| Failure::new(format!("the picture “{called}” cannot be kept")).hint(hint))
}

/// A name for a photograph beside its trial: that of the trial and what is shown; one that has the same picture already
/// keeps it.
pub fn free_name(trial: &Path, shows: Option<&str>, print: &Print) -> Result<String, Failure> {
    let stem = trial.file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default();
    let shown = formula::ingredient::plain_name(shows.unwrap_or("photograph"));
    let shown = if shown.is_empty() { "photograph".to_owned() } else { shown };
    for number in 1..1000 {
        let more = if number == 1 { String::new() } else { format!("-{number}") };
        let name = format!("{stem}-{shown}{more}.{}", print.ending());
        match fs::read(trial.with_file_name(&name)) {
            Ok(there) if there != print.bytes => {}
            _ => return Ok(name),
        }
    }
    Err(Failure::new("the trial has a thousand photographs of that already"))
}

/// Keeps a photograph beside its trial.
pub fn keep_beside(trial: &Path, name: &str, print: &Print) -> Result<(), Failure> {
    files::write(&trial.with_file_name(name), &print.bytes)
}
