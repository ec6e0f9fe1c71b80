//! The `wellproved` program.

use std::process::ExitCode;

fn main() -> ExitCode {
    wellproved_app::run()
}
