//! What is set aside, as the page and its JSON hold it.

use std::collections::BTreeMap;

use serde::Serialize;
use sumpbook_daybook::exchange::PendingDevice;
use sumpbook_daybook::gate::{KeyId, verify};
use sumpbook_daybook::judgement::Judged;
use sumpbook_daybook::ledger::{Incoming, Ledger};
use sumpbook_daybook::line::Line;
use sumpbook_daybook::store::HeldEntry;
use sumpbook_trade::{Entry, EntryId, Fact, FactKind, Stamp, Tenths};

use crate::ShopError;
use crate::plan::states;
use crate::sheet::{AsideRow, SettleRow, TwiceRow, Yard, doubles, entry_of, questions, set_aside, word};

/// Settled ones that are shown.
const SETTLED: i64 = 100;

/// The page and its JSON.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct AsideView {
    /// What waits, oldest first.
    pub(super) waiting: Vec<WaitingRow>,
    /// Readings in dispute.
    pub(super) readings: Vec<SettleRow>,
    /// Services that look entered twice.
    pub(super) twice: Vec<TwiceRow>,
    /// What came and was not taken into any book, by who is said to have written it and why.
    pub(super) outside: Vec<OutsideRow>,
    /// What was settled before, newest first.
    pub(super) settled: Vec<SettledRow>,
    /// The newest decision this page knows: whoever decides on it decides about nothing that was decided after it.
    pub(super) decided_upto: i64,
}

/// An entry that waits.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct WaitingRow {
    #[serde(flatten)]
    pub(super) row: AsideRow,
    /// Hours it carries.
    pub(super) hours: Option<Tenths>,
    /// The entry as it was signed; none when it does not read.
    pub(super) as_signed: Option<Line>,
    /// Whether its signature holds.
    pub(super) signature_holds: bool,
    /// Whether a person's word decides about it; else only another version, or the shop's own entry, does.
    pub(super) can_decide: bool,
}

/// What was not taken in.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct OutsideRow {
    /// Under whose key; none when not known.
    pub(super) came_from: Option<String>,
    /// Why: a word of the exchange.
    pub(super) why: String,
    /// How many.
    pub(super) count: usize,
    /// The newest came.
    pub(super) last: Stamp,
}

/// A decision.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct SettledRow {
    pub(super) when: Stamp,
    pub(super) who: Option<String>,
    pub(super) why: String,
    /// `use`, `do-not-use`, `same-service`, `reading-stands`, `late-accepted`.
    pub(super) verdict: String,
    pub(super) about: Vec<AboutRow>,
    /// No later one is about the same: it can be decided otherwise.
    pub(super) is_last: bool,
}

/// What it is about.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct AboutRow {
    pub(super) entry: EntryId,
    /// Door number; none for a matter of the fleet.
    pub(super) unit: Option<String>,
    /// Its kind: a key of the texts.
    pub(super) says: String,
    pub(super) hours: Option<Tenths>,
    pub(super) at: Stamp,
}

pub(super) fn read(ledger: &Ledger, now: Stamp) -> Result<AsideView, ShopError> {
    let yard = Yard::of(ledger, ledger.fleet().yard_day(now), now)?;
    let mut waiting = Vec::new();
    for row in set_aside(ledger, &yard)? {
        waiting.push(waits(ledger, row)?);
    }
    let states = states(ledger, &yard)?;
    let units = || states.iter().map(|(door, state)| (door.as_str(), state));
    Ok(AsideView {
        waiting,
        readings: questions(ledger, &yard, units())?,
        twice: doubles(ledger, &yard, units())?,
        outside: outside(ledger, &yard)?,
        settled: settled(ledger, &yard)?,
        decided_upto: ledger.store().truth().settled(1)?.first().copied().unwrap_or(0),
    })
}

fn waits(ledger: &Ledger, row: AsideRow) -> Result<WaitingRow, ShopError> {
    // Two contents may stand under one id: the one that this phone signed is meant.
    let held = ledger.store().truth().by_id(row.entry)?;
    let fleet = ledger.fleet();
    let signed_by = |held: &&HeldEntry| {
        let name = fleet.device(held.row.actor.key().0).map(|device| device.name.as_str());
        name == Some(row.came_from.as_str())
    };
    let held = held.iter().find(signed_by).or(held.first());
    let entry = held.and_then(|held| Entry::from_payload(&held.row.payload).ok());
    let fact = held.map(|held| ledger.store().truth().fact(held.n)).transpose()?.flatten();
    Ok(WaitingRow {
        hours: fact.and_then(|fact| fact.hours),
        as_signed: entry.as_ref().map(|entry| Line::of(entry, fleet)),
        signature_holds: held.is_some_and(|held| holds(ledger, held)),
        can_decide: matches!(row.why.as_str(), "device-stopped" | "other-unit"),
        row,
    })
}

fn holds(ledger: &Ledger, held: &HeldEntry) -> bool {
    let Some(key) = ledger.key(held.row.actor.key()) else { return false };
    let incoming = Incoming::of_row(ledger.root().fleet, &held.row);
    verify(&incoming.place, &incoming.payload, &incoming.signature, &key).is_ok()
}

/// Whether an entry waits because its phone was stopped.
pub(super) fn is_of_stopped_phone(ledger: &Ledger, entry: EntryId) -> Result<bool, ShopError> {
    let truth = ledger.store().truth();
    for held in truth.by_id(entry)? {
        if truth.fact(held.n)?.is_some_and(|fact| fact.judged == Judged::DeviceStopped) {
            return Ok(true);
        }
    }
    Ok(false)
}

fn outside(ledger: &Ledger, yard: &Yard) -> Result<Vec<OutsideRow>, ShopError> {
    /// Under whose key, and why.
    type Whose = (Option<[u8; 8]>, String);
    let mut rows: BTreeMap<Whose, (usize, i64)> = BTreeMap::new();
    for row in ledger.store().refused()? {
        let (count, last) = rows.entry((row.device, row.reason)).or_default();
        *count = count.saturating_add(1);
        *last = (*last).max(row.received_ms);
    }
    let named = |id: [u8; 8]| match ledger.fleet().device(id) {
        Some(device) => device.name.clone(),
        None => PendingDevice::fingerprint_of(KeyId(id)),
    };
    let rows = rows.into_iter().map(|((device, why), (count, last))| OutsideRow {
        came_from: device.map(named),
        why,
        count,
        last: yard.stamp_ms(last),
    });
    Ok(rows.collect())
}

fn settled(ledger: &Ledger, yard: &Yard) -> Result<Vec<SettledRow>, ShopError> {
    let truth = ledger.store().truth();
    let mut rows = Vec::new();
    for n in truth.settled(SETTLED)? {
        let Some((_, entry)) = entry_of(&truth, n)? else { continue };
        let (targets, verdict, why) = match &entry.fact {
            Fact::Decision(decision) => (&decision.targets, word(&decision.verdict), &decision.why),
            Fact::LateAccepted(accepted) => (&accepted.targets, "late-accepted".to_owned(), &accepted.why),
            _ => continue,
        };
        let (mut about, mut is_last) = (Vec::new(), true);
        for target in targets {
            about.extend(about_row(ledger, yard, *target)?);
            is_last &= decided_after(ledger, *target, n)?.is_none();
        }
        rows.push(SettledRow {
            when: yard.stamp(entry.at.moment()),
            who: yard.name(ledger, entry.person),
            why: why.clone(),
            verdict,
            about,
            is_last,
        });
    }
    Ok(rows)
}

/// The newest decision about an entry after another one, by their numbers.
pub(super) fn decided_after(ledger: &Ledger, target: EntryId, n: i64) -> Result<Option<i64>, ShopError> {
    let person = [FactKind::Decision, FactKind::LateAccepted].map(|kind| kind.code());
    let decided = ledger.store().truth().decided(target)?.into_iter();
    let later = decided.filter(|(by, kind, _)| *by > n && person.contains(&Some(*kind)));
    Ok(later.map(|(by, _, _)| by).max())
}

fn about_row(ledger: &Ledger, yard: &Yard, id: EntryId) -> Result<Option<AboutRow>, ShopError> {
    let truth = ledger.store().truth();
    let Some(held) = truth.by_id(id)?.into_iter().next() else { return Ok(None) };
    let hours = truth.fact(held.n)?.and_then(|fact| fact.hours);
    Ok(Entry::from_payload(&held.row.payload).ok().map(|entry| AboutRow {
        entry: id,
        unit: entry.unit.map(|truck| ledger.fleet().door(truck)),
        says: word(&entry.fact.kind()),
        hours,
        at: yard.stamp(entry.at.moment()),
    }))
}
