//! The phrase that opens the shop's key: letters and digits in six groups, easy to write down and read out.

use std::fmt;

/// Digits and letters without I, L, O and U, which are taken for others (Crockford's base 32).
const SIGNS: &[u8; 32] = b"0123456789ABCDEFGHJKMNPQRSTVWXYZ";
/// Signs that are drawn; one more stands for whether they were read right. 23 x 5 = 115 bits.
const DRAWN: usize = 23;
/// Signs in a group.
const GROUP: usize = 4;

/// A phrase: 115 bits of randomness and a sign that tells most mistakes of the hand.
#[derive(Clone, PartialEq, Eq)]
pub struct Phrase([u8; DRAWN]);

/// Why a text is not a phrase.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum PhraseError {
    /// Too many or too few signs.
    #[error("a phrase has six groups of four letters and digits. Nothing was changed. Type all of it.")]
    Length,
    /// A sign that stands in no phrase.
    #[error("'{0}' stands in no phrase. Nothing was changed. Look at the paper again.")]
    Sign(char),
    /// One sign or two are not those that were printed.
    #[error(
        "this phrase was not read right: its signs do not agree. Nothing was changed. Look at the paper again."
    )]
    Mistyped,
}

impl Phrase {
    /// A new one.
    ///
    /// # Errors
    /// When the system has no randomness to give.
    pub fn generate() -> Result<Phrase, getrandom::Error> {
        let mut drawn = [0; DRAWN];
        getrandom::fill(&mut drawn)?;
        Ok(Phrase(drawn.map(|byte| byte & 31)))
    }

    /// Reads one as it was typed: blanks, dashes and case do not matter, and letters that look like others are
    /// those others.
    ///
    /// # Errors
    /// When it is none.
    pub fn read(text: &str) -> Result<Phrase, PhraseError> {
        let mut values = Vec::with_capacity(DRAWN + 1);
        for sign in text.chars().filter(|c| !c.is_whitespace() && !matches!(c, '-' | '\u{2013}' | '.')) {
            let upper = match sign.to_ascii_uppercase() {
                'O' => '0',
                'I' | 'L' => '1',
                other => other,
            };
            let value = SIGNS.iter().position(|known| char::from(*known) == upper);
            values.push(value.and_then(|value| u8::try_from(value).ok()).ok_or(PhraseError::Sign(sign))?);
        }
        let (check, drawn) = values.split_last().ok_or(PhraseError::Length)?;
        let drawn: [u8; DRAWN] = drawn.try_into().map_err(|_| PhraseError::Length)?;
        let phrase = Phrase(drawn);
        if phrase.check() == *check { Ok(phrase) } else { Err(PhraseError::Mistyped) }
    }

    /// What the key is worked out from.
    pub(super) fn secret(&self) -> &[u8] {
        &self.0
    }

    /// A weighted sum: one wrong sign changes it, and two that changed places do.
    fn check(&self) -> u8 {
        // 31 is prime, so a weight from 1 to 30 never hides a difference below 31; the 32nd sign stands for 31.
        let sum: u32 =
            self.0.iter().zip(1u32..).map(|(value, weight)| (u32::from(*value) + 1) * weight).sum();
        u8::try_from(sum % 31).unwrap_or(0)
    }
}

/// In groups: `7H2K-...`.
impl fmt::Display for Phrase {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let all: Vec<u8> = self.0.iter().copied().chain([self.check()]).collect();
        for (place, value) in all.iter().enumerate() {
            if place > 0 && place.is_multiple_of(GROUP) {
                f.write_str("-")?;
            }
            let sign = SIGNS.get(usize::from(*value)).copied().unwrap_or(b'0');
            fmt::Write::write_char(f, char::from(sign))?;
        }
        Ok(())
    }
}

impl fmt::Debug for Phrase {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Phrase")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_phrase_is_read_as_people_type_it() {
        let phrase = Phrase::generate().unwrap();
        let text = phrase.to_string();
        assert_eq!(text.len(), 6 * 4 + 5);
        assert_eq!(Phrase::read(&text).unwrap(), phrase);
        let typed =
            format!(" {} ", text.to_lowercase().replace('-', " ").replace('0', "o").replace('1', "l"));
        assert_eq!(Phrase::read(&typed).unwrap(), phrase);
        assert_eq!(format!("{phrase:?}"), "Phrase");
        assert_ne!(Phrase::generate().unwrap(), phrase);
    }

    #[test]
    fn a_slip_of_the_hand_is_told() {
        assert_eq!(Phrase::read(""), Err(PhraseError::Length));
        assert_eq!(Phrase::read("7H2K-7H2K"), Err(PhraseError::Length));
        assert_eq!(Phrase::read("7H2K-7H2K-7H2K-7H2K-7H2K-7H2U"), Err(PhraseError::Sign('U')));
        let phrase = Phrase([3; DRAWN]);
        for place in 0..DRAWN {
            let mut other = phrase.clone();
            other.0[place] = 9;
            assert_ne!(other.check(), phrase.check(), "{place}");
        }
    }
}
