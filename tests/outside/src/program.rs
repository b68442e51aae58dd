//! Other people's programs: asked when they are there, and named when they are not.

use std::path::PathBuf;
use std::process::{Command, Output};

/// This crate's own folder.
pub fn here() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// Whether `program` runs with these arguments and ends well.
pub fn answers(program: &str, arguments: &[&str]) -> bool {
    Command::new(program).args(arguments).current_dir(here()).output().is_ok_and(|out| out.status.success())
}

/// What `program` prints with these arguments, in this crate's folder.
///
/// # Panics
/// When it cannot be started or ends with an error; both are the check's failure.
pub fn ask(program: &str, arguments: &[&str]) -> String {
    let out: Output =
        Command::new(program).args(arguments).current_dir(here()).output().expect("the program starts");
    let said = String::from_utf8_lossy(&out.stdout).into_owned();
    assert!(out.status.success(), "{program}: {said}{}", String::from_utf8_lossy(&out.stderr));
    said
}
