//! When a course has shown all that its steps ask for, so that it need be followed no further.

use super::verdict::is_preferment;
use formula::Step;
use formula::read::Condition;
use quantity::{Fraction, TimeSpan};

/// A preferment is followed until it has sunk well past its ripeness, which ends at nine tenths of its greatest rise.
const SUNK: f64 = 0.85;

/// A step begins where a stretch of the course does, but for a rounding.
const A_ROUNDING: TimeSpan = TimeSpan::seconds(1.0);

/// What is still to be seen of a course.
pub struct Watch {
    lasts: TimeSpan,
    highest: f64,
    asked: Vec<Asked>,
}

struct Asked {
    began: TimeSpan,
    /// Volume against that when mixed as the step begins.
    from: f64,
    wants: Wants,
    is_seen: bool,
}

enum Wants {
    /// To rise by so much.
    Rise(Fraction),
    /// To rise to its height and to sink.
    Ripeness,
}

impl Watch {
    /// What these steps ask for; `ends` says when each of them ends.
    pub fn over(steps: &[&Step], ends: &[TimeSpan]) -> Self {
        let mut began = TimeSpan::ZERO;
        let mut asked = Vec::new();
        for (step, end) in steps.iter().zip(ends) {
            let wants = match &step.until {
                _ if is_preferment(step) => Some(Wants::Ripeness),
                Some(Condition::RisenBy(share)) => Some(Wants::Rise(*share)),
                _ => None,
            };
            asked.extend(wants.map(|wants| Asked { began, from: 1.0, wants, is_seen: false }));
            began = *end;
        }
        Self { lasts: began, highest: 1.0, asked }
    }

    /// Whether all has been seen, told how far the dough has risen by then.
    pub fn has_seen_all(&mut self, now: TimeSpan, risen: f64) -> bool {
        self.highest = self.highest.max(risen);
        for one in &mut self.asked {
            match &one.wants {
                Wants::Ripeness => one.is_seen = risen - 1.0 < SUNK * (self.highest - 1.0),
                Wants::Rise(_) if now <= one.began + A_ROUNDING => one.from = risen,
                Wants::Rise(share) => one.is_seen |= risen >= one.from.max(1.0) * (Fraction::WHOLE + *share).as_ratio(),
            }
        }
        now >= self.lasts && self.asked.iter().all(|one| one.is_seen)
    }
}
