//! Who may sign in: a file in the shop's folder, for its owner alone. Not in the fleet book, which every
//! phone reads.

use std::fs::{self, OpenOptions};
use std::io::Write;
use std::path::{Path, PathBuf};

use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

use super::password;

const FILE: &str = "console.json";
/// A password has at least so many characters (NIST SP 800-63B, 5.1.1.2: at least 8; value from memory).
const LEAST: usize = 8;
/// And at most so many bytes: more is no password.
const MOST: usize = 1_000;

/// What someone may do on the console.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Role {
    /// Sees everything and writes.
    Shop,
    /// Sees everything and writes nothing.
    Reader,
}

/// Someone who may sign in.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub(in crate::console) struct User {
    /// The name asked at the door; the person of this name in the fleet is who writes.
    pub(in crate::console) name: String,
    /// What they may do.
    pub(in crate::console) role: Role,
    /// The password's hash.
    pub(super) hash: String,
}

impl User {
    /// Changes when the password does.
    pub(super) fn mark(&self) -> [u8; 8] {
        let all: [u8; 32] = Sha256::digest(self.hash.as_bytes()).into();
        all.first_chunk().copied().unwrap_or_default()
    }
}

#[derive(Debug, Default, Serialize, Deserialize)]
struct Known {
    users: Vec<User>,
    /// Of an invented fleet only: the sign-in that its own page shows.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    shown: Option<(String, String)>,
}

impl Known {
    /// Whether nobody else could write any more without this one.
    fn is_last_shop(&self, name: &str) -> bool {
        let may_write = |user: &&User| user.role == Role::Shop;
        let mut shops = self.users.iter().filter(may_write);
        shops.clone().any(|user| same(&user.name, name)) && shops.all(|user| same(&user.name, name))
    }
}

/// Why users cannot be read or set.
#[derive(Debug, thiserror::Error)]
pub enum UserError {
    /// The file cannot be read or written.
    #[error("{} cannot be used: {}. Nothing was changed.", .path.display(), crate::error::plain(.reason))]
    File {
        /// Which.
        path: PathBuf,
        /// What the system said.
        reason: std::io::Error,
    },
    /// The file does not read.
    #[error("{} does not read as users of the console. Nothing was changed. Put back a copy of it, or move it aside and set passwords again.", .0.display())]
    Broken(PathBuf),
    /// The password is too short or too long.
    #[error("a password has {LEAST} characters at least. Nothing was changed.")]
    Password,
    /// A name is missing.
    #[error("say whose password this is. Nothing was changed.")]
    NoName,
    /// Nobody could write any more.
    #[error(
        "this is the last sign-in that may write. Nothing was changed. Give another one the shop role first."
    )]
    LastShop,
    /// The system has no randomness.
    #[error("the system gives no random numbers. Nothing was changed.")]
    Random,
}

/// The users of one shop.
#[derive(Clone, Debug)]
pub struct Users {
    path: PathBuf,
}

impl Users {
    /// Those of a shop's folder.
    pub fn of(folder: &Path) -> Users {
        Users { path: folder.join(FILE) }
    }

    /// Sets someone's password and role; whoever was signed in with the old one is out.
    ///
    /// # Errors
    /// When the name is empty, the password too short, or the file cannot be written.
    pub fn set(&self, name: &str, role: Role, password: &str) -> Result<(), UserError> {
        let name = name.trim();
        if name.is_empty() {
            return Err(UserError::NoName);
        }
        if password.chars().count() < LEAST || password.len() > MOST {
            return Err(UserError::Password);
        }
        let mut known = self.read()?;
        // A password that everybody was shown is no longer this one.
        known.shown = known.shown.filter(|(shown, _)| !same(shown, name));
        known.users.retain(|user| !same(&user.name, name));
        known.users.push(User { name: name.to_owned(), role, hash: password::hash(password)? });
        self.write(&known)
    }

    /// Takes someone's sign-in away; whoever was signed in with it is out. Returns whether there was one.
    ///
    /// # Errors
    /// When it is the last that may write, or the file cannot be written.
    pub fn remove(&self, name: &str) -> Result<bool, UserError> {
        let mut known = self.read()?;
        if known.is_last_shop(name) {
            return Err(UserError::LastShop);
        }
        let before = known.users.len();
        known.users.retain(|user| !same(&user.name, name));
        known.shown = known.shown.filter(|(shown, _)| !same(shown, name));
        let there = known.users.len() < before;
        self.write(&known).map(|()| there)
    }

    /// Whether nobody but this one may write.
    ///
    /// # Errors
    /// When the file does not read.
    pub fn is_last_that_writes(&self, name: &str) -> Result<bool, UserError> {
        Ok(self.read()?.is_last_shop(name))
    }

    /// Everybody who may sign in and what they may do, by name.
    ///
    /// # Errors
    /// When the file does not read.
    pub fn list(&self) -> Result<Vec<(String, Role)>, UserError> {
        let mut users: Vec<_> = self.read()?.users.into_iter().map(|user| (user.name, user.role)).collect();
        users.sort_by(|a, b| a.0.cmp(&b.0));
        Ok(users)
    }

    /// Sets a sign-in that the sign-in page of an invented fleet shows to everybody.
    ///
    /// # Errors
    /// As [`Users::set`].
    pub fn set_shown(&self, name: &str, role: Role, password: &str) -> Result<(), UserError> {
        self.set(name, role, password)?;
        let mut known = self.read()?;
        known.shown = Some((name.trim().to_owned(), password.to_owned()));
        self.write(&known)
    }

    /// Name and password that an invented fleet shows.
    ///
    /// # Errors
    /// When the file does not read.
    pub fn shown(&self) -> Result<Option<(String, String)>, UserError> {
        Ok(self.read()?.shown)
    }

    /// How many may sign in.
    ///
    /// # Errors
    /// When the file does not read.
    pub fn count(&self) -> Result<usize, UserError> {
        Ok(self.read()?.users.len())
    }

    pub(super) fn find(&self, name: &str) -> Result<Option<User>, UserError> {
        Ok(self.read()?.users.into_iter().find(|user| same(&user.name, name)))
    }

    fn read(&self) -> Result<Known, UserError> {
        match fs::read(&self.path) {
            Ok(bytes) => serde_json::from_slice(&bytes).map_err(|_| UserError::Broken(self.path.clone())),
            Err(error) if error.kind() == std::io::ErrorKind::NotFound => Ok(Known::default()),
            Err(reason) => Err(UserError::File { path: self.path.clone(), reason }),
        }
    }

    /// Beside it and then in its place, so that a stop in between leaves the old one whole.
    fn write(&self, known: &Known) -> Result<(), UserError> {
        let at = |reason| UserError::File { path: self.path.clone(), reason };
        let text = serde_json::to_vec_pretty(known).map_err(|_| UserError::Broken(self.path.clone()))?;
        let beside = self.path.with_extension("json.new");
        let mut options = OpenOptions::new();
        options.write(true).create(true).truncate(true);
        #[cfg(unix)]
        std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
        let mut file = options.open(&beside).map_err(at)?;
        file.write_all(&text).map_err(at)?;
        file.sync_all().map_err(at)?;
        fs::rename(&beside, &self.path).map_err(at)
    }
}

fn same(one: &str, other: &str) -> bool {
    one.trim().to_lowercase() == other.trim().to_lowercase()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_user_is_set_found_and_set_again() {
        let folder = tempfile::tempdir().unwrap();
        let users = Users::of(folder.path());
        assert_eq!(users.count().unwrap(), 0);
        users.set("Ilse Marrow", Role::Shop, "first words").unwrap();
        let first = users.find("ilse marrow ").unwrap().unwrap();
        assert_eq!(first.role, Role::Shop);
        users.set("ILSE MARROW", Role::Reader, "second words").unwrap();
        let second = users.find("Ilse Marrow").unwrap().unwrap();
        assert_eq!((users.count().unwrap(), second.role), (1, Role::Reader));
        assert_ne!(first.mark(), second.mark());
        #[cfg(unix)]
        {
            use std::os::unix::fs::PermissionsExt;
            let mode = fs::metadata(folder.path().join(FILE)).unwrap().permissions().mode();
            assert_eq!(mode & 0o777, 0o600);
        }
    }

    #[test]
    fn a_sign_in_is_taken_away_and_the_last_that_writes_stays() {
        let folder = tempfile::tempdir().unwrap();
        let users = Users::of(folder.path());
        users.set_shown("Ilse Marrow", Role::Shop, "first words").unwrap();
        users.set("Edric Loomis", Role::Reader, "second words").unwrap();
        assert!(matches!(users.remove("ilse marrow"), Err(UserError::LastShop)));
        assert!(users.is_last_that_writes("Ilse Marrow").unwrap());
        users.set("Dov Petrakis", Role::Shop, "third words").unwrap();
        assert!(users.remove("ilse marrow").unwrap());
        assert_eq!(users.shown().unwrap(), None, "nobody is shown a password that opens nothing");
        assert!(!users.remove("ilse marrow").unwrap());
        let names: Vec<String> = users.list().unwrap().into_iter().map(|(name, _)| name).collect();
        assert_eq!(names, ["Dov Petrakis", "Edric Loomis"]);
    }

    #[test]
    fn what_is_no_password_or_no_name_is_refused_and_a_broken_file_is_not_overwritten() {
        let folder = tempfile::tempdir().unwrap();
        let users = Users::of(folder.path());
        assert!(matches!(users.set("Ilse", Role::Shop, "short"), Err(UserError::Password)));
        assert!(matches!(users.set("Ilse", Role::Shop, &"x".repeat(1_001)), Err(UserError::Password)));
        assert!(matches!(users.set("  ", Role::Shop, "long enough"), Err(UserError::NoName)));
        fs::write(folder.path().join(FILE), "{").unwrap();
        assert!(matches!(users.set("Ilse", Role::Shop, "long enough"), Err(UserError::Broken(_))));
        assert_eq!(fs::read_to_string(folder.path().join(FILE)).unwrap(), "{");
    }
}
