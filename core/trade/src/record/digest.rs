//! SHA-256 of something: a photo, a change, a sheet.

use std::fmt;
use std::str::FromStr;

use minicbor::bytes::ByteArray;
use minicbor::{CborLen, Decode, Decoder, Encode, Encoder};
use schemars::JsonSchema;
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

/// 32 bytes of SHA-256 (FIPS 180-4). In JSON 64 hexadecimal digits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Digest(pub [u8; 32]);

impl fmt::Display for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|b| write!(f, "{b:02x}"))
    }
}

/// Why a text is not a digest.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("a digest is 64 hexadecimal digits")]
pub struct DigestError;

impl FromStr for Digest {
    type Err = DigestError;
    fn from_str(text: &str) -> Result<Digest, DigestError> {
        if text.len() != 64 || !text.bytes().all(|b| b.is_ascii_hexdigit()) {
            return Err(DigestError);
        }
        let mut bytes = [0u8; 32];
        for (byte, pair) in bytes.iter_mut().zip(text.as_bytes().chunks(2)) {
            let pair = std::str::from_utf8(pair).map_err(|_| DigestError)?;
            *byte = u8::from_str_radix(pair, 16).map_err(|_| DigestError)?;
        }
        Ok(Digest(bytes))
    }
}

impl Serialize for Digest {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Digest {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Digest, D::Error> {
        String::deserialize(deserializer)?.parse().map_err(de::Error::custom)
    }
}

impl JsonSchema for Digest {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Digest".into()
    }
    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({ "type": "string", "pattern": "^[0-9a-fA-F]{64}$" })
    }
}

impl<C> Encode<C> for Digest {
    fn encode<W: minicbor::encode::Write>(
        &self,
        e: &mut Encoder<W>,
        _: &mut C,
    ) -> Result<(), minicbor::encode::Error<W::Error>> {
        e.bytes(&self.0)?.ok()
    }
}

impl<'b, C> Decode<'b, C> for Digest {
    fn decode(d: &mut Decoder<'b>, ctx: &mut C) -> Result<Digest, minicbor::decode::Error> {
        Ok(Digest(*ByteArray::<32>::decode(d, ctx)?))
    }
}

impl<C> CborLen<C> for Digest {
    fn cbor_len(&self, _: &mut C) -> usize {
        34
    }
}
