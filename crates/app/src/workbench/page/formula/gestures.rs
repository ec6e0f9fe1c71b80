//! What a page says that a hand did.

use super::OnBench;
use super::kitchen::Wanted;
use crate::workbench::answer::Refusal;
use bench::exchange::Part;
use bench::gesture::{Gesture, Holding, KEYS, Neighbour};
use formula::resolve::formula::StageAt;
use quantity::Measure;
use serde::Deserialize;

/// A gesture as a form says it.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub struct Said {
    gesture: String,
    at: String,
    line: String,
    amount: String,
    key: String,
    step: String,
    stays: String,
}

impl Said {
    /// The gesture that is meant.
    pub fn gesture(&self) -> Result<Gesture, Refusal> {
        let line = || self.line.clone();
        Ok(match self.gesture.as_str() {
            "amount" => Gesture::Amount(self.stage()?, line(), self.amount.clone()),
            "hold-weight" => Gesture::Hold(self.stage()?, line(), Holding::Weight),
            "hold-share" => Gesture::Hold(self.stage()?, line(), Holding::Share),
            "total" => {
                let stays = self.stays.split_whitespace().map(str::to_owned).collect();
                Gesture::Total(self.stage()?, self.mass()?, stays)
            }
            "add" => Gesture::Add(self.stage()?, line(), self.amount.clone()),
            "take-out" => Gesture::TakeOut(self.stage()?, line()),
            "up" => Gesture::Move(self.stage()?, line(), Neighbour::Above),
            "down" => Gesture::Move(self.stage()?, line(), Neighbour::Below),
            "word" => Gesture::Word(self.part()?, self.written_key()?, self.amount.clone()),
            other => return Err(Refusal::unfit(format!("There is no gesture called “{other}”."), "load the page again")),
        })
    }

    /// The text as a remark's own remedy would mend it, where that is asked for.
    pub fn mended(&self, one: &OnBench, wanted: &Wanted) -> Result<Option<(String, String)>, Refusal> {
        if self.gesture != "mend" {
            return Ok(None);
        }
        let kitchen = wanted.kitchen(one.opened)?;
        let found = one.opened.proof_read(one.checked(), &kitchen);
        let gone = || Refusal::conflict("That is no longer so.", "look at the page anew");
        let number: usize = self.amount.parse().map_err(|_| gone())?;
        let found = found.iter().find(|found| found.code == self.key && found.place.span.start == number).ok_or_else(gone)?;
        let fix = found.fix.as_ref().ok_or_else(gone)?;
        let mut text = one.source.text.clone();
        let mut edits: Vec<_> = fix.edits.iter().filter(|edit| edit.place.file == one.source.file).collect();
        edits.sort_by_key(|edit| std::cmp::Reverse(edit.place.span.start));
        for edit in edits {
            text.get(edit.place.span.clone()).ok_or_else(gone)?;
            text.replace_range(edit.place.span.clone(), &edit.text);
        }
        Ok(Some((text, fix.title.clone())))
    }

    /// A stage: "0.1" is the second of the first component.
    fn stage(&self) -> Result<StageAt, Refusal> {
        let parsed = self.at.split_once('.').and_then(|(c, s)| Some((c.parse().ok()?, s.parse().ok()?)));
        parsed.ok_or_else(|| Refusal::unfit("Which stage?", "load the page again"))
    }

    fn part(&self) -> Result<Part, Refusal> {
        if let Some(component) = self.at.strip_prefix("yield-") {
            let component = component.parse().map_err(|_| Refusal::unfit("Which component?", "load the page again"))?;
            return Ok(Part::Yield(component));
        }
        let at = self.stage()?;
        match self.step.parse() {
            Ok(step) => Ok(Part::Step(at, step)),
            Err(_) => Ok(Part::Stage(at)),
        }
    }

    fn written_key(&self) -> Result<&'static str, Refusal> {
        KEYS.into_iter()
            .find(|key| *key == self.key)
            .ok_or_else(|| Refusal::unfit(format!("“{}” is not written here.", self.key), "use the text view"))
    }

    fn mass(&self) -> Result<quantity::Mass, Refusal> {
        let wrong = || Refusal::unfit(format!("“{}” is no weight.", self.amount), "type it in gram: \"1200 g\"");
        let measure: Measure = self.amount.trim().parse().map_err(|_| wrong())?;
        measure.mass(quantity::SpoonSystem::Metric).map(|range| range.to).ok_or_else(wrong)
    }
}
