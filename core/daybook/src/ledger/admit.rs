//! Admission: structural, the same everywhere and for ever.

use sumpbook_trade::EntryId;

use super::{Knowledge, Ledger, LedgerError};
use crate::book::EntryRow;
use crate::gate::change::{self, Parts};
use crate::gate::{ChangeHash, Place, PlaceError, VerifyError, sign};
use crate::store::{StoreError, Writing};

/// An entry as it comes in: its place, its payload, its signature.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Incoming {
    /// Where it says it stands.
    pub place: Place,
    /// The entry, CBOR.
    pub payload: Vec<u8>,
    /// The signature over both.
    pub signature: [u8; 64],
}

/// An entry as it comes in with its change built.
pub(crate) struct Built {
    pub(crate) incoming: Incoming,
    /// The same as a row.
    pub(crate) row: EntryRow,
    /// Its signature was seen to hold at this place, by the key its actor names.
    pub(crate) holds: bool,
}

/// What became of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Admission {
    /// It is in the book, under this number.
    Admitted(i64),
    /// It was there already.
    Known(i64),
    /// It waits: this change, or this signer's enrolment, is not here yet.
    Waiting {
        /// First 8 bytes of the change's hash, or the signer's key id.
        missing: [u8; 8],
    },
    /// It will never be admitted.
    Refused(Refusal),
}

/// Why an entry is refused for good.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Refusal {
    /// It belongs to another fleet.
    #[error("it belongs to another fleet")]
    OtherFleet,
    /// Its signature does not hold for this content at this place.
    #[error("its signature does not hold")]
    Signature,
    /// Its place breaks a rule.
    #[error("its place in the book breaks a rule")]
    Place,
    /// It is written under another device's name.
    #[error("it is written under another device's name")]
    OtherActor,
    /// Its content is not bounded CBOR.
    #[error("its content cannot be read")]
    Payload,
    /// The place is taken by another entry of the same hand.
    #[error("another entry stands at its place")]
    Fork,
    /// It leaves out its own predecessor.
    #[error("it leaves out the entry before it")]
    Predecessor,
}

impl Refusal {
    /// Its number in a parcel.
    pub fn code(self) -> u16 {
        match self {
            Refusal::OtherFleet => 1,
            Refusal::Signature => 2,
            Refusal::Place => 3,
            Refusal::OtherActor => 4,
            Refusal::Payload => 5,
            Refusal::Fork => 6,
            Refusal::Predecessor => 7,
        }
    }
}

/// What the gate found: a row that may stand, with the change before it of the same hand.
pub(super) type Examined = Result<(EntryRow, Option<ChangeHash>), Admission>;

impl Ledger {
    /// Admits entries in the order given, all in one transaction: what one names must stand before it.
    ///
    /// `received_ms` never runs back: an earlier moment counts as the last one.
    ///
    /// # Errors
    /// Only when the store cannot be written; then none of them is in. What an entry itself does wrong is
    /// told in its [`Admission`].
    pub fn admit(
        &mut self,
        entries: &[Incoming],
        received_ms: i64,
        carrier: Option<[u8; 8]>,
    ) -> Result<Vec<Admission>, LedgerError> {
        self.admit_all(entries.iter().map(|entry| (entry, None)), received_ms, carrier)
    }

    /// As [`Ledger::admit`], of entries whose changes are built: what was done for them is not done again.
    ///
    /// # Errors
    /// As there.
    pub(crate) fn admit_built(
        &mut self,
        entries: &[Built],
        received_ms: i64,
        carrier: Option<[u8; 8]>,
    ) -> Result<Vec<Admission>, LedgerError> {
        self.admit_all(entries.iter().map(|entry| (&entry.incoming, Some(entry))), received_ms, carrier)
    }

    fn admit_all<'a>(
        &mut self,
        entries: impl ExactSizeIterator<Item = (&'a Incoming, Option<&'a Built>)>,
        received_ms: i64,
        carrier: Option<[u8; 8]>,
    ) -> Result<Vec<Admission>, LedgerError> {
        let Ledger { store, knows, .. } = self;
        let result = (|| {
            let writing = store.begin()?;
            knows.refresh(&writing.truth())?;
            let received = received_ms.max(writing.truth().last_received()?);
            let mut told = Vec::with_capacity(entries.len());
            let mut last: Option<EntryRow> = None;
            for (entry, built) in entries {
                let (admission, row) =
                    knows.admit_one(&writing, (entry, built, last.as_ref()), received, carrier)?;
                last = None;
                if let (Admission::Admitted(n), Some(row)) = (&admission, row) {
                    knows.project_and_learn(&writing, *n, &row, None)?;
                    last = Some(row);
                }
                told.push(admission);
            }
            writing.commit()?;
            Ok(told)
        })();
        if result.is_err() {
            // Keys and fleet may have been learnt from entries that did not stay.
            knows.load_fleet(&store.truth())?;
        }
        self.noted(result)
    }
}

impl Knowledge {
    fn admit_one(
        &self,
        writing: &Writing<'_>,
        (entry, built, last): (&Incoming, Option<&Built>, Option<&EntryRow>),
        received: i64,
        carrier: Option<[u8; 8]>,
    ) -> Result<(Admission, Option<EntryRow>), LedgerError> {
        Ok(match self.examine(writing, entry, built, last)? {
            Ok((row, previous)) => {
                let n = writing.insert(&row, previous, received, carrier)?;
                (Admission::Admitted(n), Some(row))
            }
            Err(admission) => (admission, None),
        })
    }

    /// The row of an entry that may be admitted, with its predecessor of the same hand; else what it is. `last` is
    /// the entry that came in just before in the same transaction.
    pub(super) fn examine(
        &self,
        writing: &Writing<'_>,
        entry: &Incoming,
        built: Option<&Built>,
        last: Option<&EntryRow>,
    ) -> Result<Examined, LedgerError> {
        let refused = |refusal| Ok(Err(Admission::Refused(refusal)));
        let place = &entry.place;
        if place.fleet != self.root.fleet {
            return refused(Refusal::OtherFleet);
        }
        let signer = place.actor.key();
        let Some(key) = self.keys.get(signer) else {
            return Ok(Err(Admission::Waiting { missing: signer.0 }));
        };
        if !built.is_some_and(|built| built.holds)
            && let Err(error) = sign::verify(place, &entry.payload, &entry.signature, &key)
        {
            return refused(match error {
                VerifyError::Place(_) => Refusal::Place,
                VerifyError::Actor => Refusal::OtherActor,
                VerifyError::Payload(_) => Refusal::Payload,
                VerifyError::Signature => Refusal::Signature,
            });
        }
        let (previous, op) = match last.filter(|last| follows(place, last)) {
            // It was written a moment ago, so nothing of its hand stands behind it yet: nothing is to be asked.
            Some(last) => (Some(last.hash), change::next_op([last.op])),
            None => {
                let previous = match self.stands_after(writing, entry)? {
                    Ok(previous) => previous,
                    Err(admission) => return Ok(Err(admission)),
                };
                let mut ops = Vec::with_capacity(place.deps.len());
                for dep in &place.deps {
                    match writing.truth().op_of(place.book, dep)? {
                        Some(op) => ops.push(op),
                        None => return Ok(Err(Admission::Waiting { missing: dep.prefix() })),
                    }
                }
                (previous, change::next_op(ops))
            }
        };
        let row = match built {
            Some(Built { row, .. }) if row.op == op => row.clone(),
            _ => row_of(entry, op)?,
        };
        Ok(Ok((row, previous)))
    }

    /// The predecessor of the entry's own hand, or what the entry is if it has no place here.
    fn stands_after(
        &self,
        writing: &Writing<'_>,
        entry: &Incoming,
    ) -> Result<Result<Option<ChangeHash>, Admission>, LedgerError> {
        let place = &entry.place;
        let truth = writing.truth();
        if let Some(there) = truth.at_place(place.book, place.actor, place.seq)? {
            let held = truth.by_hash(&there)?.ok_or(StoreError::Unexpected("a hash without its row"))?;
            let same = held.row.payload == entry.payload
                && held.row.signature == entry.signature
                && held.row.deps == place.deps
                && held.row.id == place.id;
            return Ok(Err(if same { Admission::Known(held.n) } else { Admission::Refused(Refusal::Fork) }));
        }
        if place.seq == 1 {
            return Ok(Ok(None));
        }
        match truth.at_place(place.book, place.actor, place.seq.saturating_sub(1))? {
            Some(previous) if place.deps.contains(&previous) => Ok(Ok(Some(previous))),
            Some(_) => Ok(Err(Admission::Refused(Refusal::Predecessor))),
            // One of the named changes is not here; which one the caller's sender will know by its hash.
            None => {
                for dep in &place.deps {
                    if truth.op_of(place.book, dep)?.is_none() {
                        return Ok(Err(Admission::Waiting { missing: dep.prefix() }));
                    }
                }
                Ok(Err(Admission::Refused(Refusal::Predecessor)))
            }
        }
    }
}

/// Whether this place is the very next of the same hand, and names nothing but that one.
fn follows(place: &Place, last: &EntryRow) -> bool {
    place.book == last.book
        && place.actor == last.actor
        && last.seq.checked_add(1) == Some(place.seq)
        && place.deps == [last.hash]
}

/// The row of an entry whose place was checked: its change is built here.
pub(super) fn row_of(entry: &Incoming, op: u64) -> Result<EntryRow, LedgerError> {
    let place = &entry.place;
    let mut row = EntryRow {
        hash: ChangeHash([0; 32]),
        book: place.book,
        actor: place.actor,
        seq: place.seq,
        deps: place.deps.clone(),
        op,
        id: place.id,
        payload: entry.payload.clone(),
        signature: entry.signature,
    };
    let value = sign::cose(&row.payload, &row.signature)?;
    let parts = Parts { actor: row.actor, seq: row.seq, op, deps: &row.deps, id: row.id, value: &value };
    row.hash = change::build(parts)?.hash;
    Ok(row)
}

/// The id of an entry that could not be admitted, for telling of it.
impl Incoming {
    /// Its id as it was signed.
    pub fn id(&self) -> EntryId {
        self.place.id
    }

    /// Whether its place keeps the rules that need no book.
    ///
    /// # Errors
    /// The rule it breaks.
    pub fn check(&self) -> Result<(), PlaceError> {
        self.place.check()
    }

    /// From a row that is held.
    pub fn of_row(fleet: sumpbook_trade::FleetId, row: &EntryRow) -> Incoming {
        let place = Place {
            fleet,
            book: row.book,
            actor: row.actor,
            seq: row.seq,
            deps: row.deps.clone(),
            id: row.id,
        };
        Incoming { place, payload: row.payload.clone(), signature: row.signature }
    }
}
