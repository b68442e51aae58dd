//! The `sumpbook` command.

use std::process::ExitCode;

fn main() -> ExitCode {
    sumpbook_shop::command::run()
}
