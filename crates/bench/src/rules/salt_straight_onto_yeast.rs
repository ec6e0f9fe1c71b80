//! Salt or sugar put dry onto plain yeast, with nothing between them.

use super::{Case, Rule};
use formula::Line;
use formula::read::Group;
use formula::resolve::formula::Word;
use formula::{Diagnostic, Severity};

/// Salt or sugar put dry onto plain yeast, with nothing between them.
pub const RULE: Rule = Rule {
    code: "salt-straight-onto-yeast",
    severity: Severity::Advice,
    page: include_str!("salt_straight_onto_yeast.md"),
    check,
};

/// Words that bring two things together with nothing between.
const TOUCHING: [&str; 5] = ["with", "over", "onto", "on top of", "on"];

/// Which of the two is yeast and which is salt or sugar.
fn pair<'l>(one: &'l Line, other: &'l Line) -> Option<(&'l Line, &'l Line)> {
    let yeast = |line: &Line| line.ingredient().is_some_and(|one| one.yeast().is_some());
    let harsh = |line: &Line| line.ingredient().is_some_and(|one| matches!(one.group, Group::Salt | Group::Sugar));
    if yeast(one) && harsh(other) { Some((one, other)) } else { (harsh(one) && yeast(other)).then_some((other, one)) }
}

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for ((_, s), stage) in case.formula.stages() {
        for step in &stage.steps {
            let line = |word: &Word| match word {
                Word::Line { stage: at, line, .. } if *at == s => stage.lines.get(*line),
                _ => None,
            };
            for (i, three) in step.words.windows(3).enumerate() {
                let (Some(one), Word::Text(between), Some(other)) = (line(&three[0]), &three[1], line(&three[2])) else {
                    continue;
                };
                let is_first = i == 0 || i == 1 || matches!(&step.words[i - 1], Word::Text(before) if before.contains(". "));
                let Some((yeast, harsh)) = pair(one, other) else { continue };
                if is_first && TOUCHING.contains(&between.trim()) {
                    let message = format!("{} goes dry onto {}: it draws the water out of the cells", harsh.title, yeast.title);
                    found.push(RULE.at(step.place.clone(), message).hint("mix one of them through the flour or the water first"));
                }
            }
        }
    }
}
