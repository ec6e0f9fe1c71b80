//! A folder of its own, an empty environment, a fixed width: what a command prints is then the same everywhere.

use std::path::{Path, PathBuf};
use std::process::Command;
use tempfile::TempDir;

/// A place to run the program in.
pub struct Sandbox {
    folder: TempDir,
}

/// What a run gave.
pub struct Ran {
    pub status: i32,
    pub out: String,
    pub err: String,
}

impl Sandbox {
    /// An empty folder.
    pub fn empty() -> Self {
        Self { folder: tempfile::tempdir().expect("a temporary folder") }
    }

    /// A folder with a copy of the demo book in it, as `saltmarsh`.
    pub fn with_demo() -> Self {
        let sandbox = Self::empty();
        copy(&demo(), &sandbox.path("saltmarsh"));
        sandbox
    }

    /// A folder with a copy of the German book in it, as `halligofen`.
    pub fn with_german() -> Self {
        let sandbox = Self::empty();
        let book = Path::new(env!("CARGO_MANIFEST_DIR")).join("../publish/tests/halligofen");
        copy(&book, &sandbox.path("halligofen"));
        sandbox
    }

    pub fn path(&self, inner: &str) -> PathBuf {
        self.folder.path().join(inner)
    }

    pub fn write(&self, file: &str, bytes: impl AsRef<[u8]>) {
        let path = self.path(file);
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
        std::fs::write(path, bytes).expect("a file");
    }

    pub fn read(&self, file: &str) -> String {
        std::fs::read_to_string(self.path(file)).unwrap_or_else(|error| panic!("{file}: {error}"))
    }

    /// The files of a folder in the order of their names, hidden ones left out, folders within it as `folder/name`.
    pub fn files(&self, folder: &str) -> Vec<String> {
        let mut names = Vec::new();
        for entry in std::fs::read_dir(self.path(folder)).unwrap_or_else(|error| panic!("{folder}: {error}")).flatten() {
            let name = entry.file_name().to_string_lossy().into_owned();
            if name.starts_with('.') {
                continue;
            }
            if entry.path().is_dir() {
                names.extend(self.files(&format!("{folder}/{name}")).iter().map(|inner| format!("{name}/{inner}")));
            } else {
                names.push(name);
            }
        }
        names.sort();
        names
    }

    /// Runs the program with words for arguments.
    pub fn run(&self, words: &[&str]) -> Ran {
        let output = Command::new(env!("CARGO_BIN_EXE_wellproved"))
            .args(words)
            .current_dir(self.folder.path())
            .env_clear()
            .env("COLUMNS", "100")
            .output()
            .expect("the program runs");
        let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
        Ran { status: output.status.code().unwrap_or(-1), out: text(&output.stdout), err: text(&output.stderr) }
    }

    /// What a run prints that ends well.
    #[track_caller]
    pub fn fine(&self, words: &[&str]) -> String {
        let ran = self.run(words);
        assert_eq!(ran.status, 0, "{words:?}\n{}\n{}", ran.out, ran.err);
        ran.out
    }
}

/// The demo book.
pub fn demo() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/saltmarsh")
}

fn copy(from: &Path, to: &Path) {
    std::fs::create_dir_all(to).expect("a folder");
    for entry in std::fs::read_dir(from).expect("a folder").flatten() {
        // What the demo book's own memory holds is not the demo.
        if entry.file_name().to_string_lossy().starts_with('.') {
            continue;
        }
        let target = to.join(entry.file_name());
        if entry.path().is_dir() {
            copy(&entry.path(), &target);
        } else {
            std::fs::copy(entry.path(), target).expect("a copy");
        }
    }
}

/// A small formula without a fault, with lines put into its one stage.
pub fn small_formula(lines: &str, text: &str) -> String {
    format!(
        "title = \"Flat bread\"\nintro = \"A plain flat bread.\"\nstorage = \"Best at once.\"\n\n[[component]]\nname = \"bread\"\n\n[[component.stage]]\nname = \"dough\"\nkind = \"final-mix\"\n\n\
         [component.stage.ingredients]\n{lines}\n\n[[component.stage.step]]\naction = \"mix\"\ntext = \"{text}\"\ntime = \"5 min\"\n\n\
         [[component.stage.step]]\naction = \"boil\"\ntext = \"Steam until it is done.\"\ntime = \"9 min\"\n"
    )
}
