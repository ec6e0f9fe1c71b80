//! What is to be put in order of time, told without a word of the trade: tasks on a grid, what follows
//! what, what is shared, what is wished for, and which of two plans is the better one.

/// A moment or a length on the grid, counted from the beginning of what is planned.
pub type Slot = i32;

/// Tasks to be given their beginnings.
#[derive(Clone, Debug, Default)]
pub struct Problem {
    /// Every task has ended by then.
    pub end: Slot,
    /// What is to be done.
    pub tasks: Vec<Task>,
    /// What follows what.
    pub links: Vec<Link>,
    /// What tasks share.
    pub resources: Vec<Resource>,
    /// What is wanted, and may have to give way; where there are several conflicts, one of later wishes is told.
    pub wishes: Vec<Wish>,
    /// What makes one plan better than another, the weightiest first; each is to be as small as can be.
    pub aims: Vec<Aim>,
    /// Whether wishes that give way are left without a reason, which takes time to find.
    pub is_without_why: bool,
}

/// A task that is not interrupted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Task {
    /// How long it takes.
    pub lasts: Slot,
    /// Not before.
    pub earliest: Slot,
    /// Not after.
    pub latest: Slot,
}

/// One task after another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Link {
    /// The first.
    pub before: usize,
    /// The second.
    pub after: usize,
    /// The shortest wait between the first's end and the second's beginning.
    pub least: Slot,
    /// The longest wait that can be at all; a wait that is only better short is a [`Wish::Soon`].
    pub most: Option<Slot>,
}

/// Something of which there is only so much at any moment.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Resource {
    /// How much there is.
    pub capacity: i32,
    /// Which tasks need how much of it.
    pub uses: Vec<(usize, i32)>,
}

/// Something that takes room from the beginning of one task until others have come, however long that is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stay {
    /// The task with which it begins.
    pub from: usize,
    /// It is over when all of these have come; at least one.
    pub until: Vec<Edge>,
    /// How much room it takes.
    pub amount: i32,
}

/// An end of a task.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Edge {
    /// Its beginning.
    Begin(usize),
    /// Its end.
    End(usize),
}

/// Something wanted that may have to give way; how far it gives way is counted in slots.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Wish {
    /// The second begins no later than so long after the first's end.
    Soon {
        /// The first.
        before: usize,
        /// The second.
        after: usize,
        /// The longest wait.
        most: Slot,
    },
    /// A task has ended by then.
    EndsBy {
        /// The task.
        task: usize,
        /// By when.
        by: Slot,
    },
    /// A task begins in that time.
    Begins {
        /// The task.
        task: usize,
        /// Not before.
        from: Slot,
        /// Not after.
        to: Slot,
    },
    /// None of these tasks goes on in that time; what is left of it is one undisturbed stretch.
    Undisturbed {
        /// The tasks.
        tasks: Vec<usize>,
        /// From when.
        from: Slot,
        /// To when.
        to: Slot,
    },
    /// There is room for all stays at any moment; it gives way by the room that is missing, not by slots. What stood
    /// there before anything was planned is not asked about.
    Room {
        /// How much room there is.
        capacity: i32,
        /// What takes it.
        stays: Vec<Stay>,
    },
}

/// A sum that is to be as small as can be.
pub type Aim = Vec<(i32, Measure)>;

/// What is counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// When a task begins.
    Begin(usize),
    /// How long the second begins after the first's end.
    Wait(usize, usize),
    /// How far a wish gives way.
    GivesWay(usize),
    /// How far a task's end lies beyond a moment.
    Beyond(usize, Slot),
    /// When the last task has ended.
    Last,
}

impl Problem {
    /// How far a wish gives way in a plan; nothing where it is granted.
    #[must_use]
    pub fn gives_way(&self, wish: &Wish, begins: &[Slot]) -> Slot {
        let end = |task: usize| begins[task] + self.tasks[task].lasts;
        match wish {
            Wish::Soon { before, after, most } => (begins[*after] - end(*before) - most).max(0),
            Wish::EndsBy { task, by } => (end(*task) - by).max(0),
            Wish::Begins { task, from, to } => (from - begins[*task]).max(begins[*task] - to).max(0),
            Wish::Room { capacity, stays } => self.missing(*capacity, stays, begins),
            Wish::Undisturbed { from, to, .. } => (to - from) - self.rest(wish, begins).map_or(0, |(from, to)| to - from),
        }
    }

    /// How much room is missing when it is fullest; it becomes fuller only when a stay begins.
    fn missing(&self, capacity: i32, stays: &[Stay], begins: &[Slot]) -> i32 {
        let edge = |edge: &Edge| match *edge {
            Edge::Begin(task) => begins[task],
            Edge::End(task) => begins[task] + self.tasks[task].lasts,
        };
        let span = |stay: &Stay| (begins[stay.from], stay.until.iter().map(edge).max().unwrap_or(begins[stay.from]));
        let open = stays.iter().enumerate().filter(|(_, stay)| self.is_open(stay.from));
        let taken = open.map(|(at, stay)| {
            let moment = begins[stay.from];
            let is_there = |(other, one): &(usize, &Stay)| *other == at || (span(one).0..span(one).1).contains(&moment);
            stays.iter().enumerate().filter(is_there).map(|(_, one)| one.amount).sum::<i32>()
        });
        taken.max().map_or(0, |most| (most - capacity).max(0))
    }

    /// Whether a task's beginning is not settled from the first.
    #[must_use]
    pub fn is_open(&self, task: usize) -> bool {
        self.tasks[task].earliest < self.tasks[task].latest
    }

    /// What is left of a time that is to be undisturbed: the longest stretch in it that no task touches.
    #[must_use]
    pub fn rest(&self, wish: &Wish, begins: &[Slot]) -> Option<(Slot, Slot)> {
        let Wish::Undisturbed { tasks, from, to } = wish else { return None };
        let busy = tasks.iter().map(|task| (begins[*task], begins[*task] + self.tasks[*task].lasts));
        Some(longest_rest(*from, *to, busy.collect()))
    }

    /// What an aim comes to in a plan.
    #[must_use]
    pub fn value(&self, aim: &Aim, begins: &[Slot]) -> Slot {
        let end = |task: usize| begins[task] + self.tasks[task].lasts;
        let one = |measure: Measure| match measure {
            Measure::Begin(task) => begins[task],
            Measure::Wait(before, after) => (begins[after] - end(before)).max(0),
            Measure::GivesWay(wish) => self.gives_way(&self.wishes[wish], begins),
            Measure::Beyond(task, border) => (end(task) - border).max(0),
            Measure::Last => (0..self.tasks.len()).map(end).max().unwrap_or(0),
        };
        aim.iter().map(|(weight, measure)| weight * one(*measure)).sum()
    }
}

/// The longest stretch within a window that no busy time touches; nothing at its end if there is none.
fn longest_rest(from: Slot, to: Slot, mut busy: Vec<(Slot, Slot)>) -> (Slot, Slot) {
    busy.sort_unstable();
    let (mut free_from, mut longest) = (from, (to, to));
    for (begin, end) in busy.into_iter().filter(|(begin, end)| end > begin).chain([(to, to)]) {
        let free = begin.min(to) - free_from;
        if free > longest.1 - longest.0 {
            longest = (free_from, free_from + free);
        }
        free_from = free_from.max(end);
    }
    longest
}

#[cfg(test)]
mod tests {
    use super::longest_rest;

    #[test]
    fn the_longest_rest_of_a_night() {
        for (busy, expected) in [
            (vec![], 10),
            (vec![(-5, 0), (10, 12)], 10),
            (vec![(0, 2)], 8),
            (vec![(8, 20)], 8),
            (vec![(4, 5)], 5),
            (vec![(-3, 30)], 0),
            (vec![(3, 3)], 10),
            (vec![(7, 8), (1, 6)], 2),
        ] {
            let (from, to) = longest_rest(0, 10, busy.clone());
            assert_eq!(to - from, expected, "{busy:?}");
        }
    }
}
