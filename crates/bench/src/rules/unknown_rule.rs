//! A rule is silenced that does not exist.

use super::{Case, Rule};
use formula::ingredient::{did_you_mean, nearest};
use formula::{Diagnostic, Severity};

/// A rule is silenced that does not exist.
pub const RULE: Rule = Rule { code: "unknown-rule", severity: Severity::Warning, page: include_str!("unknown_rule.md"), check };

fn check(case: &Case, found: &mut Vec<Diagnostic>) {
    for quiet in case.formula.quiets.iter().filter(|quiet| super::named(&quiet.rule).is_none()) {
        let message = format!("no rule is called “{}”", quiet.rule);
        let near = nearest(&quiet.rule, super::ALL.iter().map(|rule| rule.code));
        let hint = near.map_or_else(|| "`wellproved explain` lists them all".to_owned(), did_you_mean);
        found.push(RULE.at(quiet.place.clone(), message).hint(hint));
    }
}
