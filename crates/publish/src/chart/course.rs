//! A formula's course from start to table: each stage as a bar at its time, hands, heat and waits told apart.

use crate::tongue::Tongue;
use formula::read::Attention;
use formula::resolve::formula::StageAt;
use formula::{Formula, Stage, Step};
use maud::{Markup, html};
use plan::lasts;
use quantity::{Between, TimeSpan};
use std::collections::BTreeMap;

/// The width that all bars share, in the units of their own drawing.
const WIDTH: f64 = 1000.0;
/// No step is drawn narrower than that.
const NARROWEST: f64 = 5.0;

/// How a step passes.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Passing {
    Hands,
    Heat,
    Wait,
}

impl Passing {
    fn of(step: &Step) -> Self {
        match step.attention {
            _ if step.action.cooks() => Self::Heat,
            Attention::Active => Self::Hands,
            Attention::Waiting => Self::Wait,
        }
    }

    fn word(self, tongue: Tongue) -> &'static str {
        match self {
            Self::Hands => tongue.hands_on_part(),
            Self::Heat => tongue.at_the_heat_part(),
            Self::Wait => tongue.waiting(),
        }
    }

    /// Where its bar begins and how high it is, of 20: told apart by shape, not by colour alone.
    const fn height(self) -> (u32, u32) {
        match self {
            Self::Hands => (4, 12),
            Self::Heat => (1, 18),
            Self::Wait => (7, 6),
        }
    }

    const fn class(self) -> &'static str {
        match self {
            Self::Hands => "hands",
            Self::Heat => "heat",
            Self::Wait => "wait",
        }
    }
}

/// A stage's bar: when it begins, and its timed steps.
struct Bar<'f> {
    stage: &'f Stage,
    begins: TimeSpan,
    steps: Vec<(Passing, Between<TimeSpan>)>,
}

impl Bar<'_> {
    fn ends(&self) -> TimeSpan {
        self.steps.iter().fold(self.begins, |at, (_, span)| at + span.to)
    }

    fn words(&self, tongue: Tongue) -> String {
        let steps: Vec<String> =
            self.steps.iter().map(|(passing, span)| format!("{} {}", tongue.print.time(*span), passing.word(tongue))).collect();
        steps.join(&format!(", {} ", tongue.then()))
    }
}

/// The drawing, as part of a page; none where fewer than two stages state their times.
#[must_use]
pub fn course_chart(formula: &Formula, tongue: Tongue) -> Option<Markup> {
    let bars = bars(formula);
    let whole = bars.iter().map(Bar::ends).fold(TimeSpan::ZERO, TimeSpan::max);
    if bars.len() < 2 || whole <= TimeSpan::ZERO {
        return None;
    }
    let kinds = [Passing::Hands, Passing::Heat, Passing::Wait];
    let used = kinds.into_iter().filter(|kind| bars.iter().any(|bar| bar.steps.iter().any(|(passing, _)| passing == kind)));
    Some(html! {
        figcaption {
            (tongue.course_caption())
            @for kind in used { " " span { (swatch(kind)) "\u{a0}" (kind.word(tongue)) } }
        }
        ul.plain {
            @for bar in &bars {
                li { span.what { (bar.stage.title) } (drawing(bar, whole, tongue)) }
            }
        }
    })
}

fn swatch(kind: Passing) -> Markup {
    let (y, height) = kind.height();
    html! { svg viewBox="0 0 24 20" width="24" height="20" aria-hidden="true" { rect class=(kind.class()) x="1" y=(y) width="22" height=(height) {} } }
}

fn drawing(bar: &Bar, whole: TimeSpan, tongue: Tongue) -> Markup {
    let mut x = bar.begins / whole * WIDTH;
    let mut parts = Vec::new();
    for (passing, span) in &bar.steps {
        let width = (span.to / whole * WIDTH).max(NARROWEST);
        // What is too short to be seen is drawn wider, but never beyond the edge.
        let here = x.min(WIDTH - width);
        parts.push((*passing, here, width));
        x = here + width;
    }
    html! {
        svg viewBox=(format!("0 0 {WIDTH} 20")) preserveAspectRatio="none" role="img" aria-label=(bar.words(tongue)) {
            @for (passing, x, width) in parts {
                rect class=(passing.class()) x=(format!("{x:.1}")) y=(passing.height().0) width=(format!("{width:.1}")) height=(passing.height().1) {}
            }
        }
    }
}

/// Every stage with timed steps; one begins when the last of those it uses is done.
fn bars(formula: &Formula) -> Vec<Bar<'_>> {
    let lengths: BTreeMap<StageAt, TimeSpan> = formula
        .stages()
        .map(|((c, s), stage)| {
            let spans = stage.steps.iter().filter_map(|step| lasts(&formula.components[c], step));
            ((c, s), spans.fold(TimeSpan::ZERO, |sum, span| sum + span.to))
        })
        .collect();
    let mut begins: BTreeMap<StageAt, TimeSpan> = lengths.keys().map(|at| (*at, TimeSpan::ZERO)).collect();
    // Stages need not stand in the order in which they use each other: pushed on until nothing moves.
    for _ in 0..lengths.len() {
        let mut moved = false;
        for (at, stage) in formula.stages() {
            let ready = stage.uses().filter_map(|used| Some(*begins.get(&used)? + *lengths.get(&used)?));
            let ready = ready.fold(TimeSpan::ZERO, TimeSpan::max);
            if begins.get(&at).is_some_and(|begun| ready > *begun) {
                begins.insert(at, ready);
                moved = true;
            }
        }
        if !moved {
            break;
        }
    }
    let timed = formula.stages().map(|(at, stage)| {
        let component = &formula.components[at.0];
        let steps = stage.steps.iter().filter_map(|step| Some((Passing::of(step), lasts(component, step)?))).collect();
        Bar { stage, begins: begins.get(&at).copied().unwrap_or(TimeSpan::ZERO), steps }
    });
    timed.filter(|bar| !bar.steps.is_empty()).collect()
}
