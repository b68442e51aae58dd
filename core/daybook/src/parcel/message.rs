//! What a parcel says.

use sumpbook_trade::{EntryId, FleetId};

use crate::book::BookId;
use crate::gate::{Actor, ChangeHash, PublicKey};

/// One message. Empty lists and absent parts do not travel.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Parcel {
    /// The fleet it is about.
    pub fleet: FleetId,
    /// What it answers to.
    pub link: Link,
    /// The sender's clock in milliseconds since 1970 UTC. It decides nothing.
    pub sender_ms: u64,
    /// Which life of the hub it belongs to: `restore` begins a new one. Zeros: it does not say, and they do not
    /// travel.
    pub epoch: [u8; 8],
    /// Entries, each after its predecessors, the fleet's book first.
    pub runs: Vec<Run>,
    /// How far the sender has the hub's entries.
    pub cursors: Vec<Cursor>,
    /// The heads of books, on an answer's last page.
    pub heads: Vec<BookHeads>,
    /// Heads of books by the first 8 bytes of each alone, every head of every such book: only where the receiver
    /// holds them all, and so knows their books.
    pub held_heads: Vec<[u8; 8]>,
    /// An answer: how many entries of each run of the request were admitted. Nothing here and nothing refused: all.
    pub admitted: Vec<u64>,
    /// An answer: entries refused, or waiting for others.
    pub refused: Vec<Refusal>,
    /// More pages follow.
    pub more: bool,
    /// Permission to send photos for a quarter of an hour.
    pub token: Option<[u8; 32]>,
    /// Digests of what the sender holds; only after something was lost.
    pub reconcile: Vec<Reconcile>,
    /// From a shop that hands a phone its beginnings by file.
    pub invitation: Option<Invitation>,
    /// From a phone that asks to be let in.
    pub enrolment: Option<EnrolmentRequest>,
    /// In a file: entries of the whole file, so that a reader can say how many a cut took with it.
    pub file_entries: Option<u64>,
    /// The version of the sender's program; told once for each version, and in every file.
    pub program: Option<String>,
}

impl Parcel {
    /// A parcel that says nothing yet.
    pub fn new(fleet: FleetId, link: Link, sender_ms: u64, epoch: [u8; 8]) -> Parcel {
        Parcel {
            fleet,
            link,
            sender_ms,
            epoch,
            runs: Vec::new(),
            cursors: Vec::new(),
            heads: Vec::new(),
            held_heads: Vec::new(),
            admitted: Vec::new(),
            refused: Vec::new(),
            more: false,
            token: None,
            reconcile: Vec::new(),
            invitation: None,
            enrolment: None,
            file_entries: None,
            program: None,
        }
    }

    /// How many entries it carries.
    pub fn entries(&self) -> u64 {
        self.runs.iter().map(|run| run.entries.len() as u64).sum()
    }
}

/// What a parcel answers to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Link {
    /// A request: the hub's challenge, so that an old one cannot be sent again.
    Challenge([u8; 16]),
    /// An answer in a file: the digest of the request it answers ([`crate::parcel::Sealed::digest`]).
    Request([u8; 32]),
    /// An answer to whoever just asked: fleet and request stand in what is signed, and do not travel.
    Asked,
    /// A file.
    File,
}

/// Entries of one book and one hand, each the only predecessor of the next.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Run {
    /// The book.
    pub book: BookId,
    /// Who wrote them.
    pub actor: Actor,
    /// The number of the first of them.
    pub seq: u64,
    /// The predecessors of the first of them.
    pub deps: Vec<Dep>,
    /// At least one.
    pub entries: Vec<RunEntry>,
}

/// How a run names a predecessor.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Dep {
    /// So many entries back among those of the same book in this parcel; 1 is the one just before.
    Back(u64),
    /// The first 8 bytes of its hash: one the receiver should hold.
    Prefix([u8; 8]),
    /// The whole hash, where 8 bytes name more than one.
    Whole(ChangeHash),
}

/// One entry of a run.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RunEntry {
    /// Its own name.
    pub id: EntryId,
    /// CBOR of what was recorded.
    pub payload: Vec<u8>,
    /// Signature over place and payload.
    pub signature: [u8; 64],
}

/// How far someone has the hub's entries.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cursor {
    /// One book that is fetched from its start, or `None`: every book that is followed.
    pub book: Option<BookId>,
    /// The hub's number of the last entry held; 0 before the first.
    pub n: u64,
    /// The first 8 bytes of that entry's hash: a hub that was set back does not find them.
    pub tag: [u8; 8],
}

/// The heads of one book.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BookHeads {
    /// The book.
    pub book: BookId,
    /// Those that are named whole, strictly ascending.
    pub heads: Vec<ChangeHash>,
    /// Those that are named by their first 8 bytes, strictly ascending: the receiver finds the rest or has it not.
    pub prefixes: Vec<[u8; 8]>,
}

/// An entry that was not admitted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Refusal {
    /// The entry.
    pub id: EntryId,
    /// Why: the admission's numbers.
    pub code: u64,
    /// The prefix of the predecessor that is not held, when that is why.
    pub missing: Option<[u8; 8]>,
}

/// Digests of one book, coarse to fine.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reconcile {
    /// The book.
    pub book: BookId,
    /// 0: the whole book; 1: its months; 2: its entries' ids.
    pub level: u64,
    /// One digest for each part.
    pub buckets: Vec<Bucket>,
}

/// How much stands in one part of a book.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bucket {
    /// Which part, in the level's own numbering.
    pub part: u64,
    /// Entries in it.
    pub count: u64,
    /// Digest over them.
    pub digest: [u8; 16],
}

/// A shop's invitation, for a phone with no network.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Invitation {
    /// The key the shop signs with.
    pub shop: PublicKey,
    /// The one-use code.
    pub code: [u8; 16],
    /// Where the hub is, when it has an address.
    pub hub: Option<String>,
    /// What the fleet calls itself.
    pub fleet_name: String,
    /// When the code ends, milliseconds since 1970 UTC.
    pub expires_ms: u64,
}

/// A phone's request to be let in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct EnrolmentRequest {
    /// The phone's public key.
    pub key: PublicKey,
    /// The code it was given.
    pub code: [u8; 16],
    /// What the phone is called.
    pub name: String,
}
