//! Help that teaches, and completions.

use crate::sandbox::Sandbox;

#[test]
fn the_whole_help() {
    let sandbox = Sandbox::empty();
    let mut all = sandbox.fine(&["--help"]);
    for command in wellproved_app::command_names() {
        all.push_str(&format!("\n\n━━━ {command}\n\n{}", sandbox.fine(&[&command, "--help"])));
    }
    insta::assert_snapshot!("help", all);
}

#[test]
fn completions_for_every_shell() {
    let sandbox = Sandbox::empty();
    for shell in ["bash", "zsh", "fish", "elvish", "powershell"] {
        assert!(sandbox.fine(&["completions", shell]).contains("wellproved"), "{shell}");
    }
}

#[test]
fn an_unknown_command_is_status_2() {
    assert_eq!(Sandbox::empty().run(&["chek"]).status, 2);
    assert_eq!(Sandbox::empty().run(&["--version"]).status, 0);
}
