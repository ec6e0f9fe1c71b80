//! The press: a form, its data and four fonts, and nothing else of the world.

use crate::{Form, Sheet, Size};
use serde_json::{Value, json};
use std::fmt;
use std::sync::LazyLock;
use typst::diag::{FileError, FileResult, SourceDiagnostic};
use typst::foundations::{Bytes, Datetime, Duration, Smart};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};

/// Why nothing could be printed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault(String);

/// What the form says where a label does not fit.
const NO_ROOM: &str = "no room";

impl Fault {
    /// Whether a label does not fit in letters as large as it must have.
    #[must_use]
    pub fn is_for_want_of_room(&self) -> bool {
        self.0.contains(NO_ROOM)
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "it could not be set in type: {}", self.0)
    }
}

impl std::error::Error for Fault {}

/// Prints a form on sheets of a size: a PDF that carries its fonts, can be searched and is tagged.
///
/// It keeps to PDF/UA-1, unless a text has a sign that no font of the house can show: that stays in the text, and
/// a box stands for it.
///
/// # Errors
/// [`Fault`] says what of the form could not be filled from the data.
pub fn pdf(form: Form, size: Size, data: &Value) -> Result<Vec<u8>, Fault> {
    let (width, height) = size.millimetres();
    let data = json!({ "width": width, "height": height, "small": size == Size::Index, "data": data });
    let press = Press::new(form, &data);
    let document = typst::compile::<PagedDocument>(&press).output.map_err(|found| fault(&found))?;
    let strict = PdfStandards::new(&[PdfStandard::Ua_1]).map_err(|why| Fault(why.message().to_string()))?;
    let print = |standards: PdfStandards| typst_pdf::pdf(&document, &options(standards));
    print(strict).or_else(|_| print(PdfStandards::default())).map_err(|found| fault(&found))
}

/// Prints labels on a sheet of them: `places` says which of the words' labels stands at each place, from the first of
/// the first sheet on; none leaves it empty.
///
/// # Errors
/// As [`pdf`]; [`Fault::is_for_want_of_room`] where a label does not fit in letters as large as it must have.
pub fn labels(sheet: Sheet, places: &[Option<usize>], words: &Value) -> Result<Vec<u8>, Fault> {
    let ((left, top), (across, down)) = (sheet.begins(), sheet.places);
    let mut words = words.clone();
    words["places"] = json!(places);
    words["sheet"] = json!({
        "left": left, "top": top, "across": across, "down": down, "wide": sheet.label.0, "high": sheet.label.1,
        "step": sheet.label.0 + sheet.gap,
    });
    pdf(Form::Labels, sheet.size, &words)
}

fn options(standards: PdfStandards) -> PdfOptions {
    PdfOptions { standards, creator: Smart::Custom(Some("Wellproved".into())), ..PdfOptions::default() }
}

fn fault(found: &[SourceDiagnostic]) -> Fault {
    let told: Vec<String> = found.iter().map(|one| one.message.to_string()).collect();
    Fault(told.join("; "))
}

/// Libertinus Serif under the Open Font License, which stands beside the files.
static FONTS: LazyLock<Vec<Font>> = LazyLock::new(|| {
    let files: [&'static [u8]; 4] = [
        include_bytes!("../fonts/LibertinusSerif-Regular.otf"),
        include_bytes!("../fonts/LibertinusSerif-Italic.otf"),
        include_bytes!("../fonts/LibertinusSerif-Semibold.otf"),
        include_bytes!("../fonts/LibertinusSerif-Bold.otf"),
    ];
    files.into_iter().filter_map(|file| Font::new(Bytes::new(file), 0)).collect()
});
static BOOK: LazyLock<LazyHash<FontBook>> = LazyLock::new(|| LazyHash::new(FontBook::from_fonts(&*FONTS)));
static LIBRARY: LazyLock<LazyHash<Library>> = LazyLock::new(|| LazyHash::new(Library::default()));

/// All that a form can see.
struct Press {
    main: Source,
    shared: Source,
    data: (FileId, Bytes),
}

impl Press {
    fn new(form: Form, data: &Value) -> Self {
        Self {
            main: Source::new(id("form.typ"), form.text().to_owned()),
            shared: Source::new(id("house.typ"), include_str!("../forms/house.typ").to_owned()),
            data: (id("data.json"), Bytes::from_string(data.to_string())),
        }
    }
}

/// A file of the press by its name.
fn id(name: &str) -> FileId {
    let path = VirtualPath::new(name).unwrap_or_else(|_| unreachable!("the press names its own files"));
    RootedPath::new(VirtualRoot::Project, path).intern()
}

impl World for Press {
    fn library(&self) -> &LazyHash<Library> {
        &LIBRARY
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &BOOK
    }

    fn main(&self) -> FileId {
        self.main.id()
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        [&self.main, &self.shared].into_iter().find(|one| one.id() == id).cloned().ok_or(FileError::AccessDenied)
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        if id == self.data.0 { Ok(self.data.1.clone()) } else { Err(FileError::AccessDenied) }
    }

    fn font(&self, index: usize) -> Option<Font> {
        FONTS.get(index).cloned()
    }

    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}
