//! The hub's side of one exchange: a parcel in, a parcel out.

use std::collections::{BTreeSet, HashSet};

use sumpbook_trade::{Stamp, TruckId};

use super::accept::{code_state, remember};
use super::admit_runs::{Through, admit_ahead, admit_runs};
use super::ahead::Ahead;
use super::answer::fates;
use super::given::{Asked, give};
use super::invite::stamped;
use super::{CodeState, Declined, ExchangeError, Fate, PendingDevice, Told, follow, memory};
use crate::book::{BookId, EntryRow};
use crate::gate::{KeyId, Place, PublicKey, sign};
use crate::ledger::Ledger;
use crate::parcel::{Dep, Link, Opened, Parcel, Run, Standing, open, seal_answer};
use crate::store::ExchangeRow;

/// What the hub knows beside its books.
pub struct Door<'a> {
    /// Whether a challenge is one the hub gave out and that still holds.
    pub challenge: &'a dyn Fn(&[u8; 16]) -> bool,
    /// Permission for a device to send photos, when it is to have one.
    pub token: &'a dyn Fn(KeyId) -> Option<[u8; 32]>,
}

/// An answer, and what is to be known of its request.
#[derive(Clone, Debug, PartialEq)]
pub struct Answered {
    /// The sealed answer. It may leave only after what was written for it is durable.
    pub bytes: Vec<u8>,
    /// Who asked.
    pub device: KeyId,
    /// Entries of the request that are new in the books.
    pub admitted: usize,
    /// Entries that were here already.
    pub known: usize,
    /// Entries that name something which is not here; nothing of them was stored.
    pub missing: usize,
    /// Entries refused for good, kept outside the books.
    pub refused: usize,
    /// Entries given back.
    pub given: usize,
    /// Another page is to be asked for.
    pub more: bool,
    /// The device was stopped by the shop: it is told the fleet's book and nothing else.
    pub stopped: bool,
    /// It asks to be let in and waits for somebody's yes.
    pub pending: Option<PendingDevice>,
    /// The books that changed.
    pub books: BTreeSet<BookId>,
    /// Hub time minus the sender's clock, milliseconds, its way here included.
    pub off_ms: i64,
}

/// Answers one request. All its writes are one part that goes back alone when it is declined; within
/// [`Ledger::in_one_commit`] many requests are answered under one commit.
///
/// The same request twice, or one whose answer was lost, changes nothing the second time.
///
/// # Errors
/// [`Declined`]; then nothing of the request is stored.
pub fn respond(ledger: &mut Ledger, wire: &[u8], door: &Door<'_>, now: Stamp) -> Result<Answered, Declined> {
    if !memory::is_shop(ledger) {
        return Err(Declined::NotTheShop);
    }
    ledger.refresh()?;
    let opened = open(wire, |id| ledger.key(id))?;
    respond_to(ledger, opened, None, door, now)
}

/// As [`respond`], of a request that was read before.
///
/// # Errors
/// As there.
pub fn respond_ahead(
    ledger: &mut Ledger,
    ahead: Ahead,
    door: &Door<'_>,
    now: Stamp,
) -> Result<Answered, Declined> {
    if !memory::is_shop(ledger) {
        return Err(Declined::NotTheShop);
    }
    ledger.refresh()?;
    respond_to(ledger, ahead.opened, ahead.rows, door, now)
}

fn respond_to(
    ledger: &mut Ledger,
    opened: Opened,
    rows: Option<Vec<EntryRow>>,
    door: &Door<'_>,
    now: Stamp,
) -> Result<Answered, Declined> {
    let root = ledger.root();
    if opened.parcel.fleet != root.fleet {
        return Err(Declined::OtherFleet);
    }
    let Link::Challenge(challenge) = opened.parcel.link else { return Err(Declined::NotARequest) };
    if opened.standing == Standing::Inviting || opened.signer.id() == root.shop.id() {
        return Err(Declined::NotARequest);
    }
    if opened.standing == Standing::Showing && !shown_holds(ledger, &opened.parcel) {
        return Err(Declined::UnknownSender(opened.signer.id()));
    }
    if !(door.challenge)(&challenge) {
        return Err(Declined::StaleChallenge);
    }
    ledger.in_one_commit(|ledger| match opened.standing {
        Standing::Asking => pending(ledger, &opened, now),
        _ => known(ledger, opened, rows, door, now),
    })
}

/// Whether the first entry of the parcel, which lets its sender in, is the shop's own.
fn shown_holds(ledger: &Ledger, parcel: &Parcel) -> bool {
    let root = ledger.root();
    let Some(Run { book, actor, seq, deps, entries }) = parcel.runs.first() else { return false };
    let Some(entry) = entries.first() else { return false };
    let whole = |dep: &Dep| if let Dep::Whole(hash) = dep { Some(*hash) } else { None };
    let Some(mut deps) = deps.iter().map(whole).collect::<Option<Vec<_>>>() else { return false };
    deps.sort_unstable();
    let place = Place { fleet: root.fleet, book: *book, actor: *actor, seq: *seq, deps, id: entry.id };
    sign::verify(&place, &entry.payload, &entry.signature, &root.shop).is_ok()
}

/// A device that asks to be let in: remembered, and told nothing.
fn pending(ledger: &mut Ledger, opened: &Opened, now: Stamp) -> Result<Answered, Declined> {
    let Some(ask) = &opened.parcel.enrolment else { return Err(Declined::NotARequest) };
    let key: PublicKey = ask.key;
    let code = code_state(ledger.store(), &ask.code, key.id(), now)?;
    if code != CodeState::Open {
        return Err(Declined::Code(code));
    }
    // Bound to this phone from now on, so that a person may take more than a quarter of an hour to say yes.
    ledger.store_mut().use_invite(&ask.code, &key.id().0)?;
    remember(ledger, ask)?;
    let answer = Parcel { link: Link::Asked, ..stamped(ledger, now)? };
    let fingerprint = PendingDevice::fingerprint_of(key.id());
    let device = PendingDevice { key, fingerprint, name: ask.name.clone(), code };
    let mut answered = Answered::of(key.id(), off_ms(&answer, &opened.parcel));
    answered.pending = Some(device);
    answered.bytes = seal_answer(&answer, opened.digest, ledger.own_key())?.wire;
    Ok(answered)
}

fn known(
    ledger: &mut Ledger,
    opened: Opened,
    rows: Option<Vec<EntryRow>>,
    door: &Door<'_>,
    now: Stamp,
) -> Result<Answered, Declined> {
    let Opened { mut parcel, signer, digest, .. } = opened;
    let device = signer.id();
    let runs = std::mem::take(&mut parcel.runs);
    let lengths = runs.iter().map(|run| run.entries.len()).collect();
    // What names something that is not here is not kept: the phone still has it, and is told what is missing.
    let Through { entries, .. } = match rows {
        Some(rows) => admit_ahead(ledger, rows, now.unix_ms(), Some(device.0))?,
        None => admit_runs(ledger, runs, now.unix_ms(), Some(device.0))?,
    };
    let mut answer = Parcel { link: Link::Asked, ..stamped(ledger, now)? };
    let mut answered = Answered::of(device, off_ms(&answer, &parcel));
    for entry in &entries {
        match entry.fate {
            Fate::Admitted => {
                answered.admitted += 1;
                answered.books.insert(entry.book);
            }
            Fate::Known => answered.known += 1,
            Fate::Waiting(_) => answered.missing += 1,
            Fate::Refused(_) => answered.refused += 1,
        }
    }
    let stops =
        ledger.fleet().revoked.iter().filter(|(id, _, _)| *id == device.0).map(|(_, entry, _)| *entry);
    let mut upto = None;
    for entry in stops {
        answered.stopped = true;
        upto = upto.max(ledger.store().truth().by_id(entry)?.iter().map(|held| held.n).max());
    }
    let told = Told {
        digest,
        sender: signer,
        is_answer: false,
        sender_ms: parcel.sender_ms,
        runs: lengths,
        entries,
        heads: Vec::new(),
        cursors: Vec::new(),
    };
    (answer.admitted, answer.refused) = fates(ledger, &told)?;
    let trucks = follow::remember(ledger.store_mut(), device, &trucks_of(&parcel, &told))?;
    let has: HashSet<_> = told.entries.iter().filter_map(|entry| entry.hash).collect();
    let again = told.entries.iter().filter(|entry| entry.fate == Fate::Known).map(|entry| entry.book);
    let again = again.filter(|book| !answered.stopped || *book == BookId::Fleet).collect();
    let asked = Asked { parcel: &parcel, device, has, again, trucks, stopped: answered.stopped, upto };
    let to_n = give(ledger, &asked, &mut answer)?;
    answered.given = usize::try_from(answer.entries()).unwrap_or(usize::MAX);
    answered.more = answer.more;
    answer.token = (door.token)(device).filter(|_| !answered.stopped);
    if answer.refused.is_empty() {
        // All of each.
        answer.admitted.clear();
    }
    answered.bytes = seal_answer(&answer, digest, ledger.own_key())?.wire;
    let cursor = parcel.cursors.iter().find(|cursor| cursor.book.is_none());
    let row = ExchangeRow {
        device: device.0,
        at_ms: i64::try_from(answer.sender_ms).unwrap_or(i64::MAX),
        from_n: cursor.map_or(0, |cursor| i64::try_from(cursor.n).unwrap_or(0)),
        to_n: if answered.stopped { 0 } else { to_n },
        off_ms: Some(answered.off_ms),
    };
    ledger.store_mut().log_exchange(&row)?;
    if let Some(program) = &parcel.program {
        ledger.store_mut().keep_program(device.0, program, now.unix_ms())?;
    }
    Ok(answered)
}

/// The trucks a request speaks of: those it states and those it brought entries of.
fn trucks_of(parcel: &Parcel, told: &Told) -> BTreeSet<TruckId> {
    let here = |fate| matches!(fate, Fate::Admitted | Fate::Known);
    let brought = told.entries.iter().filter(|entry| here(entry.fate)).map(|entry| entry.book);
    let stated = parcel.heads.iter().map(|heads| heads.book);
    let compared = parcel.reconcile.iter().map(|part| part.book);
    brought.chain(stated).chain(compared).filter_map(follow::truck_of).collect()
}

fn off_ms(answer: &Parcel, request: &Parcel) -> i64 {
    let ms = |ms: u64| i64::try_from(ms).unwrap_or(i64::MAX);
    ms(answer.sender_ms).saturating_sub(ms(request.sender_ms))
}

impl Answered {
    fn of(device: KeyId, off_ms: i64) -> Answered {
        Answered {
            bytes: Vec::new(),
            device,
            admitted: 0,
            known: 0,
            missing: 0,
            refused: 0,
            given: 0,
            more: false,
            stopped: false,
            pending: None,
            books: BTreeSet::new(),
            off_ms,
        }
    }
}

/// The shop gives a device these trucks: with its next exchange it gets their books.
///
/// # Errors
/// [`ExchangeError::NotTheShop`], [`ExchangeError::UnknownTruck`], and as any write.
pub fn give_trucks(ledger: &mut Ledger, device: KeyId, trucks: &[TruckId]) -> Result<(), ExchangeError> {
    if !memory::is_shop(ledger) {
        return Err(ExchangeError::NotTheShop);
    }
    if let Some(unknown) = trucks.iter().find(|truck| !ledger.fleet().trucks.contains_key(truck)) {
        return Err(ExchangeError::UnknownTruck(*unknown));
    }
    follow::remember(ledger.store_mut(), device, &trucks.iter().copied().collect())?;
    Ok(())
}
