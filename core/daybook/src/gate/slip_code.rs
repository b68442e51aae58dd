//! The short code on a printed certificate, for a phone that no network reaches: only the shop can have made
//! it, for this defect, this verdict and this one phone.
//!
//! Shop and phone each hold the other's public key and their own private one, so both come to the same secret
//! and none need be carried: X25519 (RFC 7748) over the Ed25519 keys in their Montgomery form. The code is the
//! beginning of an HMAC-SHA256 (RFC 2104) under it.

use std::fmt;
use std::str::FromStr;

use hmac::{Hmac, KeyInit, Mac};
use sha2::{Digest, Sha256};
use sumpbook_trade::FleetId;
use sumpbook_trade::record::{DefectName, RepairVerdict};

use super::{DeviceKey, PublicKey};

/// Digits of a code: the last one only tells a slip of the finger.
const DIGITS: usize = SlipCode::DIGITS as usize;
/// Codes there are without the last digit.
const CODES: u64 = 100_000_000_000;
/// What the secret is for, so that it can never serve for anything else.
const LABEL: &[u8] = b"sumpbook slip 1";

/// A slip's code.
#[derive(Clone, Copy, PartialEq, Eq)]
pub struct SlipCode(u64);

/// What was typed is no code.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum SlipCodeError {
    /// It has not twelve digits.
    #[error("A slip's code has {DIGITS} digits; {0} were typed. Nothing was changed. Type all of them.")]
    Length(usize),
    /// A digit is wrong: the last one does not belong to the others.
    #[error("A digit is mistyped. Nothing was changed. Type the code again.")]
    Mistyped,
}

impl SlipCode {
    /// How many digits are typed.
    pub const DIGITS: u8 = 12;

    /// The code of a certificate: `own` is the shop's key and `other` the phone's, or the other way round.
    pub fn of(
        own: &DeviceKey,
        other: &PublicKey,
        fleet: FleetId,
        defect: &DefectName,
        verdict: RepairVerdict,
    ) -> SlipCode {
        let mut secret = Sha256::new();
        secret.update(LABEL);
        secret.update(own.shared_with(other));
        let mut all = fleet.bytes().to_vec();
        // Writing to a Vec cannot fail. CBOR keeps the parts apart.
        all.extend(minicbor::to_vec(defect).unwrap_or_default());
        all.extend(minicbor::to_vec(verdict).unwrap_or_default());
        let Ok(mut mac) = Hmac::<Sha256>::new_from_slice(&secret.finalize()) else { return SlipCode(CODES) };
        mac.update(&all);
        let made: [u8; 32] = mac.finalize().into_bytes().into();
        let first: [u8; 8] = made.first_chunk().copied().unwrap_or_default();
        SlipCode(u64::from_be_bytes(first) % CODES)
    }
}

/// The last digit by ISO/IEC 7064, MOD 11,10: any one wrong digit is told.
fn check_digit(digits: &[u8]) -> u8 {
    let product = digits.iter().fold(10u8, |product, digit| match (product + digit) % 10 {
        0 => 9,
        sum => (2 * sum) % 11,
    });
    (11 - product) % 10
}

/// Three groups of four digits.
impl fmt::Display for SlipCode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let plain = format!("{:011}", self.0);
        let digits: Vec<u8> = plain.bytes().map(|b| b.saturating_sub(b'0')).collect();
        let whole = format!("{plain}{}", check_digit(&digits));
        for (place, digit) in whole.chars().enumerate() {
            if place > 0 && place % 4 == 0 {
                f.write_str(" ")?;
            }
            write!(f, "{digit}")?;
        }
        Ok(())
    }
}

impl fmt::Debug for SlipCode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("SlipCode(..)")
    }
}

/// Reads what was typed, however it was grouped.
impl FromStr for SlipCode {
    type Err = SlipCodeError;

    fn from_str(typed: &str) -> Result<SlipCode, SlipCodeError> {
        let digits: Vec<u8> =
            typed.bytes().filter(u8::is_ascii_digit).map(|b| b.saturating_sub(b'0')).collect();
        if digits.len() != DIGITS || typed.chars().any(|c| !c.is_ascii_digit() && c != ' ' && c != '-') {
            return Err(SlipCodeError::Length(digits.len()));
        }
        let Some((check, body)) = digits.split_last() else { return Err(SlipCodeError::Length(0)) };
        if check_digit(body) != *check {
            return Err(SlipCodeError::Mistyped);
        }
        Ok(SlipCode(body.iter().fold(0, |code, digit| code * 10 + u64::from(*digit))))
    }
}

#[cfg(test)]
mod tests {
    use sumpbook_trade::EntryId;

    use super::*;

    fn defect(entry: u8, item: &str, place: Option<&str>) -> DefectName {
        DefectName {
            entry: EntryId::from_bytes([entry; 16]),
            item: item.to_owned(),
            place: place.map(str::to_owned),
        }
    }

    fn keys() -> (DeviceKey, DeviceKey) {
        (DeviceKey::from_secret(&[1; 32]), DeviceKey::from_secret(&[2; 32]))
    }

    fn fleet() -> FleetId {
        FleetId::from_bytes([7; 16])
    }

    #[test]
    fn shop_and_phone_come_to_the_same_code_without_a_word_between_them() {
        let (shop, phone) = keys();
        let of = defect(3, "lamps-stop", Some("left"));
        let printed = SlipCode::of(&shop, &phone.public(), fleet(), &of, RepairVerdict::Repaired);
        let known = SlipCode::of(&phone, &shop.public(), fleet(), &of, RepairVerdict::Repaired);
        assert_eq!(printed, known);
        assert_eq!(printed.to_string().len(), 14, "{printed}");
        assert_eq!(printed.to_string().parse(), Ok(known));
        assert_eq!(printed.to_string().replace(' ', "-").parse(), Ok(known));
    }

    #[test]
    fn another_phone_defect_place_verdict_or_fleet_has_another_code() {
        let (shop, phone) = keys();
        let other = DeviceKey::from_secret(&[9; 32]).public();
        let of = defect(3, "lamps-stop", Some("left"));
        let repaired = RepairVerdict::Repaired;
        let codes = [
            SlipCode::of(&shop, &phone.public(), fleet(), &of, repaired),
            SlipCode::of(&shop, &other, fleet(), &of, repaired),
            SlipCode::of(&shop, &phone.public(), fleet(), &of, RepairVerdict::NotNeeded),
            SlipCode::of(&shop, &phone.public(), FleetId::from_bytes([8; 16]), &of, repaired),
            SlipCode::of(&shop, &phone.public(), fleet(), &defect(4, "lamps-stop", Some("left")), repaired),
            SlipCode::of(&shop, &phone.public(), fleet(), &defect(3, "lamps-stop", None), repaired),
            SlipCode::of(&shop, &phone.public(), fleet(), &defect(3, "lamps-turn", Some("left")), repaired),
        ];
        let told: std::collections::BTreeSet<String> = codes.iter().map(ToString::to_string).collect();
        assert_eq!(told.len(), codes.len());
    }

    #[test]
    fn the_check_digit_is_the_standards_own() {
        // ISO/IEC 7064 MOD 11,10: the standard's example 0794 has check digit 5. From memory.
        assert_eq!(check_digit(&[0, 7, 9, 4]), 5);
    }

    #[test]
    fn any_one_wrong_digit_is_told_and_so_is_a_digit_too_few() {
        let (shop, phone) = keys();
        let code =
            SlipCode::of(&shop, &phone.public(), fleet(), &defect(3, "horn", None), RepairVerdict::Repaired);
        let plain = code.to_string().replace(' ', "");
        for place in 0..DIGITS {
            for digit in '0'..='9' {
                let mut typed = plain.clone();
                typed.replace_range(place..=place, &digit.to_string());
                let read = typed.parse::<SlipCode>();
                assert_eq!(read == Ok(code), typed == plain, "{typed}");
                assert!(read == Ok(code) || read == Err(SlipCodeError::Mistyped), "{typed}: {read:?}");
            }
        }
        assert_eq!("1234".parse::<SlipCode>(), Err(SlipCodeError::Length(4)));
        assert_eq!("".parse::<SlipCode>(), Err(SlipCodeError::Length(0)));
        assert!("O12345678901".parse::<SlipCode>().is_err());
        assert!(!format!("{code:?}").contains(&plain[..4]));
    }
}
