//! Wrong tries of a secret that someone types: counted before they are looked at, and slowed down.

use serde::{Deserialize, Serialize};

use super::folded;
use crate::ledger::LedgerError;
use crate::store::Store;

/// So many wrong ones are free; then each makes the next wait.
const FREE: u32 = 3;
const FIRST_WAIT_S: i64 = 30;
const LONGEST_WAIT_S: i64 = 3_600;

/// Wrong ones since the last right one.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) struct Tries {
    wrong: u32,
    last_ms: i64,
}

impl Tries {
    /// Those kept under a name.
    pub(crate) fn read(store: &Store, name: &str) -> Result<Tries, LedgerError> {
        Ok(store.setting(name)?.and_then(|bytes| folded::from_bytes(&bytes)).unwrap_or_default())
    }

    pub(crate) fn keep(self, store: &mut Store, name: &str) -> Result<(), LedgerError> {
        Ok(store.set_setting(name, &folded::to_bytes(&self)?)?)
    }

    /// One try more, counted before it is looked at.
    pub(crate) fn one_more(self, now_ms: i64) -> Tries {
        Tries { wrong: self.wrong.saturating_add(1), last_ms: now_ms }
    }

    /// A clock set back begins the wait anew.
    pub(crate) fn seen_at(self, now_ms: i64) -> Tries {
        Tries { last_ms: self.last_ms.min(now_ms), ..self }
    }

    /// Seconds until the next try: none for the first three, then 30 s, doubled at each, at most an hour. A
    /// clock set forward shortens it; by hand nobody comes far.
    pub(crate) fn wait_s(self, now_ms: i64) -> i64 {
        let Some(over) = self.wrong.checked_sub(FREE) else { return 0 };
        let wait = FIRST_WAIT_S.saturating_mul(1i64 << over.min(10)).min(LONGEST_WAIT_S);
        let gone = now_ms.saturating_sub(self.last_ms).max(0);
        let left = wait.saturating_mul(1_000).saturating_sub(gone);
        (left.max(0).saturating_add(999)) / 1_000
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn three_wrong_ones_are_free_and_then_each_doubles_the_wait_up_to_an_hour() {
        let mut tries = Tries::default();
        let mut waits = Vec::new();
        for _ in 0..12 {
            tries = tries.one_more(1_000);
            waits.push(tries.wait_s(1_000));
        }
        assert_eq!(waits, [0, 0, 30, 60, 120, 240, 480, 960, 1_920, 3_600, 3_600, 3_600]);
        assert_eq!(tries.wait_s(1_000 + 3_599_001), 1);
        assert_eq!(tries.wait_s(1_000 + 3_600_000), 0);
    }

    #[test]
    fn a_clock_set_back_does_not_shorten_the_wait() {
        let tries = Tries::default().one_more(0).one_more(0).one_more(90_000);
        assert_eq!(tries.wait_s(90_000), 30);
        assert_eq!(tries.wait_s(10_000), 30);
        let seen = tries.seen_at(10_000);
        assert_eq!((seen.wait_s(10_000), seen.wait_s(39_999), seen.wait_s(40_000)), (30, 1, 0));
    }
}
