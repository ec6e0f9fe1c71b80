//! The examples of a container and a service name files, packages, options and libraries that are there.

use crate::{read, root};
use std::process::Command;

const PROGRAM: &str = env!("CARGO_BIN_EXE_wellproved");

/// Asks for help at the end of a command: what stands before has to be understood for that.
#[track_caller]
fn is_understood(words: &[String]) {
    assert!(words[0].ends_with("wellproved"), "{words:?}");
    let ran = Command::new(PROGRAM).args(&words[1..]).arg("--help").output().expect("the program");
    assert!(ran.status.success(), "{words:?}: {}", String::from_utf8_lossy(&ran.stderr));
}

fn after<'t>(text: &'t str, word: &str) -> Vec<&'t str> {
    text.lines().filter_map(|line| line.strip_prefix(word)).map(str::trim).collect()
}

#[test]
fn the_container_is_built_of_what_is_there() {
    let file = read("docs/serving/Containerfile");
    let entry: Vec<String> = serde_json::from_str(after(&file, "ENTRYPOINT")[0]).expect("a list of words");
    is_understood(&entry);
    assert!(entry.windows(2).any(|two| two[0] == "--port" && after(&file, "EXPOSE") == [two[1].as_str()]), "{entry:?}");
    assert_eq!(after(&file, "VOLUME"), [entry[2].as_str()], "the book");
    let build = after(&file, "RUN cargo")[0];
    assert_eq!(build, "build --release --locked -p app");
    assert!(read("crates/app/Cargo.toml").contains("name = \"wellproved\""), "the program that is copied");
    assert!(file.contains("/house/target/release/wellproved"));
    // What is sent along is the source and what it includes; what was built before is not.
    let sent = read(".dockerignore");
    let let_in: Vec<&str> = after(&sent, "!");
    assert_eq!(sent.lines().find(|line| !line.starts_with('#')), Some("*"));
    for path in &let_in {
        assert!(root().join(path).exists(), "{path}");
    }
    for needed in ["Cargo.toml", "Cargo.lock", "crates", "examples"] {
        assert!(let_in.contains(&needed), "{needed} is needed");
    }
}

/// The image that it runs in has the C library and that of the compiler, and no others are asked for.
#[test]
fn the_program_needs_no_more_than_the_image_has() {
    let Ok(ran) = Command::new("ldd").arg(PROGRAM).output() else { return };
    let told = String::from_utf8_lossy(&ran.stdout).into_owned();
    for line in told.lines().map(str::trim) {
        let is_there = ["linux-vdso", "libc.so.6", "libm.so.6", "libgcc_s.so.1", "/lib", "libpthread.so.0", "libdl.so.2"];
        assert!(is_there.iter().any(|own| line.starts_with(own)), "{line}");
    }
}

#[test]
fn the_service_says_what_the_program_understands() {
    let file = read("docs/serving/wellproved.service");
    for word in ["ExecStartPre=", "ExecStart="] {
        let words: Vec<String> = after(&file, word)[0].split(' ').map(str::to_owned).collect();
        is_understood(&words);
    }
    let folder = after(&file, "ReadWritePaths=")[0];
    assert!(after(&file, "ExecStart=")[0].contains(folder), "it may write where its book is");
}
