//! A person's own PIN on this phone: it never leaves it.

use sumpbook_daybook::phone::{ASKED_DIGITS, PinError, PinSaid as Said};
use sumpbook_trade::PersonId;

use crate::error::PhoneError;
use crate::phone::Phone;

/// What a typed PIN is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, uniffi::Enum)]
pub enum PinSaid {
    /// The person's own.
    Right,
    /// Another.
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

impl From<Said> for PinSaid {
    fn from(said: Said) -> PinSaid {
        match said {
            Said::Right => PinSaid::Right,
            Said::Wrong { wait_s } => PinSaid::Wrong { wait_s },
            Said::Wait { wait_s } => PinSaid::Wait { wait_s },
            Said::NotChosen => PinSaid::NotChosen,
        }
    }
}

/// How choosing a PIN went.
#[derive(Clone, Debug, PartialEq, Eq, uniffi::Enum)]
pub enum PinChosen {
    /// It is the person's from now on.
    Kept,
    /// It was not taken, and the one before stands.
    Not {
        /// Key of why, in words.
        text_key: String,
    },
}

/// How many digits a PIN is asked with.
#[uniffi::export]
pub fn pin_digits() -> u8 {
    ASKED_DIGITS
}

#[uniffi::export]
impl Phone {
    /// Whether a person has chosen a PIN on this phone.
    ///
    /// # Errors
    /// `Closed`, `Storage`.
    pub fn pin_chosen(&self, person: PersonId) -> Result<bool, PhoneError> {
        self.read(|book, _| Ok(book.pin_chosen(person)?))
    }

    /// Whether the shop asked this person for a new PIN and none was chosen on this phone since: whatever stood here
    /// before holds no more.
    ///
    /// # Errors
    /// `Closed`, `Storage`.
    pub fn new_pin_asked(&self, person: PersonId) -> Result<bool, PhoneError> {
        self.read(|book, _| Ok(book.new_pin_asked(person)?))
    }

    /// Chooses a PIN of 6 to 12 digits; whoever has one gives it as `old`. It takes about a tenth of a second.
    ///
    /// # Errors
    /// `Closed`, `Storage`. What is wrong with the PIN itself is the answer.
    pub fn choose_pin(
        &self,
        person: PersonId,
        pin: String,
        old: Option<String>,
    ) -> Result<PinChosen, PhoneError> {
        let chosen = |book: &mut sumpbook_daybook::phone::Daybook, now| match book.choose_pin(
            person,
            &pin,
            old.as_deref(),
            now,
        ) {
            Ok(()) => Ok(PinChosen::Kept),
            Err(PinError::Ledger(error)) => Err(error.into()),
            Err(error) => Ok(PinChosen::Not { text_key: error.text_key().to_owned() }),
        };
        self.with(chosen)
    }

    /// Looks at a PIN typed as a person's, before a signature. What the entry says of it is the shell's to pass on:
    /// `pin_given` only after `Right`.
    ///
    /// # Errors
    /// `Closed`, `Storage`.
    pub fn give_pin(&self, person: PersonId, pin: String) -> Result<PinSaid, PhoneError> {
        self.with(|book, now| Ok(book.give_pin(person, &pin, now)?.into()))
    }
}
