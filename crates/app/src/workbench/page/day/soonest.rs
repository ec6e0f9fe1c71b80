//! A time of the clock alone: the next day on which all can be on the table by then.

use jiff::{ToSpan, ZonedDateTime};
use plan::day::{Refusal, Timeline, Wanted, timeline};
use plan::engine::{Propagation, Watch};

/// So many mornings are tried: what takes longer than that is not meant by a time of the clock alone.
const MORNINGS: usize = 3;

/// Plans for the first day on which it is on the table in time, and says when that is; where there is none soon, for the
/// next one that comes.
pub fn soonest(wanted: &Wanted, patience: &mut dyn Watch) -> Result<(ZonedDateTime, Timeline), Refusal> {
    let next = timeline(wanted, &Propagation, patience)?;
    let mut later = wanted.clone();
    for _ in 1..MORNINGS {
        if next.served <= wanted.serve {
            break;
        }
        let Ok(serve) = later.serve.checked_add(1.day()) else { break };
        later.serve = serve;
        match timeline(&later, &Propagation, patience) {
            Ok(day) if day.served <= later.serve => return Ok((later.serve, day)),
            _ => {}
        }
    }
    Ok((wanted.serve.clone(), next))
}
