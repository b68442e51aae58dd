//! Passwords: argon2id, each with its own salt.

use std::sync::OnceLock;

use argon2::Argon2;
use argon2::password_hash::phc::PasswordHash;
use argon2::password_hash::{PasswordHasher, PasswordVerifier};

use super::UserError;

/// A password's hash with its salt and parameters, as a PHC string. Parameters are the crate's own: argon2id,
/// 19 MiB, two passes (OWASP Password Storage Cheat Sheet, value from memory).
pub(super) fn hash(password: &str) -> Result<String, UserError> {
    let made = Argon2::default().hash_password(password.as_bytes());
    Ok(made.map_err(|_| UserError::Random)?.to_string())
}

/// Whether the password is the hash's. Without a hash the same work is done and the answer is no.
pub(super) fn matches(password: &str, kept: Option<&str>) -> bool {
    let against = kept.unwrap_or_else(|| nobodys());
    let Ok(parsed) = PasswordHash::new(against) else { return false };
    let same = Argon2::default().verify_password(password.as_bytes(), &parsed).is_ok();
    same && kept.is_some()
}

/// A hash that no user has.
fn nobodys() -> &'static str {
    static HASH: OnceLock<String> = OnceLock::new();
    HASH.get_or_init(|| hash("nobody's").unwrap_or_default())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_hash_says_argon2id_and_holds_its_password_only() {
        let kept = hash("three words here").unwrap();
        assert!(kept.starts_with("$argon2id$v=19$"), "{kept}");
        assert!(matches("three words here", Some(&kept)));
        assert!(!matches("three words hers", Some(&kept)));
        assert_ne!(hash("three words here").unwrap(), kept, "each has its own salt");
    }

    #[test]
    fn without_a_hash_nothing_matches_not_even_what_nobody_has() {
        assert!(!matches("nobody's", None));
        assert!(!matches("anything", Some("not a hash")));
    }
}
