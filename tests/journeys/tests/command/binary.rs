//! The real `sumpbook`, run in a folder of its own.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::OnceLock;

use serde_json::Value;
use tempfile::TempDir;

/// Where it stands. It is built first, or the whole workspace was (SUMPBOOK_BUILT): a test of another package may find
/// an older one, or none. Built alone its crates have other features, so all of them are built once more.
fn sumpbook() -> &'static Path {
    static BINARY: OnceLock<PathBuf> = OnceLock::new();
    BINARY.get_or_init(|| {
        let test = std::env::current_exe().unwrap();
        let profile = test.parent().and_then(Path::parent).unwrap();
        let name = match profile.file_name().and_then(|name| name.to_str()).unwrap() {
            "debug" => "dev",
            other => other,
        };
        let binary = profile.join(format!("sumpbook{}", std::env::consts::EXE_SUFFIX));
        if std::env::var_os("SUMPBOOK_BUILT").is_some() && binary.exists() {
            return binary;
        }
        let built = Command::new(env!("CARGO"))
            .current_dir(env!("CARGO_MANIFEST_DIR"))
            .args(["build", "--quiet", "-p", "sumpbook-shop", "--profile", name, "--target-dir"])
            .arg(profile.parent().unwrap())
            .stderr(Stdio::null())
            .status()
            .unwrap();
        assert!(built.success() && binary.exists(), "no sumpbook in {}", profile.display());
        binary
    })
}

/// What a run ended with.
#[derive(Debug)]
pub(crate) struct Ran {
    /// Exit code.
    pub code: i32,
    /// Standard output.
    pub out: String,
    /// Standard error.
    pub err: String,
}

impl Ran {
    /// It went well: what it said.
    pub(crate) fn well(self) -> String {
        assert_eq!(self.code, 0, "{}\n{}", self.out, self.err);
        self.out
    }

    /// It went well: what it said, as JSON.
    pub(crate) fn json(self) -> Value {
        serde_json::from_str(&self.well()).unwrap()
    }

    /// It was refused with exit code 1, and this is the reason.
    pub(crate) fn refused(self) -> String {
        assert_eq!(self.code, 1, "{}\n{}", self.out, self.err);
        let said = format!("{}{}", self.out, self.err);
        assert!(!said.contains("panicked"), "{said}");
        said
    }
}

/// A folder in which a shop and phones have theirs.
pub(crate) struct Desk {
    folder: TempDir,
}

impl Desk {
    pub(crate) fn new() -> Desk {
        Desk { folder: tempfile::tempdir().unwrap() }
    }

    pub(crate) fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    pub(crate) fn write(&self, name: &str, bytes: impl AsRef<[u8]>) {
        std::fs::write(self.path(name), bytes).unwrap();
    }

    pub(crate) fn read(&self, name: &str) -> Vec<u8> {
        std::fs::read(self.path(name)).unwrap()
    }

    /// Runs `sumpbook` here, with this on its standard input.
    pub(crate) fn run(&self, args: &[&str], input: &str) -> Ran {
        let mut child = Command::new(sumpbook())
            .current_dir(self.folder.path())
            .env_remove("SUMPBOOK_SHOP")
            .args(args)
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        // A command that reads nothing may be gone already.
        let _ = child.stdin.take().unwrap().write_all(input.as_bytes());
        let output = child.wait_with_output().unwrap();
        Ran {
            code: output.status.code().unwrap(),
            out: String::from_utf8(output.stdout).unwrap(),
            err: String::from_utf8(output.stderr).unwrap(),
        }
    }

    /// The shop's verb at a moment.
    pub(crate) fn at_shop(&self, moment: &str, args: &[&str]) -> Ran {
        let all = [&["--shop", "shop", "--json"], args, &["--received", moment]].concat();
        self.run(&all, "")
    }

    /// A reading verb of the shop.
    pub(crate) fn ask(&self, args: &[&str]) -> Ran {
        self.run(&[&["--shop", "shop"], args].concat(), "")
    }

    /// A phone's verb at a moment.
    pub(crate) fn phone(&self, phone: &str, moment: &str, args: &[&str], input: &str) -> Ran {
        self.run(&[&["--json", "phone", phone, "--now", moment], args].concat(), input)
    }
}
