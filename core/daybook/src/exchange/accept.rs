//! Letting a new phone in: someone compares its key and says yes.

use sumpbook_trade::record::{DeviceEnrolled, Digest, Source};
use sumpbook_trade::{Entry, Fact, PersonId, Stamp};

use super::memory::{self, Asked};
use super::shelf_again::shelf_again;
use super::{CodeState, ExchangeError, PendingDevice};
use crate::gate::{KeyId, PublicKey};
use crate::ledger::{Ledger, NewEntry, new_id};
use crate::parcel::EnrolmentRequest;
use crate::store::{Store, StoreError};

/// A phone that was let in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Accepted {
    /// Its public key.
    pub key: PublicKey,
    /// What the yard calls it.
    pub name: String,
    /// Entries of its own, or behind them, that had been waiting and came in.
    pub admitted: usize,
}

/// What a code is worth for a device with this key: one it used itself is still open to it.
pub(super) fn code_state(
    store: &Store,
    code: &[u8; 16],
    key: KeyId,
    now: Stamp,
) -> Result<CodeState, StoreError> {
    Ok(match store.invite(code)? {
        None => CodeState::Unknown,
        Some((_, Some(by))) if by != key.0 => CodeState::Used(KeyId(by.try_into().unwrap_or_default())),
        Some((_, Some(_))) => CodeState::Open,
        Some((expires, None)) if now.unix_ms() > expires => CodeState::Expired(expires),
        Some((_, None)) => CodeState::Open,
    })
}

/// Remembers that a device asked; one that asks again is remembered with its newest words.
pub(super) fn remember(ledger: &mut Ledger, ask: &EnrolmentRequest) -> Result<(), ExchangeError> {
    let mut asked = memory::asked(ledger.store())?;
    let key = Digest(ask.key.bytes());
    asked.retain(|one| one.key != key);
    asked.push(Asked { key, code: ask.code, name: ask.name.clone() });
    memory::set_asked(ledger.store_mut(), asked)
}

/// The phones that wait to be let in, oldest first.
///
/// # Errors
/// As any read.
pub fn pending(ledger: &Ledger, now: Stamp) -> Result<Vec<PendingDevice>, ExchangeError> {
    let mut devices = Vec::new();
    for asked in memory::asked(ledger.store())? {
        let Ok(key) = PublicKey::from_bytes(&asked.key.0) else { continue };
        // It asked once more before it heard that it was let in.
        if ledger.key(key.id()).is_some() {
            continue;
        }
        let code = code_state(ledger.store(), &asked.code, key.id(), now)?;
        let fingerprint = PendingDevice::fingerprint_of(key.id());
        devices.push(PendingDevice { key, fingerprint, name: asked.name, code });
    }
    Ok(devices)
}

/// Lets in the waiting phone with this fingerprint (spaces and case do not matter): records its enrolment with
/// the name of whoever accepts,
/// uses its code up, and takes in what of it was waiting.
///
/// # Errors
/// [`ExchangeError::NobodyWaiting`]; a code that is unknown, ran out or was used; and as any write.
pub fn accept(
    ledger: &mut Ledger,
    fingerprint: &str,
    by: Option<PersonId>,
    now: Stamp,
) -> Result<Accepted, ExchangeError> {
    if !memory::is_shop(ledger) {
        return Err(ExchangeError::NotTheShop);
    }
    let wanted: String = fingerprint.split_whitespace().collect::<String>().to_ascii_uppercase();
    let devices = pending(ledger, now)?;
    let Some(device) = devices.into_iter().find(|one| one.fingerprint.replace(' ', "") == wanted) else {
        return Err(ExchangeError::NobodyWaiting(fingerprint.trim().chars().take(40).collect()));
    };
    match device.code {
        CodeState::Open => {}
        CodeState::Unknown => return Err(ExchangeError::CodeUnknown),
        CodeState::Expired(at) => {
            let at =
                Stamp::from_parts(at, now.offset_minutes()).map_or_else(String::new, |at| at.to_string());
            return Err(ExchangeError::CodeExpired(at));
        }
        CodeState::Used(by) => {
            let name = ledger.fleet().device(by.0).map(|known| known.name.clone());
            return Err(ExchangeError::CodeUsed(name.unwrap_or_else(|| PendingDevice::fingerprint_of(by))));
        }
    }
    let mut asked = memory::asked(ledger.store())?;
    let key = Digest(device.key.bytes());
    if let Some(one) = asked.iter().find(|one| one.key == key) {
        // First the code: stopped in between, it is still open to this device and to no other.
        ledger.store_mut().use_invite(&one.code, &device.key.id().0)?;
    }
    if ledger.key(device.key.id()).is_none() {
        let entry = Entry {
            id: new_id(now)?,
            unit: None,
            set: None,
            at: now,
            clock_off_ms: None,
            person: by,
            trainer: None,
            pin_given: false,
            trainer_pin_given: false,
            hours: None,
            note: None,
            source: Source::Shop,
            fact: Fact::DeviceEnrolled(DeviceEnrolled { key, name: device.name.clone() }),
        };
        ledger.record(&[NewEntry { entry, truck: None }], now.unix_ms())?;
    }
    asked.retain(|one| one.key != key);
    memory::set_asked(ledger.store_mut(), asked)?;
    let admitted = shelf_again(ledger, now.unix_ms())?;
    Ok(Accepted { key: device.key, name: device.name, admitted })
}
