//! `trial note`: what was weighed and seen.

use crate::commands::{Ended, Outcome};
use crate::failure::Failure;
use crate::logbook::Logbook;
use crate::memory::{Memory, wait};
use crate::{photographs, terminal};
use formula::logging::{Entry, Figure, Noted, Shown, doubt};
use std::path::PathBuf;

/// Notes what was weighed and seen, in place: comments and order stay, and what a figure was before stays beside it.
///
///   wellproved trial note TRIAL "sponge/flour-bread=352 g" "sponge/mix=24 °C"
///   wellproved trial note TRIAL "sponge/ferment=46 mm after 1 h" "sponge/ferment/room=21.5 °C"
///   wellproved trial note TRIAL "dough/bulk/doubled-after=1 h 20 min" "griddling/core=96.5 °C"
///   wellproved trial note TRIAL "griddling/pieces=12" "griddling/bake-loss=11 %" "sponge/ph=4.6"
///   wellproved trial note TRIAL --photograph crumb.jpg --shows crumb --across "120 mm"
///   wellproved trial note TRIAL "sponge/mix=23 °C" --why "read the wrong thermometer"
///
/// A figure is STAGE/STEP, STAGE/STEP/FIGURE or STAGE/INGREDIENT, as `trial begin` lists them; where no figure is named,
/// the unit tells which it is. Readings say how long after the step began. An empty value takes a figure out.
#[derive(clap::Args)]
#[command(verbatim_doc_comment)]
pub struct Note {
    /// The trial's file.
    trial: PathBuf,
    /// What was weighed and seen.
    #[arg(value_name = "FIGURE=VALUE")]
    figures: Vec<String>,
    /// What else was seen, in words.
    #[arg(long = "words", value_name = "WORDS")]
    words: Vec<String>,
    /// A photograph: it is made smaller, freed of what the camera noted, and kept beside the trial.
    #[arg(long, value_name = "FILE")]
    photograph: Option<PathBuf>,
    /// What the photograph shows: "crumb"; those of the same are set side by side.
    #[arg(long, value_name = "WORDS", requires = "photograph")]
    shows: Option<String>,
    /// How wide that is which it shows from edge to edge: "120 mm".
    #[arg(long, value_name = "LENGTH", requires = "photograph")]
    across: Option<String>,
    /// Why nothing is to be learnt from the trial.
    #[arg(long, value_name = "WORDS")]
    left_out: Option<String>,
    /// Why a figure is put right.
    #[arg(long, value_name = "WORDS", default_value = "", hide_default_value = true)]
    why: String,
    #[command(flatten)]
    memory: Memory,
}

impl Note {
    pub fn run(self) -> Ended {
        let logbook = Logbook::open(&self.trial)?;
        let formula = logbook.formula()?;
        let mut entries = Vec::new();
        for text in &self.figures {
            let (name, value) = text.split_once('=').ok_or_else(|| {
                Failure::new(format!("“{text}” notes no figure")).hint("write \"sponge/mix=24 °C\"; words go with --words")
            })?;
            let (figure, value) = Figure::read(name, value, &formula).map_err(Failure::from)?;
            entries.push(Entry::Figure(figure, value));
        }
        entries.extend(self.words.iter().map(|words| Entry::Note(words.clone())));
        entries.extend(self.left_out.iter().map(|words| Entry::LeftOut(words.clone())));
        if entries.is_empty() && self.photograph.is_none() {
            return Err(Failure::new("nothing is to be noted")
                .hint("write \"sponge/mix=24 °C\", --words or --photograph")
                .into());
        }
        // Last, so that no picture is kept of a trial that cannot take the rest.
        let print = self.photograph.as_ref().map(|file| photographs::of_trial(file)).transpose()?;
        if let Some(print) = &print {
            let file = photographs::free_name(&logbook.path, self.shows.as_deref(), print)?;
            entries.push(Entry::Photograph(Shown { file, shows: self.shows.clone(), across: self.across.clone() }));
        }
        let (noted, text) = logbook.note(&entries, None, &self.why)?;
        if let (Some(print), Some(Entry::Photograph(shown))) = (&print, entries.last()) {
            photographs::keep_beside(&logbook.path, &shown.file, print)?;
        }
        let said = said(&entries, &noted, &str::to_owned);
        if let Some(text) = text {
            wait(logbook.keep(&self.memory, &text, &said))??;
        }
        terminal::say(&said)?;
        for entry in &entries {
            if let Entry::Figure(figure, value) = entry
                && let Some(why) = doubt(figure, value, &formula)
            {
                terminal::remark(&format!(
                    "is {} right? {why}; it stands as noted, and noted again it is put right",
                    figure.name()
                ));
            }
        }
        Ok(Outcome::Fine)
    }
}

/// What came of the entries; `called` says what a figure of a name is called.
pub fn said(entries: &[Entry], noted: &[Noted], called: &dyn Fn(&str) -> String) -> String {
    let name = |entry: &Entry| match entry {
        Entry::Figure(figure, value) if value.is_empty() => called(&figure.name()),
        Entry::Figure(figure, value) => format!("{} {value}", called(&figure.name())),
        Entry::Note(_) => "a note".to_owned(),
        Entry::LeftOut(why) if why.is_empty() => "it counts".to_owned(),
        Entry::LeftOut(_) => "left out".to_owned(),
        Entry::Photograph(shown) => format!("the photograph {}", shown.file),
        Entry::Course(figure, file) => format!("{}: the readings {file}", called(&figure.name())),
    };
    let one = |(entry, noted): (&Entry, &Noted)| match noted {
        Noted::New => format!("noted: {}", name(entry)),
        Noted::Unchanged => format!("as noted before: {}", name(entry)),
        Noted::Corrected(_, was) => match entry {
            Entry::Figure(figure, value) if value.is_empty() => format!("taken out: {}, which was {was}", called(&figure.name())),
            Entry::LeftOut(why) if why.is_empty() => format!("counted; it was left out: {was}"),
            _ => format!("put right: {}, which was {was}", name(entry)),
        },
    };
    entries.iter().zip(noted).map(one).collect::<Vec<_>>().join("\n")
}
