//! Permission to send photos: given with an answer, bound to one phone, for a quarter of an hour.
//!
//! Time and phone stand in it with a code over both that only this hub can make, so none has to be remembered.

use hmac::{Hmac, KeyInit, Mac};
use sha2::Sha256;
use sumpbook_daybook::KeyId;

/// So long a permission holds, milliseconds.
const HOLDS_MS: i64 = 15 * 60_000;

/// The hub's permissions. A hub that begins again accepts none of its earlier ones.
pub(in crate::hub) struct Tokens {
    secret: [u8; 64],
}

impl Tokens {
    pub(in crate::hub) fn new() -> Result<Tokens, getrandom::Error> {
        let mut secret = [0; 64];
        getrandom::fill(&mut secret)?;
        Ok(Tokens { secret })
    }

    /// One for this phone: six bytes of time, eight of its key id, eighteen of the code.
    pub(in crate::hub) fn of(&self, phone: KeyId, now_ms: i64) -> [u8; 32] {
        let mut token = [0; 32];
        let [_, _, time @ ..] = now_ms.to_be_bytes();
        let (head, code) = token.split_at_mut(14);
        let (when, who) = head.split_at_mut(6);
        when.copy_from_slice(&time);
        who.copy_from_slice(&phone.0);
        let whole: [u8; 32] = self.mac(head).finalize().into_bytes().into();
        for (byte, of_code) in code.iter_mut().zip(whole) {
            *byte = of_code;
        }
        token
    }

    /// The phone it was given to, when this hub gave it and it still holds.
    pub(super) fn holder(&self, token: &[u8; 32], now_ms: i64) -> Option<KeyId> {
        let (head, code) = token.split_first_chunk::<14>()?;
        let [t0, t1, t2, t3, t4, t5, who @ ..] = *head;
        let given = i64::from_be_bytes([0, 0, t0, t1, t2, t3, t4, t5]);
        // Compared in constant time: a guess must not be told how much of it was right.
        let right = self.mac(head).verify_truncated_left(code).is_ok();
        let age = now_ms.saturating_sub(given);
        (right && (-HOLDS_MS..=HOLDS_MS).contains(&age)).then_some(KeyId(who))
    }

    fn mac(&self, head: &[u8]) -> Hmac<Sha256> {
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
    fn one_holds_for_one_phone_for_a_quarter_of_an_hour_at_the_hub_that_gave_it() {
        let (hub, other) = (Tokens::new().unwrap(), Tokens::new().unwrap());
        let phone = KeyId([7; 8]);
        let given = hub.of(phone, NOW);
        assert_eq!(hub.holder(&given, NOW + HOLDS_MS), Some(phone));
        assert_eq!(hub.holder(&given, NOW + HOLDS_MS + 1), None);
        assert_eq!(other.holder(&given, NOW), None);
        for byte in 0..32 {
            let mut changed = given;
            changed[byte] ^= 1;
            assert_eq!(hub.holder(&changed, NOW), None, "byte {byte}");
        }
    }
}
