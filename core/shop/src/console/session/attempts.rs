//! Guessing takes time: after a wrong password the same name waits from the same address, and a name or an
//! address that fails often waits for everybody.

use std::collections::{HashMap, VecDeque};

/// After a wrong password, this name from this address waits so long.
pub(in crate::console) const WAIT_MS: i64 = 30_000;
/// Failures are remembered so long.
const WINDOW_MS: i64 = 15 * 60_000;
/// A name waits after so many of them, wherever they came from.
const OF_A_NAME: usize = 10;
/// An address waits after so many of them, whoever was named.
const OF_AN_ADDRESS: usize = 20;
/// As many names and addresses are remembered at most.
const MOST: usize = 10_000;

/// Failures by name, by address, and by both.
#[derive(Debug, Default)]
pub(in crate::console) struct Attempts {
    failed: HashMap<Key, VecDeque<i64>>,
}

#[derive(Clone, Debug, PartialEq, Eq, Hash)]
enum Key {
    Name(String),
    Address(String),
    Both(String, String),
}

impl Key {
    fn all(name: &str, from: &str) -> [Key; 3] {
        let name = name.trim().to_lowercase();
        [Key::Both(name.clone(), from.to_owned()), Key::Name(name), Key::Address(from.to_owned())]
    }

    /// How many failures are let be, and how long the wait is counted from the last.
    fn limit(&self) -> (usize, i64) {
        match self {
            Key::Both(..) => (1, WAIT_MS),
            Key::Name(_) => (OF_A_NAME, WINDOW_MS),
            Key::Address(_) => (OF_AN_ADDRESS, WINDOW_MS),
        }
    }
}

impl Attempts {
    /// Seconds to wait before this name may be tried from this address; none when it may be tried now.
    pub(super) fn may(&self, name: &str, from: &str, now_ms: i64) -> Option<i64> {
        let wait = Key::all(name, from).into_iter().filter_map(|key| {
            let (most, window) = key.limit();
            let failed = self.failed.get(&key)?;
            // Full again when the oldest of the last `most` leaves the window.
            let oldest = failed.len().checked_sub(most).and_then(|place| failed.get(place))?;
            Some(oldest.saturating_add(window).saturating_sub(now_ms)).filter(|left| *left > 0)
        });
        wait.max().map(seconds)
    }

    /// Notes a failure; says how many seconds to wait.
    pub(super) fn failed(&mut self, name: &str, from: &str, now_ms: i64) -> i64 {
        self.failed.retain(|_, at| at.back().is_some_and(|last| now_ms.saturating_sub(*last) < WINDOW_MS));
        for key in Key::all(name, from) {
            if self.failed.len() < MOST || self.failed.contains_key(&key) {
                let failed = self.failed.entry(key).or_default();
                failed.push_back(now_ms);
                while failed.len() > OF_AN_ADDRESS {
                    failed.pop_front();
                }
            }
        }
        self.may(name, from, now_ms).unwrap_or_else(|| seconds(WAIT_MS))
    }

    /// The right password was given: this name from this address starts anew.
    pub(super) fn came_in(&mut self, name: &str, from: &str) {
        let [both, ..] = Key::all(name, from);
        self.failed.remove(&both);
    }
}

fn seconds(ms: i64) -> i64 {
    ms.saturating_add(999).div_euclid(1_000)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_failure_makes_this_name_wait_here_and_nobody_else() {
        let mut attempts = Attempts::default();
        assert_eq!(attempts.may("Ilse", "10.0.0.1", 0), None);
        assert_eq!(attempts.failed("Ilse", "10.0.0.1", 0), 30);
        assert_eq!(attempts.may(" ilse", "10.0.0.1", 10_500), Some(20));
        assert_eq!(attempts.may("Ilse", "10.0.0.2", 10_500), None, "from elsewhere she comes in");
        assert_eq!(attempts.may("Dov", "10.0.0.1", 10_500), None, "her colleague too");
        assert_eq!(attempts.may("Ilse", "10.0.0.1", 30_000), None);
    }

    #[test]
    fn a_name_guessed_from_many_places_waits_everywhere() {
        let mut attempts = Attempts::default();
        for n in 0..10 {
            assert_eq!(attempts.may("Ilse", &format!("10.0.0.{n}"), n), None);
            attempts.failed("Ilse", &format!("10.0.0.{n}"), n);
        }
        assert_eq!(attempts.may("Ilse", "10.0.0.99", 60_000), Some(840));
        assert_eq!(attempts.may("Dov", "10.0.0.99", 60_000), None);
        assert_eq!(attempts.may("Ilse", "10.0.0.99", WINDOW_MS), None);
    }

    #[test]
    fn an_address_that_guesses_many_names_waits() {
        let mut attempts = Attempts::default();
        for n in 0..20 {
            attempts.failed(&format!("name {n}"), "10.0.0.1", 0);
        }
        assert_eq!(attempts.may("Ilse", "10.0.0.1", 0), Some(900));
        assert_eq!(attempts.may("Ilse", "10.0.0.2", 0), None);
    }

    #[test]
    fn the_right_password_starts_anew() {
        let mut attempts = Attempts::default();
        attempts.failed("Ilse", "10.0.0.1", 0);
        attempts.came_in("Ilse", "10.0.0.1");
        assert_eq!(attempts.may("Ilse", "10.0.0.1", 1), None);
    }

    #[test]
    fn a_flood_of_names_takes_no_more_memory() {
        let mut attempts = Attempts::default();
        for n in 0..12_000 {
            attempts.failed(&format!("name {n}"), &format!("address {n}"), 0);
        }
        assert!(attempts.failed.len() <= MOST);
    }
}
