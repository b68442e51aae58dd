//! What the last one left: defects, certificates to review, before anything is driven (49 CFR 396.13).

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};
use sumpbook_trade::checklist::Template;
use sumpbook_trade::defect::{Defect, DefectState, LockPart};
use sumpbook_trade::{EntryId, Fact, FactKind, Stamp, TruckId};

use super::defect_row::{DefectNow, DefectRow, name};
use super::levels::newest_entries;
use super::main_act::{DisabledReason, Main, MainAct};
use super::news::{News, Standing, count};
use crate::ledger::{Ledger, LedgerError};

/// Which unit, and what was on the screen so far.
#[derive(Clone, Debug, PartialEq)]
pub struct LastReportQuery {
    /// The unit.
    pub unit: TruckId,
    /// Rows that have lain whole on the screen.
    pub seen: BTreeSet<String>,
}

/// The last end-of-day report.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ReportRow {
    /// Its entry.
    pub id: EntryId,
    /// When.
    pub at: Stamp,
    /// By whom.
    pub by: Option<String>,
    /// It said that no defect was found.
    pub none_found: bool,
    /// How many it listed.
    pub listed: u32,
    /// Words for the next driver.
    pub to_next: Option<String>,
    /// Whether brake tanks were drained.
    pub tanks_drained: Option<bool>,
}

/// What the last one left.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LastReportScreen {
    /// The unit's door number.
    pub door: String,
    /// How old the shop's news is.
    pub news: News,
    /// The last report; none: no report is on this phone.
    pub report: Option<ReportRow>,
    /// Every defect that is not over, earliest first.
    pub defects: Vec<DefectRow>,
    /// Certificates that the review names.
    pub to_review: Vec<EntryId>,
    /// Items of the checklist that this tap answers OK: what stands before the walk and is as it should be.
    pub answers: Vec<String>,
    /// The main button.
    pub main: Main,
}

/// What the last one left.
///
/// # Errors
/// As reading the store.
pub fn last_report(
    ledger: &Ledger,
    query: &LastReportQuery,
    template: &Template,
    standing: &Standing,
    now: Stamp,
) -> Result<LastReportScreen, LedgerError> {
    let unit = query.unit;
    let fleet = ledger.fleet();
    let state = ledger.unit_state(unit)?;
    let open = state.defects.iter().filter(|defect| is_open(defect));
    let defects: Vec<DefectRow> =
        open.map(|defect| DefectRow::with_photos(ledger, defect)).collect::<Result<_, _>>()?;
    let uncertified =
        |part: LockPart| defects.iter().any(|row| row.state == DefectNow::Open && row.locks.contains(&part));
    let (road, air) = (uncertified(LockPart::Road), uncertified(LockPart::Air));
    let act = match (road, air) {
        (false, false) => MainAct::ReadAndReviewed,
        (true, false) => MainAct::ReadRoadStaysLocked,
        (false, true) => MainAct::ReadAirStaysLocked,
        (true, true) => MainAct::ReadBothStayLocked,
    };
    let unseen = defects.iter().filter(|row| !query.seen.contains(&row.id)).count();
    let news = News::at(standing.heard, now);
    let as_it_should_be = |item: &&String| match item.as_str() {
        "last-report" => !road && !air,
        "phone-age" => !news.old,
        _ => false,
    };
    Ok(LastReportScreen {
        door: fleet.door(unit),
        report: last_of(ledger, unit)?,
        to_review: defects
            .iter()
            .filter(|row| row.state == DefectNow::AwaitingReview)
            .filter_map(|row| row.certificate.as_ref())
            .filter(|certificate| !certificate.by_slip)
            .map(|certificate| certificate.id)
            .collect(),
        answers: template.before_the_walk.iter().filter(as_it_should_be).cloned().collect(),
        main: Main { act, why_not: (unseen > 0).then(|| DisabledReason::MoreBelow { left: count(unseen) }) },
        defects,
        news,
    })
}

/// Whether a defect is not over.
pub(super) fn is_open(defect: &Defect) -> bool {
    !matches!(defect.state, DefectState::Closed { .. })
}

/// The newest end-of-day report of a unit.
pub(super) fn last_of(ledger: &Ledger, unit: TruckId) -> Result<Option<ReportRow>, LedgerError> {
    let newest = newest_entries(ledger, unit, FactKind::EndOfDay, 3)?;
    Ok(newest.into_iter().find_map(|entry| match &entry.fact {
        Fact::EndOfDay(report) => Some(ReportRow {
            id: entry.id,
            at: entry.at,
            by: entry.person.and_then(|p| name(ledger.fleet(), p.0)),
            none_found: report.none_found,
            listed: count(report.defects.len()),
            to_next: report.to_next.clone(),
            tanks_drained: report.tanks_drained,
        }),
        _ => None,
    }))
}
