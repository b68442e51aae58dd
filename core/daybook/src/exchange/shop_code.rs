//! What the shop shows a new phone, as a QR code and as the same text: where the hub is and which key is the
//! shop's. Whoever shows it vouches for it; the key fingerprints on both screens are compared by people.

use data_encoding::BASE32_NOPAD;
use minicbor::{Decode, Encode};
use sha2::{Digest, Sha256};
use sumpbook_trade::{FleetId, TruckId};

use super::ExchangeError;
use crate::gate::PublicKey;
use crate::ledger::Root;
use crate::parcel::Invitation;

/// The form of the code this program writes.
const FORM: u8 = 1;
/// Units a code can name: more would make the picture too fine to scan.
pub const MOST_UNITS: usize = 12;
/// Characters of a text that can be a code.
const MOST_TEXT: usize = 2_000;

/// An invitation for a phone that can reach the hub.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ShopCode {
    /// The fleet and the shop's key.
    pub root: Root,
    /// The one-use code, until when it holds, the hub's address and the fleet's name.
    pub invitation: Invitation,
    /// Units the phone follows from the beginning, at most [`MOST_UNITS`].
    pub units: Vec<TruckId>,
}

#[derive(Encode, Decode)]
struct Body {
    #[n(0)]
    form: u8,
    #[cbor(n(1), with = "minicbor::bytes")]
    fleet: [u8; 16],
    #[cbor(n(2), with = "minicbor::bytes")]
    shop: [u8; 32],
    #[cbor(n(3), with = "minicbor::bytes")]
    code: [u8; 16],
    #[n(4)]
    expires_ms: u64,
    #[n(5)]
    hub: String,
    #[n(6)]
    fleet_name: String,
    #[cbor(n(7), with = "minicbor::bytes")]
    units: Vec<u8>,
}

impl ShopCode {
    /// The text: capital letters and digits only, so that its QR code stays small.
    ///
    /// # Errors
    /// [`ExchangeError::Invitation`] when something in it cannot be written.
    pub fn to_text(&self) -> Result<String, ExchangeError> {
        let body = Body {
            form: FORM,
            fleet: self.root.fleet.bytes(),
            shop: self.root.shop.bytes(),
            code: self.invitation.code,
            expires_ms: self.invitation.expires_ms,
            hub: self.invitation.hub.clone().unwrap_or_default(),
            fleet_name: self.invitation.fleet_name.clone(),
            units: self.units.iter().take(MOST_UNITS).flat_map(|truck| truck.bytes()).collect(),
        };
        let mut bytes = minicbor::to_vec(&body).map_err(|e| ExchangeError::Invitation(e.to_string()))?;
        let check: [u8; 32] = Sha256::digest(&bytes).into();
        bytes.extend(check.iter().take(2));
        Ok(BASE32_NOPAD.encode(&bytes))
    }

    /// Reads the text, however it was cut into lines or groups.
    ///
    /// # Errors
    /// [`ExchangeError::Invitation`] when a part is missing or mistyped, [`ExchangeError::NotAnInvitation`]
    /// when it is another thing.
    pub fn from_text(text: &str) -> Result<ShopCode, ExchangeError> {
        let typed: String =
            text.chars().filter(|c| !c.is_whitespace() && *c != '-').take(MOST_TEXT + 1).collect();
        if typed.is_empty() || typed.len() > MOST_TEXT {
            return Err(ExchangeError::NotAnInvitation);
        }
        let bytes = BASE32_NOPAD
            .decode(typed.to_ascii_uppercase().as_bytes())
            .map_err(|_| ExchangeError::NotAnInvitation)?;
        let mistyped = || ExchangeError::Invitation("a part of the code is missing or mistyped".to_owned());
        let (body, check) = bytes.split_last_chunk::<2>().ok_or_else(mistyped)?;
        let right: [u8; 32] = Sha256::digest(body).into();
        if !right.starts_with(check) {
            return Err(mistyped());
        }
        let body: Body = minicbor::decode(body).map_err(|_| ExchangeError::NotAnInvitation)?;
        if body.form != FORM || !body.units.len().is_multiple_of(16) {
            return Err(ExchangeError::NotAnInvitation);
        }
        let shop = PublicKey::from_bytes(&body.shop).map_err(|_| ExchangeError::NotAnInvitation)?;
        let (units, _) = body.units.as_chunks::<16>();
        Ok(ShopCode {
            root: Root { fleet: FleetId::from_bytes(body.fleet), shop },
            invitation: Invitation {
                shop,
                code: body.code,
                hub: Some(body.hub).filter(|hub| !hub.is_empty()),
                fleet_name: body.fleet_name,
                expires_ms: body.expires_ms,
            },
            units: units.iter().map(|bytes| TruckId::from_bytes(*bytes)).collect(),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gate::DeviceKey;

    fn code() -> ShopCode {
        let shop = DeviceKey::from_secret(&[7; 32]).public();
        let invitation = Invitation {
            shop,
            code: [9; 16],
            hub: Some("sumpbook.yard:8443".to_owned()),
            fleet_name: "Tern Hollow Water".to_owned(),
            expires_ms: 1_792_526_400_000,
        };
        let root = Root { fleet: FleetId::from_bytes([3; 16]), shop };
        ShopCode { root, invitation, units: vec![TruckId::from_bytes([5; 16]), TruckId::from_bytes([6; 16])] }
    }

    #[test]
    fn what_is_written_is_read_also_in_groups_and_small_letters() {
        let text = code().to_text().unwrap();
        assert!(text.chars().all(|c| c.is_ascii_uppercase() || c.is_ascii_digit()), "{text}");
        assert!(text.len() < 300, "{} characters", text.len());
        assert_eq!(ShopCode::from_text(&text).unwrap(), code());
        let typed: Vec<String> = text
            .to_lowercase()
            .as_bytes()
            .chunks(4)
            .map(|g| String::from_utf8_lossy(g).into_owned())
            .collect();
        assert_eq!(ShopCode::from_text(&typed.join(" ")).unwrap(), code());
    }

    #[test]
    fn a_letter_missing_or_mistyped_is_told() {
        let text = code().to_text().unwrap();
        for at in 0..text.len() {
            let mut shorter = text.clone();
            shorter.remove(at);
            assert!(ShopCode::from_text(&shorter).is_err(), "without letter {at}");
            let mut other = text.clone();
            other.replace_range(at..=at, if &text[at..=at] == "A" { "B" } else { "A" });
            assert!(ShopCode::from_text(&other).is_err(), "another letter {at}");
        }
        for odd in ["", "hello", "SUMPBK01", &"A".repeat(3_000)] {
            assert!(ShopCode::from_text(odd).is_err(), "{odd}");
        }
    }
}
