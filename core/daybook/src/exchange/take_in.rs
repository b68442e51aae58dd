//! Taking in a file, whoever made it.

use std::collections::{BTreeMap, BTreeSet};

use sumpbook_trade::{EntryId, Stamp};

use super::accept::{code_state, remember};
use super::admit_runs::admit_runs;
use super::coverage::beyond;
use super::shelf_again::shelf_again;
use super::{EndedEarly, ExchangeError, PendingDevice, Reason, TakenIn, Told, memory};
use crate::book::BookId;
use crate::gate::{ChangeHash, PublicKey};
use crate::ledger::{Ledger, Refusal};
use crate::parcel::{
    BookHeads, Cursor, EnrolmentRequest, FileError, FileReader, Link, OpenError, Opened, Parcel, Standing,
    open,
};
use crate::store::RefusedRow;

/// What is told only when the whole file was read.
#[derive(Default)]
pub(super) struct Said {
    heads: Vec<(BookHeads, i64)>,
    /// Books of which a head was told that is not here.
    lacking: BTreeSet<BookId>,
    cursor: Option<Cursor>,
    epoch: Option<([u8; 8], i64)>,
    /// It answers what was asked just now, so nothing newer is known.
    fresh: bool,
    asks: Vec<EnrolmentRequest>,
    /// Another parcel should have followed the last one.
    more: bool,
    /// Entries the whole file says it has.
    of: Option<u64>,
    parcels: u64,
    other_fleet: u64,
    other_shop: u64,
}

impl Said {
    /// Of an answer to what was asked just now.
    pub(super) fn fresh(lacking: BTreeSet<BookId>) -> Said {
        Said { fresh: true, lacking, ..Said::default() }
    }
}

/// Takes in a file: another phone's, the shop's answer, or an invitation of the same fleet.
///
/// Every honest entry comes in, whatever else is bad about the file. What waits for an earlier entry goes
/// to the shelf, which is tried again afterwards; what is refused is kept with its reason. Taken in twice,
/// a file changes nothing the second time.
///
/// # Errors
/// [`ExchangeError::NotAFile`], [`ExchangeError::OtherFleet`] and [`ExchangeError::OtherShop`] when nothing
/// of it is for this folder; and when the store cannot be written, then what was taken in before stays.
pub fn take_in(ledger: &mut Ledger, bytes: &[u8], now: Stamp) -> Result<TakenIn, ExchangeError> {
    let reader = match FileReader::new(bytes) {
        Ok(reader) => reader,
        Err(_) => return Err(ExchangeError::NotAFile),
    };
    let mut taken = TakenIn::default();
    let mut said = Said::default();
    for frame in reader {
        match frame {
            Ok(wire) => {
                said.parcels += 1;
                // A parcel that cannot be opened is told of as refused, not as missing.
                said.more = false;
                one(ledger, &wire, now.unix_ms(), &mut taken, &mut said)?;
            }
            Err(error) => {
                taken.ended_early = Some(ended(&taken, &said, !matches!(error, FileError::Truncated { .. })))
            }
        }
    }
    if said.more && taken.ended_early.is_none() {
        taken.ended_early = Some(ended(&taken, &said, false));
    }
    if said.parcels > 0 && said.other_fleet == said.parcels {
        return Err(ExchangeError::OtherFleet);
    }
    if said.parcels > 0 && said.other_shop == said.parcels {
        return Err(ExchangeError::OtherShop);
    }
    taken.admitted += shelf_again(ledger, now.unix_ms())?;
    receipts(ledger, &mut taken, &said)?;
    asks(ledger, &mut taken, said.asks, now)?;
    Ok(taken)
}

fn ended(taken: &TakenIn, said: &Said, damaged: bool) -> EndedEarly {
    let after = taken.told.iter().map(|told| told.entries.len() as u64).sum();
    EndedEarly { after, of: said.of, damaged }
}

/// One parcel of the file.
fn one(
    ledger: &mut Ledger,
    wire: &[u8],
    now_ms: i64,
    taken: &mut TakenIn,
    said: &mut Said,
) -> Result<(), ExchangeError> {
    let opened = match open(wire, |id| ledger.key(id)) {
        Ok(opened) => opened,
        Err(error) => return refuse_parcel(ledger, wire, reason_of(&error), now_ms, taken),
    };
    if opened.parcel.fleet != ledger.root().fleet {
        said.other_fleet += 1;
        taken.refused.push((None, Reason::OtherFleet));
        return Ok(());
    }
    if opened.standing == Standing::Showing {
        // Only a hub that was set back needs that; a file brings the whole fleet book behind it.
        return refuse_parcel(ledger, wire, Reason::UnknownSender, now_ms, taken);
    }
    if opened.standing == Standing::Inviting {
        // The real shop's key is always known: this is somebody else under the fleet's name.
        said.other_shop += 1;
        return refuse_parcel(ledger, wire, Reason::OtherShop, now_ms, taken);
    }
    let Opened { mut parcel, signer, digest, .. } = opened;
    taken.senders.insert(signer.id());
    said.more = parcel.more;
    said.of = parcel.file_entries.or(said.of);
    let from_shop = signer.id() == ledger.root().shop.id();
    let is_answer = matches!(parcel.link, Link::Request(_));
    if from_shop && is_answer && !memory::is_shop(ledger) {
        taken.placed_again += place_lost_again(ledger, &parcel, now_ms)?;
    }
    let runs = std::mem::take(&mut parcel.runs);
    let lengths: Vec<usize> = runs.iter().map(|run| run.entries.len()).collect();
    let through = admit_runs(ledger, runs, now_ms, Some(signer.id().0))?;
    ledger.store_mut().keep_waiting(&through.parts, now_ms)?;
    taken.count(&through.entries);
    if from_shop {
        heard_from_shop(ledger, &parcel, now_ms, said)?;
    } else if let Some(program) =
        parcel.program.as_deref().filter(|_| memory::is_shop(ledger) && ledger.key(signer.id()).is_some())
    {
        ledger.store_mut().keep_program(signer.id().0, program, now_ms)?;
    }
    said.asks.extend(parcel.enrolment);
    taken.told.push(Told {
        digest,
        sender: signer,
        is_answer,
        sender_ms: parcel.sender_ms,
        runs: lengths,
        entries: through.entries,
        heads: parcel.heads,
        cursors: parcel.cursors,
    });
    Ok(())
}

fn reason_of(error: &OpenError) -> Reason {
    match error {
        OpenError::UnknownSigner(_) => Reason::UnknownSender,
        OpenError::Signature(_) => Reason::ParcelSignature,
        _ => Reason::Damaged,
    }
}

fn refuse_parcel(
    ledger: &mut Ledger,
    wire: &[u8],
    reason: Reason,
    now_ms: i64,
    taken: &mut TakenIn,
) -> Result<(), ExchangeError> {
    let row = RefusedRow {
        bytes: wire.to_vec(),
        reason: reason.word().to_owned(),
        device: None,
        id: None,
        received_ms: now_ms,
    };
    ledger.store_mut().keep_refused(&[row])?;
    taken.refused.push((None, reason));
    Ok(())
}

/// Places again what the shop refused because another stands at its place. Before the parcel's own
/// entries come in: one of them may be that other.
pub(super) fn place_lost_again(
    ledger: &mut Ledger,
    parcel: &Parcel,
    now_ms: i64,
) -> Result<usize, ExchangeError> {
    let fork = Reason::Entry(Refusal::Fork).code();
    let mut lost: BTreeMap<BookId, Vec<EntryId>> = BTreeMap::new();
    for refusal in parcel.refused.iter().filter(|refusal| refusal.code == fork) {
        // By its hash too: placed again, the same entry stands at another place and stays there.
        for held in ledger.store().truth().by_id(refusal.id)? {
            if Some(held.row.hash.prefix()) == refusal.missing {
                lost.entry(held.row.book).or_default().push(refusal.id);
            }
        }
    }
    let mut placed = 0;
    for (book, ids) in lost {
        placed += ledger.place_again(book, &ids, now_ms)?;
    }
    Ok(placed)
}

/// What only the shop can say.
pub(super) fn heard_from_shop(
    ledger: &mut Ledger,
    parcel: &Parcel,
    now_ms: i64,
    said: &mut Said,
) -> Result<(), ExchangeError> {
    let at = i64::try_from(parcel.sender_ms).unwrap_or(now_ms);
    said.heads.extend(parcel.heads.iter().map(|heads| (heads.clone(), at)));
    said.epoch = Some((parcel.epoch, at));
    if let Link::Request(digest) = parcel.link
        && memory::was_sent(ledger.store(), &digest)?
    {
        // Another phone's cursor says nothing of what this one holds.
        said.cursor = parcel.cursors.iter().find(|cursor| cursor.book.is_none()).copied();
    }
    if let Some(invitation) = &parcel.invitation {
        memory::set_code(ledger.store_mut(), &invitation.code)?;
    }
    Ok(())
}

pub(super) fn receipts(ledger: &mut Ledger, taken: &mut TakenIn, said: &Said) -> Result<(), ExchangeError> {
    if memory::is_shop(ledger) {
        return Ok(());
    }
    if let Some((epoch, at)) = said.epoch {
        let mut met = memory::epochs(ledger.store())?;
        if met.last() != Some(&epoch) {
            if met.contains(&epoch) {
                // An old file, unless it was made after this phone heard of the newer life.
                let heard = ledger.store().truth().receipt(BookId::Fleet)?.map_or(0, |(_, heard)| heard);
                taken.two_shops = at > heard;
                return Ok(());
            }
            taken.shop_set_back = !met.is_empty();
            met.push(epoch);
            memory::set_epochs(ledger.store_mut(), met)?;
        }
    }
    let mut turned_back = false;
    let mut by_time: BTreeMap<i64, Vec<(BookId, Vec<ChangeHash>)>> = BTreeMap::new();
    let mut trucks = BTreeSet::new();
    for (BookHeads { book, heads, .. }, at) in &said.heads {
        if let BookId::Truck { truck, .. } = book {
            trucks.insert(*truck);
        }
        let mut heads = heads.clone();
        let truth = ledger.store().truth();
        let mut all_held = !said.lacking.contains(book);
        for head in &heads {
            all_held &= truth.op_of(*book, head)?.is_some();
        }
        // An answer of this very moment that no longer reaches what was acknowledged: the shop was set back by
        // somebody who put an older copy of its files in place, and it does not know so itself.
        turned_back |= said.fresh && all_held && falls_short(ledger, *book, &heads)?;
        if !all_held && !taken.shop_set_back {
            // Given to another phone, or cut: what stands on entries that are not here shows nothing, and
            // what the shop acknowledged before it still holds.
            heads.extend(truth.receipt(*book)?.map(|(known, _)| known).unwrap_or_default());
            heads.sort_unstable();
            heads.dedup();
        }
        by_time.entry(*at).or_default().push((*book, heads));
    }
    memory::follow(ledger.store_mut(), &trucks)?;
    for (at, heads) in by_time {
        ledger.store_mut().keep_receipts(&heads, at, taken.shop_set_back || said.fresh)?;
        taken.receipt = true;
    }
    taken.shop_set_back |= turned_back;
    if let Some(cursor) = said.cursor.filter(|_| taken.whole()) {
        memory::set_cursor(ledger.store_mut(), &cursor)?;
    }
    Ok(())
}

/// Whether these heads do not reach what the last receipt of a book reached.
fn falls_short(ledger: &Ledger, book: BookId, heads: &[ChangeHash]) -> Result<bool, ExchangeError> {
    let truth = ledger.store().truth();
    let known = truth.receipt(book)?.map(|(known, _)| known).unwrap_or_default();
    if known.iter().all(|head| heads.contains(head)) {
        return Ok(false);
    }
    // What was taken out since, as the branch that lost a fork, is not missed.
    Ok(beyond(&truth, book, heads)?.iter().any(|held| known.contains(&held.row.hash)))
}

fn asks(
    ledger: &mut Ledger,
    taken: &mut TakenIn,
    asks: Vec<EnrolmentRequest>,
    now: Stamp,
) -> Result<(), ExchangeError> {
    for ask in asks {
        let key: PublicKey = ask.key;
        // Enrolled already, perhaps by an entry of this very file.
        if ledger.key(key.id()).is_some() {
            continue;
        }
        let code = code_state(ledger.store(), &ask.code, key.id(), now)?;
        if memory::is_shop(ledger) {
            remember(ledger, &ask)?;
        }
        let fingerprint = PendingDevice::fingerprint_of(key.id());
        taken.pending = Some(PendingDevice { key, fingerprint, name: ask.name, code });
    }
    Ok(())
}
