//! One unit: is it locked, what did the last one leave, which oil, how long till service.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};
use sumpbook_trade::defect::{Defect, DefectState, LockPart};
use sumpbook_trade::hours::Estimate;
use sumpbook_trade::record::{DefectName, Meter};
use sumpbook_trade::{EntryId, Feature, PersonId, Stamp, Tenths, TruckId};

use super::figures::ReadingRow;
use super::glass::stop_now;
use super::last_report::{ReportRow, last_of};
use super::lay_up::LayUpRow;
use super::levels::{OilLine, PourRow, oil_line};
use super::main_act::{Main, MainAct};
use super::news::{News, Standing, count};
use super::oil_use::OilUseRow;
use super::pre_trip::PreTripNow;
use super::road_air::{LockState, RoadAir, locked_only_here};
use super::ruler::{TaskRow, tasks};
use super::steps::{IN_A_DAY, air_next, under_way};
use super::today::last_used;
use crate::ledger::{Ledger, LedgerError};
use crate::state::OtherMeterNow;

/// Who looks at which unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct UnitQuery {
    /// The unit.
    pub unit: TruckId,
    /// Who looks.
    pub person: PersonId,
}

/// What differs from the unit this person usually takes.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Unlike {
    /// The usual unit's door number.
    pub usual: String,
    /// What only this one has.
    pub only_here: Vec<Feature>,
    /// What only the usual one has.
    pub not_here: Vec<Feature>,
}

/// A meter beside the compressor's.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct OtherMeterRow {
    /// Which.
    pub meter: Meter,
    /// Its last reading that counts.
    pub reading: Option<ReadingRow>,
    /// Questions about its readings that are open.
    pub open_questions: u32,
}

/// Hours that no meter counted, as somebody signed them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct EstimateRow {
    /// When it was signed.
    pub at: Stamp,
    /// At least.
    pub low: Tenths,
    /// Likely.
    pub likely: Tenths,
    /// At most: what the due list uses.
    pub high: Tenths,
}

/// One unit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct UnitScreen {
    /// The unit.
    pub id: TruckId,
    /// Its door number.
    pub door: String,
    /// How old the shop's news is.
    pub news: News,
    /// Road and air.
    pub road_air: RoadAir,
    /// The lay-up in which its set stands; none when it is not laid up. Its air is locked by it, and its clocks run on.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lay_up: Option<LayUpRow>,
    /// The last report.
    pub left_by: Option<ReportRow>,
    /// Defects that are not over.
    pub open_defects: u32,
    /// Display notes that are not gone.
    pub open_notes: u32,
    /// Its oil.
    pub oil: OilLine,
    /// Where its oil goes; none before anything is known of it.
    pub oil_use: Option<OilUseRow>,
    /// The last three pours, newest first.
    pub pours: Vec<PourRow>,
    /// The tasks, first to run out first. Empty: no programme set.
    pub tasks: Vec<TaskRow>,
    /// A reminder on the display went away and no service is recorded.
    pub reminder_gone_by: Option<Stamp>,
    /// The last reading that counts.
    pub reading: Option<ReadingRow>,
    /// Hours through all meters, as the due list uses them.
    pub hours: Option<Tenths>,
    /// Of a unit without a meter, at least so many; `hours` are counted, at most.
    pub counted_at_least: Option<Tenths>,
    /// Hours no meter counted, oldest first; `hours` hold the high figures.
    pub estimates: Vec<EstimateRow>,
    /// Hours a day by the readings of the last weeks, tenths; none when the pace is unknown.
    pub pace_tenths: Option<i64>,
    /// The engine's and the PTO's own meters, where they are read: they feed no clock here.
    pub other_meters: Vec<OtherMeterRow>,
    /// Questions about readings that are open.
    pub open_questions: u32,
    /// What differs from the usual unit; none when this is it, or nothing is known of one.
    pub unlike: Option<Unlike>,
    /// What of it is locked by findings that only this phone holds: the shop does not know yet.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub locked_only_here: Vec<LockPart>,
    /// Where no report is held: the first yard day of which this phone knows anything of the unit; none: it knows nothing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub known_since: Option<NaiveDate>,
    /// Where its pre-trip stands.
    pub pre_trip: PreTripNow,
    /// What the main button does.
    pub main: Main,
    /// What else of a day's work may be begun here, beside the main button.
    pub also: Vec<MainAct>,
    /// The yard's day.
    pub day: NaiveDate,
    /// The procedure of the air that comes next, for the texts `procedure-...`: stopping it once a start stands open.
    pub air: String,
    /// The other procedures that are gone through by themselves, in a day's order.
    pub procedures: Vec<String>,
    /// What of it is locked, or awaits its review: whoever used it all the same says why.
    pub used_all_the_same: Vec<LockPart>,
    /// The procedure this person is in the middle of here.
    pub steps_under_way: Option<String>,
    /// The defects that lock something here and are not certified: what a slip can speak of.
    pub slip_for: Vec<DefectName>,
    /// This person's top-up of it that is not finished.
    pub top_up_draft: Option<EntryId>,
}

impl From<&Estimate> for EstimateRow {
    fn from(of: &Estimate) -> EstimateRow {
        EstimateRow { at: of.at.into(), low: of.low, likely: of.likely, high: of.high }
    }
}

impl From<&OtherMeterNow> for OtherMeterRow {
    fn from(other: &OtherMeterNow) -> OtherMeterRow {
        OtherMeterRow {
            meter: other.meter,
            reading: other.last.as_ref().map(ReadingRow::from),
            open_questions: other.questions,
        }
    }
}

/// One unit as it stands.
///
/// # Errors
/// As reading the store.
pub fn unit(
    ledger: &Ledger,
    query: &UnitQuery,
    standing: &Standing,
    now: Stamp,
) -> Result<UnitScreen, LedgerError> {
    let fleet = ledger.fleet();
    let state = ledger.unit_state(query.unit)?;
    let drafts: Vec<_> =
        ledger.drafts()?.drafts.into_iter().filter(|draft| draft.person() == query.person).collect();
    let pre_trip = PreTripNow::of(ledger, query.unit, &drafts, query.person, now)?;
    let open = state.defects.iter().filter(|d| super::last_report::is_open(d)).count();
    let main = pre_trip.main(query.unit, &drafts, query.person);
    let road_air = RoadAir::of(fleet, query.unit, &state, now);
    let left_by = last_of(ledger, query.unit)?;
    let air = air_next(stop_now(ledger, query.unit)?);
    Ok(UnitScreen {
        id: query.unit,
        door: fleet.door(query.unit),
        news: News::at(standing.heard, now),
        lay_up: LayUpRow::of(&state, fleet, now),
        known_since: match left_by {
            Some(_) => None,
            None => known_since(ledger, query.unit)?,
        },
        left_by,
        locked_only_here: locked_only_here(&state, standing, now),
        open_defects: count(open),
        open_notes: count(state.notes.iter().filter(|note| note.gone.is_none()).count()),
        oil: oil_line(ledger, query.unit)?,
        oil_use: OilUseRow::of(&state.oil, fleet),
        pours: state.top_ups.iter().map(|top_up| PourRow::of(top_up, fleet)).collect(),
        tasks: tasks(fleet, query.unit, &state, now),
        reminder_gone_by: state.cleared.map(|cleared| cleared.gone_by.at.into()),
        reading: state.hours.last.as_ref().map(ReadingRow::from),
        hours: state.hours_at(now.moment()),
        counted_at_least: state.hours.counted.as_ref().map(|counted| counted.low),
        estimates: state.hours.estimates.iter().map(EstimateRow::from).collect(),
        pace_tenths: state.pace_at(now.moment()).map(|pace| (pace.per_day * 10.0).round() as i64),
        other_meters: state.other_meters.iter().map(OtherMeterRow::from).collect(),
        open_questions: count(state.hours.questions.len()),
        unlike: unlike(ledger, query, now)?,
        also: also(&main),
        day: fleet.yard_day(now),
        procedures: IN_A_DAY.into_iter().filter(|id| *id != air).map(str::to_owned).collect(),
        air: air.to_owned(),
        used_all_the_same: [&road_air.road, &road_air.air]
            .into_iter()
            .filter(|part| part.state != LockState::NoLockOnRecord)
            .map(|part| part.part.clone())
            .collect(),
        road_air,
        steps_under_way: under_way(ledger, query.unit, query.person)?.into_iter().next().map(|d| d.procedure),
        slip_for: state.defects.iter().filter_map(lock_by_defect).collect(),
        main: Main::ready(main),
        pre_trip,
        top_up_draft: drafts
            .iter()
            .find(|d| d.unit() == query.unit && matches!(d, crate::draft::Draft::TopUp(_)))
            .map(crate::draft::Draft::id),
    })
}

/// The yard day of the first entry of a unit that is held here.
fn known_since(ledger: &Ledger, unit: TruckId) -> Result<Option<NaiveDate>, LedgerError> {
    let fleet = ledger.fleet();
    let first = ledger.store().truth().first_ms_of_unit(unit)?.and_then(|ms| fleet.yard_stamp(ms));
    Ok(first.map(|at| fleet.yard_day(at)))
}

/// A walk that covers now hinders nobody from another (a certificate wants its review), nor from the day's report.
fn also(main: &MainAct) -> Vec<MainAct> {
    let walk = !matches!(main, MainAct::StartPreTrip | MainAct::GoOn { .. });
    let report = !matches!(main, MainAct::ReportEndOfDay { .. });
    let walk = walk.then_some(MainAct::StartPreTrip);
    walk.into_iter().chain(report.then_some(MainAct::ReportEndOfDay { draft: None })).collect()
}

/// What a certificate's slip names, of a defect that locks and has no certificate.
fn lock_by_defect(defect: &Defect) -> Option<DefectName> {
    let locks = defect.state == DefectState::Open && !defect.parts.is_empty();
    locks.then(|| DefectName {
        entry: EntryId(defect.reference.entry),
        item: defect.item.clone(),
        place: defect.place.clone(),
    })
}

/// The usual unit is the one this person wrote about last, other than this one.
fn unlike(ledger: &Ledger, query: &UnitQuery, now: Stamp) -> Result<Option<Unlike>, LedgerError> {
    let fleet = ledger.fleet();
    let mut used = last_used(ledger, query.person, fleet.yard_day(now))?;
    used.sort_by_key(|(_, at)| std::cmp::Reverse(*at));
    if used.iter().any(|(truck, _)| *truck == query.unit) {
        return Ok(None);
    }
    let usual = used.first().and_then(|(truck, _)| fleet.trucks.get(truck));
    let this = fleet.trucks.get(&query.unit);
    let Some((usual, this)) = usual.zip(this) else { return Ok(None) };
    let only = |one: &sumpbook_trade::Features, other: &sumpbook_trade::Features| {
        Feature::ALL.into_iter().filter(|f| one.has(*f) && !other.has(*f)).collect::<Vec<_>>()
    };
    Ok(Some(Unlike {
        usual: usual.door.clone(),
        only_here: only(&this.features, &usual.features),
        not_here: only(&usual.features, &this.features),
    }))
}
