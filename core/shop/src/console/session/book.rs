//! Who is in: sessions by the hash of what their cookie says, so that whoever reads memory or a dump of it
//! cannot come in with what is found.

use std::collections::HashMap;

use sha2::{Digest, Sha256};
use sumpbook_daybook::store::SessionRow;

use super::UserError;
use super::users::{Role, User};

/// A session ends after so long.
pub(in crate::console) const SESSION_HOURS: i64 = 12;
/// As many are open at most; the oldest makes room.
pub(in crate::console) const MOST: usize = 1_000;

/// An open session.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(in crate::console) struct Open {
    /// Whose.
    pub(in crate::console) name: String,
    /// What they may do.
    pub(in crate::console) role: Role,
    /// What every form of this session carries.
    pub(in crate::console) csrf: String,
}

/// All of them, as they stand in the shop's store too: by the hash of what their cookies say.
#[derive(Debug, Default)]
pub(super) struct Sessions(HashMap<[u8; 32], SessionRow>);

impl Sessions {
    /// Those that were open before the hub was started again.
    pub(super) fn of(rows: Vec<SessionRow>) -> Sessions {
        Sessions(rows.into_iter().map(|row| (row.hash, row)).collect())
    }

    /// Opens one under a new name, whatever the browser brought. Gives the cookie's value, and what is kept of it.
    pub(super) fn open(&mut self, user: &User, now_ms: i64) -> Result<(String, SessionRow), UserError> {
        self.0.retain(|_, open| open.ends_ms > now_ms);
        if self.0.len() >= MOST {
            let oldest = self.0.iter().min_by_key(|(_, open)| open.ends_ms).map(|(key, _)| *key);
            self.0.remove(&oldest.unwrap_or_default());
        }
        let token = random()?;
        let row = SessionRow {
            hash: hashed(&token),
            name: user.name.clone(),
            mark: user.mark(),
            ends_ms: now_ms.saturating_add(SESSION_HOURS.saturating_mul(3_600_000)),
        };
        self.0.insert(row.hash, row.clone());
        Ok((token, row))
    }

    /// The session a cookie's value names, while it lasts.
    pub(super) fn find(&self, token: &str, now_ms: i64) -> Option<SessionRow> {
        self.0.get(&hashed(token)).filter(|open| open.ends_ms > now_ms).cloned()
    }

    /// Ends one; gives the hash it was kept under.
    pub(super) fn close(&mut self, token: &str) -> Option<[u8; 32]> {
        let hash = hashed(token);
        self.0.remove(&hash).map(|_| hash)
    }
}

/// What every form of a session carries. It follows from the cookie, so it is kept nowhere; and the cookie does not
/// follow from it.
pub(super) fn csrf(token: &str) -> String {
    let all = Sha256::new_with_prefix(b"sumpbook console form 1").chain_update(token.as_bytes()).finalize();
    all.iter().map(|byte| format!("{byte:02x}")).collect()
}

fn hashed(token: &str) -> [u8; 32] {
    Sha256::digest(token.as_bytes()).into()
}

/// 256 random bits in hex.
fn random() -> Result<String, UserError> {
    let mut bytes = [0u8; 32];
    getrandom::fill(&mut bytes).map_err(|_| UserError::Random)?;
    Ok(bytes.iter().map(|byte| format!("{byte:02x}")).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn user() -> User {
        User { name: "Ilse Marrow".into(), role: Role::Shop, hash: "hash".into() }
    }

    #[test]
    fn a_session_ends_by_itself_and_at_the_door() {
        let mut sessions = Sessions::default();
        let (token, _) = sessions.open(&user(), 0).unwrap();
        assert_eq!(token.len(), 64);
        let end = SESSION_HOURS * 3_600_000;
        assert!(sessions.find(&token, end - 1).is_some());
        assert!(sessions.find(&token, end).is_none());
        assert!(sessions.find("guess", 1).is_none());
        sessions.close(&token);
        assert!(sessions.find(&token, 1).is_none());
    }

    #[test]
    fn the_cookie_is_not_kept_only_its_hash() {
        let mut sessions = Sessions::default();
        let (token, _) = sessions.open(&user(), 0).unwrap();
        assert!(!format!("{sessions:?}").contains(&token));
        assert_ne!(sessions.open(&user(), 0).unwrap().0, token, "each sign-in has its own");
        let form = csrf(&token);
        assert!(form.len() == 64 && form != token && form != csrf("another"));
    }

    #[test]
    fn the_oldest_makes_room() {
        let mut sessions = Sessions::default();
        let (first, _) = sessions.open(&user(), 0).unwrap();
        for n in 1..=MOST {
            sessions.open(&user(), i64::try_from(n).unwrap()).unwrap();
        }
        assert_eq!(sessions.0.len(), MOST);
        assert!(sessions.find(&first, 1).is_none());
    }
}
