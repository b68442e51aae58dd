//! The interface other languages see is looked at whenever it changes: it stands in `bindings/interface.txt`.
//! With SUMPBOOK_WRITE=1 the file is written anew, to be read in the difference.
#![allow(clippy::unwrap_used, reason = "what this test sets up may stop it at once")]

use std::path::{Path, PathBuf};
use std::process::Command;
use std::{env, fs};

/// Built for this test, beside it.
fn library() -> PathBuf {
    let beside = env::current_exe().unwrap();
    let name = format!("{}sumpbook_bindings{}", env::consts::DLL_PREFIX, env::consts::DLL_SUFFIX);
    let library = beside.parent().unwrap().join(name);
    assert!(library.exists(), "{} was not built", library.display());
    library
}

fn kotlin() -> String {
    // Named, so that the library is built before this test.
    let _ = sumpbook_bindings::text;
    let folder = tempfile::tempdir().unwrap();
    let done = Command::new(env!("CARGO_BIN_EXE_uniffi-bindgen"))
        .args(["generate", "--language", "kotlin", "--no-format", "--out-dir"])
        .args([folder.path(), &library()])
        .current_dir(Path::new(env!("CARGO_MANIFEST_DIR")).join("../.."))
        .output()
        .unwrap();
    assert!(done.status.success(), "{}", String::from_utf8_lossy(&done.stderr));
    fs::read_to_string(folder.path().join("app/sumpbook/core/sumpbook.kt")).unwrap()
}

/// Declarations with what is in them; no comments, no bodies, nothing of the machinery beneath.
fn interface(kotlin: &str) -> String {
    let begins = |line: &str| {
        let starts =
            ["public interface ", "data class ", "sealed class ", "enum class ", "public typealias "];
        (starts.iter().any(|start| line.starts_with(start)) && !line.contains("Uniffi"))
            || (line.contains(" fun `") && !line.contains("suspend"))
    };
    let mut kept: Vec<String> = Vec::new();
    let (mut deep, mut inside) = (0_i64, false);
    for line in kotlin.lines() {
        let code = line.split("//").next().unwrap_or_default().trim();
        let comment = code.starts_with('*') || code.starts_with("/*");
        if !inside && deep == 0 && !comment && begins(line) {
            inside = true;
        }
        if comment {
            continue;
        }
        let declares =
            ["val ", "`", "data class ", "object ", "fun ", "class ", "}", ")", "enum ", "public "];
        let shown = |code: &str| {
            declares.iter().any(|start| code.starts_with(start)) || code.ends_with(',') || code.ends_with(';')
        };
        if inside && (deep == 0 || (deep <= 2 && shown(code))) && !code.is_empty() && code != "}" {
            let indent = if deep == 0 { "" } else { "    " };
            kept.push(format!("{indent}{code}"));
        }
        for sign in code.chars() {
            match sign {
                '{' | '(' => deep += 1,
                '}' | ')' => deep -= 1,
                _ => {}
            }
        }
        if deep == 0 && (code.ends_with('}') || code.ends_with(')') || !code.ends_with('{')) {
            inside = false;
        }
    }
    kept.join("\n") + "\n"
}

#[test]
fn the_interface_is_the_reviewed_one() {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("../interface.txt");
    let now = interface(&kotlin());
    for named in ["fun `exchangeOnce`", "data class TodayScreen", "sealed class PhoneException"] {
        assert!(now.contains(named), "{named} is not read out of what was generated");
    }
    if env::var_os("SUMPBOOK_WRITE").is_some() {
        fs::write(&file, &now).unwrap();
    }
    let reviewed = fs::read_to_string(&file).unwrap_or_default();
    let first = now.lines().zip(reviewed.lines()).find(|(a, b)| a != b);
    assert!(
        now == reviewed,
        "the interface changed, first at {first:?}. If it should: SUMPBOOK_WRITE=1 cargo test -p sumpbook-bindgen, \
         and read the difference of bindings/interface.txt"
    );
}

#[test]
fn errors_stay_few_and_no_name_clashes_with_the_languages() {
    let kotlin = kotlin();
    let errors = kotlin.split("sealed class PhoneException").nth(1).unwrap();
    let errors = errors.split("companion object").next().unwrap();
    let variants = errors.matches("\n    class ").count();
    assert!((1..=12).contains(&variants), "{variants} kinds of error");
    assert!(!kotlin.contains("fun `close`"), "an object's close() is the language's own");
}
