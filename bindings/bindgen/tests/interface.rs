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

/// Declarations with what is in them, and calls; no comments, no bodies, nothing of the machinery beneath.
fn interface(kotlin: &str) -> String {
    let begins = ["public interface ", "data class ", "sealed class ", "enum class "];
    let holds = ["val `", "fun `", "data class ", "object ", "class "];
    let mut kept: Vec<String> = Vec::new();
    let (mut deep, mut inside, mut comment) = (0_i64, false, false);
    for line in kotlin.lines() {
        // A call stands on the line on which the comment before it ends.
        let mut code = line.split("//").next().unwrap_or_default().trim();
        if comment || code.starts_with("/*") {
            comment = !code.contains("*/");
            code = code.rsplit("*/").next().unwrap_or_default().trim();
            if comment {
                continue;
            }
        }
        let ours = !code.contains("Uniffi") && !code.contains("FfiConverter") && !code.contains("uniffi_");
        let plain = code.trim_start_matches("@Throws(PhoneException::class)").trim();
        let plain = plain.trim_end_matches([',', '{']).trim_end();
        if deep == 0 && ours && begins.iter().any(|start| code.starts_with(start)) {
            inside = true;
            kept.push(plain.to_owned());
        } else if deep == 0 && ours && plain.starts_with("public typealias ") {
            kept.push(plain.to_owned());
        } else if inside && deep <= 2 && holds.iter().any(|start| plain.starts_with(start)) {
            kept.push(format!("    {plain}"));
        } else if inside
            && deep == 1
            && plain.chars().all(|c| c.is_ascii_uppercase() || "_0123456789;".contains(c))
        {
            kept.extend(Some(format!("    {}", plain.trim_end_matches(';'))).filter(|name| name.len() > 4));
        } else if !inside && ours && plain.starts_with("fun `") && (deep == 0 || plain.ends_with("): Phone"))
        {
            kept.push(plain.to_owned());
        }
        for sign in code.chars() {
            match sign {
                '{' | '(' => deep += 1,
                '}' | ')' => deep -= 1,
                _ => {}
            }
        }
        inside = inside && deep > 0;
    }
    kept.join("\n") + "\n"
}

#[test]
fn the_interface_is_the_reviewed_one() {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("../interface.txt");
    let now = interface(&kotlin());
    for named in [
        "fun `exchangeOnce`",
        "fun `enrolByCode`",
        "fun `texts`",
        "data class TodayScreen",
        "sealed class PhoneException",
    ] {
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
