//! A certificate printed as a slip, with a short code for each phone that may be in a yard without signal.

use serde::Serialize;
use sumpbook_daybook::gate::{KeyId, PublicKey, SlipCode};
use sumpbook_daybook::ledger::Ledger;
use sumpbook_trade::defect::{Defect, DefectState, Said};
use sumpbook_trade::record::{Certificate, DefectName};
use sumpbook_trade::{Entry, EntryId, Fact, Stamp, TruckId};

use crate::ShopError;
use crate::sheet::{SaidRow, Yard, key};

/// A certificate as it is printed.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Slip {
    /// Its entry.
    pub entry: EntryId,
    /// The fleet.
    pub fleet: String,
    /// Door number.
    pub unit: String,
    /// The item certified: a key of the texts.
    pub item: String,
    /// Its place.
    pub place: Option<String>,
    /// What was found, by whom and when; none when that is no longer kept beside it.
    pub found: Vec<SaidRow>,
    /// `repaired`, `not-needed`.
    pub verdict: String,
    /// The work done, or the reason.
    pub words: String,
    /// Who certifies.
    pub who: Option<String>,
    /// When.
    pub at: Stamp,
    /// Where the defect stands: `open`, `awaiting-review`, `closed`.
    pub state: String,
    /// A code for each phone, the unit's own first; none once the lock-out has ended.
    pub codes: Vec<PhoneCode>,
}

/// What one phone takes.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct PhoneCode {
    /// The phone.
    pub phone: String,
    /// Three groups of four digits.
    pub code: String,
}

/// The slip of a certificate; none when there is no such certificate that counts.
///
/// # Errors
/// As any read.
pub fn slip(ledger: &Ledger, certificate: EntryId, now: Stamp) -> Result<Option<Slip>, ShopError> {
    let truth = ledger.store().truth();
    let Some(held) = truth.by_id(certificate)?.into_iter().next() else { return Ok(None) };
    let counts = truth.fact(held.n)?.is_some_and(|f| f.judged == sumpbook_daybook::Judged::Counts);
    let Ok(Entry { unit: Some(truck), at, person, fact: Fact::Certificate(said), .. }) =
        Entry::from_payload(&held.row.payload)
    else {
        return Ok(None);
    };
    if !counts {
        return Ok(None);
    }
    let yard = Yard::of(ledger, ledger.fleet().yard_day(now), now)?;
    let state = ledger.unit_state(truck)?;
    let of = |defect: &&Defect| defect.certificates.iter().any(|c| c.certificate == certificate.0);
    let defect = state.defects.iter().find(of);
    let waits = defect.filter(|defect| matches!(defect.state, DefectState::AwaitingReview { .. }));
    Ok(Some(Slip {
        entry: certificate,
        fleet: ledger.fleet().name.clone(),
        unit: ledger.fleet().door(truck),
        item: said.defect.item.clone(),
        place: said.defect.place.clone(),
        found: defect.map(|defect| found(ledger, &yard, defect)).unwrap_or_default(),
        verdict: key(&said.verdict),
        words: said.words.clone(),
        who: yard.name(ledger, person),
        at: yard.stamp(at.moment()),
        state: match defect.map(|defect| &defect.state) {
            Some(DefectState::Open) => "open",
            Some(DefectState::AwaitingReview { .. }) => "awaiting-review",
            Some(DefectState::Closed { .. }) | None => "closed",
        }
        .to_owned(),
        codes: match waits {
            Some(defect) => codes(ledger, truck, defect, &said)?,
            None => Vec::new(),
        },
    }))
}

fn found(ledger: &Ledger, yard: &Yard, defect: &Defect) -> Vec<SaidRow> {
    let said = defect.answers.iter().filter_map(|answer| match &answer.said {
        Said::Ok => None,
        Said::Defect { words, .. } => Some(SaidRow {
            who: yard.name_of(ledger, answer.person),
            at: yard.stamp(answer.at),
            ok: false,
            words: words.clone(),
        }),
    });
    said.collect()
}

/// One code for each phone that is not stopped. Of several findings a phone surely knows its own; any other
/// phone the first, which is what the certificate names.
fn codes(
    ledger: &Ledger,
    truck: TruckId,
    defect: &Defect,
    said: &Certificate,
) -> Result<Vec<PhoneCode>, ShopError> {
    let (truth, fleet, root) = (ledger.store().truth(), ledger.fleet(), ledger.root());
    let mut signed: Vec<(KeyId, EntryId)> = Vec::new();
    for answer in defect.answers.iter().filter(|answer| answer.said != Said::Ok) {
        let entry = EntryId(answer.entry);
        if let Some(held) = truth.by_id(entry)?.into_iter().next() {
            signed.push((held.row.actor.key(), entry));
        }
    }
    let wrote = last_writers(ledger, truck)?;
    let mut all = Vec::new();
    for (id, device) in &fleet.devices {
        let stopped = fleet.revoked.iter().any(|(revoked, _, _)| revoked == id);
        let Ok(public) = PublicKey::from_bytes(&device.key.0) else { continue };
        if stopped || KeyId(*id) == root.shop.id() {
            continue;
        }
        let own = signed.iter().find(|(signer, _)| signer.0 == *id).map(|(_, entry)| *entry);
        let name = DefectName { entry: own.unwrap_or(said.defect.entry), ..said.defect.clone() };
        let code = SlipCode::of(ledger.own_key(), &public, root.fleet, &name, said.verdict);
        let place = wrote.iter().position(|key| key.0 == *id).unwrap_or(usize::MAX);
        all.push((place, PhoneCode { phone: device.name.clone(), code: code.to_string() }));
    }
    all.sort_by(|(a, one), (b, two)| (a, &one.phone).cmp(&(b, &two.phone)));
    Ok(all.into_iter().map(|(_, code)| code).collect())
}

/// As many of a unit's newest entries are looked at.
const NEWEST: i64 = 200;

/// Who wrote of a unit, the last one first.
fn last_writers(ledger: &Ledger, truck: TruckId) -> Result<Vec<KeyId>, ShopError> {
    let truth = ledger.store().truth();
    let mut wrote: Vec<KeyId> = Vec::new();
    for fact in truth.facts_of_unit(truck, 0, NEWEST)? {
        if let Some(held) = truth.entry(fact.n)?
            && !wrote.contains(&held.row.actor.key())
        {
            wrote.push(held.row.actor.key());
        }
    }
    Ok(wrote)
}
