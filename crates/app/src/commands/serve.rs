//! `serve`: the workbench.

use super::{Ended, Outcome};
use crate::failure::Failure;
use crate::memory::Memory;
use crate::workbench::{Opening, Place, serve};
use std::net::IpAddr;
use std::path::PathBuf;

/// Opens the workbench: the book in your browser, shaped by eye and hand, with everything foreseen beside it.
///
///   wellproved serve saltmarsh
///   wellproved serve saltmarsh --port 8000 --no-open
///   wellproved serve saltmarsh --share
///
/// Every change is written into the book's own files, comments and order kept, and can be undone, also after the next
/// start. What an editor changes meanwhile is shown at once. Ctrl-C closes it.
///
/// Only this machine can reach it, unless you --share it: then others on your network come in with
/// a key, as owners or helpers, and tasters see their own sheets; the page "People" makes keys and
/// withdraws them. What is sent is not encrypted: share on a network that you trust, or by way of a
/// proxy of your own that encrypts.
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
    /// Let others on the network in, with a key; by all of this machine's addresses, or only by ADDRESS.
    #[arg(long, value_name = "ADDRESS", num_args = 0..=1, require_equals = true, default_missing_value = "0.0.0.0")]
    share: Option<IpAddr>,
    /// A name besides its address under which it may be asked for, such as one of your own network or a proxy's.
    #[arg(long, value_name = "NAME")]
    known_as: Vec<String>,
    /// Tell of every request, not only of those that change something or fail.
    #[arg(long)]
    log_all: bool,
    /// The folder that pages are published to; “published-BOOK” beside the book's folder if left out.
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,
    #[command(flatten)]
    memory: Memory,
}

impl Serve {
    pub fn run(self) -> Ended {
        let runtime = tokio::runtime::Builder::new_multi_thread().enable_all().build();
        let runtime = runtime.map_err(|error| Failure::new(format!("the workbench cannot be run: {error}")))?;
        let opening =
            Opening { port: self.port, browse: !self.no_open, share: self.share, known_as: self.known_as, log_all: self.log_all };
        let place = Place { folder: self.book, published: self.out, memory: self.memory };
        let served = runtime.block_on(serve(place, opening));
        // Whoever still looks on does not keep it open.
        runtime.shutdown_background();
        served?;
        Ok(Outcome::Fine)
    }
}
