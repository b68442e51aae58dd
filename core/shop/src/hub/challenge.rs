//! Challenges: a parcel answers to one, so that nobody can send an old one again.
//!
//! A challenge is its time, two random bytes, and a code over both that only this hub can make, so none has to
//! be remembered before it is used. Who used one without being known gains nothing and fills no memory.

use std::collections::HashMap;
use std::sync::Mutex;

use hmac::{Hmac, KeyInit, Mac};
use sha2::Sha256;

/// So long a challenge holds, milliseconds.
const HOLDS_MS: i64 = 15 * 60_000;

/// The hub's challenges. A hub that begins again accepts none of its earlier ones.
pub(super) struct Challenges {
    secret: [u8; 64],
    used: Mutex<HashMap<[u8; 16], i64>>,
}

impl Challenges {
    pub(super) fn new() -> Result<Challenges, getrandom::Error> {
        let mut secret = [0; 64];
        getrandom::fill(&mut secret)?;
        Ok(Challenges { secret, used: Mutex::default() })
    }

    /// A fresh one.
    pub(super) fn fresh(&self, now_ms: i64) -> Result<[u8; 16], getrandom::Error> {
        let mut random = [0; 2];
        getrandom::fill(&mut random)?;
        let [_, _, time @ ..] = now_ms.to_be_bytes();
        let [t0, t1, t2, t3, t4, t5] = time;
        let head = [t0, t1, t2, t3, t4, t5, random[0], random[1]];
        let mut challenge = [0; 16];
        let (first, last) = challenge.split_at_mut(8);
        first.copy_from_slice(&head);
        last.copy_from_slice(&self.code(&head));
        Ok(challenge)
    }

    /// Whether this hub gave it, lately, and nobody used it.
    pub(super) fn holds(&self, challenge: &[u8; 16], now_ms: i64) -> bool {
        let Some((head, code)) = challenge.split_first_chunk::<8>() else { return false };
        let [t0, t1, t2, t3, t4, t5, _, _] = *head;
        let given = i64::from_be_bytes([0, 0, t0, t1, t2, t3, t4, t5]);
        let age = now_ms.saturating_sub(given);
        // Compared in constant time: a guess must not be told how much of it was right.
        let right = self.mac(head).verify_truncated_left(code).is_ok();
        let unused = self.used.lock().is_ok_and(|used| !used.contains_key(challenge));
        right && unused && (-HOLDS_MS..=HOLDS_MS).contains(&age)
    }

    /// It is used. Called for parcels of known devices only.
    pub(super) fn use_up(&self, challenge: [u8; 16], now_ms: i64) {
        if let Ok(mut used) = self.used.lock() {
            if used.len() % 1_024 == 1_023 {
                used.retain(|_, at| now_ms.saturating_sub(*at) <= 2 * HOLDS_MS);
            }
            used.insert(challenge, now_ms);
        }
    }

    fn code(&self, head: &[u8; 8]) -> [u8; 8] {
        let whole: [u8; 32] = self.mac(head).finalize().into_bytes().into();
        let [c0, c1, c2, c3, c4, c5, c6, c7, ..] = whole;
        [c0, c1, c2, c3, c4, c5, c6, c7]
    }

    fn mac(&self, head: &[u8; 8]) -> Hmac<Sha256> {
        let mut mac = Hmac::<Sha256>::new(&self.secret.into());
        mac.update(head);
        mac
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const NOW: i64 = 1_792_526_400_000;

    #[test]
    fn one_holds_once_for_a_quarter_of_an_hour_at_the_hub_that_gave_it() {
        let (hub, other) = (Challenges::new().unwrap(), Challenges::new().unwrap());
        let given = hub.fresh(NOW).unwrap();
        assert!(hub.holds(&given, NOW + HOLDS_MS) && !hub.holds(&given, NOW + HOLDS_MS + 1));
        assert!(!other.holds(&given, NOW));
        for byte in 0..16 {
            let mut changed = given;
            changed[byte] ^= 1;
            assert!(!hub.holds(&changed, NOW), "byte {byte}");
        }
        hub.use_up(given, NOW);
        assert!(!hub.holds(&given, NOW));
        assert!(hub.holds(&hub.fresh(NOW).unwrap(), NOW));
    }
}
