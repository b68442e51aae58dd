//! What the cab report says, as the page and its JSON hold it.

use serde::Serialize;
use sumpbook_daybook::ledger::Ledger;
use sumpbook_daybook::screen::{LookedAt, PartAnswer, PartRow as Row, check_code, eleven_parts, looked_at};
use sumpbook_trade::checklist::Part;
use sumpbook_trade::defect::{Defect, DefectState};
use sumpbook_trade::record::Source;
use sumpbook_trade::{FactKind, Figure, Stamp, TruckId};

use crate::ShopError;
use crate::paper::template;
use crate::sheet::{DefectRow, Yard, defect_row, word};
use sumpbook_daybook::screen::walk_rules::{self, RuleSaid};

/// The page and its JSON.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct CabView {
    pub(super) fleet: String,
    pub(super) unit: String,
    pub(super) plate: Option<String>,
    /// Serial numbers of the chassis and of the compressor set.
    pub(super) serial: Option<String>,
    pub(super) set_serial: Option<String>,
    /// The last day on which the annual inspection holds, when it is on record.
    pub(super) annual_inspection: Option<chrono::NaiveDate>,
    /// It ran out by the day of the page.
    pub(super) annual_inspection_over: bool,
    pub(super) known_at: Stamp,
    /// When something of this unit last came from a phone.
    pub(super) shop_heard: Option<Stamp>,
    /// What stands locked: `road`, `air`, `outlet/` with its name.
    pub(super) locks: Vec<LockRow>,
    /// The eleven parts, in the rule's order.
    pub(super) parts: Vec<PartRow>,
    /// What each rule says of the walk's figures.
    pub(super) rules: Vec<RuleSaid>,
    /// Defects that are open, or were certified or reviewed since the last walk's day.
    pub(super) defects: Vec<DefectRow>,
    /// Who signed on the last day that someone looked, the last first.
    pub(super) signed: Vec<SignedRow>,
    /// The first 8 bytes of SHA-256 over door number, moment and the heads of the unit's books.
    pub(super) check: String,
}

/// A lock-out that stands.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct LockRow {
    pub(super) lock: String,
    pub(super) since: Stamp,
    /// Certified, and not reviewed yet.
    pub(super) awaits_review: bool,
}

/// One part of the driver's report.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct PartRow {
    /// `i` to `xi`.
    pub(super) part: String,
    /// `ok`, `defect`, `could-not-check`, `not-fitted`, `not-answered`.
    pub(super) answer: String,
    /// No defect was seen on the walk, and one of the part's items has an open one all the same.
    pub(super) open_elsewhere: bool,
    pub(super) who: Option<String>,
    pub(super) at: Option<Stamp>,
    /// Figures given, each with its item: "air-leak-released 1 psi".
    pub(super) figures: Vec<(String, String)>,
}

/// A signature under the walk.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(super) struct SignedRow {
    pub(super) who: Option<String>,
    pub(super) at: Stamp,
    pub(super) pin_given: bool,
    /// Which phone; "the shop" for a page of paper typed in.
    pub(super) came_from: String,
    pub(super) paper: bool,
}

pub(super) fn read(ledger: &Ledger, door: &str, now: Stamp) -> Result<Option<CabView>, ShopError> {
    let fleet = ledger.fleet();
    let Some(truck) = fleet.truck_by_door(door) else { return Ok(None) };
    let yard = Yard::of(ledger, fleet.yard_day(now), now)?;
    let state = ledger.unit_state_at(truck.truck, yard.cut_ms)?;
    let template = template(ledger)?;
    let walk = looked_at(ledger, truck.truck, yard.cut_ms)?;
    let parts = eleven_parts(ledger, truck.truck, &template, &walk);
    let answers = walk.iter().flat_map(|section| &section.section.answers);
    let rules = answers
        .flat_map(|answer| walk_rules::said(&template, answer, &truck.features, &ledger.fleet().numbers));
    let rules = rules.collect();
    let day = walk.first().map(|last| yard.day_of(last.entry.at.moment()));
    let mut defects = Vec::new();
    for defect in state.defects.iter().filter(|defect| is_told(defect, day, &yard)) {
        defects.push(defect_row(ledger, &yard, &truck.door, defect)?);
    }
    defects.sort_by(|a, b| (a.since, &a.item, &a.place).cmp(&(b.since, &b.item, &b.place)));
    let is_open = |defect: &&Defect| defect.state == DefectState::Open;
    let of_part = |defect: &Defect| template.item(&defect.item).and_then(|item| item.part);
    let open: Vec<_> = state.defects.iter().filter(is_open).filter_map(of_part).collect();
    let locks = state.locks_at(yard.cut()).map(|lock| LockRow {
        lock: lock.part.clone().into(),
        since: yard.stamp(lock.since),
        awaits_review: lock.certified.is_some(),
    });
    Ok(Some(CabView {
        fleet: fleet.name.clone(),
        unit: truck.door.clone(),
        plate: truck.plate.clone(),
        serial: truck.serial.clone(),
        set_serial: fleet.set_on(truck.truck).and_then(|set| set.serial.clone()),
        annual_inspection: truck.annual_inspection,
        annual_inspection_over: truck.annual_inspection.is_some_and(|day| day < fleet.yard_day(now)),
        known_at: yard.stamp(now.moment()),
        shop_heard: shop_heard(ledger, &yard, truck.truck)?,
        locks: locks.collect(),
        parts: parts.into_iter().map(|row| part(&yard, row, &open)).collect(),
        rules,
        defects,
        signed: walk.iter().map(|section| signed(ledger, &yard, section)).collect(),
        check: check_code(ledger, truck.truck, now)?,
    }))
}

/// Whether the page tells of a defect: it is open, or something became of it since the last walk's day.
fn is_told(defect: &Defect, day: Option<chrono::NaiveDate>, yard: &Yard) -> bool {
    match &defect.state {
        DefectState::Open | DefectState::AwaitingReview { .. } => true,
        DefectState::Closed { certified, reviewed } => {
            let last = reviewed.as_ref().map_or(certified.at, |reviewed| reviewed.at);
            day.is_some_and(|day| yard.day_of(last) >= day)
        }
    }
}

/// `open`: parts of which an item has an open defect now.
fn part(yard: &Yard, row: Row, open: &[Part]) -> PartRow {
    let said = |figure: Figure| format!("{} {}", figure.value_text(), word(&figure.unit));
    PartRow {
        part: word(&row.part),
        answer: word(&row.answer),
        open_elsewhere: row.answer == PartAnswer::Ok && open.contains(&row.part),
        who: row.by,
        at: row.at.map(|at| yard.stamp(at.moment())),
        figures: row.figures.into_iter().map(|given| (given.item, said(given.figure))).collect(),
    }
}

fn signed(ledger: &Ledger, yard: &Yard, section: &LookedAt) -> SignedRow {
    SignedRow {
        who: yard.name(ledger, section.entry.person),
        at: yard.stamp(section.entry.at.moment()),
        pin_given: section.entry.pin_given,
        came_from: yard.phone(ledger, section.key),
        paper: section.entry.source == Source::Paper,
    }
}

/// When the newest entries of the unit came that the shop did not write itself.
fn shop_heard(ledger: &Ledger, yard: &Yard, truck: TruckId) -> Result<Option<Stamp>, ShopError> {
    let truth = ledger.store().truth();
    let mut newest: Option<i64> = None;
    // The set's own news may have come from where it stood before.
    for fact in ledger.newest_air_facts(truck, FactKind::HourReading, 1)? {
        let held = truth.entry(fact.n)?.filter(|held| held.row.actor.key() != ledger.root().shop.id());
        newest = newest.max(held.map(|held| held.received_ms));
    }
    for kind in [FactKind::PreTripSection, FactKind::EndOfDay, FactKind::HourReading, FactKind::Review] {
        for fact in truth.newest_facts(truck, kind.code().unwrap_or(0), 1)? {
            let held = truth.entry(fact.n)?.filter(|held| held.row.actor.key() != ledger.root().shop.id());
            newest = newest.max(held.map(|held| held.received_ms));
        }
    }
    Ok(newest.map(|ms| yard.stamp_ms(ms)))
}
