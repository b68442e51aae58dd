//! Why a part of a file stays outside the books for good.

use crate::ledger::Refusal;

/// Why an entry, or a whole parcel, was not taken in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reason {
    /// An entry that admission refuses.
    Entry(Refusal),
    /// A parcel whose bytes are damaged.
    Damaged,
    /// A parcel under a signature that does not hold.
    ParcelSignature,
    /// A parcel of a device that nobody here knows.
    UnknownSender,
    /// A parcel of another fleet.
    OtherFleet,
    /// This fleet's name under another shop's key.
    OtherShop,
    /// An entry that names a predecessor its parcel does not have.
    Malformed,
}

impl Reason {
    /// Its number in an answer. Below 16 those of [`Refusal::code`]; 0 is left for what waits.
    pub fn code(self) -> u64 {
        match self {
            Reason::Entry(refusal) => u64::from(refusal.code()),
            Reason::Damaged => 16,
            Reason::ParcelSignature => 17,
            Reason::UnknownSender => 18,
            Reason::OtherFleet => 19,
            Reason::OtherShop => 20,
            Reason::Malformed => 21,
        }
    }

    /// A word of ours for keeping it under.
    pub fn word(self) -> &'static str {
        match self {
            Reason::Entry(Refusal::OtherFleet) | Reason::OtherFleet => "other-fleet",
            Reason::Entry(Refusal::Signature) => "signature",
            Reason::Entry(Refusal::Place) => "place",
            Reason::Entry(Refusal::OtherActor) => "other-actor",
            Reason::Entry(Refusal::Payload) => "payload",
            Reason::Entry(Refusal::Fork) => "fork",
            Reason::Entry(Refusal::Predecessor) => "predecessor",
            Reason::Damaged => "damaged",
            Reason::ParcelSignature => "parcel-signature",
            Reason::UnknownSender => "unknown-sender",
            Reason::OtherShop => "other-shop",
            Reason::Malformed => "malformed",
        }
    }
}

impl std::fmt::Display for Reason {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Reason::Entry(refusal) => return refusal.fmt(f),
            Reason::Damaged => "its bytes are damaged",
            Reason::ParcelSignature => "the sender's signature does not hold",
            Reason::UnknownSender => "it comes from a device that is not known here",
            Reason::OtherFleet => "it belongs to another fleet",
            Reason::OtherShop => "it names this fleet under another shop's key",
            Reason::Malformed => "it names an entry that its own file does not have",
        })
    }
}
