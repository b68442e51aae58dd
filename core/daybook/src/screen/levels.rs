//! The oil of a unit: what belongs in it, where it last stood, what was poured.

use serde::{Deserialize, Serialize};
use sumpbook_trade::record::{Glass, OilLook, StopWait, Warmth};
use sumpbook_trade::{Entry, EntryId, Fact, FactKind, Figure, Fluid, OilFamily, Stamp, Tenths, TruckId};

use super::defect_row::name;
use crate::fleet::Fleet;
use crate::judgement::Judged;
use crate::ledger::{Ledger, LedgerError};
use crate::state::TopUpNow;
use crate::store::FactRow;

/// The oil that belongs in a unit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct OilLine {
    /// Its family; none while the shop has not said.
    pub family: Option<OilFamily>,
    /// Its grade, as the label has it.
    pub grade: Option<String>,
    /// Whole volume of the sight glass.
    pub glass: Option<Figure>,
    /// The level last read.
    pub last: Option<LevelRow>,
}

/// A level as it was read.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LevelRow {
    /// The entry that says it.
    pub id: EntryId,
    /// When.
    pub at: Stamp,
    /// By whom.
    pub by: Option<String>,
    /// Where it stood.
    pub glass: Glass,
    /// Cold or hot.
    pub warmth: Option<Warmth>,
    /// The oil's temperature, where a display showed it.
    pub oil_temperature: Option<Figure>,
    /// How long the unit had stood.
    pub stopped: Option<StopWait>,
    /// How the oil looked.
    pub look: Option<OilLook>,
}

/// A level against the middle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LevelNow {
    /// Not given.
    NotGiven,
    /// Nothing to be seen.
    BelowView,
    /// Under the middle band by so many percent of the glass.
    Under(u8),
    /// In the middle band.
    Middle,
    /// Over it by so many percent.
    Over(u8),
    /// Nothing but oil.
    AboveView,
}

impl LevelNow {
    /// Key of its words.
    pub fn text_key(self) -> &'static str {
        match self {
            LevelNow::NotGiven => "level-not-given",
            LevelNow::BelowView => "level-below-view",
            LevelNow::Under(_) => "level-under",
            LevelNow::Middle => "level-middle",
            LevelNow::Over(_) => "level-over",
            LevelNow::AboveView => "level-above-view",
        }
    }

    pub(super) fn of(glass: Option<Glass>, (low, high): (u8, u8)) -> LevelNow {
        match glass {
            None => LevelNow::NotGiven,
            Some(Glass::BelowView) => LevelNow::BelowView,
            Some(Glass::AboveView) => LevelNow::AboveView,
            Some(Glass::Percent(level)) if level < low => LevelNow::Under(low - level),
            Some(Glass::Percent(level)) if level > high => LevelNow::Over(level - high),
            Some(Glass::Percent(_)) => LevelNow::Middle,
        }
    }
}

/// The middle band in percent of the glass, both ends in it (R11).
pub(super) fn middle(ledger: &Ledger) -> (u8, u8) {
    let percent = |number: u32| u8::try_from(number.min(100)).unwrap_or(100);
    let numbers = &ledger.fleet().numbers;
    (percent(numbers.middle_from), percent(numbers.middle_to))
}

/// A top-up as a row.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PourRow {
    /// Its entry.
    pub id: EntryId,
    /// When.
    pub at: Stamp,
    /// By whom.
    pub by: Option<String>,
    /// Which fluid.
    pub fluid: Fluid,
    /// Family on the drum.
    pub family: Option<OilFamily>,
    /// Each volume as it was given.
    pub volumes: Vec<Figure>,
    /// Before.
    pub before: Option<Glass>,
    /// After.
    pub after: Option<Glass>,
    /// Compressor hours then.
    pub hours: Option<Tenths>,
}

impl PourRow {
    pub(super) fn of(top_up: &TopUpNow, fleet: &Fleet) -> PourRow {
        PourRow {
            id: top_up.entry,
            at: top_up.at.into(),
            by: top_up.person.and_then(|p| name(fleet, p.0)),
            fluid: top_up.what.fluid,
            family: top_up.what.family,
            volumes: top_up.what.pours.iter().map(|pour| pour.volume).collect(),
            before: top_up.what.before,
            after: top_up.what.after,
            hours: top_up.hours,
        }
    }
}

/// The oil line of a unit.
pub(super) fn oil_line(ledger: &Ledger, truck: TruckId) -> Result<OilLine, LedgerError> {
    let profile = ledger.fleet().set_on(truck).map(|set| &set.profile);
    Ok(OilLine {
        family: profile.and_then(|p| p.oil_family),
        grade: profile.and_then(|p| p.oil_grade.clone()),
        glass: profile.and_then(|p| p.glass),
        last: last_level(ledger, truck)?,
    })
}

/// How many entries of a kind are looked through for a level: a walk, a pour or a check has nearly always one.
const LOOKED_THROUGH: i64 = 12;

fn last_level(ledger: &Ledger, truck: TruckId) -> Result<Option<LevelRow>, LedgerError> {
    let mut newest: Option<LevelRow> = None;
    for kind in [FactKind::LevelCheck, FactKind::TopUp, FactKind::PreTripSection] {
        for entry in newest_air_entries(ledger, truck, kind, LOOKED_THROUGH)? {
            let Some(row) = level_in(&entry, ledger.fleet()) else { continue };
            if newest.as_ref().is_none_or(|known| known.at < row.at) {
                newest = Some(row);
            }
            break;
        }
    }
    Ok(newest)
}

fn level_in(entry: &Entry, fleet: &Fleet) -> Option<LevelRow> {
    let row = |glass, (warmth, oil_temperature), stopped, look| LevelRow {
        id: entry.id,
        at: entry.at,
        by: entry.person.and_then(|p| name(fleet, p.0)),
        glass,
        warmth,
        oil_temperature,
        stopped,
        look,
    };
    match &entry.fact {
        Fact::LevelCheck(level) if level.fluid == Fluid::CompressorOil => {
            let warmth = (level.warmth, level.oil_temperature);
            Some(row(level.glass, warmth, level.stopped.clone(), level.look))
        }
        Fact::TopUp(top_up) if top_up.fluid == Fluid::CompressorOil => {
            let warmth = (top_up.warmth, top_up.oil_temperature);
            Some(row(top_up.after?, warmth, top_up.stopped.clone(), None))
        }
        Fact::PreTripSection(section) => Some(row(section.glass()?, (None, None), None, None)),
        _ => None,
    }
}

/// The newest entries of one kind in a truck's own book that count, newest first.
pub(super) fn newest_entries(
    ledger: &Ledger,
    truck: TruckId,
    kind: FactKind,
    most: i64,
) -> Result<Vec<Entry>, LedgerError> {
    let facts = ledger.store().truth().newest_facts(truck, kind.code().unwrap_or(0), most)?;
    counting(ledger, facts)
}

/// The newest entries of one kind about the set on a truck, wherever it stood then.
pub(super) fn newest_air_entries(
    ledger: &Ledger,
    truck: TruckId,
    kind: FactKind,
    most: i64,
) -> Result<Vec<Entry>, LedgerError> {
    counting(ledger, ledger.newest_air_facts(truck, kind, most)?)
}

fn counting(ledger: &Ledger, facts: Vec<FactRow>) -> Result<Vec<Entry>, LedgerError> {
    let truth = ledger.store().truth();
    let mut found = Vec::new();
    for fact in facts.into_iter().filter(|fact| fact.judged == Judged::Counts) {
        let held = truth.entry(fact.n)?;
        found.extend(held.and_then(|held| Entry::from_payload(&held.row.payload).ok()));
    }
    Ok(found)
}
