//! Whose pen: signing keys, their short names, and the actor a running program writes as.

use std::fmt;

use ed25519_dalek::{Signature, Signer, SigningKey, VerifyingKey};
use hmac::{Hmac, KeyInit, Mac};
use minicbor::bytes::ByteArray;
use minicbor::{CborLen, Decode, Decoder, Encode, Encoder};
use sha2::{Digest, Sha256};

/// A fixed string of bytes that travels as a CBOR byte string and is shown in hexadecimal.
macro_rules! fixed_bytes {
    ($(#[$doc:meta])* $name:ident, $length:literal) => {
        $(#[$doc])*
        #[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(pub [u8; $length]);

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
            }
        }

        impl std::fmt::Debug for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                write!(f, "{}({self})", stringify!($name))
            }
        }

        impl<C> minicbor::Encode<C> for $name {
            fn encode<W: minicbor::encode::Write>(
                &self,
                e: &mut minicbor::Encoder<W>,
                _: &mut C,
            ) -> Result<(), minicbor::encode::Error<W::Error>> {
                e.bytes(&self.0)?.ok()
            }
        }

        impl<'b, C> minicbor::Decode<'b, C> for $name {
            fn decode(
                d: &mut minicbor::Decoder<'b>,
                ctx: &mut C,
            ) -> Result<$name, minicbor::decode::Error> {
                minicbor::bytes::ByteArray::<$length>::decode(d, ctx).map(|bytes| $name(*bytes))
            }
        }

        impl<C> minicbor::CborLen<C> for $name {
            fn cbor_len(&self, ctx: &mut C) -> usize {
                minicbor::bytes::ByteArray::from(self.0).cbor_len(ctx)
            }
        }
    };
}
pub(crate) use fixed_bytes;

fixed_bytes! {
    /// The short name of a public key: the first 8 bytes of its SHA-256.
    KeyId, 8
}
fixed_bytes! {
    /// Who writes in a book: the signer's key id and 8 random bytes, new at every start of the program.
    Actor, 16
}

impl Actor {
    /// A new actor of this key.
    ///
    /// # Errors
    /// When the system has no randomness to give.
    pub fn new(key: KeyId) -> Result<Actor, getrandom::Error> {
        let mut tail = [0; 8];
        getrandom::fill(&mut tail)?;
        Ok(Actor::from_parts(key, tail))
    }

    /// The actor of this key with this tail.
    pub fn from_parts(key: KeyId, tail: [u8; 8]) -> Actor {
        let whole = (u128::from(u64::from_be_bytes(key.0)) << 64) | u128::from(u64::from_be_bytes(tail));
        Actor(whole.to_be_bytes())
    }

    /// The key id it begins with.
    pub fn key(self) -> KeyId {
        KeyId(((u128::from_be_bytes(self.0) >> 64) as u64).to_be_bytes())
    }
}

/// A public Ed25519 key (RFC 8032) that can verify: a point of the curve and not one of the weak ones.
///
/// On the wire a byte string of 32.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub struct PublicKey(VerifyingKey);

/// 32 bytes that are no usable public key.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("these 32 bytes are not a usable Ed25519 public key")]
pub struct PublicKeyError;

impl PublicKey {
    /// From its 32 bytes.
    ///
    /// # Errors
    /// When they are no point of the curve, or one of small order.
    pub fn from_bytes(bytes: &[u8; 32]) -> Result<PublicKey, PublicKeyError> {
        VerifyingKey::from_bytes(bytes).ok().filter(|key| !key.is_weak()).map(PublicKey).ok_or(PublicKeyError)
    }

    /// Its 32 bytes.
    pub fn bytes(&self) -> [u8; 32] {
        self.0.to_bytes()
    }

    /// Its short name.
    pub fn id(&self) -> KeyId {
        let [a, b, c, d, e, f, g, h, ..]: [u8; 32] = Sha256::digest(self.0.as_bytes()).into();
        KeyId([a, b, c, d, e, f, g, h])
    }

    /// Whether this key signed these bytes; strict, so that one signature has one form.
    pub(crate) fn signed(&self, message: &[u8], signature: &[u8; 64]) -> bool {
        self.0.verify_strict(message, &Signature::from_bytes(signature)).is_ok()
    }
}

impl fmt::Debug for PublicKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "PublicKey({})", self.id())
    }
}

impl<C> Encode<C> for PublicKey {
    fn encode<W: minicbor::encode::Write>(
        &self,
        e: &mut Encoder<W>,
        _: &mut C,
    ) -> Result<(), minicbor::encode::Error<W::Error>> {
        e.bytes(self.0.as_bytes())?.ok()
    }
}

impl<'b, C> Decode<'b, C> for PublicKey {
    fn decode(d: &mut Decoder<'b>, ctx: &mut C) -> Result<PublicKey, minicbor::decode::Error> {
        let bytes = ByteArray::<32>::decode(d, ctx)?;
        PublicKey::from_bytes(&bytes).map_err(minicbor::decode::Error::message)
    }
}

impl<C> CborLen<C> for PublicKey {
    fn cbor_len(&self, _: &mut C) -> usize {
        34
    }
}

/// A private key. It forgets itself when dropped and never shows itself.
pub struct DeviceKey(SigningKey);

impl DeviceKey {
    /// A new key from the system's randomness.
    ///
    /// # Errors
    /// When the system has no randomness to give.
    pub fn generate() -> Result<DeviceKey, getrandom::Error> {
        let mut secret = [0; 32];
        getrandom::fill(&mut secret)?;
        Ok(DeviceKey::from_secret(&secret))
    }

    /// From the 32 secret bytes, as the keystore gave them back.
    pub fn from_secret(secret: &[u8; 32]) -> DeviceKey {
        DeviceKey(SigningKey::from_bytes(secret))
    }

    /// The same key once more, its public half not reckoned again: that was a twelfth of what opening a folder computes.
    pub(crate) fn again(&self) -> DeviceKey {
        DeviceKey(self.0.clone())
    }

    /// The 32 secret bytes, for sealing in the keystore. Borrowed, so that no copy is left behind.
    pub fn secret(&self) -> &[u8; 32] {
        self.0.as_bytes()
    }

    /// The public half.
    pub fn public(&self) -> PublicKey {
        PublicKey(self.0.verifying_key())
    }

    /// The public half's short name.
    pub fn id(&self) -> KeyId {
        self.public().id()
    }

    /// The secret this key and another share: X25519 (RFC 7748) over both in Montgomery form. Only a public key
    /// that is not weak comes this far, so it is never zero.
    pub(crate) fn shared_with(&self, other: &PublicKey) -> [u8; 32] {
        other.0.to_montgomery().mul_clamped(self.0.to_scalar_bytes()).to_bytes()
    }

    /// A secret of its own for one use, which tells nothing of the key: HMAC-SHA256 (RFC 2104) of what it is for.
    pub(crate) fn secret_for(&self, purpose: &[u8]) -> [u8; 32] {
        // HMAC takes a key of any length, so the way without one is never gone.
        let Ok(mut mac) = Hmac::<Sha256>::new_from_slice(&self.0.to_bytes()) else { return [0; 32] };
        mac.update(purpose);
        mac.finalize().into_bytes().into()
    }

    pub(crate) fn sign(&self, message: &[u8]) -> [u8; 64] {
        self.0.sign(message).to_bytes()
    }
}

impl fmt::Debug for DeviceKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "DeviceKey({})", self.id())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_actor_begins_with_its_key_and_is_new_each_time() {
        let key = DeviceKey::from_secret(&[7; 32]);
        let (one, two) = (Actor::new(key.id()).unwrap(), Actor::new(key.id()).unwrap());
        assert_ne!(one, two);
        assert_eq!(one.key(), key.id());
        assert_eq!(one.0[..8], key.id().0);
        assert_eq!(Actor::from_parts(key.id(), [9; 8]).0[8..], [9; 8]);
    }

    #[test]
    fn the_secret_is_not_shown() {
        let key = DeviceKey::from_secret(&[0xab; 32]);
        assert!(!format!("{key:?}").contains("abab"));
        assert_eq!(key.secret(), &[0xab; 32]);
    }

    #[test]
    fn a_weak_key_is_no_key() {
        // The point of order 1: (0, 1). RFC 8032 section 5.1.2 encoding.
        let mut identity = [0; 32];
        identity[0] = 1;
        assert_eq!(PublicKey::from_bytes(&identity), Err(PublicKeyError));
        let good = DeviceKey::from_secret(&[1; 32]).public();
        let bytes = minicbor::to_vec(good).unwrap();
        assert_eq!(minicbor::decode::<PublicKey>(&bytes).unwrap(), good);
        assert_eq!(minicbor::len(good), bytes.len());
    }
}
