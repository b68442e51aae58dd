//! The `sumpbook` command, so that a test can begin and kill it.

use std::process::ExitCode;

fn main() -> ExitCode {
    sumpbook_shop::command::run()
}
