//! The keys a fleet ever enrolled, each made ready when it is first asked for.

use std::collections::HashMap;
use std::sync::OnceLock;

use crate::fleet::Fleet;
use crate::gate::{KeyId, PublicKey};

/// Keys by their ids. Finding the point of a curve from 32 bytes costs more than reading a unit's state, and
/// opening a book asks for none of them.
pub(super) struct Keys(HashMap<KeyId, Key>);

enum Key {
    Ready(PublicKey),
    Bytes([u8; 32], OnceLock<Option<PublicKey>>),
}

impl Keys {
    /// Only the shop's, where trust begins.
    pub(super) fn of_shop(shop: PublicKey) -> Keys {
        Keys(HashMap::from([(shop.id(), Key::Ready(shop))]))
    }

    /// Those of a fleet's devices as well.
    pub(super) fn of_fleet(shop: PublicKey, fleet: &Fleet) -> Keys {
        let mut keys = Keys::of_shop(shop);
        fleet.devices.iter().for_each(|(id, device)| keys.add(KeyId(*id), device.key.0));
        keys
    }

    /// One more; the first of an id stays.
    pub(super) fn add(&mut self, id: KeyId, bytes: [u8; 32]) {
        self.0.entry(id).or_insert_with(|| Key::Bytes(bytes, OnceLock::new()));
    }

    /// A key; none when nobody of this id was ever enrolled.
    pub(super) fn get(&self, id: KeyId) -> Option<PublicKey> {
        match self.0.get(&id)? {
            Key::Ready(key) => Some(*key),
            // The id was worked out from these bytes when the device was taken in, and is held to them here.
            Key::Bytes(bytes, ready) => {
                *ready.get_or_init(|| PublicKey::from_bytes(bytes).ok().filter(|key| key.id() == id))
            }
        }
    }
}
