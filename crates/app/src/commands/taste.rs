//! `taste`: a blind tasting from the laid table to the evidence.

use super::{Ended, Outcome};
use crate::asked::proof_read;
use crate::book::Opened;
use crate::failure::Failure;
use crate::memory::{Memory, told, wait};
use crate::tasting::reporting::{Reported, last};
use crate::tasting::{Held, held, in_book, lay, now, progress, raw as table, typed};
use crate::{files, terminal};
use bench::tasting::advise;
use clap::ValueEnum;
use publish::page::evidence_page;
use publish::tasting::{self as words, Setting};
use std::path::{Path, PathBuf};
use store::Store;

/// Tastes blind: lays the table, takes answers down, closes, and says what was found and what was not.
///
/// A tasting is a file in tastings/: how it is asked, what is tasted, and the difference worth seeing.
///
///   wellproved taste advise saltmarsh softer-muffins
///   wellproved taste lay saltmarsh softer-muffins --ballots ballots.html
///   wellproved taste answer saltmarsh softer-muffins 7 543 271 118
///   wellproved taste count saltmarsh softer-muffins
///   wellproved taste close saltmarsh softer-muffins
///   wellproved taste report saltmarsh softer-muffins
///
/// Nobody reads results before the tasting is closed. Tell tasters of allergens and alcohol first, and serve
/// nothing raw: ballots and pages do so, by the formulas.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Taste {
    #[command(subcommand)]
    step: Step,
}

/// The tasting that is meant.
#[derive(clap::Args)]
struct Which {
    /// The book's folder.
    book: PathBuf,
    /// The tasting: its file in tastings/, without the ending.
    name: String,
    #[command(flatten)]
    memory: Memory,
}

/// What is done.
#[derive(clap::Subcommand)]
enum Step {
    /// Says how many tasters it takes to see the difference worth seeing.
    Advise {
        #[command(flatten)]
        which: Which,
    },
    /// Lays the table: draws codes and orders, remembers what is tasted, and prints the leader's sheet.
    Lay {
        #[command(flatten)]
        which: Which,
        /// How many seats; as the tasting says, or as many as the difference worth seeing asks for.
        #[arg(long, value_name = "NUMBER")]
        seats: Option<u32>,
        /// Where chance starts; the same number gives the same table.
        #[arg(long, value_name = "NUMBER")]
        seed: Option<u64>,
        /// Write the ballots, and labels for the cups, as a page to print.
        #[arg(long, value_name = "FILE")]
        ballots: Option<PathBuf>,
        /// Print a link for each seat, for telephones: the address at which the workbench stands.
        #[arg(long, value_name = "ADDRESS")]
        links: Option<String>,
    },
    /// Prints the leader's sheet again, with the key to the codes.
    Key {
        #[command(flatten)]
        which: Which,
        /// Write the ballots, and labels for the cups, as a page to print.
        #[arg(long, value_name = "FILE")]
        ballots: Option<PathBuf>,
    },
    /// Takes down the answers of a paper ballot whose taster has ticked to agree.
    ///
    /// A choice is a code; a ranking the codes in order, the one with most of it first; points are code=points, and
    /// code.attribute=points on several scales. A second answer corrects the first, which is kept.
    ///
    ///   wellproved taste answer saltmarsh odd-one-out 7 271
    ///   wellproved taste answer saltmarsh softer-muffins 7 543 271 118
    ///   wellproved taste answer saltmarsh liked-muffins 7 543=6 271=8
    #[command(verbatim_doc_comment)]
    Answer {
        #[command(flatten)]
        which: Which,
        /// The seat's number.
        #[arg(required_unless_present = "from", requires = "answers")]
        seat: Option<u32>,
        /// What stands on the ballot.
        answers: Vec<String>,
        /// Many ballots at once: a table with a row for each, seat and answers, "7,543 271 118".
        #[arg(long, value_name = "FILE", conflicts_with = "seat")]
        from: Option<PathBuf>,
    },
    /// Counts who has answered, without saying what.
    Count {
        #[command(flatten)]
        which: Which,
    },
    /// Closes the tasting once somebody has answered everything: no answer is taken any more, and the results can be read.
    Close {
        #[command(flatten)]
        which: Which,
    },
    /// Clears a table at which nobody has answered everything, so that it can be laid anew; it is no evidence.
    Clear {
        #[command(flatten)]
        which: Which,
    },
    /// Says what a closed tasting found, with its limits.
    Report {
        #[command(flatten)]
        which: Which,
        /// Work it out anew from a table that `taste export` wrote, without the book's memory.
        #[arg(long, value_name = "FILE")]
        from: Option<PathBuf>,
        /// The form of the report.
        #[arg(long, value_enum, default_value_t = Form::Text)]
        format: Form,
    },
    /// Prints the raw data of a closed tasting as a table (CSV): a row for each thing asked of each cup.
    Export {
        #[command(flatten)]
        which: Which,
    },
    /// Removes a taster's answers for good, as the taster wishes.
    Forget {
        #[command(flatten)]
        which: Which,
        /// The seat's number.
        seat: u32,
    },
}

/// The form of a report.
#[derive(Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Form {
    /// For reading.
    Text,
    /// A page for a browser or the printer, with drawings.
    Html,
    /// For other programs.
    Json,
}

impl Taste {
    pub fn run(self) -> Ended {
        let which = self.step.which();
        let opened = proof_read(&which.book)?;
        wait(self.step.take(which, &opened))??;
        Ok(Outcome::Fine)
    }
}

impl Step {
    const fn which(&self) -> &Which {
        match self {
            Self::Advise { which }
            | Self::Lay { which, .. }
            | Self::Key { which, .. }
            | Self::Answer { which, .. }
            | Self::Count { which }
            | Self::Close { which }
            | Self::Clear { which }
            | Self::Report { which, .. }
            | Self::Export { which }
            | Self::Forget { which, .. } => which,
        }
    }

    async fn take(&self, which: &Which, opened: &Opened) -> Result<(), Failure> {
        match self {
            Self::Advise { .. } => {
                let tasting = in_book(opened, &which.name)?;
                terminal::say(&publish::words::wrap(&words::advice(tasting, advise(tasting)), terminal::width()))
            }
            Self::Lay { seats, seed, ballots, links, .. } => {
                let store = which.memory.open(&opened.folder).await?;
                let laid = lay(&store, opened, &which.name, *seats, *seed).await?;
                let link =
                    |word: &String| links.as_ref().map(|address| format!("{}/taste/{word}", address.trim_end_matches('/')));
                let links: Vec<String> = laid.words.iter().filter_map(link).collect();
                show(&store, opened, &laid.held, &links, ballots.as_deref()).await?;
                terminal::remark(&words::advice(&laid.held.tasting, laid.advice));
                store.close().await;
                Ok(())
            }
            Self::Key { ballots, .. } => {
                let (store, held) = which.held(opened).await?;
                show(&store, opened, &held, &[], ballots.as_deref()).await
            }
            Self::Answer { seat, answers, from, .. } => answer(which, opened, (*seat, answers), from.as_deref()).await,
            Self::Count { .. } => {
                let (store, held) = which.held(opened).await?;
                terminal::say(&count(&store, &held).await?)
            }
            Self::Close { .. } => {
                let (store, held) = which.held(opened).await?;
                let or_clear = format!("go on tasting, or clear the table: `wellproved taste clear BOOK {}`", which.name);
                let is_closed = progress::close(&store, &held).await.map_err(|failure| failure.hint(or_clear))?;
                let counted = count(&store, &held).await?;
                store.close().await;
                terminal::say(&format!("{} {counted}", if is_closed { "Closed." } else { "It was closed already." }))
            }
            Self::Clear { .. } => {
                let (store, held) = which.held(opened).await?;
                progress::clear(&store, &held).await?;
                store.close().await;
                terminal::say("The table is cleared. Nobody can answer at it any more; it is no evidence.")
            }
            Self::Report { from, format, .. } => report(which, opened, from.as_deref(), *format).await,
            Self::Export { .. } => {
                let (store, held) = which.held(opened).await?;
                let reported = last(&store, held, opened).await?;
                terminal::show(&table::write(&reported.tasting, &reported.raw))
            }
            Self::Forget { seat, .. } => {
                let (store, held) = which.held(opened).await?;
                let removed = store.forget(held.seat(*seat)?, now()).await.map_err(told)?;
                store.close().await;
                terminal::say(&crate::tasting::removed(removed, *seat))
            }
        }
    }
}

impl Which {
    /// The store and the last sitting of the tasting.
    async fn held(&self, opened: &Opened) -> Result<(Store, Held), Failure> {
        let store = self.memory.open_there(&opened.folder).await?;
        let held = held(&store, &self.name).await?;
        Ok((store, held))
    }
}

/// Shows the leader's sheet, and writes the ballots if they are asked for.
async fn show(store: &Store, opened: &Opened, held: &Held, links: &[String], ballots: Option<&Path>) -> Result<(), Failure> {
    let setting = Setting { tasting: &held.tasting, seats: &held.seats, seed: &held.sitting.seed, links };
    if let Some(file) = ballots {
        let notice = held.notice(store, opened).await?;
        files::write(file, words::ballots(&setting, &notice, &opened.book.settings).as_bytes())?;
        terminal::remark(&format!("written: {}", file.display()));
    }
    terminal::say(&words::key(&setting, terminal::width()))
}

/// Takes ballots down: of one seat, or of a table.
async fn answer(
    which: &Which,
    opened: &Opened,
    (seat, answers): (Option<u32>, &[String]),
    from: Option<&Path>,
) -> Result<(), Failure> {
    let (store, held) = which.held(opened).await?;
    let ballots = match (from, seat) {
        (Some(file), _) => {
            let text = std::fs::read_to_string(file).map_err(|error| Failure::file("read", file, &error))?;
            typed::read(&text).map_err(|failure| Failure::new(format!("{}: {failure}", file.display())).hint(typed::HOW))?
        }
        (None, Some(seat)) => vec![(seat, answers.join(" "))],
        (None, None) => Vec::new(),
    };
    let counts = typed::enter(&store, &held, &ballots).await;
    store.close().await;
    terminal::say(&counts?)
}

/// How far the tasting has come.
async fn count(store: &Store, held: &Held) -> Result<String, Failure> {
    let all = progress::progress(store, held).await?;
    let (whole, seats) = (all.whole, all.seats);
    let have = if whole == 1 { "has" } else { "have" };
    Ok(format!("{whole} of {seats} seats {have} answered everything, {} in part; {} agreed to taste.", all.in_part, all.agreed))
}

/// Why a tasting cannot be shown from the memory, with the way to it where its raw data lie beside it.
fn beside(opened: &Opened, name: &str, failure: Failure) -> Failure {
    let file = opened.folder.join("tastings").join(format!("{name}.csv"));
    if file.is_file() { failure.hint(format!("its raw data are there: add --from {}", file.display())) } else { failure }
}

/// Shows the report, from the store or from a table.
async fn report(which: &Which, opened: &Opened, from: Option<&Path>, format: Form) -> Result<(), Failure> {
    let reported = match from {
        Some(file) => {
            let tasting = in_book(opened, &which.name)?.clone();
            let text = std::fs::read_to_string(file).map_err(|error| Failure::file("read", file, &error))?;
            let raw = table::read(&tasting, &text)?;
            Reported::of(tasting, raw, opened)
        }
        None => {
            let (store, held) = which.held(opened).await.map_err(|failure| beside(opened, &which.name, failure))?;
            last(&store, held, opened).await?
        }
    };
    let report = reported.report();
    match format {
        Form::Text => terminal::say(&words::text(&report, terminal::width())),
        Form::Html => terminal::show(&evidence_page(&report, &[], &opened.book.settings)),
        Form::Json => terminal::say(&format!("{:#}", words::json(&report))),
    }
}
