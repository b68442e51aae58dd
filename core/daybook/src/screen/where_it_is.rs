//! Has the shop got it: every entry of this phone, with where it stands.

use std::collections::{BTreeMap, BTreeSet};

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};
use sumpbook_trade::record::Digest;
use sumpbook_trade::{EntryId, FactKind, Stamp, TruckId};

use super::defect_row::name;
use super::main_act::{Main, MainAct};
use super::news::{Counts, News, PhotoCounts, PhotoPlace, Standing};
use crate::judgement::Judged;
use crate::ledger::{Ledger, LedgerError, day_number};
use crate::phone::online::TriedWhy;
use crate::state::UnitState;
use crate::store::Truth;

/// How far back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WhereQuery {
    /// Days of the yard before today.
    pub days_back: u16,
}

/// Why an entry is not counted. It is kept and shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Aside {
    /// By judgement, for the text `aside-...`.
    Judged(Judged),
    /// Its hours do not fit the meter (R3); the rest of it counts.
    Reading,
    /// The shop has set it aside; its reason comes with the next news.
    ByShop,
}

/// Where an entry stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Place {
    /// Only on this phone.
    OnPhone,
    /// A receipt of the shop covers it.
    AtShop,
}

/// One entry.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct WhereRow {
    /// The entry: the row's id.
    pub id: EntryId,
    /// Its kind, for the text `kind-...`.
    pub kind: FactKind,
    /// When.
    pub at: Stamp,
    /// Who.
    pub by: Option<String>,
    /// Where it stands.
    pub place: Place,
    /// Set aside, and why.
    pub aside: Option<Aside>,
    /// The photos it names that this phone holds.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub photos: Vec<PhotoRow>,
}

/// A photo of an entry.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct PhotoRow {
    /// Its name, SHA-256: the row's id.
    pub photo: Digest,
    /// It is a sound.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub sound: bool,
    /// Where it stands.
    pub place: PhotoPlace,
}

/// One unit's entries of one day.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct WhereDay {
    /// The yard's day.
    pub day: NaiveDate,
    /// The unit; none for matters of the fleet.
    pub unit: Option<TruckId>,
    /// Its door number.
    pub door: Option<String>,
    /// In order of time.
    pub rows: Vec<WhereRow>,
}

/// Where it stands.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct WhereScreen {
    /// How many stand where, of all there are.
    pub counts: Counts,
    /// How many photos stand where; one that stopped on its way is told by `error-photo-stopped`.
    pub photos: PhotoCounts,
    /// How old the shop's news is.
    pub news: News,
    /// The shop was last tried.
    pub tried: Option<Stamp>,
    /// Why that came to nothing, whoever or whatever tried; none when it is not known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tried_why: Option<TriedWhy>,
    /// It will be tried again.
    pub again: Option<Stamp>,
    /// When the shop stopped this phone, for the text `error-phone-stopped`; none: it did not.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stopped: Option<Stamp>,
    /// This phone's entries, newest day first, units by door number.
    pub days: Vec<WhereDay>,
    /// The main button.
    pub main: Main,
}

/// Where this phone's entries stand.
///
/// # Errors
/// As reading the store.
pub fn where_it_is(
    ledger: &Ledger,
    query: &WhereQuery,
    standing: &Standing,
    now: Stamp,
) -> Result<WhereScreen, LedgerError> {
    let fleet = ledger.fleet();
    let truth = ledger.store().truth();
    let today = day_number(fleet.yard_day(now));
    let mut days: Vec<WhereDay> = Vec::new();
    // A phone whose clock ran ahead wrote into tomorrow; its entries are shown, not lost.
    let first = today.saturating_sub(i32::from(query.days_back));
    let facts = truth.facts_of_days_by(first, today + 1, ledger.own_key().id())?;
    let mut photos = photos(&truth, standing, facts.iter().map(|fact| fact.n).min())?;
    let mut struck: BTreeMap<TruckId, BTreeSet<EntryId>> = BTreeMap::new();
    for fact in facts {
        if let Some(truck) = fact.truck
            && !struck.contains_key(&truck)
        {
            struck.insert(truck, struck_of(&ledger.unit_state(truck)?));
        }
        let Some(at) = chrono::DateTime::from_timestamp_millis(fact.at_ms) else { continue };
        let at = Stamp::from(at.with_timezone(&fleet.zone).fixed_offset());
        let row = WhereRow {
            id: fact.id,
            kind: FactKind::from_code(fact.kind),
            at,
            by: fact.person.and_then(|p| name(fleet, p.0)),
            place: if standing.on_phone.contains(&fact.id) { Place::OnPhone } else { Place::AtShop },
            aside: aside(standing, fact.id, fact.judged, fact.truck.and_then(|truck| struck.get(&truck))),
            photos: photos.remove(&fact.n).unwrap_or_default(),
        };
        let day = fleet.yard_day(at);
        match days.iter_mut().find(|known| known.day == day && known.unit == fact.truck) {
            Some(known) => known.rows.push(row),
            None => days.push(WhereDay {
                day,
                unit: fact.truck,
                door: fact.truck.map(|truck| fleet.door(truck)),
                rows: vec![row],
            }),
        }
    }
    // Hours that do not fit the meter are a row set aside like the others, and are counted with them.
    let mut counts = standing.counts();
    let rows = days.iter().flat_map(|day| &day.rows);
    let misfits =
        rows.filter(|row| row.aside == Some(Aside::Reading) && !standing.aside.contains(&row.id)).count();
    counts.aside = counts.aside.saturating_add(super::news::count(misfits));
    days.sort_by(|a, b| (b.day, &a.door).cmp(&(a.day, &b.door)));
    Ok(WhereScreen {
        counts,
        photos: standing.photo_counts(),
        news: News::at(standing.heard, now),
        tried: standing.tried,
        tried_why: standing.tried_why,
        stopped: standing.stopped,
        again: standing.again,
        days,
        // Trying brings news too, so it can be pressed with nothing to send.
        main: Main::ready(MainAct::TryShop),
    })
}

/// The photos that this phone holds of the entries from a number on, entry by entry.
fn photos(
    truth: &Truth<'_>,
    standing: &Standing,
    from: Option<i64>,
) -> Result<BTreeMap<i64, Vec<PhotoRow>>, LedgerError> {
    let mut of: BTreeMap<i64, Vec<PhotoRow>> = BTreeMap::new();
    let Some(from) = from.filter(|_| !standing.photos.is_empty()) else { return Ok(of) };
    for (n, photo, sound) in truth.photos_named_from(from)? {
        if let Some(place) = standing.photos.get(&photo) {
            of.entry(n).or_default().push(PhotoRow { photo, sound, place: *place });
        }
    }
    Ok(of)
}

/// The entries whose hours do not fit the meter of their unit.
pub(super) fn struck_of(state: &UnitState) -> BTreeSet<EntryId> {
    state.hours.struck.iter().map(|reading| reading.entry).collect()
}

/// Why an entry does not count, or its hours; none when all of it does.
pub(super) fn aside(
    standing: &Standing,
    id: EntryId,
    judged: Judged,
    struck: Option<&BTreeSet<EntryId>>,
) -> Option<Aside> {
    if judged != Judged::Counts {
        return Some(Aside::Judged(judged));
    }
    if struck.is_some_and(|struck| struck.contains(&id)) {
        return Some(Aside::Reading);
    }
    standing.aside.contains(&id).then_some(Aside::ByShop)
}
