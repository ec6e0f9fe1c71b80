//! `serve`: the workbench.

use super::{Ended, Outcome};
use crate::failure::Failure;
use crate::memory::Memory;
use crate::workbench::{Opening, Place, serve};
use std::path::PathBuf;

/// Opens the workbench: the book in your browser, shaped by eye and hand, with everything foreseen beside it.
///
///   wellproved serve saltmarsh
///   wellproved serve saltmarsh --port 8000 --no-open
///
/// Every change is written into the book's own files, comments and order kept, and can be undone, also after the next
/// start. What an editor changes meanwhile is shown at once. Only this machine can reach it. Ctrl-C closes it.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Serve {
    /// The book's folder.
    book: PathBuf,
    /// The port to listen on; a usual one, or any that is free, where none is said.
    #[arg(long, value_name = "PORT")]
    port: Option<u16>,
    /// Only say where it is, and open no browser.
    #[arg(long)]
    no_open: bool,
    #[command(flatten)]
    memory: Memory,
}

impl Serve {
    pub fn run(self) -> Ended {
        let runtime = tokio::runtime::Builder::new_multi_thread().enable_all().build();
        let runtime = runtime.map_err(|error| Failure::new(format!("the workbench cannot be run: {error}")))?;
        let opening = Opening { port: self.port, browse: !self.no_open };
        let served = runtime.block_on(serve(Place { folder: self.book, memory: self.memory }, &opening));
        // Whoever still looks on does not keep it open.
        runtime.shutdown_background();
        served?;
        Ok(Outcome::Fine)
    }
}
