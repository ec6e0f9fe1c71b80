//! A formula for high ground: what the published guides advise for cakes, and where water boils there.

use super::desk::Desk;
use super::manuscript::Part;
use super::{Exchange, Unfit};
use crate::grounds::by;
use formula::read::{Action, Condition, Group, HEIGHTS, Leaven};
use formula::resolve::formula::StageAt;
use formula::{Formula, Line, Origin, Stage};
use quantity::{Length, Temperature, print};
use science::heat::air_pressure::{SEA_LEVEL, air_pressure};
use science::heat::boiling_point::boiling_point;

/// The exchange.
pub static EXCHANGE: Exchange = Exchange {
    name: "altitude",
    about: "sea level for high ground: leavening, sugar, liquid, oven heat, and what water can reach",
    asks: "--altitude, such as \"1800 m\"; else that of the kitchen",
    grounds: "University of Wyoming Extension, altitude adjustments for cakes; air pressure by ISO 2533, and what water boils at under it",
    fits,
    offers: |_, _| Vec::new(),
    make,
};

/// What the guide advises for a cake at an altitude, as shares: baking powder less, sugar less, liquid more; each
/// the middle of the printed range (1 tablespoon a cup is a sixteenth). University of Wyoming Extension, altitude
/// adjustments for cakes, at 3,000, 5,000 and 7,000 feet; the same figures stand in other mountain states' guides.
const GUIDE: [(f64, f64, f64, f64); 3] =
    [(3000.0, 0.125, 0.5 / 16.0, 1.5 / 16.0), (5000.0, 0.1875, 1.0 / 16.0, 3.0 / 16.0), (7000.0, 0.25, 2.0 / 16.0, 3.5 / 16.0)];
/// The same guide raises the oven by 15 to 25 °F; the middle, to five degrees Celsius.
const OVEN: f64 = 10.0;
/// A core cannot come nearer to the boiling point than this while crumb is moist: common practice, no source.
const BELOW_BOILING: f64 = 1.5;
const FOOT: f64 = 0.3048;

fn fits(formula: &Formula) -> Vec<String> {
    formula.stages().filter(|(_, stage)| has_powder(stage)).map(|(_, stage)| stage.name.clone()).collect()
}

fn is_powder(line: &Line) -> bool {
    line.ingredient().is_some_and(|one| one.leaven == Some(Leaven::Chemical))
}

fn has_powder(stage: &Stage) -> bool {
    stage.lines.iter().any(is_powder)
}

/// The guide's shares at so many feet; none below where it begins, and above its last row as there.
fn guide(feet: f64) -> Option<(f64, f64, f64)> {
    let (first, last) = (GUIDE[0], GUIDE[2]);
    if feet < first.0 {
        return None;
    }
    let pair = GUIDE.windows(2).find(|pair| feet <= pair[1].0);
    let Some([a, b]) = pair else { return Some((last.1, last.2, last.3)) };
    let part = (feet - a.0) / (b.0 - a.0);
    let between = |from: f64, to: f64| from + (to - from) * part;
    Some((between(a.1, b.1), between(a.2, b.2), between(a.3, b.3)))
}

fn make(desk: &mut Desk) -> Result<(), Unfit> {
    let how = "say how high the kitchen lies: --altitude \"1800 m\"";
    let stated =
        Some(&desk.around.altitude).filter(|known| !matches!(known.origin, Origin::Assumed { .. })).map(|known| known.value);
    let altitude = desk.wishes.altitude.or(stated);
    let altitude = altitude.ok_or_else(|| Unfit::NotSaid("--altitude", how.to_owned()))?;
    let metres = altitude.as_metres();
    if !HEIGHTS.contains(metres) {
        return Err(Unfit::NotSaid("--altitude where people bake", format!("{} is taken; {how}", HEIGHTS.in_words())));
    }
    let Some((powder, sugar, liquid)) = guide(metres / FOOT) else {
        return Err(Unfit::NotSo(format!(
            "at {} the guides advise nothing: they begin at 3,000 feet, 914 m",
            told_length(altitude)
        )));
    };
    for (at, stage) in desk.before.stages().filter(|(_, stage)| has_powder(stage)) {
        let more = |line: &Line| match line.ingredient() {
            _ if is_powder(line) => Some(1.0 - powder),
            Some(one) if one.group == Group::Sugar => Some(1.0 - sugar),
            Some(one) if one.is_water() || one.is_milk() => Some(1.0 + liquid),
            _ => None,
        };
        for line in &stage.lines {
            if let Some(by) = more(line) {
                desk.balance.set(at, &line.name, line.mass.value * by);
            }
        }
        hotter_oven(desk, at.0);
    }
    let boils = boiling_point(air_pressure(altitude));
    desk.rest_on(by::AIR.known(()).origin);
    desk.rest_on(by::WATER_BOILS.known(()).origin);
    cooler_core(desk, boils);
    told(desk, altitude, boils);
    Ok(())
}

fn told_length(altitude: Length) -> String {
    format!("{} m", print::number(altitude.as_metres(), 0))
}

/// Bake steps of a component with baking powder in it, a few degrees hotter.
fn hotter_oven(desk: &mut Desk, component: usize) {
    for (s, stage) in desk.before.components[component].stages.iter().enumerate() {
        for (index, step) in stage.steps.iter().enumerate().filter(|(_, step)| step.action == Action::Bake) {
            let Some(range) = step.temperature else { continue };
            let up = |t: Temperature| print::number(t.as_celsius() + OVEN, 0);
            let text = if range.is_single() {
                format!("{} °C", up(range.to))
            } else {
                format!("{}-{} °C", up(range.from), up(range.to))
            };
            desk.manuscript.set(Part::Step((component, s), index), "temperature", &text, "text");
        }
    }
}

/// A core that moist crumb cannot reach under this sky is lowered to what it can.
fn cooler_core(desk: &mut Desk, boils: Temperature) {
    let most = (boils.as_celsius() - BELOW_BOILING).floor();
    let steps: Vec<(StageAt, usize, f64)> = desk
        .before
        .stages()
        .flat_map(|(at, stage)| stage.steps.iter().enumerate().map(move |(index, step)| (at, index, step)))
        .filter_map(|(at, index, step)| match step.until {
            Some(Condition::Core(range)) if range.to.as_celsius() > most => Some((at, index, range.to.as_celsius())),
            _ => None,
        })
        .collect();
    for (at, index, was) in steps {
        desk.manuscript.set(Part::Step(at, index), "until", &format!("{} °C core", print::number(most, 0)), "text");
        desk.minded.push(format!(
            "a core of {} °C cannot be reached where water boils at {} °C: the step says {} °C now; hold it there some minutes longer, and keep to local rules for egg and flour",
            print::number(was, 0),
            print::number(boils.as_celsius(), 1),
            print::number(most, 0)
        ));
    }
}

fn told(desk: &mut Desk, altitude: Length, boils: Temperature) {
    let thinner = SEA_LEVEL.as_pascals() / air_pressure(altitude).as_pascals();
    desk.minded.push(format!(
        "at {} water boils at {} °C, and gas takes {} times the room: a yeasted dough has doubled sooner and with less gas, so go by its height",
        told_length(altitude),
        print::number(boils.as_celsius(), 1),
        print::number(thinner, 2)
    ));
    desk.minded.push(format!(
        "sugar syrups are done {} °C below the temperatures of sea level; a refractometer reads the same everywhere",
        print::number(100.0 - boils.as_celsius(), 1)
    ));
    if desk.before.stages().any(|(_, stage)| has_powder(stage)) {
        desk.minded.push("the guide (University of Wyoming Extension) gives ranges and advises one change at a time, leavening first; its middle is taken".to_owned());
        desk.lost.push("the balance of the batter: less leavening and sugar, more liquid, as the guide advises".to_owned());
    } else {
        desk.minded.push(
            "no line is chemically leavened, so that no weight is changed; flour is drier up there and may take more water"
                .to_owned(),
        );
    }
    if altitude.as_metres() / FOOT > 7000.0 {
        desk.minded.push("the guide ends at 7,000 feet, 2134 m: its last row is used".to_owned());
    }
}

#[cfg(test)]
mod tests {
    use super::guide;

    /// The rows of the University of Wyoming Extension's table, and what lies half-way.
    #[test]
    fn the_guide_is_read_at_its_rows_and_between() {
        assert_eq!(guide(2999.0), None);
        assert_eq!(guide(3000.0), Some((0.125, 0.03125, 0.09375)));
        assert_eq!(guide(7000.0), Some((0.25, 0.125, 0.21875)));
        assert_eq!(guide(12000.0), guide(7000.0));
        assert_eq!(guide(4000.0), Some((0.15625, 0.046875, 0.140625)));
    }
}
