//! Photographs on their way into an edition.

use super::folder::Folder;
use super::inputs::hash;
use crate::failure::Failure;
use crate::photographs;
use formula::read::{Photograph, PictureKeeping};
use publish::picture::{Picture, Placed, Print, WIDTH_WITHIN, WIDTHS};
use std::path::Path;
use std::sync::Mutex;

/// Where pictures lie that stand beside their pages.
pub const FOLDER: &str = "pictures";

/// One picture is developed at a time: a camera's file takes a hundred times its size in memory.
static DARKROOM: Mutex<()> = Mutex::new(());

/// A photograph as its page shows it, with the files that it is kept in; none if it cannot be shown.
pub fn ready(
    book: &Path,
    formula: &str,
    photograph: &Photograph,
    keeping: PictureKeeping,
    folder: &Folder,
) -> Result<(Option<Picture>, Vec<String>), Failure> {
    let widths: &[u32] = match keeping {
        PictureKeeping::Embedded => &WIDTH_WITHIN,
        PictureKeeping::Beside => &WIDTHS,
    };
    let guard = DARKROOM.lock();
    let Some(developed) = photographs::read(book, photograph) else { return Ok((None, Vec::new())) };
    let prints = developed.prints(widths);
    drop(guard);
    let (mut files, mut placed) = (Vec::new(), Vec::new());
    for print in prints {
        let source = match keeping {
            PictureKeeping::Embedded => print.within(),
            PictureKeeping::Beside => {
                let name = name_of(formula, &print);
                folder.stage(&name, &print.bytes)?;
                files.push(name.clone());
                name
            }
        };
        placed.push(Placed { width: print.width, height: print.height, source });
    }
    Ok((Some(Picture { alt: photograph.alt.clone(), prints: placed }), files))
}

/// The name tells the content too, so that a page never meets another's picture under its own name.
fn name_of(formula: &str, print: &Print) -> String {
    format!("{FOLDER}/{formula}-{}-{:08x}.{}", print.width, hash(&print.bytes) & 0xffff_ffff, print.ending())
}
