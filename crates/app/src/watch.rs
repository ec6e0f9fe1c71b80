//! Looks on while a day is planned: the time there is, Ctrl-C, and a word on how it goes.

use crate::terminal;
use indicatif::{ProgressBar, ProgressDrawTarget};
use plan::day::AIMS;
use plan::engine::Watch;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};

/// A watch with a deadline.
pub struct Watcher {
    began: Instant,
    patience: Duration,
    is_interrupted: Arc<AtomicBool>,
    bar: ProgressBar,
}

impl Watcher {
    /// Looks on for so long.
    pub fn new(patience: Duration) -> Self {
        let is_interrupted = Arc::new(AtomicBool::new(false));
        let told = Arc::clone(&is_interrupted);
        // Where the signal cannot be caught, it simply ends the program.
        let _ = ctrlc::set_handler(move || told.store(true, Ordering::Relaxed));
        let target = if terminal::is_watched() { ProgressDrawTarget::stderr() } else { ProgressDrawTarget::hidden() };
        let bar = ProgressBar::with_draw_target(None, target);
        Self { began: Instant::now(), patience, is_interrupted, bar }
    }

    /// Clears what was told.
    pub fn finish(&self) {
        self.bar.finish_and_clear();
    }
}

impl Watch for Watcher {
    fn wants_to_stop(&mut self) -> bool {
        self.is_interrupted.load(Ordering::Relaxed) || self.began.elapsed() > self.patience
    }

    fn is_better(&mut self, aim: usize, value: i32) {
        if self.began.elapsed() > Duration::from_secs(1) {
            self.bar.set_message(format!("{}: {value}", AIMS.get(aim).copied().unwrap_or_default()));
            self.bar.tick();
        }
    }
}
