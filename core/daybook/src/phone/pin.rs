//! A person's own PIN on this phone: asked at a signature, never recorded and never sent.
//!
//! It proves that whoever signed knew the PIN of that person on this phone, unlocked; no more than that.

use argon2::password_hash::phc::PasswordHash;
use argon2::password_hash::{PasswordHasher, PasswordVerifier};
use argon2::{Algorithm, Argon2, Params, Version};
use sumpbook_trade::{PersonId, Stamp};

use super::Daybook;
use crate::ledger::LedgerError;
use crate::state::Tries;

/// Fewest and most digits of a PIN.
const DIGITS: std::ops::RangeInclusive<usize> = 6..=12;
/// How many digits a PIN is asked with: the fewest that are taken.
pub const ASKED_DIGITS: u8 = 6;
/// What the device's secret is asked for: a verifier is worth nothing without the key that the keystore seals.
const PURPOSE: &[u8] = b"sumpbook pin 1";

/// What a typed PIN is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PinSaid {
    /// The person's own.
    Right,
    /// Another. Counted.
    Wrong {
        /// Seconds until the next try; 0 at first.
        wait_s: i64,
    },
    /// Too many were wrong: this one was not looked at.
    Wait {
        /// Seconds until the next try.
        wait_s: i64,
    },
    /// The person has chosen none on this phone.
    NotChosen,
}

/// Why a PIN was not taken. The one before stands.
#[derive(Debug, thiserror::Error)]
pub enum PinError {
    /// Not 6 to 12 digits.
    #[error("A PIN has 6 to 12 digits and nothing else. Nothing was changed. Choose another.")]
    Digits,
    /// The same digit over and over, or digits in a row.
    #[error(
        "A PIN of one digit, or of digits in a row, is soon guessed. Nothing was changed. Choose another."
    )]
    TooPlain,
    /// There is one already, and what was given as it is not it.
    #[error("There is a PIN already, and that is not it. Nothing was changed. Give the old one first.")]
    NotTheOld(PinSaid),
    /// It could not be worked out or kept.
    #[error("The PIN could not be kept ({0}). Nothing was changed. Try again.")]
    NotKept(String),
    /// The books said no.
    #[error(transparent)]
    Ledger(#[from] LedgerError),
}

impl PinError {
    /// Key of its words in the texts.
    pub fn text_key(&self) -> &'static str {
        match self {
            PinError::Digits => "error-pin-digits",
            PinError::TooPlain => "error-pin-too-plain",
            PinError::NotTheOld(_) => "error-pin-not-the-old",
            PinError::NotKept(_) | PinError::Ledger(_) => "error-pin-not-kept",
        }
    }
}

impl Daybook {
    /// Whether a person has chosen a PIN on this phone, and the shop asked for no new one since.
    ///
    /// # Errors
    /// As any read.
    pub fn pin_chosen(&self, person: PersonId) -> Result<bool, LedgerError> {
        Ok(self.verifier(person)?.is_some())
    }

    /// Whether the shop asked this person for a new PIN and none was chosen on this phone since: it is set at the
    /// next signature, and the old one is asked no more.
    ///
    /// # Errors
    /// As any read.
    pub fn new_pin_asked(&self, person: PersonId) -> Result<bool, LedgerError> {
        Ok(self.asked_ms(person) > self.answered_ms(person)?)
    }

    /// When the shop last asked, milliseconds by its own clock; the beginning of time when it never did.
    fn asked_ms(&self, person: PersonId) -> i64 {
        let known = self.ledger().fleet().people.get(&person);
        known.and_then(|person| person.new_pin_asked).map_or(i64::MIN, |at| at.unix_ms())
    }

    /// Which asking the PIN on this phone answers. No clock of this phone decides: it may be wrong.
    fn answered_ms(&self, person: PersonId) -> Result<i64, LedgerError> {
        let kept = self.ledger().store().setting(&answers_of(person))?;
        Ok(kept.and_then(|bytes| bytes.try_into().ok()).map_or(i64::MIN, i64::from_be_bytes))
    }

    /// What a PIN is held against; none when there is none, or it holds no more.
    fn verifier(&self, person: PersonId) -> Result<Option<Vec<u8>>, LedgerError> {
        if self.new_pin_asked(person)? {
            return Ok(None);
        }
        Ok(self.ledger().store().setting(&verifier_of(person))?)
    }

    /// Chooses a person's PIN, 6 to 12 digits. Whoever has one gives it as `old`; a wrong one counts as a try. Where the
    /// shop asked for a new one the old one is not needed: most often it was forgotten.
    ///
    /// # Errors
    /// [`PinError`]; then the one before stands.
    pub fn choose_pin(
        &mut self,
        person: PersonId,
        pin: &str,
        old: Option<&str>,
        now: Stamp,
    ) -> Result<(), PinError> {
        if !DIGITS.contains(&pin.len()) || !pin.bytes().all(|digit| digit.is_ascii_digit()) {
            return Err(PinError::Digits);
        }
        if is_plain(pin.as_bytes()) {
            return Err(PinError::TooPlain);
        }
        match self.give_pin(person, old.unwrap_or_default(), now)? {
            PinSaid::Right | PinSaid::NotChosen => {}
            other => return Err(PinError::NotTheOld(other)),
        }
        let pepper = self.ledger().own_key().secret_for(PURPOSE);
        let made = hasher(&pepper)
            .and_then(|argon| argon.hash_password(pin.as_bytes()).map_err(|error| error.to_string()))
            .map_err(PinError::NotKept)?;
        let kept = made.to_string();
        let asked = self.asked_ms(person);
        let store = self.ledger_mut().store_mut();
        // First the PIN: cut between the two it is asked for once more.
        store.set_setting(&verifier_of(person), kept.as_bytes()).map_err(LedgerError::from)?;
        Ok(store.set_setting(&answers_of(person), &asked.to_be_bytes()).map_err(LedgerError::from)?)
    }

    /// Looks at a PIN typed as a person's. A try is counted before it is looked at, so that no restart gives it
    /// back; the right one forgets the wrong ones.
    ///
    /// # Errors
    /// As any read or write.
    pub fn give_pin(&mut self, person: PersonId, pin: &str, now: Stamp) -> Result<PinSaid, LedgerError> {
        let Some(kept) = self.verifier(person)? else { return Ok(PinSaid::NotChosen) };
        let pepper = self.ledger().own_key().secret_for(PURPOSE);
        let name = tries_of(person);
        let store = self.ledger_mut().store_mut();
        let tries = Tries::read(store, &name)?;
        let wait_s = tries.wait_s(now.unix_ms());
        if wait_s > 0 {
            tries.seen_at(now.unix_ms()).keep(store, &name)?;
            return Ok(PinSaid::Wait { wait_s });
        }
        let tries = tries.one_more(now.unix_ms());
        tries.keep(store, &name)?;
        if matches(&pepper, pin, &kept) {
            Tries::default().keep(store, &name)?;
            Ok(PinSaid::Right)
        } else {
            Ok(PinSaid::Wrong { wait_s: tries.wait_s(now.unix_ms()) })
        }
    }
}

fn verifier_of(person: PersonId) -> String {
    format!("pin:{person}")
}

fn answers_of(person: PersonId) -> String {
    format!("pin-answers:{person}")
}

fn tries_of(person: PersonId) -> String {
    format!("pin-tries:{person}")
}

/// argon2id with the crate's own parameters (19 MiB, two passes) and a secret that only this phone's key gives.
fn hasher(pepper: &[u8; 32]) -> Result<Argon2<'_>, String> {
    Argon2::new_with_secret(pepper, Algorithm::Argon2id, Version::V0x13, Params::DEFAULT)
        .map_err(|error| error.to_string())
}

fn matches(pepper: &[u8; 32], pin: &str, kept: &[u8]) -> bool {
    let Ok(kept) = std::str::from_utf8(kept) else { return false };
    let Ok(parsed) = PasswordHash::new(kept) else { return false };
    hasher(pepper).is_ok_and(|argon| argon.verify_password(pin.as_bytes(), &parsed).is_ok())
}

/// One digit over and over, or each one more or one less than the one before.
fn is_plain(pin: &[u8]) -> bool {
    let steps =
        |by: i16| pin.windows(2).all(|two| matches!(two, [a, b] if i16::from(*b) - i16::from(*a) == by));
    steps(0) || steps(1) || steps(-1)
}

#[cfg(test)]
mod tests;
