//! What became of a file.

use std::collections::BTreeSet;

use sumpbook_trade::EntryId;

use super::Reason;
use crate::book::BookId;
use crate::gate::{ChangeHash, KeyId, PublicKey};
use crate::parcel::{BookHeads, Cursor};

/// What became of a file: counts for a person, and what an answer needs.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct TakenIn {
    /// Entries that are new in the books, those from the shelf included.
    pub admitted: usize,
    /// Entries that were here already.
    pub known: usize,
    /// Entries of this file that wait for an earlier one or for their signer's enrolment.
    pub waiting: usize,
    /// What stays outside for good; without an id a whole parcel.
    pub refused: Vec<(Option<EntryId>, Reason)>,
    /// Own entries placed again because the shop holds another at their place.
    pub placed_again: usize,
    /// Entries of this device's own key that came from elsewhere and were not here: it was put back from a copy, or
    /// another goes about with its key.
    pub own_back: usize,
    /// Where the file ends before its end.
    pub ended_early: Option<EndedEarly>,
    /// Who sealed its parcels.
    pub senders: BTreeSet<KeyId>,
    /// It brought what the shop holds: entries may now be "at the shop", or no longer.
    pub receipt: bool,
    /// The shop was set back to an earlier state since this phone last heard of it: it says so itself, or its receipt
    /// turned back.
    pub shop_set_back: bool,
    /// It comes from an earlier life of the shop than this phone already met: two answer with one key.
    pub two_shops: bool,
    /// A device that asks to be let in.
    pub pending: Option<PendingDevice>,
    /// Each parcel that was opened, for the answer.
    pub told: Vec<Told>,
}

impl TakenIn {
    /// Whether every parcel of the file was there and could be opened; entries refused one by one do not count.
    pub fn whole(&self) -> bool {
        self.ended_early.is_none() && !self.refused.iter().any(|(id, _)| id.is_none())
    }

    pub(super) fn count(&mut self, entries: &[ToldEntry]) {
        for entry in entries {
            match entry.fate {
                Fate::Admitted => self.admitted += 1,
                Fate::Known => self.known += 1,
                Fate::Waiting(_) => self.waiting += 1,
                Fate::Refused(reason) => self.refused.push((Some(entry.id), reason)),
            }
        }
    }

    /// Entries with a signature that does not hold.
    pub fn forged(&self) -> usize {
        let forged = Reason::Entry(crate::ledger::Refusal::Signature);
        self.refused.iter().filter(|(_, reason)| *reason == forged).count()
    }
}

/// A file that ends before its end. What stood before was taken in; read again, nothing is doubled.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct EndedEarly {
    /// Entries read before the end.
    pub after: u64,
    /// Entries the whole file had, when any of its parcels said so.
    pub of: Option<u64>,
    /// The bytes are not only missing: one of the lengths is no length.
    pub damaged: bool,
}

impl std::fmt::Display for EndedEarly {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let EndedEarly { after, .. } = self;
        match self.of {
            Some(of) => write!(f, "The file ends after entry {after} of {of}. ")?,
            None => write!(f, "The file ends after entry {after}. ")?,
        }
        write!(f, "Those {after} were read. Ask for the file again; nothing will be doubled.")
    }
}

/// A device that asks to be let in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PendingDevice {
    /// Its public key.
    pub key: PublicKey,
    /// The key's fingerprint for reading aloud: `4F 1A 9C 02 77 E0 B3 61`.
    pub fingerprint: String,
    /// What it calls itself.
    pub name: String,
    /// What the code it asks under is worth here.
    pub code: CodeState,
}

impl PendingDevice {
    /// The fingerprint of a key as it is shown: its id in pairs of hexadecimal digits.
    pub fn fingerprint_of(key: KeyId) -> String {
        let pairs: Vec<String> = key.0.iter().map(|byte| format!("{byte:02X}")).collect();
        pairs.join(" ")
    }
}

/// What an enrolment code is worth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CodeState {
    /// The shop gave it out and it holds.
    Open,
    /// Its time is over, since this moment, milliseconds.
    Expired(i64),
    /// Another device used it.
    Used(KeyId),
    /// It was not given out here; on a phone, always.
    Unknown,
}

/// One parcel that was opened.
#[derive(Clone, Debug, PartialEq)]
pub struct Told {
    /// What an answer to it links to.
    pub digest: [u8; 32],
    /// Who sealed it.
    pub sender: PublicKey,
    /// It is itself an answer, and wants none.
    pub is_answer: bool,
    /// Its sender's clock, milliseconds.
    pub sender_ms: u64,
    /// How many entries each of its runs has.
    pub runs: Vec<usize>,
    /// Its entries in order.
    pub entries: Vec<ToldEntry>,
    /// The heads of its sender's books.
    pub heads: Vec<BookHeads>,
    /// How far its sender has the shop's entries.
    pub cursors: Vec<Cursor>,
}

/// What became of one entry.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ToldEntry {
    /// Its id.
    pub id: EntryId,
    /// Its book.
    pub book: BookId,
    /// Its change's hash, when its predecessors were known.
    pub hash: Option<ChangeHash>,
    /// What became of it.
    pub fate: Fate,
}

/// What became of one entry.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fate {
    /// New in its book.
    Admitted,
    /// In its book already.
    Known,
    /// On the shelf until this change, or this signer's enrolment, comes.
    Waiting([u8; 8]),
    /// Outside for good.
    Refused(Reason),
}
