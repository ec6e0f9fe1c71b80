//! `explain`: every fault has its page.

use crate::sandbox::Sandbox;

#[test]
fn every_fault_can_be_explained() {
    let sandbox = Sandbox::empty();
    for fault in formula::fault::ALL {
        let out = sandbox.fine(&["explain", fault.code]);
        assert!(out.starts_with(&format!("# {}", fault.code)), "{out}");
    }
}

#[test]
fn every_rule_can_be_explained() {
    let sandbox = Sandbox::empty();
    for rule in bench::rules::ALL {
        let out = sandbox.fine(&["explain", rule.code]);
        assert!(out.starts_with(&format!("# {}", rule.code)), "{out}");
    }
}

#[test]
fn the_list_and_the_nearest_name() {
    let sandbox = Sandbox::empty();
    insta::assert_snapshot!("explain_list", sandbox.fine(&["explain"]));
    let ran = sandbox.run(&["explain", "unknown-ingredients"]);
    assert_eq!(ran.status, 2);
    assert!(ran.err.contains("did you mean “unknown-ingredient”?"), "{}", ran.err);
}
