//! Who may come in, who is in, and what a request must carry to change anything.

mod attempts;
mod book;
mod gate;
mod password;
mod users;

use std::path::Path;
use std::sync::Mutex;

use axum::http::{HeaderMap, header};
use sumpbook_daybook::store::SessionRow;
use sumpbook_trade::Stamp;
use tokio::sync::Semaphore;

pub(super) use attempts::Attempts;
pub(super) use book::{MOST as MOST_SESSIONS, Open, SESSION_HOURS};
pub(super) use gate::{gate, same_origin};
pub use users::{Role, UserError, Users};

use book::Sessions;

/// The cookie that names a session. The prefix makes browsers refuse it without TLS or from another host.
pub(super) const COOKIE: &str = "__Host-session";

/// As many passwords are worked out at once: each takes 19 MB for a moment.
const AT_ONCE: usize = 2;

/// The door: who is known, who is in, who tried.
pub(super) struct Doors {
    users: Users,
    sessions: Mutex<Sessions>,
    attempts: Mutex<Attempts>,
    hashing: Semaphore,
    changing: tokio::sync::Mutex<()>,
}

/// What became of a sign-in.
pub(super) enum SignIn {
    /// Come in.
    In {
        /// The cookie's value, which nobody else ever sees.
        token: String,
        /// What is kept of it.
        row: SessionRow,
    },
    /// Name or password do not match.
    Wrong {
        /// Seconds until the next try.
        wait_s: i64,
    },
    /// Tried too often: not even looked at.
    Wait {
        /// Seconds until the next try.
        wait_s: i64,
    },
}

impl Doors {
    /// The door of a shop's folder, with the sessions that are open.
    pub(super) fn of(folder: &Path, open: Vec<SessionRow>) -> Doors {
        Doors {
            users: Users::of(folder),
            sessions: Mutex::new(Sessions::of(open)),
            attempts: Mutex::default(),
            hashing: Semaphore::new(AT_ONCE),
            changing: tokio::sync::Mutex::default(),
        }
    }

    /// A turn to change who may sign in: one at a time.
    pub(super) async fn changing(&self) -> tokio::sync::MutexGuard<'_, ()> {
        self.changing.lock().await
    }

    /// Tries to sign in. An unknown name takes as long as a wrong password.
    pub(super) async fn sign_in(
        &self,
        name: &str,
        password: String,
        from: &str,
        now: Stamp,
    ) -> Result<SignIn, UserError> {
        let now_ms = now.unix_ms();
        if let Some(wait_s) = self.attempts().may(name, from, now_ms) {
            return Ok(SignIn::Wait { wait_s });
        }
        let user = self.users.find(name)?;
        let hash = user.as_ref().map(|user| user.hash.clone());
        let turn = self.hashing.acquire().await;
        let matches =
            tokio::task::spawn_blocking(move || password::matches(&password, hash.as_deref())).await;
        drop(turn);
        match user.filter(|_| matches.unwrap_or(false)) {
            Some(user) => {
                self.attempts().came_in(name, from);
                let (token, row) = self.sessions().open(&user, now_ms)?;
                Ok(SignIn::In { token, row })
            }
            None => Ok(SignIn::Wrong { wait_s: self.attempts().failed(name, from, now_ms) }),
        }
    }

    /// Whoever the request's cookie names; none when nobody, or no longer.
    pub(super) fn who(&self, headers: &HeaderMap, now: Stamp) -> Option<Open> {
        let token = cookie(headers, COOKIE)?;
        let row = self.sessions().find(&token, now.unix_ms())?;
        // A password changed or a user removed ends what was opened with the old one.
        let user = self.users.find(&row.name).ok().flatten().filter(|user| user.mark() == row.mark)?;
        Some(Open { name: row.name, role: user.role, csrf: book::csrf(&token) })
    }

    /// Ends the session of this request; gives the hash it is kept under, so that it ends there too.
    pub(super) fn end(&self, headers: &HeaderMap) -> Option<[u8; 32]> {
        let token = cookie(headers, COOKIE)?;
        self.sessions().close(&token)
    }

    fn sessions(&self) -> std::sync::MutexGuard<'_, Sessions> {
        self.sessions.lock().unwrap_or_else(std::sync::PoisonError::into_inner)
    }

    fn attempts(&self) -> std::sync::MutexGuard<'_, Attempts> {
        self.attempts.lock().unwrap_or_else(std::sync::PoisonError::into_inner)
    }
}

/// The value of a cookie.
pub(super) fn cookie(headers: &HeaderMap, name: &str) -> Option<String> {
    let all = headers.get_all(header::COOKIE).iter().filter_map(|value| value.to_str().ok());
    all.flat_map(|line| line.split(';'))
        .filter_map(|pair| pair.trim().split_once('='))
        .find(|(key, _)| *key == name)
        .map(|(_, value)| value.to_owned())
}
