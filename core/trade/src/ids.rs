//! Names of things: 16 bytes each, UUID version 7 (RFC 9562), one type per thing.

use std::fmt;
use std::str::FromStr;

use minicbor::bytes::ByteArray;
use minicbor::{CborLen, Decode, Decoder, Encode, Encoder};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

macro_rules! id {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        ///
        /// On the wire a byte string of 16; in JSON the hyphenated text.
        #[derive(
            Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
        )]
        #[serde(transparent)]
        pub struct $name(pub Uuid);

        impl $name {
            /// The 16 bytes.
            pub fn bytes(self) -> [u8; 16] {
                self.0.into_bytes()
            }

            /// From 16 bytes.
            pub fn from_bytes(bytes: [u8; 16]) -> $name {
                $name(Uuid::from_bytes(bytes))
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.fmt(f)
            }
        }

        impl FromStr for $name {
            type Err = uuid::Error;
            fn from_str(text: &str) -> Result<$name, uuid::Error> {
                text.parse().map($name)
            }
        }

        impl<C> Encode<C> for $name {
            fn encode<W: minicbor::encode::Write>(
                &self,
                e: &mut Encoder<W>,
                _: &mut C,
            ) -> Result<(), minicbor::encode::Error<W::Error>> {
                e.bytes(self.0.as_bytes())?.ok()
            }
        }

        impl<'b, C> Decode<'b, C> for $name {
            fn decode(d: &mut Decoder<'b>, ctx: &mut C) -> Result<$name, minicbor::decode::Error> {
                let bytes = ByteArray::<16>::decode(d, ctx)?;
                Ok($name(Uuid::from_bytes(*bytes)))
            }
        }

        impl<C> CborLen<C> for $name {
            fn cbor_len(&self, _: &mut C) -> usize {
                17
            }
        }
    };
}

id! {
    /// One entry, for ever. Given when its draft is begun, so that trying again records nothing twice.
    EntryId
}
id! {
    /// A truck: its chassis, whatever stands on it. A unit is named by its truck.
    TruckId
}
id! {
    /// A compressor set, wherever it is fitted.
    SetId
}
id! {
    /// Someone of the fleet.
    PersonId
}
id! {
    /// One walk round a unit: what its sections have in common.
    WalkId
}
id! {
    /// A fleet: one shop and all that answers to it.
    FleetId
}
