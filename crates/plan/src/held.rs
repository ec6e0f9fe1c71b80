//! What is held or stored and warmed again only where that helps.

use formula::Stage;
use formula::read::Action;
use quantity::TimeSpan;

/// Whether a step may be left out: a hold or a store that may take no time at all, and the rewarming after it.
#[must_use]
pub fn may_be_left_out(stage: &Stage, step: usize) -> bool {
    let here = &stage.steps[step];
    match here.action {
        Action::Hold | Action::Store => here.time.is_some_and(|time| time.from <= TimeSpan::ZERO),
        Action::Rewarm => step.checked_sub(1).is_some_and(|before| may_be_left_out(stage, before)),
        _ => false,
    }
}
